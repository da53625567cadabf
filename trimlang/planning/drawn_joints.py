"""Joints of long walls drawn anew, all at once, and what no choice of joints costs less than."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from time import thread_time
from typing import Final

from trimlang.joinery.pieces import Places
from trimlang.joinery.spliced_pieces import Splice
from trimlang.planning.ask import Question
from trimlang.planning.free_walls import FreeWalls, free_walls
from trimlang.stock.joint_bound import JointBound
from trimlang.stock.joint_choice import chosen_parts
from trimlang.stock.joint_program import JoinedStick
from trimlang.stock.problem import Plan

SECONDS: Final = 10.0
"""Of work for a bound that is asked for alone."""


class DrawnJoints:
    """The search over all joints of one trim's free walls.

    ``question`` may have them cut in any places.  ``seconds`` is what is left of the time.
    """

    def __init__(
        self, question: Question, free: Sequence[Splice], seconds: Callable[[], float]
    ) -> None:
        self._free: FreeWalls = free_walls(question, free)
        self._seconds = seconds
        self._search = JointBound(self._free.fixed, self._free.runs, seconds)

    def bound(self, cost: int) -> int:
        """Return what the trim costs at least wherever its walls are joined, ``cost`` at most."""
        return self._free.shown(self._search, cost)

    def places(self, question: Question, plan: Plan, bound: int) -> Places:
        """Return places for the joints that may cost less than a plan of a question; or none."""
        # Without walls in whole steps only a bound can be had, no places.
        if not self._free.walls or self._seconds() <= 0:
            return {}
        parts = chosen_parts(
            self._search,
            self._free.walls,
            list(self._at_hand(plan)),
            plan.cost,
            bound,
            self._seconds(),
        )
        return {} if parts is None else self._free.places(parts, question.step)

    def _at_hand(self, plan: Plan) -> Iterator[JoinedStick]:
        """Yield the plan's sticks, their longest part of a wall drawn out over the offcut."""
        timber = self._search.timber
        size_of = {part: number for number, size in enumerate(timber.sizes) for part in size.ids}
        kind_of = {offer.key: k for k, kind in enumerate(timber.kinds) for offer in kind.offers}
        length_of = {part.id: part.length for part in plan.problem.parts}
        for stick in plan.sticks:
            # A blank that the search had no use for, such as an offcut shorter than every part.
            if stick.blank not in kind_of:
                continue
            kind = kind_of[stick.blank]
            pattern = tuple(sorted(size_of[part] for part in stick.parts if part in size_of))
            kerf = plan.problem.kerf
            parts = sorted(
                (length_of[part] + kerf for part in stick.parts if part not in size_of),
                reverse=True,
            )
            left = timber.kinds[kind].room - sum(parts)
            left -= sum(timber.sizes[size].weight for size in pattern)
            yield JoinedStick(kind, pattern, tuple(parts))
            # A part may grow into what is left of its stick, and the other parts of its wall become
            # shorter: that is how a joint that moves saves a stick elsewhere.
            if parts and left > 0:
                yield JoinedStick(kind, pattern, (parts[0] + left, *parts[1:]))


def least_anywhere(question: Question, free: Sequence[Splice], cost: int) -> int:
    """Return a lower bound on the trim's cost, wherever its free runs are spliced.

    In the smallest coin, and never above ``cost``.
    """
    ends = thread_time() + SECONDS
    return DrawnJoints(question, free, lambda: ends - thread_time()).bound(cost)


__all__ = ["DrawnJoints", "least_anywhere"]
