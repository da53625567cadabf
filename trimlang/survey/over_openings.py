"""Where trim near the ceiling goes on over an opening that trim at the floor stops at."""

from __future__ import annotations

from collections.abc import Iterator

from trimlang.language.tree import GapKind
from trimlang.survey.job import Gap, Room, Run, Stretch


def goes_on_at(room: Room, index: int, name: str) -> int | None:
    """Return the place in the walk of the run on which trim ``name`` goes on over openings.

    ``index`` is the place of the run where it begins.  None where the next run
    is not behind openings alone, does not get the trim, or either end is no butt.
    """
    walk = room.walk
    run = walk[index]
    if not isinstance(run, Run) or not run.right.joint.stops:
        return None
    for steps, after in enumerate(beyond(room, index, 1)):
        stretch = walk[after]
        if isinstance(stretch, Run):
            follows = steps > 0 and name in stretch.trims
            return after if follows and stretch.left.joint.stops else None
        if not _is_plain_opening(stretch):
            return None
    return None


def beyond(room: Room, index: int, step: int) -> Iterator[int]:
    """Yield the places in the walk that follow another, to the right (1) or to the left (-1).

    In a room that is walked round, the first follows the last.
    """
    count = len(room.walk)
    for steps in range(1, count):
        at = index + steps * step
        if room.open_walk and not 0 <= at < count:
            return
        yield at % count


def door_walls(room: Room) -> tuple[tuple[int, ...], ...]:
    """Return the walls that are openings from corner to corner, each as its places in the walk."""
    found: list[tuple[int, ...]] = []
    for index, first in enumerate(room.walk):
        if not _is_opening(first) or first.left is None or not first.left.joint.is_corner:
            continue
        places = [index]
        for after in beyond(room, index, 1):
            last, following = room.walk[places[-1]], room.walk[after]
            if last.right is not None or not _is_opening(following) or following.left is not None:
                break
            places.append(after)
        end = room.walk[places[-1]].right
        if end is not None and end.joint.is_corner:
            found.append(tuple(places))
    return tuple(found)


def _is_opening(stretch: Stretch) -> bool:
    return isinstance(stretch, Gap) and stretch.kind is GapKind.OPENING


def _is_plain_opening(gap: Gap) -> bool:
    return _is_opening(gap) and gap.left is None and gap.right is None
