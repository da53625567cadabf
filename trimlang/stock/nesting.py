"""The most valuable ways to lay pieces on a stick where neighbours share mitres.

``Pricing`` charges each mitre that might be shared to one side, whatever lies
beside it.  Here a stick is laid piece after piece from its left end, and a piece
overlaps its left neighbour by just as much as their leans allow, so no overlap
is counted that no order gives.  In exchange a size may be laid more often than
the job has pieces of it: with many sizes that is seldom worth anything.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

from trimlang.stock.mitres import overlap
from trimlang.stock.timber import Pattern

if TYPE_CHECKING:
    from trimlang.stock.timber import Size

NEVER: Final = -(1 << 61)


@dataclass(frozen=True, slots=True)
class _Group:
    """Sizes whose two ends lean alike: their weights and values, as arrays."""

    left: int
    right: int
    members: tuple[int, ...]
    weights: Any
    values: Any


class Nesting:
    """One run of the dynamic program, over the room and the lean that the last piece ends in.

    Args:
        sizes: what can be laid.
        rooms: of each kind, in the problem's unit.
        values: of one piece of each size.
    """

    def __init__(
        self, sizes: Sequence[Size], rooms: Sequence[int], values: Sequence[int]
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
        self._pad = max((sizes[i].weight for i in used), default=0)
        pad = self._pad
        # ends[c][x]: the best laid length of at most x whose last piece ends in lean c
        self._ends = {c: np.full(pad + most + 1, NEVER, dtype=np.int64) for c in self._rights}
        # before[l][z]: the best that can lie left of a piece of lean l that begins at z
        self._before = {c: np.full(pad + most + 1, NEVER, dtype=np.int64) for c in self._lefts}
        for row in self._before.values():
            row[pad:] = 0
        self._groups = self._grouped(np)
        self._steps: dict[tuple[int, int], tuple[int, int]] = {}
        if used:
            self._fill(np, most)
        self.best: list[int] = [self._worth(room) for room in rooms]

    def _grouped(self, np: Any) -> list[_Group]:
        groups: dict[tuple[int, int], list[int]] = {}
        for i in self._used:
            groups.setdefault((self._sizes[i].left, self._sizes[i].right), []).append(i)
        return [
            _Group(
                left,
                right,
                tuple(members),
                np.array([self._sizes[i].weight for i in members], dtype=np.int64),
                np.array([self._values[i] for i in members], dtype=np.int64),
            )
            for (left, right), members in groups.items()
        ]

    def _fill(self, np: Any, most: int) -> None:
        pad = self._pad
        reach = {
            left: max(overlap(right, left) for right in self._rights) for left in self._lefts
        }
        step = min(self._sizes[i].weight - reach[self._sizes[i].left] for i in self._used)
        if step <= 0:
            raise ValueError("a piece takes no room at all")
        shifts = {
            left: [(right, overlap(right, left)) for right in self._rights] for left in self._lefts
        }
        plan = [
            (
                self._before[group.left],
                self._ends[group.right],
                -group.weights[:, None],
                group.values[:, None],
            )
            for group in self._groups
        ]
        span = np.arange(step, dtype=np.int64)
        for start in range(0, most + 1, step):
            width = min(step, most + 1 - start)
            at = span[:width] + (pad + start)
            low, high = pad + start, pad + start + width
            for before, ends, minus, values in plan:
                found = (before[minus + at] + values).max(axis=0)
                np.maximum(ends[low:high], found, out=ends[low:high])
            # a piece that begins at z may reach back over what ends at up to z + overlap
            for left, row in self._before.items():
                for right, shift in shifts[left]:
                    a, b = low - shift, high - shift
                    if b > 0:
                        a0 = max(a, 0)
                        np.maximum(
                            row[a0:b], self._ends[right][low + (a0 - a) : high], out=row[a0:b]
                        )

    def _worth(self, room: int) -> int:
        if room < 0 or not self._used:
            return 0
        return max(0, *(int(row[self._pad + room]) for row in self._ends.values()))

    def patterns(self, kind: int, above: int, most: int) -> list[Pattern]:
        """Up to ``most`` patterns for a kind worth more than ``above``, best first."""
        room = self._rooms[kind]
        ranked = sorted(
            (
                (self._last(size, room), size)
                for size in self._used
                if self._sizes[size].weight <= room
            ),
            key=lambda pair: (-pair[0], pair[1]),
        )
        found: dict[Pattern, None] = {}
        for value, size in ranked[: 2 * most]:
            if value <= above or len(found) >= most:
                break
            found[self._traced(size, room)] = None
        return list(found)

    def _last(self, size: int, room: int) -> int:
        shape = self._sizes[size]
        return int(self._before[shape.left][self._pad + room - shape.weight]) + self._values[size]

    def _traced(self, size: int, room: int) -> Pattern:
        pattern = [size]
        at = room - self._sizes[size].weight
        left = self._sizes[size].left
        while True:
            value = int(self._before[left][self._pad + at])
            if value <= 0:
                return tuple(sorted(pattern))
            size, at = self._step_back(left, at, value)
            left = self._sizes[size].left
            pattern.append(size)

    def _step_back(self, left: int, at: int, value: int) -> tuple[int, int]:
        """The piece that ends where one of lean ``left`` begins, and where it begins itself."""
        known = self._steps.get((left, at))
        if known is not None:
            return known
        for right in self._rights:
            end = at + overlap(right, left)
            row = self._ends[right]
            place = min(self._pad + end, len(row) - 1)
            if end < 0 or int(row[place]) != value:
                continue
            for group in self._groups:
                if group.right != right:
                    continue
                begins = place - group.weights
                worth = self._before[group.left][begins] + group.values
                found = (worth == value).nonzero()[0]
                if len(found):
                    first = int(found[0])
                    step = group.members[first], int(begins[first]) - self._pad
                    self._steps[left, at] = step
                    return step
        raise AssertionError("a value without a piece")
