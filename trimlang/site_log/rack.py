"""The rack: the sticks of one trim that are in hand, by what the log says."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction
from typing import Final

from trimlang.record import record
from trimlang.stock.problem import Part
from trimlang.survey.job import Trim

SPOILED: Final = "spoiled "
"""Put before the name of a part that was cut off a stick and is no piece any more."""


class Origin(StrEnum):
    """Where a stick comes from: bought already, an offcut of the shop, or still to be bought."""

    HAND = "hand"
    SHOP = "shop"
    ORDER = "order"


@record
class BegunStick:
    """A stick that was cut from; ``done`` are the parts cut so far, from its left end.

    What a spoiled piece took stands there under its name behind ``SPOILED``.
    """

    name: str
    length: Fraction
    origin: Origin
    price: Fraction
    done: tuple[Part, ...]


@dataclass(frozen=True, slots=True, order=True)
class WholeStick:
    """A kind of stick that nothing was cut from.

    ``length`` in inches.  An offcut's ``price`` is due when it is first cut; a bought stick is
    paid for.
    """

    length: Fraction
    origin: Origin
    price: Fraction


class Rack:
    """The sticks in hand and the money spent; the replay of the log changes them."""

    def __init__(self, trim: Trim) -> None:
        self.trim = trim
        self.started: dict[str, BegunStick] = {}
        self.whole: Counter[WholeStick] = Counter()
        self.spent = Fraction(0)
        self.bought: Counter[Fraction] = Counter()
        for rest in trim.rests:
            self.whole[WholeStick(rest.length, Origin.SHOP, rest.price)] += rest.count

    @property
    def was_bought(self) -> bool:
        """Whether the yard has brought any of it: what it sells at least is met by now."""
        return bool(self.bought) or any(kind.origin is Origin.HAND for kind in self.whole)

    def buy(self, length: Fraction, count: int, price: Fraction) -> None:
        """Add ``count`` bought sticks; ``price`` is for all of them together."""
        self.whole[WholeStick(length, Origin.HAND, price / count)] += count
        self.bought[length] += count
        self.spent += price

    def put_back(self, length: Fraction) -> None:
        """Put what can still be used of a spoiled piece on the rack."""
        self.whole[WholeStick(length, Origin.SHOP, Fraction(0))] += 1

    def count(self, sticks: tuple[tuple[Fraction, int], ...]) -> None:
        """Take what was counted (lengths in inches, and how many) for everything that there is."""
        # A counted stick of a length that is sold is taken for a bought one; both are paid for by
        # now.
        sold = {offer.length for offer in (*self.trim.offers, *self.trim.logged)}
        self.started = {}
        self.whole = Counter()
        for length, count in sticks:
            origin = Origin.HAND if length in sold else Origin.SHOP
            self.whole[WholeStick(length, origin, Fraction(0))] += count

    def take(self, name: str, length: Fraction, prefers: Origin) -> bool:
        """Begin a stick of this length under a name; return whether one was in hand.

        ``prefers`` is the origin to take it from first.  Where none is in hand, one is bought
        by the stock lines, since the cut shows that it was there.
        """
        kinds = sorted(
            (kind for kind, count in self.whole.items() if count and kind.length == length),
            key=lambda kind: (kind.origin is not prefers, kind.origin, kind.price),
        )
        in_hand = bool(kinds)
        if not in_hand:
            offers = [
                offer for offer in (*self.trim.offers, *self.trim.logged) if offer.length == length
            ]
            if offers:
                # The smallest purchase that explains the stick.
                offer = min(offers, key=lambda one: (one.pack, one.price))
                self.buy(length, offer.pack, offer.price)
            else:
                self.buy(length, 1, Fraction(0))
            kinds = [
                kind
                for kind, count in self.whole.items()
                if count and kind.length == length and kind.origin is Origin.HAND
            ]
        kind = kinds[0]
        self.whole[kind] -= 1
        if kind.origin is Origin.SHOP:
            # An offcut's price is due when it is used; a stick of the yard was paid for when it
            # came.
            self.spent += kind.price
        self.started[name] = BegunStick(
            name=name, length=length, origin=kind.origin, price=kind.price, done=()
        )
        return in_hand

    def saw(self, name: str, part: Part) -> None:
        """Cut a part off a begun stick."""
        stick = self.started[name]
        self.started[name] = replace(stick, done=(*stick.done, part))

    def waste(self, piece: str) -> None:
        """Mark a piece as spoiled on its stick, which has lost its length all the same."""
        # The part keeps its place: what was cut after it lies where it lay.
        for name, stick in self.started.items():
            done = tuple(
                replace(part, id=f"{SPOILED}{piece}") if part.id == piece else part
                for part in stick.done
            )
            self.started[name] = replace(stick, done=done)
