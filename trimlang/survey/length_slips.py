"""Finds which slip in one length would make a room close.

A length misread in one of the usual ways is tried first, then what it would have to be.  What is
then still missed is judged by the survey's doubts.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import inf, log
from typing import Final

from trimlang.diagnostics import Span
from trimlang.language.tree import GapKind
from trimlang.lengths.tape import MM, Unit, feet_text, is_tape_fraction, steps_nearest
from trimlang.survey.job import Gap
from trimlang.survey.measured_walk import Course
from trimlang.survey.misfit import Misfit, Row, Walk, misfit, takers_of, weighed
from trimlang.survey.misreadings import feet_without_inches, misreadings
from trimlang.survey.possible_slip import SHORTEST, UNUSUAL, Slip

_NARROWEST: Final = 9
"""Inches: a slot of a window; nothing narrower is cased (common practice, no source)."""

# Steps of the search in `_best_length`, at most.
_MOST_TURNS: Final = 8
_SWINGS: Final = 18.0
"""Inches; a wall that is off by more moves the room so far that all is worked out again."""


def length_slips(course: Course, walk: Walk, fit: Misfit) -> Iterator[Slip]:
    """Yield slips in one length, each scored by what the walk would then still miss."""
    unit = course.room.settings.unit
    # No length makes up for corners; where they are measured, that tells one of these is wrong.
    spared = 0.0 if all(walk.turns[at].measured for at in takers_of(walk)) else fit.turned
    for at, (name, length) in enumerate(zip(course.names, course.written, strict=True)):
        for other in misreadings(length, unit):
            if other.length < _least(course, at):
                continue
            longer = other.length - length
            score = _score_of(walk, fit, at, float(longer)) + other.rare
            right = feet_text(_marked(course, other.length), unit)
            words = f"{name} {other.words}: {right} instead"
            meant = _of_length(course, at, other.length)
            yield Slip(words, (at,), score, amount=longer, meant=meant, spared=spared)
        off, left = _best_length(walk, fit, at)
        longer = steps_nearest(Fraction(off), course.room.settings.rounding_step)
        # Not a slip if nothing changes on the tape, nor one that would leave no wall.
        if longer and length + longer >= SHORTEST:
            side = "short" if off > 0 else "long"
            words = f"{name} is {feet_text(abs(longer), unit)} too {side}"
            meant = _of_length(course, at, length + longer)
            usual = feet_without_inches(length, length + longer, unit)
            if usual is not None:
                words = f"{name} {usual.words}: {feet_text(usual.length, unit)} instead"
            by_size = 2 * log(max(1.0, abs(off))) if usual is None else 0.0
            score = left + (UNUSUAL + by_size if usual is None else usual.rare)
            kept = by_size + spared
            yield Slip(words, (at,), score, amount=longer, meant=meant, spared=kept)
    first = 2 * len(walk.lengths)
    diagonals = course.room.diagonals
    for number, (diagonal, chord) in enumerate(zip(diagonals, walk.chords, strict=False)):
        off, gained = fit.pull(fit.effects[first + number])
        size = steps_nearest(Fraction(abs(off)), course.room.settings.rounding_step)
        true = feet_text(diagonal.length + (size if off > 0 else -size), unit)
        side = "short" if off > 0 else "long"
        words = f"diagonal {chord.name} is {feet_text(size, unit)} too {side}"
        meant = ((diagonal.span, true),)
        yield Slip(words, (first + number,), fit.total - gained, meant=meant, spared=spared)


def _of_length(course: Course, at: int, length: Fraction) -> tuple[tuple[Span, str], ...]:
    marked = feet_text(_marked(course, length), course.room.settings.unit)
    return ((course.stretches[at].span, marked),)


def _marked(course: Course, length: Fraction) -> Fraction:
    """Return a length as a tape gives it: a wall given in the other unit lies on no mark."""
    step = course.room.settings.rounding_step
    return length if is_tape_fraction(length) else steps_nearest(length, step)


def _least(course: Course, at: int) -> int:
    """Return how long a stretch must at least have been (inches)."""
    stretch = course.stretches[at]
    opens = isinstance(stretch, Gap) and stretch.kind is GapKind.OPENING
    return _NARROWEST if opens else SHORTEST


def roughly(inches: float, unit: Unit) -> str:
    """Write a length that was only worked out, to an inch or ten millimetres."""
    step = 10 * MM if unit is Unit.MM else Fraction(1)
    return feet_text(steps_nearest(Fraction(inches), step), unit)


def _score_of(walk: Walk, fit: Misfit, at: int, longer: float) -> float:
    """Return chi-squared with one wall longer by so many inches."""
    if walk.chords or abs(longer) > _SWINGS:
        after = fit.closure + longer * complex(*fit.effects[at][:2])
        if abs(after) > _SWINGS + abs(longer) / 8:
            # Far off anyway: not worth working out exactly.
            return inf
        lengths: Row = (*walk.lengths[:at], walk.lengths[at] + longer, *walk.lengths[at + 1 :])
        return misfit(_with_lengths(walk, lengths)).total
    # Nothing swings for so small a change, so the misses simply change in proportion.
    moved = [
        missed + longer * effect for missed, effect in zip(fit.missed, fit.effects[at], strict=True)
    ]
    return weighed(moved, fit.weight) + fit.turned


def _best_length(walk: Walk, fit: Misfit, at: int) -> tuple[float, float]:
    """Return how much longer one wall would have to be (inches), and chi-squared then."""
    total, off = 0.0, 0.0
    for _ in range(_MOST_TURNS):
        off, gained = fit.pull(fit.effects[at])
        total += off
        # Without diagonals the misses change in proportion to the wall, and one step is exact.
        if not walk.chords or abs(off) < 1:
            return total, fit.total - gained
        # A diagonal's direction changes as the wall grows, so a long way is gone in several steps.
        longer = max(walk.lengths[at] + off, 1.0)
        walk = _with_lengths(walk, (*walk.lengths[:at], longer, *walk.lengths[at + 1 :]))
        fit = misfit(walk)
    return total, fit.total


def _with_lengths(walk: Walk, lengths: Row) -> Walk:
    return Walk(
        lengths=lengths,
        turns=walk.turns,
        own_doubts=walk.own_doubts,
        chords=walk.chords,
        wall_doubt=walk.wall_doubt,
        corner_doubt=walk.corner_doubt,
        measured_doubt=walk.measured_doubt,
    )
