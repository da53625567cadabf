"""What a yard sells of a trim at least, as the file says it and the order tells it."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.jobs import BASE
from trimlang.compiler import check_job, compile_job
from trimlang.sheets.render.pages import render_sheets
from trimlang.stock.problem import Status

ROOM = 'room "R", trim base, open walk\n  N: 90 in, left=butt, right=butt\n'


def job(stock: str) -> str:
    return f"{BASE}\n{stock}\nspare 0 %\n{ROOM}"


@pytest.mark.parametrize(
    ("stock", "cost"),
    [
        ("stock base: 8 ft at 11.60, 12 ft at 17.40", "11.60"),
        ("stock base: 8 ft at 11.60, 12 ft at 17.40, at least 3 sticks", "34.80"),
        ("stock base: at least 40.00, 8 ft at 11.60, 12 ft at 17.40", "40.60"),
        ("stock base: at least $40, 8 ft at 11.60, 12 ft at 17.40", "40.60"),
        ("stock base: 8 ft at 11.60, 12 ft at 17.40\nstock base: at least 1 stick", "11.60"),
    ],
)
def test_the_order_is_filled_up_and_proven(stock: str, cost: str) -> None:
    result = compile_job(job(stock))
    assert not result.diagnostics
    (plan,) = result.plans
    assert (plan.cost, plan.status) == (Fraction(cost), Status.PROVEN)


@pytest.mark.parametrize(
    ("stock", "code"),
    [
        ("stock base: 12 ft at 17.40, at least 10", "T468"),
        ("stock base: 12 ft, at least 10.00", "T469"),
        ("stock base: 12 ft at 17.40, at least 0 sticks", "T235"),
        ("stock base: 8 ft at 0.01, 12 ft at 17.40, at least 100.01", "T235"),
        ('stock base: from "Yard", pack of 2 12 ft at 0.02, at least 100.01 in all', "T235"),
        ("stock base: pack of 4 12 ft at 60.00 at most 9, at least 9 sticks", "T470"),
        ("stock base: 12 ft at 17.40 at most 2, at least 40.00", "T470"),
    ],
)
def test_what_no_order_can_be(stock: str, code: str) -> None:
    assert [one.code for one in check_job(job(stock)).diagnostics] == [code]


def test_the_sheets_tell_it() -> None:
    pages = render_sheets(compile_job(job("stock base: 8 ft at 11.60, at least 3 sticks")))
    order, reasons = pages["stock-order"], pages["order-explained"]
    assert "least order <b>3 sticks</b>" in order
    assert "3 sticks" in reasons
    # Beside the usual way of cutting it would look dear.
    assert "the usual way instead" not in reasons


def test_once_sticks_were_bought_the_least_order_is_met() -> None:
    text = job("stock base: 8 ft at 11.60, at least 3 sticks")
    two = text + "  E: 80 in, left=butt, right=butt\n"
    result = compile_job(f"{two}bought 1 base 8 ft\n")
    assert not result.diagnostics
    assert result.cost == Fraction("23.20")
