"""What the best of all detectors would find of a slip, beside what the closing finds.

    python -m benchmarks.closing_ideal --rooms 100

The same rooms as ``benchmarks.closing``.  This detector is told what no survey tells: how its
rooms' errors were drawn, and that a slip is a wall so many inches too long or too short.  It
weighs how likely the walk's miss is with each such slip against how likely it is with none
(Neyman and Pearson: no other test finds more at the same rate of false alarms), and calls out
where the ratio is beyond what one sound room in a hundred reaches, all rooms together.  A miss has
its exact density where every error lies anywhere within its bounds alike: by sampling
(``closing_sampled``), and where nothing but walls was measured also by another way, a convolution
of what each error spreads it over.  ``told which wall`` is a bound that nothing can reach: the same
for one wall and one direction, given away beforehand, errors as normal.  ``no sound room`` is how
many of the rooms with a slip no errors within their bounds explain: a linear program says so of
each, and only these can be called out by a test that never calls out a sound room.
"""

from __future__ import annotations

import argparse
from dataclasses import dataclass
from math import radians, sqrt
from random import Random
from statistics import NormalDist

import numpy as np
from numpy.typing import NDArray

from benchmarks.closing import FOUND, KINDS, SLIPS, SURVEYS, Survey, Wall, surveyed, text
from benchmarks.closing_sampled import Errors, Likelihood, of_survey, smallest_bounds
from trimlang.compiler import check_job
from trimlang.survey.diagonals import span_of
from trimlang.survey.measured_walk import Course
from trimlang.survey.misfit import Chord, Misfit, misfit, shared_turns
from trimlang.survey.outline import depths

Floats = NDArray[np.float64]
SIZES = {"an inch": 1, "two inches": 2}
READ = 0.125
HALF_STEP = 1 / 32
SURE = NormalDist().inv_cdf(0.99)
GRID, WIDE = 192, 8.0
"""Places a side, and inches, of the field on which a density is worked out."""


@dataclass(frozen=True)
class Weighed:
    """A room: whether the closing called out, and by the inches of a slip what it is weighed at.

    ``ratios`` are logarithms, ``convolved`` the same by the other way (where that can be gone),
    ``sizes`` in standard deviations of the miss.  ``stretched`` is by how much its bounds must be
    for it to be sound.
    """

    called_out: bool
    ratios: dict[int, float]
    convolved: dict[int, float]
    sizes: dict[int, float]
    stretched: float


def weigh(walls: list[Wall], across: list[str], survey: Survey) -> Weighed:
    """Weigh one room against walls that are inches off."""
    result = check_job(text(walls, across, survey.doubt))
    (room,) = result.job.rooms
    chords = tuple(
        Chord(*span_of(one, len(room.walk)), float(one.length), one.name) for one in room.diagonals
    )
    walk = Course(room, room.walk, depths(result.job.trims), chords).walk()
    fit = misfit(walk)
    effects, doubts = np.array(fit.effects), true_doubts(walls, fit, survey)
    missed = np.array(fit.missed)
    weight = np.linalg.inv((effects * (doubts**2)[:, None]).T @ effects / 3)
    density = None if across or survey.corners else exact_density(effects, doubts)
    errors, more = errors_of(walls, effects, doubts, survey)
    lacking = [radians(shared_turns(walk)[2])] * more
    likelihood = Likelihood(errors, seed=1)
    sound = np.append(missed, lacking)
    base = likelihood.log_of(sound)
    ratios: dict[int, float] = {}
    convolved: dict[int, float] = {}
    sizes: dict[int, float] = {}
    for inches in SIZES.values():
        off = [
            sign * inches * effects[at]
            for at, wall in enumerate(walls)
            if not wall.opening
            for sign in ((1, -1) if wall.long > inches + 4 else (1,))
        ]
        each = [likelihood.log_of(sound - np.append(one, [0.0] * more)) - base for one in off]
        ratios[inches] = float(np.logaddexp.reduce(each) - np.log(len(off)))
        if density is not None:
            same = np.log([density(missed - one) / density(missed) for one in off])
            convolved[inches] = float(np.logaddexp.reduce(same) - np.log(len(off)))
        sizes[inches] = float(np.mean([sqrt(one @ weight @ one) for one in off]))
    called = bool({one.code for one in result.diagnostics} & FOUND)
    return Weighed(called, ratios, convolved, sizes, smallest_bounds(errors, sound))


def errors_of(
    walls: list[Wall], effects: Floats, doubts: Floats, survey: Survey
) -> tuple[Errors, int]:
    """Return a survey's errors, and how many conditions they have besides the walk's.

    Where all corners were measured, what their sum lacks of a whole turn is one more: it tells how
    far they are off together.
    """
    count = len(walls)
    steps = np.where(doubts > 0, HALF_STEP, 0.0)
    steps[count : 2 * count] = 0.0
    if not survey.corners:
        return of_survey(effects, doubts, steps), 0
    turned = np.zeros((len(doubts), 1))
    turned[count : 2 * count] = -1.0
    return of_survey(np.hstack([effects, turned]), doubts, steps), 1


def true_doubts(walls: list[Wall], fit: Misfit, survey: Survey) -> Floats:
    """Return the most that each error is off as the rooms are made: inches, then radians."""
    doubts = np.array(fit.doubts) * sqrt(3)
    count = len(walls)
    for at, wall in enumerate(walls):
        doubts[at] = READ
        if doubts[count + at]:
            read = survey.off if wall.angle is None else min(survey.off, 0.25)
            doubts[count + at] = radians(0.125 if survey.corners else read)
        if wall.opening:
            # a wall with a door is read once
            doubts[at - 1] = doubts[at] = 0.0
    doubts[2 * count :] = READ
    return doubts


def exact_density(effects: Floats, doubts: Floats):  # type: ignore[no-untyped-def]
    """Return the density of the walk's miss where errors lie anywhere within their doubts alike.

    Each spreads the miss over a line; the transform of that is sin x ÷ x, and those of all
    together are multiplied.  What a wall's reading is rounded to spreads it once more.
    """
    wave = np.fft.fftfreq(GRID, WIDE / GRID)
    across, up = np.meshgrid(wave, wave, indexing="ij")
    spread = np.ones_like(across)
    walls = len(doubts) // 2
    for at, (effect, doubt) in enumerate(zip(effects, doubts, strict=True)):
        along = effect[0] * across + effect[1] * up
        spread *= np.sinc(2 * doubt * along)
        if at < walls and doubt:
            spread *= np.sinc(2 * HALF_STEP * along)
    field = np.maximum(np.fft.fftshift(np.real(np.fft.ifft2(spread))), 1e-12)

    def density(place: Floats) -> float:
        x, y = np.clip(np.round(place / (WIDE / GRID)).astype(int) + GRID // 2, 0, GRID - 1)
        return float(field[x, y])

    return density


def drawn(survey: Survey, slip: str | None, count: int) -> list[Weighed]:
    """Weigh the rooms of one survey, sound or with a slip, seeds as in ``benchmarks.closing``."""
    found = []
    for kind in KINDS:
        for seed in range(count):
            random = Random(f"{kind} {seed} {survey.name} {slip}")
            walls, across = surveyed(random, kind, survey)
            if slip is not None:
                slipped = SLIPS[slip](random, walls)
                assert slipped is not None
                walls = slipped[0]
            found.append(weigh(walls, across, survey))
    return found


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--rooms", type=int, default=100, help="rooms of each kind and slip")
    parser.add_argument("--survey", default="", help="only surveys with these words in their name")
    options = parser.parse_args()
    count = options.rooms
    heads = ("survey", "slip", "closing: false alarms %", "closing finds %", "ideal at 1 %",
             "ideal at the closing's false alarms", "ideal by convolution, at 1 %",
             "no sound room", "told which wall, at 1 %")  # fmt: skip
    print(f"| {' | '.join(heads)} |\n|{' --- |' * len(heads)}")
    for survey in (one for one in SURVEYS if options.survey in one.name):
        sound = drawn(survey, None, 2 * count)
        alarms = np.mean([one.called_out for one in sound])
        for slip, inches in SIZES.items():
            off = drawn(survey, slip, count)
            hits = np.mean([one.called_out for one in off])
            levels = np.quantile([one.ratios[inches] for one in sound], [0.99, 1 - alarms])
            ideal = [np.mean([one.ratios[inches] > level for one in off]) for level in levels]
            told = np.mean([NormalDist().cdf(one.sizes[inches] - SURE) for one in off])
            again = np.nan
            if sound[0].convolved:
                level = np.quantile([one.convolved[inches] for one in sound], 0.99)
                again = np.mean([one.convolved[inches] > level for one in off])
            never = np.mean([one.stretched > 1 for one in off])
            shares = (alarms, hits, *ideal, again, never, told)
            cells = ["–" if np.isnan(share) else f"{100 * share:.1f}" for share in shares]
            print(f"| {survey.name} | {slip} | {' | '.join(cells)} |", flush=True)


if __name__ == "__main__":
    main()
