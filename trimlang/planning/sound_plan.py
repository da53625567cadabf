"""A stock plan that has been checked: the plan by the verifier, its bound by the proof check."""

from __future__ import annotations

from trimlang.planning.minimum_order import with_minimum
from trimlang.planning.one_batch import with_batches
from trimlang.planning.sold_together import with_bundles
from trimlang.planning.wrong_plan import reject_faults
from trimlang.stock.checking.proof_check import checked_plan
from trimlang.stock.checking.verify import faults
from trimlang.stock.planner import FULL, Effort, plan_stock
from trimlang.stock.problem import NoPlan, Plan, Problem, Watch


def sound_plan(
    problem: Problem, *, effort: Effort = FULL, watch: Watch | None = None
) -> Plan | NoPlan:
    """Return the planner's answer; its bound is kept only as far as its certificate shows it.

    What the planner does not know of (a yard's minimum, bundles, batches) is put to it as problems
    that it knows; the bound is what their checked bounds come to.

    Raises:
        WrongPlanError: the independent verifier rejects the plan.
    """
    # One layer inside the other: each takes its rule off and asks again, and the innermost problem
    # is one that the planner knows.
    if problem.has_minimum:
        plan = with_minimum(problem, effort, watch, sound_plan)
    elif problem.has_bundles:
        plan = with_bundles(problem, effort, watch, sound_plan)
    elif problem.has_batches:
        plan = with_batches(problem, effort, watch, sound_plan)
    else:
        plan = plan_stock(problem, effort=effort, watch=watch)
        plan = plan if isinstance(plan, NoPlan) else checked_plan(plan)
    if isinstance(plan, NoPlan):
        return plan
    reject_faults(problem.trim, faults(plan))
    return plan
