"""Chi-squared that few sound rooms exceed: the levels that a room's misses are judged by."""

from __future__ import annotations

from collections.abc import Sequence
from math import sqrt
from typing import Final

SURE: Final = (9.21, 11.34, 13.28, 15.09, 16.81, 18.48, 20.09)
"""Chi-squared that only one sound room in a hundred exceeds, for two conditions and more (the
printed tables of the distribution, at 0.99)."""

SURELY_NOT: Final = (13.82, 16.27, 18.47, 20.52, 22.46, 24.32, 26.12)
"""The same for one sound room in a thousand (at 0.999).

At 0.998 a hundredth of the rooms with many diagonals were called out without a slip."""

SUM_IS_OFF: Final = 6.63
"""The same for what measured corners lack of a whole turn, at 0.99 and for one condition.

Beyond it a corner is misread, and the sum says nothing about the errors of the others.
"""


def allowed(diagonals: int) -> float:
    """Return the most that a sound room with so many diagonals comes to, but for one in 100."""
    return _level(diagonals + 2, SURE, 2.326)


def surely_not(conditions: int) -> float:
    """Return what one sound room in a thousand exceeds."""
    return _level(conditions, SURELY_NOT, 3.090)


def _level(conditions: int, printed: Sequence[float], deviations: float) -> float:
    """Return what is printed, and beyond the printed rows what the normal distribution gives.

    The cube root of chi-squared is nearly normal (Wilson and Hilferty, 1931; from memory);
    ``deviations`` are those of the level.
    """
    if conditions < len(printed) + 2:
        return printed[conditions - 2]
    ninth = 2 / (9 * conditions)
    return float(conditions * (1 - ninth + deviations * sqrt(ninth)) ** 3)
