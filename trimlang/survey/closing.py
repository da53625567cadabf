"""Checks whether the walls of a room, one after the other, lead back to where they began."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from typing import Final

from trimlang.lengths.tape import feet_text, steps_nearest, steps_up
from trimlang.settings.table import Settings
from trimlang.survey.adjusting import FINE, residuals
from trimlang.survey.diagonals import chords_of
from trimlang.survey.job import Gap, Room, Trim
from trimlang.survey.measured_walk import Course, called
from trimlang.survey.measures import Findings
from trimlang.survey.misfit import Misfit, Walk, misfit
from trimlang.survey.outline import Point, depths, distance, outline
from trimlang.survey.settling import finer
from trimlang.survey.soundness import is_sound
from trimlang.survey.verdict import Closing, Unchecked, Verdict, unchecked

# Two walls enclose nothing.
FEWEST_STRETCHES: Final = 3


def check_closure(room: Room, trims: Iterable[Trim], findings: Findings) -> Closing:
    """Return how a room closes; report one that does not, with the likeliest reason.

    Open walks are not checked, nor are rooms whose corners do not go once round where the file
    does not say how all stretches meet; the closing then says why.
    """
    if room.open_walk:
        return unchecked(room, Unchecked.OPEN_WALK)
    if len(room.walk) < FEWEST_STRETCHES:
        return unchecked(room, Unchecked.TOO_FEW)
    if any(isinstance(stretch, Gap) and stretch.is_lost for stretch in room.walk):
        # A wall that could not be read has been reported, and without it nothing closes.
        return unchecked(room, Unchecked.NOT_READ)
    trims = tuple(trims)
    drawn = outline(room, trims)
    course = Course(room, room.walk, depths(trims), chords_of(room))
    # The order of the tests is from the coarse to the fine: how corners are written, then how far
    # they turn in all, then lengths. A length cannot be judged while the corners are wrong.
    disputed = any(turn.disputed for turn in drawn.turns)
    if not disputed and drawn.misclosure is not None:
        walk = course.walk()
        fit = misfit(walk)
        closing = _judged(course, walk, fit, drawn.misclosure)
        if closing.verdict is Verdict.CLOSES:
            return closing
    # Imported here: most rooms close.
    from trimlang.survey.why_open import contradicting, explained, not_round

    if disputed:
        return contradicting(course, findings)
    if drawn.misclosure is None:
        return not_round(course, drawn.turned, findings)
    return explained(closing, course, walk, fit, findings)


def _judged(course: Course, walk: Walk, fit: Misfit, end: Point) -> Closing:
    """Return how a room closes whose walk ends at a place; which slip may be the reason is open."""
    room, gap = course.room, distance(end)
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
    closes = verdict is Verdict.CLOSES
    # Where its survey would not notice an inch, say what would make it finer.
    more = finer(course, walk, fit) if closes and not stated else None
    settles = ""
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
        settles=settles,
        residuals=residuals(course, walk, fit) if walk.chords or not closes else (),
    )


def _as_said(inches: float) -> Fraction:
    return Fraction(inches).limit_denominator(FINE)


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
