"""How many sticks of each kind: the cheapest mix that nothing known rules out.

What is known of a mix is a list of worths (see ``floor``), each true of every
plan, and mixes already shown to hold too little.  A depth-first search over
counts, in whole numbers, finds the least money any mix passing them all could
cost.  That is a lower bound for every plan, and the mix is the next to try.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from math import lcm

from trimlang.stock.buying import Buying
from trimlang.stock.floor import Worth
from trimlang.stock.timber import Timber

#: Nodes that one search may visit before it gives up.
NODES = 40_000


@dataclass(frozen=True, slots=True)
class Mix:
    """Sticks of each kind to have, and their price with the spare."""

    counts: tuple[int, ...]
    cost: int


@dataclass(slots=True)
class Known:
    """What rules mixes out: worths, and mixes that hold too little."""

    worths: list[Worth]
    too_small: list[tuple[int, ...]] = field(default_factory=list)

    def rules_out(self, counts: Sequence[int]) -> bool:
        """Whether no plan can be cut from these sticks."""
        return any(
            sum(w * n for w, n in zip(worth.of_kind, counts, strict=True)) < worth.needed
            for worth in self.worths
        ) or self.holds_too_little(counts)

    def holds_too_little(self, counts: Sequence[int]) -> bool:
        """Whether the mix lies within one that was shown to be too small."""
        return any(
            all(n <= small for n, small in zip(counts, mix, strict=True)) for mix in self.too_small
        )


class MixSearch:
    """Searches for the cheapest mix; ``rates`` is the least price of one stick of each kind."""

    def __init__(self, timber: Timber, buying: Buying, rates: Sequence[Fraction]) -> None:
        self._timber = timber
        self._buying = buying
        self._unit = lcm(*(rate.denominator for rate in rates)) if rates else 1
        self._rates = [int(rate * self._unit) for rate in rates]
        bought = [k for k, kind in enumerate(timber.kinds) if not kind.on_hand]
        self._spare = min(
            (self._rates[k] * timber.problem.spare // timber.kinds[k].length for k in bought),
            default=0,
        )
        # Free sticks come first, all that can be had; then the dearest a length, so
        # that the last and most numerous kind follows from the others.
        parts = sum(timber.demand)
        self._most = [
            parts if kind.supply is None else min(kind.supply, parts) for kind in timber.kinds
        ]
        self._order = sorted(
            range(len(timber.kinds)),
            key=lambda k: (
                self._rates[k] != 0,
                -Fraction(self._rates[k], max(timber.kinds[k].room, 1)),
                k,
            ),
        )
        self.work = 0

    def cheapest(self, known: Known, below: int) -> tuple[Mix | None, int]:
        """The cheapest mix under a cost, and a lower bound on every such mix's cost.

        None with a bound of ``below``: no mix costs less.  None with a lower
        bound: the search gave up there.
        """
        depth = len(self._order)
        self._known = known
        self._tails = [[self._tail(worth, at) for at in range(depth + 1)] for worth in known.worths]
        self._left = NODES
        least = self._floor(0, [worth.needed for worth in known.worths], 0, 0)
        # Widening the cost step by step keeps the search near the least cost.
        step = max(1, (below - least) // 256)
        reached = least
        while reached < below:
            self._limit = min(below, reached + step)
            self._found: Mix | None = None
            counts = [0] * depth
            residual = [worth.needed for worth in known.worths]
            if not self._search(0, counts, residual, 0, 0):
                return None, reached
            if self._found is not None:
                return self._found, self._found.cost
            reached = self._limit
            step *= 2
        return None, max(reached, below)

    def _tail(self, worth: Worth, depth: int) -> list[tuple[int, int, int]]:
        """(rate, worth, most) of the kinds still open, the best worth for money first."""
        kinds = [k for k in self._order[depth:] if worth.of_kind[k] > 0]
        kinds.sort(key=lambda k: (Fraction(self._rates[k], worth.of_kind[k]), k))
        return [(self._rates[k], worth.of_kind[k], self._most[k]) for k in kinds]

    def _floor(self, depth: int, residual: Sequence[int], fixed: int, rated: int) -> int:
        """The least cost below a node; ``below`` any limit means it may go on."""
        dearest = 0
        for tails, needed in zip(self._tails, residual, strict=True):
            if needed <= 0:
                continue
            price = 0
            for rate, worth, most in tails[depth]:
                if needed <= worth * most:
                    price += -(-needed * rate // worth)
                    needed = 0
                    break
                price += rate * most
                needed -= worth * most
            if needed > 0:
                return 1 << 62
            dearest = max(dearest, price)
        unit = self._unit
        return max(fixed - (-dearest // unit), -(-(rated + dearest + self._spare) // unit))

    def _search(
        self, depth: int, counts: list[int], residual: list[int], fixed: int, rated: int
    ) -> bool:
        """Search below a node; False when the nodes have run out."""
        self._left -= 1
        self.work += 1
        if self._left < 0:
            return False
        if self._floor(depth, residual, fixed, rated) >= self._limit:
            return True
        if depth == len(self._order):
            self._leaf(counts)
            return True
        kind = self._order[depth]
        worths = [worth.of_kind[kind] for worth in self._known.worths]
        most, rate = self._most[kind], self._rates[kind]
        first = most if rate == 0 else self._first(depth, worths, residual)
        for count in range(first, most + 1):
            price = self._buying.least(kind, count)
            if price is None or fixed + price >= self._limit:
                break
            counts[depth] = count
            after = [r - count * w for r, w in zip(residual, worths, strict=True)]
            if not self._search(depth + 1, counts, after, fixed + price, rated + count * rate):
                return False
            last = depth == len(self._order) - 1
            if last and self._found is not None and self._found.cost <= fixed + price:
                break
        counts[depth] = 0
        return True

    def _first(self, depth: int, worths: Sequence[int], residual: Sequence[int]) -> int:
        """The fewest sticks of this kind with which the kinds after it can be enough."""
        first = 0
        for tails, worth, needed in zip(self._tails, worths, residual, strict=True):
            rest = sum(each * most for _, each, most in tails[depth + 1])
            if needed > rest:
                first = max(first, -(-(needed - rest) // worth) if worth else self._most[0] + 1)
        return first

    def _leaf(self, counts: Sequence[int]) -> None:
        by_kind = [0] * len(counts)
        for kind, count in zip(self._order, counts, strict=True):
            by_kind[kind] = count
        if self._known.holds_too_little(by_kind):
            return
        mix = tuple(by_kind)
        cost = self._buying.cost(mix)
        if cost is not None and cost < self._limit:
            self._found = Mix(mix, cost)
            self._limit = cost
