"""Finds the one additional measurement that would settle what a survey cannot tell."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import combinations
from math import radians, sqrt
from typing import Final

from trimlang.record import record
from trimlang.survey.chi_squared import SURE
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

COARSE: Final = sqrt(SURE[0]) / (sqrt(SURE[0]) + 2.33)
"""Inches, 0.57: where a survey can tell as little, it finds 99 of a hundred walls an inch wrong.

What a survey can tell is so many standard deviations that a sound room rarely reaches them; a
mistake must be 2.33 further (the normal distribution at 0.99) to be beyond that nearly always.
"""

_WORTH: Final = 0.75
"""A measurement is worth its trouble where it takes a quarter off what stays in doubt."""
_MOST_CORNERS: Final = 16
_MOST_DIAGONALS: Final = 4
_SURELY: Final = 2.0 * 2.58
"""Standard deviations that two predictions must differ by for one reading to tell them apart.

2.58 on each side, so that each is right 99 times in 100.
"""


@record
class Settling:
    """A measurement to take, in words, and the tolerance that the survey then has (inches)."""

    words: str
    tolerance: float


def finer(course: Course, walk: Walk, fit: Misfit) -> Settling | None:
    """Return the measurement that would help most, or all corners where no single one does much.

    None where neither would help, or the survey can tell an inch as it is.
    """
    if fit.widest <= COARSE:
        return None
    across = [Settling(f"diagonal {chord.name}", tolerance)
              for chord, tolerance in _with_diagonals(course, walk, fit)]  # fmt: skip
    found = [*across, *_with_corners(course, walk, fit)]
    best = min(found, key=lambda one: one.tolerance, default=None)
    # One measurement that helps is better advice than several that help more.
    if best is not None and best.tolerance <= _WORTH * fit.widest:
        return best
    # No single measurement does much; perhaps measuring all corners does.
    turns = tuple(replace(turn, measured=True) for turn in walk.turns)
    every = misfit(replace(walk, turns=turns)).widest
    if every <= _WORTH * fit.widest:
        return Settling("measuring all its corners", every)
    return _several_diagonals(course, walk, fit)


def _several_diagonals(course: Course, walk: Walk, fit: Misfit) -> Settling | None:
    """Return the diagonals that help most together: each steadies the room in one direction."""
    names: list[str] = []
    more, fitted = walk, fit
    while fitted.widest > COARSE and len(names) < _MOST_DIAGONALS:
        best = min(_with_diagonals(course, more, fitted), key=lambda one: one[1], default=None)
        if best is None:
            break
        # how long it is makes no difference to what it would tell
        chord, _ = best
        more = replace(more, chords=(*more.chords, chord))
        fitted = misfit(more)
        names.append(chord.name)
    if fitted.widest > max(COARSE, _WORTH * fit.widest):
        return None
    *more_names, last = names
    words = f"diagonals {', '.join(more_names)} and {last}" if more_names else f"diagonal {last}"
    return Settling(words, fitted.widest)


def _with_diagonals(course: Course, walk: Walk, fit: Misfit) -> Iterator[tuple[Chord, float]]:
    """Yield how well the survey could tell with each one more diagonal.

    One more condition changes the weight by a correction of rank one (the inverse of a matrix
    with one more row, by blocks), so the whole room need not be worked out again for each.
    """
    turns, _, _ = shared_turns(walk)
    places, ways = walked(walk.lengths, turns)
    count, squares = len(ways), [doubt * doubt for doubt in fit.doubts]
    takers = takers_of(walk)
    there = {(chord.start, chord.end) for chord in walk.chords}
    for chord in diagonals(course, walk):
        if (chord.start, chord.end) in there:
            continue
        across = along(chord, places, ways)
        # As in `misfit`: only how an error differs from the mean swings the walk.
        middle = sum(across[count + at] for at in takers) / len(takers)
        for at in range(count, 2 * count):
            across[at] -= middle
        shared = [0.0] * len(fit.missed)
        # The new condition's own variance, and its covariance with the ones there are.
        alone = walk.wall_doubt**2 / 3
        for effect, square, moved in zip(fit.effects, squares, across, strict=False):
            alone += moved * moved * square
            for row, value in enumerate(effect):
                shared[row] += value * moved * square
        down = [dot(row, shared) for row in fit.weight]
        # What is left of the variance once the other conditions are known (the Schur complement).
        left = alone - dot(down, shared)
        weight = tuple(
            tuple(value + one * other / left for value, other in zip(row, down, strict=True))
            for row, one in zip(fit.weight, down, strict=True)
        )
        yield chord, widest(weight)


def _with_corners(course: Course, walk: Walk, fit: Misfit) -> Iterator[Settling]:
    """Yield how well the survey could tell with each one more corner measured.

    The other corners then share what a whole turn lacks.  That shifts what each of them does to
    the walk's end by the same amount: by what this corner does, over their number.
    """
    count, takers = len(walk.turns), takers_of(walk)
    # The angle of a lone unmeasured corner already follows from the others.
    if len(takers) < 2 or count > 2 * _MOST_CORNERS:
        return
    names = course.names
    corners = fit.effects[count : 2 * count]
    squares = [doubt * doubt for doubt in fit.doubts[count : 2 * count]]
    rows = range(len(fit.missed))
    # Sums that every corner's change needs, worked out once for all.
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
        words = f"the corner of {names[at]} and {names[(at + 1) % count]}"
        yield Settling(words, widest(inverse(spread)))


def which_of(course: Course, walk: Walk, slips: Sequence[Slip]) -> str:
    """Return the diagonal that would tell these slips apart, or the wall to measure again."""
    # Where each slip's mending would put the corners.
    mended = [places for slip in slips if (places := _without(course, walk, slip))]
    # Slips that say neither a length nor an angle no diagonal can tell apart.
    if len(mended) < 2 or len(mended) < len(slips):
        return ""
    telling: list[tuple[float, str]] = []
    for chord in diagonals(course, walk):
        long = [abs(places[chord.end] - places[chord.start]) for places in mended]
        # As long as the two nearest predictions are apart, one reading tells all of them apart.
        apart = min(abs(one - other) for one, other in combinations(long, 2))
        sure = apart / sqrt(misfit(replace(walk, chords=(chord,))).spread[2][2])
        if sure >= _SURELY:
            telling.append((sure, chord.name))
    return f"diagonal {max(telling)[1]}" if telling else course.names[slips[0].about[0]]


def _without(course: Course, walk: Walk, slip: Slip) -> list[complex]:
    """Return the corners as they would be without a slip, none where it does not say."""
    if slip.amount is not None:
        (at,), inches = slip.about, float(slip.amount)
        lengths = (*walk.lengths[:at], walk.lengths[at] + inches, *walk.lengths[at + 1 :])
        walk = replace(walk, lengths=lengths)
    elif len(slip.mended) == len(walk.lengths):
        walk = replace(course, stretches=slip.mended).walk()
    else:
        return []
    turns, _, _ = shared_turns(walk)
    return walked(walk.lengths, turns)[0]


def diagonals(course: Course, walk: Walk) -> Iterator[Chord]:
    """Yield the diagonals from corner to corner that a file could name, with length 0."""
    stretches = course.stretches
    corners = [at for at in range(len(stretches)) if walk.turns[at - 1].at_corner]
    if len(corners) > _MOST_CORNERS:
        return
    for first, last in combinations(range(len(corners)), 2):
        # Between neighbouring corners there is a wall, no diagonal.
        if last - first in (1, len(corners) - 1):
            continue
        one, other = corners[first], corners[last]
        for begin, end in ((one, other), (other, one)):
            left, right = stretches[begin], stretches[end - 1]
            # A file names a diagonal by two runs, so it must begin and end at one.
            if isinstance(left, Run) and isinstance(right, Run):
                name = f"{left.label}-{right.label}"
                yield Chord(one, other, 0.0, name)
                break
