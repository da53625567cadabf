"""Prices patterns for the linear program (column generation), and proves worths from it.

The program's floating-point answers only suggest values of the sizes; ``priced``
rounds them and turns them into a ``Worth``, exact in whole numbers.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from enum import Enum, auto
from random import Random
from typing import Any

from trimlang.stock.patterns.chaining import Chaining
from trimlang.stock.patterns.nesting import Nesting
from trimlang.stock.patterns.pricing import SCALE, Pricing
from trimlang.stock.patterns.program import PatternProgram
from trimlang.stock.sticks.floor import Worth
from trimlang.stock.sticks.timber import Pattern, Timber

BATCH = 25
FIRST = 100
"""Patterns added for one kind after one pricing, and at the start."""
ALL_KINDS = 1_000
"""Patterns added for all kinds together after one pricing, where there are many kinds."""
MANY = 500
"""For every so many sizes all of these are added once more: of many sizes a pricing takes long."""
LONG_FOR = 8
"""At the start, the pieces that are too long for each of this many kinds are priced alone."""
POWERS = (0.95, 1.05)
"""At the start, pieces are worth their lengths to these powers: long or short ones a little
more.
"""
COPIES = 6
"""Pieces of one size that a chained pattern may hold."""
TOLERANCE = 1e-9
"""How far a pattern's value must exceed its price for it to be added."""


class Way(Enum):
    """How a pattern is priced where neighbours may share a mitre."""

    CHARGED = auto()
    """Each piece takes its least weight, whatever lies beside it."""
    NESTED = auto()
    """Pieces are laid one after another and share what they can, but a size may come more often
    than there are pieces of it."""
    CHAINED = auto()
    """The same, no piece too often, and only in some orders."""


class Relaxation(PatternProgram):
    """The program, to which pricing adds patterns; ``work`` counts pricings.

    ``mend`` removes from a priced pattern what does not fit when it is really laid.
    """

    def __init__(
        self,
        timber: Timber,
        sticks: Iterable[tuple[int, Pattern]],
        seconds: Callable[[], float],
        mend: Callable[[int, Pattern], Pattern] | None = None,
        way: Way = Way.CHARGED,
    ) -> None:
        super().__init__(timber, sticks, seconds, repeats=way is Way.NESTED)
        self.work = 0
        self._weights = [size.least for size in timber.sizes]
        self._seconds = seconds
        self._mend = mend
        self._way = way

    def _pricing(self, values: Sequence[int]) -> tuple[Pricing | Nesting | Chaining, Worth | None]:
        """Return the patterns worth most at these values, and the worth that they prove, if any."""
        if self._way is Way.CHAINED:
            # A piece of each that is wanted, in a new order each time: each order misses other
            # patterns.
            order = [s for s, count in enumerate(self.demand) for _ in range(min(count, COPIES))]
            Random(self.work).shuffle(order)  # noqa: S311 - other orders, the same every time
            return Chaining(self.timber.sizes, self._rooms, values, order), None
        pricing: Pricing | Nesting
        if self._way is Way.NESTED:
            # Patterns here may repeat a size, so one that is not wanted must be worth nothing at
            # all.
            values = [v if n else 0 for v, n in zip(values, self.demand, strict=True)]
            pricing = Nesting(self.timber.sizes, self._rooms, values)
        else:
            pricing = Pricing(self._weights, self._rooms, values, self.demand)
        # Reckoned with the same whole numbers as the patterns, so that rounding cannot spoil the
        # proof.
        needed = sum(v * n for v, n in zip(values, self.demand, strict=True))
        return pricing, Worth(tuple(pricing.best), needed, tuple(values))

    def begin(self) -> list[Worth]:
        """Add the patterns worth most where a piece is worth about as much as it is long.

        Then those where only pieces too long for a kind of stick are worth anything.
        Returns the worths met: they rule out mixes far from the cheapest.
        """
        np = self._np
        # Parts of the longest, so that powers near one only tilt the balance of long and short.
        longest = max((*self._weights, 1))
        parts = np.array([weight / longest for weight in self._weights])
        bought = {kind.room for kind in self.timber.kinds if not kind.on_hand}
        rooms = sorted(bought)[:LONG_FOR]
        values = [parts**power for power in POWERS]
        values += [np.where(parts * longest > room, parts, 0.0) for room in rooms]
        worths = [
            self.priced(np.append(value, np.zeros(self._kinds)), FIRST)[0]
            for value in values
            if value.any() and self._seconds() > 0
        ]
        return [worth for worth in worths if worth is not None]

    def priced(self, duals: Any, batch: int = BATCH) -> tuple[Worth | None, int]:
        """Price patterns at the duals; return the exact worth they give and how many were added.

        A chained relaxation gives no worth: it misses patterns.
        """
        np = self._np
        self.work += 1
        # Never zero, for it divides; where all is worth nothing, nothing is priced.
        dearest = max(float(np.max(duals)), 1e-12)
        scale = SCALE / dearest
        # From here on everything is exact: whatever whole numbers these are, the dynamic program
        # finds the greatest value of a stick, and that makes the inequality true.
        values = [int(value * scale) if value > 0 else 0 for value in duals[: self._sizes]]
        pricing, worth = self._pricing(values)
        fresh: list[tuple[int, Pattern]] = []
        # With many kinds fewer of each, or the program would drown in patterns.
        batch = max(self._sizes // MANY, 1) * min(batch, max(ALL_KINDS // self._kinds, 1))
        for kind in range(self._kinds):
            paid = int(max(duals[self._sizes + kind], 0.0) * scale)
            above = paid + int(TOLERANCE * SCALE)
            found = pricing.patterns(kind, above, batch)
            if self._mend is not None:
                found = [self._mend(kind, pattern) for pattern in found]
            fresh.extend((kind, pattern) for pattern in found)
        return worth, self.add(fresh)
