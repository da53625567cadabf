"""Where the unit is too fine for tables, plans and bounds come from a coarser grid."""

from dataclasses import replace
from random import Random

import pytest

from tests.stock.every_plan import least_of_every_plan
from tests.stock.jobs import house, small_of_every_shape
from trimlang.stock import planner
from trimlang.stock.checking.proof_check import doubts
from trimlang.stock.checking.verify import faults
from trimlang.stock.coarser_grid import for_a_bound, for_a_plan
from trimlang.stock.planner import QUICK, plan_stock
from trimlang.stock.problem import Part, Plan, Problem

FINE = 127 * 5
"""So many units in the 1/32 in of a job hold its millimetres too."""


def in_millimetres_too(problem: Problem) -> Problem:
    """Return the problem in finer units, with sticks a few of them longer or shorter."""
    random = Random(1)

    def finer(part: Part) -> Part:
        leans = FINE * part.left_lean, FINE * part.right_lean
        return Part(part.id, FINE * part.length, *leans)

    return replace(
        problem,
        parts=tuple(map(finer, problem.parts)),
        blanks=tuple(
            replace(blank, length=FINE * blank.length + random.randint(-300, 300))
            for blank in problem.blanks
        ),
        kerf=FINE * problem.kerf,
        end_waste=FINE * problem.end_waste,
        spare=FINE * problem.spare,
    )


def test_a_plan_in_a_fine_unit_is_cheaper_than_the_quick_one_and_near_its_bound() -> None:
    problem = in_millimetres_too(house(60, seed=1))
    plan, quick = plan_stock(problem), plan_stock(problem, effort=QUICK)
    assert isinstance(plan, Plan)
    assert isinstance(quick, Plan)
    assert faults(plan) == ()
    assert plan.cost < quick.cost
    assert plan.gap * 100 < plan.cost


def test_a_finer_grid_is_tried_where_the_first_leaves_a_gap(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    problem = replace(house(20, seed=2), spare=0)
    monkeypatch.setattr(planner, "CELLS", 100_000)
    gaps = []
    for grids in ((2_000,), (2_000, 60_000)):
        monkeypatch.setattr(planner, "GRIDS", grids)
        plan = plan_stock(problem)
        assert isinstance(plan, Plan)
        assert faults(plan) == ()
        assert doubts(plan) == ()
        gaps.append(plan.gap)
    assert gaps[0] > gaps[1] == 0


@pytest.mark.parametrize("step", [2, 3, 7])
def test_rounding_errs_to_the_side_that_it_says(step: int) -> None:
    for seed in range(60):
        problem = small_of_every_shape(seed)
        least = least_of_every_plan(problem)
        above = least_of_every_plan(for_a_plan(problem, step))
        below = least_of_every_plan(for_a_bound(problem, step))
        assert least is not None
        assert below is not None
        assert below[0] <= least[0]
        assert above is None or least[0] <= above[0]
