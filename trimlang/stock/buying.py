"""The cheapest way to buy a given number of sticks of each kind, and the spare."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

from trimlang.stock.problem import Blank, Purchase
from trimlang.stock.timber import Kind, Timber


class Buying:
    """Prices of stick counts, remembered: one for each ``Timber``."""

    def __init__(self, timber: Timber) -> None:
        self.timber = timber
        self._curves = [_Curve(kind) for kind in timber.kinds]
        self._spare = timber.problem.spare
        self.cost = cache(self._cost)

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
        bought: list[Purchase] = []
        for curve, count in zip(self._curves, found[1], strict=True):
            bought.extend(curve.purchases(count))
        return tuple(bought)

    def _with_spare(self, counts: tuple[int, ...]) -> tuple[int, tuple[int, ...]] | None:
        """The least price, and how many sticks of each kind to have for it."""
        # Covered spare length so far -> cheapest (price, counts had).
        states: dict[int, tuple[int, tuple[int, ...]]] = {0: (0, ())}
        for kind, curve, used in zip(self.timber.kinds, self._curves, counts, strict=True):
            choices = self._choices(kind, curve, used)
            if not choices:
                return None
            after: dict[int, tuple[int, tuple[int, ...]]] = {}
            for covered, (price, had) in states.items():
                for count, more, length in choices:
                    reach = min(self._spare, covered + length)
                    state = (price + more, (*had, count))
                    if reach not in after or state < after[reach]:
                        after[reach] = state
            states = _undominated(after)
        return states.get(self._spare)

    def _choices(self, kind: Kind, curve: _Curve, used: int) -> list[tuple[int, int, int]]:
        """Ways to have ``used`` sticks or more: (count, price, spare length left over)."""
        most = used
        if self._spare and not kind.on_hand:
            most += -(-self._spare // kind.length)
        choices: list[tuple[int, int, int]] = []
        for count in range(used, most + 1):
            price = curve.price(count)
            if price is None:
                break
            whole = 0 if kind.on_hand else (count - used) * kind.length
            choices.append((count, price, whole))
        return choices


def _undominated(
    states: dict[int, tuple[int, tuple[int, ...]]],
) -> dict[int, tuple[int, tuple[int, ...]]]:
    """Drop each state that covers no more and costs no less than another."""
    kept: dict[int, tuple[int, tuple[int, ...]]] = {}
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
        self._table: list[tuple[int, tuple[int, ...]] | None] = []
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

    def _row(self, count: int) -> tuple[int, tuple[int, ...]] | None:
        if count >= len(self._table):
            self._table = self._built(max(2 * count, 64))
        return self._table[count]

    def _built(self, most: int) -> list[tuple[int, tuple[int, ...]] | None]:
        """Prices of 0 to ``most`` sticks, offer after offer."""
        table: list[tuple[int, tuple[int, ...]] | None] = [None] * (most + 1)
        table[0] = (0, ())
        for offer in self._kind.offers:
            packs = None if offer.limit is None else offer.limit // offer.pack
            table = _with_offer(table, offer, packs)
        for count in range(most - 1, -1, -1):
            more, here = table[count + 1], table[count]
            if more is not None and (here is None or more[0] < here[0]):
                table[count] = more
        return table


def _with_offer(
    table: list[tuple[int, tuple[int, ...]] | None], offer: Blank, packs: int | None
) -> list[tuple[int, tuple[int, ...]] | None]:
    """The table after up to ``packs`` packs of one more offer may be bought."""
    most = len(table) - 1
    # A state is (price, packs of each offer so far): the fewest of the offers
    # that come late in a tie, which keeps the purchase plain.
    after: list[tuple[int, tuple[int, ...]] | None] = [
        None if row is None else (row[0], (*row[1], 0)) for row in table
    ]
    if packs is None:
        for start in range(most):
            row = after[start]
            if row is not None:
                _offer(after, min(most, start + offer.pack), row, offer.price, 1)
        return after
    for start, row in enumerate(table):
        if row is not None:
            for number in range(1, packs + 1):
                reach = min(most, start + number * offer.pack)
                _offer(after, reach, (row[0], (*row[1], 0)), number * offer.price, number)
                if reach == most:
                    break
    return after


def _offer(
    after: list[tuple[int, tuple[int, ...]] | None],
    reach: int,
    row: tuple[int, tuple[int, ...]],
    price: int,
    number: int,
) -> None:
    """Keep the cheaper of what ``after`` has at ``reach`` and ``row`` with more packs."""
    state = (row[0] + price, (*row[1][:-1], row[1][-1] + number))
    there = after[reach]
    if there is None or state < there:
        after[reach] = state
