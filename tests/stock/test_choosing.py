"""Cutting a rack with given patterns only, held against every choice of them."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from itertools import product
from math import inf

from hypothesis import given, settings
from hypothesis import strategies as st

from trimlang.stock.problem import Blank, Part, Problem
from trimlang.stock.search.choosing import choose
from trimlang.stock.sticks.timber import Pattern, Timber, timber_of

SIZES = 3
KINDS = 2


def timber(demand: list[int]) -> Timber:
    """Return sizes of which so many are to be cut, with none left out where that is none."""
    parts = [Part(f"p{n}", 10 - n) for n in range(SIZES)]
    whole = timber_of(Problem("base", tuple(parts), (Blank("a", 30, 2), Blank("b", 20, 1))))
    ids = (tuple(f"{n}/{i}" for i in range(number)) for n, number in enumerate(demand))
    sizes = (replace(size, ids=own) for size, own in zip(whole.sizes, ids, strict=True))
    return replace(whole, sizes=tuple(sizes))


patterns = st.lists(
    st.tuples(
        st.integers(0, KINDS - 1),
        st.lists(st.integers(0, SIZES - 1), min_size=1, max_size=3).map(lambda p: tuple(sorted(p))),
    ),
    max_size=4,
    unique=True,
)
demands = st.lists(st.integers(0, 3), min_size=SIZES, max_size=SIZES)
racks = st.lists(st.integers(0, 2), min_size=KINDS, max_size=KINDS)
more = st.lists(st.sampled_from((0, 1, inf)), min_size=SIZES, max_size=SIZES)


def holds(
    sticks: list[tuple[int, Pattern]] | tuple[tuple[int, Pattern], ...],
    demand: list[int],
    counts: list[int],
    beyond: list[float],
) -> bool:
    cut = Counter(size for _, pattern in sticks for size in pattern)
    used = Counter(kind for kind, _ in sticks)
    return all(
        number <= cut[size] <= number + more
        for size, (number, more) in enumerate(zip(demand, beyond, strict=True))
    ) and all(used[kind] <= number for kind, number in enumerate(counts))


@settings(max_examples=60)
@given(patterns, demands, racks, more)
def test_a_choice_is_found_where_there_is_one(
    given: list[tuple[int, Pattern]], demand: list[int], counts: list[int], beyond: list[float]
) -> None:
    found = choose(timber(demand), given, counts, beyond, 60.0)
    times = product(*(range(counts[kind] + 1) for kind, _ in given))
    possible = any(
        holds(
            [one for one, n in zip(given, often, strict=True) for _ in range(n)],
            demand,
            counts,
            beyond,
        )
        for often in times
    )
    assert found.settled
    assert (found.sticks is not None) is possible
    if found.sticks is not None:
        assert holds(found.sticks, demand, counts, [0] * SIZES)
        # a piece that is not wanted is left out of its pattern
        assert all(
            any(one == kind and not Counter(pattern) - Counter(whole) for one, whole in given)
            for kind, pattern in found.sticks
        )
