"""Joints that no wall needs: made where they save more than their price, and nowhere else."""

from fractions import Fraction
from random import Random

import pytest

from tests.conftest import at_night
from tests.jobs import BASE, TWELVE_FEET
from trimlang.compiler import Result, compile_job
from trimlang.planning.ask import Asking
from trimlang.planning.more_joints import cut_in
from trimlang.planning.placing import with_places
from trimlang.stock.planner import QUICK, plan_stock
from trimlang.stock.problem import Plan

HEAD = f"{BASE}\nspare 0 %\n{TWELVE_FEET}\n"
ROOM = 'room "R", trim base, open walk\n'


def walls(*inches: int, facts: str = "") -> str:
    runs = (f"N{n}: {one} in, left=butt, right=butt{facts}\n" for n, one in enumerate(inches))
    return ROOM + "bare 1 ft\n".join(runs)


def planned(text: str) -> Result:
    result = compile_job(text)
    assert result.ok, result.diagnostics
    return result


def test_a_joint_that_saves_a_stick_is_made() -> None:
    # 100, 100 and 80 in: three sticks of 144 in, or two with one of them in two pieces
    result = planned(HEAD + "splices: a joint costs 3.00\n" + walls(100, 100, 80))
    (plan,) = result.plans
    assert plan.cost == 2 * Fraction("17.40")
    assert (plan.added.joints, plan.added.saved) == (1, Fraction("17.40"))
    assert [piece.id for piece in result.pieces] == [
        "R-N0-base",
        "R-N1-base-a",
        "R-N1-base-b",
        "R-N2-base",
    ]
    # the scarf's lap, 9/16 in at 45°, is counted once
    assert sum(piece.length for piece in result.pieces) == 280 + Fraction(9, 16)


@pytest.mark.parametrize(
    ("setting", "facts"),
    [
        ("", ""),
        ("splices: a joint costs 17.40\n", ""),
        ("splices: a joint costs 3.00, least 60 in\n", ""),
        ("splices: a joint costs 3.00, never\n", ""),
        ("splices: a joint costs 3.00\n", ", first stud 5 in"),
    ],
    ids=["no price", "too dear", "too short", "never", "studs"],
)
def test_no_joint_without_a_price_or_against_the_file(setting: str, facts: str) -> None:
    (plan,) = planned(HEAD + setting + walls(100, 100, 80, facts=facts)).plans
    assert plan.cost == 3 * Fraction("17.40")
    assert not plan.added.joints


def test_a_quick_plan_makes_none() -> None:
    text = HEAD + "splices: a joint costs 3.00\n" + walls(100, 100, 80)
    assert len(compile_job(text, effort=QUICK).pieces) == 3


def small_job(seed: int) -> tuple[str, int]:
    random = Random(seed)
    inches = [random.randint(30, 140) for _ in range(random.randint(2, 4))]
    stock = random.choice(("144 in at 14.40", "96 in at 9.00, 144 in at 14.00"))
    price = random.choice((1, 3, 5))
    return (
        "trim base: 1 in thick, 5 in tall\nspare 0 %\nround to 1/2 in\nsaw: kerf 0 in\n"
        f"stock base: {stock}\nsplices: a joint costs {price}\n" + walls(*inches)
    ), price


@pytest.mark.parametrize("seed", [0, 18, *at_night((12, 29))])
def test_no_place_for_one_joint_is_better(seed: int) -> None:
    """Every place, an inch apart, in any one wall is planned in full."""
    text, price = small_job(seed)
    result, usual = planned(text), planned(text.replace("splices:", "# splices:"))
    (plan,) = result.plans
    asking, pieces = Asking(result.job, result.job.trim("base")), usual.pieces
    best = usual.cost
    for run in result.splices:
        (whole,) = run.cut
        for first in range(24, int(whole + run.lap) // 2 + 1):
            cut = cut_in(run, (whole + run.lap - first, Fraction(first)))
            assert cut is not None
            asked = asking.about(with_places(pieces, (run,), {run.whole.id: cut}))
            other = plan_stock(asked.problem)
            assert isinstance(other, Plan)
            best = min(best, Fraction(other.cost, asked.per_coin) + price)
    assert plan.cost + price * plan.added.joints <= best
