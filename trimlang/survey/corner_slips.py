"""Slips at corners: ends or angles swapped, in for out, a mitre for a corner, a wall missing."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from fractions import Fraction
from itertools import combinations
from typing import Final

from trimlang.diagnostics import Span
from trimlang.joints import Joint
from trimlang.joints_by_role import STOPPED
from trimlang.language.end_facts import Side
from trimlang.lengths.angles import degrees_text
from trimlang.lengths.tape import mixed_number
from trimlang.survey.job import End, Run, Stretch
from trimlang.survey.measured_walk import Course, disputed, replaced, with_end
from trimlang.survey.misfit import misfit
from trimlang.survey.outline import WHOLE_TURN
from trimlang.survey.slips import SHORTEST, Slip, roughly

_DISPUTE: Final = 25.0
"""Added to a slip's score for each joint whose sides still contradict each other (chi-squared)."""
# Added to a slip's score by how rare the kind of slip is, in chi-squared, so that a commoner one is
# believed first (common practice, no source).
_COMMON, _RARER, _PAIR, _LEFT_OUT = 0.0, 2.0, 3.0, 4.0
MOST_PAIRED: Final = 40
"""Stretches; in a longer walk, trying slips two at a time would take too long."""
# Degrees; corners outside these are not believed, like those that the file may state.
_LEAST_ROOM_ANGLE, _MOST_ROOM_ANGLE = 30, 330
_SQUARE: Final = 90
_LIKE_ANOTHER: Final = 3
"""Degrees: a corner that was skipped with its wall is square, or as another of its room is."""
# Degrees: a smaller "corner" is most likely the saw's setting, written in its place.
_LARGEST_MITRE: Final = 75


def corner_slips(course: Course) -> Iterator[Slip]:
    """Yield the slips at corners, each scored by what the walk would still miss without it."""
    # Every slip is tried on a copy of the course and weighed as if it had been the survey.
    yield from _swapped_ends(course)
    yield from _wrong_sides(course)
    yield from _wrong_corners(course)
    yield from _wrong_angles(course)
    yield from _left_out(course)


def _tried(
    course: Course, stretches: tuple[Stretch, ...], words: str, about: tuple[int, ...], rare: float
) -> Iterator[Slip]:
    """Yield the slip, scored, where the corners go once round without it."""
    other = replace(course, stretches=stretches)
    walk = other.walk()
    # Corners that do not go once round cannot be weighed: no walk with them comes back.
    if walk.goes_round:
        score = misfit(walk).total + _DISPUTE * other.disputes + rare
        yield Slip(words, about, score, meant=_meant(course.stretches, stretches))


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
            yield from _tried(
                course, replaced(course.stretches, at, swapped), words, (at,), _COMMON
            )
            if run.left.joint.is_corner and run.right.joint.is_corner:
                # Whoever swaps one run's ends may write its neighbours' ends to match.
                before = (at - 1) % len(course.stretches)
                all_round = replace(course, stretches=_flipped(course, before))
                yield from _tried(course, _flipped(all_round, at), words, (at,), _RARER)


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
            yield from _tried(
                course, replaced(course.stretches, place, mended), words, (place,), _COMMON
            )


def _wrong_corners(course: Course) -> Iterator[Slip]:
    corners = [at for at, turn in enumerate(course.turns) if turn.at_corner]
    for at in corners:
        if course.turns[at].disputed:
            continue
        wrong, right = _in_or_out(course, at)
        words = f"{_corner(course, at)} written {wrong} for {right}"
        yield from _tried(course, _flipped(course, at), words, _about(course, at), _COMMON)
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
        yield from _tried(course, both, words, (one, other), _PAIR)


def _wrong_angles(course: Course) -> Iterator[Slip]:
    angles = {at: _angle(course, at) for at in range(len(course.stretches))}
    measured = {at: angle for at, angle in angles.items() if angle is not None}
    for at, angle in measured.items():
        # A mitre m written for the corner 180° - 2m, or an angle read on the other side of the
        # protractor.
        for other, words in (
            (180 - 2 * angle, "is the mitre; the corner is"),
            (180 - angle, "was read from the other side: it is"),
        ):
            if _LEAST_ROOM_ANGLE <= other <= _MOST_ROOM_ANGLE and other != angle:
                said = f"{_corner(course, at)}: {degrees_text(angle)} {words} {degrees_text(other)}"
                mended = _at_angle(course, {at: None if other == _SQUARE else other})
                yield from _tried(course, mended, said, _about(course, at), _RARER)
    # A mitre of 45° only says that the corner was taken for square, which is no measurement.
    mitres = {
        at: None if 2 * angle == _SQUARE else 180 - 2 * angle
        for at, angle in measured.items()
        if angle < _LARGEST_MITRE
    }
    if len(mitres) > 1:
        said = "all corners under 75° are written as mitres: at 45° the corner is 90°"
        yield from _tried(course, _at_angle(course, mitres), said, tuple(mitres), _RARER)
    if len(course.stretches) > MOST_PAIRED:
        return
    for first, last in combinations(measured, 2):
        if measured[first] == measured[last]:
            continue
        if _in_or_out(course, first) == _in_or_out(course, last):
            swapped = _at_angle(course, {first: measured[last], last: measured[first]})
            said = f"the angles of {_corner(course, first)} and {_corner(course, last)} are swapped"
            yield from _tried(course, swapped, said, (first, last), _RARER)


def _left_out(course: Course) -> Iterator[Slip]:
    """Yield walls that may have been skipped, each of the length that closes the room best.

    Where a corner's angle was skipped with the wall, it is what the other corners leave.
    """
    for at, one in enumerate(course.stretches):
        other = course.after(at)
        joints = [end.joint if end else STOPPED for end in (one.right, other.left)]
        if not any(joint.is_corner for joint in joints):
            continue
        angles = [end.corner if end else None for end in (one.right, other.left)]
        best: Slip | None = None
        # an angle that both sides have was read at one corner of the wall, not at both
        lost = [number for number in (0, 1) if joints[number].is_corner
                and (angles[number] is None or angles[0] == angles[1])]  # fmt: skip
        for number in (None, *lost):
            found = _with_wall(course, at, joints, angles, lost=number)
            if found is not None and (best is None or found.score < best.score):
                best = found
        if best is not None:
            yield best


def _with_wall(
    course: Course,
    at: int,
    joints: list[Joint],
    angles: list[Fraction | None],
    *,
    lost: int | None,
) -> Slip | None:
    """Return the slip of a wall skipped after a stretch, if the walk can go round with it.

    ``lost`` tells which of its two corners has the angle that the others leave.
    """
    span = course.stretches[at].span
    ends = [
        End(joint=joint, corner=angle, span=span)
        for joint, angle in zip(joints, angles, strict=True)
    ]
    wall = Run(
        label="",
        length=Fraction(SHORTEST),
        left=ends[0],
        right=ends[1],
        trims=(),
        must_splice=False,
        may_splice=True,
        note=None,
        span=span,
    )
    tried = replace(course, chords=())
    tried = replace(tried, stretches=replaced(course.stretches, at, course.stretches[at], wall))
    if lost is not None:
        lacking = WHOLE_TURN - sum(turn.degrees for turn in tried.turns)
        left_over = _SQUARE + (lacking if joints[lost].is_outside else -lacking)
        if not _LEAST_ROOM_ANGLE <= left_over <= _MOST_ROOM_ANGLE:
            return None
        known = {Fraction(_SQUARE), *(angle for place in range(len(course.stretches))
                            if (angle := _angle(course, place)) is not None)}  # fmt: skip
        if min(abs(left_over - angle) for angle in known) > _LIKE_ANOTHER:
            return None
        end = replace(ends[lost], corner=left_over, implied=True)
        wall = replace(wall, left=end) if lost == 0 else replace(wall, right=end)
        before, after = course.stretches[at], course.after(at)
        # the neighbour's own side of that corner says no angle either
        stretches = replaced(tried.stretches, at + 1, wall)
        if lost == 0 and before.right is not None:
            stretches = replaced(stretches, at, with_end(before, Side.RIGHT, end))
        elif lost == 1 and after.left is not None:
            place = (at + 2) % len(stretches)
            stretches = replaced(stretches, place, with_end(stretches[place], Side.LEFT, end))
        tried = replace(tried, stretches=stretches)
    walk = tried.walk()
    if not walk.goes_round:
        return None
    fit = misfit(walk)
    long, gained = fit.pull(fit.effects[at + 1])
    if long < SHORTEST:
        return None
    names, following = course.names, (at + 1) % len(course.stretches)
    about = roughly(SHORTEST + long, course.room.settings.unit)
    words = f"a wall skipped between {names[at]} and {names[following]}, about {about} long"
    score = fit.total - gained + _DISPUTE * tried.disputes + _LEFT_OUT
    return Slip(words, (at, following), score + (0 if lost is None else _RARER))


def _corner(course: Course, at: int) -> str:
    after = (at + 1) % len(course.stretches)
    return f"the corner of {course.names[at]} and {course.names[after]}"


def _about(course: Course, at: int) -> tuple[int, ...]:
    return (at, (at + 1) % len(course.stretches))


def _sides(course: Course, at: int) -> list[End]:
    return [end for end in (course.stretches[at].right, course.after(at).left) if end is not None]


def _in_or_out(course: Course, at: int) -> tuple[Joint, Joint]:
    """Return what a corner is written as, and the other kind of corner."""
    written = next(end.joint for end in _sides(course, at) if end.joint.is_corner)
    return written, written.other_way


def _angle(course: Course, at: int) -> Fraction | None:
    return next((end.corner for end in _sides(course, at) if end.corner is not None), None)


def _flipped(course: Course, at: int) -> tuple[Stretch, ...]:
    """Return the stretches with one corner turned from inside to outside, or the reverse."""
    _, right = _in_or_out(course, at)
    return _mended(course, at, lambda end: replace(end, joint=right))


def _at_angle(course: Course, angles: Mapping[int, Fraction | None]) -> tuple[Stretch, ...]:
    for at, angle in angles.items():
        mended = _mended(course, at, lambda end, angle=angle: replace(end, corner=angle))  # type: ignore[misc]
        course = replace(course, stretches=mended)
    return course.stretches


def _mended(course: Course, at: int, mend: Callable[[End], End]) -> tuple[Stretch, ...]:
    """Return the stretches with ``mend`` applied to both sides of one corner."""
    stretches, after = course.stretches, (at + 1) % len(course.stretches)
    for place, side in ((at, Side.RIGHT), (after, Side.LEFT)):
        end = side.of(stretches[place].left, stretches[place].right)
        if end is not None and end.joint.is_corner:
            stretches = replaced(stretches, place, with_end(stretches[place], side, mend(end)))
    return stretches
