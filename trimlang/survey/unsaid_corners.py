"""Finds corners where nothing says how one wall meets the next: butt against butt, bare wall.

A room whose written corners do not go once round is not checked where such a place may hide the
corner that is missing.  Every way of reading these places that takes the walk once round is tried,
and the one that brings it back to its start is named.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from fractions import Fraction
from itertools import product
from typing import Final, TypeAlias

from trimlang.diagnostics import Span
from trimlang.joint_row import Corner
from trimlang.joints import Joint
from trimlang.language.facts import Side
from trimlang.lengths.angles import STRAIGHT, degrees_text
from trimlang.lengths.tape import decimal_text
from trimlang.survey.job import End, Gap, Run, Stretch
from trimlang.survey.measured_walk import Course, replaced, with_end
from trimlang.survey.misfit import misfit
from trimlang.survey.outline import WHOLE_TURN
from trimlang.survey.possible_slip import Slip

_Reading: TypeAlias = Mapping[int, Corner | None]
"""What stands at each place where the file says nothing: a corner, or a wall that goes on."""

# Added to a slip's score in chi-squared, so that a commoner corner that fits as well is believed
# first: rooms have four inside corners more than outside ones (geometry).
_RARE: Final = {Corner.INSIDE: 0.0, Corner.OUTSIDE: 2.0}
_OWN_ANGLE: Final = 4.0
_MOST_PLACES: Final = 6
"""Places that are read in every way together, 729 ways; of more, all are taken as inside corners
or one of them as a corner."""
_SMALLEST_TURN: Final = 15
"""Degrees; a wall that turns by less is hardly written as two."""


def unsaid_places(course: Course) -> tuple[int, ...]:
    """Return the stretches after which nothing says whether the walk turns."""
    return tuple(at for at, turn in enumerate(course.turns) if not turn.known)


def between(course: Course, at: int) -> str:
    """Name the two stretches that meet after one: ``run S and run W``."""
    names = course.names
    return f"{names[at]} and {names[(at + 1) % len(names)]}"


def unsaid_corners(course: Course) -> Iterator[Slip]:
    """Yield the ways of reading the unsaid places that take the walk once round."""
    places = unsaid_places(course)
    for reading in _readings(places):
        yield from _tried(course, reading, None)
    lacking = WHOLE_TURN - sum(turn.degrees for turn in course.turns)
    # A single corner that was not written need not be square: it is what the others leave.
    way = Corner.INSIDE if lacking > 0 else Corner.OUTSIDE
    if _SMALLEST_TURN <= abs(lacking) < STRAIGHT - _SMALLEST_TURN:
        for at in places:
            yield from _tried(course, {at: way}, STRAIGHT - abs(lacking))


def _readings(places: tuple[int, ...]) -> Iterator[_Reading]:
    if len(places) <= _MOST_PLACES:
        for ways in product((None, *_RARE), repeat=len(places)):
            yield dict(zip(places, ways, strict=True))
        return
    yield dict.fromkeys(places, Corner.INSIDE)
    for at in places:
        yield from ({at: way} for way in _RARE)


def _tried(course: Course, reading: _Reading, angle: Fraction | None) -> Iterator[Slip]:
    corners = {at: way for at, way in reading.items() if way is not None}
    if len(corners) == 1 and angle is None and _beside_gap(course, *corners):
        return  # that reading is tried for every opening (`unwritten_corners`)
    mended = course
    meant: list[tuple[Span, str]] = []
    for at, way in corners.items():
        meant += _ends_of(course, at, Joint.at(way), angle)
        mended = replace(mended, stretches=_with_corner(mended, at, Joint.at(way), angle))
    walk = mended.walk()
    if not corners or not walk.goes_round:
        return
    rare = sum(_RARE[way] for way in corners.values()) + (0 if angle is None else _OWN_ANGLE)
    about = sorted({place for at in corners for place in (at, (at + 1) % len(course.stretches))})
    words = _words(course, corners, angle)
    score = misfit(walk).total + rare
    stretches = mended.stretches
    yield Slip(words, tuple(about), score, meant=tuple(meant), mended=stretches, rare=rare)


def _ends_of(
    course: Course, at: int, joint: Joint, angle: Fraction | None
) -> Iterator[tuple[Span, str]]:
    """Yield what would stand in the file for a corner: at an opening, or at both of two runs."""
    said = f"{joint}" + ("" if angle is None else f"({decimal_text(angle, 2)} deg)")
    sides = ((course.stretches[at], Side.RIGHT), (course.after(at), Side.LEFT))
    gaps = [(one, side) for one, side in sides if isinstance(one, Gap)]
    # At an opening the corner is the opening's own; two runs need it at both their ends.
    for stretch, side in gaps[:1] or sides:
        end = side.of(stretch.left, stretch.right)
        written = end is not None and end.span != stretch.span
        yield (end.span, said) if end is not None and written else (stretch.span, f"{side}={said}")


def _with_corner(
    course: Course, at: int, joint: Joint, angle: Fraction | None
) -> tuple[Stretch, ...]:
    after = (at + 1) % len(course.stretches)
    stretches = course.stretches
    for place, side in ((at, Side.RIGHT), (after, Side.LEFT)):
        stretch = stretches[place]
        # A run that stops beside bare wall still stops there: the corner is the bare wall's.
        if isinstance(stretch, Run) and _beside_gap(course, at):
            continue
        end = End(joint=joint, corner=angle, span=stretch.span)
        stretches = replaced(stretches, place, with_end(stretch, side, end))
    return stretches


def _beside_gap(course: Course, at: int) -> bool:
    return any(isinstance(one, Gap) for one in (course.stretches[at], course.after(at)))


def _words(course: Course, corners: Mapping[int, Corner], angle: Fraction | None) -> str:
    said = []
    written = "" if angle is None else f"({degrees_text(angle)})"
    for way in _RARE:
        places = [between(course, at) for at, corner in corners.items() if corner is way]
        if places:
            there = ", between ".join(places)
            said.append(f"the unwritten {Joint.at(way)}{written} between {there}")
    return " and ".join(said)
