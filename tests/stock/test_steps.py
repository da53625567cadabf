"""Worths in whole steps rule out no real plan; mixes are the cheapest that worths allow."""

from collections import Counter
from collections.abc import Sequence
from itertools import product
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.stock.jobs import small_priced
from trimlang.stock.buying import Buying
from trimlang.stock.floor import Worth
from trimlang.stock.planner import plan_stock
from trimlang.stock.problem import Blank, Part, Plan, Problem
from trimlang.stock.steps import StepWorths
from trimlang.stock.timber import Timber, timber_of
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
