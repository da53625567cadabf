"""What a run that climbs is besides a wall: how it was measured, its steps, notches for newels."""

from __future__ import annotations

from fractions import Fraction

from trimlang.language.facts import LengthTaken, Side
from trimlang.record import record


@record
class NewelNotch:
    """A piece of the foot of one end that is cut out: ``level`` and ``up``, in inches."""

    side: Side
    level: Fraction
    up: Fraction


@record
class StairSteps:
    """The unit rise and the unit run of a stair, in inches."""

    rise: Fraction
    run: Fraction


@record
class StairWork:
    """What the file says of a run on a stair besides its pitch.

    ``taken`` is which way the tape ran, ``measured`` what it read (inches), None where that is
    the run's length.  ``steps`` are those that its pitch was told by, None where that was told
    otherwise; trim on an ``open_side`` is sawn to them.
    """

    taken: LengthTaken = LengthTaken.ALONG
    measured: Fraction | None = None
    notches: tuple[NewelNotch, ...] = ()
    steps: StairSteps | None = None
    open_side: bool = False
