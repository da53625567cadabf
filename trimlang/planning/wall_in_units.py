"""A spliced run in the planner's whole units, and the planner's answer as a cut of the run."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import ceil, floor

from trimlang.joinery.splice_lengths import least_piece
from trimlang.joinery.spliced_pieces import Splice
from trimlang.lengths.tape import steps_down
from trimlang.planning.ask import Question
from trimlang.stock.long_walls.wall_ways import LongWall
from trimlang.stock.problem import Part


def long_wall(splice: Splice, own: Sequence[Part], question: Question) -> LongWall | None:
    """Return a run as the search for places takes it; None where moved joints round pieces anew.

    ``own`` are the run's pieces as the question has them.
    """
    settings = splice.wall.room.settings
    marks = settings.rounding_step / question.step
    # Moved by whole steps, no piece is rounded anew; crown takes more than its length.
    if marks.denominator != 1 or splice.whole.wall_edge is not None:
        return None
    least = least_piece(splice.lap, settings)
    return LongWall(
        total=sum(part.length for part in own),
        pieces=len(own),
        least=ceil(least / settings.rounding_step) * marks.numerator,
        most=floor(steps_down(splice.longest, settings.rounding_step) / question.step),
        step=marks.numerator,
    )


def cut_in(splice: Splice, lengths: Sequence[Fraction]) -> tuple[Fraction, ...] | None:
    """Return the lengths (inches) as a cut of the run, None where they are not within the rules.

    They have as many joints as the run or more; the last length takes up what rounding leaves.
    """
    step = splice.wall.room.settings.rounding_step
    # Every joint more has a lap, in which wood lies twice.
    total = sum(splice.cut, Fraction(0)) + (len(lengths) - len(splice.cut)) * splice.lap
    # The longest first, as the usual cut has them; one that is no whole number of steps last.
    order = sorted(lengths, key=lambda one: (steps_down(one, step) != one, -one))
    # What rounding leaves may be too much for the shortest, and not for a longer one.
    for last in reversed(range(len(order))):
        before = [*order[:last], *order[last + 1 :]]
        cut = (*before, total - sum(before))
        if len(cut) == 1 or _is_within_rules(splice, cut):
            return cut
    return None


def _is_within_rules(splice: Splice, cut: Sequence[Fraction]) -> bool:
    settings = splice.wall.room.settings
    step, *before = settings.rounding_step, *cut[:-1]
    return (
        min(cut) >= least_piece(splice.lap, settings)
        and max(before) <= steps_down(splice.longest, step)
        and cut[-1] <= splice.longest - step
        # A length between two marks of the tape could not be set at the saw.
        and all(steps_down(length, step) == length for length in before)
    )
