"""Worths that show a rack of sticks too small, or how little of it may be wasted."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import permutations
from math import inf

from trimlang.stock.patterns.relaxation import Relaxation
from trimlang.stock.solver import HAIR
from trimlang.stock.sticks.floor import Worth
from trimlang.stock.sticks.timber import Timber

CHANGED = 1e-3
"""The part of the sticks by which a rack is changed to see what it then falls short of."""

DEAR = 1e2
"""How many times as much as the dearest stick of a rack one that it has none of may be worth."""


class RackWorths:
    """Finds worths for racks of one timber, with the linear program over patterns."""

    def __init__(
        self,
        timber: Timber,
        relaxation: Relaxation,
        seconds: Callable[[], float],
    ) -> None:
        self._timber = timber
        self._relaxation = relaxation
        self._seconds = seconds

    def tightest(self, counts: Sequence[int]) -> Worth | None:
        """Return a worth close to the rack's, which most patterns miss by far.

        Many worths come as close, and a pattern misses one that lies amid them unless it
        misses none of them.
        """
        relaxation, closest = self._relaxation, None
        relaxation.pose_rack(self._timber.demand, counts, alone=True)
        relaxation.solve()
        fresh = 1
        while fresh and self._seconds() > 0:
            duals = relaxation.central_duals()
            if duals is None:
                break
            # Amid the best ones a stick that the rack has none of may be worth anything: it would
            # leave the others few digits.
            kinds = duals[len(self._timber.sizes) :]
            most = max((kinds[kind] for kind, count in enumerate(counts) if count), default=0.0)
            kinds[:] = kinds.clip(max=DEAR * most)
            worth, fresh = relaxation.priced(duals)
            closest = worth or closest
        return closest

    def around(self, usual: Sequence[float]) -> list[Worth]:
        """Return worths that racks of the same cost fall short of, each with more of another kind.

        ``usual`` is the cheapest rack that the program allows, in fractions of sticks.
        """
        kinds = self._timber.kinds
        bought = [k for k, kind in enumerate(kinds) if not kind.on_hand and kind.supply is None]
        found: list[Worth] = []
        for more, fewer in permutations(bought, 2):
            each = float(kinds[more].rate / kinds[fewer].rate) if kinds[fewer].rate else inf
            change = min(CHANGED * sum(usual), usual[fewer] / each)
            if change >= 1 and self._seconds() > 0:
                rack = list(usual)
                rack[more] += change
                rack[fewer] -= change * each
                worth = self.short(rack)
                found += [] if worth is None else [worth]
        return found

    def short(self, counts: Sequence[float]) -> Worth | None:
        """Return a worth that the rack does not reach; None where the program finds none.

        Patterns are priced until no more than the whole rack is needed.
        """
        relaxation = self._relaxation
        relaxation.pose_rack(self._timber.demand, counts)
        fresh = 1
        while fresh:
            share, _, duals = relaxation.solve()
            if duals is None or share <= 1 + HAIR or self._seconds() <= 0:
                return None
            worth, fresh = relaxation.priced(duals)
            if worth is not None and worth.slack(counts) < 0:
                return worth
        return None
