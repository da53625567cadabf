"""Turns a finding whose remedy needs no judgement into edits of the file.

A mend is made from the finding's own facts and the line that it marks.  Where two remedies are
equally good both are offered; where only the tape or the user can tell, none is.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.diagnostics.adding import (
    add,
    either_uncoped,
    hinges,
    logged,
    moved_above_rooms,
    name_trim,
    own_alphabet,
    own_end,
    own_tag,
    per_what,
)
from trimlang.diagnostics.diagnostic import Diagnostic, Span
from trimlang.diagnostics.leaving_out import (
    without_bracket,
    without_brackets,
    without_cope,
    without_hidden,
    without_line,
    without_marked,
    without_marks,
    without_minus,
    without_part,
    without_setting,
    without_words,
)
from trimlang.diagnostics.mend import Edit, Facts, Mend, delete, marked, write
from trimlang.diagnostics.near_words import nearest
from trimlang.diagnostics.suggestion import Suggestion
from trimlang.lengths.tape import SIXTEENTH, Unit, mixed_number, steps_nearest

# The whole inches before a fraction: the 29 of "29 1/8".
_WHOLE_BEFORE: Final = re.compile(r"(?<![\w/.])(\d+)[ -]?$")
# The usual ends first, as an editor lists them.
_JOINTS_OFFERED: Final = ("in-corner", "butt", "out-corner", "open")
# A number that still reads both ways, thousands or three decimal places, mends nothing.
_THREE_PLACES: Final = re.compile(r"\.\d{3} ")
_SIDES: Final = ("left", "right")
_UNITS: Final = ("in", "inch", "ft", "feet", "mm", "cm", "m")


def mends(finding: Diagnostic, line: str) -> tuple[Mend, ...]:
    """Return the ways to mend ``finding``; ``line`` is the text of the line that it marks."""
    facts = dict(finding.facts)
    remedy = facts.get("remedy")
    # What was worked out where the mistake was found knows more than a rule for its code, so it
    # goes first.
    if isinstance(remedy, Suggestion):
        return (_suggested(finding.span, remedy, line),)
    made = _MENDS.get(finding.code)
    return tuple(made(finding.span, facts, line)) if made is not None else ()


def _suggested(span: Span, remedy: Suggestion, line: str) -> Mend:
    if remedy.covers is not None:
        span = replace(span, end=span.column + remedy.covers)
    if remedy.instead.startswith(","):
        # A comma follows a word without a blank, so it goes before the blank that is there.
        bare = line[: span.column - 1].rstrip()
        return Mend(
            "Put a comma", (Edit(replace(span, column=len(bare) + 1), remedy.instead),), True
        )
    return write(span, remedy.instead, sure=True)


def _nearest_fraction(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    instead = str(facts["instead"])
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
    yield write(span, mixed_number(value), sure=not instead)


def _instead(name: str) -> Callable[[Span, Facts, str], Iterator[Mend]]:
    def offer(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
        if facts.get(name):
            yield write(span, str(facts[name]))

    return offer


def _which_point(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Offer the number as thousands, and with so few decimals that no thousands can be meant."""
    minus = "-" if marked(span, line).startswith("-") else ""
    ways = (str(facts["thousands"]), str(facts["point"]))
    yield from (write(span, minus + way) for way in ways if not _THREE_PLACES.search(way))


def _close_quotes(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    end = len(line.rstrip()) + 1
    closing = "”" if marked(span, line).startswith("“") else '"'
    yield Mend("Close the quotes", (Edit(Span(span.file, span.line, end, end), closing),), True)


def _known_unit(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    unit = str(facts["unit"])
    match = nearest(unit, _UNITS)
    # The unit stands behind its number, so the last place where it occurs is the right one.
    at = marked(span, line).lower().rfind(unit)
    start = span.column + at
    # The word tells how the length lies beside a mark of the tape (“29 1/8 strong”); it is no unit
    # with a slip in it.
    if facts.get("guess") and at >= 0:
        bare = len(line[: start - 1].rstrip()) + 1
        yield delete(replace(span, column=bare, end=start + len(unit)), f"Leave “{unit}” out")
    elif match is not None and at >= 0:
        yield write(replace(span, column=start, end=start + len(unit)), match, sure=True)


def _say_trim(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    yield write(span, f"trim {facts['trim']}", sure=True)


def _add_end(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    place = Span(span.file, span.line, facts["at"], facts["at"])
    for joint in _JOINTS_OFFERED:
        yield Mend(f"Add {facts['side']}={joint}", (Edit(place, f", {facts['side']}={joint}"),))


def _other_corner(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    # The finding marks the angle in the brackets; the joint's word stands before it.
    start = line.lower().rfind("in-corner", 0, span.column - 1)
    if start >= 0:
        yield write(replace(span, column=start + 1), f"out-corner({facts['wall']}", sure=True)


def _agree(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    """Offer to make either side of a joint like the other: only the wall tells which is right."""
    here, there = str(facts["left"]), facts["there"]
    first = replace(span, end=span.column + len(here))
    yield Mend(f"Begin {facts['other']} with {facts['right']}", (Edit(first, str(facts["right"])),))
    if isinstance(there, Span):
        second = replace(there, end=there.column + len(str(facts["right"])))
        yield Mend(f"End {facts['one']} with {here}", (Edit(second, here),))


def _either_side(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    yield from (write(span, f"{facts['trim']} {side}={facts['joint']}") for side in _SIDES)


def _both_ways(*texts: str) -> Callable[[Span, Facts, str], Iterator[Mend]]:
    def offer(span: Span, _facts: Facts, _line: str) -> Iterator[Mend]:
        # Only where there is one way may an editor take it without asking.
        yield from (write(span, text, sure=len(texts) == 1) for text in texts)

    return offer


def _by_corner(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    """A rake goes by the setting for inside corners; of other ends nothing goes by a setting."""
    if facts["joint"] == "rake":
        yield write(span, "in-corner", sure=True)


def _implied(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    yield write(span, f"{facts['joint']}(implied)")


def _taken_of(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    found = re.search(r"\btaken point\b", line, re.IGNORECASE)
    if found is not None:
        place = Span(span.file, span.line, found.end() + 1, found.end() + 1)
        for trim in (facts["trim"], facts["other"]):
            yield Mend(f"Add “of {trim}”", (Edit(place, f" of {trim}"),))


def _sold_so(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    yield write(span, f"{facts['number']} sticks")
    yield write(span, f"{facts['number']}.00")


def _turned_round(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Swap the first and the last run that boxes go along."""
    both = f"{facts['run']} to {facts['other']}"
    at = line.find(both, span.column - 1)
    if at >= 0:
        whole = replace(span, column=at + 1, end=at + 1 + len(both))
        yield write(whole, f"{facts['other']} to {facts['run']}", sure=True)


def _thick_for_tall(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
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


_MENDS: Final[dict[str, Callable[[Span, Facts, str], Iterator[Mend]]]] = {
    "T104": _close_quotes,
    "T112": _nearest_fraction,
    "T113": _instead("instead"),
    "T114": _instead("better"),
    "T115": without_marks,
    "T201": _known_unit,
    "T203": _instead("instead"),
    "T204": without_minus,
    "T205": without_minus,
    "T207": without_setting,
    "T209": without_part,
    "T216": _say_trim,
    "T225": _add_end,
    "T252": _add_end,
    "T226": without_part,
    "T255": without_part,
    "T256": _either_side,
    "T257": _both_ways("butt"),
    "T258": per_what,
    "T227": without_brackets,
    "T229": without_brackets,
    "T231": _both_ways(*Unit),
    "T236": _other_corner,
    "T251": _which_point,
    "T301": _agree,
    "T302": _agree,
    "T304": _both_ways("butt"),
    "T305": without_cope,
    "T607": without_line,
    "T119": without_hidden,
    "T214": without_line,
    "T232": _by_corner,
    "T234": _both_ways("in-corner"),
    "T242": _both_ways("mitre", "butt"),
    "T243": _both_ways("butt"),
    "T248": without_part,
    "T253": _both_ways("in-corner", "out-corner"),
    "T260": _instead("instead"),
    "T261": _instead("instead"),
    "T263": _thick_for_tall,
    "T265": without_words(r"height [^,#]*[^,#\s]"),
    "T266": without_words("entrance"),
    "T281": _both_ways("butt", "open"),
    "T284": without_part,
    "T290": without_brackets,
    "T295": without_part,
    "T313": _implied,
    "T317": without_bracket,
    "T401": without_words("no splice"),
    "T412": _taken_of,
    "T421": without_bracket,
    "T431": without_part,
    "T432": without_part,
    "T435": without_part,
    "T438": without_line,
    "T441": _turned_round,
    "T442": own_end,
    "T443": _both_ways("butt"),
    "T454": without_part,
    "T456": without_part,
    "T468": _sold_so,
    "T641": own_tag,
    "T118": own_alphabet,
    "T135": hinges,
    "T217": name_trim,
    "T230": moved_above_rooms,
    "T247": add("no {trim}"),
    "T280": name_trim,
    "T306": either_uncoped,
    "T402": add("no {trim}"),
    "T449": add("no {trim}"),
    "T452": add("no {trim}"),
    "T483": without_marked,
    "T485": add("no {trim}"),
    "T490": moved_above_rooms,
    "T704": without_setting,
    "T705": logged("cut {piece}"),
    "T710": logged("shortened {piece} to {now}", below=True),
    "T711": logged("spoiled {piece} into {cut}", below=True),
    "T706": without_setting,
}
