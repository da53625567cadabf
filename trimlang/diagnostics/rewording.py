"""Mends that write something else in the place that a finding marks."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.diagnostics.diagnostic import Span
from trimlang.diagnostics.mend import Edit, Facts, Mend, delete, marked, write
from trimlang.diagnostics.near_words import nearest
from trimlang.lengths.tape import SIXTEENTH, mixed_number, steps_nearest

# The whole inches before a fraction: the 29 of "29 1/8".
_WHOLE_BEFORE: Final = re.compile(r"(?<![\w/.])(\d+)[ -]?$")
# A number that still reads both ways, thousands or three decimal places, mends nothing.
_THREE_PLACES: Final = re.compile(r"\.\d{3} ")
_SIDES: Final = ("left", "right")
_MONTHS: Final = 12
_DAYS_OF_ANY_MONTH: Final = 28
_MOST_NAMES: Final = 3
_UNITS_OFFERED: Final = ("in", "ft", "yd", "mm", "cm", "m")
_UNITS: Final = ("in", "inch", "ft", "feet", "mm", "cm", "m")


def nearest_fraction(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Write the tape's mark nearest to a fraction, or what else it may have been."""
    instead = str(facts.get("instead", ""))
    if instead:
        yield write(span, instead)
    above, below = re.split("[/⁄∕]", str(facts["written"]))
    # The tape's mark nearest to the fraction that was written, with the whole inches before it,
    # since rounding up may add one.
    # A sixteenth is the finest mark that every inch tape has.
    value = steps_nearest(Fraction(int(above), int(below)), SIXTEENTH)
    whole = _WHOLE_BEFORE.search(line[: span.column - 1])
    if whole:
        value += int(whole[1])
        span = replace(span, column=whole.start() + 1)
    if value:
        yield write(span, mixed_number(value), sure=not instead)


def instead(name: str) -> Callable[[Span, Facts, str], Iterator[Mend]]:
    """Return what writes the finding's own fact of that name."""

    def offer(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
        if facts.get(name):
            yield write(span, str(facts[name]))

    return offer


def which_point(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Offer the number as thousands, and with so few decimals that no thousands can be meant."""
    minus = "-" if marked(span, line).startswith("-") else ""
    ways = (str(facts["thousands"]), str(facts["point"]))
    yield from (write(span, minus + way) for way in ways if not _THREE_PLACES.search(way))


def close_quotes(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Close a text at the end of its line."""
    end = len(line.rstrip()) + 1
    closing = "”" if marked(span, line).startswith("“") else '"'
    yield Mend("Close the quotes", (Edit(Span(span.file, span.line, end, end), closing),), True)


def known_unit(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Write the unit that the word most resembles, or leave a word beside a mark out."""
    unit = str(facts["unit"])
    match = nearest(unit, _UNITS)
    # The unit stands behind its number, so the last place where it occurs is the right one.
    at = marked(span, line).lower().rfind(unit)
    start = span.column + at
    if facts.get("joint") and at >= 0:
        bare = len(line[: start - 1].rstrip()) + 1
        yield Mend("Put a comma", (Edit(replace(span, column=bare, end=start), ", "),), True)
        return
    # The word tells how the length lies beside a mark of the tape (“29 1/8 strong”); it is no unit
    # with a slip in it.
    if facts.get("guess") and at >= 0:
        bare = len(line[: start - 1].rstrip()) + 1
        yield delete(replace(span, column=bare, end=start + len(unit)), f"Leave “{unit}” out")
    elif at >= 0:
        word = replace(span, column=start, end=start + len(unit))
        offered = _UNITS_OFFERED if match is None else (match,)
        yield from (write(word, one, sure=match is not None) for one in offered)


def say_trim(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    """Write the word trim before the trim's name."""
    yield write(span, f"trim {facts['trim']}", sure=True)


def other_corner(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Make the inside corner an outside one, with the angle of the wall."""
    # The finding marks the angle in the brackets; the joint's word stands before it.
    start = line.lower().rfind("in-corner", 0, span.column - 1)
    if start >= 0:
        yield write(replace(span, column=start + 1), f"out-corner({facts['wall']}", sure=True)


def either_side(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    """Say of which end the trim's joint is."""
    yield from (write(span, f"{facts['trim']} {side}={facts['joint']}") for side in _SIDES)


def both_ways(*texts: str) -> Callable[[Span, Facts, str], Iterator[Mend]]:
    """Return what writes one or another text."""

    def offer(span: Span, _facts: Facts, _line: str) -> Iterator[Mend]:
        # Only where there is one way may an editor take it without asking.
        yield from (write(span, text, sure=len(texts) == 1) for text in texts)

    return offer


def by_corner(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    """A rake goes by the setting for inside corners; for other ends a corner was meant."""
    for corner in ("in-corner",) if facts["joint"] == "rake" else ("in-corner", "out-corner"):
        yield write(span, corner, sure=facts["joint"] == "rake")


def implied(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    """Take the angle that the room's other corners leave."""
    yield write(span, f"{facts['joint']}(implied)")


def sold_so(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    """Say whether the number is one of sticks or of money."""
    yield write(span, f"{facts['number']} sticks")
    yield write(span, f"{facts['number']}.00")


def turned_round(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Swap the first and the last run that boxes go along."""
    both = f"{facts['run']} to {facts['other']}"
    at = line.find(both, span.column - 1)
    if at >= 0:
        whole = replace(span, column=at + 1, end=at + 1 + len(both))
        yield write(whole, f"{facts['other']} to {facts['run']}", sure=True)


def thick_for_tall(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Swap the two words of a section: what was called thick is tall, or wide."""
    thick, tall = (re.search(rf"\b(?:{word})\b", line) for word in ("thick", "tall|wide"))
    if thick is not None and tall is not None:
        # from the right, so that an edit does not move the place of the next
        pairs = sorted(((thick, tall[0]), (tall, thick[0])), key=lambda one: -one[0].start())
        edits = (
            Edit(replace(span, column=found.start() + 1, end=found.end() + 1), word)
            for found, word in pairs
        )
        yield Mend(f"Swap “{thick[0]}” and “{tall[0]}”", tuple(edits), True)


def of_other_date(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    """Write the day before the month the other way round, where that is a day of the calendar."""
    year, month, day = str(facts["date"]).split("-")
    if 0 < int(day) <= _MONTHS and 0 < int(month) <= _DAYS_OF_ANY_MONTH:
        yield write(span, f"{year}-{day}-{month}")


def within(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Write the end of the range that is nearer to the number."""
    number = re.match(r"[\d.]+", marked(span, line))
    if number is not None:
        least, most = (Fraction(str(facts[name]).rstrip("°")) for name in ("least", "most"))
        nearer = least if Fraction(number[0]) < least else most
        yield write(span, marked(span, line).replace(number[0], str(nearer), 1))


def by_its_side(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    """Say of which end a joint is that stands without its side."""
    if facts.get("joint"):
        yield from (write(span, f"{side}={facts['joint']}") for side in _SIDES)


def first_quoted(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    """Write one of the names that the remedy lists."""
    names = re.findall("“([^”]+)”", str(facts["remedy"]))
    yield from (write(span, name, sure=len(names) == 1) for name in names[:_MOST_NAMES])


def one_of_its_trims(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    """Write one of the trims of an assembly, for which one trim is meant."""
    trims = re.split(r", (?:and )?| and ", re.sub("[“”]", "", str(facts["members"])))
    yield from (write(span, trim, sure=len(trims) == 1) for trim in trims[:_MOST_NAMES])


def fewer_boxes(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Write how many boxes fit."""
    found = re.search(r":\s*(?P<count>\d+)", line)
    if found is not None and facts["fewer"]:
        place = replace(span, column=found.start("count") + 1, end=found.end("count") + 1)
        yield write(place, str(facts["fewer"]))


def lower_boxes(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Write the height that the wall below the window leaves."""
    found = re.search(r"(?P<long>\d[^,#]*?)\s+tall\b", line)
    if found is not None and facts["lower"]:
        place = replace(span, column=found.start("long") + 1, end=found.end("long") + 1)
        yield write(place, str(facts["lower"]))


def either_angle(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Take one or the other of the two angles of a corner, by leaving its mate out."""
    at = marked(span, line).find("(")
    if at > 0:
        words = f"Keep the angle of {facts['one']}"
        yield delete(replace(span, column=span.column + at), words)
    there = facts["there"]
    if isinstance(there, Span) and facts["joint"]:
        yield Mend(f"Keep the angle of {facts['other']}", (Edit(there, str(facts["joint"])),))


def other_way_round(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Make an inside corner an outside one, or the other way round; or swap a run's two ends."""
    if len(facts["wrong"]) > 1:
        left, right = facts["wrong"]
        # From the right, so that the first edit does not move the place of the second.
        edits = (Edit(right, marked(left, line)), Edit(left, marked(right, line)))
        yield Mend("Swap its two ends", edits)
        return
    found = re.match(r"(?P<in>in)?(?:out)?(?:-corner)?", marked(span, line), re.IGNORECASE)
    if found is not None and found[0]:
        joint = "out-corner" if found["in"] else "in-corner"
        yield write(replace(span, end=span.column + found.end()), joint)


def halves(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Measure a loose piece as two of half its length."""
    found = re.search(r",\s*(?P<all>(?:(?P<count>\d+)\s+of\s+)?\d[^,#]*[^,#\s])", line)
    if found is not None:
        place = replace(span, column=found.start("all") + 1, end=found.end("all") + 1)
        yield write(place, f"{2 * int(found['count'] or 1)} of {facts['half']}")


def swapped(between: str) -> Callable[[Span, Facts, str], Iterator[Mend]]:
    """Return what swaps the two lengths that stand on both sides of a word."""
    pattern = re.compile(
        rf"(?P<one>\d[^,()#]*?)\s+{between}\s+(?P<two>\d[^,()#]*?)(?=\s*(?:from|run\b|[,()#]|$))"
    )

    def offer(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
        found = pattern.search(line, span.column - 1)
        if found is not None and facts.get("turned", True):
            place = replace(span, column=found.start() + 1, end=found.end() + 1)
            yield write(place, f"{found['two']} {between} {found['one']}")

    return offer


def end_square(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """End a run square where it returns."""
    for found in re.finditer(r"(?P<side>left|right)\s*=\s*return\b", line, re.IGNORECASE):
        place = replace(span, column=found.start() + 1, end=found.end() + 1)
        yield write(place, f"{found['side'].lower()}=butt")


def each_stick_by_itself(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Say one stick with its defect and the others without."""
    counted = f"{facts['count']} of "
    at = line.rfind(counted, 0, span.end - 1)
    if at >= 0:
        others = int(str(facts["count"])) - 1
        more = f", {others} of {facts['long']}" if others > 1 else f", {facts['long']}"
        behind = replace(span, column=span.end)
        count = replace(span, column=at + 1, end=at + 1 + len(counted))
        yield Mend("One with the defect, the others sound", (Edit(behind, more), Edit(count, "")))


def as_a_corner(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Make the end that brackets stand behind a corner."""
    found = re.search(r"(?P<joint>[\w-]+)\s*\($", line[: span.column - 1])
    if found is not None:
        place = replace(span, column=found.start() + 1, end=found.end("joint") + 1)
        yield from (write(place, corner) for corner in ("in-corner", "out-corner"))


def same_block(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Name the block that the other wall has in the corner."""
    found = re.search(r"\bblock\s+(?P<name>[^\s,()]+)", marked(span, line))
    if found is not None:
        start, end = span.column + found.start("name"), span.column + found.end("name")
        yield write(replace(span, column=start, end=end), str(facts["one"]))
