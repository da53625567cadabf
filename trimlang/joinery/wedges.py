"""Which way a cut runs, and the wedge that a joint is left open by the marks of the saw.

Two mitres of ``m`` where ``m₀`` is right leave a wedge between them: along the wall each
is off by depth × (tan m - tan m₀), and square to the joint's line by that × cos m₀
(cos m₀ is the sine of half the corner).  The pieces touch at one edge, and the wedge is as
wide as that at the other.
"""

from __future__ import annotations

from fractions import Fraction

from trimlang.joinery.piece import Lean
from trimlang.joint_row import Edge
from trimlang.lengths.angles import cosine, tangent


def lean_of(side: str, long_edge: Edge) -> Lean:
    """Tell which way a cut runs: towards the end at its long edge, which lies far or near.

    ``side`` is ``left`` or ``right`` of the piece as one faces it on the wall.
    """
    if long_edge is Edge.BOTH:
        return Lean.UPRIGHT
    # from the fence towards you: away from the end where the edge at the fence is the long one
    near_is_further_right = long_edge.is_far == (side == "left")
    return Lean.RIGHT if near_is_further_right else Lean.LEFT


def wedge(depth: Fraction, exact: Fraction, setting: Fraction, *, pieces: int = 2) -> Fraction:
    """Return how wide a joint of mitres that are set so stands open, at its open edge (inches).

    ``depth`` is what the mitre runs through: the thickness, or a face's width.  One piece
    that is set against a wall opens half as far as two that are set alike.

    >>> wedge(Fraction(9, 16), Fraction(45), Fraction(45))
    Fraction(0, 1)
    """
    return pieces * depth * abs(tangent(exact) - tangent(setting)) * cosine(exact)


def crown_wedges(
    deep: tuple[Fraction, Fraction],
    exact: tuple[Fraction, Fraction],
    setting: tuple[Fraction, Fraction],
    standing: Fraction,
    *,
    inside: bool,
) -> tuple[Fraction, Fraction]:
    """Return how far a crown's corner stands open at its face and at its back (inches).

    ``deep`` are the crown's width and thickness; ``exact`` and ``setting`` are mitre and
    bevel for lying flat; ``standing`` the mitre in place.  Lying flat a cut runs
    ``u × tan(mitre) + v × tan(bevel) ÷ cos(mitre)`` along the piece, ``u`` up from the wall
    edge and ``v`` out from the back.  What the settings change of it is largest in one of the
    four corners of the section, where the pieces touch.
    """
    width, thickness = deep
    along = tangent(setting[0]) - tangent(exact[0])
    out = tangent(setting[1]) / cosine(setting[0]) - tangent(exact[1]) / cosine(exact[0])
    way = -1 if inside else 1
    off = {
        (u, v): way * (along * u + out * v) for u in (Fraction(0), width)
        for v in (Fraction(0), thickness)
    }  # fmt: skip
    touch = max(off.values())
    face, back = (
        max(2 * (touch - far) * cosine(standing) for (_, v), far in off.items() if v == at)
        for at in (thickness, Fraction(0))
    )
    return face, back
