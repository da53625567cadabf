"""What any number of sticks of one kind costs, from packs of several sizes and limits."""

from __future__ import annotations

from collections import deque
from collections.abc import Sequence
from fractions import Fraction
from typing import Final, TypeAlias

from trimlang.stock.problem import Blank, Purchase
from trimlang.stock.sticks.timber import Kind

Had: TypeAlias = tuple[int, tuple[int, ...]]
"""A price, and how many it pays for of each offer, or of each kind."""

FAR: Final = 1_000
"""The prices of more sticks than these are read off those of fewer."""


class PriceCurve:
    """The least price of n sticks or more of one kind, for every n asked so far."""

    def __init__(self, kind: Kind) -> None:
        self._kind = kind
        self._table: list[Had | None] = []
        only = kind.offers[0]
        self._single: Blank | None = only if len(kind.offers) == 1 else None
        # From which number on prices repeat, and after how many more sticks: from there on so many
        # more cost a fixed sum more, whatever is bought besides.
        self.repeats = 1 << 60, 1
        self._steady = steady_offer(kind)
        if self._steady is not None and kind.supply is None:
            pack = self._steady.pack
            # Of as many other packs as this one has sticks, some can be exchanged for whole ones.
            other = max((offer.pack for offer in kind.offers if offer.pack != pack), default=0)
            self.repeats = max((pack - 1) * (other - 1), 0), pack

    def price(self, count: int) -> int | None:
        """Return the least price of so many sticks or more; None: there are not so many."""
        if self._kind.supply is not None and count > self._kind.supply:
            return None
        if self._single is not None:
            return -(-count // self._single.pack) * self._single.price
        found = self._row(count)
        return None if found is None else found[0]

    def purchases(self, count: int) -> list[Purchase]:
        """Return the packs to buy at that price."""
        # One offer only, as in most jobs: no table is needed.
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
        start, pack = self.repeats
        packs = max((count - max(start, FAR)) // pack, 0)
        count -= packs * pack
        if count >= len(self._table):
            self._table = self._built(max(2 * count, 64))
        row = self._table[count]
        if row is None or self._steady is None or not packs:
            return row
        bought = [
            number + packs * (offer is self._steady)
            for number, offer in zip(row[1], self._kind.offers, strict=True)
        ]
        return row[0] + packs * self._steady.price, tuple(bought)

    def _built(self, most: int) -> list[Had | None]:
        """Return the prices of 0 to ``most`` sticks, offer after offer."""
        # The table must reach as far beyond as the last pack may: a pack of ten for the ninth
        # stick.
        table: list[Had | None] = [None] * (most + max(offer.pack for offer in self._kind.offers))
        table[0] = (0, ())
        for offer in self._kind.offers:
            table = _with_offer(table, offer)
        # From the exact numbers to "so many or more": a larger number may cost less.
        for count in range(len(table) - 2, -1, -1):
            more, here = table[count + 1], table[count]
            if more is not None and (here is None or more[0] < here[0]):
                table[count] = more
        return table[: most + 1]


def _with_offer(table: Sequence[Had | None], offer: Blank) -> list[Had | None]:
    """Return the table of exact numbers after packs of one more offer may be bought.

    At the same price fewer packs of the later offers are taken, which keeps the purchase simple.
    """
    # Numbers of sticks that differ by whole packs form a chain; along it the best start within
    # `packs` packs is a sliding-window minimum.
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


def steady_offer(kind: Kind) -> Blank | None:
    """Return the offer that is cheapest a stick and unlimited, in the smallest pack; None: none."""
    return min(
        (
            offer
            for offer in kind.offers
            if offer.limit is None and Fraction(offer.price, offer.pack) == kind.rate
        ),
        key=lambda offer: offer.pack,
        default=None,
    )


__all__ = ["Had", "PriceCurve", "steady_offer"]
