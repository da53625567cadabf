"""What a job file asks for besides the pieces: a percentage, or room for one bad cut."""

from fractions import Fraction

import pytest

from tests.jobs import walls
from trimlang.compiler import Result, compile_job
from trimlang.sheets.export.plan_json import plan_values
from trimlang.sheets.render.pages import render_sheets

SPOILED = "spare covers any one piece spoiled\n"
TWO = "N: 10 ft, left=butt, right=butt\nbare 1 ft\nE: 5 ft, left=butt, right=butt"


def planned(settings: str, lines: str = TWO) -> Result:
    result = compile_job(walls(lines, settings=settings))
    assert result.ok, result.diagnostics
    return result


def left_over(result: Result) -> Fraction:
    (plan,) = result.plans
    return max([stick.offcut for stick in plan.sticks] + list(plan.whole_sticks))


def test_any_piece_can_be_cut_again_without_buying() -> None:
    # 10 ft and 5 ft: one stick of 16 ft holds both, and one of 12 ft the lost piece
    result = planned(SPOILED)
    assert left_over(result) >= max(piece.length for piece in result.pieces)
    assert result.cost == Fraction("17.40") + Fraction("24.10")
    assert result.plans[0].survives_loss


def test_an_offcut_is_spare_enough_where_it_is_long_enough() -> None:
    result = planned(SPOILED, "N: 5 ft, left=butt, right=butt")
    assert result.cost == Fraction("17.40")
    assert not result.plans[0].whole_sticks


@pytest.mark.parametrize("order", [SPOILED + "spare 10 %\n", "spare 10 %\n" + SPOILED])
def test_a_percentage_beside_it_holds_too(order: str) -> None:
    (plan,) = planned(order).plans
    assert plan.survives_loss
    assert sum(plan.whole_sticks) >= plan.spare_asked == 18


def test_order_and_data_say_so() -> None:
    result = planned(SPOILED)
    assert plan_values(result).summary.survives_loss
    assert "Any one piece may be spoiled" in render_sheets(result)["order-explained"]
    plain = planned("")
    assert not plan_values(plain).summary.survives_loss
    assert "any one piece may be spoiled" not in render_sheets(plain)["stock-order"]


def test_it_is_a_setting_of_the_whole_job() -> None:
    result = compile_job(walls(SPOILED + TWO))
    assert [one.code for one in result.diagnostics] == ["T230"]
    half = compile_job(walls(TWO, settings="spare covers any two\n"))
    assert "“one”" in half.diagnostics[0].message + str(half.diagnostics[0].remedy)
