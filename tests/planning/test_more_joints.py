"""Joints that no wall needs: made where they save more than their price, and nowhere else."""

from fractions import Fraction
from random import Random

import pytest

from tests.conftest import at_night
from tests.jobs import BASE, CROWN, TWELVE_FEET
from trimlang.compiler import Result, compile_job
from trimlang.planning.ask import Asking
from trimlang.planning.more_joints import cuts_on_studs
from trimlang.planning.placing import with_places
from trimlang.planning.wall_in_units import cut_in
from trimlang.sheets.export.plan_json import least_words
from trimlang.stock.planner import QUICK, plan_stock
from trimlang.stock.problem import Plan

HEAD = f"{BASE}\nspare 0 %\n{TWELVE_FEET}\n"
COARSE = "trim base: 1 in thick, 5 in tall\nspare 0 %\nround to 1/2 in\nsaw: kerf 1/8 in\n"
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
        ("splices: a joint costs 3.00, studs every 70 in\n", ", first stud 5 in"),
    ],
    ids=["no price", "too dear", "too short", "never", "no stud there"],
)
def test_no_joint_without_a_price_or_against_the_file(setting: str, facts: str) -> None:
    (plan,) = planned(HEAD + setting + walls(100, 100, 80, facts=facts)).plans
    assert plan.cost == 3 * Fraction("17.40")
    assert not plan.added.joints


def test_where_studs_are_known_the_joint_is_on_one() -> None:
    text = HEAD + "splices: a joint costs 3.00\n" + walls(100, 100, 80, facts=", first stud 5 in")
    result = planned(text)
    (plan,) = result.plans
    assert (plan.cost, plan.added.joints) == (2 * Fraction("17.40"), 1)
    first = next(piece for piece in result.pieces if piece.part == 1 and piece.parts == 2)
    # the joint's middle lies half its lap, 9/32 in, before the end of the piece; within a mark
    beside = (first.length - Fraction(9, 32) - 5) % 16
    assert min(beside, 16 - beside) < Fraction(1, 16)


def test_joints_on_two_studs_pay_for_themselves_one_by_one() -> None:
    """Each joint has to save more than its price beside the other."""
    stock = "stock base: 120 in at 12.00, 144 in at 15.00\non-hand base: 1 of 69 in\n"
    rooms = ROOM + "bare 1 ft\n".join(
        f"  N{n}: {one} in, left=butt, right=butt, first stud {stud} in\n"
        for n, (one, stud) in enumerate(((131, 9), (109, 11), (72, 3)))
    )
    (plan,) = planned(f"{COARSE}{stock}splices: a joint costs 1.00\n{rooms}").plans
    assert plan.cost + plan.added.joints == 28


def test_what_rounding_leaves_makes_no_part_too_short() -> None:
    """The last part takes it up: the longer one where the other is as short as may be."""
    stock = "stock base: 144 in at 14.40\non-hand base: 2 of 69 in\nsplices: a joint costs 3.00\n"
    rooms = "  N: 88 in, left=butt, right=out-corner\n  E: 88 in, left=out-corner, right=butt\n"
    (plan,) = planned(COARSE + stock + ROOM + rooms).plans
    assert plan.cost + 3 * plan.added.joints == Fraction("17.40")


def test_what_other_joints_could_save_is_told() -> None:
    """With a joint that no program finds, and on another stud, less may do: nothing says no."""
    stock = "stock base: 96 in at 9.00, 144 in at 14.00\n"
    studs = ", first stud {} in\nbare 1 ft\n"
    rooms = ROOM + (
        f"  N0: 167 in, left=butt, right=butt{studs.format(13)}"
        f"  N1: 150 in, left=butt, right=butt{studs.format(10)}"
        "  S0: 138 in, left=butt, right=butt\nbare 1 ft\n  S1: 101 in, left=butt, right=butt\n"
    )
    joint = HEAD + "splices: a joint costs 3.00\n" + walls(100, 100, 120)
    for text in (COARSE + stock + rooms, joint):
        result = planned(text)
        (plan,) = result.plans
        assert plan.anywhere is not None
        assert plan.anywhere < plan.cost
        assert "no plan of these pieces costs less" in least_words(result)


def test_crown_gets_none() -> None:
    text = f"{CROWN}\nspare 0 %\nstock crown: 12 ft at 17.40\nsplices: a joint costs 3.00\n"
    (plan,) = planned(text + walls(100, 100, 80).replace("trim base", "trim crown")).plans
    assert plan.cost == 3 * Fraction("17.40")
    assert not plan.added.joints


BOUGHT = "bought 2 base 12 ft at 17.40\n"
PART_B = f"{BOUGHT}cut R-N1-base-b 36 3/4 in from base-2 of 12 ft\n"
PART_A = f"{BOUGHT}cut R-N1-base-a 63 13/16 in from base-2 of 12 ft\n"


def test_a_joint_stays_through_a_site_log() -> None:
    """What is cut already and what is left are planned again with the joint that was made."""
    text = HEAD + "splices: a joint costs 3.00\n" + walls(100, 100, 80)
    for log in (f"{BOUGHT}cut R-N0-base, R-N1-base-b\n", PART_B):
        under_way = planned(text + log)
        assert [one.id for one in under_way.pieces] == [one.id for one in planned(text).pieces]
        assert under_way.progress is not None
        assert under_way.progress.is_cut("R-N1-base-b")
        (plan,) = under_way.plans
        assert plan.cost == 0


def test_a_third_part_is_known_to_the_log() -> None:
    """Two sticks of 12 ft would do; three of 8 ft cost less, with the joint."""
    head = f"{BASE}\nspare 0 %\nstock base: 8 ft at 4.00, 12 ft at 17.40\n"
    text = head + "splices: a joint costs 3.00\n" + walls(200)
    (plan,) = planned(text).plans
    assert (plan.cost, plan.added.joints) == (12, 1)
    for line in ("cut R-N0-base-c\n", "cut R-N0-base-c 61 1/2 in from base-3 of 8 ft\n"):
        result = planned(f"{text}bought 3 base 8 ft at 4.00\n{line}")
        assert len(result.pieces) == 3
        assert result.progress is not None
        assert (result.progress.spent, result.progress.to_buy) == (12, 0)


def test_a_wall_that_was_cut_stays_as_it_was_cut() -> None:
    """The third wall is longer now, and no joint pays any more; or a price for one is new."""
    head = HEAD + "splices: a joint costs 3.00\n"
    for part in (PART_A, PART_B):
        longer = planned(head + walls(100, 100, 120) + part)
        assert [one.length for one in longer.pieces if one.run == "N1"] == [
            Fraction("63.8125"),
            Fraction("36.75"),
        ]
    # a part that would leave less than a lap for the other moves no joint
    slip = compile_job(head + walls(100, 100, 80) + PART_A.replace("63 13/16", "100 1/2"))
    assert [one.length for one in slip.pieces if one.id == "R-N1-base-b"] == [Fraction("36.75")]
    whole = planned(head + walls(100, 100, 80) + f"{BOUGHT}cut R-N1-base\n")
    assert [one.id for one in whole.pieces if one.run == "N1"] == ["R-N1-base"]


@pytest.mark.parametrize(
    ("said", "whole"),
    [("", False), (" from base-2 of 12 ft", False), (" 36 3/4 in from base-2 of 12 ft", True)],
)
def test_a_part_that_no_plan_has_is_told(said: str, whole: bool) -> None:
    head = HEAD if whole else HEAD + "splices: a joint costs 3.00\n"
    result = compile_job(f"{head}{walls(100, 100, 120)}{BOUGHT}cut R-N1-base-b{said}\n")
    told = [one.message for one in result.diagnostics if "R-N1-base-b" in one.message]
    assert len(told) == 1
    assert result.ok == whole


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


def test_no_stud_for_one_joint_is_better_by_the_quick_plan() -> None:
    """Every stud of any one wall is planned in full."""
    for seed in range(6):
        text, price = small_job(seed)
        text = text.replace("right=butt", f"right=butt, first stud {5 + seed} in")
        result, usual = planned(text), planned(text.replace("splices:", "# splices:"))
        asking, best = Asking(result.job, result.job.trim("base")), usual.cost
        for run in result.splices:
            for cut in cuts_on_studs(run):
                asked = asking.about(with_places(usual.pieces, (run,), {run.whole.id: cut}))
                other = plan_stock(asked.problem)
                assert isinstance(other, Plan)
                best = min(best, Fraction(other.cost, asked.per_coin) + price)
        (plan,) = result.plans
        assert plan.bound <= plan.cost
        assert plan.cost + price * plan.added.joints <= best


@pytest.mark.parametrize("seed", [0, 18, *at_night((12, 29))])
def test_no_place_for_one_joint_is_better(seed: int) -> None:
    """Every place, an inch apart, in any one wall is planned in full."""
    text, price = small_job(seed)
    result, usual = planned(text), planned(text.replace("splices:", "# splices:"))
    (plan,) = result.plans
    asking, pieces = Asking(result.job, result.job.trim("base")), usual.pieces
    best = usual.cost
    assert plan.anywhere is not None
    for run in result.splices:
        (whole,) = run.cut
        for first in range(24, int(whole + run.lap) // 2 + 1):
            cut = cut_in(run, (whole + run.lap - first, Fraction(first)))
            assert cut is not None
            asked = asking.about(with_places(pieces, (run,), {run.whole.id: cut}))
            other = plan_stock(asked.problem)
            assert isinstance(other, Plan)
            best = min(best, Fraction(other.cost, asked.per_coin) + price)
            assert plan.anywhere <= Fraction(other.cost, asked.per_coin)
    assert plan.cost + price * plan.added.joints <= best
