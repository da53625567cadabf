"""The plan of a room as its survey gives it: the walk along every wall, point by point.

The walk begins at the left end of the first wall and goes to the right.  It turns right by
180° - θ at an inside corner, left by as much at an outside one, and goes straight on along
openings unless their sides say that there is a corner.  Corners that were not measured are taken
as square; where the measured ones leave a little of the whole turn over, the others share it,
because a room goes once round whatever its corners are.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from math import isqrt
from typing import Final

from trimlang.language.tree import GapKind
from trimlang.lengths.angles import RIGHT, STRAIGHT, cosine, mitre_of_corner, sine, tangent
from trimlang.lengths.tape import NOTHING, steps_nearest
from trimlang.record import record
from trimlang.survey.job import End, Gap, Room, Run, Stretch, Trim

WHOLE_TURN: Final = Fraction(360)
MOST_SHARED: Final = Fraction(15)
"""Degrees; corners that together are further than this from a whole turn are a mistake."""

# Inches: points of a plan are kept to this, far below any tape, so that fractions stay small.
_FINE: Final = Fraction(1, 10**12)


@record
class Point:
    """A place on the floor, in inches from the walk's start.

    ``x`` is to the right along the first wall, ``y`` towards it, so the room has negative ``y``.
    """

    x: Fraction
    y: Fraction


@record
class Turn:
    """How the walk turns after a stretch: ``degrees`` to the right, negative to the left.

    ``measured`` says that the file gives the angle, ``known`` that it says how the two stretches
    meet at all, ``disputed`` that its two sides contradict each other.  ``curved`` of the degrees
    are the walls' own: half of what each of the two curves, so that walls count as their chords.
    """

    degrees: Fraction
    measured: bool
    known: bool
    disputed: bool = False
    curved: Fraction = Fraction(0)

    @property
    def at_corner(self) -> Fraction:
        """How far the walk turns at the corner itself (degrees)."""
        return self.degrees - self.curved

    def corner(self, degrees: Fraction) -> Fraction:
        """Return the corner's angle (degrees) if the walk turned by so many degrees in all."""
        at_corner = degrees - self.curved
        # A turn to the right is an inside corner; at an outside one the walk turns left, by less
        # than 0.
        return STRAIGHT - at_corner if self.at_corner > 0 else STRAIGHT + at_corner


@record
class Leg:
    """One stretch of the walk in plan: where it starts and ends, and its heading.

    ``label`` is the run's label or the opening's name; ``index`` is its place in
    ``Room.walk``.  ``heading`` is in degrees to the right of the first wall's.
    """

    index: int
    label: str
    start: Point
    end: Point
    heading: Fraction


@record
class Outline:
    """The walk round a room, in plan.

    ``turned`` is the sum of all turns as surveyed, in degrees.  ``misclosure`` is where the walk
    ends as seen from its start (the two should be the same place); None for an open walk, and
    where the corners do not go once round.  ``entrance`` is the middle of the room's entrance,
    if one is marked.
    """

    legs: tuple[Leg, ...]
    turns: tuple[Turn, ...]
    turned: Fraction
    misclosure: Point | None
    entrance: Point | None

    @property
    def gap(self) -> Fraction | None:
        """How far the walk's end is from its start (inches), None where that is not known."""
        if self.misclosure is None:
            return None
        return distance(self.misclosure)


def distance(of: Point) -> Fraction:
    """Return how far a point is from the walk's start (inches, to a millionth)."""
    # A whole-number square root keeps it exact: scaled by 10**12 under the root, 10**6 outside.
    square = of.x**2 + of.y**2
    return Fraction(isqrt(int(square * 10**12)), 10**6)


def outline(room: Room, trims: Iterable[Trim] = ()) -> Outline:
    """Return the walk round ``room``.

    ``trims`` are the job's: a wall that was taken over scraps of trim is shorter than its number
    by what the scraps add.  Without ``trims`` the number is taken as the wall.
    """
    thick = depths(trims)
    walk, count = room.walk, len(room.walk)
    turns = tuple(turn_between(walk[i], walk[(i + 1) % count]) for i in range(count))
    turned = sum((turn.degrees for turn in turns), Fraction(0))
    # Corners too far from a whole turn are wrong, not inexact; sharing that out would hide it.
    goes_round = not room.open_walk and abs(turned - WHOLE_TURN) <= MOST_SHARED
    degrees = shared(turns) if goes_round else tuple(turn.degrees for turn in turns)
    # The first wall's chord lies half of its curve off its beginning; headings are of chords.
    place, heading = Point(Fraction(0), Fraction(0)), Fraction(0)
    legs: list[Leg] = []
    entrance: Point | None = None
    for index, stretch in enumerate(walk):
        far = wall_length(stretch, room, thick)
        # The heading turns to the right, and y points towards the first wall, hence the minus.
        end = Point(place.x + far * _fine(cosine(heading)), place.y - far * _fine(sine(heading)))
        gap = stretch if isinstance(stretch, Gap) else None
        label = (gap.called or "") if gap else _label(stretch)
        legs.append(Leg(index=index, label=label, start=place, end=end, heading=heading))
        if gap and gap.entrance:
            entrance = Point((place.x + end.x) / 2, (place.y + end.y) / 2)
        place, heading = end, heading + degrees[index]
    return Outline(
        legs=tuple(legs),
        turns=turns,
        turned=turned,
        misclosure=place if goes_round and legs else None,
        entrance=entrance,
    )


def depths(trims: Iterable[Trim]) -> dict[str, Fraction]:
    """Return how far each trim stands out from what it is nailed to (inches), by its name."""
    return {trim.name: depth_of(trim) for trim in trims}


def depth_of(trim: Trim) -> Fraction:
    """Return how far a trim stands out (inches): its thickness, or a crown's projection."""
    if trim.spring is None or trim.height is None:
        return trim.thickness or NOTHING
    return trim.height * _fine(sine(trim.spring))


def turn_between(one: Stretch, other: Stretch) -> Turn:
    """Return how the walk turns from one stretch to the next, between their chords."""
    # Nearly all walls are straight, and this is asked of every corner several times.
    curves = (_curve(one), _curve(other))
    curved = sum(curves, NOTHING) / 2 if any(curves) else NOTHING
    sides = [end for end in (one.right, other.left) if end is not None]
    # One side is enough: what is said at either side of a corner holds for both.
    cornered = [end for end in sides if end.joint.is_corner]
    if cornered:
        angle = next((end.corner for end in cornered if end.corner is not None), None)
        implied = any(end.implied for end in cornered)
        # A walk turns by what a corner lacks of a straight line: 180° - θ.
        size = RIGHT if angle is None else 180 - angle
        if cornered[0].joint.is_outside:
            size = -size
        disputed = len({end.joint for end in cornered}) > 1
        measured = angle is not None and not implied
        return Turn(
            degrees=size + curved, measured=measured, known=True, disputed=disputed, curved=curved
        )
    # Past an opening a wall goes straight on unless a side says that it turns. Bare wall, such as
    # behind a cabinet, may well end in a corner, so there the file has to say.
    straight = any(_goes_straight(stretch) for stretch in (one, other)) or any(
        end.joint.goes_on for end in sides
    )
    return Turn(curved, measured=bool(curved), known=straight, curved=curved)


def shared(turns: tuple[Turn, ...]) -> tuple[Fraction, ...]:
    """Return the turns (degrees) with what they lack of a whole one shared out.

    The corners that nobody measured share it; where all were measured, all do.
    """
    lacking = WHOLE_TURN - sum(turn.degrees for turn in turns)
    if not lacking:
        return tuple(turn.degrees for turn in turns)
    # What was read off a protractor is believed before what was merely taken as square.
    takers = [bool(turn.degrees) and not turn.measured for turn in turns]
    if not any(takers):
        takers = [bool(turn.degrees) for turn in turns]
    share = lacking / sum(takers) if any(takers) else Fraction(0)
    return tuple(
        turn.degrees + share if takes else turn.degrees
        for turn, takes in zip(turns, takers, strict=True)
    )


def wall_length(stretch: Stretch, room: Room, thick: dict[str, Fraction] | None = None) -> Fraction:
    """Return how much wall a stretch takes up in plan (inches)."""
    if isinstance(stretch, Gap):
        return stretch.along
    if stretch.curve is not None:
        return stretch.curve.chord
    # A stair's length is along its slope; seen from above it is shorter.
    in_plan = stretch.length * _fine(cosine(stretch.slope)) if stretch.slope else stretch.length
    # Few walls are measured over scraps.
    for end in (stretch.left, stretch.right):
        if end.over_scraps:
            in_plan -= _scraps(end, stretch, room, thick or {})
    return in_plan


def _scraps(end: End, run: Run, room: Room, thick: dict[str, Fraction]) -> Fraction:
    # Only at an outside corner do scraps reach past the wall; inside, the tape ends at the wall
    # either way.
    if not end.joint.is_outside or not run.trims:
        return NOTHING
    mitre = room.settings.mitre_out if end.corner is None else mitre_of_corner(end.corner)
    return thick.get(end.scraps_of or run.trims[0], NOTHING) * tangent(mitre)


def _curve(stretch: Stretch) -> Fraction:
    """Return how far a walk turns to the right along a stretch that curves (degrees)."""
    curve = stretch.curve if isinstance(stretch, Run) else None
    return NOTHING if curve is None else curve.turn_right


def _goes_straight(stretch: Stretch) -> bool:
    return isinstance(stretch, Gap) and stretch.kind is GapKind.OPENING


def _label(stretch: Stretch) -> str:
    return stretch.label if isinstance(stretch, Run) else ""


def _fine(value: Fraction) -> Fraction:
    # With all thirty places, every later sum would carry thirty-digit denominators.
    return value if value.denominator == 1 else steps_nearest(value, _FINE)
