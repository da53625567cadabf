"""Worths in a few whole steps, found and measured without a solver.

Split the longest room of some kind of stick into so many steps and count how
many each size covers: that gives a worth in small whole numbers (a dual feasible
function).  Two families are used, those of Fekete and Schepers (2001) and of
Carlier, Clautiaux and Moukrim (2007).  How many such steps a stick can hold is
found exactly from the least room that each number of steps takes.  Then sizes
are *raised* as long as no stick becomes worth more by it, which for the pieces
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
"""The most worths raised while one mix is examined."""

Steps = list[int]
"""At place n the least room that n steps or more take."""


class StepWorths:
    """The step worths of one timber, each measured once and raised when it is needed."""

    def __init__(self, timber: Timber) -> None:
        self._weights = [size.least for size in timber.sizes]
        self._counts = [size.count for size in timber.sizes]
        self._rooms = [max(kind.room, 0) for kind in timber.kinds]
        self._top = max(self._rooms, default=0)
        self._seen: set[tuple[int, ...]] = set()
        self.plain: list[Worth] = []
        for found in self._families():
            # Worths that differ by a factor only say the same.
            divisor = gcd(*found)
            values = tuple(value // divisor for value in found) if divisor else ()
            if values and values not in self._seen:
                self._seen.add(values)
                self.plain.append(self._measured(values))
        self._raised: list[Worth] = []
        self.work = 0

    def against(self, counts: Sequence[int]) -> Worth | None:
        """Return a worth that so many sticks of each kind do not reach; None: none is found.

        Of those known already, it is the one that they miss by most.
        """
        known = min(
            (*self.plain, *self._raised), key=lambda worth: _slack(worth, counts), default=None
        )
        if known is not None and _slack(known, counts) < 0:
            return known
        # Raising takes time, so the worths that the rack reaches by least come first; the fourth
        # root favours those in small numbers.
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
        """Yield the values of the sizes before they are raised, family after family."""
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
            # Numbers of steps that no stick has room for.
            while after[-1] > self._top:
                after.pop()
            table = after
        return table

    def lifted(self, worth: Worth) -> Worth:
        """Raise size after size, largest first, as far as no kind of stick becomes worth more."""
        values = list(worth.of_size)
        sizes = list(zip(self._weights, self._counts, strict=True))
        # For each size, the least rooms of all sizes after it; together with those before it
        # (already raised) they say what else may lie beside the size.
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
        """Return the most steps that one size may count so that no kind of stick is worth more."""
        most: int | None = None
        for room, limit in zip(self._rooms, of_kind, strict=True):
            for number in range(1, min(count, room // weight) + 1):
                best_beside = _most_of_two(one, other, room - number * weight)
                # `number` pieces of this size and the best of the others beside them may reach the
                # limit.
                value = (limit - best_beside) // number
                if most is None or value < most:
                    most = value
        return most or 0


def _slack(worth: Worth, counts: Sequence[int]) -> float:
    """Return how far a rack is above the worth needed, as a part of it; negative: too little.

    Only its sign and order matter: the whole numbers are small enough for a float.
    """
    held = sum(w * n for w, n in zip(worth.of_kind, counts, strict=True))
    return (held - worth.needed) / max(worth.needed, 1)


def shares(weight: int, room: int, steps: int) -> int:
    """Return how many of a room's steps a weight counts, after Fekete and Schepers.

    A weight x, as a part of the room, counts the largest whole number below (steps + 1) x.
    Weights that fit the room together then count less than steps + 1: ``steps`` at most.
    """
    whole, rest = divmod(weight, room)
    return whole * steps + (((steps + 1) * rest - 1) // room if rest else 0)


def rounded(weight: int, room: int, cut: int) -> int:
    """Return the steps of a weight after Carlier, Clautiaux and Moukrim.

    Up to half the room: the whole ``cut`` lengths that it holds; above half: all of the room's but
    those that fit beside it.  Doubled, so that exactly half the room counts a whole number.
    """
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
