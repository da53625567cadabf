"""The cheapest mix of sticks that satisfies a few worths, in whole numbers only.

``mix.py`` asks a solver the same question.  This is for the few kinds of stick that a
job mostly has: numbers of each kind are tried, and the number of the last follows from the worths.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence
from fractions import Fraction
from math import lcm
from typing import Final

from trimlang.stock.buying import Buying
from trimlang.stock.floor import Worth
from trimlang.stock.timber import Timber

Counts = tuple[int, ...]
"""How many sticks of each kind."""

NODES: Final = 3_000
"""The most numbers of sticks tried, in all searches of one timber together."""

FINE: Final = 1 << 20
"""Prices for a step of a worth are rounded down to this part of a coin."""


class TooManyMixesError(Exception):
    """There are more mixes than the search may try."""


class WholeMixes:
    """Searches for mixes of one timber; ``work`` counts the numbers tried."""

    def __init__(self, timber: Timber, buying: Buying) -> None:
        self._buying = buying
        self._kinds = range(len(timber.kinds))
        self._most = timber.most
        rates = [kind.rate for kind in timber.kinds]
        scale = lcm(*(rate.denominator for rate in rates))
        self._scale = scale * FINE
        self._rates = [int(rate * scale) * FINE for rate in rates]
        spare = min(
            (
                rate / kind.length
                for rate, kind in zip(rates, timber.kinds, strict=True)
                if not kind.on_hand
            ),
            default=Fraction(0),
        )
        self._spare = int(spare * timber.problem.spare * self._scale)
        # rests first, then long sticks; the last one's number follows
        self._order = sorted(
            self._kinds, key=lambda kind: (bool(rates[kind]), -timber.kinds[kind].room)
        )
        self._free = [kind.to_be_used_up(timber.problem.spare) for kind in timber.kinds]
        self.work = 0

    def cheapest(
        self, worths: Sequence[Worth], passed: Collection[Counts], below: int
    ) -> tuple[int, Counts] | None:
        """Return the least (cost, mix) under a cost; None: no mix costs less.

        Mixes ``passed`` are left out.

        Raises:
            TooManyMixesError: the search was given up.
        """
        best: tuple[int, Counts] | None = None

        def look(counts: Counts) -> int:
            nonlocal best
            cost = self._buying.cost(counts)
            limit = below if best is None else best[0]
            if cost is not None and cost < limit and counts not in passed:
                best = (cost, counts)
                limit = cost
            return limit

        self._search(worths, below, look, free=True)
        return best

    def fewest(self, worths: Sequence[Worth], cost: int, fewer: int) -> tuple[int, Counts] | None:
        """Return the least (number of sticks, mix) under ``fewer`` at a cost or less, or None.

        Raises:
            TooManyMixesError: the search was given up.
        """
        best: tuple[int, Counts] | None = None

        def look(counts: Counts) -> int:
            nonlocal best
            price, sticks = self._buying.cost(counts), sum(counts)
            limit = fewer if best is None else best[0]
            if price is not None and price <= cost and sticks < limit:
                best = (sticks, counts)
            return cost + 1

        self._search(worths, cost + 1, look, free=False)
        return best

    def _search(
        self,
        worths: Sequence[Worth],
        below: int,
        look: Callable[[Counts], int],
        *,
        free: bool,
    ) -> None:
        """Show ``look`` the mixes under a cost, without needless sticks of the last kind.

        ``look`` returns the cost to stay under from then on.  ``free``: sticks that
        cost nothing are always taken, where they are no spare.
        """
        useful = [worth for worth in worths if worth.needed > 0]
        # what one step of each worth costs at the least, from each place in the order on
        steps: list[list[int | None]] = []
        for worth in useful:
            least: list[int | None] = [None]
            for kind in reversed(self._order):
                each = worth.of_kind[kind]
                price = self._rates[kind] // each if each else None
                known = [one for one in (least[-1], price) if one is not None]
                least.append(min(known) if known else None)
            steps.append(least[::-1])
        limit = below
        counts = [0] * len(self._kinds)

        # Depth first: `paid` is the money so far, `needs` what each worth still lacks.
        def dive(place: int, paid: int, needs: list[int]) -> None:
            nonlocal limit
            self.work += 1
            if self.work > NODES:
                raise TooManyMixesError
            # Even at the best price a step, some worth cannot be reached within the money: give up.
            for need, least in zip(needs, steps, strict=True):
                if need > 0:
                    each = least[place]
                    if each is None or paid + need * each > (limit - 1) * self._scale:
                        return
            if place == len(self._order):
                limit = look(tuple(counts))
                return
            kind = self._order[place]
            of_kind = [worth.of_kind[kind] for worth in useful]
            most, rate = self._most[kind], self._rates[kind]
            start = 0
            if place == len(self._order) - 1:
                start = max(
                    (
                        -(-need // each) if each else most + 1
                        for need, each in zip(needs, of_kind, strict=True)
                        if need > 0
                    ),
                    default=0,
                )
                most = min(most, start)
            elif free and self._free[kind]:
                start = most
            for count in range(start, most + 1):
                if paid + count * rate > (limit - 1) * self._scale:
                    break
                counts[kind] = count
                rest = [n - count * each for n, each in zip(needs, of_kind, strict=True)]
                dive(place + 1, paid + count * rate, rest)
                if all(need <= 0 for need in rest):
                    break
            counts[kind] = 0

        dive(0, self._spare, [worth.needed for worth in useful])
