"""Checks whether the walls of a room, one after the other, lead back to where they began."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from typing import Final

from trimlang.diagnostics import Span
from trimlang.lengths.angles import degrees_text
from trimlang.lengths.tape import feet_text, steps_nearest, steps_up
from trimlang.settings.table import Settings
from trimlang.survey.adjusting import FINE, Residual, residuals
from trimlang.survey.chi_squared import allowed
from trimlang.survey.corner_slips import corner_slips, misread_angles
from trimlang.survey.crooked import crooked_corners
from trimlang.survey.diagonals import chords_of
from trimlang.survey.job import Gap, Room, Trim
from trimlang.survey.measured_walk import Course, called
from trimlang.survey.measures import Findings
from trimlang.survey.misfit import Misfit, Walk, misfit
from trimlang.survey.opening_slips import (
    casing_counted_twice,
    forgotten_openings,
    unwritten_corners,
    with_a_length,
)
from trimlang.survey.outline import Point, depths, distance, outline
from trimlang.survey.settling import finer, which_of
from trimlang.survey.slips import MOST_STRETCHES, Slip, length_slips, likely
from trimlang.survey.soundness import is_sound
from trimlang.survey.unsaid_corners import between, unsaid_corners, unsaid_places
from trimlang.survey.verdict import Closing, Unchecked, Verdict
from trimlang.survey.way_round import walked_left

# Two walls enclose nothing.
FEWEST_STRETCHES: Final = 3
# Slips named in one message; more than these is no help.
MOST_NAMED: Final = 6


def check_closure(room: Room, trims: Iterable[Trim], findings: Findings) -> Closing:
    """Return how a room closes; report one that does not, with the likeliest reason.

    Open walks are not checked, nor are rooms whose corners do not go once round where the file
    does not say how all stretches meet; the closing then says why.
    """
    if room.open_walk:
        return _unchecked(room, Unchecked.OPEN_WALK)
    if len(room.walk) < FEWEST_STRETCHES:
        return _unchecked(room, Unchecked.TOO_FEW)
    if any(isinstance(stretch, Gap) and stretch.is_lost for stretch in room.walk):
        # A wall that could not be read has been reported, and without it nothing closes.
        return _unchecked(room, Unchecked.NOT_READ)
    trims = tuple(trims)
    drawn = outline(room, trims)
    course = Course(room, room.walk, depths(trims), chords_of(room))
    # The order of the tests is from the coarse to the fine: how corners are written, then how far
    # they turn in all, then lengths. A length cannot be judged while the corners are wrong.
    if any(turn.disputed for turn in drawn.turns):
        return _settle(course, findings) or _unchecked(room, Unchecked.DISPUTED)
    if drawn.misclosure is None:
        return _not_round(course, drawn.turned, findings)
    walk = course.walk()
    fit = misfit(walk)
    unit, step = room.settings.unit, room.settings.rounding_step
    # The verdict is complete from here on; only findings are added.
    gap = distance(drawn.misclosure)
    closing = _closing(course, walk, fit, gap, drawn.misclosure)
    if closing.verdict is Verdict.CLASHES:
        findings.say(
            "T316",
            room.diagonals[0].span,
            room=room.name,
            worst=_worst(closing.residuals, room),
            likely=_likely(closing.slips, closing.settles),
            slips=_meant(closing.slips),
        )
    elif closing.verdict is Verdict.CROOKED:
        (slip,) = closing.slips
        facts = {"room": room.name, "crooked": slip.words, "slips": _meant(closing.slips)}
        findings.say("T324", room.diagonals[0].span, **facts)
    elif closing.verdict is Verdict.GAPES:
        findings.say(
            "T310",
            room.span,
            room=room.name,
            gap=feet_text(steps_nearest(gap, step), unit),
            where=closing.where,
            likely=_likely(closing.slips, closing.settles),
            slips=_meant(closing.slips),
        )
    return closing


def _unchecked(room: Room, why: Unchecked, slips: tuple[Slip, ...] = ()) -> Closing:
    unit, step = room.settings.unit, room.settings.rounding_step
    return Closing(room.name, Verdict.NOT_CHECKED, unit, step, slips=slips, why=why)


def _not_round(course: Course, turned: Fraction, findings: Findings) -> Closing:
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
        unit, step = room.settings.unit, room.settings.rounding_step
        return Closing(room.name, Verdict.TURNS_WRONG, unit, step, slips=slips)
    # Where the file does not say how two stretches meet, what is missing may be there.
    places = ", or between ".join(between(course, at) for at in unsaid[:MOST_NAMED])
    told = f"{_likely(slips)} " if slips else ""
    findings.say("T320", room.span, **facts, places=places, likely=told)
    return _unchecked(room, Unchecked.UNSAID, slips)


def _closing(course: Course, walk: Walk, fit: Misfit, gap: Fraction, end: Point) -> Closing:
    room = course.room
    stated = room.settings.says(Settings.closes_within)
    way = complex(float(end.x), float(end.y))
    # All that was measured decides together. A gap alone is judged only to tell the walls' fault
    # from the diagonals', and in its own direction, since a room is surer one way than the other (a
    # long wall's corner swings its far end).
    fits = is_sound(walk, fit)
    tells = max(fit.tells, float(gap)) if fits or not gap else fit.tolerance(way)
    if not fits and not walk.chords:
        # An inch at one wall may be told by a smaller gap than a slip that could be anywhere.
        tells = min(tells, float(gap - room.settings.rounding_step))
    of_survey = _as_said(tells)
    tolerance = room.settings.closes_within if stated else of_survey
    within = (
        gap <= room.settings.closes_within
        if stated
        else fits or bool(walk.chords and (not gap or float(gap) <= fit.tolerance(way)))
    )
    # What the file allows settles the gap. Diagonals may contradict the walls even where these
    # close.
    verdict = Verdict.CLOSES
    if not within:
        verdict = Verdict.GAPES
    elif walk.chords and not fits:
        verdict = Verdict.CLASHES
    gapes = verdict is not Verdict.CLOSES
    slips: tuple[Slip, ...] = ()
    settles = ""
    if gapes:
        tried = [*length_slips(course, walk, fit), *forgotten_openings(course, fit)]
        tried += [*casing_counted_twice(course)]
        tried += [*_corner_slips(course), *walked_left(course, walk)]
        slips = likely(tried, fit.allowed)
        if not slips:
            slips = likely(list(with_a_length(course, misread_angles(course))), fit.allowed)
        # Corners can bend to almost anything, so they are asked last: where no slip explains the
        # diagonals, or only one of a diagonal itself.
        if all(place >= 2 * len(walk.lengths) for slip in slips for place in slip.about):
            crooked = list(crooked_corners(course, walk))
            if crooked and not slips:
                verdict = Verdict.CROOKED if likely(crooked, fit.allowed) else verdict
            slips = likely([*slips, *crooked], fit.allowed)
        which = which_of(course, walk, slips)
        settles = f"{which} would tell which" if which else ""
    # The room closes; where its survey would not notice an inch, say what would make it finer.
    elif not stated:
        more = finer(course, walk, fit)
        if more is not None:
            finest = steps_up(_as_said(more.tolerance), room.settings.rounding_step)
            settles = f"{more.words} would let it tell {feet_text(finest, room.settings.unit)}"
    return Closing(
        room=room.name,
        verdict=verdict,
        unit=room.settings.unit,
        step=room.settings.rounding_step,
        gap=gap,
        where=_where(end, course) if steps_nearest(gap, room.settings.rounding_step) else "",
        tolerance=tolerance,
        allowed_by_file=stated,
        slips=slips,
        settles=settles,
        residuals=residuals(course, walk, fit) if gapes or walk.chords else (),
    )


def _as_said(inches: float) -> Fraction:
    return Fraction(inches).limit_denominator(FINE)


def _settle(course: Course, findings: Findings) -> Closing | None:
    """Report which slip closes the room where two sides of a corner contradict each other."""
    room = course.room
    slips = likely(_corner_slips(course), allowed(len(course.chords)))
    if len(slips) != 1:
        return None
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
    return Closing(
        room.name,
        Verdict.TURNS_WRONG,
        room.settings.unit,
        room.settings.rounding_step,
        slips=slips,
    )


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


def _where(point: Point, course: Course) -> str:
    """Say where the walk ends, as seen by someone who faces the first wall."""
    step, unit = course.room.settings.rounding_step, course.room.settings.unit
    # A miss of a mark may be less than half of one both ways: then the greater way stands for it.
    least = min(step / 2, max(abs(point.x), abs(point.y)))
    parts = []
    for size, plus, minus in (
        (point.x, "to the right of", "to the left of"),
        (point.y, "in front of", "behind"),
    ):
        if abs(size) >= least:
            far = feet_text(max(steps_nearest(abs(size), step), step), unit)
            parts.append(f"{far} {plus if size > 0 else minus}")
    return f"{' and '.join(parts)} its start, facing {called(course.room.walk[0])}"


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
