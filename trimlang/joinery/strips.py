"""The strips of one trim: where it runs along a room without a corner, over doors too."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from trimlang.joinery.piece import Remark
from trimlang.language.facts import Side
from trimlang.language.tree import GapKind
from trimlang.marking import N_
from trimlang.record import record
from trimlang.survey.job import Gap, Room, Run, Trim
from trimlang.survey.over_openings import goes_on_at


@record
class Strip:
    """The places in a room's walk that one trim runs along without a corner.

    From ``begin`` to ``end``; ``runs`` are those of its runs, of which it has one at least.
    """

    trim: str
    begin: int
    end: int
    runs: tuple[int, ...]


def strips(room: Room, trim: Trim) -> tuple[Strip, ...]:
    """Return where a trim runs in a room, in the order of the walk."""
    found: list[Strip] = []
    reached: set[int] = set()
    for index, run in enumerate(room.walk):
        if not isinstance(run, Run) or trim.name not in run.trims or index in reached:
            continue
        runs = [index]
        if trim.spring is not None:
            while (at := goes_on_at(room, runs[-1], trim.name)) is not None:
                runs.append(at)
            reached.update(runs)
        begin, end = index, runs[-1]
        if trim.spring is not None:
            begin -= _doors_to_corner(room, begin, Side.LEFT)
            end += _doors_to_corner(room, end, Side.RIGHT)
        found.append(Strip(trim=trim.name, begin=begin, end=end, runs=tuple(runs)))
    return tuple(found)


def _doors_to_corner(room: Room, index: int, side: Side) -> int:
    """Return how many openings lie between a run's butt end and a corner that the last states."""
    step = 1 if side is Side.RIGHT else -1
    own = room.walk[index].right if step > 0 else room.walk[index].left
    if own is None or not own.joint.stops:
        return 0
    at = index + step
    while 0 <= at < len(room.walk):
        gap = room.walk[at]
        if not isinstance(gap, Gap) or gap.kind is not GapKind.OPENING:
            return 0
        near, far = (gap.left, gap.right) if step > 0 else (gap.right, gap.left)
        if near is not None:
            return 0
        if far is not None:
            return abs(at - index) if far.joint.is_corner else 0
        at += step
    return 0


def along(stretch: Run | Gap) -> Fraction:
    """Return how much of the wall a stretch takes up (inches)."""
    return stretch.along if isinstance(stretch, Gap) else stretch.length


def goes_on_over(room: Room, strip: Strip) -> Iterator[Remark]:
    """Yield what a trim goes on over, and where to."""
    places = [strip.begin - 1, *strip.runs, strip.end + 1]
    for one, other in pairwise(places):
        gaps = [part for part in room.walk[one + 1 : other] if isinstance(part, Gap)]
        if not gaps:
            continue
        run = room.walk[other] if other in strip.runs[1:] else None
        names = [gap.called for gap in gaps]
        over = ", ".join(filter(None, names)) if None not in names else ""
        if isinstance(run, Run):
            if over:
                values = (("over", over), ("run", run.label))
                yield Remark(N_("goes on over {over} to {run}"), values)
            else:
                yield Remark(N_("goes on over the opening to {run}"), (("run", run.label),))
        elif over:
            yield Remark(N_("goes on over {over} into the corner"), (("over", over),))
        else:
            yield Remark(N_("goes on over the opening into the corner"))
