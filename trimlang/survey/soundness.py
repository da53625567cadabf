"""Tells whether a survey's misses are what its errors make, or what a slip makes.

Two tests, as far as the errors' distribution allows as sharp as there are: whether errors within
their bounds explain all misses at once, and whether a length an inch off explains them better
(the ratio of the two likelihoods: Neyman and Pearson, On the problem of the most efficient tests
of statistical hypotheses, 1933; from memory).  Larger slips the first finds as well.
"""

from __future__ import annotations

from math import exp, fsum, radians
from typing import Final

from trimlang.survey.chi_squared import SUM_IS_OFF, surely_not
from trimlang.survey.even_errors import likely_misses
from trimlang.survey.misfit import (
    EVEN,
    Misfit,
    Row,
    Walk,
    dot,
    shared_turns,
    takers_of,
    weighed,
)
from trimlang.survey.possible_slip import SHORTEST

_AN_INCH: Final = 1.0
_CLEARLY: Final = 1.8
"""The logarithm of how many times likelier an inch must make the misses: six times.

So chosen that at most one sound room in a hundred is called out, whatever was measured
(`benchmarks.closing`)."""
_PLAIN: Final = 6.0
_BARELY: Final = -0.7
"""The same where an inch stands out by six standard deviations or more: hardly any sound room
comes near it, so less will do."""
_HARMLESS: Final = 2.5
"""Chi-squared; where no length alone takes more off, none can be so much likelier."""
_FAR_LESS: Final = 4.0
"""A slip that made the misses e⁴ times less likely, were errors normal, is not weighed."""
_ROUNDED: Final = 0.25
"""A reading is rounded by half a step of the tape at most, a quarter of what a wall may be off."""


def is_sound(walk: Walk, fit: Misfit) -> bool:
    """Tell whether errors within the survey's doubts are a good enough reason for its misses."""
    lengths = len(walk.lengths)
    tested = [*range(lengths), *range(2 * lengths, len(fit.effects))]
    # Most rooms close so well that the normal distribution is good enough to say so.
    if fit.total - fit.turned < fit.allowed / 2 and all(
        fit.pull(fit.effects[at])[1] < _HARMLESS for at in tested
    ):
        return True
    effects, missed = _conditions(walk, fit)
    sound = likely_misses(effects, missed, [0.0] * len(missed))
    if sound.surprise > surely_not(len(missed)):
        return False
    # Both ways for each length, but for a wall that an inch less would leave nothing of.
    slips = [
        (fit.effects[at], inches)
        for at in tested
        for inches in (_AN_INCH, -_AN_INCH)
        if inches < 0 or at >= lengths or walk.lengths[at] > inches + SHORTEST
    ]
    down = [dot(row, fit.missed) for row in fit.weight]
    likelier = 0.0
    for effect, inches in slips:
        normally = inches * dot(down, effect) - weighed(effect, fit.weight) / 2
        if normally >= -_FAR_LESS:
            without = [miss - inches * by for miss, by in zip(missed, effect, strict=False)]
            without += missed[len(effect) :]
            slipped = likely_misses(effects, without, sound.tilt)
            likelier += exp(slipped.log_density - sound.log_density)
    # How many variances of the misses an inch at a wall comes to, on the average.
    variances = fsum(weighed(one, fit.weight) for one in fit.effects[:lengths]) / lengths
    least = _CLEARLY if variances < _PLAIN * _PLAIN else _BARELY
    return likelier < exp(least) * len(slips)


def _conditions(walk: Walk, fit: Misfit) -> tuple[list[Row], list[float]]:
    """Return what each error's bound does to each condition, and by how much these are missed.

    Where all corners were measured, what they lack of a whole turn is one condition more.
    """
    _, _, lacking = shared_turns(walk)
    lengths = len(walk.lengths)
    summed = fit.turned <= SUM_IS_OFF and all(walk.turns[at].measured for at in takers_of(walk))
    missed = [*fit.missed, *([radians(lacking)] if summed else [])]
    effects: list[Row] = []
    for at, (effect, deviation) in enumerate(zip(fit.effects, fit.doubts, strict=True)):
        # What has no error of its own, such as a corner that is given, cannot explain a miss.
        if not deviation:
            continue
        is_corner = lengths <= at < 2 * lengths
        whole = (*effect, *([-1.0 if is_corner else 0.0] if summed else []))
        bound = deviation * EVEN
        effects.append(tuple(value * bound for value in whole))
        # A length errs twice: by what a wall may be off, and by being read to a mark of the tape.
        if not is_corner:
            effects.append(tuple(value * bound * _ROUNDED for value in whole))
    return effects, missed
