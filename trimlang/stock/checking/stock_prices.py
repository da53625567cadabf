"""The least cost of numbers of sticks, worked out again for the check of a proof.

Written separately from ``problem.py``; nothing here comes from the planner.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import ceil, floor, inf
from typing import Final

from trimlang.record import record
from trimlang.stock.problem import Blank, Problem

FORGIVEN: Final = 1e-3
"""Coins by which a limit is eased where rates in floating point are part of the cost."""


@record
class Sort:
    """Sticks of one length, bought or on hand, all at a price or all for nothing.

    ``rate`` is the least that one of them can cost, however many are bought; ``most`` the most that
    can be bought and used; ``all_taken`` says that they may as well all be cut.
    """

    length: int
    on_hand: bool
    offers: tuple[Blank, ...]
    rate: float
    most: int
    all_taken: bool


class StockPrices:
    """The sorts of sticks that a problem offers, and what numbers of them cost.

    ``spare_rate`` is the least that the spare adds to any cost.
    """

    def __init__(self, problem: Problem) -> None:
        pieces = len(problem.parts) + problem.survive_loss
        alike: dict[tuple[int, bool, bool], list[Blank]] = {}
        for blank in problem.blanks:
            alike.setdefault((blank.length, blank.on_hand, blank.price > 0), []).append(blank)
        sorts = sorted(
            (
                _sort(offers, pieces, problem.spare)
                for offers in map(_to_be_had, alike.values())
                if offers
            ),
            key=lambda sort: (sort.rate > 0, -sort.length, sort.on_hand),
        )
        # Free ones first, then the longest.
        self.kinds: list[Sort] = []
        # Each stick that is cut holds a piece, and a free rest does all that a shorter one does:
        # more free rests than pieces are of no use.
        free = pieces
        for sort in sorts:
            most = sort.most
            if sort.on_hand and not sort.rate:
                most = min(most, free)
                free -= most
            # Sticks of which none can be cut may still be the spare.
            if most or (problem.spare and not sort.on_hand):
                self.kinds.append(replace(sort, most=most))
        self._spare = problem.spare
        self._tables: list[list[int | None]] = [[] for _ in self.kinds]
        bought = [sort for sort in self.kinds if not sort.on_hand]
        least = min((sort.rate / sort.length for sort in bought), default=0.0)
        self.spare_rate = least * problem.spare

    def put_in(self, order: Sequence[int]) -> None:
        """Put the sorts in another order, given by the numbers that they have."""
        self.kinds = [self.kinds[at] for at in order]
        self._tables = [self._tables[at] for at in order]

    def at_least(self, counts: Sequence[int]) -> float:
        """Return a bound on their cost: without spare, or with it at the best rates.

        What is left whole in a pack is spare too.
        """
        prices = [self._least(sort, count) for sort, count in enumerate(counts)]
        known = [price for price in prices if price is not None]
        if len(known) < len(prices):
            return inf
        rates = sum(sort.rate * count for sort, count in zip(self.kinds, counts, strict=True))
        return max(sum(known), rates + self.spare_rate - FORGIVEN)

    def price(self, counts: Sequence[int], below: int) -> int | None:
        """Return the least cost of these sticks and the spare where it is below; else None."""
        if not self._spare:
            total = 0
            for sort, count in enumerate(counts):
                price = self._least(sort, count)
                if price is None:
                    return None
                total += price
            return total if total < below else None
        return self._with_spare(counts, below)

    def _with_spare(self, counts: Sequence[int], below: int) -> int | None:
        """Work out ``price`` with spare: sort after sort, how much is kept whole at what cost."""
        kinds = self.kinds
        later = sum(sort.rate * count for sort, count in zip(kinds, counts, strict=True))
        states = {0: 0}
        for place, (sort, count) in enumerate(zip(kinds, counts, strict=True)):
            later -= sort.rate * count
            rate = min(
                (s.rate / s.length for s in kinds[place + 1 :] if not s.on_hand), default=None
            )
            after: dict[int, int] = {}
            for covered, paid in states.items():
                needed = self._spare - covered
                most = 0 if sort.on_hand else -(-needed // sort.length)
                least = most if rate is None else 0
                # What is still missing then costs the later sorts' best rate at least.
                slope = sort.rate - sort.length * (rate or 0.0)
                left = below - paid - later - sort.rate * count - needed * (rate or 0.0)
                if slope > 0 and rate is not None:
                    most = min(most, floor((left + FORGIVEN) / slope))
                elif slope < 0:
                    # The last stick may be longer than the spare still missing.
                    least = max(least, min(ceil((left + FORGIVEN) / slope), most) - 1)
                for whole in range(least, most + 1):
                    price = self._least(place, count + whole)
                    if price is None or paid + price + later >= below + FORGIVEN:
                        break
                    missing = max(needed - whole * sort.length, 0)
                    if paid + price + later + missing * (rate or 0.0) >= below + FORGIVEN:
                        continue
                    reach = self._spare - missing
                    if paid + price < after.get(reach, below):
                        after[reach] = paid + price
            states = after
        return states.get(self._spare)

    def _least(self, sort: int, count: int) -> int | None:
        """Return the least price of ``count`` sticks or more; None: the supply is too small."""
        table = self._tables[sort]
        if count >= len(table):
            table = self._tables[sort] = _prices(self.kinds[sort].offers, max(2 * count, 32))
        return table[count]


def _to_be_had(offers: list[Blank]) -> list[Blank]:
    return [offer for offer in offers if _packs(offer) != 0]


def _sort(offers: list[Blank], pieces: int, spare: int) -> Sort:
    one = offers[0]
    limits = [_packs(offer) for offer in offers]
    known = [n * o.pack for n, o in zip(limits, offers, strict=True) if n is not None]
    # No plan cuts more sticks than there are pieces.
    most = min(sum(known), pieces) if len(known) == len(offers) else pieces
    return Sort(
        length=one.length,
        on_hand=one.on_hand,
        offers=tuple(offers),
        rate=min(offer.price / offer.pack for offer in offers),
        most=most,
        all_taken=not one.price and (one.on_hand or not spare),
    )


def _packs(offer: Blank) -> int | None:
    """Return how many packs of an offer there are; None: no limit."""
    return None if offer.limit is None else offer.limit // offer.pack


def _prices(offers: Sequence[Blank], most: int) -> list[int | None]:
    """Return the least prices of 0, 1, ... ``most`` sticks or more, from these offers together."""
    reach = most + max(offer.pack for offer in offers)
    table: list[int | None] = [0, *[None] * reach]
    for offer in offers:
        limit = _packs(offer)
        before, whole = list(table), offer.pack
        if limit is None or limit * whole > reach:
            for count in range(whole, reach + 1):
                table[count] = _less(table[count], table[count - whole], offer.price)
            continue
        for packs in range(1, limit + 1):
            for count in range(packs * whole, reach + 1):
                table[count] = _less(
                    table[count], before[count - packs * whole], packs * offer.price
                )
    for count in range(reach - 1, -1, -1):
        table[count] = _less(table[count], table[count + 1], 0)
    return table[: most + 1]


def _less(price: int | None, other: int | None, more: int) -> int | None:
    if other is None:
        return price
    return other + more if price is None else min(price, other + more)


__all__ = ["FORGIVEN", "Sort", "StockPrices"]
