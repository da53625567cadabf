"""Lengths as a carpenter reads and writes them."""

from __future__ import annotations

from enum import StrEnum
from fractions import Fraction
from typing import Final

MM: Final = Fraction(5, 127)
"""One millimetre in inches: 1 in is 25.4 mm exactly, and 5/127 = 1/25.4."""

NOTHING: Final = Fraction(0)
SIXTEENTH: Final = Fraction(1, 16)
# Inches. Tangents are right to thirty places, so an error in a length is far below this; and no two
# marks of any tape are so close.
HAIR: Final = Fraction(1, 10**20)


class Unit(StrEnum):
    """The unit that a job is measured and printed in, and that a number without one has."""

    INCH = "in"
    MM = "mm"


class Shown(StrEnum):
    """What lengths are shown in: inches, millimetres, or feet with the inches that are left."""

    INCH = "in"
    MM = "mm"
    FEET = "ft"


class Direction(StrEnum):
    """Which way a length is rounded to a mark on the tape."""

    UP = "up"
    DOWN = "down"
    NEAREST = "nearest"


def is_tape_fraction(value: Fraction) -> bool:
    """Tell whether an inch tape has a mark there: halves down to sixty-fourths."""
    # No tape has a third or a tenth of an inch, however short the fraction looks.
    return value.denominator in (1, 2, 4, 8, 16, 32, 64)


def steps_down(value: Fraction, step: Fraction) -> Fraction:
    """Return the largest multiple of ``step`` that is not above ``value``."""
    count, rest, _ = _in_steps(value, step)
    return step * count if rest else value


def steps_up(value: Fraction, step: Fraction) -> Fraction:
    """Return the smallest multiple of ``step`` that is not below ``value``."""
    count, rest, _ = _in_steps(value, step)
    return step * (count + 1) if rest else value


def on_mark(value: Fraction, step: Fraction) -> Fraction:
    """Return the multiple of ``step`` that ``value`` lies on but for a hair, else ``value``.

    Tangents are right to thirty decimal places, so a length that lies exactly on a mark in
    geometry may come out a hair beside it, and would be rounded a whole step away.
    """
    mark = steps_nearest(value, step)
    return mark if mark == value or abs(value - mark) < HAIR else value


def steps_nearest(value: Fraction, step: Fraction) -> Fraction:
    """Return the multiple of ``step`` nearest ``value``; a tie goes up."""
    count, rest, whole = _in_steps(value, step)
    return step * (count + (2 * rest >= whole)) if rest else value


def _in_steps(value: Fraction, step: Fraction) -> tuple[int, int, int]:
    """Return the whole steps in a length, what is left over, and of what that would be one more.

    In whole numbers, and nothing is left of most lengths: these are rounded very often.
    """
    (above, below), (up, down) = value.as_integer_ratio(), step.as_integer_ratio()
    whole = below * up
    return *divmod(above * down, whole), whole


def marks_of_tape(unit: Unit, step: Fraction) -> Fraction:
    """Return the distance between two marks on a tape, in inches.

    A sixteenth or a millimetre (common practice, no source).  A finer ``step`` that divides it
    means a tape with finer marks; a coarser one, or one in the other unit, does not.
    """
    usual = MM if unit is Unit.MM else SIXTEENTH
    _, rest, _ = _in_steps(usual, step)
    return usual if rest else step


def mixed_number(value: Fraction) -> str:
    """Write a value as a whole number and a fraction: ``29 1/8``, ``-1/16``, ``3``."""
    sign, whole, rest = mixed_parts(value)
    return f"{sign}{' '.join(part for part in (whole, rest) if part)}"


def mixed_parts(value: Fraction) -> tuple[str, str, str]:
    """Return sign, whole number and fraction: ``("", "29", "1/8")``, ``("-", "", "1/16")``.

    A part that is zero is empty, but a plain zero is ``("", "0", "")``.
    """
    whole, rest = divmod(abs(value.numerator), value.denominator)
    sign = "-" if value < 0 else ""
    # “29 0/1” is how a program writes a whole number.
    if not rest:
        return sign, str(whole), ""
    return sign, str(whole) if whole else "", f"{rest}/{value.denominator}"


def decimal_text(value: Fraction, places: int) -> str:
    """Write a value to so many decimal places, exactly rounded, without trailing zeros."""
    # Rounded to the nearest with a half going up, in whole numbers, without a float.
    scaled = (2 * value.numerator * 10**places + value.denominator) // (2 * value.denominator)
    whole, rest = divmod(abs(scaled), 10**places)
    text = f"{whole}.{rest:0{places}d}".rstrip("0").rstrip(".")
    return f"-{text}" if scaled < 0 else text


def length_text(inches: Fraction, unit: Unit = Unit.INCH) -> str:
    """Write a length in ``in`` or ``mm``: ``29 1/8 in``, ``740 mm``.

    A length that no tape has a mark for is written as a decimal: ``29.1719 in``.
    """
    if unit is Unit.MM:
        return f"{decimal_text(inches / MM, 2)} mm"
    if is_tape_fraction(inches):
        return f"{mixed_number(inches)} in"
    return f"{decimal_text(inches, 4)} in"


def feet_text(inches: Fraction, unit: Unit = Unit.INCH) -> str:
    """Write a length in feet and inches (``11 ft 4 in``), or metres where ``unit`` is ``mm``.

    What is shorter than a foot or a metre is in inches or millimetres.
    """
    if unit is Unit.MM:
        if inches < 1000 * MM:
            return length_text(inches, unit)
        return f"{decimal_text(inches / MM / 1000, 3)} m"
    feet, rest = divmod(inches, 12)
    if not feet:
        return length_text(rest)
    return f"{feet} ft {length_text(rest)}" if rest else f"{feet} ft"


def sixty_fourths(inches: Fraction) -> str:
    """Write a small gap in sixty-fourths and millimetres: ``2/64 in (0.8 mm)``."""
    count = steps_nearest(inches * 64, Fraction(1))
    return f"{count}/64 in ({decimal_text(inches / MM, 1)} mm)"
