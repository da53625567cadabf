"""Says why a room does not close: which slip is likeliest, and what would tell where several are.

Most rooms close, so what tries slips on a walk is loaded here and not by ``closing``.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.diagnostics import Span
from trimlang.lengths.angles import degrees_text
from trimlang.lengths.tape import feet_text, steps_nearest
from trimlang.survey.adjusting import Residual
from trimlang.survey.chi_squared import allowed
from trimlang.survey.corner_slips import corner_slips, misread_angles, tried_with
from trimlang.survey.crooked import angles_left
from trimlang.survey.job import Room
from trimlang.survey.length_slips import length_slips
from trimlang.survey.measured_walk import Course, with_angles
from trimlang.survey.measures import Findings
from trimlang.survey.misfit import Misfit, Walk
from trimlang.survey.opening_slips import (
    casing_counted_twice,
    forgotten_openings,
    unwritten_corners,
    with_a_length,
)
from trimlang.survey.possible_slip import MOST_STRETCHES, Slip, likely
from trimlang.survey.settling import which_of
from trimlang.survey.unsaid_corners import between, unsaid_corners, unsaid_places
from trimlang.survey.verdict import Closing, Unchecked, Verdict, unchecked
from trimlang.survey.way_round import walked_left

# Slips named in one message; more than these is no help.
MOST_NAMED: Final = 6
_RARE: Final = 4.0
"""Added to the score of a crooked room in chi-squared, as for a slip at several places (common
practice, no source)."""


def contradicting(course: Course, findings: Findings) -> Closing:
    """Report which slip closes the room where two sides of a corner contradict each other."""
    room = course.room
    slips = likely(_corner_slips(course), allowed(len(course.chords)))
    if len(slips) != 1:
        return unchecked(room, Unchecked.DISPUTED)
    (slip,) = slips
    count = len(room.walk)
    sides, settled = [], []
    for at in (at for at, turn in enumerate(course.turns) if turn.disputed):
        right, left = room.walk[at].right, course.after(at).left
        assert right is not None  # noqa: S101  what contradicts the other side is written
        assert left is not None  # noqa: S101
        names = course.names[at], course.names[(at + 1) % count]
        sides.append(f"{names[0]} ends with {right.joint}, but {names[1]} begins with {left.joint}")
        settled += [right.span, left.span]
    stretch = room.walk[slip.about[0]]
    ends = [end.span for end in (stretch.left, stretch.right) if end is not None]
    wrong = tuple(span for span in ends if span in settled)
    findings.say(
        "T312",
        wrong[0] if wrong else room.span,
        room=room.name,
        slip=slip.words,
        sides="; ".join(sides),
        wrong=wrong,
        settled=tuple(settled),
    )
    return _turns_wrong(room, slips)


def not_round(course: Course, turned: Fraction, findings: Findings) -> Closing:
    """Report corners that do not go once round, with the likeliest reason."""
    room = course.room
    # Corners first, as one wrong word at a corner is the commonest slip; then a length left out
    # with its corner.
    corners = _corner_slips(course)
    slips = likely(corners, allowed(len(course.chords)))
    if not slips:
        slips = likely(list(with_a_length(course, corners)), allowed(len(course.chords)))
    facts = {"room": room.name, "turned": degrees_text(turned), "slips": _meant(slips)}
    unsaid = unsaid_places(course)
    if not unsaid:
        findings.say("T311", room.span, **facts, likely=_likely(slips))
        return _turns_wrong(room, slips)
    # Where the file does not say how two stretches meet, what is missing may be there.
    places = ", or between ".join(between(course, at) for at in unsaid[:MOST_NAMED])
    told = f"{_likely(slips)} " if slips else ""
    findings.say("T320", room.span, **facts, places=places, likely=told)
    return unchecked(room, Unchecked.UNSAID, slips)


def _turns_wrong(room: Room, slips: tuple[Slip, ...]) -> Closing:
    unit, step = room.settings.unit, room.settings.rounding_step
    return Closing(room.name, Verdict.TURNS_WRONG, unit, step, slips=slips)


def explained(
    closing: Closing, course: Course, walk: Walk, fit: Misfit, findings: Findings
) -> Closing:
    """Report a room whose measurements do not fit, and return its closing with the likely slips."""
    room = course.room
    tried = [*length_slips(course, walk, fit), *forgotten_openings(course, fit)]
    tried += [*casing_counted_twice(course)]
    tried += [*_corner_slips(course), *walked_left(course, walk)]
    slips = likely(tried, fit.allowed)
    if not slips:
        slips = likely(list(with_a_length(course, misread_angles(course))), fit.allowed)
    verdict = closing.verdict
    # Corners can bend to almost anything, so they are asked last: where no slip explains the
    # diagonals, or only one of a diagonal itself.
    if all(place >= 2 * len(walk.lengths) for slip in slips for place in slip.about):
        crooked = list(_crooked_corners(course, walk))
        if crooked and not slips:
            verdict = Verdict.CROOKED if likely(crooked, fit.allowed) else verdict
        slips = likely([*slips, *crooked], fit.allowed)
    which = which_of(course, walk, slips)
    settles = f"{which} would tell which" if which else ""
    said: dict[str, object] = {"room": room.name, "slips": _meant(slips)}
    if verdict is Verdict.CROOKED:
        findings.say("T324", room.diagonals[0].span, **said, crooked=slips[0].words)
    elif verdict is Verdict.CLASHES:
        said |= {"worst": _worst(closing.residuals, room), "likely": _likely(slips, settles)}
        findings.say("T316", room.diagonals[0].span, **said)
    else:
        gap = feet_text(steps_nearest(closing.gap or Fraction(0), closing.step), closing.unit)
        said |= {"gap": gap, "where": closing.where, "likely": _likely(slips, settles)}
        findings.say("T310", room.span, **said)
    return replace(closing, verdict=verdict, slips=slips, settles=settles)


def _crooked_corners(course: Course, walk: Walk) -> Iterator[Slip]:
    """Yield the angles that walls and diagonals leave for the corners that nobody measured."""
    angles = angles_left(walk)
    if angles:
        said = ", ".join(
            f"{degrees_text(angle)} between {between(course, at)}" for at, angle in angles.items()
        )
        words = f"the corners are not square: {said}"
        yield from tried_with(course, with_angles(course, angles), words, tuple(angles), _RARE)


def _corner_slips(course: Course) -> list[Slip]:
    # Each corner is tried in a walk of its own; in a very long walk that would take too long.
    if len(course.stretches) > MOST_STRETCHES:
        return []
    return [*corner_slips(course), *unwritten_corners(course), *unsaid_corners(course)]


def _worst(found: tuple[Residual, ...], room: Room) -> str:
    """Say which measurement fits worst, and by how much."""
    worst = max(found, key=lambda one: one.sure)
    if worst.is_corner:
        return f"{worst.of} by {degrees_text(steps_nearest(abs(worst.alone), Fraction(1, 10)))}"
    step, unit = room.settings.rounding_step, room.settings.unit
    return f"{worst.of} by {feet_text(steps_nearest(abs(worst.alone), step), unit)}"


def _meant(slips: tuple[Slip, ...]) -> tuple[tuple[str, tuple[tuple[Span, str], ...]], ...]:
    """Return the slips that a remedy names, each in words and with what was meant."""
    return tuple((slip.words, slip.meant) for slip in slips[:MOST_NAMED])


def _likely(slips: tuple[Slip, ...], settles: str = "") -> str:
    if not slips:
        return (
            "None of the usual single slips explains it: measure the room again, or mark it"
            " “open walk” if it is not to be closed."
        )
    if len(slips) == 1:
        return f"Most likely: {slips[0].words}."
    named = "; or ".join(slip.words for slip in slips[:MOST_NAMED])
    more = f"; and {len(slips) - MOST_NAMED} others" if len(slips) > MOST_NAMED else ""
    then = f"{settles[0].upper()}{settles[1:]}." if settles else "Measure these again."
    return f"Several slips explain it equally well: {named}{more}. {then}"
