"""Sifting lists each pattern that a plan within a rack could use, and no false one."""

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import combinations_with_replacement, permutations

from hypothesis import given
from hypothesis import strategies as st

from trimlang.stock.problem import Blank, Part, Problem
from trimlang.stock.search import sifting
from trimlang.stock.search.sifting import sifted
from trimlang.stock.sticks.floor import Worth, length_worth
from trimlang.stock.sticks.stick_order import laid_weight
from trimlang.stock.sticks.timber import Pattern, Timber, timber_of

MANY = 100_000


def valued(timber: Timber) -> Worth:
    """The worth by length, with what each size is worth kept."""
    worth = length_worth(timber)
    return Worth(worth.of_kind, worth.needed, tuple(size.least for size in timber.sizes))


def all_patterns(timber: Timber, kind: int) -> Iterator[Pattern]:
    """Every pattern within the demand that fits, found by trying all."""
    sizes, demand = range(len(timber.sizes)), timber.demand
    for number in range(sum(demand) + 1):
        for pattern in combinations_with_replacement(sizes, number):
            load = sum(timber.sizes[size].least for size in pattern)
            within = all(pattern.count(size) <= demand[size] for size in sizes)
            if within and load <= timber.kinds[kind].room:
                yield pattern


def full(timber: Timber, kind: int, pattern: Pattern) -> bool:
    left = timber.kinds[kind].room - sum(timber.sizes[size].least for size in pattern)
    return not any(
        size.least <= left and pattern.count(place) < size.count
        for place, size in enumerate(timber.sizes)
    )


def can_be_laid(timber: Timber, kind: int, pattern: Pattern) -> bool:
    orders = permutations([timber.sizes[size] for size in pattern])
    return min(laid_weight(order) for order in orders) <= timber.kinds[kind].room


def by_trying_all(timber: Timber, worth: Worth, counts: Sequence[int]) -> set[tuple[int, Pattern]]:
    """Every pattern that wastes no more than the slack and that some order lays on its stick."""
    slack = worth.slack(counts)
    return {
        (kind, pattern)
        for kind, count in enumerate(counts)
        if count
        for pattern in all_patterns(timber, kind)
        if sum(worth.of_size[size] for size in pattern) >= worth.of_kind[kind] - slack
        and can_be_laid(timber, kind, pattern)
    }


def covers(one: Pattern, other: Pattern) -> bool:
    return not Counter(other) - Counter(one)


@st.composite
def racks(draw: st.DrawFn) -> tuple[Timber, list[int]]:
    lean = st.sampled_from((0, 0, -3, 3)) if draw(st.booleans()) else st.just(0)
    shapes = draw(st.lists(st.tuples(st.integers(6, 40), lean, lean), min_size=1, max_size=6))
    parts = tuple(Part(f"p{i}", *shape) for i, shape in enumerate(shapes))
    blanks = tuple(Blank(key, length, 1) for key, length in (("a", 80), ("b", 50)))
    timber = timber_of(Problem("base", parts, blanks, kerf=draw(st.integers(0, 2))))
    return timber, [draw(st.integers(0, 3)) for _ in timber.kinds]


@given(racks())
def test_it_lists_what_trying_all_lists(rack: tuple[Timber, list[int]]) -> None:
    timber, counts = rack
    worth = valued(timber)
    found = sifted(timber, worth, counts, MANY)
    assert found is not None
    assert len(set(found)) == len(found)
    tried = by_trying_all(timber, worth, counts)
    if timber.leaning:
        # What is not listed could be cut by a pattern that is, with more pieces.
        assert set(found) <= tried
        assert all(
            any(kind == other and covers(more, pattern) for other, more in found)
            for kind, pattern in tried
        )
    else:
        assert set(found) == {one for one in tried if full(timber, *one)}


def small() -> tuple[Timber, Worth]:
    parts = tuple(Part(f"p{n}", n) for n in (11, 13, 17, 19, 23, 29))
    timber = timber_of(Problem("base", parts, (Blank("a", 60, 1),)))
    return timber, valued(timber)


def test_a_list_that_grows_too_long_is_given_up() -> None:
    timber, worth = small()
    everything = sifted(timber, worth, [9], MANY)
    assert everything is not None
    assert sifted(timber, worth, [9], len(everything)) == everything
    assert sifted(timber, worth, [9], len(everything) - 1) is None
    assert sifted(timber, worth, [9], 0) is None


def test_a_table_that_grows_too_large_is_not_made() -> None:
    parts = (Part("long", sifting.TABLE), Part("short", 9))
    timber = timber_of(Problem("base", parts, (Blank("a", 2 * sifting.TABLE, 1),)))
    assert sifted(timber, valued(timber), [1], MANY) is None


def test_a_rack_worth_less_than_the_parts_cannot_do() -> None:
    timber, worth = small()
    assert worth.slack([1]) < 0
    assert sifted(timber, worth, [1], MANY) == []


def test_an_empty_rack_leaves_nothing() -> None:
    timber, worth = small()
    assert sifted(timber, worth, [0], MANY) == []


def test_a_piece_that_takes_no_room_beside_a_mitre_counts_for_its_worth() -> None:
    parts = (Part("long", 50, -6, 0), Part("other", 50, -6, 0), Part("tip", 6, 0, -6))
    timber = timber_of(Problem("base", parts, (Blank("a", 50, 1),)))
    assert timber.sizes[1].least == 0
    # Nothing may be wasted, and only both together are worth as much as a stick can be.
    assert sifted(timber, Worth((15,), 15, (10, 5)), [1], MANY) == [(0, (0, 1))]
