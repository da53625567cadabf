"""Weighs a survey's misses where every error lies anywhere within its bounds alike.

Two ways that share nothing with ``closing_ideal``'s convolution, and that take diagonals and the
sum of measured corners in as well.  ``smallest_bounds`` asks a linear program by how much the
bounds would have to be stretched for some errors within them to explain all misses: at 1 or less
a sound room may have been read just so, and no test that never calls out a sound room can call it
out.  ``likelihood`` gives the density of the misses, by sampling the errors that explain them.
"""

from __future__ import annotations

from dataclasses import dataclass

import highspy
import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
DRAWN = 4000
WIDER = 1.15
"""How much wider than the normal distribution of the errors that explain a miss they are drawn."""
NEVER = -60.0
"""The logarithm of a density that no sample has reached."""


@dataclass(frozen=True)
class Errors:
    """The errors of a survey: a row of ``effects`` for each, and how it is spread.

    Each is the sum of two that lie anywhere within ``bounds`` and ``steps`` alike: what the hand
    is off, and what the reading is rounded to.
    """

    effects: Floats
    bounds: Floats
    steps: Floats

    @property
    def deviations(self) -> Floats:
        """The standard deviation of each."""
        spread: Floats = np.sqrt((self.bounds**2 + self.steps**2) / 3)
        return spread

    def log_density(self, errors: Floats, which: NDArray[np.intp]) -> Floats:
        """Return the logarithm of the density of some errors, a row for each sample."""
        wide = np.maximum(self.bounds, self.steps)[which]
        narrow = np.minimum(self.bounds, self.steps)[which]
        # The sum of two even spreads is even in the middle and falls off in a line at the ends.
        slope = (wide + narrow - np.abs(errors)) / np.where(narrow > 0, 2 * narrow, 1e-12)
        dense = np.clip(slope, 0.0, 1.0) / (2 * wide)
        with np.errstate(divide="ignore"):
            logs: Floats = np.log(dense).sum(axis=-1)
        return logs


def of_survey(effects: Floats, bounds: Floats, steps: Floats) -> Errors:
    """Return the errors that are in doubt at all."""
    doubtful = bounds > 0
    return Errors(effects[doubtful], bounds[doubtful], steps[doubtful])


def smallest_bounds(errors: Errors, missed: Floats) -> float:
    """Return by what factor all bounds must be stretched for errors within them to explain it."""
    count, most = len(errors.bounds), highspy.kHighsInf
    solver = highspy.Highs()
    solver.setOptionValue("output_flag", False)
    # HiGHS keeps its first number of threads for the whole process, and the planner's is one.
    solver.setOptionValue("threads", 1)
    for _ in range(count):
        solver.addVar(-most, most)
    solver.addVar(0.0, most)
    solver.changeColCost(count, 1.0)
    whole = errors.bounds + errors.steps
    each = np.arange(count, dtype=np.int32)
    for row, miss in zip(errors.effects.T, missed, strict=True):
        solver.addRow(-miss, -miss, count, each, row * whole)
    for at in range(count):
        pair = np.array([at, count], dtype=np.int32)
        solver.addRow(-most, 0.0, 2, pair, np.array([1.0, -1.0]))
        solver.addRow(0.0, most, 2, pair, np.array([1.0, 1.0]))
    solver.run()
    return float(solver.getInfo().objective_function_value)


class Likelihood:
    """The density of misses, by importance sampling of the errors that explain them.

    As many errors as there are misses follow from the others; these are drawn from the normal
    distribution that they would have if all errors were normal, given the misses, and weighed by
    what they are in truth.
    """

    def __init__(self, errors: Errors, seed: int) -> None:
        self._errors = errors
        effects, square = errors.effects, errors.deviations**2
        self._follow = _independent(effects * errors.deviations[:, None])
        self._drawn = np.setdiff1d(np.arange(len(effects)), self._follow)
        # The errors that explain a miss m best are -Q E (Eᵀ Q E)⁻¹ m.
        self._best = -(square[:, None] * effects) @ np.linalg.inv((effects.T * square) @ effects)
        spread = np.diag(square) + self._best @ (effects.T * square)
        block = spread[np.ix_(self._drawn, self._drawn)]
        self._root = WIDER * np.linalg.cholesky(block + 1e-15 * np.eye(len(block)))
        self._normal = np.random.default_rng(seed).standard_normal((DRAWN, len(block)))
        self._solve = np.linalg.inv(effects[self._follow].T)
        self._log_size = float(np.linalg.slogdet(self._solve)[1])
        self._log_root = float(np.log(np.diag(self._root)).sum())

    def log_of(self, missed: Floats) -> float:
        """Return the logarithm of the density, up to one constant for the survey."""
        drawn = (self._best @ missed)[self._drawn] + self._normal @ self._root.T
        left = -missed - drawn @ self._errors.effects[self._drawn]
        follows = left @ self._solve.T
        logs = (
            self._errors.log_density(drawn, self._drawn)
            + self._errors.log_density(follows, self._follow)
            + (self._normal**2).sum(axis=1) / 2
            + self._log_root
            + self._log_size
        )
        top = float(logs.max())
        if not np.isfinite(top):
            return NEVER
        return max(NEVER, top + float(np.log(np.exp(logs - top).mean())))


def _independent(effects: Floats) -> NDArray[np.intp]:
    """Return as many rows as there are columns that are far from depending on one another."""
    left, chosen = effects.copy(), []
    for _ in range(effects.shape[1]):
        at = int(np.argmax((left**2).sum(axis=1)))
        chosen.append(at)
        way = left[at] / np.linalg.norm(left[at])
        left = left - np.outer(left @ way, way)
    return np.array(chosen)
