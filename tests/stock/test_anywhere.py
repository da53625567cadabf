"""What a trim costs wherever its long walls are pieced together, held against every place."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise, product
from random import Random

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.conftest import examples
from tests.every import every
from tests.stock.everything import least
from trimlang.stock.certificate import FreeRun
from trimlang.stock.checking.anywhere_check import shown_anywhere
from trimlang.stock.long_walls.joint_bound import JointBound
from trimlang.stock.long_walls.wall_divisions import cheapest_divisions
from trimlang.stock.planner import plan_stock
from trimlang.stock.problem import Blank, Part, Plan, Problem

LEAST = 6


@st.composite
def jobs(draw: st.DrawFn) -> tuple[Problem, list[tuple[int, int]]]:
    """A problem of the parts that are fixed, and walls in two pieces: total, lean of the joint."""
    lengths = st.integers(LEAST, 40)
    parts = tuple(
        Part(f"p{n}", length, draw(st.sampled_from((0, 2, -2))), draw(st.sampled_from((0, 2, -2))))
        for n, length in enumerate(draw(st.lists(lengths, max_size=4)))
    )
    sticks = draw(st.dictionaries(st.integers(30, 48), st.integers(5, 60), min_size=1, max_size=2))
    blanks = [Blank(f"s{length}", length, price) for length, price in sticks.items()]
    if draw(st.booleans()):
        blanks.append(Blank("rest", draw(st.integers(10, 30)), 0, limit=1, on_hand=True))
    walls = draw(
        st.lists(st.tuples(st.integers(42, 60), st.sampled_from((0, 2))), min_size=1, max_size=2)
    )
    problem = Problem(
        "base",
        parts,
        tuple(blanks),
        kerf=draw(st.integers(0, 2)),
        spare=draw(st.sampled_from((0, 30))),
        survive_loss=draw(st.booleans()),
    )
    return problem, walls


def least_cost(problem: Problem, walls: list[tuple[int, int]]) -> int | None:
    """The least cost over every place of every joint, each planned to proof."""
    if not walls:
        plan = plan_stock(problem)
        # with both kinds of spare at once a plan may be left unproven; its cost is still one that
        # a bound may not be above
        both = problem.spare and problem.survive_loss
        assert not isinstance(plan, Plan) or plan.cost == plan.bound or both
        return plan.cost if isinstance(plan, Plan) else None
    (total, lean), *rest = walls
    longest = max(blank.length for blank in problem.blanks if not blank.on_hand)
    found: list[int] = []
    # every place of one wall; of two the places multiply
    alone = not rest and all(part.id.startswith("p") for part in problem.parts)
    for first in range(LEAST, total - LEAST + 1, 1 if alone else 9):
        for way in {lean, -lean}:
            if max(first, total - first) + problem.kerf <= longest:
                number = len(problem.parts)
                both = (
                    Part(f"w{number}a", first, 0, way),
                    Part(f"w{number}b", total - first, way, 0),
                )
                cost = least_cost(
                    Problem(
                        problem.trim,
                        (*problem.parts, *both),
                        problem.blanks,
                        problem.kerf,
                        spare=problem.spare,
                        survive_loss=problem.survive_loss,
                    ),
                    rest,
                )
                if cost is not None:
                    found.append(cost)
    return min(found, default=None)


def floor(fixed: Problem, runs: list[FreeRun], enough: int) -> int:
    """The bound, which the check must show too."""
    argued = JointBound(fixed, runs, lambda: 9.0).bound(enough)
    shown = shown_anywhere(fixed, runs, argued.certificate, argued.steps, argued.floor, argued.laid)
    assert shown == argued.floor
    return shown


def free(walls: list[tuple[int, int]]) -> list[FreeRun]:
    # the ends of a wall are square, and of a joint one end shares what it shares
    return [FreeRun(2, total, LEAST, lean) for total, lean in walls]


@settings(max_examples=examples(5), deadline=None)
@given(jobs())
def test_no_place_costs_less(job: tuple[Problem, list[tuple[int, int]]]) -> None:
    problem, walls = job
    cost = least_cost(problem, walls)
    if cost is not None:
        assert floor(problem, free(walls), 10**6) <= cost
        # it is no more than what it is asked for
        assert floor(problem, free(walls), cost - 1) == min(
            cost - 1, floor(problem, free(walls), 10**6)
        )


def small_walls(seed: int) -> tuple[Problem, list[list[tuple[int, int]]], list[int]]:
    """Fixed pieces; how the parts of each wall lean; and what each wall measures."""
    random = Random(seed)
    lean = random.choice((1, 1, 2))
    mitred = random.random() < 0.5
    sticks = sorted(random.sample(range(9, 17), random.choice((1, 1, 2, 3))))
    walls, totals = [], []
    for _ in range(random.choice((1, 1, 2))):
        own = lean + (random.random() < 0.2)
        parts = random.choice((2, 2, 3)) if not walls or len(walls[0]) == 2 else 2
        outer = [random.choice((0, 0, 0, own, -own)) for _ in "ab"]
        joints = [random.choice((own, -own)) for _ in range(parts - 1)]
        ends = [outer[0], *joints, outer[1]]
        walls.append(list(pairwise(ends)))
        totals.append(random.randint(parts * 4, parts * sticks[-1] - random.randint(0, 4)))
    pieces = [
        Part(
            f"p{number}",
            random.randint(3, sticks[-1]),
            random.choice((0, lean, -lean)) if mitred else 0,
            random.choice((0, lean, -lean)) if mitred else 0,
        )
        for number in range(random.randint(0, 5 - sum(map(len, walls)) + (len(walls) == 1)))
    ]
    blanks = tuple(Blank(f"s{one}", one, one + random.randint(-2, 2)) for one in sticks)
    kerf, end_waste = random.choice((0, 1)), random.choice((0, 0, 1))
    return Problem("base", tuple(pieces), blanks, kerf, end_waste), walls, totals


def every_split(parts: int, total: int, longest: int) -> Iterator[tuple[int, ...]]:
    for before in product(range(3, longest + 1), repeat=parts - 1):
        if 3 <= total - sum(before) <= longest:
            yield (*before, total - sum(before))


def least_of_every_split(
    problem: Problem, walls: list[list[tuple[int, int]]], totals: list[int]
) -> int | None:
    """The least cost, with every split of every wall tried, and every packing of each."""
    longest = max(blank.length for blank in problem.blanks) - 2 * problem.end_waste
    if any(part.length > longest for part in problem.parts):
        return None
    splits = [
        list(every_split(len(wall), total, longest))
        for wall, total in zip(walls, totals, strict=True)
    ]
    ends = [end for wall in walls for end in wall]
    costs = []
    for lengths in product(*splits):
        parts = tuple(
            Part(f"w{number}", length, *lean)
            for number, (length, lean) in enumerate(zip(sum(lengths, ()), ends, strict=True))
        )
        costs.append(least(replace(problem, parts=(*problem.parts, *parts)))[0])
    return min(costs, default=None)


def runs_of(walls: list[list[tuple[int, int]]], totals: list[int]) -> list[FreeRun]:
    return [
        FreeRun(
            len(wall),
            total,
            3,
            abs(wall[0][1]),
            wall[0][0],
            wall[-1][1],
        )
        for wall, total in zip(walls, totals, strict=True)
    ]


@every("seed", range(examples(60)))
def test_no_split_costs_less(seed: int) -> None:
    problem, walls, totals = small_walls(seed)
    cost = least_of_every_split(problem, walls, totals)
    if cost is not None:
        runs = runs_of(walls, totals)
        assert floor(problem, runs, 10**6) <= cost
        # nor does the check believe what was meant for the other way to count what parts share
        argued = JointBound(problem, runs, lambda: 9.0).bound(cost + 9)
        other = [not laid for laid in argued.laid]
        assert shown_anywhere(problem, runs, argued.certificate, argued.steps, 10**6, other) <= cost


def test_a_wall_that_no_fewer_sticks_hold_is_proven_anywhere() -> None:
    sticks = (Blank("s", 48, 10),)
    fixed = Problem("base", (Part("p", 40),), sticks)
    # 70 of wall and 40 of the part are more than two sticks, wherever the wall is cut
    assert floor(fixed, [FreeRun(2, 70, 6)], 30) == 30


def test_halves_of_sticks_count_wherever_the_joint_is() -> None:
    # three parts over half a stick and a wall that always has a piece of half or more:
    # by length alone three sticks would do
    sticks = (Blank("s", 48, 10),)
    fixed = Problem("base", tuple(Part(f"p{n}", 25) for n in range(3)), sticks)
    assert 3 * 25 + 50 <= 3 * 48
    assert floor(fixed, [FreeRun(2, 50, 6)], 99) == 40


def test_laps_are_saved_only_where_two_parts_lie_on_one_stick() -> None:
    sticks = (Blank("s", 48, 10),)
    fixed = Problem("base", (), sticks)
    # two sticks are an inch too short, and a lap that is saved takes both parts on one of them
    beside = Problem("base", (Part("p", 7),), sticks)
    assert floor(beside, [FreeRun(2, 90, 6, 2)], 99) == 30
    # four parts on three sticks: two of them share a stick and one lap
    assert floor(fixed, [FreeRun(2, 73, 6, 2)] * 2, 99) == 30
    assert floor(fixed, [FreeRun(2, 73, 6, 2), FreeRun(2, 74, 6, 2)], 99) == 40


def test_places_that_could_be_cheaper_lower_the_bound() -> None:
    # as it is cut it takes 4 sticks; cut as 18 and 32 beside parts of 30 and 16 it takes 2
    sticks = (Blank("s", 48, 10),)
    fixed = Problem("base", (Part("p", 30), Part("q", 16)), sticks)
    assert floor(fixed, [FreeRun(2, 50, 6)], 30) == 20


def test_a_bound_that_is_too_high_is_not_shown() -> None:
    sticks = (Blank("s", 48, 10),)
    fixed = Problem("base", (Part("p", 30), Part("q", 16)), sticks)
    runs = [FreeRun(2, 50, 6)]
    argued = JointBound(fixed, runs, lambda: 9.0).bound(30)
    assert argued.floor == 20
    assert shown_anywhere(fixed, runs, argued.certificate, argued.steps, 21, argued.laid) < 21
    # a value by which the shortest part is worth as much as a stick says nothing of the sticks
    nothing = tuple(((1, 1),) for _ in argued.steps)
    assert shown_anywhere(fixed, runs, argued.certificate, nothing, 40, argued.laid) < 40
    # nor does one that a longer part has less of
    falling = tuple(((6, 9), (20, 1)) for _ in argued.steps)
    assert shown_anywhere(fixed, runs, argued.certificate, falling, 40, argued.laid) < 40


@given(
    st.lists(st.tuples(st.integers(3, 30), st.integers(1, 9)), max_size=4),
    st.integers(1, 3),
    st.integers(1, 8),
)
def test_no_division_of_a_wall_is_worth_less_than_the_cheapest(
    rises: list[tuple[int, int]], parts: int, least: int
) -> None:
    longest, steps, worth = 30, [], 0
    for room, more in sorted(dict(rises).items()):
        worth += more
        steps.append((room, worth))
    found = cheapest_divisions(tuple(steps), longest, parts, least)

    def value(room: int) -> int:
        return max((worth for start, worth in steps if start <= room), default=0)

    every = [
        (sum(rooms), sum(map(value, rooms)))
        for rooms in product(range(least, longest + 1), repeat=parts)
    ]
    for total in range(parts * least, parts * longest + 1, 5):
        cheapest = min(worth for room, worth in every if room >= total)
        assert next(worth for room, worth, _ in found if room >= total) == cheapest
