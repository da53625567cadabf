"""Worths that show a rack of sticks too small, or how little of it may be wasted."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import permutations
from math import inf
from random import Random

from trimlang.stock.patterns.relaxation import Relaxation
from trimlang.stock.solver import HAIR
from trimlang.stock.sticks.floor import Worth
from trimlang.stock.sticks.timber import Timber

BLENDED = 8
"""How many worths are blended into one with the closest."""
FEW_BLENDED = 4
"""The same where mitres are shared, since pricing then takes longer."""
CHANGED = 1e-3
"""The part of the sticks by which a rack is changed to see what it then falls short of."""


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

        It is blended from several that each come close: what one does not tell apart another
        does.
        """
        shaken = Random(0)  # noqa: S311 - other demands, the same every time
        found = [self.closest(counts, None)]
        number = FEW_BLENDED if self._timber.leaning else BLENDED
        found += [self.closest(counts, shaken) for _ in range(number)]
        worths = [worth for worth in found if worth is not None]
        # One that the rack falls short of settles it, and is worth more than any blend.
        short = next((worth for worth in worths if worth.slack(counts) < 0), None)
        return short or (self._relaxation.blended(worths) if worths else None)

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

    def closest(self, counts: Sequence[int], shaken: Random | None) -> Worth | None:
        """Return the worth that comes closest to the rack's, of those met while saving length."""
        relaxation, closest = self._relaxation, None
        # Saving length gives other dual values than asking whether the rack is enough, and they
        # tell good patterns from wasteful ones.
        relaxation.pose_length(self._timber.demand, counts, shaken)
        fresh = 1
        while fresh and self._seconds() > 0:
            _, _, duals = relaxation.solve()
            if duals is None:
                break
            worth, fresh = relaxation.priced(duals)
            if worth is not None and (
                closest is None
                or worth.slack(counts) * closest.needed < closest.slack(counts) * worth.needed
            ):
                closest = worth
        return closest

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
