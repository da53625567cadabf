"""A packing: which sizes lie on which kind of stick, not yet which part or what is bought."""

from __future__ import annotations

from collections.abc import Iterable

from trimlang.record import record
from trimlang.stock.buying import Buying
from trimlang.stock.timber import Pattern, Timber


@record
class Packing:
    """Sticks to cut, as (kind, pattern) pairs, with what they cost to have."""

    sticks: tuple[tuple[int, Pattern], ...]
    cost: int

    @property
    def rank(self) -> tuple[int, int]:
        """Smaller is better: money, then sticks."""
        return (self.cost, len(self.sticks))


def counts_of(timber: Timber, sticks: Iterable[tuple[int, Pattern]]) -> tuple[int, ...]:
    """How many sticks of each kind."""
    counts = [0] * len(timber.kinds)
    for kind, _ in sticks:
        counts[kind] += 1
    return tuple(counts)


def packing_of(
    timber: Timber, buying: Buying, sticks: Iterable[tuple[int, Pattern]]
) -> Packing | None:
    """The packing with its cost, spare included, or None where it cannot be had."""
    held = tuple(sticks)
    cost = buying.cost(counts_of(timber, held))
    return None if cost is None else Packing(held, cost)


def better(one: Packing | None, other: Packing | None) -> Packing | None:
    """The better of two packings, the first in a tie."""
    if one is None or (other is not None and other.rank < one.rank):
        return other
    return one
