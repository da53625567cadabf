"""Least cost and fewest sticks by trying everything, neighbours sharing mitres: for a few pieces.

Written from the definition in ``trimlang/stock/problem.py`` and sharing no code with the planner.
"""

from __future__ import annotations

from functools import cache

from trimlang.stock.problem import Part, Problem


def least(problem: Problem) -> tuple[int, int]:
    """Return the least cost and, at that cost, the fewest sticks.

    Every kind of stick must be had one by one, as many as are wanted, without spare.
    """
    assert all(blank.pack == 1 and blank.limit is None for blank in problem.blanks)
    assert not problem.spare
    assert not problem.survive_loss
    price = _prices(problem)
    every = (1 << len(problem.parts)) - 1

    @cache
    def best(left: int) -> tuple[int, int]:
        if not left:
            return 0, 0
        first = left & -left
        rest = left ^ first
        found = []
        beside = rest
        while True:
            one = price[beside | first]
            if one is not None:
                cost, sticks = best(rest ^ beside)
                found.append((cost + one, sticks + 1))
            if not beside:
                return min(found)
            beside = (beside - 1) & rest

    return best(every)


def _prices(problem: Problem) -> list[int | None]:
    """Return what the cheapest stick costs that holds each set of pieces, by its bits."""
    shortest = _shortest(problem)
    rooms = [(blank.length - 2 * problem.end_waste, blank.price) for blank in problem.blanks]
    return [
        min((price for room, price in rooms if room >= needed), default=None) for needed in shortest
    ]


def _shortest(problem: Problem) -> list[int]:
    """Return how long each set of pieces is when laid in its best order."""
    parts = problem.parts
    far = sum(part.length + problem.kerf for part in parts) + 1
    # by the set and its last piece
    ends = [[far] * len(parts) for _ in range(1 << len(parts))]
    for number, part in enumerate(parts):
        ends[1 << number][number] = part.length
    for group, lengths in enumerate(ends):
        for last, length in enumerate(lengths):
            if length == far:
                continue
            for number, part in enumerate(parts):
                bit = 1 << number
                if not group & bit:
                    beside = length + problem.kerf + part.length - _shared(parts[last], part)
                    ends[group | bit][number] = min(ends[group | bit][number], beside)
    return [0, *(min(lengths) for lengths in ends[1:])]


def _shared(one: Part, after: Part) -> int:
    if one.right_lean * after.left_lean <= 0:
        return 0
    return min(abs(one.right_lean), abs(after.left_lean))
