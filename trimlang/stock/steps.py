"""Worths in a few whole steps, found and measured without a solver.

Split the longest room of some kind of stick into so many steps and count how
many each size covers: that is a worth in small whole numbers (a dual feasible
function).  Two families are used, those of Fekete and Schepers (2001) and of
Carlier, Clautiaux and Moukrim (2007).  What a stick can hold of such steps is
found exactly from the least room that each number of steps takes.  Then sizes
are *raised* as far as no stick becomes worth more by it, which for the pieces
of a house often gives the very values that a linear program would.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from math import gcd
from typing import Final

from trimlang.stock.floor import Worth
from trimlang.stock.timber import Timber

STEPS: Final = 8
"""A stick is split into no more steps than this."""

RAISED: Final = 24
"""Worths raised at most while one mix is looked at."""

Steps = list[int]
"""The least room that so many steps, or more, take; by the number of steps."""


class StepWorths:
    """The step worths of one timber, each measured once and raised when it is wanted."""

    def __init__(self, timber: Timber) -> None:
        self._weights = [size.least for size in timber.sizes]
        self._counts = [size.count for size in timber.sizes]
        self._rooms = [max(kind.room, 0) for kind in timber.kinds]
        self._top = max(self._rooms, default=0)
        self._seen: set[tuple[int, ...]] = set()
        self.plain: list[Worth] = []
        for found in self._families():
            divisor = gcd(*found)
            values = tuple(value // divisor for value in found) if divisor else ()
            if values and values not in self._seen:
                self._seen.add(values)
                self.plain.append(self._measured(values))
        self._raised: list[Worth] = []
        self.work = 0

    def against(self, counts: Sequence[int]) -> Worth | None:
        """Return a worth that so many sticks of each kind fall short of, None where none is known.

        The one that they fall short of most, of those that are known already.
        """
        known = min(
            (*self.plain, *self._raised), key=lambda worth: _slack(worth, counts), default=None
        )
        if known is not None and _slack(known, counts) < 0:
            return known
        self.plain.sort(key=lambda worth: _slack(worth, counts) * max(worth.needed, 1) ** 0.25)
        for _ in range(min(RAISED, len(self.plain))):
            raised = self.lifted(self.plain.pop(0))
            self._raised.append(raised)
            if _slack(raised, counts) < 0:
                return raised
        return None

    def tightest(self, counts: Sequence[int]) -> Worth | None:
        """Return the worth that leaves the least of so many sticks to waste."""
        return min(
            (*self._raised, *self.plain), key=lambda worth: _slack(worth, counts), default=None
        )

    def _families(self) -> Iterator[tuple[int, ...]]:
        """Yield the values of the sizes before they are raised."""
        for room in sorted({room for room in self._rooms if room > 0}, reverse=True):
            yield tuple(int(weight > room) for weight in self._weights)
            for steps in range(1, STEPS + 1):
                yield tuple(shares(weight, room, steps) for weight in self._weights)
            for steps in range(2, min(STEPS, room) + 1):
                yield tuple(rounded(weight, room, room // steps) for weight in self._weights)

    def _measured(self, values: tuple[int, ...]) -> Worth:
        table = [0]
        for weight, count, value in zip(self._weights, self._counts, values, strict=True):
            table = self._with(table, weight, count, value)
        needed = sum(n * value for n, value in zip(self._counts, values, strict=True))
        return Worth(tuple(_most(table, room) for room in self._rooms), needed, values)

    def _with(self, table: Steps, weight: int, count: int, value: int) -> Steps:
        """Return the least rooms after up to ``count`` pieces of one more size."""
        if value <= 0 or weight > self._top:
            return table
        for _ in range(min(count, self._top // weight if weight else count)):
            after = list(
                map(
                    min,
                    table + [self._top + 1] * value,
                    [weight] * value + [weight + room for room in table],
                )
            )
            while after[-1] > self._top:
                after.pop()
            table = after
        return table

    def lifted(self, worth: Worth) -> Worth:
        """Raise size after size, largest first, as far as no kind of stick becomes worth more."""
        values = list(worth.of_size)
        sizes = list(zip(self._weights, self._counts, strict=True))
        behind: list[Steps] = [[0]]
        for (weight, count), value in zip(reversed(sizes), reversed(values), strict=True):
            behind.append(self._with(behind[-1], weight, count, value))
        before: Steps = [0]
        for place, (weight, count) in enumerate(sizes):
            behind.pop()
            if 0 < weight <= self._top:
                values[place] = self._highest(weight, count, before, behind[-1], worth.of_kind)
            before = self._with(before, weight, count, values[place])
        needed = sum(n * value for n, value in zip(self._counts, values, strict=True))
        return Worth(worth.of_kind, needed, tuple(values))

    def _highest(
        self, weight: int, count: int, one: Steps, other: Steps, of_kind: Sequence[int]
    ) -> int:
        """Return the most steps for one size beside the others, on every kind of stick."""
        most: int | None = None
        for room, limit in zip(self._rooms, of_kind, strict=True):
            for number in range(1, min(count, room // weight) + 1):
                beside = _most_of_two(one, other, room - number * weight)
                value = (limit - beside) // number
                if most is None or value < most:
                    most = value
        return most or 0


def _slack(worth: Worth, counts: Sequence[int]) -> float:
    """Return how far a rack is above the worth needed, as a part of it; below 0: too little.

    Only its sign and order count: the whole numbers are small enough for a float.
    """
    held = sum(w * n for w, n in zip(worth.of_kind, counts, strict=True))
    return (held - worth.needed) / max(worth.needed, 1)


def shares(weight: int, room: int, steps: int) -> int:
    """Fekete and Schepers: so many steps to a room, each a little less than its share."""
    whole, rest = divmod(weight, room)
    return whole * steps + (((steps + 1) * rest - 1) // room if rest else 0)


def rounded(weight: int, room: int, cut: int) -> int:
    """Carlier, Clautiaux and Moukrim: whole cuts below half the room, what they leave above."""
    whole, rest = divmod(weight, room)
    cuts = room // cut
    if 2 * rest > room:
        part = 2 * (cuts - (room - rest) // cut)
    else:
        part = cuts if 2 * rest == room else 2 * (rest // cut)
    return whole * 2 * cuts + part


def _most(table: Steps, room: int) -> int:
    return bisect_right(table, room) - 1


def _most_of_two(one: Steps, other: Steps, room: int) -> int:
    """Return the most steps that two tables reach together within a room."""
    most, value = 0, len(other) - 1
    for steps, least in enumerate(one):
        left = room - least
        if left < 0:
            break
        while other[value] > left:
            value -= 1
        if steps + value > most:
            most = steps + value
    return most


__all__ = ["STEPS", "StepWorths", "rounded", "shares"]
