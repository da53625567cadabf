"""Whether a rack of sticks holds too little; part of the check of a proof.

Written anew from ``problem.py``; nothing here comes from the planner.  The rack is worth only
a little more than the pieces, so no pattern of a plan may waste more than that.  The patterns that
waste no more are listed, and HiGHS is asked whether any choice among them cuts everything.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from functools import lru_cache
from typing import Final, TypeAlias

from trimlang.record import record
from trimlang.stock.checking.laid_tops import Laid, shared_by
from trimlang.stock.solver import SEARCH, add_column, quiet_solver, solve_within

Pieces: TypeAlias = tuple[int, ...]
"""A pattern: the shapes of its pieces."""

PATTERNS: Final = 60_000
"""With more patterns than these the question is left open."""

CELLS: Final = 20_000_000
"""The most entries of a table: shapes times room, or shapes times patterns so far."""

ORDERS: Final = 4_000
"""The most orders of leans examined for one pattern; with more it is taken to fit."""

NODES: Final = 20_000
SECONDS: Final = 10.0
"""The most branches of the solver, so that every machine confirms the same, and an outer limit."""


@record
class Listing:
    """A rack and a worth of the pieces; ``least`` is the least room that each piece takes."""

    pieces: tuple[Laid, ...]
    least: tuple[int, ...]
    values: tuple[int, ...]
    rooms: tuple[int, ...]
    tops: tuple[int, ...]
    counts: tuple[int, ...]


def holds_too_little(rack: Listing) -> bool:
    """Return whether no choice of patterns cuts everything; False also where that is left open."""
    have = sum(top * n for top, n in zip(rack.tops, rack.counts, strict=True))
    slack = have - sum(v * p.count for v, p in zip(rack.values, rack.pieces, strict=True))
    # The sticks are worth less than the pieces: nothing more need be shown.
    if slack < 0:
        return True
    listed = _listed(rack, slack)
    if listed is None:
        return False
    # A solver asked about no patterns at all does not say that it is impossible.
    return not listed or not _may_be_chosen(rack, slack, listed)


def _listed(rack: Listing, slack: int) -> list[tuple[int, Pieces]] | None:
    """Return the full patterns of each length that waste no more than ``slack``; None: too many."""
    rooms = [r for r, n in zip(rack.rooms, rack.counts, strict=True) if n and r >= 0]
    if not rooms or (max(rooms) + 1) * (len(rack.pieces) + 1) > CELLS:
        return None
    walk = _Walk(rack, max(rooms))
    found: list[tuple[int, Pieces]] = []
    for place, (room, top, count) in enumerate(
        zip(rack.rooms, rack.tops, rack.counts, strict=True)
    ):
        if count and room >= 0:
            patterns = walk.patterns(room, top - slack)
            if patterns is None or len(found) + len(patterns) > PATTERNS:
                return None
            found.extend((place, pattern) for pattern in patterns)
    return found


class _Walk:
    """Lists patterns, heavy pieces first, all those with the same number of pieces together."""

    def __init__(self, rack: Listing, most: int) -> None:
        import numpy as np

        self._np = np
        self._pieces = rack.pieces
        self._order = order = sorted(
            (i for i, piece in enumerate(rack.pieces) if piece.count), key=lambda i: -rack.least[i]
        )
        self._least = np.array([rack.least[i] for i in order], dtype=np.int64)
        self._values = np.array([rack.values[i] for i in order], dtype=np.int64)
        self._counts = np.array([rack.pieces[i].count for i in order], dtype=np.int64)
        self._light = sorted((rack.pieces[i].weight, i) for i in order)
        # For each shape in order: the most that it and all after it are worth, by room.
        self._rests = np.zeros((len(order) + 1, most + 1), dtype=np.int64)
        for at in range(len(order) - 1, -1, -1):
            weight, value = rack.least[order[at]], rack.values[order[at]]
            after, row = self._rests[at + 1], self._rests[at]
            row[:] = after
            count = rack.pieces[order[at]].count
            for number in range(1, (min(count, most // weight) if weight else count) + 1):
                load = number * weight
                row[load:] = np.maximum(row[load:], after[: most + 1 - load] + number * value)

    def patterns(self, room: int, wanted: int) -> list[Pieces] | None:
        """Return the full patterns that are worth ``wanted`` or more; None: too many."""
        np = self._np
        found: list[Pieces] = []
        # Of each pattern so far: its last shape, how many of that shape, room left, worth.
        last, run = np.zeros(1, dtype=np.int64), np.zeros(1, dtype=np.int64)
        left, worth = np.full(1, room, dtype=np.int64), np.zeros(1, dtype=np.int64)
        laid = np.zeros((1, 0), dtype=np.int64)
        shapes = np.arange(len(self._order))
        while len(last):
            done = worth >= wanted
            for row in laid[done].tolist():
                pattern = tuple(self._order[at] for at in row)
                if self._is_full(pattern, room):
                    found.append(pattern)
            if len(last) * len(shapes) > CELLS or len(found) > PATTERNS:
                return None
            rest = left[:, None] - self._least
            best = self._rests[shapes, np.maximum(rest, 0)]
            # A further piece must fit, and with the best that can follow it the pattern must reach
            # what is wanted.  Shapes come in order, so no pattern is listed twice.
            more = (rest >= 0) & (worth[:, None] + self._values + best >= wanted)
            more &= shapes >= last[:, None]
            again = shapes == last[:, None]
            more &= ~again | (run[:, None] < self._counts)
            row, shape = more.nonzero()
            run = np.where(shape == last[row], run[row], 0) + 1
            left, worth = rest[row, shape], worth[row] + self._values[shape]
            laid = np.column_stack([laid[row], shape])
            last = shape
        return found

    def _is_full(self, pattern: Pieces, room: int) -> bool:
        """Return whether the pieces can be laid in the room and no other one fits behind them."""
        pieces = [self._pieces[i] for i in pattern]
        leans = Counter((one.left, one.right) for one in pieces if one.left or one.right)
        shared = _most_shared(tuple(sorted(leans.items())))
        # Too many orders to try: taken to fit, which only makes more patterns possible.
        if shared is None:
            return True
        left = room - sum(one.weight for one in pieces) + shared
        if left < 0:
            return False
        for weight, i in self._light:
            if weight > left:
                break
            if pattern.count(i) < self._pieces[i].count:
                return False
        return True


@lru_cache(maxsize=100_000)
def _most_shared(alike: tuple[tuple[tuple[int, int], int], ...]) -> int | None:
    """Return the most that pieces with these leans share in any order; None: too many orders."""
    if not alike:
        return 0
    sorts = [leans for leans, _ in alike]
    best: dict[tuple[Pieces, int], int] = {((0,) * len(sorts), -1): 0}
    reached = 0
    for _ in range(sum(n for _, n in alike)):
        after: dict[tuple[Pieces, int], int] = {}
        for (laid, last), shared in best.items():
            for at, (left, _) in enumerate(sorts):
                if laid[at] < alike[at][1]:
                    more = shared + (shared_by(sorts[last][1], left) if last >= 0 else 0)
                    key = (*laid[:at], laid[at] + 1, *laid[at + 1 :]), at
                    if more > after.get(key, -1):
                        after[key] = more
        best = after
        reached += len(best)
        if reached > ORDERS:
            return None
    return max(best.values())


def _may_be_chosen(rack: Listing, slack: int, listed: Sequence[tuple[int, Pieces]]) -> bool:
    """Return whether some choice of patterns cuts everything; True where the solver gave up."""
    import highspy
    import numpy as np

    solver = quiet_solver({"mip_max_nodes": NODES, **SEARCH})
    inf = highspy.kHighsInf
    for piece, value in zip(rack.pieces, rack.values, strict=True):
        # What is cut beyond the count is worth no more than the rack has to spare.
        most = float(piece.count + slack // value) if value else inf
        solver.addRow(float(piece.count), most, 0, np.zeros(0, dtype=np.int32), np.zeros(0))
    for count in rack.counts:
        solver.addRow(-inf, float(count), 0, np.zeros(0, dtype=np.int32), np.zeros(0))
    for place, pattern in listed:
        entries = {**Counter(pattern), len(rack.pieces) + place: 1}
        add_column(solver, 0.0, float(rack.counts[place]), entries)
    columns = len(listed)
    solver.changeColsIntegrality(
        columns,
        np.arange(columns, dtype=np.int32),
        np.full(columns, highspy.HighsVarType.kInteger),
    )
    solve_within(solver, SECONDS)
    return bool(solver.getModelStatus() != highspy.HighsModelStatus.kInfeasible)


__all__ = ["Listing", "holds_too_little"]
