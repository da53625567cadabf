"""Reads trims, the sticks that they are sold as, and the offcuts on hand."""

from __future__ import annotations

import re
from collections.abc import Container, Iterable
from dataclasses import replace
from fractions import Fraction
from types import MappingProxyType
from typing import Final

from trimlang.diagnostics.place import place
from trimlang.diagnostics.suggestion import Suggestion
from trimlang.language import facts, tree
from trimlang.language.stick_facts import BatchScope
from trimlang.language.tree import OnHandLine, StockLine, TrimLine
from trimlang.lengths.tape import Unit
from trimlang.settings.table import Settings
from trimlang.survey.in_front import in_front
from trimlang.survey.job import Offer, Trim
from trimlang.survey.least_order import check_suppliers, check_supply, read_minimum
from trimlang.survey.measures import Findings, length
from trimlang.survey.near_names import KERFED, KERFED_ANYWAY, unknown_trim
from trimlang.survey.offers import bought_by_length, check_prices, read_offers
from trimlang.survey.on_hand import read_rests
from trimlang.survey.random_lengths import read_random_lengths

_SAID_OF_THE_TRIM: Final = MappingProxyType(
    {
        "flexible": frozenset({"flex", "flexi", "bends", "bendable", "bendy", "pliable"}),
        "one way": frozenset(
            {
                "one direction", "one directional", "directional", "directional grain",
                "directional pattern", "grain one direction", "grain one way",
                "pattern one way", "handed",
            }
        ),
    }
)  # fmt: skip
"""Words of the language by what is written for them, which would be taken for a material."""

_PLACE: Final = re.compile(
    r"(?:before|over|against|ahead of|(?P<behind>behind|in back of)) +(?:the +)?"
    r"(?P<other>\S+)",
    re.IGNORECASE,
)
"""Where a trim stands, as it is often written."""


def read_trims(
    lines: Iterable[tree.Statement], settings: Settings, findings: Findings
) -> dict[str, Trim]:
    """Return the job's trims by name, with their stock, in the order of the file."""
    unit = settings.unit
    lines = tuple(lines)
    by_length = bought_by_length(lines)
    trims: dict[str, Trim] = {}
    names = {line.name.text for line in lines if isinstance(line, TrimLine)}
    for line in lines:
        if isinstance(line, TrimLine):
            # The first one holds, since stock lines and walls above may already mean it.
            if line.name.text in trims:
                before = place(trims[line.name.text].span, line.name.span)
                findings.say("T213", line.name.span, trim=line.name.text, line=before)
                continue
            trims[line.name.text] = _trim(line, unit, findings)
            _ask_of_material(line, names, findings)
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
    # In a second pass, so that a stock line may stand above its trim.
    for line in lines:
        if isinstance(line, StockLine | OnHandLine):
            trim = trims.get(line.name.text)
            if trim is None:
                unknown_trim(line.name, trims, findings)
            elif isinstance(line, StockLine):
                added = read_offers(line, trim, unit, findings, by_length=by_length)
                added += _random_lengths(line, trim, unit, findings)
                trims[trim.name] = replace(
                    trim,
                    offers=trim.offers + added,
                    supplier=_said(line, facts.Supplier) or trim.supplier,
                    profile=_said(line, facts.ProfileCode) or trim.profile,
                    batch_by=_batch_by(line) or trim.batch_by,
                    minimum=read_minimum(line, trim.minimum, findings, by_length=by_length),
                    minimum_in_all=read_minimum(
                        line, trim.minimum_in_all, findings, by_length=by_length, in_all=True
                    ),
                )
                check_prices(trims[trim.name], added, unit, findings)
            else:
                rests = tuple(
                    one
                    for rest in line.rests
                    for one in read_rests(rest, unit, findings, kerf=settings.kerf)
                )
                trims[trim.name] = replace(trim, rests=trim.rests + rests)
    for line in lines:
        if isinstance(line, StockLine) and line.name.text in trims:
            check_supply(trims[line.name.text], line, findings)
    check_suppliers(lines, trims, findings)
    return in_front(lines, trims, findings)


def lost_names(lines: Iterable[tree.Statement], word: str) -> set[str]:
    """Return the names that stand beside ``word`` at the beginning of lines that are not read."""
    found: set[str] = set()
    for line in lines:
        if isinstance(line, tree.Unreadable) and len(line.words) == 2:
            one, other = line.words
            if one.lower() == word:
                found.add(other)
            # “base trim: …” has the two the wrong way round.
            elif other.lower() == word:
                found.add(one)
    return found


def _trim(line: TrimLine, unit: Unit, findings: Findings) -> Trim:
    thick: Fraction | None = None
    tall: Fraction | None = None
    material: list[str] = []
    flexible = False
    front: str | None = None
    upon: str | None = None
    spring: Fraction | None = None
    girth: Fraction | None = None
    of_trim = f"of trim “{line.name.text}”"
    for fact in line.facts:
        match fact:
            # Sections come from a catalogue, in thousandths; so they may be finer than a tape.
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
            case facts.Girth():
                what = f"the girth {of_trim}"
                girth = length(fact.length, unit, findings, what=what, fine=True)
            case facts.InFrontOf():
                front = fact.trim.text
            case facts.StandsOn():
                upon = fact.trim.text
            case facts.Material(words=words):
                material.append(words.text)
            case facts.Flexible(words=words):
                flexible = True
                # What it is made of is ordered with it: a yard that hears “flexible” sends another
                # stick.
                material.append("flexible" if words is None else f"flexible {words.text}")
    if girth is not None and tall is not None and girth < tall:
        where = next(fact.span for fact in line.facts if isinstance(fact, facts.Girth))
        findings.say("T727", where)
    return Trim(
        name=line.name.text,
        thickness=thick,
        height=tall,
        material=tuple(material),
        flexible=flexible,
        one_way=any(isinstance(fact, facts.OneWay) for fact in line.facts),
        in_front_of=front,
        upon=upon,
        offers=(),
        rests=(),
        span=line.name.span,
        spring=spring,
        girth=girth,
    )


def _ask_of_material(line: TrimLine, names: Container[str], findings: Findings) -> None:
    """Ask of words that say where or how a trim is, and are read as what it is made of."""
    for fact in line.facts:
        if not isinstance(fact, facts.Material):
            continue
        words = fact.words
        said = words.text.casefold().replace("-", " ")
        ways = (word for word, ways in _SAID_OF_THE_TRIM.items() if said in ways)
        meant, needless = next(ways, None), KERFED_ANYWAY if said == KERFED else ""
        stands = _PLACE.fullmatch(words.text)
        if stands is not None and stands["other"] in names:
            other, own = stands["other"], line.name.text
            meant = f"in front of {other}"
            # What stands behind is said by the trim in front, so the other line has to change.
            if stands["behind"]:
                needless = f"If it stands there, write “in front of {own}” in {other}'s line."
        if needless:
            remedy: str = f"{needless} Leave it out here."
        elif meant:
            remedy = Suggestion(f"If it says how or where the trim stands, write {meant}.", meant)
        else:
            continue
        said_of = {"words": words.text, "remedy": remedy, "needless": bool(needless)}
        findings.say("T726", words.span, **said_of)


def _batch_by(line: StockLine) -> BatchScope | None:
    return next((fact.scope for fact in line.facts if isinstance(fact, facts.BatchBy)), None)


def _random_lengths(
    line: StockLine, trim: Trim, unit: Unit, findings: Findings
) -> tuple[Offer, ...]:
    """Return the offers of a line's lists of random lengths, each bundle with its own number."""
    added: tuple[Offer, ...] = ()
    for fact in line.facts:
        if isinstance(fact, facts.RandomLengths):
            # A list numbers its bundle after those that there are, also those of the same line.
            known = replace(trim, offers=trim.offers + added)
            added += read_random_lengths(fact, known, unit, findings)
    return added


def _said(line: StockLine, kind: type[facts.Supplier | facts.ProfileCode]) -> str | None:
    """Return what a stock line says of the yard, None where it says nothing."""
    for fact in line.facts:
        match fact:
            case facts.Supplier(name=word) | facts.ProfileCode(code=word) if isinstance(fact, kind):
                return word.text
    return None
