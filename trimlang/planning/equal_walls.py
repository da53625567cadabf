"""Walls that measure the same are cut alike, in whatever rooms, where that costs no more.

One setting of the stop then serves for all of them, and no part is the wrong one of two.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Hashable, Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from time import thread_time
from typing import Final

from trimlang.joinery.piece import Piece
from trimlang.joinery.splice_choices import other_cuts
from trimlang.joinery.spliced_pieces import Splice
from trimlang.planning.ask import Asking
from trimlang.planning.moved_joints import JoinedPlan, stock_plan
from trimlang.planning.placing import with_places
from trimlang.stock.planner import Effort

CUTS: Final = 12
"""Cuts tried for walls that are cut unlike, at most."""

PLANNED: Final = 1200
"""Pieces that these are planned with, all together, at most."""


def cut_alike(
    asking: Asking,
    pieces: tuple[Piece, ...],
    moving: tuple[Splice, ...],
    best: JoinedPlan,
    effort: Effort,
) -> JoinedPlan:
    """Return a plan no dearer, with no more sticks, in which equal walls have equal parts."""
    ends = thread_time() + effort.seconds
    for walls in _equal(moving):
        for cut in _common(asking, walls, best, len(pieces)):
            seconds = ends - thread_time()
            if seconds <= 0:
                return best
            places = {**best.places, **{wall.whole.id: cut for wall in walls}}
            question = asking.about(with_places(pieces, moving, places))
            plan = stock_plan(question, replace(effort, seconds=seconds / 2), None)
            if plan is not None and (plan.rank, plan.gap) <= (best.plan.rank, best.plan.gap):
                best = JoinedPlan(question, plan, places)
                break
    return best


def _equal(moving: Sequence[Splice]) -> Iterator[list[Splice]]:
    """Yield the free walls that may be cut alike, where there are two or more."""
    alike: dict[Hashable, list[Splice]] = defaultdict(list)
    for one in moving:
        if one.free:
            ends, settings = (one.whole.left, one.whole.right), one.wall.room.settings
            alike[one.cut, one.lap, one.longest, ends, settings].append(one)
    return (walls for walls in alike.values() if len(walls) > 1)


def _common(
    asking: Asking, walls: Sequence[Splice], best: JoinedPlan, pieces: int
) -> list[tuple[Fraction, ...]]:
    """Return cuts to try for all of some equal walls; none where they are cut alike already."""
    first = walls[0]
    cuts = [tuple(best.places.get(one.whole.id, one.cut)) for one in walls]
    # The same parts in another order are cut alike.
    if len({tuple(sorted(cut)) for cut in cuts}) == 1:
        return []
    trim, squared = asking.trim, 2 * asking.job.settings.squares_off
    wanted = [length for cut in cuts for length in cut]
    # A part as long as a whole stick leaves nothing over.
    wanted += [rest.length - squared for rest in trim.rests]
    wanted += [offer.length - squared for offer in trim.offers]
    every = dict.fromkeys([*cuts, *other_cuts(first, list(dict.fromkeys(wanted)))])
    return list(every)[: min(CUTS, PLANNED // pieces)]


__all__ = ["cut_alike"]
