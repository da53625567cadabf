"""A proof in whole numbers, without a solver: enough for most jobs of a house.

The same argument as in ``proof.py``, with simpler means: worths in whole steps
instead of a linear program, mixes enumerated instead of an integer program, and
racks filled stick by stick.  Every bound is exact.  Where this settles neither the
cost nor the number of sticks, the search goes on in ``proof.py`` from what was found.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from trimlang.stock.buying import Buying
from trimlang.stock.filling import fill_rack
from trimlang.stock.floor import Worth
from trimlang.stock.packing import Packing, packing_of
from trimlang.stock.steps import StepWorths
from trimlang.stock.timber import Timber
from trimlang.stock.whole_mix import Counts, TooManyMixesError, WholeMixes

MOST_PIECES: Final = 80
"""More pieces than these are left to the solver: beside them the time to load it is small."""

ROUNDS: Final = 60
"""The most mixes examined."""

UNFILLED: Final = 2
"""Mixes that nothing rules out and that could not be filled, before the search ends."""


@dataclass(slots=True)
class ShortProof:
    """The best packing, the bounds, the worths found, and whether nothing is left to search."""

    packing: Packing
    bound: int
    stick_bound: int
    worths: list[Worth]
    settled: bool = False
    reason: str = "worths in whole steps"
    work: int = 0


def short_proof(
    timber: Timber, buying: Buying, start: Packing, worths: Sequence[Worth]
) -> ShortProof:
    """Search for the least cost, then for the fewest sticks at that cost."""
    state = ShortProof(start, 0, 0, list(worths))
    if sum(timber.demand) > MOST_PIECES:
        return state
    search = _Search(timber, buying, state)
    try:
        search.settle_cost()
        if state.bound >= state.packing.cost:
            search.settle_sticks()
    except TooManyMixesError:
        pass
    state.work = search.mixes.work
    return state


def above(timber: Timber, buying: Buying, worths: Sequence[Worth], than: int) -> bool:
    """Return whether it is quickly shown that every plan costs more than that."""
    if sum(timber.demand) > MOST_PIECES:
        return False
    known, mixes, steps = list(worths), WholeMixes(timber, buying), StepWorths(timber)
    try:
        for _ in range(ROUNDS):
            found = mixes.cheapest(known, (), than + 1)
            if found is None:
                return True
            worth = steps.against(found[1])
            if worth is None:
                return False
            known.append(worth)
    except TooManyMixesError:
        pass
    return False


class _Search:
    """One search, and the state that it improves."""

    def __init__(self, timber: Timber, buying: Buying, state: ShortProof) -> None:
        self._timber, self._buying, self._state = timber, buying, state
        self.mixes = WholeMixes(timber, buying)
        self._steps = StepWorths(timber)

    def settle_cost(self) -> None:
        """Try the cheapest mix that nothing rules out, until none is cheaper than the packing."""
        state = self._state
        unfilled: list[Counts] = []
        for _ in range(ROUNDS):
            found = self.mixes.cheapest(state.worths, unfilled, state.packing.cost)
            if found is None:
                # Every mix below the packing's cost is ruled out, except perhaps those that could
                # not be filled: while there are any, the bound stays below them.
                state.bound = state.bound if unfilled else state.packing.cost
                return
            cost, counts = found
            if self._ruled_out(counts):
                continue
            if not unfilled:
                state.bound = cost
            if not self._filled(counts):
                unfilled.append(counts)
            if state.bound >= state.packing.cost or len(unfilled) == UNFILLED:
                return

    def settle_sticks(self) -> None:
        """Try mixes of fewer sticks at the cost reached."""
        state = self._state
        for _ in range(ROUNDS):
            found = self.mixes.fewest(state.worths, state.packing.cost, len(state.packing.sticks))
            if found is None:
                state.stick_bound = len(state.packing.sticks)
                state.settled = True
                return
            sticks, counts = found
            if self._ruled_out(counts):
                continue
            state.stick_bound = sticks
            if not self._filled(counts):
                return

    def _ruled_out(self, counts: Counts) -> bool:
        worth = self._steps.against(counts)
        if worth is not None:
            self._state.worths.append(worth)
        return worth is not None

    def _filled(self, counts: Counts) -> bool:
        """Try to cut everything from such a rack and return whether that improves the packing."""
        state = self._state
        sticks = fill_rack(self._timber, counts, self._steps.tightest(counts))
        packing = sticks and packing_of(self._timber, self._buying, sticks)
        if not packing or packing.rank >= state.packing.rank:
            return False
        state.packing = packing
        return True
