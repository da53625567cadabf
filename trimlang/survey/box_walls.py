"""The wall that boxes are laid out on: a run, a wall past windows, below or above an opening."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import pairwise
from typing import Final

from trimlang.diagnostics.near_words import listed
from trimlang.diagnostics.suggestion import did_you_mean
from trimlang.language import tree
from trimlang.language.box_facts import BoxPlace
from trimlang.lengths.tape import NOTHING, length_text
from trimlang.marking import N_
from trimlang.record import record
from trimlang.settings.table import Settings
from trimlang.survey.block_fits import casing_with_band
from trimlang.survey.job import Gap, Run, Stretch, Trim
from trimlang.survey.measures import Findings
from trimlang.survey.on_walls import WallBoxes, WallName
from trimlang.survey.openings import in_an_id

_AT_OPENING: Final = {
    BoxPlace.UNDER: N_("under “{opening}”"),
    BoxPlace.OVER: N_("over “{opening}”"),
}


@record
class BoxedWall:
    """A wall for boxes: what ids and people call it, its length and slope, the openings in it.

    Each opening is given with where it begins from the wall's left end (inches).
    """

    run: str
    called: WallName
    long: Fraction
    slope: Fraction
    openings: tuple[tuple[Fraction, Gap], ...]


def box_wall(line: tree.BoxesLine, walk: Sequence[Stretch], findings: Findings) -> BoxedWall | None:
    """Return the wall that a line names; None, and a finding, where the room has no such wall."""
    word, where = line.wall.name, line.wall.place
    # Below or above one opening the wall is as wide as the opening with its casing. Above it
    # nothing is in the way; below, the sill limits how tall a box may be.
    if where in (BoxPlace.UNDER, BoxPlace.OVER):
        gap = _opening(word, walk, findings)
        if gap is None:
            return None
        return BoxedWall(
            # The pieces' ids are printed on tickets and written in the log, so the name must be one
            # word.
            run=f"{in_an_id(word.text)}-{where.name.lower()}",
            called=WallName(_AT_OPENING[where], (("opening", word.text),)),
            long=gap.along,
            slope=NOTHING,
            openings=((NOTHING, gap),) if where is BoxPlace.UNDER else (),
        )
    first = _run(word, walk, findings)
    last = _run(line.wall.last, walk, findings) if line.wall.last is not None else first
    if first is None or last is None:
        return None
    parts = tuple(_between(first, last, walk))
    if not parts:
        other = line.wall.last or word
        findings.say("T441", word.span, run=word.text, other=other.text)
        return None
    bent = next((one for one in parts if isinstance(one, Run) and one.curve is not None), None)
    if bent is not None:
        findings.say("T496", word.span, run=bent.label)
        return None
    # Along the wall from its left end, adding up what runs and openings take.
    begins, at = [], NOTHING
    for part in parts:
        if isinstance(part, Gap):
            begins.append((at, part))
        at += part.along if isinstance(part, Gap) else part.length
    run = parts[0]
    assert isinstance(run, Run)  # noqa: S101  it begins at a run
    called = WallName("{run}", (("run", run.label),))
    if line.wall.last is not None:
        ends = (("first", run.label), ("last", line.wall.last.text))
        called = WallName(N_("{first} to {last}"), ends)
    return BoxedWall(run=run.label, called=called, long=at, slope=run.slope, openings=tuple(begins))


def check_openings(
    boxes: WallBoxes,
    wall: BoxedWall,
    trims: Mapping[str, Trim],
    settings: Settings,
    findings: Findings,
) -> None:
    """Report boxes that are too tall for the wall below a window, or lie over a door."""
    at, spans = NOTHING, []
    # The last margin lies behind the last box.
    for margin in boxes.margins[:-1]:
        at += margin
        spans.append((at, at + boxes.wide))
        at += boxes.wide
    for begins, gap in wall.openings:
        # No box reaches over this opening.
        if not any(left < begins + gap.along and right > begins for left, right in spans):
            continue
        called = gap.called or gap.kind.value
        # A door goes down to the floor: nothing of a box can be under it.
        if gap.sill is None:
            findings.say("T439", boxes.span, run=str(wall.called), opening=called)
            continue
        # The sill's height is that of the clear opening, and the trim hangs below it.
        room = gap.sill - _below_the_sill(gap, trims, settings)
        if boxes.tall > room:
            # as far below the sill's trim and above the floor as between them, where there is room
            lower = room - 2 * boxes.margins[0]
            fits = lower if lower > 0 else room
            texts = {"tall": boxes.tall, "room": max(room, NOTHING), "lower": fits}
            sizes = {name: length_text(size, settings.unit) for name, size in texts.items()}
            if fits <= 0:
                sizes["lower"] = ""
            findings.say("T440", boxes.span, opening=called, **sizes)


def _below_the_sill(gap: Gap, trims: Mapping[str, Trim], settings: Settings) -> Fraction:
    """Return how far down a window's trim reaches below its clear opening (inches)."""
    below = gap.trimmings
    if below.stool is not None:
        apron = trims[below.apron].height if below.apron is not None else None
        return (trims[below.stool].thickness or NOTHING) + (apron or NOTHING)
    if below.four_sides and gap.casing is not None:
        return settings.reveal + casing_with_band(trims[gap.casing], below, trims, settings)
    return NOTHING


def _between(first: int, last: int, walk: Sequence[Stretch]) -> Iterator[Stretch]:
    """Yield the stretches from one run to another of the same wall; none where it turns between."""
    parts = walk[first : last + 1]
    for one, other in pairwise(parts):
        ends = [end for end in (one.right, other.left) if end is not None]
        # Behind a corner it is another wall, and a box does not go round.
        if any(end.joint.is_corner for end in ends):
            return
        # Where the pitch changes, boxes of one height would follow two slopes.
        if isinstance(one, Run) and isinstance(other, Run) and one.slope != other.slope:
            return
    yield from parts


def _run(word: tree.Word, walk: Sequence[Stretch], findings: Findings) -> int | None:
    runs = {one.label.casefold(): at for at, one in enumerate(walk) if isinstance(one, Run)}
    at = runs.get(word.text.casefold())
    if at is None:
        labels = [one.label for one in walk if isinstance(one, Run)]
        there = f"The room's runs are {listed(labels)}."
        remedy = did_you_mean(word.text, labels, there)
        findings.say("T286", word.span, run=word.text, remedy=remedy)
    return at


def _opening(word: tree.Word, walk: Sequence[Stretch], findings: Findings) -> Gap | None:
    gaps = [one for one in walk if isinstance(one, Gap) and one.called]
    gap = next((one for one in gaps if (one.called or "").casefold() == word.text.casefold()), None)
    if gap is None:
        names = [one.called or "" for one in gaps]
        there = f"The room's openings are {listed(names)}." if names else "Name the opening."
        remedy = did_you_mean(word.text, names, there)
        findings.say("T286", word.span, run=word.text, remedy=remedy)
    return gap
