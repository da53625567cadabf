"""The check of a proof: what it lets pass, and what it refuses."""

from dataclasses import replace

import pytest

from tests.conftest import at_night
from tests.stock.every_plan import least_of_every_plan
from tests.stock.jobs import house, small_of_every_shape, triplets
from trimlang.stock.certificate import Certificate
from trimlang.stock.checking.proof_check import checked_plan, doubts
from trimlang.stock.checking.stick_tops import StickTops
from trimlang.stock.planner import plan_stock
from trimlang.stock.problem import Blank, Part, Plan, Problem, Status

ASKED = 8 * 46, 8 * 77, 8 * 82, 8 * 76, 8 * 57
TWO_PRICES = Problem(
    "base",
    tuple(Part(f"p{i}", length) for i, length in enumerate(ASKED)),
    (
        Blank("free", 8 * 84, 0, limit=2, on_hand=True),
        Blank("rest", 8 * 84, 4500, limit=6, on_hand=True),
        Blank("short", 8 * 112, 3100),
        Blank("long", 8 * 117, 4500),
    ),
    kerf=1,
)
"""One length for nothing and at a price: a dearer plan was once called the cheapest."""


def mitred(problem: Problem) -> Problem:
    leans = [(18, -18), (18, 18), (-18, 0), (0, -18), (-18, 18)]
    return replace(
        problem,
        parts=tuple(
            replace(part, left_lean=leans[i % 5][0], right_lean=leans[i % 5][1])
            for i, part in enumerate(problem.parts)
        ),
    )


def planned(problem: Problem) -> Plan:
    plan = plan_stock(problem)
    assert isinstance(plan, Plan)
    return plan


SHAPES = {
    "few pieces": house(40, 3),
    "patterns": house(130, 4),
    "mitres": mitred(house(110, 5)),
    "spare": replace(house(90, 6), spare=2 * 12 * 384),
    "one stick": triplets(12, 7),
    "two prices": TWO_PRICES,
    "a rack that no pattern is left for": small_of_every_shape(700_975),
}


@pytest.mark.parametrize("name", SHAPES)
def test_what_is_proven_passes(name: str) -> None:
    plan = planned(SHAPES[name])
    assert plan.status is Status.PROVEN
    assert doubts(plan) == ()
    assert checked_plan(plan) == plan


@pytest.mark.parametrize("name", SHAPES)
def test_a_bound_raised_by_a_coin_is_refused(name: str) -> None:
    plan = planned(SHAPES[name])
    assert plan.certificate is not None
    more = plan.bound + 1
    claimed = replace(
        plan, cost=more, bound=more, certificate=replace(plan.certificate, bound=more)
    )
    assert doubts(claimed)
    shown = checked_plan(claimed)
    assert shown.status is not Status.PROVEN
    assert shown.bound < more
    assert shown.doubt


def without_need(certificate: Certificate) -> Certificate:
    """The same where every worth says that no stick is worth half as much as it can be."""
    return replace(
        certificate,
        worths=tuple(
            replace(worth, of_length=tuple(top // 2 for top in worth.of_length))
            for worth in certificate.worths
        ),
    )


def with_dearer_pieces(certificate: Certificate) -> Certificate:
    return replace(
        certificate,
        worths=tuple(
            replace(worth, of_shape=tuple(2 * value + 1 for value in worth.of_shape))
            for worth in certificate.worths
        ),
    )


@pytest.mark.parametrize("name", SHAPES)
@pytest.mark.parametrize("tampered", [without_need, with_dearer_pieces])
def test_a_worth_that_is_not_true_is_refused(name: str, tampered) -> None:
    plan = planned(SHAPES[name])
    assert plan.certificate is not None
    assert any(
        "can be worth more" in one
        for one in doubts(replace(plan, certificate=tampered(plan.certificate)))
    )


@pytest.mark.parametrize("name", SHAPES)
def test_a_certificate_that_leaves_something_out_is_refused(name: str) -> None:
    plan = planned(SHAPES[name])
    whole = plan.certificate
    assert whole is not None
    parts = [
        None,
        replace(whole, worths=()),
        replace(whole, bound=whole.bound - 1),
        replace(whole, lengths=whole.lengths[1:]),
        replace(whole, shapes=whole.shapes[1:]),
        replace(whole, shapes=(whole.shapes[0], *whole.shapes[:-1])),
    ]
    for part in parts:
        assert doubts(replace(plan, certificate=part))


def test_the_dearer_plan_of_two_prices_is_not_called_the_cheapest() -> None:
    plan = planned(TWO_PRICES)
    assert plan.cost == 6200
    assert plan.certificate is not None
    claimed = replace(
        plan, cost=12400, bound=12400, certificate=replace(plan.certificate, bound=12400)
    )
    assert any("rules out" in one for one in doubts(claimed))


@pytest.mark.parametrize("first", [*range(0, 150, 50), *at_night(range(150, 400, 50))])
def test_no_check_lets_more_than_the_least_cost_pass(first: int) -> None:
    """Small jobs of every shape: the certificate shows the least cost, and no coin more."""
    for seed in range(first, first + 50):
        problem = small_of_every_shape(seed)
        plan = planned(problem)
        least = least_of_every_plan(problem)
        assert least is not None
        assert doubts(plan) == (), seed
        assert plan.certificate is not None
        more = replace(plan, bound=least[0] + 1, cost=least[0] + 1)
        claim = replace(plan.certificate, bound=least[0] + 1)
        assert doubts(replace(more, certificate=claim)), seed


def test_nothing_lies_on_a_stick_that_cannot_be_had() -> None:
    # The short one shares as much as it measures with the one before it.
    tops = StickTops({(50, -6, 0): 1, (6, -6, -6): 1}, [60, -1], kerf=0)
    assert tops.lightest == [50, 0]
    assert tops.hold((10_000, 5_000), (15_000, 0))
    assert not tops.hold((10_000, 5_000), (14_999, 0))
