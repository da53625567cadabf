"""Looks for fewer sticks at the cost reached: fewer to carry, to square off and to keep apart."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final

from trimlang.stock.mixes.mix import Known, MixSearch
from trimlang.stock.packings.longest_first import fill_counts
from trimlang.stock.packings.packing import Packing, better, counts_of, packing_of
from trimlang.stock.search.cutting import Answer, RackCut
from trimlang.stock.sticks.floor import count_floor

FEW_KINDS: Final = 100
"""With more kinds of stick their numbers are not searched: each look would take seconds."""

TRIED: Final = 6
"""The most racks of fewer sticks tried."""


@dataclass(slots=True)
class Fewer:
    """The packing with the fewest sticks so far, and a number that no plan goes below."""

    packing: Packing
    stick_bound: int


def fewer_sticks(
    search: MixSearch,
    racks: RackCut,
    known: Known,
    packing: Packing,
    seconds: Callable[[], float],
    ruled_out: Callable[[Sequence[int], Answer], None],
) -> Fewer:
    """Lower the number of sticks of a packing, and raise the bound on it.

    ``ruled_out`` is called with each rack that holds too little.
    """
    seeker = _Seeker(search, racks, known, seconds, ruled_out)
    few = len(search.timber.kinds) <= FEW_KINDS
    return (seeker.by_mixes if few else seeker.by_longest_rests)(Fewer(packing, 0))


class _Seeker:
    def __init__(
        self,
        search: MixSearch,
        racks: RackCut,
        known: Known,
        seconds: Callable[[], float],
        ruled_out: Callable[[Sequence[int], Answer], None],
    ) -> None:
        self._search, self._racks, self._known = search, racks, known
        self._seconds, self._ruled_out = seconds, ruled_out

    def by_mixes(self, state: Fewer) -> Fewer:
        """Try the mix of fewest sticks that nothing known rules out."""
        for _ in range(TRIED):
            if self._seconds() <= 0:
                break
            counts, floor = self._search.fewest(self._known, state.packing.cost, self._seconds())
            state.stick_bound = max(state.stick_bound, floor)
            # Nothing is left between what is cut and what must be cut.
            if counts is None or len(state.packing.sticks) <= state.stick_bound:
                break
            if not self._cut(state, counts):
                break
        return state

    def by_longest_rests(self, state: Fewer) -> Fewer:
        """Keep the bought sticks, and as few of the longest free ones as best fit needs."""
        timber = self._search.timber
        state.stick_bound = max(count_floor(timber, worth) for worth in self._known.worths)
        free = [
            k for k, kind in enumerate(timber.kinds) if kind.to_be_used_up(timber.problem.spare)
        ]
        counts = counts_of(timber, state.packing.sticks)
        paid = [0 if kind in free else count for kind, count in enumerate(counts)]

        def rack(number: int) -> list[int]:
            taken = list(paid)
            for kind in free:
                taken[kind] = min(timber.most[kind], number)
                number -= taken[kind]
            return taken

        least = max(state.stick_bound - sum(paid), 0)
        most = sum(counts) - sum(paid)
        # A binary search: more of the free sticks never make a rack harder to fill, as a rule, and
        # a wrong turn only misses a better plan.
        while least < most and self._seconds() > 0:
            middle = (least + most) // 2
            sticks = fill_counts(timber, timber.demand, rack(middle))
            if sticks is None:
                least = middle + 1
            else:
                self._take(state, sticks)
                most = min(middle, len(state.packing.sticks) - sum(paid))
        return state

    def _cut(self, state: Fewer, counts: Sequence[int]) -> bool:
        """Try such a rack and return whether it was cut or ruled out."""
        answer = self._racks.cut(counts)
        if answer.sticks is not None:
            self._take(state, answer.sticks)
        elif answer.worth is not None:
            # The worth shows that such a rack holds too little, and the search for mixes learns
            # from it.
            self._known.worths.append(answer.worth)
        elif answer.impossible is not None:
            self._ruled_out(counts, answer)
        else:
            return False
        return True

    def _take(self, state: Fewer, sticks: Sequence[tuple[int, tuple[int, ...]]]) -> None:
        found = packing_of(self._search.timber, self._search.buying, sticks)
        # Sticks that were meant to be fewer may still cost more once they are bought in packs.
        state.packing = better(state.packing, found) or state.packing


__all__ = ["Fewer", "fewer_sticks"]
