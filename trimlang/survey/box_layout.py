"""Lays boxes out on a wall: from a margin their width follows, from a width the margins."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction

from trimlang.language import facts, tree
from trimlang.lengths.tape import feet_text, length_text, steps_down
from trimlang.settings.table import Settings
from trimlang.survey.box_walls import BoxedWall, box_wall, check_openings
from trimlang.survey.job import Stretch, Trim
from trimlang.survey.measures import Findings, length
from trimlang.survey.offers import read_count
from trimlang.survey.on_walls import WallBoxes
from trimlang.survey.openings import in_an_id
from trimlang.survey.said_pieces import note_in, one_trim


def read_boxes(
    lines: Iterable[tree.BoxesLine],
    walk: Sequence[Stretch],
    *,
    settings: Settings,
    trims: Mapping[str, Trim],
    findings: Findings,
) -> tuple[WallBoxes, ...]:
    """Return the boxes of a room's walls; each set of a wall goes by a name of its own."""
    read: list[WallBoxes] = []
    for line in lines:
        wall = box_wall(line, walk, findings)
        if wall is None:
            continue
        label = in_an_id(line.name.text) if line.name is not None else ""
        # Two nameless sets of one wall would give their pieces the same ids.
        if any((one.run, one.label) == (wall.run, label) for one in read):
            findings.say("T289", line.span, run=str(wall.called))
            continue
        boxes = _boxes(line, wall, label, settings, trims, findings)
        if boxes is not None:
            check_openings(boxes, wall, trims, settings, findings)
            read.append(boxes)
    return tuple(read)


def _boxes(
    line: tree.BoxesLine,
    wall: BoxedWall,
    label: str,
    settings: Settings,
    trims: Mapping[str, Trim],
    findings: Findings,
) -> WallBoxes | None:
    said = {type(fact): fact for fact in line.facts}
    sizes: dict[type, Fraction | None] = {}
    for kind, what in (
        (facts.BoxesTall, "a box's height"),
        (facts.BoxesWide, "a box's width"),
        (facts.BoxesMargin, "a margin"),
    ):
        fact = said.get(kind)
        if isinstance(fact, facts.BoxesTall | facts.BoxesWide | facts.BoxesMargin):
            sizes[kind] = length(fact.length, settings.unit, findings, what=what)
    trim, count = _trim(line, wall, trims, findings), read_count(line.count, findings)
    # Of width and margin one is said and the other follows: with both the wall would be said twice,
    # with neither nothing says how wide a box is.
    if facts.BoxesTall not in said or (facts.BoxesWide in said) == (facts.BoxesMargin in said):
        # A part that could not be read has been reported, and may be just what is lacking here.
        if facts.Unread not in said:
            findings.say("T287", line.span, run=str(wall.called))
        return None
    tall, wide = sizes[facts.BoxesTall], sizes.get(facts.BoxesWide)
    margin = sizes.get(facts.BoxesMargin)
    if trim is None or count is None or tall is None or (wide is None and margin is None):
        return None
    step = settings.rounding_step
    # Everything on marks of the tape, and the wall still the exact sum.
    laid = lay_out(wall.long, count, wide=wide, margin=margin, step=step)
    across = trims[trim].height or Fraction(0)
    # A box no wider than its two sides together has nothing to frame.
    if laid is None or laid[0] <= 2 * across:
        findings.say(
            "T288",
            line.span,
            count=count,
            run=str(wall.called),
            long=feet_text(wall.long, settings.unit),
            trim=trim,
            across=length_text(across, settings.unit),
            fewer=_most_that_fit(wall.long, count, wide, margin, step, 2 * across),
        )
        return None
    return WallBoxes(
        run=wall.run,
        called=wall.called,
        place=line.wall.place,
        label=label,
        wall=wall.long,
        count=count,
        wide=laid[0],
        # A box is one frame with mitres at all corners; its sides must be on marks for two opposite
        # ones to come out alike.
        tall=steps_down(tall, step),
        margins=laid[1],
        trim=trim,
        slope=wall.slope,
        note=note_in(line.facts),
        span=line.span,
    )


def lay_out(
    wall: Fraction,
    count: int,
    *,
    wide: Fraction | None,
    margin: Fraction | None,
    step: Fraction,
) -> tuple[Fraction, tuple[Fraction, ...]] | None:
    """Return each box's width and the margins, of which the wall is the sum; None where none fit.

    Widths and inner margins are marks of the tape, a ``step`` apart; what is left goes to both
    ends, half and half as far as the tape has halves, so that the middle of the wall stays the
    middle.  All lengths in inches.
    """
    # count boxes have count + 1 margins; the wall is the sum of both.
    if margin is not None:
        inner = steps_down(margin, step)
        box = steps_down((wall - (count + 1) * inner) / count, step)
    else:
        box = steps_down(wide or Fraction(0), step)
        inner = steps_down((wall - count * box) / (count + 1), step)
    ends = wall - count * box - (count - 1) * inner
    if box <= 0 or inner <= 0 or ends <= 0:
        return None
    # Where the tape has no such half, the right end gets the step more: nobody sees a sixteenth
    # there, and the sum stays exact.
    first = steps_down(ends / 2, step)
    return box, (first, *[inner] * (count - 1), ends - first)


def _most_that_fit(
    wall: Fraction,
    count: int,
    wide: Fraction | None,
    margin: Fraction | None,
    step: Fraction,
    sides: Fraction,
) -> int | None:
    """Return how many boxes of such a width or margin fit, None where not even one does.

    ``sides`` is the width of two sides of the trim, of which a box must be wider.
    """
    for fewer in range(count - 1, 0, -1):
        laid = lay_out(wall, fewer, wide=wide, margin=margin, step=step)
        if laid is not None and laid[0] > sides:
            return fewer
    return None


def _trim(
    line: tree.BoxesLine, wall: BoxedWall, trims: Mapping[str, Trim], findings: Findings
) -> str | None:
    """Return what the boxes are made of; it must be named and have a width to be mitred across."""
    trim = one_trim(line.facts, line.wall.name, f"boxes {wall.called}", trims, findings)
    if trim is not None and trims[trim.text].height is None:
        findings.say("T246", trim.span, joint="frame", trim=trim.text, run=str(wall.called))
        return None
    return None if trim is None else trim.text
