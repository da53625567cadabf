"""A packing: which sizes lie on which kind of stick.

Which part of a size lies where, and what is bought, is decided later (``laying.py``).
"""

from __future__ import annotations

from collections.abc import Iterable

from trimlang.record import record
from trimlang.stock.mixes.buying import Buying
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
