"""Reads the loose pieces of a room, which stand on no wall of its walk."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Final

from trimlang.diagnostics.place import place
from trimlang.joints_by_role import FREE
from trimlang.language import facts, tree
from trimlang.language.facts import Side
from trimlang.settings.setting_kinds import TakenAt
from trimlang.settings.table import Settings
from trimlang.survey.ends import Taken, read_sides
from trimlang.survey.job import End, LoosePiece, Trim
from trimlang.survey.measures import Findings, length
from trimlang.survey.near_names import unknown_trim
from trimlang.survey.offers import read_count
from trimlang.survey.openings import in_an_id

_ALSO: Final = ("left", "right", "note", "square", "trim")


def read_loose_pieces(
    lines: Iterable[tree.LoosePieceLine],
    *,
    labels: Iterable[str],
    room_trims: tuple[str, ...],
    settings: Settings,
    trims: Mapping[str, Trim],
    findings: Findings,
) -> tuple[LoosePiece, ...]:
    """Return a room's loose pieces, each kind with a label that no run of the room has.

    ``labels`` are the runs'.  A piece that names no trim is of the room's trim, where
    ``room_trims`` is only one.
    """
    taken = list(labels)
    read: dict[str, LoosePiece] = {}
    for line in lines:
        # The same name twice is one kind of piece with another number, and which number holds only
        # the writer knows.
        before = read.get(line.name.text.casefold())
        if before is not None:
            findings.say(
                "T282",
                line.name.span,
                piece=line.name.text,
                line=place(before.span, line.name.span),
            )
            continue
        trim = one_trim(
            line.facts,
            line.name,
            line.name.text,
            trims,
            findings,
            usual=room_trims,
            also=_ALSO,
        )
        count = read_count(line.count, findings)
        long = length(line.length, settings.unit, findings, what=f"“{line.name.text}”")
        ends = _ends(line, settings, findings)
        # Each of them was reported above, so nothing more is said of the piece here.
        if trim is None or count is None or long is None or ends is None:
            continue
        # Loose pieces and runs share a room's ids, so their labels must not collide.
        label = loose_label(line.name.text, taken)
        taken.append(label)
        read[line.name.text.casefold()] = LoosePiece(
            called=line.name.text,
            label=label,
            count=count,
            length=long,
            trim=trim.text,
            left=ends[Side.LEFT],
            right=ends[Side.RIGHT],
            note=note_in(line.facts),
            span=line.name.span,
        )
    return tuple(read.values())


def loose_label(called: str, taken: Iterable[str]) -> str:
    """Return a label for a loose piece's id that differs from those ``taken`` in its room."""
    labels = {label.casefold() for label in taken}
    # A name of signs alone leaves nothing for an id.
    plain = in_an_id(called) or "piece"
    label, number = plain, 2
    while label in labels:
        label = f"{plain}-{number}"
        number += 1
    return label


def one_trim(
    said: Iterable[facts.Fact],
    called: tree.Word,
    what: str,
    trims: Mapping[str, Trim],
    findings: Findings,
    *,
    usual: tuple[str, ...] = (),
    also: tuple[str, ...] = (),
) -> tree.Word | None:
    """Return the one trim that a line names, or else the only one of ``usual``.

    ``called`` is where the line says what it is about, ``what`` how a finding calls that;
    ``also`` are words that an unknown name may be meant for.
    """
    said = tuple(said)
    named = [fact.trim for fact in said if isinstance(fact, facts.NamedTrim)]
    for word in named:
        if word.text not in trims:
            unknown_trim(word, trims, findings, also)
            # Another trim in its place would be a guess, and would be cut.
            return None
    if len(named) == 1:
        return named[0]
    # With two trims in a room, which one a cleat is cut from would be a guess.
    if not named and len(usual) == 1:
        return tree.Word(usual[0], called.span)
    # What could not be read may have named the trim, and was reported.
    if not any(isinstance(fact, facts.Unread) for fact in said):
        findings.say("T280", called.span, piece=what, trims=tuple(trims))
    return None


def note_in(said: Iterable[facts.Fact]) -> str | None:
    """Return the note that a line holds."""
    return next((fact.text.text for fact in said if isinstance(fact, facts.Note)), None)


def _ends(
    line: tree.LoosePieceLine, settings: Settings, findings: Findings
) -> dict[Side, End] | None:
    """Return both ends, square where the line says nothing; None where one is not possible."""
    said = read_sides(line.facts, Taken(TakenAt.WALL), settings, findings)
    for end in said.values():
        if not end.joint.row.on_loose_piece:
            findings.say("T281", end.span, joint=end.joint)
            # The first end that cannot be is enough: the piece is left out in any case.
            return None
    free = End(joint=FREE, span=line.name.span)
    return {side: said.get(side, free) for side in Side}
