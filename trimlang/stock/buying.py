"""The cheapest way to buy a given number of sticks of each kind, and the spare."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator, Sequence
from fractions import Fraction
from functools import cache
from math import ceil, floor, lcm
from typing import Final, TypeAlias

from trimlang.stock.problem import Blank, Purchase
from trimlang.stock.timber import Kind, Timber

Had: TypeAlias = tuple[int, tuple[int, ...]]
"""A price, and how many sticks of each kind are had for it, in the order in which spare is kept."""

TRIED: Final = 3
"""Kinds tried as the one that most of the spare is kept of, for a first price."""


class Buying:
    """Prices of stick counts, remembered: one for each ``Timber``."""

    def __init__(self, timber: Timber) -> None:
        self.timber = timber
        self._curves = [_Curve(kind) for kind in timber.kinds]
        self._spare = timber.problem.spare
        bought = [k for k, kind in enumerate(timber.kinds) if not kind.on_hand]
        self._rates = [kind.rate / kind.length for kind in timber.kinds]
        steady = [k for k in bought if _steady_pack(timber.kinds[k])]
        # The one that keeps spare cheapest comes last: how many of it are kept then follows.
        last = min(steady, key=lambda k: (self._rates[k], -k), default=None)
        self._order = [k for k in bought if k != last] + ([] if last is None else [last])
        self._caps = {k: self._cap(k, last) for k in bought}
        self.cost = cache(self._cost)

    def _cap(self, kind: int, last: int | None) -> int | None:
        """More sticks of a kind need not be kept whole; None: any number may be worth it.

        So many of them are as long as whole packs of the kind that keeps spare cheapest,
        and no cheaper.
        """
        sort = self.timber.kinds[kind]
        if last is None or kind == last or len(sort.offers) > 1:
            return None
        if self._rates[kind] < self._rates[last]:
            return None
        pack = _steady_pack(self.timber.kinds[last])
        other = (pack or 1) * self.timber.kinds[last].length
        return lcm(sort.offers[0].pack * sort.length, other) // sort.length - 1

    def least(self, kind: int, count: int) -> int | None:
        """The least price of at least ``count`` sticks of a kind; None: not to be had."""
        return self._curves[kind].price(count)

    def _cost(self, counts: tuple[int, ...]) -> int | None:
        """The least price of these sticks and the spare; None: not to be had."""
        found = self._with_spare(counts)
        return None if found is None else found[0]

    def purchases(self, counts: tuple[int, ...]) -> tuple[Purchase, ...]:
        """What to buy for these sticks and the spare.

        Raises:
            ValueError: where they cannot be had; ask ``cost`` first.
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
        """The least price, and how many sticks of each kind in order to have for it."""
        prices = [curve.price(used) for curve, used in zip(self._curves, counts, strict=True)]
        known = [price for price in prices if price is not None]
        if len(known) < len(prices):
            return None
        if not self._spare:
            return sum(known), ()
        most = self._some_price(counts, known)
        if most is None:
            return None
        rests = sum(p for p, k in zip(known, self.timber.kinds, strict=True) if k.on_hand)
        # Covered spare length so far -> cheapest (price, counts had).
        states: dict[int, Had] = {0: (rests, ())}
        for place, kind in enumerate(self._order):
            states = _undominated(self._grown(states, place, counts, most))
            if kind == self._order[-1]:
                break
        return states.get(self._spare)

    def _grown(
        self, states: dict[int, Had], place: int, counts: Sequence[int], most: int
    ) -> dict[int, Had]:
        """The states after sticks of one more kind are had, but those sure to cost too much."""
        kind, later = self._order[place], self._order[place + 1 :]
        sort, curve, used = self.timber.kinds[kind], self._curves[kind], counts[kind]
        # what the kinds after this one cost at the least, used sticks and a length of spare
        base = sum((self.timber.kinds[k].rate * counts[k] for k in later), Fraction(0))
        rate = min((self._rates[k] for k in later), default=None)
        after: dict[int, Had] = {}
        for covered, (price, had) in states.items():
            need = self._spare - covered
            for whole in self._wholes(kind, used, need, rate, most - price - base):
                more = curve.price(used + whole)
                if more is None:
                    break
                reach = min(self._spare, covered + whole * sort.length)
                state = (price + more, (*had, used + whole))
                if state[0] + base + (rate or 0) * (self._spare - reach) > most:
                    continue
                if reach not in after or state < after[reach]:
                    after[reach] = state
        return after

    def _wholes(
        self, kind: int, used: int, need: int, rate: Fraction | None, left: Fraction
    ) -> range:
        """How many sticks of a kind may be kept whole, the later kinds' least rate a length given.

        ``left`` is the most that these and the later kinds' spare may cost.
        """
        sort = self.timber.kinds[kind]
        enough = -(-need // sort.length)
        if rate is None:
            return range(enough, enough + 1)
        least, most, cap = 0, enough, self._caps[kind]
        if cap is not None:
            most = min(most, cap)
        slope = sort.rate - rate * sort.length
        room = left - sort.rate * used - rate * need
        if slope > 0:
            most = min(most, floor(room / slope))
        elif slope < 0:
            least = max(least, min(ceil(room / slope), enough))
        # the last stick may reach past the spare, which the rate does not see
        return range(max(min(least, enough) - 1, 0), most + 1)

    def _some_price(self, counts: Sequence[int], prices: Sequence[int]) -> int | None:
        """A price of the sticks and the spare, most of it of one kind; None: not to be had."""
        found: list[int] = []
        cheap = sorted(self._order, key=lambda k: (self._rates[k], k))
        for first in range(min(TRIED, len(cheap))):
            order = [cheap[first], *cheap[:first], *cheap[first + 1 :]]
            had, need = list(counts), self._spare
            for kind in order:
                length, supply = self.timber.kinds[kind].length, self.timber.kinds[kind].supply
                more = need // length
                if supply is not None:
                    more = min(more, supply - had[kind])
                had[kind] += more
                need -= more * length
            found += self._ended(had, need, prices, counts)
        return min(found, default=None)

    def _ended(
        self, had: list[int], need: int, prices: Sequence[int], counts: Sequence[int]
    ) -> Iterator[int]:
        """Yield what is paid where one kind more covers what is left of the spare."""
        paid = [
            price if count == used else self._curves[kind].price(count)
            for kind, (count, used, price) in enumerate(zip(had, counts, prices, strict=True))
        ]
        known = [price for price in paid if price is not None]
        if len(known) < len(paid):
            return
        for kind in self._order:
            more = -(-need // self.timber.kinds[kind].length)
            price = self._curves[kind].price(had[kind] + more)
            if price is not None:
                yield sum(known) - known[kind] + price


def _steady_pack(kind: Kind) -> int | None:
    """The pack in which any number is had at the least price; None: there is none such."""
    packs = [
        offer.pack
        for offer in kind.offers
        if offer.limit is None and Fraction(offer.price, offer.pack) == kind.rate
    ]
    return min(packs, default=None)


def _undominated(states: dict[int, Had]) -> dict[int, Had]:
    """Drop each state that covers no more and costs no less than another."""
    kept: dict[int, Had] = {}
    cheapest: int | None = None
    for covered in sorted(states, reverse=True):
        if cheapest is None or states[covered][0] < cheapest:
            cheapest = states[covered][0]
            kept[covered] = states[covered]
    return kept


class _Curve:
    """The least price of at least n sticks of one kind, for n as far as asked."""

    def __init__(self, kind: Kind) -> None:
        self._kind = kind
        self._table: list[Had | None] = []
        only = kind.offers[0]
        self._single: Blank | None = only if len(kind.offers) == 1 else None

    def price(self, count: int) -> int | None:
        if self._kind.supply is not None and count > self._kind.supply:
            return None
        if self._single is not None:
            return -(-count // self._single.pack) * self._single.price
        found = self._row(count)
        return None if found is None else found[0]

    def purchases(self, count: int) -> list[Purchase]:
        if self._single is not None:
            packs: Sequence[int] = (-(-count // self._single.pack),)
        else:
            found = self._row(count)
            packs = () if found is None else found[1]
        return [
            Purchase(offer.key, number)
            for offer, number in zip(self._kind.offers, packs, strict=True)
            if number
        ]

    def _row(self, count: int) -> Had | None:
        if count >= len(self._table):
            self._table = self._built(max(2 * count, 64))
        return self._table[count]

    def _built(self, most: int) -> list[Had | None]:
        """Prices of 0 to ``most`` sticks, offer after offer."""
        # as many more as a last pack may hold beyond them
        table: list[Had | None] = [None] * (most + max(offer.pack for offer in self._kind.offers))
        table[0] = (0, ())
        for offer in self._kind.offers:
            table = _with_offer(table, offer)
        for count in range(len(table) - 2, -1, -1):
            more, here = table[count + 1], table[count]
            if more is not None and (here is None or more[0] < here[0]):
                table[count] = more
        return table[: most + 1]


def _with_offer(table: Sequence[Had | None], offer: Blank) -> list[Had | None]:
    """The table of exact numbers after packs of one more offer may be bought.

    The fewest of the offers that come late in a tie, which keeps the purchase plain.
    """
    packs = len(table) if offer.limit is None else offer.limit // offer.pack
    after: list[Had | None] = [None] * len(table)
    for start in range(min(offer.pack, len(table))):
        # places from which up to ``packs`` packs lead here, each dearer than those after it:
        # (price less what the packs to its place would cost, packs to its place, its row)
        window: deque[tuple[int, int, Had]] = deque()
        for number, place in enumerate(range(start, len(table), offer.pack)):
            row = table[place]
            if row is not None:
                level = row[0] - number * offer.price
                while window and window[-1][0] >= level:
                    window.pop()
                window.append((level, number, row))
            while window and number - window[0][1] > packs:
                window.popleft()
            if window:
                level, before, cheap = window[0]
                price = level + number * offer.price
                after[place] = (price, (*cheap[1], number - before))
    return after
