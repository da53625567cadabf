"""How much each measurement of a room would have to change for all of them to agree.

These are the corrections with the least sum of weighted squares, by the method of condition
equations: with the misses m, the effects E of each error and the errors' variances Q, the
corrections are -Q Eᵀ (E Q Eᵀ)⁻¹ m (Ghilani, Adjustment Computations; from memory).
"""

from __future__ import annotations

from fractions import Fraction
from math import degrees, sqrt
from typing import Final

from trimlang.record import record
from trimlang.survey.measured_walk import Course
from trimlang.survey.misfit import Misfit, Walk

FINE: Final = 1000
"""Denominator of what was worked out, as a fraction: finer than a tape or a protractor."""


@record
class Residual:
    """One measurement's correction: what must be added to it for all to agree.

    ``off`` is in inches, of a corner in degrees; ``alone`` is what it would have to be if all
    other measurements were right.  ``sure`` is that over what errors within the survey's doubts
    would call for, in standard deviations.
    """

    of: str
    off: Fraction
    alone: Fraction
    is_corner: bool
    sure: float


def residuals(course: Course, walk: Walk, fit: Misfit) -> tuple[Residual, ...]:
    """Return the correction of each wall, each corner and each diagonal, in that order."""
    count = len(walk.lengths)
    names = course.names
    corners = [f"the corner of {names[at]} and {names[(at + 1) % count]}" for at in range(count)]
    called = [*names, *corners, *(f"diagonal {chord.name}" for chord in walk.chords)]
    # (E Q Eᵀ)⁻¹ m, which is the same for every measurement.
    down = [
        sum(value * missed for value, missed in zip(row, fit.missed, strict=True))
        for row in fit.weight
    ]
    found: list[Residual] = []
    for at, (name, effect, doubt) in enumerate(zip(called, fit.effects, fit.doubts, strict=True)):
        # Nothing is in doubt here (the walls go straight on), so nothing is corrected.
        if not doubt:
            continue
        off = -doubt * doubt * sum(one * other for one, other in zip(effect, down, strict=True))
        is_corner = count <= at < 2 * count
        alone, gained = fit.pull(effect)
        found.append(
            Residual(
                of=name,
                off=_to_say(off, is_corner=is_corner),
                alone=_to_say(alone, is_corner=is_corner),
                is_corner=is_corner,
                sure=sqrt(gained),
            )
        )
    return tuple(found)


def _to_say(off: float, *, is_corner: bool) -> Fraction:
    return Fraction(degrees(off) if is_corner else off).limit_denominator(FINE)
