"""Which way a cut runs, and the wedge that a joint stays open by because a saw has marks.

Two mitres of ``m`` where ``m₀`` would be right leave a wedge between them.  Each is off by
depth × (tan m - tan m₀) along the wall, which is that × cos m₀ square to the joint (cos m₀ is
the sine of half the corner).  The pieces touch at one edge, and at the other the wedge is as
wide as both are off together.
"""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache

from trimlang.joinery.piece import Lean
from trimlang.joint_row import Edge
from trimlang.language.end_facts import Side
from trimlang.lengths.angles import cosine, tangent
from trimlang.lengths.tape import NOTHING


def lean_of(side: Side, long_edge: Edge) -> Lean:
    """Return which way a cut runs from the fence towards you, by the edge that is longer.

    ``side`` is that of the piece as one faces it on the wall.
    """
    if long_edge is Edge.BOTH:
        return Lean.UPRIGHT
    # The long edge reaches further out. Where that is the edge at the fence (the far one), the cut
    # runs inwards as it comes towards you: to the right at a left end.
    near_is_further_right = long_edge.is_far == (side is Side.LEFT)
    return Lean.RIGHT if near_is_further_right else Lean.LEFT


def wedge(depth: Fraction, exact: Fraction, setting: Fraction, *, pieces: int = 2) -> Fraction:
    """Return how wide a joint stands open at its open edge (inches).

    ``exact`` and ``setting`` are degrees from square.  ``depth`` is what the mitre runs through:
    the thickness, or the width of a face.  One piece against a wall opens half as far as two
    pieces with the same setting.

    >>> wedge(Fraction(9, 16), Fraction(45), Fraction(45))
    Fraction(0, 1)
    """
    # Most saws stop where most corners want them to, and long fractions are slow to multiply.
    if exact == setting:
        return NOTHING
    return pieces * depth * abs(tangent(exact) - tangent(setting)) * cosine(exact)


@lru_cache(maxsize=4096)
def crown_wedges(
    deep: tuple[Fraction, Fraction],
    exact: tuple[Fraction, Fraction],
    setting: tuple[Fraction, Fraction],
    standing: Fraction,
    *,
    inside: bool,
) -> tuple[Fraction, Fraction]:
    """Return how far a crown's corner stands open at its face and at its back (inches).

    ``deep`` is the crown's width and thickness; ``exact`` and ``setting`` are mitre and bevel for
    lying flat; ``standing`` is the mitre in place.  At ``u`` up from the wall edge and ``v`` out
    from the back, a cut made lying flat lies ``u × tan(mitre) + v × tan(bevel) ÷ cos(mitre)``
    along the piece.  The settings change that most in one of the section's four corners, and
    there the pieces touch.
    """
    width, thickness = deep
    # How the cut that was made differs from the one that was wanted, up the section and out from
    # it.
    along = tangent(setting[0]) - tangent(exact[0])
    out = tangent(setting[1]) / cosine(setting[0]) - tangent(exact[1]) / cosine(exact[0])
    # Inside, what makes a piece longer at the back makes it shorter here; the sign turns it so that
    # the largest is where the pieces touch.
    way = -1 if inside else 1
    up = (NOTHING, way * along * width)
    at_back, at_face = up, tuple(far + way * out * thickness for far in up)
    # The pieces meet at the corner of the section that reaches furthest, and stand open everywhere
    # else.
    touch = max(*at_back, *at_face)
    face, back = (2 * (touch - min(there)) * cosine(standing) for there in (at_face, at_back))
    return face, back
