"""Joints of long walls drawn anew, all at once, and what no choice of joints costs less than."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from time import thread_time
from typing import Final

from trimlang.joinery.pieces import Places
from trimlang.joinery.spliced_pieces import Splice
from trimlang.planning.ask import Question
from trimlang.planning.free_walls import FreeWalls, free_walls
from trimlang.stock.long_walls.dividing import Dividing
from trimlang.stock.long_walls.joint_bound import JointBound

SECONDS: Final = 10.0
"""Of work for a bound that is asked for alone."""


class DrawnJoints:
    """The search over all joints of one trim's free walls; ``seconds`` is what is left for it."""

    def __init__(self, free: FreeWalls, seconds: Callable[[], float]) -> None:
        self._free = free
        self._seconds = seconds
        self._search = JointBound(free.fixed, free.runs, seconds)
        self._dividing = Dividing(self._search, free.walls, seconds)

    def bound(self, cost: int) -> int:
        """Return what the trim costs at least wherever its walls are joined, ``cost`` at most."""
        return self._free.shown(self._search, cost)

    def places(self, question: Question, cost: int, bound: int) -> Places:
        """Return places for the joints with which a question may cost less than a plan; or none."""
        # Without walls in whole steps only a bound can be had, no places.
        if not self._free.walls or self._seconds() <= 0:
            return {}
        parts = self._dividing.cheaper(cost, bound)
        return {} if parts is None else self._free.places(parts, question.step)

    def refuse(self) -> None:
        """Propose other places than the last: with those the pieces cost no less."""
        self._dividing.refuse()


def least_anywhere(question: Question, free: Sequence[Splice], cost: int) -> int:
    """Return a lower bound on the trim's cost, wherever its free runs are spliced.

    In the smallest coin, and never above ``cost``.
    """
    ends = thread_time() + SECONDS
    return DrawnJoints(free_walls(question, free), lambda: ends - thread_time()).bound(cost)


__all__ = ["DrawnJoints", "least_anywhere"]
