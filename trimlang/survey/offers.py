"""Reads how sticks are sold: each length, packs, by the foot, cut to length, or without a price."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from fractions import Fraction
from math import ceil, floor
from typing import Final

from trimlang.diagnostics.place import place
from trimlang.diagnostics.suggestion import Suggestion
from trimlang.language import tree
from trimlang.language.stick_facts import RandomLengths
from trimlang.lengths.tape import MM, Unit, feet_text, length_text, mixed_number
from trimlang.lengths.units import in_inches
from trimlang.money import money_text, to_the_cent
from trimlang.survey.job import Offer, Trim
from trimlang.survey.measures import Findings, length, money

MOST_RESTS: Final = 10_000
SHORTEST_SOLD: Final = Fraction(6)
"""Inches: the spare could need millions of shorter ones."""
SHORTEST_BARE: Final = Fraction(24)
"""Inches: a smaller number without a unit is how feet are said at the yard."""
MOST_LENGTHS: Final = 100
"""More lengths than this, of one trim, are too many for the planner to choose among."""
YARD_SHORTEST: Final = {Unit.INCH: Fraction(48), Unit.MM: 1200 * MM}
"""Inches: what a yard still cuts, and what is of some use as spare (common practice, no source)."""
_YARD_STEP: Final = {Unit.INCH: Fraction(12), Unit.MM: 100 * MM}
"""Inches: a yard that cuts to length sells whole feet, or tenths of a metre (common practice, no
source)."""


def bought_by_length(lines: Iterable[tree.Statement]) -> bool:
    """Tell whether a file prices no stick at all, so that the least length is bought."""
    prices: list[tree.Price | None] = []
    for line in lines:
        match line:
            case tree.StockLine(offers=offers, facts=said):
                prices += [one.price for one in offers]
                prices += [one.price for one in said if isinstance(one, RandomLengths)]
            # A rest without a price is free, so it says nothing of whether the yard has prices.
            case tree.OnHandLine(rests=rests):
                prices += [one.price for one in rests if one.price is not None]
            case tree.BoughtLine(purchases=purchases):
                prices += [one.price for one in purchases if one.price is not None]
    return bool(prices) and all(price is None for price in prices)


def read_offers(
    line: tree.StockLine, trim: Trim, unit: Unit, findings: Findings, *, by_length: bool
) -> tuple[Offer, ...]:
    """Return the ways to buy a trim that a line adds to those it has.

    A yard that cuts to length offers each of its lengths, but those that are listed beside it
    keep their own price.  With ``by_length`` a stick costs as many inches as it is long.
    """
    found: list[Offer] = []
    cut_to_length: list[tree.WrittenOffer] = []
    for written in line.offers if by_length else _priced(line, findings):
        if written.any_length:
            cut_to_length.append(written)
            continue
        offer = _offer(written, unit, findings, by_length=by_length)
        if offer is not None:
            found.append(offer)
    for written in cut_to_length:
        # After the listed lengths of the same line, whichever stands first: those keep their own
        # price.
        price = None if by_length else money(written.price, findings)
        listed = {(one.length, one.pack) for one in (*trim.offers, *found)}
        found += [
            Offer(
                length=long,
                price=_cost(written, price, long),
                pack=1,
                at_most=None,
                span=written.span,
            )
            for long in _lengths(written, unit, findings)
            if (long, 1) not in listed
        ]
    return tuple(found)


def _lengths(line: tree.WrittenOffer, unit: Unit, findings: Findings) -> tuple[Fraction, ...]:
    """Return the lengths that a yard cuts, from the shortest."""
    longest = stick_sold(line.length, unit, findings)
    step: Fraction | None = _YARD_STEP[unit]
    shortest: Fraction | None = YARD_SHORTEST[unit]
    if line.step is not None:
        step = length(line.step, unit, findings, what="the step that a yard cuts to", fine=True)
    if line.shortest is not None:
        shortest = stick_sold(line.shortest, unit, findings)
    # One price for sticks of any length can only be by the foot or the metre.
    if line.price is not None and line.per is None:
        findings.say("T258", line.price.span, at=line.price.span.end)
        return ()
    if longest is None or step is None or shortest is None:
        return ()
    first, last = ceil(shortest / step), floor(longest / step)
    if last - first >= MOST_LENGTHS:
        span = line.length.span if line.step is None else line.step.span
        what = "the number of lengths that a yard cuts to"
        findings.say("T235", span, what=what, least=1, most=MOST_LENGTHS)
        return ()
    # the longest is sold too where it is no whole number of steps
    steps = (step * number for number in range(first, last + 1))
    return tuple(dict.fromkeys([*steps, longest]))


def read_count(number: tree.Number | None, findings: Findings) -> int | None:
    """Return a count of sticks: one where none is written, None where it cannot be."""
    if number is None:
        return 1
    if not 1 <= number.value <= MOST_RESTS:
        findings.say("T235", number.span, what="a count", least=1, most=MOST_RESTS)
        return None
    return int(number.value)


def stick_sold(measure: tree.Measure, unit: Unit, findings: Findings) -> Fraction | None:
    """Return a bought stick's length; None where it is none that is sold, or has lost its feet."""
    long = length(measure, unit, findings, what="a stick")
    if long is None:
        return None
    # Only inches are confused so: nobody means metres by a bare number of millimetres.
    bare = unit is Unit.INCH and all(written is None for _, written in measure.parts)
    if long >= (SHORTEST_BARE if bare else SHORTEST_SOLD):
        return long
    remedy: str = "Write the length that the yard sells, such as 12 ft."
    if bare and long >= SHORTEST_SOLD:
        number = mixed_number(long)
        remedy = Suggestion(
            f"If feet were meant, write {number} ft; if it is as short as that, {number} in.",
            f"{number} ft",
            f"{number} in",
        )
    findings.say("T116", measure.span, long=length_text(long, unit), remedy=remedy)
    return None


def _priced(line: tree.StockLine, findings: Findings) -> Iterator[tree.WrittenOffer]:
    """Yield a line's offers, those without a price at the price a foot or metre behind them."""
    behind: tree.WrittenOffer | None = None
    offers: list[tree.WrittenOffer] = []
    # From the right, because the price behind the last of several lengths is that of all of them.
    after: tree.WrittenOffer | None = None
    for offer in reversed(line.offers):
        before, after = after, offer
        if offer.price is None and _has_a_decimal_comma(offer, before, findings):
            continue
        if offer.price is not None:
            behind = offer if offer.per is not None else None
            offers.append(offer)
        elif behind is not None:
            offers.append(replace(offer, price=behind.price, per=behind.per))
        else:
            findings.say("T254", offer.length.span, trim=line.name.text)
    yield from reversed(offers)


def _has_a_decimal_comma(
    offer: tree.WrittenOffer, after: tree.WrittenOffer | None, findings: Findings
) -> bool:
    """Tell of ``2,4 m``, which reads as a stick of 2 and another one of 4 m; say whether it is."""
    (whole, unit), *more = offer.length.parts
    if after is None or unit or more or after.length.span.column != offer.length.span.end + 1:
        return False
    (part, unit), *more = after.length.parts
    if more or unit is None or part.denominator != 1:
        return False
    span = replace(offer.length.span, end=after.length.span.end)
    findings.say("T114", span, better=f"{whole}.{part} {unit}")
    return True


def _offer(
    line: tree.WrittenOffer, unit: Unit, findings: Findings, *, by_length: bool
) -> Offer | None:
    long = stick_sold(line.length, unit, findings)
    price = None if by_length else money(line.price, findings)
    pack = read_count(line.pack, findings)
    at_most = read_count(line.at_most, findings) if line.at_most else None
    if long is None or pack is None or (price is None and not by_length):
        return None
    return Offer(
        length=long,
        price=_cost(line, price, long * pack),
        pack=pack,
        at_most=at_most,
        span=line.span,
        batch="" if line.batch is None else line.batch.name.text,
    )


def _cost(line: tree.WrittenOffer, price: Fraction | None, long: Fraction) -> Fraction:
    """Return what so many inches of sticks cost; without a price as much as they are long."""
    if price is None:
        return long
    if line.per is None:
        return price
    # As the yard's till does it: each stick has a price in whole cents.
    return to_the_cent(price * long / in_inches(Fraction(1), line.per.unit))


def check_prices(trim: Trim, added: tuple[Offer, ...], unit: Unit, findings: Findings) -> None:
    """Report sticks that the file prices twice, unless the cheaper ones are limited."""
    offers = trim.offers
    for at in range(len(offers) - len(added), len(offers)):
        offer = offers[at]
        # What is bought with a whole bundle has no price of its own.
        apart = [one for one in offers[:at] if one.bundle is None and offer.bundle is None]
        kind = (offer.length, offer.pack, offer.batch)
        same = [one for one in apart if (one.length, one.pack, one.batch) == kind]
        other = next((one for one in same if one.price != offer.price), None)
        # Cheaper sticks of which the yard has only some are used up first: then two prices make
        # sense.
        if other is None or min(offer, other, key=lambda one: one.price).at_most is not None:
            continue
        long = feet_text(offer.length, unit)
        findings.say(
            "T248",
            offer.span,
            stick=f"a pack of {offer.pack} {long}" if offer.pack > 1 else f"a stick of {long}",
            trim=trim.name,
            price=money_text(offer.price),
            other=money_text(other.price),
            line=place(other.span, offer.span),
        )
