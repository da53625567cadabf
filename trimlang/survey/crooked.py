"""Works out from walls and diagonals how far off square the corners of a room are.

Corners that nobody measured are taken to be square within their doubt.  Where diagonals contradict
that and no slip explains it, the room is most likely crooked: the angles that fit all lengths best
are found by least squares, each step from the corners of the one before (Gauss and Newton).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction
from math import degrees
from typing import Final

from trimlang.lengths.angles import TENTH
from trimlang.lengths.tape import steps_nearest
from trimlang.survey.diagonals import chords_of
from trimlang.survey.job import Room, Trim
from trimlang.survey.measured_walk import Course, with_angles
from trimlang.survey.misfit import Walk, misfit, shared_turns, takers_of
from trimlang.survey.outline import depths

_MOST_OFF: Final = 5
"""Degrees: a corner that is further off square is seen, and hardly taken for square."""
_STEPS: Final = 5


def lean(room: Room, trims: Iterable[Trim]) -> Room:
    """Return a room with the angles that its walls and diagonals leave, where it wants one implied.

    A room does not lean at one corner alone, so each that nobody measured gets its own.
    """
    if room.open_walk or not room.diagonals:
        return room
    ends = [end for one in room.walk for end in (one.left, one.right) if end is not None]
    if not any(end.implied for end in ends):
        return room
    course = Course(room, room.walk, depths(trims), chords_of(room))
    walk = course.walk()
    # Where the walk itself is in doubt, angles that follow from it would be too.
    if not walk.goes_round or course.disputes:
        return room
    leaning = with_angles(course, angles_left(walk), implied=True)
    return replace(room, walk=leaning)


def angles_left(walk: Walk) -> dict[int, Fraction]:
    """Return the angles by the places of their corners, none where the room leans too far."""
    takers = [at for at in takers_of(walk) if not walk.turns[at].measured]
    if not walk.chords or len(takers) < 2:
        return {}
    angles: dict[int, Fraction] = {}
    for at, turned in zip(takers, _turns(walk, takers), strict=True):
        turn = walk.turns[at]
        if abs(turned - turn.degrees) > _MOST_OFF:
            return {}
        angles[at] = steps_nearest(turn.corner(turned), TENTH)
    return angles


def _turns(walk: Walk, takers: list[int]) -> list[Fraction]:
    """Return how far the walk turns at each of some corners, fitted to all lengths (degrees)."""
    # A doubt so wide leaves the corners free: only the lengths then say where they are.
    free = replace(walk, corner_doubt=float(_MOST_OFF))
    count = len(walk.lengths)
    for _ in range(_STEPS):
        fit = misfit(free)
        shared, _doubts, _lacking = shared_turns(free)
        down = [
            sum(value * missed for value, missed in zip(row, fit.missed, strict=True))
            for row in fit.weight
        ]
        turns = list(free.turns)
        for at in takers:
            effect, doubt = fit.effects[count + at], fit.doubts[count + at]
            off = -doubt * doubt * sum(one * other for one, other in zip(effect, down, strict=True))
            turns[at] = replace(turns[at], degrees=Fraction(shared[at] + degrees(off)))
        free = replace(free, turns=tuple(turns))
    return [free.turns[at].degrees for at in takers]
