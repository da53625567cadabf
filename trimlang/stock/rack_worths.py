"""Worths that show a rack of sticks too small, or how little of it may be wasted."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from random import Random

from trimlang.stock.diving import HAIR
from trimlang.stock.floor import Worth
from trimlang.stock.relaxation import Relaxation
from trimlang.stock.sifting import slack_of
from trimlang.stock.timber import Timber

#: How many worths are blended into one with the closest.
BLENDED = 8
#: The same where mitres are shared, since pricing then takes longer.
FEW_BLENDED = 4
#: How many sizes may be kept from coming too often, and how many at first.  Each doubles the
#: work of a pricing.
ONCE = 4
ONCE_MORE = 2
#: The most table entries for a kind that this may lead to: room times sets of such sizes.
ROWS = 1 << 20


class RackWorths:
    """Finds worths for racks of one timber, with the linear program over patterns.

    ``centre``: a rack, in fractions of sticks, that is enough for the program and costs least.
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
        """Return a worth close to the rack's, which most patterns miss by far.

        It is blended from several that each come close: what one does not tell apart another
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
                or slack_of(worth, counts) * closest.needed
                < slack_of(closest, counts) * worth.needed
            ):
                closest = worth
        return closest

    def unrepeated(self, counts: Sequence[int]) -> Worth | None:
        """Return a worth that the rack does not reach, once some sizes may not come too often.

        Only nested pricing repeats a size, and only a few sizes can be kept from it (see ``ONCE``).
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
        """Return a worth that the rack does not reach; None where the program finds none.

        Patterns are priced until no more than the whole rack is needed.
        """
        for rack in (self._halfway(counts), counts):
            worth = self._worth_against(rack, counts)
            if worth is not None:
                return worth
        return None

    def _halfway(self, counts: Sequence[int]) -> Sequence[float]:
        """Return a rack between this one and the centre, nearer the centre.

        A worth that rules it out lies close to the program's optimum and rules out more mixes.
        """
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
