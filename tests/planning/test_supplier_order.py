"""Suppliers who sell so much of all their trims together, or nothing."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import product
from random import Random

import pytest

from trimlang.compiler import Result, check_job, compile_job
from trimlang.sheets.render.pages import render_sheets
from trimlang.stock.problem import Status

MOST = 75
"""No least order of these jobs costs more."""
TRIM = "trim {name}: 1/2 in thick, 3 in tall\n"
SELLS = 'stock {name}: from "Hill Lumber", 48 in at {short}.00, 72 in at {long}.00{least}\n'


def job(least: str, prices: dict[str, tuple[int, int]], runs: dict[str, list[int]]) -> str:
    """A room with so many runs of each trim (inches); the first trim's line says the least."""
    lines = ["spare 0 %\n", *(TRIM.format(name=name) for name in prices)]
    for name, (short, long) in prices.items():
        lines.append(SELLS.format(name=name, short=short, long=long, least=least))
        least = ""
    lines.append('room "R", open walk\n')
    lines += [
        f"  {name}{at}: {long} in, trim {name}, left=butt, right=butt\n"
        for name, lengths in runs.items()
        for at, long in enumerate(lengths)
    ]
    return "".join(lines)


def spent(result: Result) -> Fraction:
    return sum(
        (one.cost for plan in result.plans for one in plan.bought if not one.on_hand), Fraction(0)
    )


def least_of_every_order(
    least: int, prices: dict[str, tuple[int, int]], runs: dict[str, list[int]], *, money: bool
) -> int:
    """What every order costs at least, by trying them all: up to fifteen of each stick."""
    reached = {(0, 0)}
    for name, (short, long) in prices.items():
        own = {
            (short * a + long * b, a + b)
            for a, b in product(range(16), repeat=2)
            if short * a + long * b <= MOST and holds(runs[name], [48] * a + [72] * b)
        }
        reached = {(c + its, n + more) for c, n in reached for its, more in own if c + its <= MOST}
    return min(cost for cost, sticks in reached if (cost if money else sticks) >= least)


def holds(lengths: list[int], sticks: list[int]) -> bool:
    """Tell whether the lengths can be cut; an eighth is lost to each cut."""
    if not lengths:
        return True
    first, *rest = sorted(lengths, reverse=True)
    return any(
        first <= stick and holds(rest, [*sticks[:at], max(stick - first - 1, 0), *sticks[at + 1 :]])
        for at, stick in enumerate(sticks)
    )


def cases() -> Iterator[tuple[str, int, dict[str, tuple[int, int]], dict[str, list[int]], bool]]:
    for seed in range(20):
        random = Random(seed)
        names = ("base", "shoe", "rail")[: random.choice((2, 2, 3))]
        prices = {}
        for name in names:
            short = random.randint(3, 9)
            prices[name] = (short, short + random.randint(1, 5))
        runs = {
            n: [random.choice((21, 35, 42)) for _ in range(random.choice((1, 2)))] for n in names
        }
        money = random.random() < 0.7
        least = random.randint(10, 40) if money else random.randint(2, 7)
        text = f", at least {least}.00 in all" if money else f", at least {least} sticks in all"
        yield job(text, prices, runs), least, prices, runs, money


def test_beside_every_order_of_small_jobs() -> None:
    """An order is large enough, no bound above the least cost; proven it is the least."""
    proven = dearer = 0
    for text, least, prices, runs, money in cases():
        result = compile_job(text)
        assert not result.diagnostics
        best = least_of_every_order(least, prices, runs, money=money)
        assert result.bound <= best <= result.cost == spent(result)
        count = sum(one.sticks for plan in result.plans for one in plan.bought)
        assert (spent(result) if money else count) >= least
        surely = all(plan.status is Status.PROVEN for plan in result.plans)
        assert result.cost == best or not surely
        proven += surely
        dearer += result.cost > best
    assert proven >= 18
    assert dearer <= 2


PRICES = {"base": (6, 9), "shoe": (2, 3)}
RUNS = {"base": [40], "shoe": [40]}


def test_the_cheapest_trim_fills_the_order_up_and_the_sheets_tell_it() -> None:
    result = compile_job(job(", at least 15.00 in all", PRICES, RUNS))
    base, shoe = result.plans
    # 6 + 2 is met by 7 more: three of 2 and a 3 are dearer than 2 + 2 + 3
    assert (base.cost + shoe.cost, base.status, shoe.status) == (15, Status.PROVEN, Status.PROVEN)
    assert sum(map(len, (base.filled_up, shoe.filled_up))) == sum(
        one.sticks for plan in result.plans for one in plan.bought
    ) - sum(len(plan.sticks) for plan in result.plans)
    pages = render_sheets(result)
    assert "15.00 in all of Hill Lumber" in pages["stock-order"]
    assert "bought for the least order" in pages["order-explained"]


def test_an_order_that_is_large_enough_stays_as_it_is() -> None:
    plain, least = (compile_job(job(text, PRICES, RUNS)) for text in ("", ", at least 8.00 in all"))
    assert plain.plans == least.plans
    # and what is in the shop needs no yard
    text = job(", at least 90.00 in all", PRICES, RUNS)
    shop = compile_job(f"on-hand base: 2 of 60 in\non-hand shoe: 60 in\n{text}")
    assert (shop.cost, shop.problems if hasattr(shop, "problems") else ()) == (0, ())


@pytest.mark.parametrize(
    ("stock", "code"),
    [
        ("stock base: 48 in at 6.00, at least 20.00 in all", "T493"),
        (
            'stock base: from "H", 48 in at 6.00, at least 20.00 in all\n'
            'stock shoe: from "H", 48 in at 2.00, at least 30.00 in all',
            "T494",
        ),
        ('stock base: from "H", 48 in at 6.00, at least 20 in all', "T468"),
    ],
)
def test_what_no_least_order_can_be(stock: str, code: str) -> None:
    trims = TRIM.format(name="base") + TRIM.format(name="shoe")
    room = 'room "R", trim base, open walk\n  N: 40 in, left=butt, right=butt\n'
    found = [one.code for one in check_job(f"{trims}{stock}\n{room}").diagnostics]
    assert code in found


def test_a_supplier_who_has_not_so_much() -> None:
    text = job(", at least 99.00 in all", PRICES, RUNS).replace(".00,", ".00 at most 2,")
    text = text.replace("9.00\n", "9.00 at most 2\n").replace("3.00\n", "3.00 at most 2\n")
    text = text.replace("9.00, at least", "9.00 at most 2, at least")
    assert "T495" in {one.code for one in compile_job(text).diagnostics}


def test_once_the_log_says_that_sticks_were_bought_the_least_order_is_met() -> None:
    text = job(", at least 15.00 in all", PRICES, RUNS)
    # a count of the shop's scraps is no purchase
    counted = compile_job(f"{text}rack base: 20 in\n")
    assert (counted.cost, spent(counted)) == (15, 15)
    # what is cut was bought
    begun = compile_job(f"{text}cut R-base0-base\n")
    assert begun.cost == 8
    bought = compile_job(f"{text}bought 1 base 48 in\n")
    assert bought.cost == 8
    assert bought.progress is not None
    assert (bought.progress.spent, bought.progress.to_buy) == (6, 2)
