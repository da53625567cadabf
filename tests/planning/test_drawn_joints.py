"""Joints drawn by a program over all long walls at once: within the rules, and never dearer."""

from fractions import Fraction
from random import Random
from unittest.mock import patch

import pytest

from trimlang.compiler import Result, compile_job
from trimlang.planning.drawn_joints import DrawnJoints
from trimlang.stock.certificate import FreeRun
from trimlang.stock.long_walls.dividing import Dividing, Parts
from trimlang.stock.long_walls.joint_bound import JointBound
from trimlang.stock.long_walls.wall_ways import LongWall
from trimlang.stock.problem import Blank, Part, Problem, Status


def house(seed: int, walls: int) -> str:
    random = Random(seed)
    lines = [
        "trim base: 9/16 in thick, 5 1/4 in tall",
        "saw: kerf 1/8 in, squares off 1/4 in",
        "spare 0 %",
        "stock base: 8 ft at 9.50, 12 ft at 14.30, 16 ft at 19.60",
        'room "R", trim base, open walk',
    ]
    for wall in range(walls):
        inches = random.randint(200, 360) if wall % 3 == 0 else random.randint(24, 180)
        lines += [f"W{wall}: {inches} in, left=butt, right=in-corner", "bare 3 in"]
    return "\n".join(lines) + "\n"


def planned(text: str) -> Result:
    result = compile_job(text)
    assert result.ok, result.diagnostics
    assert all(plan.status is Status.PROVEN for plan in result.plans)
    return result


def without_program(text: str) -> Result:
    with patch.object(DrawnJoints, "places", lambda *_: {}):
        return planned(text)


SEEDS = range(3)


@pytest.fixture(scope="module")
def both() -> list[tuple[Result, Result]]:
    texts = [house(seed, 30) for seed in SEEDS]
    return [(planned(text), without_program(text)) for text in texts]


def test_drawn_joints_never_cost_more_and_save_on_some_jobs(
    both: list[tuple[Result, Result]],
) -> None:
    assert all(drawn.cost <= quick.cost for drawn, quick in both)
    assert any(drawn.cost < quick.cost for drawn, quick in both)


def test_what_is_drawn_is_within_the_rules(both: list[tuple[Result, Result]]) -> None:
    for drawn, quick in both:
        lengths = {piece.id: piece.length for piece in drawn.pieces if piece.parts > 1}
        usual = {piece.id: piece.length for piece in quick.pieces if piece.parts > 1}
        # as many pieces of the same runs, none below the least piece, all on the tape
        assert lengths.keys() == usual.keys()
        assert all(length >= 24 and (16 * length).denominator == 1 for length in lengths.values())
        for splice in drawn.splices:
            own = [lengths[piece.id] for piece in splice.pieces()]
            need = sum(splice.cut, Fraction(0))
            assert need <= sum(own) <= need + Fraction(1, 16)


def parts_of(problem: Problem, walls: list[LongWall], cost: int) -> Parts | None:
    runs = [FreeRun(wall.pieces, wall.total, wall.least) for wall in walls]
    search = JointBound(problem, runs, lambda: 9.0)
    return Dividing(search, walls, lambda: 9.0).cheaper(cost, search.bound(cost).floor)


def test_a_wall_takes_what_two_pieces_leave() -> None:
    # 60 and 50 leave 40 and 50 of two sticks: a wall of 90 is cut from those
    problem = Problem("base", (Part("a", 60), Part("b", 50)), (Blank("s", 100, 10),))
    wall = LongWall(total=90, pieces=2, least=20, most=99, step=1)
    # each alone, and the wall as 80 and 10 would need two sticks more
    assert parts_of(problem, [wall], 40) == ((50, 40),)
    # nothing is cheaper than two sticks
    assert parts_of(problem, [wall], 20) is None


def test_two_walls_share_a_stick_for_what_whole_sticks_leave() -> None:
    # three sticks are just enough: two whole ones, and both remainders from the third
    problem = Problem("base", (), (Blank("s", 100, 10),), kerf=2)
    walls = [LongWall(total=total, pieces=2, least=20, most=100, step=1) for total in (145, 153)]
    assert parts_of(problem, walls, 40) == ((100, 45), (100, 53))


def test_a_wall_of_three_parts_leaves_room_beside_the_last() -> None:
    problem = Problem("base", (Part("a", 60),), (Blank("s", 100, 10),))
    wall = LongWall(total=240, pieces=3, least=20, most=100, step=1)
    assert parts_of(problem, [wall], 40) == ((100, 100, 40),)


def test_no_wall_is_divided_outside_its_limits() -> None:
    # beside 85 there is room for 15 only, less than the least piece
    problem = Problem("base", (Part("a", 85),), (Blank("s", 100, 10),))
    wall = LongWall(total=115, pieces=2, least=20, most=100, step=1)
    assert parts_of(problem, [wall], 30) is None


def test_a_bound_for_all_joints_proves_what_no_bound_for_these_does() -> None:
    result = planned(house(1, 12))
    (plan,) = result.plans
    assert plan.anywhere is not None
    assert plan.anywhere <= plan.bound <= plan.cost
