"""Guesses the unit of a list's numbers that have none, from all of them together.

A decimal comma is written where rooms are measured in metres; a whole number over a hundred feet
of inches can be millimetres alone.  What the numbers do not tell is not guessed: the row is told.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from fractions import Fraction
from typing import Final

from trimlang.lengths.units import LengthUnit
from trimlang.record import record
from trimlang.survey.measures import LONGEST_WALL

_NUMBER: Final = re.compile(r"\d+(?P<sign>[.,]\d+)?")

_LONGEST_IN_METRES: Final = 30
"""A wall of so many metres is about the longest that a job file takes (100 ft)."""

_LONGEST_IN_CM: Final = 1000
"""From here on a metric number without a unit may be millimetres as well."""


@record
class UnsaidUnit:
    """The unit of numbers without one; ``below`` is where it ends to be likely.

    ``unit`` is None for a bare number, which the job file reads as inches.
    """

    unit: LengthUnit | None = None
    below: Fraction | None = None
    remark: str = ""

    def doubtful(self, written: str) -> bool:
        """Tell whether a number without a unit is none of those that the unit was guessed from."""
        value = _value(written)
        return value is not None and self.below is not None and value >= self.below


def unsaid_unit(written: Iterable[str], *, comma_is_decimal: bool) -> UnsaidUnit:
    """Return the unit that the numbers without one most likely have.

    ``written`` are the texts of all lengths, with a unit or without.
    """
    bare = [text.strip() for text in written if _NUMBER.fullmatch(text.strip())]
    values = [value for value in map(_value, bare) if value is not None]
    if not values:
        return UnsaidUnit()
    # Only where people measure in metres or centimetres does a tape reading have a decimal comma.
    decimal_comma = [
        one for one in bare if "," in one and (comma_is_decimal or _not_thousands(one))
    ]
    if decimal_comma:
        if min(value for value in map(_value, decimal_comma) if value) < _LONGEST_IN_METRES:
            unit, below = LengthUnit.METRE, _LONGEST_IN_METRES
        else:
            unit, below = LengthUnit.CM, _LONGEST_IN_CM
        remark = f"numbers without a unit have a decimal comma and are read as {unit}"
        return UnsaidUnit(unit, Fraction(below), remark)
    # No wall is that long in inches, and whole numbers of that size are millimetres.
    if max(values) > LONGEST_WALL and all(value.denominator == 1 for value in values):
        return UnsaidUnit(LengthUnit.MM, None, "numbers without a unit are read as mm")
    # Small numbers may be feet, metres or inches: nothing is guessed, and the remark asks.
    small = all(value < _LONGEST_IN_METRES for value in values)
    remark = "a number without a unit is inches; “unit mm” above the rooms says mm"
    if small:
        remark += "; if these are metres or feet, write the unit into the heading or behind them"
    return UnsaidUnit(None, None, remark)


def _value(written: str) -> Fraction | None:
    found = _NUMBER.fullmatch(written.strip())
    return Fraction(found[0].replace(",", ".")) if found else None


def _not_thousands(written: str) -> bool:
    return len(written.partition(",")[2]) != 3
