"""Hold plans of small problems against what trying everything finds."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from tests.stock.every_plan import least_of_every_plan
from trimlang.planning.sound_plan import sound_plan
from trimlang.stock.checking.verify import faults
from trimlang.stock.problem import NoPlan, Problem, Status


@dataclass(frozen=True)
class Held:
    """How many problems have a plan, of how many it is proven, and of how many it is too dear."""

    met: int
    proven: int
    dearer: int


def held(problems: Iterable[Problem], least: Callable[[Problem], int | None]) -> Held:
    """Plan each problem; ``least`` is what trying everything finds, None where there is no plan.

    No bound is above the least cost, no plan below it, and what has a plan gets one.
    """
    met = proven = dearer = 0
    for seed, problem in enumerate(problems):
        best, plan = least(problem), sound_plan(problem)
        if isinstance(plan, NoPlan):
            assert best is None, seed
            continue
        assert faults(plan) == ()
        assert best is not None
        assert plan.bound <= best <= plan.cost, seed
        met += 1
        proven += plan.status is Status.PROVEN
        dearer += plan.cost > best
    return Held(met, proven, dearer)


def least_cost(problem: Problem) -> int | None:
    """Return the least cost of every plan that there is, None where there is none."""
    best = least_of_every_plan(problem)
    return None if best is None else best[0]
