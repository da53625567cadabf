"""Plain models of the same question in two solver libraries, one thread each."""

import os
import resource
from collections import Counter
from collections.abc import Callable
from itertools import pairwise
from typing import Any

from benchmarks.published import Instance

#: So many times its limit a solver may take on the wall, where it shares the core.
PATIENCE = 10


def ended_within(seconds: float, rival: Callable[[], bool]) -> tuple[bool, float]:
    """Whether a rival ends with a proof within so many seconds of one core; what it took.

    It works in a process of its own, which the system stops at the limit: the solvers'
    own limits go by the clock on the wall, and are looked at seldom.
    """
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    child = os.fork()
    if not child:
        whole = max(int(seconds), 1)
        resource.setrlimit(resource.RLIMIT_CPU, (whole, whole))
        proven = False
        try:
            proven = rival()
        finally:
            os._exit(0 if proven else 1)
    _, status = os.waitpid(child, 0)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    took = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return os.waitstatus_to_exitcode(status) == 0, took


def cp_sat(instance: Instance, start: int, seconds: float) -> bool:
    """The assignment model in OR-Tools CP-SAT; whether it ended with a proof."""
    from ortools.sat.python import cp_model

    model: Any = cp_model.CpModel()
    cuts = [model.NewBoolVar("") for _ in range(start)]
    covers: list[list[Any]] = [[] for _ in instance.lengths]
    for cut in cuts:
        holds = [model.NewBoolVar("") for _ in instance.lengths]
        for cover, hold in zip(covers, holds, strict=True):
            cover.append(hold)
        load = sum(n * h for n, h in zip(instance.lengths, holds, strict=True))
        model.Add(load <= instance.room * cut)
    for cover in covers:
        model.AddExactlyOne(cover)
    for one, after in pairwise(cuts):
        model.Add(one >= after)
    model.Add(sum(cuts) >= -(-sum(instance.lengths) // instance.room))
    model.Minimize(sum(cuts))
    solver: Any = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.max_time_in_seconds = PATIENCE * seconds
    return bool(solver.Solve(model) == cp_model.OPTIMAL)


def arc_flow(instance: Instance, seconds: float) -> bool:
    """The arc-flow model (de Carvalho 1999) in HiGHS; whether it ended with a proof.

    Where the model could have more than ten million arcs it is not even built.
    """
    if instance.room * len(set(instance.lengths)) > 10_000_000:
        return False
    import highspy
    import numpy as np

    room, demand = instance.room, Counter(instance.lengths)
    sizes = sorted(demand, reverse=True)
    # Longest first along a stick: a size starts only where longer ones may end.
    reached = [False] * (room + 1)
    reached[0] = True
    arcs: list[tuple[int, int, int]] = []
    for row, size in enumerate(sizes):
        for start in [i for i in range(room + 1 - size) if reached[i]]:
            place, left = start, demand[size]
            while left and place + size <= room:
                arcs.append((place, place + size, row))
                place, left = place + size, left - 1
                reached[place] = True
    arcs = sorted(set(arcs))
    nodes = [i for i in range(room + 1) if reached[i]]
    ends = list(pairwise(nodes)) + ([(nodes[-1], room)] if nodes[-1] != room else [])
    place_of = {node: i for i, node in enumerate(sorted({*nodes, room}))}
    flows, count = len(place_of), len(arcs) + len(ends) + 1
    entries: list[tuple[int, int, float]] = []
    for column, (tail, head, size) in enumerate([*arcs, *((*end, -1) for end in ends)]):
        entries += [(place_of[tail], column, -1.0), (place_of[head], column, 1.0)]
        if size >= 0:
            entries.append((flows + size, column, 1.0))
    entries += [(place_of[0], count - 1, 1.0), (place_of[room], count - 1, -1.0)]
    rows, columns, factors = zip(*entries, strict=True)
    order = np.argsort(np.array(columns), kind="stable")
    program: Any = highspy.HighsLp()
    program.num_col_, program.num_row_ = count, flows + len(sizes)
    program.col_cost_ = np.array([0.0] * (count - 1) + [1.0])
    program.col_lower_ = np.zeros(count)
    program.col_upper_ = np.full(count, highspy.kHighsInf)
    wanted = [float(demand[size]) for size in sizes]
    program.row_lower_ = np.array([0.0] * flows + wanted)
    program.row_upper_ = np.array([0.0] * flows + [highspy.kHighsInf] * len(sizes))
    program.a_matrix_.format_ = highspy.MatrixFormat.kColwise
    starts = np.concatenate([[0], np.cumsum(np.bincount(columns, minlength=count))])
    program.a_matrix_.start_ = starts.astype(np.int32)
    program.a_matrix_.index_ = np.array(rows, dtype=np.int32)[order]
    program.a_matrix_.value_ = np.array(factors)[order]
    program.integrality_ = [highspy.HighsVarType.kInteger] * count
    solver: Any = highspy.Highs()  # type: ignore[no-untyped-call]
    for option, value in (
        ("output_flag", False),
        ("threads", 1),
        ("time_limit", PATIENCE * seconds),
    ):
        solver.setOptionValue(option, value)
    solver.passModel(program)
    solver.run()
    return bool(solver.getModelStatus() == highspy.HighsModelStatus.kOptimal)
