"""Jobs that the quick plan and the quick bounds leave open, against trying everything."""

from __future__ import annotations

from dataclasses import replace
from random import Random

import pytest

from tests.conftest import at_night, examples
from tests.stock.assignment import fewest_sticks_at, least_cost
from tests.stock.everything import least
from trimlang.stock.checking.verify import faults
from trimlang.stock.planner import Effort, plan_stock
from trimlang.stock.problem import Blank, Part, Plan, Problem, Status


def job(
    pieces: list[int | tuple[int, int, int]], *sticks: tuple[int, ...], kerf: int = 0, ends: int = 0
) -> Problem:
    """Pieces as length, or length and both leans; sticks as length, price and perhaps limit."""
    parts = tuple(
        Part(f"p{n}", *((one, 0, 0) if isinstance(one, int) else one))
        for n, one in enumerate(pieces)
    )
    blanks = tuple(
        Blank(f"b{n}", length, price, limit=limit[0] if limit else None)
        for n, (length, price, *limit) in enumerate(sticks)
    )
    return Problem("base", parts, blanks, kerf=kerf, end_waste=ends)


def proven(problem: Problem) -> Plan:
    plan = plan_stock(problem)
    assert isinstance(plan, Plan)
    assert faults(plan) == ()
    assert plan.status is Status.PROVEN
    assert plan.bound == plan.cost
    return plan


# the length would do, but the cheapest sticks that the bounds allow hold no such pieces
CANNOT_BE_CUT = [
    job([11, 7, 12, (13, 4, 4), 7, 10], (60, 72), (30, 27), (30, 34), ends=1),
    job(
        [
            (21, -4, 4), (17, -3, 3), (22, 4, -4), 23, 8, (29, -4, 4), (30, -4, -4), 8,
            (23, -3, 3),
        ],
        (60, 69),
        ends=1,
    ),
    job(
        [
            57, (46, 3, -3), (66, -3, -3), (60, -4, 4), (69, -4, 4), 14, 50, (58, 4, -4),
            (52, 4, 4), (56, -4, 4), (21, -4, 4),
        ],
        (100, 94), (60, 54),
    ),
]  # fmt: skip
FEWER_STICKS = [
    job(
        [14, 51, 56, 49, 12, 39, 54, 45, 101, 39, 26, 135],
        (200, 180), (120, 123), (100, 82),
        kerf=2,
    ),
    job(
        [
            (38, -3, 3), (63, 4, 4), (47, 4, 4), 43, (50, 3, 3), (63, 4, 4), (33, 3, -3), 53,
            (44, -3, 3), (36, -4, 4), (57, -4, 4), (54, 3, -3),
        ],
        (150, 156), (180, 196), (105, 98),
        kerf=2,
    ),
]  # fmt: skip
NEED_NOT_SHARE = [
    job(
        [(17, -3, -3), 5, (26, 4, -4), 15, (19, -3, 3), (26, 3, -3), (24, 4, 4), 8, (29, 4, -4)],
        (60, 64), (30, 25), (48, 45),
        kerf=2,
    ),
    job(
        [(21, 4, 4), 7, (32, -4, -4), 6, 5, 19, (23, -3, 3), 11, 26],
        (60, 67), (48, 52), (30, 30),
        ends=1,
    ),
    job(
        [(50, 4, 4), 30, (44, 4, 4), (44, 3, 3), 49, 25, 25, (47, -4, 4)],
        (100, 81), (70, 78), (120, 120),
        kerf=2,
    ),
]  # fmt: skip
# these are left undecided at first, or cut by ending a dive with a search among few patterns
HARD = [
    job(
        [
            (24, -3, 3), 17, (35, -3, 3), 11, 12, (36, -4, 4), 9, 22, 12, (18, -4, 4), (22, 3, -3),
            (23, 4, -4), (13, -4, -4), (35, -4, 4), (25, -4, -4), (34, 3, 3), (25, -4, 4), 10, 10,
            (31, 4, -4), (25, -4, 4), (17, 4, -4), (13, 4, -4), 21, (20, 4, -4), (33, -4, 4),
        ],
        (60, 61), (72, 64), (30, 32),
    ),
    job(
        [
            12, (14, -3, 3), (13, 3, -3), 6, 12, 5, 7, 4, (13, 4, 4), (13, 3, 3), 9, (13, 3, 3),
            5, 9, 7, 15, (13, -4, -4), (16, -3, 3), 7, 5, 11, (17, 4, -4), 8, (13, -4, -4), (16,
            3, -3), 5, 6, 12, 10, (13, -4, 4), 16, 7, (13, -4, 4), 5, 6, 4, 11, 9, 16, (16, -3,
            3), 7, 8, 10, 4, 15, 8, 9, 14,
        ],
        (60, 66), (30, 32), (42, 46, 3),
        kerf=1,
    ),
    job(
        [
            5, 4, 27, (18, 4, -4), 3, 9, 6, 9, 21, 15, 4, 17, 8, 3, (19, -4, -4), (15, 4, 4), 7,
            (38, -3, 3), (13, 4, -4), 7, (40, 4, -4), 12, 7, 41, (17, 4, -4), 4, 9, 9, 8, (13, 3,
            -3), 15, 5, 10, 8, 12, 16, (15, -4, -4), 4, (17, -3, 3), (36, 3, -3), 7, (17, 3, 3),
        ],
        (60, 70), (30, 32), (36, 36, 2),
    ),
]  # fmt: skip


@pytest.mark.parametrize("problem", [*CANNOT_BE_CUT, *FEWER_STICKS, *NEED_NOT_SHARE])
def test_cost_and_sticks_are_what_trying_everything_finds(problem: Problem) -> None:
    plan = proven(problem)
    assert (plan.cost, len(plan.sticks)) == least(problem)
    assert plan.stick_bound <= len(plan.sticks)


def test_small_jobs_of_every_sort_are_what_trying_everything_finds() -> None:
    spans, leans = ((5, 30), (20, 58), (5, 58)), (-4, -3, 0, 0, 3, 4)
    for seed in range(examples(60)):
        random = Random(seed)
        shortest, longest = random.choice(spans)
        pieces: list[int | tuple[int, int, int]] = []
        for _ in range(random.randint(3, 8)):
            left, right = random.choice(leans), random.choice(leans)
            # the ends of a piece do not cross
            shown = max(shortest, abs(left) + abs(right))
            pieces.append((random.randint(shown, longest), left, right))
        sticks = [(60, random.randint(50, 70)), (random.randint(30, 50), random.randint(25, 50))]
        kerf, ends = random.choice((0, 1, 2)), random.choice((0, 1))
        problem = job(pieces, *sticks, kerf=kerf, ends=ends)
        plan = proven(problem)
        assert (plan.cost, len(plan.sticks)) == least(problem), seed


def mirrored(problem: Problem) -> Problem:
    """The same job from right to left."""
    parts = tuple(
        replace(part, left_lean=-part.right_lean, right_lean=-part.left_lean)
        for part in reversed(problem.parts)
    )
    return replace(problem, parts=parts)


@pytest.mark.parametrize("problem", [HARD[0], *at_night(HARD[1:])])
def test_a_job_seen_in_the_mirror_costs_the_same(problem: Problem) -> None:
    plan, other = proven(problem), proven(mirrored(problem))
    assert (plan.cost, len(plan.sticks)) == (other.cost, len(other.sticks))


def test_limits_and_fewest_sticks_are_held_to_together() -> None:
    lengths = [71, 67, 66, 60, 51, 57, 53, 49, 37, 73, 38, 41]
    for limit in (2, 3, 4):
        problem = job(list(lengths), (150, 174), (105, 116), kerf=2, ends=1)
        first = replace(problem.blanks[0], limit=limit)
        problem = replace(problem, blanks=(first, *problem.blanks[1:]))
        plan = proven(problem)
        assert plan.cost == least_cost(problem)
        assert len(plan.sticks) == fewest_sticks_at(problem, plan.cost)


@pytest.mark.parametrize("problem", [CANNOT_BE_CUT[1], FEWER_STICKS[1]])
@pytest.mark.parametrize("seconds", [0.0, 0.005])
def test_a_search_cut_short_promises_no_more_than_is_true(problem: Problem, seconds: float) -> None:
    cost, _ = least(problem)
    plan = plan_stock(problem, effort=Effort(seconds=seconds))
    assert isinstance(plan, Plan)
    assert faults(plan) == ()
    assert plan.bound <= cost <= plan.cost
    assert (plan.status is Status.PROVEN) is (plan.bound == plan.cost)
