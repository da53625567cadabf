"""Gives measures their unit, and checks that they are possible."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.diagnostics import Diagnostic, Span, say
from trimlang.language.tree import Measure, Price
from trimlang.language.vocabulary import BESIDE_A_MARK, spellings
from trimlang.lengths.tape import MM, Unit, decimal_text, feet_text, length_text
from trimlang.lengths.units import LengthUnit, UnknownUnitError, in_inches

LONGEST_WALL: Final = Fraction(1200)
"""Inches, a hundred feet: no room has such a wall, so inches were probably typed as feet."""


# What stands behind a number that may have been meant in millimetres: nothing, or a longer unit.
_METRIC: Final = (None, LengthUnit.CM, LengthUnit.METRE)
_LONGEST_IN_METRES: Final = 20
"""A wall of 3.25 m is usual in a home, one of 30 m is not (common practice, no source)."""
_THOUSANDS: Final = 3
"""How many figures stand between two points of those who put points between thousands."""


class Findings:
    """Collects diagnostics while a pass goes through the tree."""

    def __init__(self) -> None:
        self.found: list[Diagnostic] = []
        self._told: set[tuple[str, Span]] = set()

    def say(self, code: str, span: Span, **facts: object) -> None:
        """Add the diagnostic ``code`` at ``span``, its wording filled with ``facts``.

        What is said once for several rooms or walls is wrong once, however many take it.
        """
        told = say(code, span, **facts)
        if (code, span) not in self._told or told not in self.found:
            self.found.append(told)
        self._told.add((code, span))


def inches(measure: Measure, unit: Unit, findings: Findings) -> Fraction | None:
    """Return a length in inches, bare numbers taken as ``unit``; None for an unknown unit."""
    total = Fraction(0)
    for amount, written in measure.parts:
        try:
            total += in_inches(amount, written or unit)
        except UnknownUnitError:
            finer = "Read the tape to a finer mark, such as 29 5/32, or leave the word out. "
            guess = finer if written in BESIDE_A_MARK else ""
            # “E 30 outside”: the corner behind a wall, without its comma.
            joint = written in spellings()["JOINT"]
            guess = f"Put a comma before “{written}”. " if joint else guess
            findings.say("T201", measure.span, unit=written, guess=guess, joint=joint)
            return None
    return total


def length(
    measure: Measure,
    unit: Unit,
    findings: Findings,
    *,
    what: str,
    fine: bool = False,
    opening: bool = False,
) -> Fraction | None:
    """Return a length in inches that is positive and not absurdly long, None for any other.

    ``fine`` allows thousandths of a millimetre, as a trim's section may have them; an ``opening``
    may be called by a door's size.
    """
    value = inches(measure, unit, findings)
    if value is None:
        return None
    # Asked before the size is judged: 2.740 mm would pass as a wall of a tenth of an inch.
    thousands = measure.places == _THOUSANDS and abs(measure.parts[0][0]) < 10**_THOUSANDS
    if not fine and thousands and (measure.parts[0][1] or unit) == Unit.MM:
        _ask_which_point(measure, findings)
        return None
    if value <= 0:
        # A dash before a number is a minus, and mostly one that parts it from the name.
        dash = "A dash before a number is a minus: leave it out."
        findings.say("T202", measure.span, what=what, remedy=dash if value else "Measure it again.")
        return None
    if value > LONGEST_WALL:
        guess, instead = "", ""
        # Feet and millimetres are what is typed by mistake for inches; a guess is offered, not
        # made, since either reading would give a room.
        if any(written == LengthUnit.FOOT for _, written in measure.parts):
            # 144 ft for 144 in: the same number in inches is offered.
            as_inches = replace(
                measure, parts=tuple((n, LengthUnit.INCH) for n, _ in measure.parts)
            )
            total = inches(as_inches, unit, findings) or value
            instead = length_text(total) if total <= LONGEST_WALL else ""
            guess = f"If inches were meant, write {instead}. " if instead else ""
        elif opening and (door := _door_by_number(measure)):
            instead = door
            guess = f"If the door's size was meant, write its width, {door}, and its height apart. "
        elif in_millimetres := _as_millimetres(measure):
            instead = length_text(in_millimetres, Unit.MM)
            guess = f"If millimetres were meant, write {instead}. "
            if unit is Unit.INCH:
                guess += "“unit mm” above the rooms says so of all that has no unit. "
        facts = {"what": what, "long": feet_text(value), "guess": guess, "instead": instead}
        findings.say("T203", measure.span, **facts)
        return None
    return value


def _ask_which_point(measure: Measure, findings: Findings) -> None:
    """Ask about 2.740 mm: no tape shows thousandths, and in many countries that is 2740."""
    amount = abs(measure.parts[0][0])
    point, thousands = (f"{decimal_text(one, 3)} mm" for one in (amount, amount * 1000))
    findings.say("T251", measure.span, point=point, thousands=thousands)


def _door_by_number(measure: Measure) -> str | None:
    """Return a door's width where a number is its size in feet and inches (2868), else None.

    The width, then the height, each a figure of feet and one of inches: 2 ft 8 in by 6 ft 8 in
    (common practice, no source).
    """
    ((amount, unit), *more) = measure.parts
    figures = str(amount)
    if unit is not None or more or len(figures) != 4 or not figures.isdecimal():
        return None
    wide, high = figures[0], figures[2]
    return f"{wide} ft {figures[1]} in" if wide in "1234" and high in "678" else None


def _as_millimetres(measure: Measure) -> Fraction | None:
    """Return a single number read as millimetres (inches), None where it says otherwise."""
    (amount, written), *more = measure.parts
    value = in_inches(amount, Unit.MM)
    return value if not more and written in _METRIC and value <= LONGEST_WALL else None


def not_negative(measure: Measure, unit: Unit, findings: Findings, *, what: str) -> Fraction | None:
    """Return a length in inches that is 0 or more, None where it is not."""
    value = inches(measure, unit, findings)
    if value is not None and value < 0:
        findings.say("T204", measure.span, what=what)
        return None
    return value


def money(price: Price | None, findings: Findings) -> Fraction | None:
    """Return a price's amount, 0 where no price is written, None where it is negative."""
    if price is None:
        return Fraction(0)
    if price.amount < 0:
        findings.say("T205", price.span)
        return None
    return price.amount


def metres_meant(length: Fraction, unit: Unit) -> str:
    """Return a number of millimetres with metres behind it where a wall can be so long, else ""."""
    number = length / MM
    if unit is not Unit.MM or not 0 < number < _LONGEST_IN_METRES:
        return ""
    return f"{decimal_text(number, _THOUSANDS)} m"
