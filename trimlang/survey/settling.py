"""Which one measurement more would settle what a survey cannot tell."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import combinations
from math import sqrt
from typing import Final

from trimlang.record import record
from trimlang.survey.job import Run
from trimlang.survey.measured_walk import Course
from trimlang.survey.misfit import Chord, Misfit, Walk, misfit, shared_turns, walked
from trimlang.survey.slips import Slip

COARSE: Final = 1.0
"""Inches: where a survey tells no less than that, a measurement more is worth naming."""

_WORTH: Final = 0.75
"""A measurement is worth its walk where it takes a quarter off what stays in doubt."""
_MOST_CORNERS: Final = 16
_SURELY: Final = 2.0 * 2.58
"""Standard deviations between two predictions that one reading tells apart at 99 in 100, each."""


@record
class Settling:
    """A measurement to take: what it is called, and what the survey could tell with it (inches)."""

    words: str
    tells: float


def finer(course: Course, walk: Walk, fit: Misfit) -> Settling | None:
    """Return the one measurement that lets a survey tell most, all corners where none does much.

    None where those would not help either.
    """
    found: list[Settling] = []
    for chord in diagonals(course):
        with_chord = misfit(replace(walk, chords=(*walk.chords, chord)))
        found.append(Settling(f"diagonal {chord.name}", with_chord.widest))
    for at, turn in enumerate(walk.turns):
        if turn.degrees and not turn.measured and len(walk.turns) <= 2 * _MOST_CORNERS:
            turns = (*walk.turns[:at], replace(turn, measured=True), *walk.turns[at + 1 :])
            after = (at + 1) % len(walk.turns)
            words = f"the corner of {course.names[at]} and {course.names[after]}"
            found.append(Settling(words, misfit(replace(walk, turns=turns)).widest))
    best = min(found, key=lambda one: one.tells, default=None)
    if best is not None and best.tells <= _WORTH * fit.widest:
        return best
    # where no one measurement does much, all corners do
    turns = tuple(replace(turn, measured=True) for turn in walk.turns)
    every = misfit(replace(walk, turns=turns)).widest
    return Settling("measuring all its corners", every) if every <= _WORTH * fit.widest else None


def which_of(course: Course, walk: Walk, slips: Sequence[Slip]) -> str:
    """Return the diagonal that would tell slips apart, or the wall to measure again."""
    walls = [slip for slip in slips if slip.amount is not None and len(slip.about) == 1]
    if len(walls) < 2 or len(walls) < len(slips):
        return ""
    best: tuple[float, str] = (0.0, "")
    for chord in diagonals(course):
        long: list[float] = []
        for slip in walls:
            (at,) = slip.about
            lengths = list(walk.lengths)
            lengths[at] += float(slip.amount or 0)
            other = replace(walk, lengths=tuple(lengths))
            places, _ = walked(other.lengths, shared_turns(other)[0])
            long.append(abs(places[chord.end] - places[chord.start]))
        apart = min(abs(one - other) for one, other in combinations(long, 2))
        spread = misfit(replace(walk, chords=(chord,))).spread[2][2]
        best = max(best, (apart / sqrt(spread), chord.name))
    return f"diagonal {best[1]}" if best[0] >= _SURELY else course.names[walls[0].about[0]]


def diagonals(course: Course) -> Iterator[Chord]:
    """Yield the diagonals from corner to corner that a file could state, of no length yet."""
    turns, stretches = course.turns, course.stretches
    corners = [at for at in range(len(stretches)) if turns[at - 1].degrees]
    if len(corners) > _MOST_CORNERS:
        return
    for first, last in combinations(range(len(corners)), 2):
        if last - first in (1, len(corners) - 1):
            continue
        one, other = corners[first], corners[last]
        for begin, end in ((one, other), (other, one)):
            left, right = stretches[begin], stretches[end - 1]
            if isinstance(left, Run) and isinstance(right, Run):
                name = f"{left.label}-{right.label}"
                yield Chord(one, other, 0.0, name)
                break
