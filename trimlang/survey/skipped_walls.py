"""Finds walls that may have been skipped, each of the length that closes the room best.

Where a corner's angle was skipped with the wall, it is what the other corners leave.  Of a step,
whoever skips its wall writes one corner for the two that it has.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.joints_by_role import STOPPED
from trimlang.language.end_facts import Side
from trimlang.lengths.angles import RIGHT
from trimlang.record import record
from trimlang.survey.ends import LEAST_CORNER, MOST_CORNER
from trimlang.survey.job import End, Run
from trimlang.survey.length_slips import roughly
from trimlang.survey.measured_walk import Course, angle_at, replaced, with_end
from trimlang.survey.misfit import misfit
from trimlang.survey.outline import WHOLE_TURN
from trimlang.survey.possible_slip import DISPUTE, SHORTEST, Slip

# Added to a slip's score in chi-squared by how rare it is (common practice, no source).
_SKIPPED, _RARER = 4.0, 2.0
_LIKE_ANOTHER: Final = 3
"""Degrees: a corner that was skipped with its wall is square, or as another of its room is."""


@record
class _Skipped:
    """A wall that may stand after a stretch: how it begins and how it ends.

    ``turned`` are the sides at which the neighbour says another corner than the wall has,
    ``unread`` is the side whose angle is what the room's other corners leave.
    """

    at: int
    left: End
    right: End
    turned: Side | None = None
    unread: Side | None = None


def skipped_walls(course: Course) -> Iterator[Slip]:
    """Yield a wall skipped after each stretch where the walk can go round with it."""
    for at in range(len(course.stretches)):
        slips = (_with_wall(course, wall) for wall in _ways(course, at))
        best = min((slip for slip in slips if slip is not None), key=_score, default=None)
        if best is not None:
            yield best


def _score(slip: Slip) -> float:
    return slip.score


def _ways(course: Course, at: int) -> Iterator[_Skipped]:
    """Yield the ends that a wall after a stretch may have."""
    one, other = course.stretches[at], course.after(at)
    left, right = (
        End(
            joint=end.joint if end else STOPPED,
            corner=end.corner if end else None,
            span=one.span,
        )
        for end in (one.right, other.left)
    )
    if not (left.joint.is_corner or right.joint.is_corner):
        return
    yield _Skipped(at, left, right)
    # An angle that both sides have was read at one corner of the wall, not at both.
    for side, end in ((Side.LEFT, left), (Side.RIGHT, right)):
        if end.joint.is_corner and (end.corner is None or left.corner == right.corner):
            yield _Skipped(at, left, right, unread=side)
    if left.joint.is_corner and left.joint is right.joint:
        step = End(joint=left.joint.other_way, span=one.span)
        yield _Skipped(at, step, right, turned=Side.LEFT)
        yield _Skipped(at, left, step, turned=Side.RIGHT)


def _with_wall(course: Course, wall: _Skipped) -> Slip | None:
    """Return the slip of skipping a wall, if the walk can go round with it."""
    at = wall.at
    tried = _said_at_both(course, wall)
    if wall.unread is not None:
        # With one corner more that nobody read, the turns of the others leave its angle.
        lacking = WHOLE_TURN - sum(turn.degrees for turn in tried.turns)
        end = wall.unread.of(wall.left, wall.right)
        written = RIGHT if end.corner is None else end.corner
        angle = written + (lacking if end.joint.is_outside else -lacking)
        if not _is_likely(course, angle):
            return None
        read = replace(end, corner=angle, implied=True)
        sides = (read, wall.right) if wall.unread is Side.LEFT else (wall.left, read)
        known = _Skipped(at, *sides, turned=wall.unread)
        tried = _said_at_both(course, known)
    walk = tried.walk()
    if not walk.goes_round:
        return None
    fit = misfit(walk)
    long, gained = fit.pull(fit.effects[at + 1])
    # A wall shorter than that is no wall that somebody forgets.
    if long < SHORTEST:
        return None
    names, following = course.names, (at + 1) % len(course.stretches)
    about = roughly(SHORTEST + long, course.room.settings.unit)
    words = f"a wall skipped between {names[at]} and {names[following]}, about {about} long"
    usual = wall.turned is wall.unread is None
    score = fit.total - gained + DISPUTE * tried.disputes + _SKIPPED
    return Slip(words, (at, following), score if usual else score + _RARER)


def _said_at_both(course: Course, wall: _Skipped) -> Course:
    """Return the course with the wall in it, of the least length, its neighbours in agreement."""
    run = Run(
        label="",
        length=Fraction(SHORTEST),
        left=wall.left,
        right=wall.right,
        trims=(),
        must_splice=False,
        may_splice=True,
        note=None,
        span=wall.left.span,
    )
    stretches = replaced(course.stretches, wall.at, course.stretches[wall.at], run)
    if wall.turned is not None:
        before = wall.turned is Side.LEFT
        place = (wall.at if before else wall.at + 2) % len(stretches)
        side = wall.turned.other
        neighbour = stretches[place]
        if side.of(neighbour.left, neighbour.right) is not None:
            end = wall.turned.of(wall.left, wall.right)
            stretches = replaced(stretches, place, with_end(neighbour, side, end))
    # Diagonals are named by walls of the walk as it is written.
    return replace(course, chords=(), stretches=stretches)


def _is_likely(course: Course, angle: Fraction) -> bool:
    """Tell whether a corner that was skipped is square, or as another of its room."""
    if not LEAST_CORNER <= angle <= MOST_CORNER:
        return False
    read = (angle_at(course, place) for place in range(len(course.stretches)))
    known = {RIGHT, *(one for one in read if one is not None)}
    return min(abs(angle - one) for one in known) <= _LIKE_ANOTHER
