"""The sticks of one trim that are in hand, as the log tells of them."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Final

from trimlang.record import record
from trimlang.stock.problem import Part
from trimlang.survey.job import Trim

SPOILED: Final = "spoiled "
"""What stands before the name of a part that a stick has lost and that is no piece any more."""


@record
class BegunStick:
    """A stick that was cut from: ``done`` came off it, from its left end.

    What a spoiled piece took goes by its name behind ``SPOILED``.
    """

    name: str
    length: Fraction
    origin: str
    price: Fraction
    done: tuple[Part, ...]


@dataclass(frozen=True, slots=True, order=True)
class WholeStick:
    """A kind of stick that was not cut from: ``hand`` for bought ones, ``shop`` for offcuts.

    An offcut's ``price`` is due when it is first cut; a bought stick is paid.
    """

    length: Fraction
    origin: str
    price: Fraction


class Rack:
    """Sticks in hand and money spent; the log's replay moves them."""

    def __init__(self, trim: Trim) -> None:
        self.trim = trim
        self.started: dict[str, BegunStick] = {}
        self.whole: Counter[WholeStick] = Counter()
        self.spent = Fraction(0)
        self.bought: Counter[Fraction] = Counter()
        for rest in trim.rests:
            self.whole[WholeStick(rest.length, "shop", rest.price)] += rest.count

    def buy(self, length: Fraction, count: int, price: Fraction) -> None:
        """Add bought sticks; ``price`` is for all of them."""
        self.whole[WholeStick(length, "hand", price / count)] += count
        self.bought[length] += count
        self.spent += price

    def put_back(self, length: Fraction) -> None:
        """Put a rest on the rack."""
        self.whole[WholeStick(length, "shop", Fraction(0))] += 1

    def count(self, sticks: tuple[tuple[Fraction, int], ...]) -> None:
        """Take what was counted for all that there is."""
        sold = {offer.length for offer in (*self.trim.offers, *self.trim.logged)}
        self.started = {}
        self.whole = Counter()
        for length, count in sticks:
            origin = "hand" if length in sold else "shop"
            self.whole[WholeStick(length, origin, Fraction(0))] += count

    def take(self, name: str, length: Fraction, prefers: str) -> bool:
        """Begin a stick of this length under a name; tell whether one was in hand.

        Where none is, one is bought by the stock lines: a stick that is cut was had.
        """
        kinds = sorted(
            (kind for kind, count in self.whole.items() if count and kind.length == length),
            key=lambda kind: (kind.origin != prefers, kind.origin, kind.price),
        )
        in_hand = bool(kinds)
        if not in_hand:
            offers = [
                offer for offer in (*self.trim.offers, *self.trim.logged) if offer.length == length
            ]
            if offers:
                offer = min(offers, key=lambda one: (one.pack, one.price))
                self.buy(length, offer.pack, offer.price)
            else:
                self.buy(length, 1, Fraction(0))
            kinds = [
                kind
                for kind, count in self.whole.items()
                if count and kind.length == length and kind.origin == "hand"
            ]
        kind = kinds[0]
        self.whole[kind] -= 1
        if kind.origin == "shop":
            self.spent += kind.price
        self.started[name] = BegunStick(
            name=name, length=length, origin=kind.origin, price=kind.price, done=()
        )
        return in_hand

    def saw(self, name: str, part: Part) -> None:
        """Cut a part off a stick that was begun."""
        stick = self.started[name]
        self.started[name] = replace(stick, done=(*stick.done, part))

    def waste(self, piece: str) -> None:
        """Forget a spoiled piece by its name: the stick has lost its length all the same."""
        for name, stick in self.started.items():
            done = tuple(
                replace(part, id=f"{SPOILED}{piece}") if part.id == piece else part
                for part in stick.done
            )
            self.started[name] = replace(stick, done=done)
