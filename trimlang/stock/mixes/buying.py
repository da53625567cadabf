"""The cheapest way to buy a given number of sticks of each kind, and the spare.

Packs make prices uneven: eleven sticks may cost less as two packs of ten.  The spare can be any
sticks that are long enough together, so it is chosen here, together with what is left in packs.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache, lru_cache
from math import ceil, floor
from typing import Final

from trimlang.stock.mixes.price_curve import Had, PriceCurve, steady_offer
from trimlang.stock.problem import Problem, Purchase
from trimlang.stock.sticks.timber import Kind, Timber

EASE: Final = 1e-3
"""Coins, or sticks, by which a limit is eased, beyond a part in a million million."""


class Buying:
    """The prices of stick counts, remembered.  One is made for each ``Timber``."""

    def __init__(self, timber: Timber) -> None:
        self.timber = timber
        self._curves = [PriceCurve(kind) for kind in timber.kinds]
        self._spare = timber.problem.spare
        bought = [k for k, kind in enumerate(timber.kinds) if not kind.on_hand]
        self._rates = [kind.rate / kind.length for kind in timber.kinds]
        self._each = [float(kind.rate) for kind in timber.kinds]
        steady = [k for k in bought if steady_offer(timber.kinds[k])]
        # The kind whose length is cheapest comes last: by then the number of it follows from the
        # rest.
        last = min(steady, key=lambda k: (self._rates[k], -k), default=None)
        self._order = [k for k in bought if k != last] + ([] if last is None else [last])
        # Where each stick costs the same however many are bought, the spare is the same beside any
        # others, and is found only once.
        self._even = all(_costs_the_same_each(timber.kinds[k]) for k in bought)
        self.cost = cache(self._cost)

    def least(self, kind: int, count: int) -> int | None:
        """Return the least price of ``count`` sticks or more; None: the supply is too small."""
        return self._curves[kind].price(count)

    def _cost(self, counts: tuple[int, ...]) -> int | None:
        """Return the least price of these sticks and the spare; None: the supply is too small."""
        found = self._with_spare(counts)
        return None if found is None else found[0]

    def purchases(self, counts: tuple[int, ...]) -> tuple[Purchase, ...]:
        """Return what to buy for these sticks and the spare.

        Raises:
            ValueError: the supply is too small for them; ask ``cost`` first.
        """
        found = self._with_spare(counts)
        if found is None:
            raise ValueError("these sticks cannot be had")
        having = list(counts)
        for kind, count in zip(self._order, found[1], strict=False):
            having[kind] = count
        bought: list[Purchase] = []
        for curve, count in zip(self._curves, having, strict=True):
            bought.extend(curve.purchases(count))
        return tuple(bought)

    def _with_spare(self, counts: tuple[int, ...]) -> Had | None:
        """Return the least price, and how many sticks of each kind it pays for; None: too few."""
        prices = [curve.price(used) for curve, used in zip(self._curves, counts, strict=True)]
        known = [price for price in prices if price is not None]
        if len(known) < len(prices):
            return None
        if not self._spare:
            return sum(known), ()
        if not self._even:
            return self.with_known_prices(counts, known)
        alone = _spare_alone(tuple(self.timber.kinds[k] for k in sorted(self._order)), self._spare)
        return alone and (
            sum(known) + alone[0],
            tuple(counts[k] + whole for k, whole in zip(self._order, alone[1], strict=True)),
        )

    def with_known_prices(self, counts: Sequence[int], known: Sequence[int]) -> Had | None:
        """Return the least price with the spare, where these sticks alone cost the known prices."""
        most = self._some_price(counts)
        if most is None:
            return None
        rests = sum(p for p, k in zip(known, self.timber.kinds, strict=True) if k.on_hand)
        # Covered spare length so far -> cheapest (price, counts had).
        # A dynamic program, kind after kind.  Rests in hand are no spare, so they are paid at once.
        states: dict[int, Had] = {0: (rests, ())}
        for place, kind in enumerate(self._order):
            # A way that covers no more spare than another and costs no less can only lose.
            states = _undominated(self._grown(states, place, counts, most))
            if kind == self._order[-1]:
                break
        return states.get(self._spare)

    def _grown(
        self, states: dict[int, Had], place: int, counts: Sequence[int], most: int
    ) -> dict[int, Had]:
        """Return the states after one more kind, without those sure to cost too much."""
        kind, later = self._order[place], self._order[place + 1 :]
        sort, curve, used = self.timber.kinds[kind], self._curves[kind], counts[kind]
        # what the kinds after this one cost at the least, used sticks and a length of spare
        # (Floats, eased by far more than their rounding: no state is dropped that might win.)
        base = sum(self._each[k] * counts[k] for k in later)
        rate = min((float(self._rates[k]) for k in later), default=None)
        limit = most + EASE + most * 1e-12
        after: dict[int, Had] = {}
        for covered, (price, taken) in states.items():
            need = self._spare - covered
            for whole in self._wholes(kind, used, need, rate, limit - price - base):
                more = curve.price(used + whole)
                if more is None:
                    break
                reach = min(self._spare, covered + whole * sort.length)
                state = (price + more, (*taken, used + whole))
                # Some way costs no more than this, so a state that must cost more leads nowhere.
                if state[0] + base + (rate or 0.0) * (self._spare - reach) > limit:
                    continue
                if reach not in after or state < after[reach]:
                    after[reach] = state
        return after

    def _wholes(self, kind: int, used: int, need: int, rate: float | None, left: float) -> range:
        """Return how many sticks of a kind it can pay to keep whole.

        ``rate`` is the later kinds' least price for a unit of length; ``left`` the most that these
        sticks and the later kinds' spare may cost.
        """
        sort = self.timber.kinds[kind]
        enough = -(-need // sort.length)
        # No kind comes after this one: it must cover the rest of the spare.
        if rate is None:
            return range(enough, enough + 1)
        least, most = 0, enough
        # What one more stick of this kind costs beyond the same length of the cheapest later kind:
        # price(n) is about rate * need + slope * n, which must stay below `left`.
        slope = self._each[kind] - rate * sort.length
        room = left - self._each[kind] * used - rate * need
        # One that is nearly flat limits nothing.
        if slope > EASE:
            most = min(most, floor(room / slope))
        elif slope < -EASE:
            least = max(least, min(ceil(room / slope), enough))
        # the last stick may reach past the spare, which the rate does not see
        return range(max(min(least, enough) - 1, 0), most + 1)

    def _some_price(self, counts: Sequence[int]) -> int | None:
        """Return some price at which the sticks and the spare can be bought; None: there is none.

        It bounds the dynamic program from above.
        """
        found: list[int] = []
        cheap = sorted(self._order, key=lambda k: (self._rates[k], k))
        # Each kind in turn gives as much of the spare as it can, the cheapest what is left.
        for first in cheap:
            having, need = list(counts), self._spare
            for kind in (first, *cheap):
                sort = self.timber.kinds[kind]
                more = max(-(-need // sort.length), 0)
                if sort.supply is not None:
                    more = min(more, sort.supply - having[kind])
                having[kind] += more
                need -= more * sort.length
            prices = [curve.price(n) for curve, n in zip(self._curves, having, strict=True)]
            known = [price for price in prices if price is not None]
            if need <= 0 and len(known) == len(prices):
                found.append(sum(known))
        return min(found, default=None)


@lru_cache(maxsize=64)
def _spare_alone(kinds: tuple[Kind, ...], spare: int) -> Had | None:
    """Return the cheapest spare beside nothing; many plans of one trim have the same."""
    problem = Problem("", (), (), spare=spare)
    nothing = [0] * len(kinds)
    return Buying(Timber(problem, (), kinds, False)).with_known_prices(nothing, nothing)


def _costs_the_same_each(kind: Kind) -> bool:
    """Whether any number of these can be had, at so much each."""
    only = kind.offers[0]
    return len(kind.offers) == 1 and only.pack == 1 and kind.supply is None


def _undominated(states: dict[int, Had]) -> dict[int, Had]:
    """Drop each state that covers no more spare than another and costs no less."""
    best: dict[int, Had] = {}
    cheapest: int | None = None
    for covered in sorted(states, reverse=True):
        if cheapest is None or states[covered][0] < cheapest:
            cheapest = states[covered][0]
            best[covered] = states[covered]
    return best
