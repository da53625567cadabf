"""Many different rests: as few are cut as will do."""

from dataclasses import replace
from random import Random

from trimlang.stock.checking.proof_check import doubts
from trimlang.stock.checking.verify import faults
from trimlang.stock.planner import plan_stock
from trimlang.stock.problem import Blank, Part, Plan, Problem, Status


def many_rests(rests: int, pieces: int) -> Problem:
    random = Random(5)
    lengths = random.sample(range(400, 3400), rests)
    return Problem(
        "base",
        tuple(Part(f"p{i}", random.randint(160, 2600)) for i in range(pieces)),
        tuple(Blank(f"r{i}", length, 0, 1, 1, True) for i, length in enumerate(lengths)),
        kerf=2,
    )


def test_of_many_free_rests_few_are_cut() -> None:
    problem = many_rests(900, 150)
    plan = plan_stock(problem)
    assert isinstance(plan, Plan)
    assert faults(plan) == ()
    assert (plan.cost, plan.status) == (0, Status.PROVEN)
    # the longest rests hold two pieces as a rule
    assert len(plan.sticks) <= 1.05 * plan.stick_bound


def test_a_proof_with_many_rests_at_a_price_is_checked_too() -> None:
    problem = many_rests(60, 20)
    priced = replace(
        problem,
        blanks=tuple(replace(one, price=one.length // 20 + 7) for one in problem.blanks),
    )
    plan = plan_stock(priced)
    assert isinstance(plan, Plan)
    assert faults(plan) == ()
    assert 0 < plan.bound <= plan.cost
    assert plan.status is not Status.PROVEN or doubts(plan) == ()
