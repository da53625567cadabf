"""Choose among listed patterns with a mixed-integer program, through HiGHS."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import Any, Final

from trimlang.record import record
from trimlang.stock.solver import SEARCH, quiet_solver, solve_within
from trimlang.stock.sticks.timber import Pattern, Timber

BRANCHES: Final = 20_000
"""Branches after which a search gives up."""


@record
class Choice:
    """The sticks that hold everything.

    None with ``settled``: no choice does; None without it: the search gave up.
    """

    sticks: tuple[tuple[int, Pattern], ...] | None
    settled: bool


def choose(
    timber: Timber,
    patterns: Sequence[tuple[int, Pattern]],
    counts: Sequence[int],
    beyond: Sequence[float],
    seconds: float,
) -> Choice:
    """Cut everything from a rack with the given patterns only.

    ``beyond`` is how many more pieces of each size than wanted may be cut.
    Any choice will do: the costs are all 0, so the first one found ends the search.
    """
    import highspy
    import numpy as np

    demand = timber.demand
    if not patterns:
        return Choice(None if any(demand) else (), settled=True)
    solver = quiet_solver({**SEARCH, "mip_max_nodes": BRANCHES, "mip_max_improving_sols": 1})
    sizes = len(timber.sizes)
    starts, places, factors = [0], [], []
    uppers = []
    for kind, pattern in patterns:
        often = 0
        for size, number in Counter(pattern).items():
            places.append(size)
            factors.append(float(number))
            # No stick beyond those that cut the last piece of every size in the pattern.
            often = max(often, -(-demand[size] // number))
        uppers.append(float(min(often, counts[kind])))
        places.append(sizes + kind)
        factors.append(1.0)
        starts.append(len(places))
    inf = highspy.kHighsInf
    program: Any = highspy.HighsLp()
    program.num_col_ = len(patterns)
    program.num_row_ = sizes + len(timber.kinds)
    program.col_cost_ = np.zeros(len(patterns))
    program.col_lower_ = np.zeros(len(patterns))
    program.col_upper_ = np.array(uppers)
    # A row for each size: at least as many as wanted; more are taken off in `_sticks`.  Where none
    # may be more, the solver sees at once which patterns shut each other out.  A row for each
    # kind: no more sticks than the rack has.
    program.row_lower_ = np.array([*map(float, demand), *([-inf] * len(timber.kinds))])
    program.row_upper_ = np.array(
        [*map(sum, zip(demand, beyond, strict=True)), *map(float, counts)]
    )
    program.a_matrix_.format_ = highspy.MatrixFormat.kColwise
    program.a_matrix_.start_ = np.array(starts, dtype=np.int32)
    program.a_matrix_.index_ = np.array(places, dtype=np.int32)
    program.a_matrix_.value_ = np.array(factors)
    program.integrality_ = [highspy.HighsVarType.kInteger] * len(patterns)
    solver.passModel(program)
    solve_within(solver, max(seconds, 0.1))
    status = solver.getModelStatus()
    # The only answer that proves anything; a solver that stops early has merely not found one.
    if status == highspy.HighsModelStatus.kInfeasible:
        return Choice(None, settled=True)
    answer = solver.getSolution()
    if not answer.value_valid:
        return Choice(None, settled=False)
    sticks = _sticks(demand, patterns, counts, [round(x) for x in answer.col_value])
    return Choice(sticks, settled=sticks is not None)


def _sticks(
    demand: Sequence[int],
    patterns: Sequence[tuple[int, Pattern]],
    counts: Sequence[int],
    times: Sequence[int],
) -> tuple[tuple[int, Pattern], ...] | None:
    """Return the sticks of an answer without pieces cut too often; None if any piece is missing."""
    wanted = list(demand)
    left = list(counts)
    sticks: list[tuple[int, Pattern]] = []
    for (kind, pattern), number in zip(patterns, times, strict=True):
        for _ in range(number):
            needed = []
            for size in pattern:
                if wanted[size]:
                    wanted[size] -= 1
                    needed.append(size)
            if needed:
                left[kind] -= 1
                sticks.append((kind, tuple(needed)))
    return None if any(wanted) or min(left) < 0 else tuple(sticks)
