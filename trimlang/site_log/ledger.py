"""What the log says of each piece, without a plan: which are cut, how long, what is wrong."""

from __future__ import annotations

from collections.abc import Collection, Container, Iterable, Mapping
from dataclasses import replace
from fractions import Fraction
from functools import lru_cache
from itertools import islice
from typing import Final

from trimlang.diagnostics import Diagnostic, Span
from trimlang.diagnostics.near_words import MOST_LISTED, listed, nearest
from trimlang.diagnostics.place import place
from trimlang.diagnostics.suggestion import Suggestion, did_you_mean
from trimlang.joinery.piece import Piece
from trimlang.joinery.shorter_sticks import pieces_of_shorter_sticks
from trimlang.joinery.spliced_pieces import Splice
from trimlang.lengths.tape import length_text
from trimlang.record import record
from trimlang.survey.job import Job
from trimlang.survey.log_entries import (
    BoughtSticks,
    Counted,
    CutPiece,
    Entry,
    Fitted,
    Shortened,
    Spoiled,
)
from trimlang.survey.measures import Findings

SAME: Final = Fraction(1, 64)
"""Inches; lengths that differ by less are the same: a line has four decimal places at most."""

_WORDS: Final = 4
"""Words between dashes that a piece's name has at most: tag, wall, trim, part."""


@record
class Standing:
    """The state of a piece that was cut and not spoiled since.

    ``length`` is the number on its ticket when it was cut (inches), None where the log does not
    say.
    """

    length: Fraction | None
    fitted: bool
    span: Span


def standing(log: Iterable[Entry]) -> dict[str, Standing]:
    """Return the state of each cut piece after the last line, by its id."""
    live: dict[str, Standing] = {}
    for entry in log:
        if isinstance(entry, CutPiece):
            # The first of two cuts counts; the second is reported and changes nothing.
            live.setdefault(entry.piece, Standing(entry.length, False, entry.span))
        elif isinstance(entry, Spoiled):
            live.pop(entry.piece, None)
        elif isinstance(entry, Shortened | Fitted) and entry.piece in live:
            now = live[entry.piece]
            if isinstance(entry, Shortened):
                if now.length is not None and entry.length >= now.length:
                    continue  # no saw lengthens: the replay reports the line
                live[entry.piece] = replace(now, length=entry.length, span=entry.span)
            else:
                live[entry.piece] = replace(now, fitted=True)
    return live


def check_log(
    job: Job, pieces: Iterable[Piece], spliced: Iterable[Splice] = ()
) -> tuple[Diagnostic, ...]:
    """Return what is wrong with the log by itself: names, and the order of its lines.

    Parts of a run that the plan may join, though it need not, are known by the plan alone; whether
    there are such is asked again by ``check_parts``.
    """
    findings = Findings()
    pieces = tuple(pieces)
    known = {piece.id for piece in pieces}
    known |= _parts_of_plan(job, known, spliced)
    live: dict[str, Span] = {}
    fitted: dict[str, Span] = {}
    spoiled: dict[str, Span] = {}
    short: list[Span] = []
    for entry in job.log:
        if isinstance(entry, CutPiece):
            # A piece that is cut twice is two pieces on the floor, one of which is wrong.
            if entry.piece in live:
                before = place(live[entry.piece], entry.span)
                findings.say("T704", entry.span, piece=entry.piece, line=before)
                continue
            if not _known(entry, known, job, findings):
                continue
            live[entry.piece] = entry.span
            if not entry.pinned:
                short.append(entry.span)
        elif isinstance(entry, Spoiled):
            # A piece may be spoiled without a line that says that it was cut: then its name must be
            # known.
            if entry.piece not in live and not _known(entry, known, job, findings):
                continue
            live.pop(entry.piece, None)
            fitted.pop(entry.piece, None)
            spoiled[entry.piece] = entry.span
        elif isinstance(entry, Shortened | Fitted):
            what = "shortened" if isinstance(entry, Shortened) else "fitted"
            if entry.piece not in live:
                if _known(entry, known, job, findings):
                    why = "no line above says that it was cut"
                    if entry.piece in spoiled:
                        line = place(spoiled[entry.piece], entry.span)
                        why = (
                            f"it was spoiled ({line}) and no line since says that it was cut again"
                        )
                    findings.say("T705", entry.span, piece=entry.piece, what=what, why=why)
            elif entry.piece in fitted and isinstance(entry, Fitted):
                before = place(fitted[entry.piece], entry.span)
                findings.say("T706", entry.span, piece=entry.piece, line=before)
            elif isinstance(entry, Fitted):
                fitted[entry.piece] = entry.span
    # Said once for the whole log: what helps is one command, not a change in each line.
    if short:
        findings.say("T712", short[0], count=len(short))
    for name, span in live.items():
        if name not in known and pieces:
            _say_gone(name, span, known, findings)
    # The pieces of a spliced wall are checked once the splices have moved to suit the cut ones
    # (`under_way`).
    whole = [piece for piece in pieces if piece.parts == 1]
    _check_lengths(whole, standing(job.log), findings)
    return tuple(findings.found)


def _parts_of_plan(job: Job, known: Container[str], spliced: Iterable[Splice]) -> set[str]:
    """Return the ids of pieces that there are only if the plan joins a run as it need not.

    That is where a joint pays, or where the longest sticks run out.
    """
    priced = job.settings.joint_price is not None
    parts = {
        name
        for one in spliced
        if priced or not one.is_joined
        for name in one.names(len(one.cut) + 1)
    }
    logged = (one.piece for one in job.log if not isinstance(one, BoughtSticks | Counted))
    # To join all walls again takes time, and is seldom wanted.
    if any(name not in known and name not in parts for name in logged):
        parts |= pieces_of_shorter_sticks(job)
    return parts


def check_parts(
    job: Job, pieces: Iterable[Piece], spliced: Iterable[Splice]
) -> tuple[Diagnostic, ...]:
    """Return a finding for each part in the log that the plan did not make; ``pieces`` are its."""
    findings = Findings()
    known = {piece.id for piece in pieces}
    missing = _parts_of_plan(job, known, spliced) - known
    live = standing(job.log)
    for entry in job.log:
        if not isinstance(entry, CutPiece | Spoiled) or entry.piece not in missing:
            continue
        if _known(entry, known, job, findings) and entry.piece in live:
            _say_gone(entry.piece, entry.span, known, findings)
    return tuple(findings.found)


def _say_gone(name: str, span: Span, known: Collection[str], findings: Findings) -> None:
    findings.say("T703", span, piece=name, remedy=_near(name, known))


def check_lengths(pieces: Iterable[Piece], live: Mapping[str, Standing]) -> tuple[Diagnostic, ...]:
    """Return a finding for each piece that was cut to another length than is asked for now."""
    findings = Findings()
    _check_lengths(pieces, live, findings)
    return tuple(findings.found)


def _check_lengths(
    pieces: Iterable[Piece], live: Mapping[str, Standing], findings: Findings
) -> None:
    for piece in pieces:
        now = live.get(piece.id)
        if now is None or now.length is None:
            continue
        over = now.length - piece.to_mark
        if abs(over) >= SAME:
            findings.say(
                "T710" if over > 0 else "T711",
                now.span,
                piece=piece.id,
                cut=length_text(now.length, piece.unit),
                now=length_text(piece.to_mark, piece.unit),
                by=length_text(abs(over), piece.unit),
            )


def trim_of_stick(name: str) -> str:
    """Return the trim in a stick's name: ``base`` of ``base-3``."""
    return name.rpartition("-")[0]


def _known(entry: Entry, known: Collection[str], job: Job, findings: Findings) -> bool:
    """Tell whether the piece is one of the job's, or the line says enough without the job."""
    assert isinstance(entry, CutPiece | Spoiled | Shortened | Fitted)  # noqa: S101
    if entry.piece in known or not known:
        return True
    # A wall may have gone from the survey after its piece was cut. With length and stick in the
    # line, what it took from the stick is still known.
    source = entry.source if isinstance(entry, CutPiece | Spoiled) else None
    trims = {trim.name for trim in job.trims}
    names_stick = source is not None and source.stick is not None
    if names_stick and source is not None and trim_of_stick(source.stick or "") in trims:
        long = entry.length if isinstance(entry, CutPiece | Spoiled) else None
        if long is not None:
            return True
    findings.say("T702", entry.span, piece=entry.piece, remedy=_near(entry.piece, known))
    return False


def _ends_or_holds(whole: list[str], parts: list[str]) -> bool:
    """Tell whether the parts of a piece's id hold ``parts`` one after the other."""
    last = len(whole) - len(parts)
    return any(whole[at : at + len(parts)] == parts for at in range(last + 1))


def _near(name: str, known: Collection[str], covers: int = 0) -> str:
    # On the wall a piece is called “N” or “N-base”, without its room.
    names = tuple(sorted(known))
    parts = name.casefold().split("-")
    by_part = _by_part(names)
    # Of the pieces with the word that fewest have, and of these no more than are listed: both
    # the log and the job may have thousands of names.
    few = min((by_part.get(part, []) for part in parts), key=len)
    holding = (one for one in few if _ends_or_holds(one.casefold().split("-"), parts))
    # “base-N” for “ST-N-base”: the same words in another order.
    mixed = (one for one in few if set(parts) <= set(one.casefold().split("-")))
    short = list(islice(holding, MOST_LISTED + 1)) or list(islice(mixed, MOST_LISTED + 1))
    # “LR-W” where that wall is in another room: what is called so behind the room's tag.
    if not short and 1 < len(parts) <= _WORDS and nearest(name, names) is None:
        return _near("-".join(parts[1:]), known, covers or len(name))
    if len(short) == 1:
        # The line may go on with the piece's length, which stays.
        return Suggestion(f"Did you mean “{short[0]}”?", short[0], covers=covers or len(name))
    if short:
        return f"Did you mean one of these: {listed(short)}?"
    unknown = "The tickets and the checklist list the job's pieces."
    return did_you_mean(name, names, unknown, covers=covers or len(name))


# One log asks about one job's pieces, over and over.
@lru_cache(maxsize=2)
def _by_part(names: tuple[str, ...]) -> dict[str, list[str]]:
    """Return the pieces that have a word between dashes in their names, by that word."""
    found: dict[str, list[str]] = {}
    for name in names:
        for part in dict.fromkeys(name.casefold().split("-")):
            found.setdefault(part, []).append(name)
    return found
