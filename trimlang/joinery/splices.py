"""Where a wall that is longer than the stock is pieced together.

A scarf is two parallel cuts; the lap is in one of the two pieces, so together
they measure the wall and one lap.  All pieces but the last are a whole number
of rounding steps, so that rounding happens once, in the last.
"""

from __future__ import annotations

from fractions import Fraction

from trimlang.lengths.tape import steps_down
from trimlang.survey.settings import Settings


def split(
    exact: Fraction, longest: Fraction, lap: Fraction, settings: Settings, *, force: bool
) -> tuple[Fraction, ...] | None:
    """Return the exact lengths of the pieces from the left, or None where stock is too short.

    Full sticks come first, as they waste nothing; no piece is shorter than the
    settings allow, which also keeps joints that far from the corners.
    """
    step, least = settings.rounding_step, settings.splice_least
    full = steps_down(longest, step)
    if full < least or full <= lap:
        return None
    # the last piece may be rounded up by as much as one step
    room_for_last = longest - step
    cut: list[Fraction] = []
    rest = exact
    if force and exact <= room_for_last:
        first = steps_down((exact + lap) / 2, step)
        pair = (first, exact - (first - lap))
        return pair if min(pair) >= least else None
    while rest > room_for_last:
        length = full
        if rest - (length - lap) < least:
            length = steps_down(rest + lap - least, step)
        if length < least:
            return None
        cut.append(length)
        rest -= length - lap
    return (*cut, rest)
