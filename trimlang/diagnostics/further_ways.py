"""Mends for what a remedy names besides its first way, in the finding's own line or another."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.diagnostics.adding import MOST_OFFERED
from trimlang.diagnostics.diagnostic import Diagnostic, Span
from trimlang.diagnostics.leaving_out import TRIM_LINE, end_of_words
from trimlang.diagnostics.measured_later import Way, added
from trimlang.diagnostics.mend import Edit, Facts, Mend, delete, marked, write
from trimlang.diagnostics.setting_aside import TO_ASK, remark
from trimlang.diagnostics.sizes_to_ask import PRICED_STICK, price_of

_HEADING: Final = re.compile(r'\s*room\s+["“](?P<name>[^"”]+)["”]', re.IGNORECASE)
_SUPPLIER: Final = re.compile(r'\bfrom\s+(?P<name>["“][^"”]+["”])', re.IGNORECASE)


def here(way: Callable[[Span, Facts, str], Iterator[Mend]]) -> Way:
    """Return a way that looks at the finding's own line as one that has the whole file."""

    def offer(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
        return way(finding.span, dict(finding.facts), lines[finding.span.line - 1])

    return offer


def instead_of(pattern: str, text: str) -> Way:
    """Return what writes a text in the line for the last words like ``pattern`` up to the mark."""
    words = re.compile(pattern, re.IGNORECASE)

    def offer(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
        span, line = finding.span, lines[finding.span.line - 1]
        found = [one for one in words.finditer(line) if one.start() < span.end]
        if found:
            place = replace(span, column=found[-1].start() + 1, end=found[-1].end() + 1)
            yield (
                write(place, text) if text else delete(place, f"Leave “{found[-1][0].strip()}” out")
            )

    return offer


def named_in_a_room(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Give a trim that no run gets to a room; the finding's own, where it stands in one."""
    trim, span = str(dict(finding.facts)["trim"]), finding.span
    rooms = [(at + 1, found) for at, line in enumerate(lines) if (found := _HEADING.match(line))]
    if any(map(_every_room(trim).match, lines)):
        return
    above = [one for one in rooms if one[0] < span.line]
    for number, heading in above[-1:] or rooms[:MOST_OFFERED]:
        if re.search(rf"\b{re.escape(trim)}\b", heading.string[heading.end() :]):
            continue  # it is waiting for its walls
        at = end_of_words(lines[number - 1])
        edit = Edit(Span(span.file, number, at, at), f", trim {trim}")
        yield Mend(f"Give “{heading['name']}” {trim}", (edit,))


def without_its_lines(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Delete the line of a trim that no run gets, with those of its stock."""
    trim = re.escape(str(dict(finding.facts)["trim"]))
    own = re.compile(rf"\s*(?:trim|stock|on-hand)\s+{trim}\s*:", re.IGNORECASE)
    named = re.compile(rf"\s*(?:every\s+)?room\b.*\b{trim}\b", re.IGNORECASE)
    if any(map(named.match, lines)):
        return  # a room that has no walls yet will get it
    edits = [
        Edit(Span(finding.span.file, number, 1, end_of_words(line)), "")
        for number, line in enumerate(lines, start=1)
        if own.match(line)
    ]
    if edits:
        words = "Delete this line" + (" and its stock" if len(edits) > 1 else "")
        yield Mend(words, tuple(edits))


def where_it_meets(way: Way) -> Way:
    """Return a way that helps only where another run comes to the same joint."""

    def offer(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
        if dict(finding.facts).get("there") is not None:
            yield from way(finding, lines)

    return offer


def _every_room(trim: str) -> re.Pattern[str]:
    return re.compile(rf"\s*every\s+room\b.*\b{re.escape(trim)}\b", re.IGNORECASE)


def on_another(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Name another trim behind or below this one, of those that stand on the wall themselves."""
    facts = dict(finding.facts)
    own = {str(facts["trim"]), str(facts["behind"])}
    plain = [
        found["name"]
        for found in map(TRIM_LINE.match, lines)
        if found is not None
        and found["name"] not in own
        and not re.search(r"\b(?:in front of|on|spring)\b", found["said"], re.IGNORECASE)
    ]
    yield from (write(finding.span, f"{facts['where']} {name}") for name in plain[:MOST_OFFERED])


def with_casing(*, tall: bool) -> Way:
    """Return what gives an opening a casing of the file, and its height where it says none."""

    def offer(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
        span, line = finding.span, lines[finding.span.line - 1]
        at = end_of_words(line)
        # What can be used as casing says how wide it is, and does not hang at an angle.
        for found in filter(None, map(TRIM_LINE.match, lines)):
            said = found["said"]
            if not re.search(r"\bwide\b", said) or re.search(r"\bspring\b", said):
                continue
            words = f"casing {found['name']}"
            if tall and not re.search(r"\bheight\b", line, re.IGNORECASE):
                edits = added(span.file, span.line, line, at, f"{words}, height 80 in")
                yield Mend(f"Add {words}, height 80 in, to be measured", edits)
            else:
                edit = Edit(Span(span.file, span.line, at, at), f", {words}")
                yield Mend(f"Add {words}", (edit,))

    return offer


def at_a_price(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Give a stick the price that another of its trim has for as much length, to be asked."""
    trim, span = re.escape(str(dict(finding.facts)["trim"])), finding.span
    line = lines[span.line - 1]
    stick = marked(span, line)
    if not re.fullmatch(r"[\d.]+\s*(?:ft|m)", stick, re.IGNORECASE):
        return  # no length that is sold: it is still being typed
    stock = (one for one in lines if re.match(rf"\s*stock\s+{trim}\s*:", one, re.IGNORECASE))
    near = next(filter(None, map(PRICED_STICK.search, stock)), None)
    said = f"at {price_of(stick, near)}"
    asks = remark(span.file, span.line, line, f"{TO_ASK}: {stick} {said}?")
    if span.end == asks.span.column:
        yield Mend(f"Add {said}, to be asked", (replace(asks, text=f" {said}{asks.text}"),))
    else:
        place = replace(span, column=span.end)
        yield Mend(f"Add {said}, to be asked", (asks, Edit(place, f" {said}")))


def in_inches(finding: Diagnostic, _lines: Sequence[str]) -> Iterator[Mend]:
    """Write decimal feet as inches."""
    feet = Fraction(str(dict(finding.facts)["feet"]).removesuffix(" ft"))
    inches = 12 * feet
    if (inches * 1000).denominator == 1:
        yield write(finding.span, f"{float(inches):g} in")


def square_at_both(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Cut a loose piece square at both ends, in the place of what is said of either."""
    span, line = finding.span, lines[finding.span.line - 1]
    said = list(re.finditer(r"\s*,\s*(?:left|right)\s*=[^,#]*[^,#\s]", line, re.IGNORECASE))
    places = [replace(span, column=one.start() + 1, end=one.end() + 1) for one in said]
    edits = [Edit(place, "") for place in reversed(places)]
    if edits:
        edits[-1] = replace(edits[-1], text=", square")
        yield Mend("Say “square”", tuple(edits))


def turning_crown(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Name a crown of the file as what turns at a beam."""
    trims = filter(None, map(TRIM_LINE.match, lines))
    crowns = [found["name"] for found in trims if re.search(r"\bspring\b", found["said"])]
    yield from (write(finding.span, name) for name in crowns[:MOST_OFFERED])


def sold_by(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Name a supplier of the file as who sells a trim; one to be asked where it has none."""
    span, line = finding.span, lines[finding.span.line - 1]
    names = dict.fromkeys(found["name"] for one in lines for found in _SUPPLIER.finditer(one))
    at = line.find(":") + 2
    for name in list(names)[:MOST_OFFERED] or ['"the yard"']:
        edit = Edit(replace(span, column=at, end=at), f" from {name},")
        yield Mend(f"Write “from {name}”", (edit,))


def put_back(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Put a piece that no wall asks for back on the rack, as long as the log says it was cut."""
    piece, span = str(dict(finding.facts)["piece"]), finding.span
    line = lines[span.line - 1]
    long = re.search(rf"{re.escape(piece)}\s+(?P<long>\d[^,#]*?)(?=\s+from\b|\s*[,#]|\s*$)", line)
    if long is not None:
        said = f"spoiled {piece} into {long['long']}"
        place = replace(span, column=len(line) + 1, end=len(line) + 1)
        yield Mend(f"Write “{said}”", (Edit(place, f"\n{said}"),))


def spoiled_between(finding: Diagnostic, _lines: Sequence[str]) -> Iterator[Mend]:
    """Say that a piece was spoiled before it was cut again."""
    facts, span = dict(finding.facts), finding.span
    if str(facts["line"]) != f"line {span.line}":
        said = f"spoiled {facts['piece']}"
        place = replace(span, column=1, end=1)
        yield Mend(f"Write “{said}” above", (Edit(place, f"{said}\n"),))


def one_implied(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Let one corner follow from the others, so that all are cut as the diagonals say."""
    facts: Facts = dict(finding.facts)
    for _, places in facts["slips"]:
        for place, text in places[1:2]:
            joint = str(text).partition("(")[0]
            if place.file == finding.span.file and "(" in str(text):
                said = marked(place, lines[place.line - 1])
                if re.fullmatch(r"[a-z\-]+", said):
                    yield Mend(f"Write “{joint}(implied)”", (Edit(place, f"{joint}(implied)"),))


def spliced_again(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Let the job's long walls be pieced together, where it says that none is."""
    for number, line in enumerate(lines, start=1):
        found = re.match(r"\s*splices\s*:\s*(?P<never>never)\b", line, re.IGNORECASE)
        if found is not None:
            start, end = found.span("never")
            place = Span(finding.span.file, number, start + 1, end + 1)
            yield Mend("Write “splices: allowed”", (Edit(place, "allowed"),))
