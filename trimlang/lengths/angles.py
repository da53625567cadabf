"""Angles as exact fractions of a degree, and their tangents to thirty places.

Saw settings depend on angles that no fraction holds, and lengths depend on
their tangents.  So that the last sixteenth never hangs on a float or on one
machine's maths library, the tangent is worked out in decimal arithmetic and
handed on as a fraction.
"""

from __future__ import annotations

from decimal import Decimal, localcontext
from fractions import Fraction
from functools import lru_cache
from typing import Final

from trimlang.lengths.tape import decimal_text, steps_nearest

PI: Final = Decimal("3.14159265358979323846264338327950288419716939937510582097494459")
_PLACES: Final = Decimal(1).scaleb(-30)
RIGHT: Final = Fraction(90)


def _sine_and_cosine(radians: Decimal) -> tuple[Decimal, Decimal]:
    """Sum both Taylor series together; fast enough for the first turn."""
    sine, cosine, term, n = Decimal(0), Decimal(0), Decimal(1), 0
    while abs(term) > Decimal(1).scaleb(-55):
        if n % 2:
            sine += term if n % 4 == 1 else -term
        else:
            cosine += term if n % 4 == 0 else -term
        n += 1
        term = term * radians / n
    return sine, cosine


@lru_cache(maxsize=4096)
def tangent(degrees: Fraction) -> Fraction:
    """Return the tangent of an angle in degrees, right to thirty decimal places.

    Raises:
        ValueError: the angle is not between -90° and 90°.
    """
    if not -RIGHT < degrees < RIGHT:
        raise ValueError(f"no tangent at {degrees} degrees")
    if degrees < 0:
        return -tangent(-degrees)
    if degrees == 45:
        return Fraction(1)
    with localcontext() as context:
        context.prec = 60
        radians = Decimal(degrees.numerator) / Decimal(degrees.denominator) * PI / 180
        sine, cosine = _sine_and_cosine(radians)
        return Fraction((sine / cosine).quantize(_PLACES))


def mitre_of_corner(corner: Fraction) -> Fraction:
    """Return the saw setting, from square, that halves a corner of so many degrees.

    The corner is measured between the two wall faces: through the room at an
    inside corner, through the wall at an outside one.
    """
    return RIGHT - corner / 2


def saw_reading(exact: Fraction, step: Fraction) -> Fraction:
    """Return the setting that a saw reading to ``step`` degrees shows nearest ``exact``."""
    return steps_nearest(exact, step)


def degrees_text(degrees: Fraction) -> str:
    """Write an angle to a hundredth: ``45.5°``, ``22.5°``, ``31.62°``."""
    return f"{decimal_text(degrees, 2)}°"
