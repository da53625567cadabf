"""Crown: a trim that leans between wall and ceiling.

Its spring angle ``s`` is between its back and the wall.  At a corner ``θ`` the trim in place is
mitred by ``m`` = 90° - θ/2.  Lying flat on the saw, the same cut takes a mitre of
atan(sin s × tan m) and a bevel of asin(cos s × sin m).  Nested upside down between fence and
table, leaning as it does on the wall, it takes the mitre ``m`` and no bevel.

Which way the saw swings and which edge lies against the fence hold for a blade that tilts to the
left, as it does on most saws (common practice, from memory).  ``tests/published/test_crown.py``
derives all of it by turning planes in space.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from trimlang.lengths.angles import (
    arc_sine,
    arc_tangent,
    cosine,
    saw_reading,
    sine,
    tangent,
)
from trimlang.record import record

CEILING_EDGE: Final = "ceiling edge"
WALL_EDGE: Final = "wall edge"


@record
class CrownCut:
    """How one end of a crown piece is cut, for both ways of holding it (degrees).

    Lying flat, face up: ``mitre`` and ``bevel`` as wanted and as the saw reads
    them, the edge that goes against the ``fence``, the side to which the saw's
    table is swung, and the side of the blade on which the piece lies (``keep``).
    Nested, upside down with the ceiling edge on the table: ``nested`` and its
    reading, swing and keep; no bevel.
    """

    mitre: Fraction
    mitre_setting: Fraction
    bevel: Fraction
    bevel_setting: Fraction
    fence: str
    swing: str
    keep: str
    nested: Fraction
    nested_setting: Fraction
    nested_swing: str
    nested_keep: str


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


def lies_for(side: str, *, inside: bool) -> tuple[str, str]:
    """Return the edge that lies against the fence, and the side of the blade that is kept.

    For a piece that lies flat, face up, and is cut at its end ``side``; ``inside`` where
    that end is longest at the back, as at an inside corner or under a scarf's other piece.
    A blade that tilts to the left leaves the piece at its left longest at the back.
    """
    return (
        CEILING_EDGE if inside == (side == "right") else WALL_EDGE,
        "left" if inside else "right",
    )


def crown_cut(
    spring: Fraction, standing: Fraction, side: str, step: Fraction, *, inside: bool
) -> CrownCut:
    """Return how one end of a crown piece is cut.

    ``side`` is ``left`` or ``right`` of the piece as one faces it on the wall,
    ``standing`` its mitre in place, ``step`` what the saw reads to.
    """
    mitre, bevel = flat_mitre(spring, standing), flat_bevel(spring, standing)
    fence, keep = lies_for(side, inside=inside)
    swing = "right" if fence == CEILING_EDGE else "left"
    return CrownCut(
        mitre=mitre,
        mitre_setting=saw_reading(mitre, step),
        bevel=bevel,
        bevel_setting=saw_reading(bevel, step),
        fence=fence,
        swing=swing,
        keep=keep,
        nested=standing,
        nested_setting=saw_reading(standing, step),
        nested_swing=swing,
        # Upside down the piece's right end points left, so the piece lies to the right of the
        # blade.
        nested_keep=side,
    )
