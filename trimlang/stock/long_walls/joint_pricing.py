"""What fixed pieces and parts of long walls are worth on a stick at most, whatever their values."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from trimlang.stock.long_walls.joint_program import JoinedStick
from trimlang.stock.long_walls.wall_divisions import Steps
from trimlang.stock.long_walls.wall_rooms import WallRooms, part_of
from trimlang.stock.patterns.nesting import Nesting
from trimlang.stock.patterns.pricing import Pricing
from trimlang.stock.sticks.mitres import most_shared
from trimlang.stock.sticks.timber import Timber

BATCH: Final = 12
"""Patterns added for one kind after one pricing."""


class JointPricing:
    """One run of the dynamic program.

    Args:
        timber: the fixed pieces.
        walls: the parts beside them, and how their leans are counted.
        values: what a piece of each size is worth.
        steps: what parts are worth.
    """

    def __init__(
        self, timber: Timber, walls: WallRooms, values: Sequence[int], steps: Steps
    ) -> None:
        self._fixed, self._lost = len(values), walls.lost
        self._rooms = [max(kind.room, 0) for kind in timber.kinds]
        self._pricing: Pricing | Nesting
        if walls.leans:
            parts = [
                (part_of(room, left, right), value)
                for room, value in steps
                for left, right in walls.leans
            ]
            self._items = [*timber.sizes, *(part for part, _ in parts)]
            self._weights = [item.weight for item in self._items]
            worths = [*values, *(value for _, value in parts)]
            self._pricing = Nesting(self._items, self._rooms, worths)
        else:
            self._items = []
            self._weights = [*(size.least for size in timber.sizes), *(room for room, _ in steps)]
            number = sum(sort.parts for sort in walls.sorts)
            self._pricing = Pricing(
                self._weights,
                self._rooms,
                [*values, *(value for _, value in steps)],
                [*timber.demand, *[number] * len(steps)],
                self._fixed,
                self._lost,
            )
        # The greatest worth of a pattern for each kind.
        self.best: list[int] = self._pricing.best

    def sticks(self, kind: int, above: int) -> Iterator[JoinedStick]:
        """Yield sticks of a kind that are worth more than ``above``, the best first."""
        for pattern in self._pricing.patterns(kind, above, BATCH):
            left = self._rooms[kind] - self._lost - sum(self._weights[item] for item in pattern)
            if self._items:
                ends = sorted((self._items[item].left, self._items[item].right) for item in pattern)
                left += most_shared(tuple(ends))[0]
            parts = sorted((self._weights[n] for n in pattern if n >= self._fixed), reverse=True)
            # what is left over makes the longest part longer
            drawn = (parts[0] + left, *parts[1:]) if parts else ()
            yield JoinedStick(kind, tuple(n for n in pattern if n < self._fixed), drawn)


__all__ = ["JointPricing"]
