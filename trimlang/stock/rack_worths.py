"""Worths that show a rack of sticks too small, or how little of it may be wasted."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from random import Random

from trimlang.stock.diving import HAIR
from trimlang.stock.floor import Worth
from trimlang.stock.relaxation import Relaxation
from trimlang.stock.sifting import slack_of
from trimlang.stock.timber import Timber

#: Worths blended into one, beside the closest.
BLENDED = 8
#: The same where mitres are shared, since pricing then takes longer.
FEW_BLENDED = 4
#: Sizes kept from coming too often in all, and those that are first; each doubles a pricing.
ONCE = 4
ONCE_MORE = 2
#: The longest rows that this may lead to, of all sets of them.
ROWS = 1 << 20


class RackWorths:
    """Worths of the racks of one timber, from the program over patterns that bounds them.

    ``centre``: a rack, in parts of sticks, that is enough for the program and costs least.
    """

    def __init__(
        self,
        timber: Timber,
        relaxation: Relaxation,
        seconds: Callable[[], float],
        centre: Sequence[float] | None,
    ) -> None:
        self._timber = timber
        self._relaxation = relaxation
        self._seconds = seconds
        self._centre = centre

    def tightest(self, counts: Sequence[int]) -> Worth | None:
        """A worth close to the rack's, of which most patterns fall far short.

        It is blended from some that each come close: what one does not tell apart another
        does.
        """
        shaken = Random(0)  # noqa: S311 - other demands, the same every time
        found = [self.closest(counts, None)]
        number = FEW_BLENDED if self._timber.leaning else BLENDED
        found += [self.closest(counts, shaken) for _ in range(number)]
        worths = [worth for worth in found if worth is not None]
        short = next((worth for worth in worths if slack_of(worth, counts) < 0), None)
        return short or (self._relaxation.blended(worths) if worths else None)

    def closest(self, counts: Sequence[int], shaken: Random | None) -> Worth | None:
        """Of the worths met while as much length as can be is saved, the closest to the rack's."""
        relaxation, closest = self._relaxation, None
        relaxation.pose_length(self._timber.demand, counts, shaken)
        fresh = 1
        while fresh and self._seconds() > 0:
            _, _, duals = relaxation.solve()
            if duals is None:
                break
            worth, fresh = relaxation.priced(duals)
            if worth is not None and (
                closest is None
                or slack_of(worth, counts) * closest.needed
                < slack_of(closest, counts) * worth.needed
            ):
                closest = worth
        return closest

    def unrepeated(self, counts: Sequence[int]) -> Worth | None:
        """A worth that the rack falls short of where sizes that come too often no longer may.

        Only what nests repeats a size; a few sizes can be kept from it.
        """
        relaxation = self._relaxation
        longest = max((kind.room for kind in self._timber.kinds), default=0)
        most = ONCE if longest << ONCE <= ROWS else 0
        while len(relaxation.once) < most and self._seconds() > 0:
            relaxation.pose_length(self._timber.demand, counts)
            columns = relaxation.solve()[1]
            repeated = [] if columns is None else relaxation.repeated(columns)
            if not repeated:
                return None
            more = ONCE_MORE if not relaxation.once else 1
            relaxation.once += tuple(repeated[: min(more, most - len(relaxation.once))])
            worth = self.short(counts)
            if worth is not None:
                return worth
        return None

    def short(self, counts: Sequence[int]) -> Worth | None:
        """A worth that the rack falls short of, None where the program finds none.

        Patterns are priced until the share of the rack that is needed is no more than 1.
        """
        for rack in (self._halfway(counts), counts):
            worth = self._worth_against(rack, counts)
            if worth is not None:
                return worth
        return None

    def _halfway(self, counts: Sequence[int]) -> Sequence[float]:
        """A rack between the centre and this one: what rules it out rules out more beside it."""
        if self._centre is None:
            return counts
        return [(7 * one + other) / 8 for one, other in zip(self._centre, counts, strict=True)]

    def _worth_against(self, rack: Sequence[float], counts: Sequence[int]) -> Worth | None:
        relaxation = self._relaxation
        relaxation.pose_rack(self._timber.demand, rack)
        fresh = 1
        while fresh:
            share, _, duals = relaxation.solve()
            if duals is None or share <= 1 + HAIR or self._seconds() <= 0:
                return None
            worth, fresh = relaxation.priced(duals)
            if (
                worth is not None
                and slack_of(worth, counts) < 0
                and (not fresh or slack_of(worth, rack) < 0)
            ):
                return worth
        return None
