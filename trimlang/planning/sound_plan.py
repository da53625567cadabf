"""A stock plan that other eyes have looked at: the verifier at the plan, the check at its proof."""

from __future__ import annotations

from trimlang.planning.wrong_plan import reject_faults
from trimlang.stock.planner import FULL, Effort, plan_stock
from trimlang.stock.problem import NoPlan, Plan, Problem, Watch
from trimlang.stock.proof_check import checked_plan
from trimlang.stock.verify import faults


def sound_plan(
    problem: Problem, *, effort: Effort = FULL, watch: Watch | None = None
) -> Plan | NoPlan:
    """The planner's answer; its bound is kept only where its certificate shows it.

    Raises:
        WrongPlanError: the independent verifier rejects the plan.
    """
    plan = plan_stock(problem, effort=effort, watch=watch)
    if isinstance(plan, NoPlan):
        return plan
    reject_faults(problem.trim, faults(plan))
    return checked_plan(plan)
