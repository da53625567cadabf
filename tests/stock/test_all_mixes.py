"""All mixes under a cost are listed, none beside, and the search among them is the solver's."""

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trimlang.stock.mixes import all_mixes
from trimlang.stock.mixes.all_mixes import AllMixes
from trimlang.stock.mixes.buying import Buying
from trimlang.stock.mixes.mix import Known, MixSearch
from trimlang.stock.problem import Blank, Part, Problem
from trimlang.stock.sticks.floor import Worth, length_worth
from trimlang.stock.sticks.timber import Timber, timber_of

DEAREST = 4_000


@st.composite
def jobs(draw: st.DrawFn) -> tuple[Timber, list[Worth]]:
    """A few pieces, priced sticks, packs, limits, rests and spare, and some worths."""
    parts = tuple(
        Part(f"p{i}", length)
        for i, length in enumerate(draw(st.lists(st.integers(5, 40), min_size=1, max_size=5)))
    )
    blanks = [Blank("50", 50, draw(st.integers(0, 300)))]
    if draw(st.booleans()):
        blanks.append(Blank("80", 80, draw(st.integers(1, 400)), limit=draw(st.integers(0, 3))))
    if draw(st.booleans()):
        blanks.append(Blank("four of 50", 50, draw(st.integers(1, 900)), pack=4))
    if draw(st.booleans()):
        price = draw(st.sampled_from((0, 0, 35)))
        blanks.append(Blank("rest", 30, price, limit=draw(st.integers(1, 2)), on_hand=True))
    spare = draw(st.sampled_from((0, 0, 60, 120)))
    timber = timber_of(Problem("base", parts, tuple(blanks), kerf=1, spare=spare))
    each = st.integers(0, 9)
    worths = [
        Worth(tuple(draw(each) for _ in timber.kinds), draw(st.integers(0, 30)))
        for _ in range(draw(st.integers(0, 2)))
    ]
    return timber, [length_worth(timber), *worths]


def by_trying_all(timber: Timber, worths: list[Worth], cost: int) -> dict[tuple[int, ...], int]:
    buying = Buying(timber)
    found = {}
    for counts in product(*(range(most + 1) for most in timber.most)):
        price = buying.cost(counts)
        enough = all(
            sum(w * n for w, n in zip(worth.of_kind, counts, strict=True)) >= worth.needed
            for worth in worths
        )
        if price is not None and price < cost and enough:
            found[counts] = price
    return found


@given(jobs(), st.integers(0, DEAREST))
def test_it_lists_what_trying_all_lists(job: tuple[Timber, list[Worth]], cost: int) -> None:
    timber, worths = job
    listed = AllMixes(timber, Buying(timber)).below(worths, cost, free=False)
    assert listed is not None
    counts, costs = listed
    rows = [tuple(map(int, row)) for row in counts]
    assert len(set(rows)) == len(rows)
    assert dict(zip(rows, map(int, costs), strict=True)) == by_trying_all(timber, worths, cost)


def test_no_mix_covers_a_spare_where_no_stick_is_bought() -> None:
    rest = Blank("rest", 60, 0, limit=2, on_hand=True)
    timber = timber_of(Problem("base", (Part("p", 40),), (rest,), spare=30))
    listed = AllMixes(timber, Buying(timber)).below([length_worth(timber)], 9, free=True)
    assert listed is not None
    assert not len(listed[0])
    search = MixSearch(timber, Buying(timber))
    assert search.cheapest(Known([length_worth(timber)]), 9, 60.0) == (None, 9)


def test_no_bound_is_above_a_mix_that_nothing_rules_out(monkeypatch: pytest.MonkeyPatch) -> None:
    """The solver's presolve once cut off a mix that meets the second worth exactly."""
    each = ((3072, 1121), (3840, 1409), (4608, 1730), (6144, 2342))
    blanks = (
        *(Blank(f"b{length}", length, price) for length, price in each),
        Blank("ten", 4608, 15_574, pack=10),
        *(Blank(f"r{n}", n, 0, limit=most, on_hand=True) for n, most in ((1968, 2), (1280, 3))),
        Blank("r", 2468, 0, limit=1, on_hand=True),
    )
    parts = tuple(Part(f"p{i}", 1000) for i in range(20_000))
    timber = timber_of(Problem("base", parts, blanks, kerf=3, end_waste=8, spare=6_114_306))
    search = MixSearch(timber, Buying(timber))
    a, b = 1099511627775, 329853488332
    worths = [
        Worth((95213, 63475, 63475, 42316, 31737, 31737, 0), 981610987),
        Worth((97503, 65002, 54168, 43334, 32501, 27084, 0), 981349940),
        Worth((a, 659706976665, 659706976665, 439804651110, b, b, 0), 11022494117280486),
        Worth((a, 733007751850, 733007751850, 488671834567, a // 3, a // 3, 0), 11335598378484220),
    ]
    mix = (7472, 2053, 2202, 0, 1, 2, 3)
    cost = search.buying.cost(mix)
    assert cost is not None
    assert not Known(worths).falls_short(mix)
    monkeypatch.setattr(all_mixes, "CELLS", 0)
    assert search.cheapest(Known(worths), cost + 1986, 60.0)[1] <= cost


def test_much_spare_is_reckoned_in_however_many_ways_it_can_be_kept() -> None:
    """What the spare adds is worked out once for all mixes whose packs are begun alike."""
    parts = tuple(Part(f"p{i}", 50 + i % 7) for i in range(40))
    blanks = (
        *(Blank("long", 70, 71), Blank("ten", 70, 640, pack=10), Blank("short", 55, 58)),
        *(Blank("few", 60, 61, limit=3), Blank("free", 52, 0, limit=3, on_hand=True)),
    )
    timber = timber_of(Problem("base", parts, blanks, spare=4000))
    buying = Buying(timber)
    least = buying.cost((40, 0, 0, 0))
    assert least is not None
    listed = AllMixes(timber, buying).below([length_worth(timber)], least + 40, free=True)
    assert listed is not None
    assert len(listed[0]) > 20
    for counts, cost in zip(*listed, strict=True):
        assert buying.cost(tuple(map(int, counts))) == cost


@given(jobs())
def test_sticks_that_cost_nothing_are_all_taken(job: tuple[Timber, list[Worth]]) -> None:
    timber, worths = job
    listed = AllMixes(timber, Buying(timber)).below(worths, DEAREST, free=True)
    assert listed is not None
    tried = by_trying_all(timber, worths, DEAREST)
    spare = timber.problem.spare
    free = [kind for kind, sort in enumerate(timber.kinds) if sort.to_be_used_up(spare)]
    assert {tuple(map(int, row)) for row in listed[0]} == {
        counts for counts in tried if all(counts[kind] == timber.most[kind] for kind in free)
    }


@given(jobs(), st.integers(0, 3))
def test_the_solver_finds_the_same_least_cost_and_number(
    job: tuple[Timber, list[Worth]], tried: int
) -> None:
    """With no cell to spare nothing is listed, and a mixed-integer program is solved instead."""
    timber, worths = job
    known = Known(worths)
    listing, solving = MixSearch(timber, Buying(timber)), MixSearch(timber, Buying(timber))
    for _ in range(tried + 1):
        mix, floor = listing.cheapest(known, DEAREST, 60.0)
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(all_mixes, "CELLS", 0)
            other, other_floor = solving.cheapest(known, DEAREST, 60.0)
            assert floor == other_floor
            assert (mix is None) == (other is None)
            if mix is None or other is None:
                return
            assert mix.cost == other.cost == floor
            fewest = solving.fewest(known, mix.cost, 60.0)
        assert listing.fewest(known, mix.cost, 60.0)[1] == fewest[1]
        known.too_small.append(mix.counts)
