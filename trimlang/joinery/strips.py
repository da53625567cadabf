"""The strips of one trim: where it runs along a wall without a corner, over doors too."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

from trimlang.joinery.remarks import Remark
from trimlang.joint_row import Fit
from trimlang.language.facts import Side
from trimlang.marking import N_
from trimlang.record import record
from trimlang.survey.job import End, Gap, Room, Run, Trim
from trimlang.survey.openings import opening_names
from trimlang.survey.over_openings import beyond, door_walls, goes_on_at, may_go_on


@record
class Strip:
    """The part of a room's walk that one trim runs along without a corner.

    ``places`` are its places in the walk, from the left, and ``runs`` those of them that are runs:
    none where it goes on over a wall that is all opening.
    """

    trim: str
    places: tuple[int, ...]
    runs: tuple[int, ...]

    @property
    def begins(self) -> int:
        """The place in the walk at which it is made: its first run, or its first opening."""
        return self.runs[0] if self.runs else self.places[0]

    def end(self, side: Side) -> int:
        """Return its outermost place on one side."""
        return self.places[0] if side is Side.LEFT else self.places[-1]


def strips(room: Room, trim: Trim) -> tuple[Strip, ...]:
    """Return the strips of a trim in a room, in the order of the walk."""
    own = [
        at for at, run in enumerate(room.walk) if isinstance(run, Run) and trim.name in run.trims
    ]
    # Where each run is continued past an opening, so that both are one piece.
    onward = {at: goes_on_at(room, at, trim) for at in own}
    found: list[Strip] = []
    # A strip begins at a run that no other run leads on to.
    for begin in sorted(set(own) - set(onward.values())):
        runs, places = [begin], [begin]
        while (at := onward[runs[-1]]) is not None:
            places += _between(room, runs[-1], at)
            runs.append(at)
        # Beyond its outermost runs it may still go on over a door, up to the corner that the door
        # stands in.
        before = _gaps_to_corner(room, runs[0], trim, Side.LEFT)
        after = _gaps_to_corner(room, runs[-1], trim, Side.RIGHT)
        places = [*reversed(before), *places, *after]
        found.append(Strip(trim=trim.name, places=tuple(places), runs=tuple(runs)))
    return (*found, *_over_door_walls(room, trim, found))


def neighbours(room: Room, of: Sequence[Strip]) -> Iterator[tuple[Strip, Strip]]:
    """Yield each pair of strips of one trim where the second begins where the first ends."""
    first = {strip.end(Side.LEFT): strip for strip in of}
    for strip in of:
        after = first.get(next(beyond(room, strip.end(Side.RIGHT), 1), -1))
        if after is not None and after is not strip:
            yield strip, after


def end_of(room: Room, strip: Strip, side: Side) -> End | None:
    """Return what the file says of a strip's end on one side, None where it says nothing."""
    last = room.walk[strip.end(side)]
    return side.of(last.left, last.right)


def _between(room: Room, index: int, until: int) -> Iterator[int]:
    """Yield the places after ``index``, up to and with ``until``."""
    for at in beyond(room, index, 1):
        yield at
        if at == until:
            return


def _over_door_walls(room: Room, trim: Trim, found: list[Strip]) -> Iterator[Strip]:
    """Yield the walls without a run where the trim arrives from both sides."""
    ends = {side: {strip.end(side) for strip in found} for side in Side}
    for places in door_walls(room, lambda gap: gap.lets_past(trim)):
        before = next(beyond(room, places[0], -1), None)
        after = next(beyond(room, places[-1], 1), None)
        # Nothing of the trim is on such a wall but what arrives from both sides; from one side only
        # it would hang in the air.
        if before in ends[Side.RIGHT] and after in ends[Side.LEFT]:
            yield Strip(trim=trim.name, places=places, runs=())


def _gaps_to_corner(room: Room, index: int, trim: Trim, side: Side) -> list[int]:
    """Return what a trim goes past between a run's end and a corner that the last of it names."""
    step = side.step
    run, first = room.walk[index], next(beyond(room, index, step), None)
    if first is None or not isinstance(run, Run):
        return []
    if not may_go_on(run, side, room.walk[first], trim):
        return []
    doors: list[int] = []
    for at in beyond(room, index, step):
        gap = room.walk[at]
        # All or nothing: trim that ends in the middle of a door's head would have nothing to end
        # at.
        if not isinstance(gap, Gap) or not gap.lets_past(trim):
            return []
        # As one walks from the run: the opening's near end first.
        near, far = (gap.left, gap.right) if step > 0 else (gap.right, gap.left)
        # The opening says how the trim ends on this side of it, so the trim does not go on over it.
        if near is not None:
            return []
        doors.append(at)
        if far is not None:
            return doors if far.joint.is_corner else []
    return []


def past_a_door(room: Room, following: int | None, trim: Trim, side: Side, end: End) -> End:
    """Return how a trim ends beside a door that stands in the corner, where it goes on over it.

    The run stops square at the door; what comes over the door meets it in the corner that the
    door's own line says.
    """
    door = None if following is None else room.walk[following]
    if not isinstance(door, Gap) or not door.lets_past(trim) or not end.joint.stops:
        return end
    corner = side.other.of(door.left, door.right)
    if corner is None or not corner.joint.is_corner:
        return end
    # Where the other one is coped it runs square to that, which is found with its mate.
    return replace(corner, fit=Fit.MITRED, span=end.span)


def along(stretch: Run | Gap) -> Fraction:
    """Return how much of the wall a run or gap takes up (inches)."""
    return stretch.along if isinstance(stretch, Gap) else stretch.length


def run_of(room: Room, strip: Strip, side: Side) -> Run:
    """Return a strip's first or last run; over a wall without one, one made for it.

    There the trim stands off the wall as it does on the run before.
    """
    if strip.runs:
        run = room.walk[strip.runs[0] if side is Side.LEFT else strip.runs[-1]]
        assert isinstance(run, Run)  # noqa: S101  strips say so
        return run
    first, last = room.walk[strip.places[0]], room.walk[strip.places[-1]]
    runs = (room.walk[at] for at in beyond(room, strip.places[0], -1))
    # All but length and ends is taken from the run before it, which is the same trim at the same
    # height.
    before = next(one for one in runs if isinstance(one, Run) and strip.trim in one.trims)
    assert isinstance(first, Gap)  # noqa: S101  they are openings, from corner to corner
    assert first.left is not None  # noqa: S101
    assert last.right is not None  # noqa: S101
    return replace(
        before,
        label=opening_names(room)[strip.places[0]],
        length=along(first),
        left=first.left,
        right=last.right,
        must_splice=False,
        may_splice=True,
        note=first.note,
        span=first.span,
        first_stud=None,
        slope=Fraction(0),
        floor_gap=Fraction(0),
    )


def goes_on_over(room: Room, strip: Strip, trim: Trim) -> Iterator[Remark]:
    """Yield a remark for each opening that the trim goes on over, and where it goes on to."""
    # The gaps between two runs, and those before the first and behind the last.
    stops = [-1, *(at for at, place in enumerate(strip.places) if place in strip.runs)]
    for one, other in pairwise([*stops, len(strip.places)]):
        gaps = [part for place in strip.places[one + 1 : other]
                if isinstance(part := room.walk[place], Gap)]  # fmt: skip
        if not gaps:
            continue
        inner = other < len(strip.places) and one >= 0
        run = room.walk[strip.places[other]] if inner else None
        if not trim.hangs:
            past = ", ".join(gap.called or gap.kind.value for gap in gaps)
            yield Remark(N_("goes on past {over}"), (("over", past),))
            continue
        names = [gap.called for gap in gaps]
        over = ", ".join(filter(None, names)) if None not in names else ""
        if isinstance(run, Run):
            if over:
                values = (("over", over), ("run", run.label))
                yield Remark(N_("goes on over {over} to {run}"), values)
            else:
                yield Remark(N_("goes on over the opening to {run}"), (("run", run.label),))
        elif not strip.runs:
            if over:
                yield Remark(N_("over {over}, from corner to corner"), (("over", over),))
            else:
                yield Remark(N_("over the opening, from corner to corner"))
        elif over:
            yield Remark(N_("goes on over {over} into the corner"), (("over", over),))
        else:
            yield Remark(N_("goes on over the opening into the corner"))
