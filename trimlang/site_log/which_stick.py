"""Which stick a line of the log means."""

from __future__ import annotations

from fractions import Fraction

from trimlang.lengths.tape import feet_text, length_text
from trimlang.site_log.entries import Cut, From, Spoiled
from trimlang.site_log.in_hand import Yard
from trimlang.site_log.keeping import next_number
from trimlang.site_log.ledger import SAME, trim_of_stick
from trimlang.site_log.whole_units import Bench, Laid, Layout
from trimlang.stock.problem import Part
from trimlang.survey.measures import Findings


def which_stick(
    entry: Cut | Spoiled,
    laid: Laid | None,
    part: Part,
    bench: Bench,
    yard: Yard,
    layout: Layout,
    findings: Findings,
) -> tuple[str, Fraction] | None:
    """Return the stick's name and how long it was when whole, None where the line errs.

    ``laid`` is the stick that the plan in force has for the piece.
    """
    source = entry.source
    if source is not None and source.stick is not None:
        return _named(source, source.stick, bench, yard, layout, findings)
    if source is not None and source.length is not None:
        if laid is not None and abs(laid.length - source.length) < SAME:
            return laid.name, laid.length
        return _new_name(bench, yard, layout), _known(source.length, bench, yard)
    if laid is not None:
        return laid.name, laid.length
    return _any_stick(entry, part, bench, yard, layout, findings)


def _named(
    source: From, name: str, bench: Bench, yard: Yard, layout: Layout, findings: Findings
) -> tuple[str, Fraction] | None:
    if trim_of_stick(name) != bench.trim.name:
        findings.say("T719", source.span, stick=name, trim=bench.trim.name)
        return None
    begun = yard.started.get(name)
    if begun is not None:
        if source.length is not None and abs(source.length - begun.length) >= SAME:
            findings.say(
                "T717", source.span, stick=name, length=feet_text(begun.length, bench.unit)
            )
            return None
        return name, begun.length
    if source.length is not None:
        return name, _known(source.length, bench, yard)
    laid = next((one for one in layout.sticks if one.name == name), None)
    if laid is None:
        findings.say("T715", source.span, stick=name)
        return None
    return name, laid.length


def _any_stick(
    entry: Cut | Spoiled, part: Part, bench: Bench, yard: Yard, layout: Layout, findings: Findings
) -> tuple[str, Fraction] | None:
    """Return the smallest rest that holds a piece which no plan has."""
    able = [
        (bench.rest(stick.length, stick.done), name, stick.length)
        for name, stick in yard.started.items()
        if bench.reach([*stick.done, part]) <= bench.between(stick.length)
    ]
    if able:
        return min(able)[1:]
    lengths = [kind.length for kind, count in yard.whole.items() if count]
    lengths += [offer.length for offer in bench.trim.offers]
    holding = [one for one in lengths if part.length <= bench.between(one)]
    if holding:
        return _new_name(bench, yard, layout), min(holding)
    need = length_text(bench.inches(part.length), bench.unit)
    none = "no stick in hand or on the stock lines is so long"
    findings.say("T713", entry.span, piece=entry.piece, need=need, stick=none)
    return None


def _known(length: Fraction, bench: Bench, yard: Yard) -> Fraction:
    """Return the stick's length that is meant: a line may tell it to four places."""
    lengths = [kind.length for kind, count in yard.whole.items() if count]
    lengths += [offer.length for offer in (*bench.trim.offers, *bench.trim.logged)]
    near = [one for one in lengths if abs(one - length) < SAME]
    return min(near, key=lambda one: (abs(one - length), one), default=length)


def _new_name(bench: Bench, yard: Yard, layout: Layout) -> str:
    number = next_number(bench, yard, [laid.name for laid in layout.sticks])
    return f"{bench.trim.name}-{number}"
