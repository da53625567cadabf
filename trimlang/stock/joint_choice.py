"""Chooses how long walls are divided while all else is cut: an integer program over patterns.

The patterns are those that the search for a bound has met (``joint_bound.py``), and those of
a plan at hand with the walls' parts drawn out over their offcuts.  A pattern does not say which
wall its parts are for: a part of a length is given by the patterns and taken by the walls.  What
is chosen is a proposal only: the pieces that come of it are planned and checked like any others.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from typing import Any, Final

from trimlang.record import record
from trimlang.stock.joint_bound import JointBound
from trimlang.stock.joint_program import JoinedStick
from trimlang.stock.solver import add_column, add_row, quiet_solver, solve_within

PATTERNS: Final = 1_000
"""The most patterns that are chosen among: those nearest to the program's optimum."""

CHOICES: Final = 3_000
"""The most lengths of parts, times walls: with more, fewer patterns are chosen among."""

NODES: Final = 300
"""Branches of the integer program."""

OUTER_GUARD: Final = 2.0
"""Seconds of its work, as an outer guard."""


@record
class LongWall:
    """A wall in so many parts, in the problem's units.

    Together they measure ``total`` at the least, each from ``least`` to ``most``, in whole
    multiples of ``step`` but for the last one.
    """

    total: int
    pieces: int
    least: int
    most: int
    step: int


def chosen_parts(
    search: JointBound,
    walls: Sequence[LongWall],
    at_hand: Sequence[JoinedStick],
    cost: int,
    target: int,
    seconds: float,
) -> list[tuple[int, ...]] | None:
    """Return the lengths of each wall's parts, longest first; None: nothing cheaper was found.

    ``cost`` is what a plan at hand costs, ``target`` a cost that none is below.
    """
    search.program.add(at_hand)
    # Those at hand first, so that the plan there is stays possible and only better ones are taken.
    sticks = list(dict.fromkeys((*at_hand, *search.near(cost))))[:PATTERNS]
    lengths: set[int] = set()
    for number, stick in enumerate(sticks):
        lengths.update(stick.parts)
        if len(lengths) * len(walls) > CHOICES:
            del sticks[number:]
            break
    model = _Model(search, walls, sticks)
    found = model.solved(cost, target, min(OUTER_GUARD, seconds / 2))
    if found is None:
        return None
    return [_shortened(wall, parts) for wall, parts in zip(walls, found, strict=True)]


def _shortened(wall: LongWall, parts: Iterable[int]) -> tuple[int, ...]:
    """The parts, as much shorter as their wall leaves over: the longest first, to keep a rest."""
    lengths = sorted(parts, reverse=True)
    over = sum(lengths) - wall.total
    for place, length in enumerate(lengths):
        less = max(min(over, length - wall.least), 0) // wall.step * wall.step
        lengths[place] -= less
        over -= less
    return tuple(sorted(lengths, reverse=True))


class _Model:
    """Rows: sizes, kinds, parts of each length, and for each wall its length and its parts."""

    def __init__(
        self, search: JointBound, walls: Sequence[LongWall], sticks: Sequence[JoinedStick]
    ) -> None:
        import highspy
        import numpy as np

        self._np, self._inf = np, highspy.kHighsInf
        self._valid = highspy.HighsVarType.kInteger
        timber = search.timber
        self._walls = walls
        self._spare = timber.problem.spare
        kerf, sizes = timber.problem.kerf, len(timber.sizes)
        step, least = walls[0].step, min(wall.least for wall in walls)
        given = [
            [length for part in stick.parts if (length := (part - kerf) // step * step) >= least]
            for stick in sticks
        ]
        lengths = sorted({length for parts in given for length in parts})
        rows = {length: sizes + len(timber.kinds) + n for n, length in enumerate(lengths)}
        first_wall = sizes + len(timber.kinds) + len(lengths)
        self._solver = quiet_solver(
            {
                "mip_max_nodes": NODES,
                "mip_rel_gap": 1e-6,
                # On these programs each of these takes longer than all the rest.
                "mip_heuristic_run_rens": False,
                "mip_heuristic_run_root_reduced_cost": False,
            }
        )
        for wanted in (*timber.demand, *[0] * (len(timber.kinds) + len(lengths))):
            add_row(self._solver, wanted, {})
        for wall in walls:
            add_row(self._solver, wall.total, {})
            add_row(self._solver, -wall.pieces, {})
        for number, kind in enumerate(timber.kinds):
            for offer in kind.offers:
                most = self._inf if offer.limit is None else float(offer.limit // offer.pack)
                add_column(self._solver, offer.price, most, {sizes + number: float(offer.pack)})
        for stick, parts in zip(sticks, given, strict=True):
            entries = {size: float(n) for size, n in Counter(stick.pattern).items()}
            entries[sizes + stick.kind] = -1.0
            entries.update({rows[length]: float(n) for length, n in Counter(parts).items()})
            add_column(self._solver, 0, self._inf, entries)
        #: Of each part taken: its wall and its length.
        self._taken: list[tuple[int, int]] = []
        self._first = self._solver.getNumCol()
        for place, wall in enumerate(walls):
            row = first_wall + 2 * place
            for length in lengths:
                if length >= wall.least:
                    # A longer part serves, cut down to what the wall may have.
                    own = min(length, wall.most)
                    self._taken.append((place, own))
                    entries = {rows[length]: -1.0, row: float(own), row + 1: -1.0}
                    add_column(self._solver, 0, float(wall.pieces), entries)

    def solved(self, cost: int, target: int, seconds: float) -> list[list[int]] | None:
        """Return each wall's parts in a cheaper choice, found in a fair time."""
        np, solver = self._np, self._solver
        columns = solver.getNumCol()
        whole: Any = np.full(columns, self._valid)
        solver.changeColsIntegrality(columns, np.arange(columns, dtype=np.int32), whole)
        if not self._spare:
            # The program does not know of the spare; with one its price says nothing of the plan's.
            solver.setOptionValue("objective_bound", cost - 0.5)
            solver.setOptionValue("objective_target", target + 0.5)
        solve_within(solver, max(seconds, 0.1))
        answer = solver.getSolution()
        price = solver.getInfo().objective_function_value
        if not answer.value_valid or (not self._spare and price > cost - 0.5):
            return None
        parts: list[list[int]] = [[] for _ in self._walls]
        for (wall, length), value in zip(self._taken, answer.col_value[self._first :], strict=True):
            parts[wall] += [length] * round(value)
        return parts


__all__ = ["LongWall", "chosen_parts"]
