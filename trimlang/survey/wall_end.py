"""One end of a stretch of wall: its joint, its corner and how that was measured."""

from __future__ import annotations

from fractions import Fraction

from trimlang.diagnostics import Span
from trimlang.joint_row import Fit
from trimlang.joints import Joint
from trimlang.record import record
from trimlang.survey.on_walls import BlockInCorner


@record
class End:
    """One end of a stretch.

    ``corner`` is the measured angle in degrees, None where the usual one is assumed; of a taper,
    its angle from square.
    ``corner_error`` is how many degrees a sixteenth in the diagonal makes, None where it was not
    measured by one.  ``over_scraps`` says that the number includes the outside long point, over
    scraps of the trim ``scraps_of``.  ``bend`` is how much steeper the trim goes on past a rake
    end, in degrees as one walks to the right, negative where it flattens.  ``implied`` says that
    the corner is what the room's other corners leave.  A ``bullnose`` is the radius of a rounded
    corner, with ``two_pieces`` mitred in two.  ``wider_below`` is by how many degrees the corner
    is wider at the floor than at the trim's top; ``corner`` is then that of mid height.  A
    ``block`` fills the corner, which the wall is measured to.
    ``mitred`` says that the file wants a mitre there.
    """

    joint: Joint
    span: Span
    corner: Fraction | None = None
    fit: Fit = Fit.MITRED
    over_scraps: bool = False
    corner_error: Fraction | None = None
    bend: Fraction = Fraction(0)
    implied: bool = False
    bullnose: Fraction | None = None
    scraps_of: str | None = None
    two_pieces: bool = False
    wider_below: Fraction = Fraction(0)
    block: BlockInCorner | None = None
    mitred: bool = False
