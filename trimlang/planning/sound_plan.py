"""A stock plan that has been checked: the plan by the verifier, its bound by the proof check."""

from __future__ import annotations

from trimlang.planning.wrong_plan import reject_faults
from trimlang.stock.planner import FULL, Effort, plan_stock
from trimlang.stock.problem import NoPlan, Plan, Problem, Watch
from trimlang.stock.proof_check import checked_plan
from trimlang.stock.verify import faults


def sound_plan(
    problem: Problem, *, effort: Effort = FULL, watch: Watch | None = None
) -> Plan | NoPlan:
    """Return the planner's answer; its bound is kept only as far as its certificate shows it.

    Raises:
        WrongPlanError: the independent verifier rejects the plan.
    """
    plan = plan_stock(problem, effort=effort, watch=watch)
    if isinstance(plan, NoPlan):
        return plan
    reject_faults(problem.trim, faults(plan))
    return checked_plan(plan)
