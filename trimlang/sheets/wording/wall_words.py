"""Says of a wall in the plan's list what a plan does not show: climbs, curves, sloping ceilings."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from trimlang.language.facts import Bend, Side
from trimlang.lengths.angles import EIGHTHS
from trimlang.lengths.tape import SIXTEENTH, steps_nearest
from trimlang.marking import N_
from trimlang.sheets.wording.quantities import Pen
from trimlang.survey.job import Run


def wall_length(run: Run, pen: Pen) -> str:
    """Return how long a run is, and of one that climbs which way its tape lay."""
    length = str(pen.length(run.length))
    return pen.words("{length} along the slope", length=length) if run.slope else length


def wall_note(run: Run, pen: Pen) -> str:
    """Return the surveyor's note of a run, and how it climbs and curves."""
    return "; ".join([*([run.note] if run.note else []), *_shape(run, pen)])


def note_in_plan(run: Run, pen: Pen) -> str:
    """Return ``wall_note``, and of a run that climbs that its length is not the one drawn."""
    note = wall_note(run, pen)
    return f"{note}; {pen.words('length along the slope')}" if run.slope else note


def _shape(run: Run, pen: Pen) -> Iterator[str]:
    words = pen.words
    if run.slope:
        yield _climb(N_("climbs {angle} to the {side}"), run.slope, pen)
    if run.curve is not None:
        # A radius that was worked out from a chord and a rise may lie on no mark of the tape.
        radius = pen.length(steps_nearest(run.curve.radius, SIXTEENTH))
        if run.curve.way is Bend.OUT:
            yield words("curves into the room, radius {radius}", radius=radius)
        else:
            yield words("curves away, radius {radius}", radius=radius)
    if run.ceiling:
        yield _climb(N_("ceiling rises {angle} to the {side}"), run.ceiling, pen)


def _climb(text: str, slope: Fraction, pen: Pen) -> str:
    side = Side.RIGHT if slope > 0 else Side.LEFT
    # At least an eighth, so that nothing is said to rise by 0°.
    eighth = Fraction(1, EIGHTHS)
    angle = max(steps_nearest(abs(slope), eighth), eighth)
    return pen.words(text, angle=pen.angle(angle), side=pen.words(side))
