"""A bead along crown's ceiling edge below a ceiling that slopes.

The ceiling is the plane to reckon from, as for the crown itself (``sloped_ceilings``).  The crown's
ceiling edges on two walls lie in it and make the corner θ' there.  The bead stands square to the
ceiling and turns that corner by one plain mitre for θ'.  In an inside corner its back ends

    p × tan(90° - θ'/2) + h × tan(q) × sin(θ') ÷ (cos(r) × sin(θ))

before the walls' corner: p and h are how far the crown stands out and hangs down, square to the
ceiling; θ is the corner in plan, q how the ceiling rises along this wall to the corner and r along
the other.  The first part is what the crown's own mitre takes of its ceiling edge; the second comes
of the corner being upright, where crown and bead are square to the ceiling: the crown's wall edge,
h below the ceiling, ends so much nearer.  Round an outside corner the first part is added instead
(geometry).  A frieze behind the crown takes as much of the bead as of the crown: what it takes
level, ÷ cos(q).

What stops it is upright: see ``sloped_ceilings.upright_end``, with a face that is square to the
ceiling in the place of one that leans.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.joinery.meeting import Meeting, Meets
from trimlang.joinery.piece import Cut
from trimlang.joinery.sloped_ceilings import under_ceiling
from trimlang.joint_row import Edge
from trimlang.language.facts import Side
from trimlang.lengths.angles import RIGHT, cosine, sine, tangent
from trimlang.lengths.tape import NOTHING
from trimlang.record import record
from trimlang.survey.job import Run

_SQUARE: Final = Fraction(1, 100)
"""Degrees off square from which on how far out a bead stands would change where it stops."""


@record
class CrownBehind:
    """How far a crown stands out and hangs down behind a bead (inches); 0 where there is none."""

    out: Fraction
    hangs: Fraction


NO_CROWN: Final = CrownBehind(NOTHING, NOTHING)


def along_crown(
    met: Meeting, run: Run, there: Fraction, side: Side, crown: CrownBehind
) -> Meeting | None:
    """Return how a bead meets at an end below a ceiling that slopes; None where it cannot be told.

    ``met`` is how it would below a level ceiling, ``there`` how the ceiling slopes round the
    corner (degrees).
    """
    out = crown.out
    if met.meets is not Meets.MATE:
        # Square to the wall it stops where the wall does, however far out it stands.
        is_square = met.corner is None or abs(met.corner - RIGHT) < _SQUARE
        return met if is_square or not out else None
    hung = under_ceiling(met, run.ceiling, there, side)
    # What is behind the crown is level from wall to wall; what the crown takes lies in the ceiling.
    behind = replace(met, off=met.off - out, beyond=met.beyond - out)
    rises = run.ceiling if side is Side.RIGHT else -run.ceiling
    # What is square to the edge in the ceiling is not level where the ceiling slopes across it too.
    across = behind.off * tangent(hung.roll or NOTHING) * tangent(rises)
    taken = behind.past(behind.off) / cosine(run.ceiling) + across
    turned = hung.end.corner or RIGHT
    leans = tangent(rises) * sine(turned) / (cosine(there) * sine(met.corner or RIGHT))
    nearer = met.short - taken + crown.hangs * leans
    return replace(hung, corner=turned, off=out, beyond=out, short=nearer)


def past_ceiling_edge(cut: Cut) -> Fraction:
    """Return how far an end reaches past the back of the bead's upper edge (inches).

    That edge lies along the crown's ceiling edge, and its number runs along it.
    """
    lower = cut.inset - cut.through if cut.long_edge is Edge.BOTTOM else NOTHING
    return lower + (cut.through if cut.through_edge is Edge.FACE else NOTHING)


def past_upright(run: Run, roll: Fraction, off: Fraction, crown: CrownBehind) -> Fraction:
    """Return how far past the wall's own length along the ceiling a bead's back stops on the right.

    At its left end it stops short by as much.  Inches; ``roll`` is as for the crown, ``off`` how
    far the bead's back is from the wall below a level ceiling.  Where a ceiling slopes along a wall
    and across it, what is square to its edge is not level: an upright plane meets it further along
    by sin(roll) × tan(slope) of how far the back lies from the wall in the ceiling (geometry).
    """
    behind = (off - crown.out) / cosine(roll)
    from_wall = crown.out - crown.hangs * tangent(roll) + behind
    return from_wall * sine(roll) * tangent(run.ceiling)
