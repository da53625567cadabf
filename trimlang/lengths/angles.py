"""Angles as exact fractions of a degree, and their sines and tangents to thirty places.

Saw settings depend on angles that are no fractions, and lengths depend on their tangents.  So
that the last sixteenth never depends on a float or on one machine's maths library, these are
worked out in decimal arithmetic and returned as fractions.
"""

from __future__ import annotations

from decimal import Decimal, localcontext
from fractions import Fraction
from functools import lru_cache
from math import ceil
from typing import Final

from trimlang.lengths.tape import (
    Unit,
    decimal_text,
    mixed_number,
    on_mark,
    steps_nearest,
    steps_up,
)

# To 62 places; sums are carried to 60 digits, so thirty places of the result are sure.
PI: Final = Decimal("3.14159265358979323846264338327950288419716939937510582097494459")
_PLACES: Final = Decimal(1).scaleb(-30)
_TOO_SMALL: Final = Decimal(1).scaleb(-55)
"""Terms of a series below this change nothing in the thirty places that are kept."""
RIGHT: Final = Fraction(90)
STRAIGHT: Final = 180
MITRE_OF_SQUARE: Final = Fraction(45)
"""Degrees from square; two pieces that turn a right angle share it."""
TENTH: Final = Fraction(1, 10)
"""Degrees; finer than any corner in a house is known (common practice, no source)."""
EIGHTHS: Final = 8
"""A saw's scale in fractions of a degree goes to eighths (common practice, no source)."""


def _sine_and_cosine(radians: Decimal) -> tuple[Decimal, Decimal]:
    """Sum both Taylor series together; used for less than a quarter turn, where they are quick."""
    sine, cosine, term, n = Decimal(0), Decimal(0), Decimal(1), 0
    square = radians * radians
    while abs(term) > _TOO_SMALL:
        cosine += term
        n += 1
        sine += term / n
        n += 1
        term *= -square / (n * (n - 1))
    # Each term of the sine is one of the cosine's, times the angle and by one number more.
    return sine * radians, cosine


@lru_cache(maxsize=4096)
def tangent(degrees: Fraction) -> Fraction:
    """Return the tangent of an angle in degrees, right to thirty decimal places.

    Raises:
        ValueError: the angle is not between -90° and 90°.
    """
    if abs(degrees) >= RIGHT:
        raise ValueError(f"no tangent at {degrees} degrees")
    # By symmetry, so that a corner that turns left gives to the last place what the same one
    # turning right does.
    if degrees < 0:
        return -tangent(-degrees)
    # Exactly 1, as almost every corner asks for it: a length must not be a hair off its mark.
    if degrees == 45:
        return Fraction(1)
    with localcontext() as context:
        context.prec = 60
        radians = Decimal(degrees.numerator) / Decimal(degrees.denominator) * PI / 180
        sine, cosine = _sine_and_cosine(radians)
        return Fraction((sine / cosine).quantize(_PLACES))


def arc_length(radius: Fraction, degrees: Fraction) -> Fraction:
    """Return how long an arc is, right to thirty decimal places of its radius's unit."""
    return steps_nearest(radius * degrees / STRAIGHT * Fraction(PI), Fraction(_PLACES))


def sine(degrees: Fraction) -> Fraction:
    """Return the sine of any angle in degrees, right to thirty decimal places."""
    return _wave(degrees)[0]


def cosine(degrees: Fraction) -> Fraction:
    """Return the cosine of any angle in degrees, right to thirty decimal places."""
    return _wave(degrees)[1]


# Whoever asks for an angle's sine mostly asks for its cosine too.
@lru_cache(maxsize=4096)
def _wave(degrees: Fraction) -> tuple[Fraction, Fraction]:
    # Whole and quarter turns are taken off exactly, so only the rest, below 90°, is summed.
    quarters, rest = divmod(degrees % 360, RIGHT)
    with localcontext() as context:
        context.prec = 60
        radians = Decimal(rest.numerator) / Decimal(rest.denominator) * PI / 180
        sine_, cosine_ = (Fraction(one.quantize(_PLACES)) for one in _sine_and_cosine(radians))
    for _ in range(int(quarters)):
        # A quarter turn further: sin(x + 90°) = cos x and cos(x + 90°) = -sin x.
        sine_, cosine_ = cosine_, -sine_
    return sine_, cosine_


@lru_cache(maxsize=4096)
def arc_tangent(ratio: Fraction) -> Fraction:
    """Return the angle in degrees, between -90 and 90, that has this tangent."""
    with localcontext() as context:
        context.prec = 60
        value = Decimal(ratio.numerator) / Decimal(ratio.denominator)
        return _in_degrees(_arc_tangent(value))


@lru_cache(maxsize=4096)
def arc_sine(ratio: Fraction) -> Fraction:
    """Return the angle in degrees, from -90 to 90, that has this sine.

    Raises:
        ValueError: no angle has it (beyond 1 or -1).
    """
    return RIGHT - arc_cosine(ratio)


@lru_cache(maxsize=4096)
def arc_cosine(ratio: Fraction) -> Fraction:
    """Return the angle in degrees, from 0 to 180, that has this cosine.

    Raises:
        ValueError: no angle has it (beyond 1 or -1).
    """
    if abs(ratio) > 1:
        raise ValueError(f"no angle has the cosine {ratio}")
    # The formula below would divide by nothing here: half a straight angle has no tangent.
    if ratio == -1:
        return 2 * RIGHT
    with localcontext() as context:
        context.prec = 60
        # cos x = c gives tan²(x/2) = (1 - c) ÷ (1 + c), exact under the root, so only the arc
        # tangent needs a series.
        square = (1 - ratio) / (1 + ratio)
        half = (Decimal(square.numerator) / Decimal(square.denominator)).sqrt()
        return _in_degrees(2 * _arc_tangent(half))


def _arc_tangent(value: Decimal) -> Decimal:
    if value < 0:
        return -_arc_tangent(-value)
    if value > 1:
        # The series converges only up to 1: atan t = 90° - atan(1/t).
        return PI / 2 - _arc_tangent(1 / value)
    # tan(x/2) = t ÷ (1 + √(1 + t²)): each halving of the angle makes the series converge faster.
    halvings = 4
    for _ in range(halvings):
        value = value / (1 + (1 + value * value).sqrt())
    total, power, n = Decimal(0), value, 1
    while power > _TOO_SMALL:
        total += power / n if n % 4 == 1 else -power / n
        power *= value * value
        n += 2
    return total * (1 << halvings)


def _in_degrees(radians: Decimal) -> Fraction:
    return Fraction((radians * 180 / PI).quantize(_PLACES))


def mitre_of_corner(corner: Fraction) -> Fraction:
    """Return the mitre from square that halves a corner (both in degrees): 90° - corner/2.

    The corner is measured between the two wall faces: through the room at an inside corner,
    through the wall at an outside one.
    """
    return RIGHT - corner / 2


def saw_reading(exact: Fraction, step: Fraction, *, steeper: bool = False) -> Fraction:
    """Return the mark nearest to ``exact`` on a saw that reads to ``step`` degrees.

    ``steeper``: the next mark above it, or the one that it lies on.  The mark stays below 90°:
    turned that far, the blade runs along the piece and cuts no end.
    """
    # on_mark first: an angle that lies on a mark must not be pushed to the next one by the last
    # decimals of a tangent.
    setting = steps_up(on_mark(exact, step), step) if steeper else steps_nearest(exact, step)
    # Rounding may reach 90° from below, and the last mark under it is then the nearest that cuts.
    return setting if setting < RIGHT else (ceil(RIGHT / step) - 1) * step


def in_eighths(scale: Fraction, unit: Unit) -> bool:
    """Whether a saw that reads to ``scale`` degrees is read in fractions: not in metric units."""
    return unit is Unit.INCH and EIGHTHS % scale.denominator == 0


def scale_text(degrees: Fraction, scale: Fraction, unit: Unit, gap: str = " ") -> str:
    """Write an angle as a saw that reads to ``scale`` degrees shows it: ``44 1/2°``, ``31 1/8°``.

    In decimals where the scale is one of tenths, or metric, and for an angle that lies between
    two eighths, as a corner may be measured.  ``gap`` stands before the fraction.

    >>> scale_text(Fraction(67, 2), Fraction(1, 8), Unit.INCH)
    '33 1/2°'
    >>> scale_text(Fraction(67, 2), Fraction(1, 10), Unit.INCH)
    '33.5°'
    """
    # Inch saws have their marks in fractions of a degree, and a corner measured in tenths falls
    # between those: 0.1° is no fraction that anyone reads.
    if in_eighths(scale, unit) and EIGHTHS % degrees.denominator == 0:
        return f"{mixed_number(degrees).replace(' ', gap)}°"
    return degrees_text(degrees)


def degrees_text(degrees: Fraction) -> str:
    """Write an angle to a hundredth: ``45.5°``, ``22.5°``, ``31.62°``."""
    return f"{decimal_text(degrees, 2)}°"
