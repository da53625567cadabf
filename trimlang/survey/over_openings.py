"""Where trim near the ceiling goes on over an opening that trim at the floor stops at."""

from __future__ import annotations

from trimlang.language.tree import GapKind
from trimlang.survey.job import Gap, Room, Run


def goes_on_at(room: Room, index: int, name: str) -> int | None:
    """Return the place in the walk of the run on which trim ``name`` goes on over openings.

    ``index`` is the place of the run where it begins.  None where the next run
    is not behind openings alone, does not get the trim, or either end is no butt.
    """
    walk = room.walk
    run = walk[index]
    if not isinstance(run, Run) or not run.right.joint.stops:
        return None
    for after in range(index + 1, len(walk)):
        stretch = walk[after]
        if isinstance(stretch, Run):
            follows = after > index + 1 and name in stretch.trims
            return after if follows and stretch.left.joint.stops else None
        if not _is_plain_opening(stretch):
            return None
    return None


def _is_plain_opening(gap: Gap) -> bool:
    return gap.kind is GapKind.OPENING and gap.left is None and gap.right is None
