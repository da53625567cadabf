"""Sticks: as a yard sells them, and as they lie in the shop, with what is wrong with them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from typing import Final

from trimlang.diagnostics import Span
from trimlang.language.stick_facts import DefectKind
from trimlang.lengths.tape import MM, Unit, feet_text, steps_up
from trimlang.money import money_text
from trimlang.record import record

SAFE_TO_HOLD: Final = Fraction(6)
"""Inches; shorter pieces are cut first, from a stick that is still long (common practice, no
source: the saw's manual decides)."""


@record
class Offer:
    """A way to buy sticks: ``price`` buys a pack of ``pack``, each ``length`` inches long.

    What a trim's offers of one ``bundle`` name is sold together: as many packs of each.
    ``batch`` is the colour batch, empty where the file names none.
    """

    length: Fraction
    price: Fraction
    pack: int
    at_most: int | None
    span: Span
    bundle: int | None = None
    batch: str = ""


@record
class MinimumOrder:
    """What a yard sells at least, where it sells any: so many sticks, worth so much."""

    sticks: int = 0
    spent: Fraction = Fraction(0)


@record
class Defect:
    """A stretch of a stick that no piece may have in it, in inches from the stick's left end."""

    kind: DefectKind
    start: Fraction
    end: Fraction


@record
class FlawedStick:
    """A stick in the shop with its defects, from the left."""

    length: Fraction
    defects: tuple[Defect, ...]
    span: Span


@record
class SoundPart:
    """What is left of a stick beside a defect: from ``start`` to ``end`` (inches)."""

    start: Fraction
    end: Fraction
    stick: FlawedStick


@record
class Rest:
    """``count`` offcuts of one length in the shop; ``price`` is for each of them.

    ``part`` says of which stick it is what a defect leaves.
    """

    length: Fraction
    count: int
    price: Fraction
    span: Span
    part: SoundPart | None = None
    batch: str = ""


def sound_parts(stick: FlawedStick, kerf: Fraction) -> tuple[SoundPart, ...]:
    """Return what is left of a stick once its defects are cut out, from the left.

    The blade goes into the defect, so nothing sound is lost to it.  A defect that is thinner than
    the blade's ``kerf`` is cut out in one pass from its left edge on, which takes the rest of the
    kerf off what lies to its right.  No part has anything of a defect in it, and between two
    parts there is room for the blade.

    A knot from 38 to 40 in in a stick of 144 in leaves the parts 0 to 38 and 40 to 144.
    """
    parts: list[SoundPart] = []
    at = Fraction(0)
    for defect in sorted(stick.defects, key=lambda one: (one.start, one.end)):
        if defect.start > at:
            parts.append(SoundPart(at, defect.start, stick))
        # One that begins at the stick's end needs no cut on its left, and none is thinner than
        # the blade that has to pass between two parts.
        at = max(at, defect.end, defect.start + kerf if defect.start > 0 else at)
    if stick.length > at:
        parts.append(SoundPart(at, stick.length, stick))
    return tuple(parts)


def share_price(price: Fraction, lengths: Sequence[Fraction]) -> tuple[Fraction, ...]:
    """Return what each part of what has one price is worth: by its length, to the cent.

    The longest takes what is left of the price.
    """
    if not lengths:
        return ()
    whole = sum(lengths, Fraction(0))
    # Down to the cent, so that the shares together are never more than what was paid; the few cents
    # that are left go to the longest part, where they weigh least.
    shares = [Fraction(int(price * 100 * one / whole), 100) for one in lengths]
    # Of longest ones alike the first, so that the prices are the same on every machine.
    longest = max(range(len(shares)), key=lambda at: (lengths[at], -at))
    shares[longest] += price - sum(shares, Fraction(0))
    return tuple(shares)


def likely_price(offers: Iterable[Offer], length: Fraction, pack: int = 1) -> str | None:
    """Return what a stick, or a pack, likely costs: as much a foot as the stick nearest in length.

    None where no stick has a price.
    """
    priced = [offer for offer in offers if offer.price]
    if not priced:
        return None
    nearest = min(priced, key=lambda offer: abs(offer.length - length))
    cents = round(nearest.price / nearest.pack / nearest.length * length * pack * 100)
    return money_text(Fraction(cents, 100))


def next_stick(offers: Iterable[Offer], length: Fraction, unit: Unit) -> str:
    """Return a stick for a piece that none reaches, as a stock line lists it, likely price and all.

    Sticks are sold every two feet or 30 cm (common practice, no source); an inch is lost where
    their ends are squared off.
    """
    long = steps_up(length + 1, 300 * MM if unit is Unit.MM else Fraction(24))
    price = likely_price(offers, long)
    return feet_text(long, unit) + (f" at {price}" if price else "")
