"""What is proven about the trim's cost, in words that a customer understands."""

from __future__ import annotations

from fractions import Fraction

from trimlang.compiler import Result
from trimlang.planning.layout import TrimPlan
from trimlang.record import record
from trimlang.sheets.wording.quantities import Pen
from trimlang.stock.problem import Status


@record
class CostProofs:
    """What is proven about each trim's cost, in the order of the plans, and about all together.

    ``bound`` is what no plan of these pieces can go below.
    """

    trims: tuple[str, ...]
    together: str
    bound: str


def cost_proofs(result: Result, pen: Pen) -> CostProofs:
    """Return what is proven about the job's cost."""
    elsewhere = [_elsewhere(result, plan) for plan in result.plans]
    free = [saves for saves in elsewhere if saves is not None]
    # The plans' bounds hold for the pieces as they are cut; other joints could go this much lower.
    bound = result.bound - sum(free, Fraction(0))
    if any(plan.status is not Status.PROVEN for plan in result.plans):
        together = _gap(result.cost, bound, pen)
    else:
        together = _proven(sum(free, Fraction(0)) if free else None, pen)
    return CostProofs(
        trims=tuple(
            _proven(saves, pen)
            if plan.status is Status.PROVEN
            else _gap(plan.cost, plan.bound, pen)
            for plan, saves in zip(result.plans, elsewhere, strict=True)
        ),
        together=together,
        bound=pen.cost(bound),
    )


def _elsewhere(result: Result, plan: TrimPlan) -> Fraction | None:
    """Return the most that other joints could save on a proven plan; None: no joint is free."""
    free = tuple(one for one in result.splices if one.could_differ and one.trim.name == plan.trim)
    # Once the saw has started the joints are fixed by what is cut, and a plan that is not proven
    # says its gap anyway.
    if not free or result.progress is not None or plan.status is not Status.PROVEN:
        return None
    least = Fraction(0) if plan.anywhere is None else plan.anywhere
    return max(plan.cost - least, Fraction(0))


def _proven(elsewhere: Fraction | None, pen: Pen) -> str:
    """Say whether other joints could make a proven plan cheaper."""
    if elsewhere is None:
        return pen.of_cost("Proven: no other choice of sticks costs less.")
    if not elsewhere:
        return pen.of_cost(
            "Proven: no other choice of sticks costs less, wherever the long walls are pieced"
            " together."
        )
    return pen.of_cost(
        "Proven with the long walls pieced together as shown: no other choice of sticks costs"
        " less. Whether joints in other places would save anything is not known: {gap} at most.",
        gap=pen.cost(elsewhere),
    )


def _gap(cost: Fraction, bound: Fraction, pen: Pen) -> str:
    if cost == bound:
        return _proven(None, pen)
    return pen.of_cost(
        "Not proven: a cheaper choice of sticks may exist. None costs less than {bound}; this one"
        " costs {gap} more than that.",
        bound=pen.cost(bound),
        gap=pen.cost(cost - bound),
    )
