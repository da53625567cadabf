"""Which one measurement more would settle what a survey cannot tell."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import combinations
from math import radians, sqrt
from typing import Final

from trimlang.record import record
from trimlang.survey.job import Run
from trimlang.survey.measured_walk import Course
from trimlang.survey.misfit import (
    Chord,
    Misfit,
    Walk,
    along,
    dot,
    inverse,
    misfit,
    shared_turns,
    takers_of,
    walked,
    widest,
)
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
    found = [*_with_diagonals(course, walk, fit), *_with_corners(course, walk, fit)]
    best = min(found, key=lambda one: one.tells, default=None)
    if best is not None and best.tells <= _WORTH * fit.widest:
        return best
    # where no one measurement does much, all corners do
    turns = tuple(replace(turn, measured=True) for turn in walk.turns)
    every = misfit(replace(walk, turns=turns)).widest
    return Settling("measuring all its corners", every) if every <= _WORTH * fit.widest else None


def _with_diagonals(course: Course, walk: Walk, fit: Misfit) -> Iterator[Settling]:
    """Yield what each diagonal more would tell.

    A condition more changes the weight by a correction of rank one (the inverse of a matrix
    with a row more, by blocks), so that the room need not be weighed anew for each.
    """
    turns, _, _ = shared_turns(walk)
    places, ways = walked(walk.lengths, turns)
    count, squares = len(ways), [doubt * doubt for doubt in fit.doubts]
    takers = takers_of(walk)
    for chord in diagonals(course, walk):
        across = along(chord, places, ways)
        middle = sum(across[count + at] for at in takers) / len(takers) if takers else 0.0
        for at in range(count, 2 * count):
            across[at] -= middle
        shared = [0.0] * len(fit.missed)
        alone = walk.wall_doubt**2 / 3
        for effect, square, moved in zip(fit.effects, squares, across, strict=False):
            alone += moved * moved * square
            for row, value in enumerate(effect):
                shared[row] += value * moved * square
        down = [dot(row, shared) for row in fit.weight]
        left = alone - dot(down, shared)
        weight = tuple(
            tuple(value + one * other / left for value, other in zip(row, down, strict=True))
            for row, one in zip(fit.weight, down, strict=True)
        )
        yield Settling(f"diagonal {chord.name}", widest(weight))


def _with_corners(course: Course, walk: Walk, fit: Misfit) -> Iterator[Settling]:
    """Yield what each corner would tell once it was measured.

    The others then share what a whole turn lacks, which shifts what each of them does to the
    walk's end by the same: by what this one does, over their number.
    """
    count, takers = len(walk.turns), takers_of(walk)
    if len(takers) < 2 or count > 2 * _MOST_CORNERS:
        return
    corners = fit.effects[count : 2 * count]
    squares = [doubt * doubt for doubt in fit.doubts[count : 2 * count]]
    rows = range(len(fit.missed))
    lever = [sum(corners[at][row] * squares[at] for at in range(count)) for row in rows]
    for at in takers:
        own = corners[at]
        finer_by = radians(walk.measured_doubt) ** 2 / 3 - squares[at]
        shift = [value / (len(takers) - 1) for value in own]
        pulled = [one + finer_by * value for one, value in zip(lever, own, strict=True)]
        total = sum(squares) + finer_by
        spread = tuple(
            tuple(
                fit.spread[one][other]
                + finer_by * own[one] * own[other]
                + shift[one] * pulled[other]
                + pulled[one] * shift[other]
                + total * shift[one] * shift[other]
                for other in rows
            )
            for one in rows
        )
        words = f"the corner of {course.names[at]} and {course.names[(at + 1) % count]}"
        yield Settling(words, widest(inverse(spread)))


def which_of(course: Course, walk: Walk, slips: Sequence[Slip]) -> str:
    """Return the diagonal that would tell slips apart, or the wall to measure again."""
    walls = [slip for slip in slips if slip.amount is not None and len(slip.about) == 1]
    if len(walls) < 2 or len(walls) < len(slips):
        return ""
    best: tuple[float, str] = (0.0, "")
    for chord in diagonals(course, walk):
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


def diagonals(course: Course, walk: Walk) -> Iterator[Chord]:
    """Yield the diagonals from corner to corner that a file could state, of no length yet."""
    stretches = course.stretches
    corners = [at for at in range(len(stretches)) if walk.turns[at - 1].degrees]
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
