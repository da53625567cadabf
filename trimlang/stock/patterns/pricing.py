"""Finds the most valuable patterns for given values of the sizes, in whole numbers.

A dynamic program over the room of the longest stick, size after size; every
shorter kind reads its answer from the same table.  Values are integers below
2**62 in total, so the answer is exact: it turns the rounded values that a
linear program suggests into a bound that no rounding can break.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any, Final

from trimlang.stock.sticks.timber import Pattern

SCALE: Final = 1 << 40
"""Values are scaled so that the dearest stick is worth about this much."""


def most_valuable(
    values: Sequence[int], above: int, most: int, traced: Callable[[int], Pattern]
) -> list[Pattern]:
    """Return up to ``most`` patterns worth more than ``above``, best first.

    ``values`` are what the best pattern with each last piece is worth; ``traced``
    gives that pattern, by the place of its value.
    """
    found: dict[Pattern, None] = {}
    for place in sorted(range(len(values)), key=lambda place: -values[place])[: 2 * most]:
        # Sorted by worth, so none behind it is better.
        if values[place] <= above or len(found) >= most:
            break
        found[traced(place)] = None
    return list(found)


class Pricing:
    """One run of the dynamic program (a bounded knapsack).

    Args:
        weights: of each size, in the problem's unit.
        rooms: of each kind, in the same unit.
        values: of one piece of each size.
        copies: how many pieces of each size a pattern may hold.
        first: the first of the sizes that no stick holds without having less room.
        lost: how much less.
    """

    def __init__(
        self,
        weights: Sequence[int],
        rooms: Sequence[int],
        values: Sequence[int],
        copies: Sequence[int],
        first: int = 0,
        lost: int = 0,
    ) -> None:
        import numpy as np

        self._first, self._lost = first, lost
        self._weights = weights
        self._rooms = rooms
        most = max(max(rooms, default=0), 0)
        table = np.zeros(most + 1, dtype=np.int64)
        places = np.array([max(room, 0) for room in rooms], dtype=np.int64)
        # Each stage takes 1, 2, 4, ... pieces of one size, or none: with these every number up to
        # the count can be made, in few stages.  Where a stage takes its pieces is a row of bits.
        self._stages: list[tuple[int, int]] = []
        for size, (weight, value, count) in enumerate(zip(weights, values, copies, strict=True)):
            if value > 0 and weight <= most:
                left = min(count, most // weight) if weight else count
                chunk = 1
                while left > 0:
                    self._stages.append((size, min(chunk, left)))
                    left -= min(chunk, left)
                    chunk *= 2
        self._takes = np.zeros((len(self._stages), most + 1), dtype=np.bool_)
        ends: list[Any] = []
        for stage, (size, number) in enumerate(self._stages):
            load = number * weights[size]
            reach = table[: most + 1 - load] + number * values[size]
            at = places - self._lost_by(size) - load
            ends.append(np.where(at >= 0, reach[np.maximum(at, 0)], -1))
            np.greater(reach, table[load:], out=self._takes[stage, load:])
            np.maximum(table[load:], reach, out=table[load:])
        # The greatest value of a pattern in each room up to the longest.
        self.by_room = table
        # For each stage the best pattern of each kind that ends with it: these differ from each
        # other, and adding several at once saves solving the linear program in between.
        self._ends = np.array(ends, dtype=np.int64).reshape(len(ends), len(rooms))
        # The greatest value of a pattern for each kind.
        self.best: list[int] = self._ends.max(axis=0, initial=0).tolist()

    def patterns(self, kind: int, above: int, most: int) -> list[Pattern]:
        """Return up to ``most`` patterns for a kind worth more than ``above``, best first.

        Each has another last stage, so that they differ.
        """
        room = self._rooms[kind]
        values = self._ends[:, kind].tolist()

        def traced(stage: int) -> Pattern:
            return self._traced(stage, room - self._lost_by(self._stages[stage][0]))

        return most_valuable(values, above, most, traced)

    def pattern_in(self, room: int) -> Pattern:
        """Return the pattern worth most in a room."""
        takes = self._takes[:, room][::-1]
        back = int(takes.argmax()) if len(takes) else 0
        if not len(takes) or not takes[back]:
            return ()
        return self._traced(len(takes) - 1 - back, room)

    def _lost_by(self, size: int) -> int:
        return self._lost if size >= self._first else 0

    def _traced(self, last: int, room: int) -> Pattern:
        """Return the best pattern whose last stage is ``last``, followed back through the table."""
        pattern: list[int] = []
        stage = last
        while True:
            size, number = self._stages[stage]
            pattern += [size] * number
            room -= number * self._weights[size]
            before = self._takes[:stage, room][::-1]
            # The nearest earlier stage that takes pieces at this room: the one before in the
            # pattern.
            back = int(before.argmax()) if stage else 0
            if not stage or not before[back]:
                return tuple(sorted(pattern))
            stage -= back + 1
