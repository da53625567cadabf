"""Finds the one additional measurement that would settle what a survey cannot tell."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import combinations, islice
from math import radians, sqrt
from typing import Final

from trimlang.record import record
from trimlang.survey.chi_squared import SURE
from trimlang.survey.diagonals import in_view
from trimlang.survey.job import Run
from trimlang.survey.measured_walk import Course
from trimlang.survey.misfit import (
    Chord,
    Misfit,
    Walk,
    along,
    dot,
    inverse,
    least_noticed,
    misfit,
    shared_turns,
    takers_of,
    walked,
    weighed,
)
from trimlang.survey.possible_slip import Slip

COARSE: Final = 0.75
"""Inches: where a survey can tell as little, it finds nine walls of ten that are an inch wrong.

So it does of the worst wall, at which an inch is four standard deviations of the misses
(`benchmarks.closing`), and of the others more.
"""

_WORTH: Final = 0.75
"""A measurement is worth its trouble where it takes a quarter off what stays in doubt."""
_BETTER: Final = 0.9
"""A tenth is enough where the survey can then tell an inch."""
_TWICE: Final = 2.0
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
    """Return what to measure for the survey to tell an inch, with the least trouble.

    Where nothing does, what would help most.  None where that is little, or where the survey can
    tell an inch as it is.
    """
    now = fit.tells
    if now <= COARSE:
        return None
    tried: list[Settling] = []
    for each in _by_trouble(course, walk, fit):
        if each.tolerance <= min(COARSE, _BETTER * now):
            return each
        tried.append(each)
    # One measurement that helps is better advice than several that help somewhat more.
    least, worth = min(tried, key=lambda each: each.tolerance), _WORTH * now
    alone = tried[0].tolerance <= min(worth, _TWICE * least.tolerance)
    best = tried[0] if alone else least
    return best if best.tolerance <= worth else None


def _by_trouble(course: Course, walk: Walk, fit: Misfit) -> Iterator[Settling]:
    """Yield what could be measured: one thing, some diagonals, all corners, every diagonal."""
    steps = _more_diagonals(course, walk, fit)
    some = list(islice(steps, _MOST_DIAGONALS))
    single = [*(Settling(f"diagonal {chord.name}", tells) for chord, tells in some[:1]),
              *_with_corners(course, walk, fit)]  # fmt: skip
    if single:
        yield min(single, key=lambda one: one.tolerance)
    enough = next((at for at, one in enumerate(some, 1) if one[1] <= COARSE), len(some))
    if enough > 1:
        *first, last = (chord.name for chord, _ in some[:enough])
        yield Settling(f"diagonals {', '.join(first)} and {last}", some[enough - 1][1])
    turns = tuple(replace(turn, measured=True) for turn in walk.turns)
    yield Settling("measuring all its corners", misfit(replace(walk, turns=turns)).tells)
    if rest := list(steps):
        yield Settling("measuring every diagonal in view", rest[-1][1])


def _more_diagonals(course: Course, walk: Walk, fit: Misfit) -> Iterator[tuple[Chord, float]]:
    """Yield diagonals, each time the one that helps most, and how well these tell together.

    Each condition more adds to what an inch at each wall shows what this shows by itself, once the
    others are known.  So what is known is taken out of the diagonals that are left (a Cholesky
    decomposition, step by step), and the room need not be worked out again for each.
    """
    turns, _, _ = shared_turns(walk)
    places, ways = walked(walk.lengths, turns)
    count, takers = len(ways), takers_of(walk)
    there = {(chord.start, chord.end) for chord in walk.chords}
    left = [one for one in diagonals(course, walk) if (one.start, one.end) not in there]
    rows: list[list[float]] = []
    for chord in left:
        row = along(chord, places, ways)
        # As in `misfit`: only how an error differs from the mean swings the walk.
        middle = sum(row[count + at] for at in takers) / len(takers)
        rows.append([*row[:count], *(value - middle for value in row[count:])])
    errors = list(zip(fit.doubts, fit.effects, strict=True))[: 2 * count]
    weighty = [[value * doubt * doubt for value, (doubt, _) in zip(row, errors, strict=True)]
               for row in rows]  # fmt: skip
    conditions = list(zip(*(effect for _, effect in errors), strict=True))
    shared = [[dot(row, condition) for condition in conditions] for row in weighty]
    known = [[dot(line, row) for line in fit.weight] for row in shared]
    # What a diagonal is misread by differs from one to the next, so it counts once for each.
    reading = walk.wall_doubt**2 / 3
    spread = [[dot(row, other) - dot(down, along_it) + (reading if row is rows[at] else 0.0)
               for at, (other, along_it) in enumerate(zip(weighty, shared, strict=True))]
              for row, down in zip(rows, known, strict=True)]  # fmt: skip
    moved = [[value - dot(down, effect)
              for value, effect in zip(row, fit.effects[:count], strict=False)]
             for row, down in zip(rows, known, strict=True)]  # fmt: skip
    shows = [weighed(effect, fit.weight) for effect in fit.effects[:count]]
    while left:
        least = [min(have + more * more / spread[at][at]
                     for have, more in zip(shows, row, strict=True))
                 for at, row in enumerate(moved)]  # fmt: skip
        # In a room with two sides alike, rounding must not choose between its diagonals.
        best = max(range(len(left)), key=lambda at: round(least[at], 9))
        yield left.pop(best), sqrt(SURE[0] / least[best])
        row, line = moved.pop(best), spread.pop(best)
        pivot = line.pop(best)
        shows = [have + more * more / pivot for have, more in zip(shows, row, strict=True)]
        for at, other in enumerate(spread):
            part = other.pop(best) / pivot
            spread[at] = [value - part * by for value, by in zip(other, line, strict=True)]
            moved[at] = [value - part * by for value, by in zip(moved[at], row, strict=True)]


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
        weight = inverse(spread)
        shows = (weighed(effect, weight) for effect in fit.effects[:count])
        yield Settling(words, least_noticed(shows, weight))


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
    """Yield the diagonals in view from corner to corner that a file could name, with length 0."""
    stretches = course.stretches
    corners = [at for at in range(len(stretches)) if walk.turns[at - 1].at_corner]
    if len(corners) > _MOST_CORNERS:
        return
    turns, _, _ = shared_turns(walk)
    places = walked(walk.lengths, turns)[0][:-1]
    for first, last in combinations(range(len(corners)), 2):
        # Between neighbouring corners there is a wall, no diagonal.
        if last - first in (1, len(corners) - 1):
            continue
        one, other = corners[first], corners[last]
        for begin, end in ((one, other), (other, one)):
            left, right = stretches[begin], stretches[end - 1]
            # A file names a diagonal by two runs, so it must begin and end at one.
            if isinstance(left, Run) and isinstance(right, Run) and in_view(places, one, other):
                name = f"{left.label}-{right.label}"
                yield Chord(one, other, 0.0, name)
                break
