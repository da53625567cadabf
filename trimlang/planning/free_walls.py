"""The long walls of a trim whose joints may be anywhere, in the planner's numbers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from math import ceil
from typing import TYPE_CHECKING

from trimlang.joinery.pieces import Places
from trimlang.joinery.splice_lengths import least_piece
from trimlang.joinery.spliced_pieces import Splice
from trimlang.planning.ask import Question
from trimlang.planning.wall_in_units import cut_in, long_wall
from trimlang.record import record
from trimlang.settings.table import Settings
from trimlang.stock.certificate import Certificate, FreeRun
from trimlang.stock.checking.anywhere_check import shown_anywhere
from trimlang.stock.long_walls.wall_rooms import floor_by_length
from trimlang.stock.long_walls.wall_ways import LongWall
from trimlang.stock.problem import Part, Problem

if TYPE_CHECKING:
    from trimlang.stock.long_walls.joint_bound import JointBound


@record
class FreeWalls:
    """A trim's problem without its long walls, and these: as runs for a bound.

    ``walls`` are the same for a plan, in the same order; empty where some are not whole steps
    of the tape, or their stick takes more than their number says (crown).
    """

    splices: tuple[Splice, ...]
    fixed: Problem
    runs: tuple[FreeRun, ...]
    walls: tuple[LongWall, ...]

    def shown(self, search: JointBound, enough: int) -> int:
        """Return a lower bound on the trim's cost wherever the walls are joined.

        No more than ``enough``, and only what a check shows that the planner has no part in.
        """
        argued = search.bound(enough)
        return shown_anywhere(
            self.fixed, self.runs, argued.certificate, argued.steps, argued.floor, argued.laid
        )

    def shown_by_length(self, enough: int) -> int:
        """Return what lengths alone show of that, without a search."""
        floor = min(floor_by_length(self.fixed, self.runs), enough)
        return shown_anywhere(self.fixed, self.runs, Certificate(floor), (), floor, ())

    def places(self, parts: Sequence[Sequence[int]], step: Fraction) -> Places:
        """Return the cuts of the runs with parts of these lengths, where they are within rules."""
        found: dict[str, tuple[Fraction, ...]] = {}
        for splice, lengths in zip(self.splices, parts, strict=True):
            # Places that break a rule are left as they were: the plan goes on with its own.
            cut = cut_in(splice, [length * step for length in lengths])
            if cut is not None:
                found[splice.whole.id] = cut
        return found


def free_walls(question: Question, free: Sequence[Splice]) -> FreeWalls:
    """Return the walls ``free`` of a question, in which they may be cut in any places.

    What the pieces of a run measure together and how their ends lean is the same in all places:
    all pieces but the last are whole steps, so only the last is rounded, and by as much.
    """
    problem = question.problem
    parts = {part.id: part for part in problem.parts}
    runs: list[FreeRun] = []
    walls: list[LongWall] = []
    rounded = 0
    for splice in free:
        own = [parts.pop(name) for name in splice.names()]
        settings = splice.wall.room.settings
        wall = long_wall(splice, own, question)
        # Where a wall's pieces may be rounded differently in other places, each counts as short as
        # it could come out: the bound must hold for all places.
        off = 0 if wall is not None else len(own) * _rounded_by(settings, question)
        rounded += off
        total = sum(part.length for part in own) - off
        least = least_piece(splice.lap, settings)
        runs.append(
            FreeRun(
                pieces=len(own),
                total=total,
                least=question.room_in(least) - _rounded_by(settings, question),
                lean=_lean(own),
                left=own[0].left_lean,
                right=own[-1].right_lean,
            )
        )
        if wall is not None:
            walls.append(wall)
    # The spare is a percentage of the pieces' lengths, and so depends on their rounding too.
    fixed = replace(problem, parts=tuple(parts.values()), spare=max(problem.spare - rounded, 0))
    # The search counts in one step for all walls; with two it could only bound.
    one_step = len({wall.step for wall in walls}) == 1
    return FreeWalls(
        tuple(free),
        fixed,
        tuple(runs),
        tuple(walls) if one_step and len(walls) == len(runs) else (),
    )


def _lean(own: Sequence[Part]) -> int:
    """The most that an end leans at one of a run's joints."""
    return max((max(abs(a.right_lean), abs(b.left_lean)) for a, b in pairwise(own)), default=0)


def _rounded_by(settings: Settings, question: Question) -> int:
    """Return how many units rounding may change a piece's length by when a joint is moved.

    A piece is rounded to the room's step, and then to the tape's where that is another.
    """
    steps = settings.rounding_step / question.step
    # A second rounding, to the tape, adds one unit at the most.
    return ceil(steps) + (steps.denominator != 1)


__all__ = ["FreeWalls", "free_walls"]
