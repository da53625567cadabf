"""Crown: a trim that leans between wall and ceiling.

Its spring angle ``s`` is between its back and the wall.  At a corner ``θ`` the trim in place is
mitred by ``m`` = 90° - θ/2.  Lying flat on the saw, the same cut takes a mitre of
atan(sin s × tan m) and a bevel of asin(cos s × sin m).  Nested upside down between fence and
table, leaning as it does on the wall, it takes the mitre ``m`` and no bevel.

Which edge lies at the fence and which way the saw swings stands in
``trimlang.joinery.at_the_saw``; ``tests/published/test_crown.py`` derives the angles by
turning planes.
"""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache

from trimlang.lengths.angles import (
    arc_sine,
    arc_tangent,
    cosine,
    saw_reading,
    sine,
    tangent,
)
from trimlang.record import record


@record
class CrownCut:
    """The angles of one end of a crown piece, for both ways of cutting it (degrees).

    Lying flat, face up: ``mitre`` and ``bevel`` as wanted and as the saw reads them.
    Nested, upside down with the ceiling edge on the table: ``nested`` and its reading, no
    bevel; None where only lying flat will do.
    """

    mitre: Fraction
    mitre_setting: Fraction
    bevel: Fraction
    bevel_setting: Fraction
    nested: Fraction | None
    nested_setting: Fraction | None


def flat_mitre(spring: Fraction, standing: Fraction) -> Fraction:
    """Return the mitre for lying flat, where the trim in place is mitred by ``standing``."""
    return arc_tangent(sine(spring) * tangent(standing))


def flat_bevel(spring: Fraction, standing: Fraction) -> Fraction:
    """Return the bevel for lying flat, where the trim in place is mitred by ``standing``."""
    return arc_sine(cosine(spring) * sine(standing))


def projection(width: Fraction, spring: Fraction) -> Fraction:
    """Return how far the ceiling edge stands out from the wall (inches): width × sin s."""
    return width * sine(spring)


def drop(width: Fraction, spring: Fraction) -> Fraction:
    """Return how far the wall edge hangs below the ceiling (inches): width × cos s."""
    return width * cosine(spring)


# A house's corners are mostly square, and each of them asks.
@lru_cache(maxsize=4096)
def crown_cut(spring: Fraction, standing: Fraction, step: Fraction) -> CrownCut:
    """Return the angles of one end of a crown piece.

    ``standing`` is its mitre in place, ``step`` what the saw reads to.
    """
    mitre, bevel = flat_mitre(spring, standing), flat_bevel(spring, standing)
    return CrownCut(
        mitre=mitre,
        mitre_setting=saw_reading(mitre, step),
        bevel=bevel,
        bevel_setting=saw_reading(bevel, step),
        # Nested it stands as it will hang, so the saw cuts the corner itself and no bevel is
        # needed.
        nested=standing,
        nested_setting=saw_reading(standing, step),
    )
