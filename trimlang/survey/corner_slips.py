"""Slips at corners: ends or angles swapped, in for out, a mitre for a corner."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from fractions import Fraction
from itertools import combinations
from typing import Final

from trimlang.diagnostics import Span
from trimlang.joints import Joint
from trimlang.language.end_facts import Side
from trimlang.lengths.angles import RIGHT, STRAIGHT, degrees_text
from trimlang.lengths.tape import mixed_number, steps_nearest
from trimlang.survey.chi_squared import SUM_IS_OFF
from trimlang.survey.ends import LEAST_CORNER, MOST_CORNER
from trimlang.survey.job import Run, Stretch
from trimlang.survey.measured_walk import (
    Course,
    angle_at,
    disputed,
    replaced,
    sides_at,
    with_angles,
    with_corner,
    with_end,
)
from trimlang.survey.misfit import misfit, shared_turns
from trimlang.survey.possible_slip import DISPUTE, UNUSUAL, Slip
from trimlang.survey.skipped_walls import skipped_walls

# Added to a slip's score by how rare the kind of slip is, in chi-squared, so that a commoner one is
# believed first (common practice, no source).
_COMMON, _RARER, _PAIR = 0.0, 2.0, 3.0
MOST_PAIRED: Final = 40
"""Stretches; in a longer walk, trying slips two at a time would take too long."""
# Degrees: a smaller "corner" is most likely the saw's setting, written in its place.
_LARGEST_MITRE: Final = 75


def corner_slips(course: Course) -> Iterator[Slip]:
    """Yield the slips at corners, each scored by what the walk would still miss without it."""
    # Every slip is tried on a copy of the course and weighed as if it had been the survey.
    yield from _swapped_ends(course)
    yield from _wrong_sides(course)
    yield from _wrong_corners(course)
    yield from _wrong_angles(course)
    yield from misread_angles(course)
    yield from skipped_walls(course)


def tried_with(
    course: Course, stretches: tuple[Stretch, ...], words: str, about: tuple[int, ...], rare: float
) -> Iterator[Slip]:
    """Yield the slip, scored, where the corners go once round without it."""
    other = replace(course, stretches=stretches)
    walk = other.walk()
    # Corners that do not go once round cannot be weighed: no walk with them comes back.
    if walk.goes_round:
        score = misfit(walk).total + DISPUTE * other.disputes + rare
        meant = _meant(course.stretches, stretches)
        yield Slip(words, about, score, meant=meant, mended=stretches, rare=rare)


def _meant(
    written: tuple[Stretch, ...], meant: tuple[Stretch, ...]
) -> tuple[tuple[Span, str], ...]:
    """Return the ends that differ, each at the place where the file has the other."""
    found: list[tuple[Span, str]] = []
    for one, other in zip(written, meant, strict=True):
        for end, instead in ((one.left, other.left), (one.right, other.right)):
            if end is not None and instead is not None and end != instead:
                angle = instead.corner
                said = "" if angle is None else f"({mixed_number(angle)} deg)"
                found.append((end.span, f"{instead.joint}{said}"))
    return tuple(found)


def _swapped_ends(course: Course) -> Iterator[Slip]:
    for at, run in enumerate(course.stretches):
        if isinstance(run, Run) and run.left.joint is not run.right.joint:
            swapped = replace(run, left=run.right, right=run.left)
            words = f"left and right of {course.names[at]} are swapped"
            yield from tried_with(
                course, replaced(course.stretches, at, swapped), words, (at,), _COMMON
            )
            if run.left.joint.is_corner and run.right.joint.is_corner:
                # Whoever swaps one run's ends may write its neighbours' ends to match.
                before = (at - 1) % len(course.stretches)
                all_round = replace(course, stretches=_flipped(course, before))
                yield from tried_with(course, _flipped(all_round, at), words, (at,), _RARER)


def _wrong_sides(course: Course) -> Iterator[Slip]:
    """Yield both readings of each corner whose two sides contradict each other."""
    count = len(course.stretches)
    for at, one in enumerate(course.stretches):
        other, after = course.after(at), (at + 1) % count
        if one.right is None or other.left is None or not disputed(one, other):
            continue
        for place, side, joint in (
            (at, Side.RIGHT, other.left.joint),
            (after, Side.LEFT, one.right.joint),
        ):
            stretch = course.stretches[place]
            end = side.of(stretch.left, stretch.right)
            assert end is not None  # noqa: S101  both sides are stated here
            mended = with_end(stretch, side, replace(end, joint=joint))
            words = f"the {side} end of {course.names[place]} is wrong"
            yield from tried_with(
                course, replaced(course.stretches, place, mended), words, (place,), _COMMON
            )


def _wrong_corners(course: Course) -> Iterator[Slip]:
    corners = [at for at, turn in enumerate(course.turns) if turn.at_corner]
    for at in corners:
        if course.turns[at].disputed:
            continue
        wrong, right = _in_or_out(course, at)
        words = f"{_corner(course, at)} written {wrong} for {right}"
        yield from tried_with(course, _flipped(course, at), words, _about(course, at), _COMMON)
    if len(course.stretches) > MOST_PAIRED:
        return
    # Flipping a corner changes the sum of the turns by twice its angle. Two at a time are tried
    # only where that brings the sum to a whole turn, which keeps the pairs few.
    lacking = 360 - sum(turn.degrees for turn in course.turns)
    for one, other in combinations(corners, 2):
        turned = 2 * (course.turns[one].at_corner + course.turns[other].at_corner)
        (wrong, right), (again, _) = _in_or_out(course, one), _in_or_out(course, other)
        if wrong is not again or abs(lacking + turned) > 15:
            continue
        both = _flipped(replace(course, stretches=_flipped(course, one)), other)
        words = (
            f"{_corner(course, one)} and {_corner(course, other)} both written {wrong} for {right}"
        )
        yield from tried_with(course, both, words, (one, other), _PAIR)


def _wrong_angles(course: Course) -> Iterator[Slip]:
    angles = {at: angle_at(course, at) for at in range(len(course.stretches))}
    measured = {at: angle for at, angle in angles.items() if angle is not None}
    for at, angle in measured.items():
        # A mitre m written for the corner 180° - 2m, or an angle read on the other side of the
        # protractor.
        for other, words in (
            (180 - 2 * angle, "is the mitre; the corner is"),
            (180 - angle, "was read from the other side: it is"),
        ):
            if LEAST_CORNER <= other <= MOST_CORNER and other != angle:
                said = f"{_corner(course, at)}: {degrees_text(angle)} {words} {degrees_text(other)}"
                mended = with_angles(course, {at: None if other == RIGHT else other})
                yield from tried_with(course, mended, said, _about(course, at), _RARER)
    # A mitre of 45° only says that the corner was taken for square, which is no measurement.
    mitres = {
        at: None if 2 * angle == RIGHT else 180 - 2 * angle
        for at, angle in measured.items()
        if angle < _LARGEST_MITRE
    }
    if len(mitres) > 1:
        said = "all corners under 75° are written as mitres: at 45° the corner is 90°"
        yield from tried_with(course, with_angles(course, mitres), said, tuple(mitres), _RARER)
        # Whoever reads one corner of a bay at the protractor's other scale reads all of them so.
        others = {at: STRAIGHT - measured[at] for at in mitres}
        said = "all corners under 75° were read from the other side: 45° is 135°"
        yield from tried_with(course, with_angles(course, others), said, tuple(others), _RARER)
    yield from _angles_moved(course, angles)
    if len(course.stretches) > MOST_PAIRED:
        return
    for first, last in combinations(measured, 2):
        if measured[first] == measured[last]:
            continue
        if _in_or_out(course, first) == _in_or_out(course, last):
            swapped = with_angles(course, {first: measured[last], last: measured[first]})
            said = f"the angles of {_corner(course, first)} and {_corner(course, last)} are swapped"
            yield from tried_with(course, swapped, said, (first, last), _RARER)


def misread_angles(course: Course) -> Iterator[Slip]:
    """Yield single angles that would make up for what the corners lack of a whole turn.

    Where that is more than their doubts explain, a reading is wrong by so much, or one of the
    corners that nobody measured is that far off square.
    """
    walk = course.walk()
    _, _, lacking = shared_turns(walk)
    if not walk.goes_round or misfit(walk).turned <= SUM_IS_OFF:
        return
    for at, turn in enumerate(walk.turns):
        angle = steps_nearest(turn.corner(turn.degrees + Fraction(lacking)), Fraction(1, 2))
        # No room has a sharper corner; such an angle explains nothing.
        if not turn.at_corner or not LEAST_CORNER <= angle <= MOST_CORNER:
            continue
        read = angle_at(course, at)
        said = f"{_corner(course, at)} is {degrees_text(angle)}"
        words = f"{said}, not square" if read is None else f"{said}, not {degrees_text(read)}"
        mended = with_angles(course, {at: None if angle == RIGHT else angle})
        yield from tried_with(course, mended, words, _about(course, at), UNUSUAL)
    yield from _leaning(course)


def _leaning(course: Course) -> Iterator[Slip]:
    """Yield the parallelogram that one measured corner of a room of four makes likely."""
    corners = [at for at, turn in enumerate(course.turns) if turn.at_corner]
    read = [angle_at(course, at) for at in corners]
    if len(corners) != 4 or sum(angle is not None for angle in read) != 1:
        return
    angle = next(angle for angle in read if angle is not None)
    # Opposite corners of a parallelogram are alike, and neighbours make a straight angle.
    first = read.index(angle) % 2
    others = {at: angle if number % 2 == first else STRAIGHT - angle
              for number, at in enumerate(corners) if read[number] is None}  # fmt: skip
    said = ", ".join(f"{_corner(course, at)} is {degrees_text(leant)}"
                     for at, leant in others.items())  # fmt: skip
    leaning = with_angles(course, others)
    yield from tried_with(course, leaning, f"the room leans: {said}", tuple(others), UNUSUAL)


def _angles_moved(course: Course, angles: Mapping[int, Fraction | None]) -> Iterator[Slip]:
    """Yield angles that were written one corner too early or too late: one of them, or all."""
    corners = [at for at, turn in enumerate(course.turns) if turn.at_corner]
    read = [angles[at] for at in corners]
    if len(corners) < 2 or not any(read):
        return
    for step, where in ((1, "early"), (-1, "late")):
        # With one angle, or with all alike, moving all is the same as moving one or none.
        if len(set(read)) > 1 and sum(angle is not None for angle in read) > 1:
            moved = dict(zip(corners, (*read[-step:], *read[:-step]), strict=True))
            said = f"all angles are written one corner too {where}"
            yield from tried_with(course, with_angles(course, moved), said, tuple(corners), _RARER)
        for number, (at, angle) in enumerate(zip(corners, read, strict=True)):
            to = corners[(number + step) % len(corners)]
            if angle is not None and angles[to] is None:
                said = (
                    f"{degrees_text(angle)} is of {_corner(course, to)}, not of"
                    f" {_corner(course, at)}"
                )
                mended = with_angles(course, {at: None, to: angle})
                yield from tried_with(course, mended, said, (at, to), _RARER)


def _corner(course: Course, at: int) -> str:
    after = (at + 1) % len(course.stretches)
    return f"the corner of {course.names[at]} and {course.names[after]}"


def _about(course: Course, at: int) -> tuple[int, ...]:
    return (at, (at + 1) % len(course.stretches))


def _in_or_out(course: Course, at: int) -> tuple[Joint, Joint]:
    """Return what a corner is written as, and the other kind of corner."""
    written = next(end.joint for end in sides_at(course, at) if end.joint.is_corner)
    return written, written.other_way


def _flipped(course: Course, at: int) -> tuple[Stretch, ...]:
    """Return the stretches with one corner turned from inside to outside, or the reverse."""
    _, right = _in_or_out(course, at)
    return with_corner(course, at, lambda end: replace(end, joint=right))
