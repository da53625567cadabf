"""Finds where a trim goes on past an opening or cabinets that other trims stop at."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from trimlang.language.facts import Side
from trimlang.survey.job import Gap, Room, Run, Stretch, Trim


def goes_on_at(room: Room, index: int, trim: Trim) -> int | None:
    """Return the place in the walk of the run on which a trim goes on past openings.

    ``index`` is the place of the run before them.  None where something between the two runs does
    not let the trim past, where the next run does not get the trim or has another slope, and where
    the trim ends at either side.
    """
    walk = room.walk
    run, before = walk[index], index
    for after in beyond(room, index, 1):
        stretch, last = walk[after], walk[before]
        if isinstance(run, Run) and isinstance(stretch, Run) and before == index:
            return after if _below_a_ridge(run, stretch, trim) else None
        if isinstance(stretch, Run):
            # Only past a gap (two runs that meet have a joint), onto a run with this trim, on one
            # slope.
            follows = isinstance(last, Gap) and trim.name in stretch.trims and stretch.curve is None
            level = isinstance(run, Run) and (run.slope, run.curve) == (stretch.slope, None)
            # Only crown, and what lies on the ceiling along it, cares how that goes on.
            along = trim.spring is not None or trim.before_crown is not None
            if along and isinstance(run, Run):
                level = level and run.ceiling == stretch.ceiling
            goes_on = follows and level and may_go_on(stretch, Side.LEFT, last, trim)
            return after if goes_on else None
        if before == index and not (
            isinstance(run, Run) and may_go_on(run, Side.RIGHT, stretch, trim)
        ):
            return None
        # An opening that states a corner is where the wall turns: nothing goes straight on past it.
        if not stretch.lets_past(trim) or stretch.left is not None or stretch.right is not None:
            return None
        before = after
    return None


def _below_a_ridge(run: Run, other: Run, trim: Trim) -> bool:
    """Tell whether a trim goes straight on where only the crown above it bends."""
    joint, mate = run.right.joint, other.left.joint
    return (
        joint.row.bends
        and mate.row.bends
        and trim.spring is None
        and trim.before_crown is None
        and trim.name in other.trims
        and not run.slope
        and not other.slope
    )


def may_go_on(run: Run, side: Side, neighbour: Stretch, trim: Trim) -> bool:
    """Tell whether a run's trim may go on past what is beside it, by how it ends there.

    Where the opening's line says what it stops, the run's stated end is for those trims only; where
    that is none of them, for all.
    """
    joint = run.side(side).joint
    # A file that says how this one trim ends does not want it to go on.
    if run.own_end(trim.name, side) is not None:
        return False
    said = isinstance(neighbour, Gap) and bool(neighbour.stops)
    return joint.stops or (said and not joint.has_mate)


def beyond(room: Room, index: int, step: int) -> Iterator[int]:
    """Yield the places in the walk after ``index``, to the right (1) or to the left (-1).

    In a room that is walked all round, the first place follows the last.
    """
    count = len(room.walk)
    for steps in range(1, count):
        at = index + steps * step
        if room.open_walk and not 0 <= at < count:
            return
        yield at % count


def door_walls(room: Room, lets_past: Callable[[Gap], bool]) -> tuple[tuple[int, ...], ...]:
    """Return the walls without a run, from corner to corner, that let a trim past.

    Each is given as its places in the walk; ``lets_past`` says which gaps do.
    """
    found: list[tuple[int, ...]] = []
    for index, first in enumerate(room.walk):
        if not _is_past(first, lets_past) or first.left is None or not first.left.joint.is_corner:
            continue
        places = [index]
        for after in beyond(room, index, 1):
            last, following = room.walk[places[-1]], room.walk[after]
            # A side that is stated is a corner or an end, where this wall is over.
            open_end = last.right is None and following.left is None
            if not open_end or not _is_past(following, lets_past):
                break
            places.append(after)
        end = room.walk[places[-1]].right
        if end is not None and end.joint.is_corner:
            found.append(tuple(places))
    return tuple(found)


def _is_past(stretch: Stretch, lets_past: Callable[[Gap], bool]) -> bool:
    return isinstance(stretch, Gap) and lets_past(stretch)
