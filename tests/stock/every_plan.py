"""Least cost and fewest sticks by trying everything, however sticks are had: for a few pieces.

Written from the definition in ``trimlang/stock/problem.py`` and sharing no code with the planner.
"""

from __future__ import annotations

from functools import cache
from itertools import pairwise, permutations, product

from trimlang.stock.problem import Blank, Part, Problem


def least_of_every_plan(problem: Problem) -> tuple[int, int] | None:
    """Return the least cost and, at that cost, the fewest sticks cut; None: it cannot be cut.

    Every set of pieces is laid on every blank, and every way of buying is tried: free,
    limited, in packs, at several prices, with whole sticks to spare.  Pieces a spoiled one
    needs room for are not thought of.
    """
    assert not problem.survive_loss
    blanks = problem.blanks
    reach = [_shortest(problem, group) for group in range(1 << len(problem.parts))]
    rooms = [blank.length - 2 * problem.end_waste for blank in blanks]

    @cache
    def cuts(left: int) -> frozenset[tuple[int, ...]]:
        """Return every choice of sticks, by blank, from which the pieces can be cut."""
        if not left:
            return frozenset({(0,) * len(blanks)})
        first = left & -left
        rest = beside = left ^ first
        found: set[tuple[int, ...]] = set()
        while True:
            for number, room in enumerate(rooms):
                if reach[beside | first] <= room:
                    for more in cuts(rest ^ beside):
                        used = more[number] + 1
                        limit = blanks[number].limit
                        if limit is None or used <= limit:
                            found.add((*more[:number], used, *more[number + 1 :]))
            if not beside:
                return frozenset(found)
            beside = (beside - 1) & rest

    plans = (
        (cost, sum(used))
        for used in cuts((1 << len(problem.parts)) - 1)
        if (cost := _least_price(problem, used)) is not None
    )
    return min(plans, default=None)


def _least_price(problem: Problem, used: tuple[int, ...]) -> int | None:
    """Return what these sticks and the spare cost at the least; None: they cannot be had."""
    choices = (
        _packs(problem, blank, count) for blank, count in zip(problem.blanks, used, strict=True)
    )
    costs = []
    for packs in product(*choices):
        whole = sum(
            (number * blank.pack - count) * blank.length
            for blank, count, number in zip(problem.blanks, used, packs, strict=True)
            if not blank.on_hand
        )
        bundles = {
            (blank.bundle, number)
            for number, blank in zip(packs, problem.blanks, strict=True)
            if blank.bundle
        }
        if len(bundles) > len({name for name, _ in bundles}):
            continue
        bought = [
            (number * blank.pack, number * blank.price)
            for blank, number in zip(problem.blanks, packs, strict=True)
            if not blank.on_hand
        ]
        sticks, spent = (sum(column) for column in zip((0, 0), *bought, strict=True))
        if sticks and (sticks < problem.least_sticks or spent < problem.least_spent):
            continue
        if whole >= problem.spare:
            costs.append(
                sum(n * blank.price for n, blank in zip(packs, problem.blanks, strict=True))
            )
    return min(costs, default=None)


def _packs(problem: Problem, blank: Blank, count: int) -> range:
    """Return how many packs may be worth having for the sticks, the spare and the yard's least."""
    besides = -(-problem.spare // blank.length)
    if not blank.on_hand:
        besides += problem.least_sticks
        # A whole bundle may be worth having for one of its sticks.
        besides += len(problem.parts) * blank.pack if blank.bundle else 0
        besides += blank.pack * -(-problem.least_spent // blank.price) if blank.price else 0
    least = -(-count // blank.pack)
    most = -(-(count + besides) // blank.pack)
    if blank.limit is not None:
        most = min(most, blank.limit // blank.pack)
    return range(least, most + 1)


def _shortest(problem: Problem, group: int) -> int:
    """Return how long a set of pieces is, by its bits, when laid in its best order."""
    parts = [part for number, part in enumerate(problem.parts) if group >> number & 1]
    plain = sum(part.length for part in parts) + problem.kerf * max(len(parts) - 1, 0)
    if not any(part.left_lean or part.right_lean for part in parts):
        return plain
    return plain - max(_shared(order) for order in permutations(parts))


def _shared(order: tuple[Part, ...]) -> int:
    return sum(
        min(abs(one.right_lean), abs(after.left_lean))
        for one, after in pairwise(order)
        if one.right_lean * after.left_lean > 0
    )
