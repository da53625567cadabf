"""Pricing where neighbours share mitres, held against trying every order."""

from collections import Counter
from functools import cache
from itertools import pairwise, permutations

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.conftest import examples
from trimlang.stock.patterns.chaining import Chaining
from trimlang.stock.patterns.nesting import Nesting, can_nest
from trimlang.stock.sticks.mitres import most_shared, overlap
from trimlang.stock.sticks.stick_order import laid_weight
from trimlang.stock.sticks.timber import Size

leans = st.sampled_from((-3, -2, 0, 0, 2, 3))
shapes = st.tuples(st.integers(6, 30), leans, leans, st.integers(0, 40))
jobs = st.lists(shapes, min_size=1, max_size=5)
rooms = st.lists(st.integers(0, 90), min_size=1, max_size=3)


def sizes_of(job: list[tuple[int, int, int, int]]) -> list[Size]:
    return [
        Size(weight, left, right, (f"p{n}",), weight, weight)
        for n, (weight, left, right, _) in enumerate(job)
    ]


def most_worth(sizes: list[Size], values: list[int], room: int) -> int:
    """By trying each piece after each, as long as there is room."""

    @cache
    def best(left: int, last: int) -> int:
        most = 0
        for n, size in enumerate(sizes):
            takes = size.weight
            if last >= 0:
                takes += laid_weight([sizes[last], size]) - sizes[last].weight - size.weight
            if values[n] and takes <= left:
                most = max(most, values[n] + best(left - takes, n))
        return most

    return best(room, -1)


def lays(sizes: list[Size], pattern: tuple[int, ...], room: int) -> bool:
    return any(
        laid_weight([sizes[n] for n in order]) <= room for order in set(permutations(pattern))
    )


def patterns_of(
    nested: Nesting, sizes: list[Size], values: list[int], of_kinds: list[int]
) -> list[tuple[int, ...]]:
    """The patterns for each kind: they can be laid, and the first is worth the most there is."""
    found = []
    for kind, room in enumerate(of_kinds):
        patterns = nested.patterns(kind, 0, 5)
        for pattern in patterns:
            if len(pattern) <= 7:
                assert lays(sizes, pattern, room)
            assert sum(values[n] for n in pattern) <= nested.best[kind]
        if nested.best[kind]:
            first = nested.patterns(kind, 0, 1)[0]
            assert sum(values[n] for n in first) == nested.best[kind]
        found += patterns
    return found


@given(st.lists(st.tuples(leans, leans), min_size=1, max_size=6))
def test_the_most_that_pieces_share_is_what_trying_every_order_finds(pieces):
    found = max(
        sum(overlap(one[1], other[0]) for one, other in pairwise(order))
        for order in permutations(pieces)
    )
    assert most_shared(tuple(sorted(pieces))) == (found, True)


def test_too_many_orders_are_bounded_and_not_called_sure():
    pieces = [(n, n % 7) for n in range(1, 14)]
    shared, sure = most_shared(tuple(sorted(pieces)))
    assert not sure
    assert shared >= sum(overlap(one[1], other[0]) for one, other in pairwise(sorted(pieces)))


@settings(max_examples=examples(30), deadline=None)
@given(jobs, rooms)
def test_nesting_finds_the_most_that_any_order_of_any_pieces_is_worth(job, of_kinds):
    sizes, values = sizes_of(job), [value for *_, value in job]
    assert can_nest(sizes, of_kinds)
    nested = Nesting(sizes, of_kinds, values)
    assert nested.best == [most_worth(sizes, values, room) for room in of_kinds]
    patterns_of(nested, sizes, values, of_kinds)


@settings(max_examples=examples(30), deadline=None)
@given(jobs, rooms, st.randoms(use_true_random=False))
def test_chained_patterns_can_be_laid_and_take_no_piece_twice(job, of_kinds, random):
    sizes, values = sizes_of(job), [value for *_, value in job]
    copies = [random.randint(1, 2) for _ in sizes]
    order = [n for n, count in enumerate(copies) for _ in range(count)]
    random.shuffle(order)
    chaining = Chaining(sizes, of_kinds, values, order)
    nested = Nesting(sizes, of_kinds, values)
    for kind, room in enumerate(of_kinds):
        for pattern in chaining.patterns(kind, 0, 5):
            assert all(number <= copies[n] for n, number in Counter(pattern).items())
            assert 0 < sum(values[n] for n in pattern) <= nested.best[kind]
            if len(pattern) <= 7:
                assert lays(sizes, pattern, room)


def test_a_chain_of_two_shares_the_mitre_between_them():
    sizes = [Size(20, 0, 3, ("a",), 20, 20), Size(20, 3, 0, ("b",), 20, 20)]
    assert Chaining(sizes, [37], [5, 5], [0, 1]).patterns(0, 5, 1) == [(0, 1)]
    # the other way round the square ends meet
    assert Chaining(sizes, [37], [5, 5], [1, 0]).patterns(0, 5, 1) == []
    assert Nesting(sizes, [36, 37], [5, 5]).best == [5, 10]


def test_pieces_shorter_than_their_overlaps_are_not_nested():
    assert not can_nest([Size(5, 3, 3, ("a",), 5, 5)], [40])
    # and a grid so fine that it would take too long is left alone
    assert not can_nest([Size(6, 3, 3, ("a",), 6, 6)], [1_000_000])


def test_nothing_of_worth_is_no_pattern():
    sizes = [Size(20, 0, 3, ("a",), 20, 20)]
    assert Nesting(sizes, [40], [0]).best == [0]
    assert Nesting(sizes, [10], [4]).patterns(0, 0, 3) == []
