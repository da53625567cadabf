"""A packing: which sizes lie on which kind of stick; and the best one so far beside the bound.

Which part of a size lies where, and what is bought, is decided later (``laying.py``).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from trimlang.record import record
from trimlang.stock.certificate import Certificate
from trimlang.stock.mixes.buying import Buying
from trimlang.stock.sticks.floor import Worth
from trimlang.stock.sticks.timber import Pattern, Timber


@record
class Packing:
    """The sticks to cut, as (kind, pattern) pairs, and what they cost with the spare."""

    sticks: tuple[tuple[int, Pattern], ...]
    cost: int

    @property
    def rank(self) -> tuple[int, int]:
        """What packings are compared by, smaller is better: money, then sticks."""
        return (self.cost, len(self.sticks))


@dataclass(slots=True)
class Incumbent:
    """The best packing so far, what no plan costs less than, and what shows that.

    ``racks`` hold too little: no choice among the patterns that a worth allows cuts everything.
    A bound of a coarser grid brings its own ``certificate``.  ``supply_short``: without a
    packing it is certain that there is none.
    """

    packing: Packing | None
    bound: int
    stick_bound: int
    worths: list[Worth]
    reason: str
    racks: list[tuple[tuple[int, ...], Worth]] = field(default_factory=list)
    certificate: Certificate | None = None
    supply_short: bool = True
    work: int = 0

    def take(self, packing: Packing | None) -> None:
        """Keep a packing if it is better than the one so far."""
        self.packing = better(self.packing, packing)

    def raise_bound(self, bound: int, reason: str) -> None:
        """Keep a bound, and how it was found, if it is higher than the one so far."""
        if bound > self.bound:
            self.bound, self.reason = bound, reason


def counts_of(timber: Timber, sticks: Iterable[tuple[int, Pattern]]) -> tuple[int, ...]:
    """Return how many sticks of each kind these are."""
    counts = [0] * len(timber.kinds)
    for kind, _ in sticks:
        counts[kind] += 1
    return tuple(counts)


def packing_of(
    timber: Timber, buying: Buying, sticks: Iterable[tuple[int, Pattern]]
) -> Packing | None:
    """Return the packing with its cost, spare included; None where the supply is too small."""
    # Read once: what is passed may be a generator, and its counts are taken from it too.
    held = tuple(sticks)
    cost = buying.cost(counts_of(timber, held))
    return None if cost is None else Packing(held, cost)


def better(one: Packing | None, other: Packing | None) -> Packing | None:
    """Return the better of two packings, the first in a tie; None counts as the worst."""
    if one is None or (other is not None and other.rank < one.rank):
        return other
    return one
