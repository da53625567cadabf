"""Checks that jobs bought together agree about their trims, their saw and their spare."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction
from pathlib import Path

from trimlang.diagnostics import Diagnostic, Span, say
from trimlang.lengths.angles import degrees_text
from trimlang.lengths.tape import Unit, decimal_text, feet_text, length_text
from trimlang.money import money_text
from trimlang.shared_order.flat import Flat
from trimlang.survey.job import Job, Offer, Trim
from trimlang.survey.sticks import MinimumOrder

NOTHING = "not said"


def disagreements(pool: Iterable[Flat]) -> tuple[tuple[Flat, Diagnostic], ...]:
    """Return where the jobs disagree, each finding with the later of the two jobs."""
    found: list[tuple[Flat, Diagnostic]] = []
    known: dict[str, tuple[Flat, Trim]] = {}
    first: Flat | None = None
    for flat in pool:
        if first is None:
            first = flat
        # A job under way has its own sticks in hand: one finding a job is enough, at the log's
        # first line.
        found += [(flat, say("T720", entry.span)) for entry in flat.job.log[:1]]
        for what, here, there in _settings(flat.job, first.job):
            # A setting may come from several lines or from none (a default), so the finding is at
            # the job's first line.
            span = Span(next(iter(flat.result.sources), flat.file), 1, 1, 2)
            facts = {"what": what, "here": here, "there": there, "other": first.file}
            found.append((flat, say("T662", span, **facts)))
        for trim in _used(flat):
            other, same = known.setdefault(trim.name, (flat, trim))
            place = (Path(other.file).parent / same.span.file).as_posix()
            place = f"{place}, line {same.span.line}"
            for what, here, there in _trims(trim, same, flat.job.settings.unit):
                found.append(
                    (
                        flat,
                        say(
                            "T661",
                            trim.span,
                            trim=trim.name,
                            what=what,
                            here=here,
                            there=there,
                            other=place,
                        ),
                    )
                )
    return tuple(found)


def _used(flat: Flat) -> Iterator[Trim]:
    """Yield the trims that the job's pieces are made of, and what these stand on or before."""
    names = {piece.trim for piece in flat.pieces}
    used = [trim for trim in flat.job.trims if trim.name in names]
    names |= {name for trim in used for name in (trim.in_front_of, trim.upon) if name is not None}
    return (trim for trim in flat.job.trims if trim.name in names)


def _settings(here: Job, there: Job) -> Iterator[tuple[str, str, str]]:
    one, other = here.settings, there.settings
    pairs = (
        ("the saw's kerf", length_text(one.kerf), length_text(other.kerf)),
        (
            "what is squared off",
            length_text(one.squares_off),
            length_text(other.squares_off),
        ),
        ("the spare", _percent(one.spare_percent), _percent(other.spare_percent)),
        (
            "the spare",
            _covers(spoiled=one.spare_covers),
            _covers(spoiled=other.spare_covers),
        ),
        ("the currency", here.currency or NOTHING, there.currency or NOTHING),
    )
    return ((what, a, b) for what, a, b in pairs if a != b)


def _percent(spare: Fraction) -> str:
    return f"{decimal_text(spare, 4)} %"


def _covers(*, spoiled: bool) -> str:
    return "any one piece spoiled" if spoiled else "a percentage"


def _trims(here: Trim, there: Trim, unit: Unit) -> Iterator[tuple[str, str, str]]:
    """Yield how two trims of one name differ: in what, the value here, the value there."""
    for what, a, b in (
        ("thickness", here.thickness, there.thickness),
        ("height", here.height, there.height),
        ("girth", here.girth, there.girth),
    ):
        if a != b:
            yield what, _length(a, unit), _length(b, unit)
    if here.one_way != there.one_way:
        yield "pattern", _pattern(here), _pattern(there)
    if here.spring != there.spring:
        yield "spring angle", _angle(here.spring), _angle(there.spring)
    one, other = _words(here.material), _words(there.material)
    if one != other:
        yield "material", ", ".join(one) or NOTHING, ", ".join(other) or NOTHING
    if (here.in_front_of, here.upon) != (there.in_front_of, there.upon):
        yield "place", _place(here), _place(there)
    if here.minimum != there.minimum:
        yield "least order", _minimum(here.minimum), _minimum(there.minimum)
    if here.minimum_in_all != there.minimum_in_all:
        yield "least order in all", _minimum(here.minimum_in_all), _minimum(there.minimum_in_all)
    # Of whom one buys matters only where all that is bought of them counts together.
    elif here.minimum_in_all != MinimumOrder() and here.supplier != there.supplier:
        yield "supplier", here.supplier or NOTHING, there.supplier or NOTHING
    mine, yours = _offers(here.offers), _offers(there.offers)
    if mine != yours:
        # Only the offers that differ are told: a list of twenty with one new price would hide it.
        only_here = [_offer(*offer, unit) for offer in mine if offer not in yours]
        only_there = [_offer(*offer, unit) for offer in yours if offer not in mine]
        # Both lists may hold the same offers and one of them twice: then the counts are told.
        yield (
            "stock",
            ", ".join(only_here) or f"{len(mine)} offers",
            ", ".join(only_there) or f"{len(yours)} offers",
        )


def _length(size: Fraction | None, unit: Unit) -> str:
    return NOTHING if size is None else length_text(size, unit)


def _pattern(trim: Trim) -> str:
    return "one way" if trim.one_way else NOTHING


def _minimum(minimum: MinimumOrder) -> str:
    least = [f"{minimum.sticks} sticks"] if minimum.sticks else []
    least += [money_text(minimum.spent)] if minimum.spent else []
    return ", ".join(least) or NOTHING


def _angle(spring: Fraction | None) -> str:
    return NOTHING if spring is None else degrees_text(spring)


def _place(trim: Trim) -> str:
    on = f"on {trim.upon or 'the wall'}"
    return f"in front of {trim.in_front_of}" if trim.in_front_of else on


def _words(material: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(sorted(" ".join(word.casefold().split()) for word in material))


def _offers(offers: Iterable[Offer]) -> list[tuple[Fraction, int, Fraction, int | None]]:
    """Return what offers say, without where they stand, in an order that any file gives."""
    plain = [(one.length, one.pack, one.price, one.at_most) for one in offers]
    return sorted(plain, key=lambda one: (*one[:3], one[3] or 0))


def _offer(length: Fraction, pack: int, price: Fraction, at_most: int | None, unit: Unit) -> str:
    packed = f"pack of {pack} " if pack > 1 else ""
    limit = "" if at_most is None else f" at most {at_most}"
    return f"{packed}{feet_text(length, unit)} at {money_text(price)}{limit}"
