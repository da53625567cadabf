"""The planner beside trying every plan: whatever sticks cost, and however they are had."""

from dataclasses import replace

import pytest

from tests.conftest import at_night
from tests.stock.every_plan import least_of_every_plan
from tests.stock.jobs import small_of_every_shape
from trimlang.stock.checking.verify import faults
from trimlang.stock.planner import plan_stock
from trimlang.stock.problem import Blank, Part, Plan, Problem, Status


def squares(inches: tuple[int, ...]) -> tuple[Part, ...]:
    return tuple(Part(f"p{i}", 8 * length) for i, length in enumerate(inches))


def proven(problem: Problem) -> Plan:
    plan = plan_stock(problem)
    assert isinstance(plan, Plan)
    assert faults(plan) == ()
    assert plan.status is Status.PROVEN
    return plan


@pytest.mark.parametrize("first", [*range(0, 300, 50), *at_night(range(300, 600, 50))])
def test_no_plan_is_cheaper_or_cuts_fewer_sticks(first: int) -> None:
    for seed in range(first, first + 50):
        problem = small_of_every_shape(seed)
        plan = proven(problem)
        assert (plan.cost, plan.stick_bound) == least_of_every_plan(problem), seed
        assert len(plan.sticks) == plan.stick_bound


def test_a_few_free_sticks_do_not_make_dear_ones_of_their_length_free() -> None:
    parts = squares((46, 77, 82, 76, 57))
    blanks = (
        Blank("free", 8 * 84, 0, limit=2, on_hand=True),
        Blank("rest", 8 * 84, 4500, limit=6, on_hand=True),
        Blank("short", 8 * 112, 3100),
        Blank("long", 8 * 117, 4500),
    )
    # 77 and 82 on the two free ones; 46 and 57 on one of 112, 76 on another
    assert proven(Problem("base", parts, blanks, kerf=1)).cost == 2 * 3100


def test_free_offers_that_run_out_are_no_different() -> None:
    parts = squares((46, 77, 82, 76, 57))
    blanks = (
        Blank("free", 8 * 84, 0, limit=2),
        Blank("dear", 8 * 84, 4500),
        Blank("short", 8 * 112, 3100),
    )
    problem = Problem("base", parts, blanks, kerf=1)
    assert proven(problem).cost == 2 * 3100
    spare = replace(problem, spare=8 * 84)
    least = least_of_every_plan(spare)
    assert least is not None
    assert proven(spare).cost == least[0]


def test_no_needless_stick_is_cut_where_all_are_free() -> None:
    parts = squares((20,) * 24)
    rests = [Blank(f"r{i}", 8 * 21, 0, limit=1, on_hand=True) for i in range(20)]
    rests += [Blank(f"l{i}", 8 * 84, 0, limit=1, on_hand=True) for i in range(8)]
    plan = proven(Problem("base", parts, tuple(rests), kerf=1))
    assert len(plan.sticks) == plan.stick_bound == 6


def test_room_for_a_spoiled_piece_stays_free_where_mitres_are_shared() -> None:
    """Laid in the usual order, the pieces beside the room kept share less and take some of it."""
    shapes = ((346, 0, 0), (938, -20, 20), (440, 0, 20), (408, 0, -20))
    parts = tuple(Part(f"p{i}", *shape) for i, shape in enumerate(shapes))
    blanks = (Blank("a", 1536, 1740), Blank("b", 3072, 2410), Blank("r", 877, 0, 1, 1, True))
    proven(Problem("base", parts, blanks, kerf=2, survive_loss=True))


def test_a_stick_that_stays_whole_keeps_room_where_fewer_are_cut_then() -> None:
    """Three sticks do for the pieces; a fourth one is had for a spoiled piece, and stays whole."""
    parts = squares((75, 20, 92, 20, 15, 92))
    blanks = (Blank("free", 8 * 116, 0), Blank("dear", 8 * 116, 3000))
    plan = proven(Problem("base", parts, blanks, survive_loss=True))
    assert plan.has_room_for_a_loss
    assert (plan.cost, len(plan.sticks)) == (0, 3)
