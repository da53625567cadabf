"""A single slip of the tape or the pencil that would make a room close, and which are believed.

Each possible slip is tried on the walk: a length misread in one of the usual ways, the two ends of
a run swapped, an inside corner written for an outside one, a wall or an opening left out.  What is
then still missed is judged by the survey's doubts.  A slip is believed alone only where it fits
clearly better than the next.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Final

from trimlang.diagnostics import Span
from trimlang.record import record
from trimlang.survey.job import Stretch

CLEARLY: Final = 11.34
"""Chi-squared by which a slip must fit better than the next to be believed: three hundred to one.

At a hundred to one 2 of 200 rooms with diagonals had a wrong wall named alone.
"""

MOST_STRETCHES: Final = 200
"""No room has more; trying every slip on a longer list would take too long."""

DISPUTE: Final = 25.0
"""Added to a slip's score for each joint whose sides still contradict each other (chi-squared)."""

UNUSUAL: Final = 6.0
"""Chi-squared by which a length wrong in no usual way must fit better than the usual slips.

Twice the logarithm of how many inches it is off comes to it: the further off, the more lengths
there are to be off by.
"""

SHORTEST: Final = 1
"""Inches: what is shorter is no wall that a slip may leave, or leave out."""


@record
class Slip:
    """A slip in words, the stretches that it is about, and how badly the walk fits without it.

    ``score`` is chi-squared of what is still missed, plus what the slip's rarity adds; less is
    better.  ``amount`` is how much longer the wall would be (inches), None for other slips.
    ``meant`` is what would stand in the file without it, each text with the place of the wall, the
    end or the diagonal that it is said of; empty where that cannot be told.  ``mended`` is the walk
    without a slip at a corner, empty for others, and ``rare`` what such a slip's rarity adds to the
    score.  ``spared`` of the score is not held against it: that a length so far off is rare, and
    what the corners lack of a whole turn, where nobody measured all of them.
    """

    words: str
    about: tuple[int, ...]
    score: float
    amount: Fraction | None = None
    meant: tuple[tuple[Span, str], ...] = ()
    mended: tuple[Stretch, ...] = ()
    rare: float = 0.0
    spared: float = 0.0


def likely(slips: Sequence[Slip], allowed: float) -> tuple[Slip, ...]:
    """Return the slips that explain the walk: the best, and all that fit almost as well.

    ``allowed`` is the chi-squared that a sound room may have.
    """
    if not slips:
        return ()
    best = min(slip.score for slip in slips)
    # A slip must fit nearly as well as the best, and well enough that a sound room could look so.
    near = sorted(
        (
            slip
            for slip in slips
            if slip.score <= min(best + CLEARLY, allowed + UNUSUAL + slip.spared)
        ),
        key=lambda slip: slip.score,
    )
    first_about: dict[tuple[int, ...], Slip] = {}
    for slip in near:
        # Of several slips of one wall the best speaks for all.
        first_about.setdefault(tuple(sorted(slip.about)), slip)
    return tuple(first_about.values())
