"""The most valuable patterns for given values of the sizes, in whole numbers.

A dynamic program over the room of the longest stick, size after size; every
shorter kind reads its answer from the same table.  Values are integers below
2**62 in total, so the answer is exact: it turns the rounded prices that a
linear program suggests into a bound that no rounding can break.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

from trimlang.stock.timber import Pattern


def most_valuable(
    values: Sequence[int], above: int, most: int, traced: Callable[[int], Pattern]
) -> list[Pattern]:
    """Up to ``most`` patterns worth more than ``above``, best first.

    ``values`` are what the best pattern with each last piece is worth; ``traced``
    gives that pattern, by the place of its value.
    """
    found: dict[Pattern, None] = {}
    for place in sorted(range(len(values)), key=lambda place: -values[place])[: 2 * most]:
        if values[place] <= above or len(found) >= most:
            break
        found[traced(place)] = None
    return list(found)


class Pricing:
    """One run of the dynamic program.

    Args:
        weights: of each size, in the problem's unit.
        rooms: of each kind, in the same unit.
        values: of one piece of each size.
        copies: how many pieces of each size a pattern may hold.
    """

    def __init__(
        self,
        weights: Sequence[int],
        rooms: Sequence[int],
        values: Sequence[int],
        copies: Sequence[int],
    ) -> None:
        import numpy as np

        self._weights = weights
        self._rooms = rooms
        most = max(max(rooms, default=0), 0)
        table = np.zeros(most + 1, dtype=np.int64)
        places = np.array([max(room, 0) for room in rooms], dtype=np.int64)
        # Each stage may take so many of one size; where it does is one row of bits.
        self._stages: list[tuple[int, int, Any]] = []
        ends: list[Any] = []
        for size, (weight, value, count) in enumerate(zip(weights, values, copies, strict=True)):
            if value <= 0 or weight > most:
                continue
            left = min(count, most // weight) if weight else count
            chunk = 1
            while left > 0:
                number = min(chunk, left)
                left -= number
                chunk *= 2
                load = number * weight
                reach = table[: most + 1 - load] + number * value
                at = places - load
                ends.append(np.where(at >= 0, reach[np.maximum(at, 0)], -1))
                self._stages.append((size, number, reach > table[load:]))
                np.maximum(table[load:], reach, out=table[load:])
        #: The greatest value of a pattern for each kind.
        self.best: list[int] = [int(value) for value in table[places]]
        self._ends = np.array(ends, dtype=np.int64).reshape(len(ends), len(rooms))

    def patterns(self, kind: int, above: int, most: int) -> list[Pattern]:
        """Up to ``most`` patterns for a kind worth more than ``above``, best first.

        Each ends with another size, so that they differ.
        """
        room = self._rooms[kind]
        values = self._ends[:, kind].tolist()
        return most_valuable(values, above, most, lambda stage: self._traced(stage, room))

    def _traced(self, last: int, room: int) -> Pattern:
        """The best pattern whose last stage is ``last``, back through the table."""
        size, number, _ = self._stages[last]
        pattern = [size] * number
        room -= number * self._weights[size]
        for stage in range(last - 1, -1, -1):
            size, number, take = self._stages[stage]
            at = room - number * self._weights[size]
            if at >= 0 and take[at]:
                pattern.extend([size] * number)
                room = at
        return tuple(sorted(pattern))
