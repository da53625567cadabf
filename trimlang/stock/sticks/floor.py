"""Quick lower bounds on the money, in whole numbers only and without a solver.

Each is a *worth*: whole numbers for the sizes, and for each kind the most that
the sizes on one stick can be worth.  Whatever the plan, the sticks cut are
together worth no less than all the parts, so the cheapest sticks that are
worth enough bound the cost from below.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import inf
from typing import overload

from trimlang.record import record
from trimlang.stock.sticks.timber import Timber


@record
class Worth:
    """An inequality that holds for every plan: the sticks cut are worth ``needed`` or more.

    ``of_kind[k]`` is what a stick of a kind is worth at most, ``of_size`` what one piece of
    each size is worth (dual values, in the literature).
    """

    of_kind: tuple[int, ...]
    needed: int
    of_size: tuple[int, ...] = ()

    @overload
    def slack(self, counts: Sequence[int]) -> int: ...
    @overload
    def slack(self, counts: Sequence[float]) -> float: ...
    def slack(self, counts: Sequence[float]) -> float:
        """Return how much more these sticks are worth than is needed; negative: too little."""
        return sum(w * n for w, n in zip(self.of_kind, counts, strict=True)) - self.needed

    def beyond(self, counts: Sequence[int]) -> tuple[float, ...]:
        """Return how many pieces of each size these sticks may hold beyond those needed."""
        slack = self.slack(counts)
        return tuple(slack // value if value else inf for value in self.of_size)


def length_worth(timber: Timber) -> Worth:
    """Return the worth by length: every part is worth the least room that it takes."""
    return Worth(
        tuple(max(kind.room, 0) for kind in timber.kinds),
        sum(size.least * size.count for size in timber.sizes),
        tuple(size.least for size in timber.sizes),
    )


def cost_floor(timber: Timber, worth: Worth) -> int:
    """Return the least money, rounded up, for sticks worth enough plus the spare.

    Fractions of sticks may be bought here, the best worth for the money first,
    within the supply; the spare is added at the least price a length of any
    kind bought.
    """
    # This is a linear program whose best answer is known without a solver: take the sticks that
    # give most worth for their money first.
    total = spare_floor(timber)
    needed = Fraction(worth.needed)
    useful = [k for k in range(len(timber.kinds)) if worth.of_kind[k] > 0]
    for kind in sorted(useful, key=lambda k: (timber.kinds[k].rate / worth.of_kind[k], k)):
        supply = timber.kinds[kind].supply
        count = needed / worth.of_kind[kind]
        if supply is not None:
            count = min(count, Fraction(supply))
        total += count * timber.kinds[kind].rate
        needed -= count * worth.of_kind[kind]
        if needed <= 0:
            break
    return -(-total.numerator // total.denominator)


def spare_floor(timber: Timber) -> Fraction:
    """Return the least that the spare costs, by its length."""
    bought = [kind for kind in timber.kinds if not kind.on_hand]
    per_length = min((kind.rate / kind.length for kind in bought), default=Fraction(0))
    return per_length * timber.problem.spare


def count_floor(timber: Timber, worth: Worth) -> int:
    """Return the fewest sticks worth enough, those worth most first, within the supply."""
    needed, count = worth.needed, 0
    for kind in sorted(range(len(timber.kinds)), key=lambda k: -worth.of_kind[k]):
        each, supply = worth.of_kind[kind], timber.kinds[kind].supply
        if needed <= 0 or each <= 0:
            break
        more = -(-needed // each)
        more = more if supply is None else min(more, supply)
        count += more
        needed -= more * each
    return count
