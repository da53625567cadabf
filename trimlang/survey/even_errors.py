"""How likely the misses of a survey are where every error lies anywhere within its bounds alike.

A sum of many such errors is nearly normal in the middle of what it can be and comes to an end at
its bounds, so misses that a normal distribution finds merely rare may be impossible.  Its density
is worked out by the saddle point: of all the ways to tilt the errors' distributions, the one under
which the misses are what one would expect (Daniels, Saddlepoint approximations in statistics, 1954;
from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from math import exp, expm1, inf, log, log1p, pi, tanh
from typing import Final

from trimlang.record import record
from trimlang.survey.misfit import Matrix, Row, dot, eliminated

_NEVER: Final = 80.0
"""A surprise that no errors within their bounds come to, or so few that it is the same."""
_MOST_STEPS: Final = 40
_EXACT: Final = 1e-6
_SMALL, _LARGE = 0.02, 18.0
"""Below and above these the formulas lose their figures, and series stand for them."""


@record
class Likely:
    """How well errors explain some misses.

    ``surprise`` compares with chi-squared, which it is where errors are normal; ``log_density``
    is that of the misses, to be compared with other misses of the same survey.  ``tilt`` is where
    the saddle lies.
    """

    surprise: float
    log_density: float
    tilt: Row


def likely_misses(
    effects: Sequence[Row], missed: Sequence[float], start: Sequence[float]
) -> Likely:
    """Return how likely it is that even errors miss by ``missed``.

    ``effects`` has for each error what its bound does to each condition.  The search for the saddle
    begins at ``start``, such as that of misses close by.
    """
    tilt = list(start)
    value = _height(effects, missed, tilt)
    size = 1.0
    for _ in range(_MOST_STEPS):
        slope, curve = _shape(effects, missed, tilt)
        beside, size = eliminated(curve, tuple((value,) for value in slope))
        step = [row[0] for row in beside]
        drop = dot(step, slope)
        if drop < _EXACT:
            break
        # A whole step may go past the saddle, so it is halved until it leads down.
        part = 2.0
        lower = inf
        while lower > value - part * drop / 4 and part > _EXACT:
            part /= 2
            further = [at - part * by for at, by in zip(tilt, step, strict=True)]
            lower = _height(effects, missed, further)
        tilt, value = further, lower
        if -2 * value > _NEVER:
            return Likely(surprise=_NEVER, log_density=-inf, tilt=tuple(tilt))
    return Likely(
        surprise=-2 * value,
        log_density=value - log(size) / 2 - len(missed) * log(2 * pi) / 2,
        tilt=tuple(tilt),
    )


def _height(effects: Sequence[Row], missed: Sequence[float], tilt: Sequence[float]) -> float:
    """Return the logarithm of the generating function of the misses, less what is missed."""
    total = -dot(tilt, missed)
    for effect in effects:
        far = abs(dot(effect, tilt))
        # log(sinh u ÷ u), for an error even between -1 and 1
        total += far * far / 6 if far < _SMALL else far + log1p(-exp(-2 * far)) - log(2 * far)
    return total


def _shape(
    effects: Sequence[Row], missed: Sequence[float], tilt: Sequence[float]
) -> tuple[list[float], Matrix]:
    """Return the slope and the curvature of ``_height``."""
    size = range(len(missed))
    slope = [-miss for miss in missed]
    curve = [[0.0] * len(missed) for _ in size]
    for effect in effects:
        along = dot(effect, tilt)
        mean, spread = _tilted(along)
        for row in size:
            slope[row] += mean * effect[row]
            weighty = spread * effect[row]
            if weighty:
                for column in size:
                    curve[row][column] += weighty * effect[column]
    return slope, tuple(map(tuple, curve))


def _tilted(along: float) -> tuple[float, float]:
    """Return the mean and the variance of an error between -1 and 1, tilted by so much."""
    if abs(along) < _SMALL:
        return along / 3, 1 / 3 - along * along / 15
    if abs(along) > _LARGE:
        return (1 if along > 0 else -1) - 1 / along, 1 / (along * along)
    # 1 ÷ sinh², written so that it does not overflow
    fall = exp(-2 * abs(along))
    return 1 / tanh(along) - 1 / along, 1 / (along * along) - 4 * fall / expm1(-2 * abs(along)) ** 2
