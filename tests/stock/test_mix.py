"""The search for mixes of sticks, held against trying every mix."""

from fractions import Fraction
from itertools import product

from hypothesis import given
from hypothesis import strategies as st

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


def test_no_mix_covers_a_spare_where_no_stick_is_bought() -> None:
    rest = Blank("rest", 60, 0, limit=2, on_hand=True)
    timber = timber_of(Problem("base", (Part("p", 40),), (rest,), spare=30))
    search = MixSearch(timber, Buying(timber))
    assert search.cheapest(Known([length_worth(timber)]), 9, 60.0) == (None, 9)


def test_no_bound_is_above_a_mix_that_nothing_rules_out() -> None:
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
    assert search.cheapest(Known(worths), cost + 1986, 60.0)[1] <= cost


@given(jobs(), st.integers(0, 3))
def test_the_solver_finds_what_trying_all_finds(
    job: tuple[Timber, list[Worth]], tried: int
) -> None:
    timber, worths = job
    known = Known(worths)
    search = MixSearch(timber, Buying(timber))
    for _ in range(tried + 1):
        every = {
            counts: cost
            for counts, cost in by_trying_all(timber, worths, DEAREST).items()
            # no mix that has no more of any kind than one that is too small
            if all(any(n > m for n, m in zip(counts, one, strict=True)) for one in known.too_small)
        }
        mix, floor = search.cheapest(known, DEAREST, 60.0)
        if mix is None:
            assert not every
            assert floor == DEAREST
            return
        assert every[mix.counts] == mix.cost == floor == min(every.values())
        least = min(sum(counts) for counts, cost in every.items() if cost <= floor)
        assert search.fewest(known, floor, 60.0)[1] == least

        def over(counts: tuple[int, ...]) -> Fraction:
            needing = [worth for worth in worths if worth.needed > 0]
            return min(Fraction(worth.slack(counts), worth.needed) for worth in needing)

        fullest = search.roomiest(known, DEAREST - 1, 60.0)
        assert fullest is not None
        assert float(over(fullest.counts)) >= max(map(float, map(over, every))) - 1e-3
        known.too_small.append(mix.counts)
