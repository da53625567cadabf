"""What any number of sticks of one kind costs, from packs of several sizes and limits."""

from __future__ import annotations

from collections import deque
from collections.abc import Sequence
from typing import TypeAlias

from trimlang.stock.problem import Blank, Purchase
from trimlang.stock.sticks.timber import Kind

Had: TypeAlias = tuple[int, tuple[int, ...]]
"""A price, and how many it pays for of each offer, or of each kind."""


class PriceCurve:
    """The least price of n sticks or more of one kind, for every n asked so far."""

    def __init__(self, kind: Kind) -> None:
        self._kind = kind
        self._table: list[Had | None] = []
        only = kind.offers[0]
        self._single: Blank | None = only if len(kind.offers) == 1 else None

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
        if count >= len(self._table):
            self._table = self._built(max(2 * count, 64))
        return self._table[count]

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


__all__ = ["Had", "PriceCurve"]
