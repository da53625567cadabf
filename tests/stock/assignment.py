"""The plain assignment model in OR-Tools CP-SAT: an outside opinion on cost and sticks."""

from itertools import pairwise
from typing import Any

from trimlang.stock.problem import Problem


def least_cost(problem: Problem) -> int | None:
    """The least cost without shared mitres, to proof; None where no plan exists."""
    return _solved(problem, None)


def fewest_sticks_at(problem: Problem, cost: int) -> int | None:
    """The fewest sticks cut, without shared mitres, by a plan of no more than this cost."""
    return _solved(problem, cost)


def _solved(problem: Problem, at_most: int | None) -> int | None:
    from ortools.sat.python import cp_model

    model: Any = cp_model.CpModel()
    parts, used, prices = problem.parts, [], []
    covers: list[list[Any]] = [[] for _ in parts]
    spare = []
    for blank in problem.blanks:
        most = len(parts) if blank.limit is None else min(blank.limit, len(parts))
        room = blank.length - 2 * problem.end_waste + problem.kerf
        cuts = []
        for number in range(most):
            cut = model.NewBoolVar(f"{blank.key} {number}")
            cuts.append(cut)
            holds = [model.NewBoolVar("") for _ in parts]
            for part, hold in enumerate(holds):
                covers[part].append(hold)
            load = sum((p.length + problem.kerf) * h for p, h in zip(parts, holds, strict=True))
            model.Add(load <= max(room, 0) * cut)
        for one, after in pairwise(cuts):
            model.Add(one >= after)
        extra = 0 if not problem.spare else -(-problem.spare // blank.length)
        packs = (most + extra) // blank.pack + 1
        if blank.limit is not None:
            packs = min(packs, blank.limit // blank.pack)
        bought = model.NewIntVar(0, packs, blank.key)
        model.Add(blank.pack * bought >= sum(cuts))
        prices.append(blank.price * bought)
        if not blank.on_hand:
            spare.append(blank.length * (blank.pack * bought - sum(cuts)))
        used.extend(cuts)
    for cover in covers:
        if not cover:
            return None
        model.AddExactlyOne(cover)
    if problem.spare:
        model.Add(sum(spare) >= problem.spare)
    if at_most is not None:
        model.Add(sum(prices) <= at_most)
    model.Minimize(sum(prices) if at_most is None else sum(used))
    solver: Any = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    status = solver.Solve(model)
    if status == cp_model.INFEASIBLE:
        return None
    assert status == cp_model.OPTIMAL
    best: int = round(solver.ObjectiveValue())
    return best
