"""Sticks of random length that are sold together: the whole bundle or none of it."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from random import Random

import pytest

from tests.conftest import examples
from tests.jobs import BASE
from tests.planning.beside_trying import held, least_cost
from tests.stock.jobs import small_of_every_shape
from trimlang.compiler import check_job, compile_job
from trimlang.planning.sound_plan import sound_plan
from trimlang.sheets.render.pages import render_sheets
from trimlang.stock.checking.verify import faults
from trimlang.stock.problem import Blank, NoPlan, Problem, Purchase, Status


def with_a_bundle(seed: int) -> Problem:
    """A small problem, and a bundle of two lengths, sometimes with a least order besides."""
    random = Random(seed)
    problem = small_of_every_shape(seed)
    most = random.choice((None, 1))
    members = [
        Blank(
            f"m{number}",
            random.randint(60, 120),
            random.randint(10, 40),
            pack,
            None if most is None else most * pack,
            bundle="bundle",
        )
        for number, pack in enumerate((1, 2))
    ]
    least = random.choice((0, 0, 0, 4))
    return replace(problem, blanks=(*problem.blanks[:2], *members), least_sticks=least)


def test_beside_every_plan_of_small_jobs() -> None:
    """No bound is above what trying everything finds; what is called proven costs just that."""
    count = examples(80)
    found = held(map(with_a_bundle, range(count)), least_cost)
    assert found.proven >= 0.9 * found.met > 0.75 * count
    assert found.dearer <= 0.05 * found.met


def test_the_verifier_finds_a_bundle_bought_in_part() -> None:
    problem = Problem(
        "base",
        (),
        (Blank("a", 84, 10, 3, bundle="bundle-1"), Blank("b", 96, 12, 2, bundle="bundle-1")),
    )
    plan = sound_plan(problem)
    assert not isinstance(plan, NoPlan)
    part = replace(plan, purchases=(Purchase("a", 1),), cost=10)
    assert "bundle bundle-1 is bought in part" in faults(part)


ROOM = 'room "R", trim base, open walk\n'


def job(stock: str, *walls: str) -> str:
    runs = "".join(f"  {at}: {wall}, left=butt, right=butt\n" for at, wall in enumerate(walls, 1))
    return f"{BASE}\nstock base: {stock}\nspare 0 %\n{ROOM}{runs}"


def test_a_bundle_is_bought_where_it_is_cheaper() -> None:
    stock = "12 ft at 17.40, bundle of 3 of 7 ft, 2 of 10 ft at 50.00"
    walls = ("80 in", "82 in", "81 in", "118 in", "117 in")
    result = compile_job(job(stock, *walls))
    assert not result.diagnostics
    (plan,) = result.plans
    assert (plan.cost, plan.status) == (50, Status.PROVEN)
    assert [(one.length, one.pack, one.bundle) for one in plan.bought] == [
        (84, 3, 1),
        (120, 2, 1),
    ]
    # Three alone are cheaper bought one by one than as a bundle of five.
    assert compile_job(job(stock, *walls[:2])).plans[0].cost == Fraction("34.80")
    page = render_sheets(result)["stock-order"].replace("\u00a0", " ")
    assert "of bundle 1, sold whole" in page


@pytest.mark.parametrize(
    ("short", "long"),
    [
        ("pick from 3 of 7 ft, 2 of 10 ft at 1.20 a foot", "7 ft at 8.40 at most 3, 10 ft at 12"),
        ("pick from 3 of 7 ft, 2 of 10 ft at 9.00", "7 ft at 9.00 at most 3, 10 ft at 9.00"),
    ],
)
def test_a_list_to_pick_from_is_so_many_of_each(short: str, long: str) -> None:
    one, other = (check_job(job(text, "80 in")) for text in (short, f"{long} at most 2"))
    assert not one.diagnostics + other.diagnostics
    told = [[(o.length, o.price, o.at_most) for o in x.job.trims[0].offers] for x in (one, other)]
    assert told[0] == told[1]


def test_a_bundle_a_foot_costs_its_length() -> None:
    result = check_job(job("bundle of 1 of 7 ft, 2 of 10 ft at 1.20 a foot at most 2", "80 in"))
    assert not result.diagnostics
    assert [(one.price, one.at_most) for one in result.job.trims[0].offers] == [
        (Fraction("8.40"), 2),
        (24, 4),
    ]


def test_what_a_list_cannot_be() -> None:
    for stock, code in (
        ("bundle of 0 of 7 ft at 9.00", "T235"),
        ("bundle of 3 of 7 at 9.00", "T116"),
        ("pick from 3 of 7 ft at 9.00 at most 2", "T101"),
        ("bundle of 3 of 7 ft, 12 ft at 9.00", "T101"),
    ):
        assert code in [one.code for one in check_job(job(stock, "80 in")).diagnostics], stock
