"""Proofs in whole numbers: they say what the solver says, and no worth rules out a real plan."""

import subprocess
import sys
from collections import Counter
from collections.abc import Sequence
from itertools import product
from random import Random
from unittest.mock import patch

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.conftest import EXAMPLES
from tests.stock.assignment import least_cost
from tests.stock.jobs import house, small_priced
from trimlang.stock import planner
from trimlang.stock.buying import Buying
from trimlang.stock.filling import fill_rack
from trimlang.stock.floor import Worth
from trimlang.stock.planner import costs_more, plan_stock
from trimlang.stock.problem import Blank, NoPlan, Part, Plan, Problem, Status
from trimlang.stock.short_proof import ShortProof
from trimlang.stock.steps import StepWorths
from trimlang.stock.timber import Timber, timber_of
from trimlang.stock.verify import faults
from trimlang.stock.whole_mix import WholeMixes

BLANKS = (
    Blank("16 ft", 3072, 2410),
    Blank("12 ft", 2304, 1740),
    Blank("ten of 12 ft", 2304, 15800, pack=10),
    Blank("rest", 984, 0, limit=2, on_hand=True),
)


@st.composite
def jobs(draw: st.DrawFn) -> Problem:
    """One trim of a few rooms: two lengths, a pack, rests, spare, some ends that lean."""
    lean = st.sampled_from((0, 0, 9, -9))
    parts = tuple(
        Part(f"p{n}", draw(st.integers(40 if n else 900, 3000)), draw(lean), draw(lean))
        for n in range(draw(st.integers(1, 14)))
    )
    blanks = tuple(one for one in BLANKS if one.key == "16 ft" or draw(st.booleans()))
    return Problem("base", parts, blanks, kerf=3, end_waste=4, spare=draw(st.integers(0, 3000)))


def by_solver(problem: Problem) -> Plan | NoPlan:
    """Plan with the long proof alone."""

    def nothing(_timber: object, _buying: object, start: object, worths: list[Worth]) -> ShortProof:
        return ShortProof(start, 0, 0, worths)  # type: ignore[arg-type]

    with patch.object(planner, "short_proof", nothing):
        return plan_stock(problem)


@settings(max_examples=40)
@given(jobs())
def test_what_is_settled_in_short_is_what_the_solver_proves(problem: Problem) -> None:
    short, long = plan_stock(problem), by_solver(problem)
    assert isinstance(short, Plan)
    assert isinstance(long, Plan)
    assert faults(short) == ()
    assert short.bound <= long.cost
    assert long.bound <= short.cost
    if long.status is Status.PROVEN:
        assert (short.cost, short.status) == (long.cost, Status.PROVEN)
    if short.proof == "worths in whole steps":
        assert long.cost == short.cost
        assert short.stick_bound <= len(long.sticks)


@pytest.mark.parametrize("seed", range(30))
def test_the_least_cost_is_that_of_trying_everything(seed: int) -> None:
    problem = small_priced(seed)
    plan = plan_stock(problem)
    assert (plan.cost if isinstance(plan, Plan) else None) == least_cost(problem)


def worths_of(timber: Timber) -> list[Worth]:
    """All step worths, plain and raised: a rack with nothing in it falls short of most."""
    steps = StepWorths(timber)
    plain = list(steps.plain)
    return plain + [steps.lifted(worth) for worth in plain]


def held(worth: Worth, counts: Sequence[int]) -> int:
    return sum(w * n for w, n in zip(worth.of_kind, counts, strict=True))


@given(jobs())
def test_no_stick_holds_more_than_its_worth(problem: Problem) -> None:
    timber = timber_of(problem)
    worths = worths_of(timber)
    assert worths
    random = Random(len(problem.parts))
    for _ in range(40):
        kind = random.randrange(len(timber.kinds))
        held, left = [], timber.kinds[kind].room
        for size in random.sample(range(len(timber.sizes)), len(timber.sizes)):
            if timber.sizes[size].least <= left:
                left -= timber.sizes[size].least
                held.append(size)
        for worth in worths:
            assert sum(worth.of_size[size] for size in held) <= worth.of_kind[kind]


@given(jobs())
def test_no_worth_rules_out_a_plan(problem: Problem) -> None:
    timber = timber_of(problem)
    plan = plan_stock(problem)
    assert isinstance(plan, Plan)
    lengths = {blank.key: (blank.length, blank.on_hand) for blank in problem.blanks}
    used = Counter(lengths[stick.blank] for stick in plan.sticks)
    counts = [used[kind.length, kind.on_hand] for kind in timber.kinds]
    for worth in worths_of(timber):
        assert held(worth, counts) >= worth.needed


@pytest.mark.parametrize("seed", range(20))
def test_the_cheapest_mix_and_that_of_fewest_sticks_are_so(seed: int) -> None:
    random = Random(seed)
    timber = timber_of(small_priced(seed))
    buying = Buying(timber)
    worths = [
        Worth(tuple(random.randint(0, 5) for _ in timber.kinds), random.randint(1, 12))
        for _ in range(3)
    ]
    mixes = WholeMixes(timber, buying)
    parts = sum(timber.demand)
    every = {
        counts: cost
        for counts in product(
            *(range(min(kind.supply or parts, parts) + 1) for kind in timber.kinds)
        )
        if (cost := buying.cost(counts)) is not None
        and all(
            sum(w * n for w, n in zip(x.of_kind, counts, strict=True)) >= x.needed for x in worths
        )
    }
    least = min(every.values(), default=None)
    found = mixes.cheapest(worths, (), 10**6)
    assert (found and found[0]) == least
    if found is not None and least is not None:
        assert every[found[1]] == least
        assert mixes.cheapest(worths, (), least) is None
        fewest = mixes.fewest(worths, least + 20, 1000)
        assert fewest is not None
        assert fewest[0] == min(sum(c) for c, cost in every.items() if cost <= least + 20)


@pytest.mark.parametrize("seed", range(12))
def test_a_rack_that_is_filled_holds_every_piece(seed: int) -> None:
    timber = timber_of(house(24, seed))
    plan = plan_stock(timber.problem)
    assert isinstance(plan, Plan)
    lengths = {blank.key: (blank.length, blank.on_hand) for blank in timber.problem.blanks}
    used = Counter(lengths[stick.blank] for stick in plan.sticks)
    counts = [used[kind.length, kind.on_hand] for kind in timber.kinds]
    steps = StepWorths(timber)
    steps.against(counts)
    sticks = fill_rack(timber, counts, steps.tightest(counts))
    if sticks is not None:
        cut = Counter(size for _, pattern in sticks for size in pattern)
        assert [cut[size] for size in range(len(timber.sizes))] == list(timber.demand)
        taken = Counter(kind for kind, _ in sticks)
        assert all(taken[kind] <= count for kind, count in enumerate(counts))
        for kind, pattern in sticks:
            load = sum(timber.sizes[size].weight for size in pattern)
            assert load <= timber.kinds[kind].room


@settings(max_examples=30)
@given(jobs())
def test_what_is_said_to_cost_more_does(problem: Problem) -> None:
    plan = plan_stock(problem)
    assert isinstance(plan, Plan)
    assert not costs_more(problem, plan.cost)
    assert not costs_more(problem, plan.cost + 1)
    assert costs_more(problem, -1)


def test_the_house_is_proven_without_a_solver() -> None:
    program = (
        "import sys; from pathlib import Path; from trimlang.compiler import compile_job;"
        f"path = Path({str(EXAMPLES / 'house.trim')!r});"
        "result = compile_job(path.read_text(), path=path);"
        "assert result.cost == result.bound;"
        "print(sorted({'highspy', 'numpy'} & set(sys.modules)))"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "[]"
