"""Rounds a length, once and at the end; the joints at the two ends decide which way."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from trimlang.joinery.piece import Rounding
from trimlang.joint_row import RoundedAs
from trimlang.joints_by_role import STOPPED
from trimlang.lengths.tape import Direction, on_mark, steps_down, steps_nearest, steps_up
from trimlang.settings.table import Settings
from trimlang.survey.job import End

_FINER: Final = 64
"""An exact length that lies within a hair of this part of a step is taken to lie on it."""


def deciding_row(left: End, right: End, settings: Settings) -> RoundedAs:
    """Return the row of the rounding table that decides: the first one that either end has."""
    ends = {_rounded_as(end) for end in (left, right)}
    return next(row for row in settings.rule if row in ends)


def _rounded_as(end: End) -> RoundedAs:
    # A taper that only takes a corner off a square end stops at a casing, as a butt does.
    stops = end.joint.row.tapers and end.corner == 0
    return STOPPED.rounds(end.fit) if stops else end.joint.rounds(end.fit)


def round_length(exact: Fraction, row: RoundedAs, settings: Settings) -> tuple[Fraction, Rounding]:
    """Return the ticket's length (inches) and how it was made.

    A row with a raise (for a sprung fit) adds that much at most, and never gives less than the
    exact length.
    """
    direction, raised = settings.rule[row]
    step = settings.rounding_step
    # The tangent's last decimals must not push a length that lies on a mark to the next one.
    exact = on_mark(exact, step / _FINER)
    # A sprung fit: a little too long on purpose, but by no more than the raise.
    if raised:
        length = steps_down(exact + raised, step)
        if length < exact:
            length = steps_up(exact, step)
    elif direction is Direction.UP:
        length = steps_up(exact, step)
    elif direction is Direction.DOWN:
        length = steps_down(exact, step)
    else:
        length = steps_nearest(exact, step)
    return length, Rounding(row=row, direction=direction, exact=exact, by=length - exact)
