"""Walls that curve: an arc from its chord and rise, its chord and radius, or its radius and angle.

Of an arc with the chord c and the rise h, the tangent of a quarter of its angle is 2 h ÷ c, and its
radius is (c² ÷ 4 + h²) ÷ 2 h; c is 2 r × the sine of half its angle (geometry of the circle).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from trimlang.language import facts
from trimlang.language.facts import Bend
from trimlang.lengths.angles import STRAIGHT, arc_sine, arc_tangent, sine
from trimlang.lengths.tape import length_text, steps_nearest
from trimlang.record import record
from trimlang.settings.table import Settings
from trimlang.survey.measures import Findings, length

MOST_TURN: Final = STRAIGHT
"""Degrees; beyond half a circle a chord no longer tells how far a wall curves."""


@record
class WallCurve:
    """The arc of a wall: which way it curves, its radius and chord (inches), its angle (degrees).

    ``given`` is the number that the file gives for the run (inches).
    """

    way: Bend
    radius: Fraction
    turn: Fraction
    chord: Fraction
    given: Fraction

    @property
    def turn_right(self) -> Fraction:
        """How far a walk along it turns to the right, negative to the left (degrees)."""
        return self.turn if self.way is Bend.IN else -self.turn


def read_curve(
    said: tuple[facts.Fact, ...], given: Fraction, run: str, settings: Settings, findings: Findings
) -> WallCurve | None:
    """Return how a wall curves whose line gives the number ``given``; None where it is straight."""
    curves = next((fact for fact in said if isinstance(fact, facts.Curves)), None)
    radius_given = next((fact for fact in said if isinstance(fact, facts.RadiusGiven)), None)
    if curves is None:
        if radius_given is not None:
            findings.say("T297", radius_given.span, run=run, across=None, unit=settings.unit)
        return None
    # With an angle the number of the run is the radius, and the line has to say so; otherwise it is
    # the chord, and a word for the radius would contradict it.
    by_angle = isinstance(curves.by, facts.Angle)
    if by_angle != (radius_given is not None):
        across = None
        if isinstance(curves.by, facts.Angle) and 0 < curves.by.degrees <= MOST_TURN:
            reach = given / (2 * sine(curves.by.degrees / 2))
            across = length_text(steps_nearest(reach, settings.rounding_step), settings.unit)
        findings.say("T297", curves.span, run=run, across=across, unit=settings.unit)
        return None
    arc: tuple[Fraction, Fraction, Fraction] | None = None
    if isinstance(curves.by, facts.Angle):
        turn = curves.by.degrees
        if 0 < turn <= MOST_TURN:
            arc = given, turn, 2 * given * sine(turn / 2)
    elif isinstance(curves.by, facts.WrittenRadius):
        radius = length(curves.by.radius, settings.unit, findings, what="a wall's radius")
        if radius is None:
            return None
        # No chord of a circle is longer than its diameter.
        if given <= 2 * radius:
            arc = radius, 2 * arc_sine(given / (2 * radius)), given
    else:
        rise = length(curves.by, settings.unit, findings, what="a wall's rise")
        if rise is None:
            return None
        # Beyond half a circle; see MOST_TURN.
        if rise <= given / 2:
            turn = 4 * arc_tangent(2 * rise / given)
            arc = (given**2 / 4 + rise**2) / (2 * rise), turn, given
    if arc is None:
        findings.say("T298", curves.span, run=run)
        return None
    radius, turn, chord = arc
    return WallCurve(way=curves.way, radius=radius, turn=turn, chord=chord, given=given)
