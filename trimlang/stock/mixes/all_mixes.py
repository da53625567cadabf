"""Every mix of sticks under a cost that satisfies the known worths, listed in arrays.

The mixes grow kind after kind: each row of an array is a choice of counts so far, and
is dropped as soon as what it still needs would cost too much, by any worth.  Limits on
the counts are worked out in floating point and eased by far more than its rounding errors;
the rows that are left are checked in whole numbers.  So no mix is lost, and none is kept
wrongly.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Final, TypeAlias

from trimlang.stock.mixes.buying import EASE, Buying
from trimlang.stock.sticks.floor import Worth, spare_floor
from trimlang.stock.sticks.timber import Timber

Counts: TypeAlias = tuple[int, ...]

CELLS: Final = 4_000_000
"""The most counts at once, rows times kinds; where there would be more, nothing is listed."""

SPARES: Final = 200
"""With more different beginnings of packs beside the spare nothing is listed."""

LARGEST: Final = 1 << 61
"""Whole numbers in the arrays stay below this."""

FLAT: Final = 1e-9
"""Coins a stick below which the count of a kind makes no difference to the cost."""


def held(counts: Any, worth: Worth) -> Any:
    """Return what the sticks of each row of counts are worth."""
    import numpy as np

    return counts @ np.array(worth.of_kind, dtype=np.int64)


class AllMixes:
    """Lists the mixes of one timber."""

    def __init__(self, timber: Timber, buying: Buying) -> None:
        import numpy as np

        self._np = np
        self._timber = timber
        self._buying = buying
        kinds = timber.kinds
        # rests first, then long sticks
        self._order = sorted(
            range(len(kinds)), key=lambda kind: (bool(kinds[kind].rate), -kinds[kind].room)
        )
        self._rates = [float(kind.rate) for kind in kinds]
        self._repeats = [buying.repeats(kind) for kind in range(len(kinds))]
        # Less than the spare can cost: it is paid for from the beginning, so that rows are dropped
        # early.
        self._spare = float(spare_floor(timber))
        self._curves: list[Any] = [np.zeros(0, dtype=np.int64) for _ in kinds]

    def below(self, worths: Sequence[Worth], cost: int, *, free: bool) -> tuple[Any, Any] | None:
        """Return every mix that costs less and that no worth rules out: counts by row, and costs.

        ``free``: sticks that cost nothing are always all taken, where they are no
        spare.  None: there are too many to list.
        """
        np = self._np
        useful = [worth for worth in worths if worth.needed > 0]
        most = self._timber.most
        # With numbers that may overflow no array is to be trusted.
        if not all(map(self._small, useful)):
            return None
        limit = cost + EASE + cost * 1e-12
        counts = np.zeros((1, len(most)), dtype=np.int64)
        paid = np.full(1, self._spare)
        for place, kind in enumerate(self._order):
            rate = self._rates[kind]
            # One count instead of many: who takes fewer of them saves nothing.
            if free and self._timber.kinds[kind].to_be_used_up(self._timber.problem.spare):
                counts[:, kind] = most[kind]
                continue
            least, greatest = self._limits(place, counts, paid, useful, limit)
            rows = np.maximum(greatest - least + 1, 0)
            total = int(rows.sum())
            if total * len(most) > CELLS:
                return None
            # Each row becomes as many rows as it has counts of this kind: least, least + 1, ...
            source = np.repeat(np.arange(len(rows)), rows)
            first = np.cumsum(rows) - rows
            number = np.arange(total) - first[source] + least[source]
            counts, paid = counts[source], paid[source] + number * rate
            counts[:, kind] = number
        for worth in useful:
            # In whole numbers, which takes back what was eased too far above.
            counts = counts[held(counts, worth) >= worth.needed]
        costs = self._costs(counts, cost)
        return None if costs is None else (counts[costs < cost], costs[costs < cost])

    def _limits(
        self, place: int, counts: Any, paid: Any, worths: Sequence[Worth], limit: float
    ) -> tuple[Any, Any]:
        """Return for each row the least and the greatest count of the next kind."""
        np = self._np
        kind, rest = self._order[place], self._order[place + 1 :]
        rate = self._rates[kind]
        least = np.zeros(len(paid))
        greatest = np.full(len(paid), float(self._timber.most[kind]))
        if rate:
            greatest = np.minimum(greatest, (limit - paid) / rate)
        for worth in worths:
            needs = worth.needed - held(counts, worth)
            each = worth.of_kind[kind]
            per = min(
                (self._rates[k] / worth.of_kind[k] for k in rest if worth.of_kind[k]), default=None
            )
            if per is None:
                if each:
                    least = np.maximum(least, needs / each)
                else:
                    greatest = np.where(needs > 0, -1.0, greatest)
                continue
            # What this kind leaves needed costs the later kinds at least `per` for each unit of
            # worth:
            # paid + rate * count + (needs - each * count) * per < limit, solved for the count.
            slope, room = rate - each * per, limit - paid - needs * per
            if abs(slope) <= FLAT:
                greatest = np.where(room < -EASE, -1.0, greatest)
            elif slope > 0:
                greatest = np.minimum(greatest, room / slope)
            else:
                least = np.maximum(least, room / slope)
        most = self._timber.most[kind]
        return (
            np.ceil(np.minimum(least, most + 1) - EASE).astype(np.int64),
            np.floor(np.maximum(greatest, -1.0) + EASE).astype(np.int64),
        )

    def _costs(self, counts: Any, below: int) -> Any | None:
        """Return what each mix costs, the sticks kept whole included; None: too many to work out.

        Mixes that surely cost no less than ``below`` are said to cost the largest number.
        """
        np = self._np
        costs = np.full(len(counts), LARGEST, dtype=np.int64)
        if not len(counts):
            return costs
        for kind, most in enumerate(counts.max(axis=0)):
            self._reach(kind, int(most))
        prices = [curve[counts[:, kind]] for kind, curve in enumerate(self._curves)]
        dear = np.logical_or.reduce([price == LARGEST for price in prices])
        total = np.sum([np.where(dear, 0, price) for price in prices], axis=0)
        if not self._timber.problem.spare:
            return np.where(dear, LARGEST, total)
        # What a begun pack leaves whole is spare, so only the rates bound the sum.
        least = counts @ np.array(self._rates) + self._spare
        near = ~dear & (least < below + EASE + below * 1e-12)
        # What the spare adds depends on how far a pack is begun, not on how many are bought.
        begun = counts[near]
        for kind, (start, pack) in enumerate(self._repeats):
            column = begun[:, kind]
            begun[:, kind] = np.where(column < start, column, start + (column - start) % pack)
        alike, which = np.unique(begun, axis=0, return_inverse=True)
        if len(alike) > SPARES:
            return None
        added = np.array([self._spare_beside(row) for row in alike.tolist()], dtype=np.int64)
        costs[near] = np.minimum(total[near] + added[which.reshape(-1)], LARGEST)
        return costs

    def _spare_beside(self, counts: Sequence[int]) -> int:
        """Return what the spare adds to the price of these sticks."""
        cost = self._buying.cost(tuple(counts))
        alone = (self._buying.least(kind, count) for kind, count in enumerate(counts))
        return LARGEST if cost is None else cost - sum(price or 0 for price in alone)

    def _reach(self, kind: int, most: int) -> None:
        """Make sure that the prices of up to so many sticks of a kind are known."""
        known = self._curves[kind]
        if most >= len(known):
            prices = [self._buying.least(kind, count) for count in range(len(known), 2 * most + 1)]
            more = [LARGEST if price is None else price for price in prices]
            self._curves[kind] = self._np.append(known, self._np.array(more, dtype=known.dtype))

    def _small(self, worth: Worth) -> bool:
        # Products of counts and worths must not overflow 64 bits.
        most = sum(w * n for w, n in zip(worth.of_kind, self._timber.most, strict=True))
        return worth.needed + most < LARGEST


__all__ = ["AllMixes", "Counts", "held"]
