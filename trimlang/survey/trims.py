"""Reads trims, the sticks that they are sold as, and the offcuts on hand."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from fractions import Fraction
from math import floor
from typing import Final

from trimlang.diagnostics.place import place
from trimlang.diagnostics.suggestion import Suggestion
from trimlang.language import facts, tree
from trimlang.language.tree import OnHandLine, StockLine, TrimLine
from trimlang.lengths.tape import feet_text, length_text, mixed_number
from trimlang.lengths.units import in_inches
from trimlang.money import money_text
from trimlang.survey.job import Offer, Rest, Trim
from trimlang.survey.measures import Findings, length, money
from trimlang.survey.near_names import unknown_trim

# A limit on counts, so that a slip does not ask the planner for millions of sticks.
MOST_RESTS: Final = 10_000
SHORTEST_SOLD: Final = Fraction(6)
"""Inches; of shorter sticks the spare could need millions."""
SHORTEST_BARE: Final = Fraction(24)
"""Inches; a smaller number without a unit is most likely feet, as a yard says them."""


def read_trims(lines: Iterable[tree.Statement], unit: str, findings: Findings) -> dict[str, Trim]:
    """Return the job's trims by name, with their stock, in the order of the file."""
    lines = tuple(lines)
    trims: dict[str, Trim] = {}
    for line in lines:
        if isinstance(line, TrimLine):
            if line.name.text in trims:
                before = place(trims[line.name.text].span, line.name.span)
                findings.say("T213", line.name.span, trim=line.name.text, line=before)
                continue
            trims[line.name.text] = _trim(line, unit, findings)
    for name in sorted(lost_names(lines, "trim")):
        # Its line is reported already; with a stand-in, lines that name it bring up no further
        # finding.
        span = next(line.span for line in lines if isinstance(line, tree.Unreadable))
        stand_in = Trim(
            name=name,
            thickness=Fraction(1),
            height=Fraction(1),
            material=(),
            in_front_of=None,
            offers=(),
            rests=(),
            span=span,
        )
        trims.setdefault(name, stand_in)
    for line in lines:
        if isinstance(line, StockLine | OnHandLine):
            trim = trims.get(line.name.text)
            if trim is None:
                unknown_trim(line.name, trims, findings)
            elif isinstance(line, StockLine):
                offers = (_offer(offer, unit, findings) for offer in _priced(line, findings))
                added = tuple(offer for offer in offers if offer is not None)
                trims[trim.name] = replace(trim, offers=trim.offers + added)
                _check_prices(trims[trim.name], added, unit, findings)
            else:
                rests = (_rest(rest, unit, findings) for rest in line.rests)
                kept = tuple(rest for rest in rests if rest is not None)
                trims[trim.name] = replace(trim, rests=trim.rests + kept)
    _check_fronts(lines, trims, findings)
    return trims


def lost_names(lines: Iterable[tree.Statement], word: str) -> set[str]:
    """Return the second words of lines that begin with ``word`` and could not be read."""
    return {
        line.words[1]
        for line in lines
        if isinstance(line, tree.Unreadable)
        and len(line.words) == 2
        and line.words[0].lower() == word
    }


def _trim(line: TrimLine, unit: str, findings: Findings) -> Trim:
    thick: Fraction | None = None
    tall: Fraction | None = None
    material: list[str] = []
    front: str | None = None
    spring: Fraction | None = None
    of_trim = f"of trim “{line.name.text}”"
    for fact in line.facts:
        match fact:
            case facts.Thick():
                what = f"the thickness {of_trim}"
                thick = length(fact.length, unit, findings, what=what, fine=True)
            case facts.Tall():
                what = f"the height or width {of_trim}"
                tall = length(fact.length, unit, findings, what=what, fine=True)
            case facts.Spring(angle=angle):
                if 0 < angle.degrees < 90:
                    spring = angle.degrees
                else:
                    findings.say("T233", angle.span, what="a spring angle", least=1, most=89)
            case facts.InFrontOf():
                front = fact.trim.text
            case facts.Material():
                material.append(fact.words.text)
    return Trim(
        name=line.name.text,
        thickness=thick,
        height=tall,
        material=tuple(material),
        in_front_of=front,
        offers=(),
        rests=(),
        span=line.name.span,
        spring=spring,
    )


def _check_fronts(
    lines: Iterable[tree.Statement], trims: dict[str, Trim], findings: Findings
) -> None:
    """Report trims that stand in front of an unknown one, of themselves, or of a front trim."""
    for line in lines:
        if not isinstance(line, TrimLine):
            continue
        for fact in line.facts:
            if not isinstance(fact, facts.InFrontOf):
                continue
            word = fact.trim
            behind = trims.get(word.text)
            if behind is None:
                unknown_trim(word, trims, findings)
                trims[line.name.text] = replace(trims[line.name.text], in_front_of=None)
            elif behind.in_front_of is not None or behind.name == line.name.text:
                findings.say("T215", word.span, trim=line.name.text, behind=behind.name)
                trims[line.name.text] = replace(trims[line.name.text], in_front_of=None)


def read_count(number: tree.Number | None, findings: Findings) -> int | None:
    """Return a count of sticks: 1 where none is written, None where it is not possible."""
    if number is None:
        return 1
    if not 1 <= number.value <= MOST_RESTS:
        findings.say("T235", number.span, what="a count", least=1, most=MOST_RESTS)
        return None
    return int(number.value)


def stick_sold(measure: tree.Measure, unit: str, findings: Findings) -> Fraction | None:
    """Return a bought stick's length (inches), None where it is too short to be sold so.

    A bare number that is too short for inches was most likely meant as feet.
    """
    long = length(measure, unit, findings, what="a stick")
    if long is None:
        return None
    bare = unit == "in" and all(written is None for _, written in measure.parts)
    if long >= (SHORTEST_BARE if bare else SHORTEST_SOLD):
        return long
    remedy: str = "Write the length that the yard sells, such as 12 ft."
    if bare and long >= SHORTEST_SOLD:
        number = mixed_number(long)
        remedy = Suggestion(
            f"If feet were meant, write {number} ft; if it is as short as that, {number} in.",
            f"{number} ft",
        )
    findings.say("T116", measure.span, long=length_text(long, unit), remedy=remedy)
    return None


def _priced(line: tree.StockLine, findings: Findings) -> Iterator[tree.WrittenOffer]:
    """Yield a line's offers; one without a price takes the price a foot or metre that follows."""
    behind: tree.WrittenOffer | None = None
    offers: list[tree.WrittenOffer] = []
    for offer in reversed(line.offers):
        if offer.price is not None:
            behind = offer if offer.per is not None else None
            offers.append(offer)
        elif behind is not None:
            offers.append(replace(offer, price=behind.price, per=behind.per))
        else:
            findings.say("T254", offer.length.span, trim=line.name.text)
    yield from reversed(offers)


def _offer(line: tree.WrittenOffer, unit: str, findings: Findings) -> Offer | None:
    long = stick_sold(line.length, unit, findings)
    price = money(line.price, findings)
    pack = read_count(line.pack, findings)
    at_most = read_count(line.at_most, findings) if line.at_most else None
    if long is None or price is None or pack is None:
        return None
    if line.per is not None:
        # To the cent, half a cent up, as a till does.
        price = price * pack * long / in_inches(Fraction(1), line.per.unit)
        price = Fraction(floor(price * 100 + Fraction(1, 2)), 100)
    return Offer(length=long, price=price, pack=pack, at_most=at_most, span=line.span)


def _check_prices(trim: Trim, added: tuple[Offer, ...], unit: str, findings: Findings) -> None:
    """Report sticks with two prices, unless the cheaper ones are limited."""
    offers = trim.offers
    for at in range(len(offers) - len(added), len(offers)):
        offer = offers[at]
        same = [one for one in offers[:at] if (one.length, one.pack) == (offer.length, offer.pack)]
        other = next((one for one in same if one.price != offer.price), None)
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


def _rest(line: tree.WrittenRest, unit: str, findings: Findings) -> Rest | None:
    long = length(line.length, unit, findings, what="an offcut")
    price = money(line.price, findings)
    count = read_count(line.count, findings)
    if long is None or price is None or count is None:
        return None
    return Rest(long, count, price, line.span)
