"""Finds the most valuable ways to lay pieces on a stick where neighbours share mitres.

``Pricing`` charges each mitre that might be shared to one side, whatever lies
beside it.  Here a stick is laid piece after piece from its left end, and a piece
overlaps its left neighbour by exactly as much as their leans allow, so no overlap
is counted that no order gives.  In return a size may be laid more often than
the job has pieces of it: with many sizes that seldom makes a pattern worth more.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, Final

from trimlang.record import record
from trimlang.stock.patterns.pricing import most_valuable
from trimlang.stock.sticks.mitres import NEVER, overlap
from trimlang.stock.sticks.timber import Pattern

if TYPE_CHECKING:
    from trimlang.stock.sticks.timber import Size

STRETCHES: Final = 48
"""The longest stick is divided into so many stretches, fewer where each piece is longer."""
STEPS: Final = 8_000
"""The most steps in which a stick is filled; more would take too long."""


@record
class Group:
    """Sizes whose two ends lean alike: their weights and values, as arrays."""

    left: int
    right: int
    members: tuple[int, ...]
    weights: Any
    values: Any


def can_nest(sizes: Sequence[Size], rooms: Sequence[int], steps: int = STEPS) -> bool:
    """Return whether ``Nesting`` can bound what these sizes are worth on a stick, in fair time.

    ``steps`` is the most in which a stick may be filled.
    Each piece must take at least the room of both its overlaps; otherwise one without
    worth, laid between two others, could save room.
    """
    rights, lefts = {size.right for size in sizes}, {size.left for size in sizes}
    before = {left: max(overlap(right, left) for right in rights) for left in lefts}
    after = {right: max(overlap(right, left) for left in lefts) for right in rights}
    if any(size.weight < before[size.left] + after[size.right] for size in sizes):
        return False
    # A piece adds its weight less its largest overlap on the left; the rows are filled in steps no
    # larger than the least of these.
    finest = min((size.weight - before[size.left] for size in sizes), default=1)
    return finest > 0 and max(rooms, default=0) <= steps * finest


class Nesting:
    """One run of the dynamic program, over the room and the lean that the last piece ends in.

    Args:
        sizes: what can be laid.
        rooms: of each kind, in the problem's unit.
        values: of one piece of each size.
    """

    def __init__(
        self,
        sizes: Sequence[Size],
        rooms: Sequence[int],
        values: Sequence[int],
    ) -> None:
        import numpy as np

        self._sizes = sizes
        self._rooms = rooms
        self._values = values
        most = max(max(rooms, default=0), 0)
        used = [i for i, v in enumerate(values) if v > 0 and sizes[i].weight <= most]
        self._used = used
        self._rights = sorted({sizes[i].right for i in used})
        self._lefts = sorted({sizes[i].left for i in used})
        # Cells left of the stick's beginning, so that looking back by a piece's weight stays
        # inside.
        self._pad = max((sizes[i].weight for i in used), default=0)
        pad = self._pad
        cells = pad + most + 1
        # ends[c][x]: the best laid length of at most x whose last piece ends in lean c
        self._ends = {c: np.full(cells, NEVER, dtype=np.int64) for c in self._rights}
        # before[l][z]: the best that can lie left of a piece of lean l that begins at z
        self._before = {c: np.full(cells, NEVER, dtype=np.int64) for c in self._lefts}
        for row in self._before.values():
            row[pad:] = 0
        self._groups = self._grouped(np)
        self._steps: dict[tuple[int, int], tuple[int, int]] = {}
        self._views: dict[tuple[int, int], Any] = {}
        if used:
            self._fill(np, most)
        self.best: list[int] = [self._worth(room) for room in rooms]

    def _grouped(self, np: Any) -> list[Group]:
        groups: dict[tuple[int, int], list[int]] = {}
        for i in self._used:
            groups.setdefault((self._sizes[i].left, self._sizes[i].right), []).append(i)
        return [
            Group(
                left=left,
                right=right,
                members=tuple(members),
                weights=np.array([self._sizes[i].weight for i in members], dtype=np.int64),
                values=np.array([self._values[i] for i in members], dtype=np.int64),
            )
            for (left, right), members in groups.items()
        ]

    def _fill(self, np: Any, most: int) -> None:
        """Fill the rows from the left, a stretch at a time.

        A piece that adds as much as a stretch is long, or more, looks back only to stretches filled
        before, so it is laid for a whole stretch at once.  Smaller ones are laid in finer steps.
        """
        # The least that each piece adds to the laid length, its left end overlapping.
        adds = [
            group.weights - max(overlap(right, group.left) for right in self._rights)
            for group in self._groups
        ]
        # A piece that adds less than a stretch may follow another within it, so finer steps
        # are needed.
        step = min(int(one.min()) for one in adds)
        wide = max(most // STRETCHES, step)
        large: list[Group] = []
        small: list[Group] = []
        for group, more in zip(self._groups, adds, strict=True):
            for some, chosen in ((large, more >= wide), (small, more < wide)):
                if chosen.any():
                    some.append(self._part_of(group, chosen.nonzero()[0]))
        step = step if small else wide
        for start in range(0, most + 1, wide):
            end = min(start + wide, most + 1)
            self._lay(np, large, start, end)
            for begin in range(start, end, step):
                stop = min(begin + step, end)
                self._lay(np, small, begin, stop)
                self._open(np, begin, stop)

    def _part_of(self, group: Group, chosen: Any) -> Group:
        return Group(
            left=group.left,
            right=group.right,
            members=tuple(group.members[n] for n in chosen.tolist()),
            weights=group.weights[chosen],
            values=group.values[chosen],
        )

    def _lay(self, np: Any, groups: Sequence[Group], start: int, stop: int) -> None:
        """Lay each group's pieces so that they end between ``start`` and ``stop``."""
        first, width = self._pad + start, stop - start
        for group in groups:
            # For each piece the stretch of `before` that lies its weight further left, without
            # copying.
            found = self._windows(np, group.left, width)[first - group.weights]
            found += group.values[:, None]
            row = self._ends[group.right][first : first + width]
            np.maximum(row, found.max(axis=0), out=row)

    def _windows(self, np: Any, left: int, width: int) -> Any:
        """Return all stretches of this width of the row before a piece of this lean."""
        if (left, width) not in self._views:
            row = self._before[left]
            self._views[left, width] = np.lib.stride_tricks.sliding_window_view(row, width)
        return self._views[left, width]

    def _open(self, np: Any, start: int, stop: int) -> None:
        """Let pieces begin after those that end here, moved back by what the two overlap."""
        low, high = self._pad + start, self._pad + stop
        for left, row in self._before.items():
            for right, ends in self._ends.items():
                shift = overlap(right, left)
                first = max(low - shift, 0)
                if high - shift > first:
                    there = row[first : high - shift]
                    np.maximum(there, ends[first + shift : high], out=there)

    def _worth(self, room: int) -> int:
        if room < 0 or not self._used:
            return 0
        return max(0, *(int(row[self._pad + room]) for row in self._ends.values()))

    def patterns(self, kind: int, above: int, most: int) -> list[Pattern]:
        """Return up to ``most`` patterns for a kind worth more than ``above``, best first."""
        room = self._rooms[kind]
        last: dict[int, int] = {}
        for group in self._groups:
            # What a stick is worth that ends with each of these; one too long finds NEVER.
            begins = self._pad + max(room, 0) - group.weights
            worths = self._before[group.left][begins] + group.values
            last.update(zip(group.members, worths.tolist(), strict=True))
        sizes = sorted(last)
        values = [last[size] for size in sizes]
        return most_valuable(values, above, most, lambda place: self._traced(sizes[place], room))

    def _traced(self, size: int, room: int) -> Pattern:
        pattern = [size]
        at, left = room - self._sizes[size].weight, self._sizes[size].left
        while True:
            value = int(self._before[left][self._pad + at])
            if value <= 0:
                return tuple(sorted(pattern))
            size, at = self._step_back(left, at, value)
            left = self._sizes[size].left
            pattern.append(size)

    def _step_back(self, left: int, at: int, value: int) -> tuple[int, int]:
        """Return the piece that ends where one of lean ``left`` begins, and where it begins."""
        known = self._steps.get((left, at))
        if known is not None:
            return known
        for right in self._rights:
            end = at + overlap(right, left)
            row = self._ends[right]
            place = min(self._pad + end, len(row) - 1)
            if end < 0 or int(row[place]) != value:
                continue
            step = self._piece_before(right, place, value)
            if step is not None:
                self._steps[left, at] = step
                return step
        raise AssertionError("a value without a piece")

    def _piece_before(self, right: int, place: int, value: int) -> tuple[int, int] | None:
        """Return a piece with that right lean that ends at a place and gives this value."""
        for group in (group for group in self._groups if group.right == right):
            begins = place - group.weights
            found = (self._before[group.left][begins] + group.values == value).nonzero()[0]
            if len(found):
                first = int(found[0])
                return group.members[first], int(begins[first]) - self._pad
        return None
