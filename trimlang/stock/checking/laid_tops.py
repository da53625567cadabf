"""The most that pieces laid one after another are worth on a stick; part of the check of a proof.

Neighbours share mitres.  A shape may come more often than there are pieces of it, except
square ones: that only makes the answer larger.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Final

from trimlang.record import record

LOW: Final = -(1 << 60)
"""Stands for an impossible state: less than any worth."""

WIDTH: Final = 64
"""How much room is filled at once by pieces that take more than this; more if every piece does."""


@record
class Laid:
    """Pieces that are cut alike: their room with a kerf, leans of both ends, how many there are."""

    weight: int
    left: int
    right: int
    count: int


def shared_by(right: int, left: int) -> int:
    """Return what two neighbours share, given the leans of the ends that meet."""
    return max(min(right, left), min(-right, -left), 0)


def laid_tops(
    pieces: Sequence[Laid], values: Sequence[int], rooms: Sequence[int]
) -> list[int] | None:
    """Return the most that pieces are worth in each room; None: not worked out for these leans.

    Square pieces share nothing, so they may as well lie behind all others.
    """
    import numpy as np

    most = max(max(rooms, default=0), 0)
    square = [
        (piece.weight, value, min(piece.count, most // max(piece.weight, 1)))
        for piece, value in zip(pieces, values, strict=True)
        if value > 0 and not piece.left and not piece.right
    ]
    # A piece without weight could be laid without end.
    if any(weight <= 0 for weight, _, _ in square):
        return None
    chain = _Chain(np, pieces, values, most)
    # Pieces that take no room beside each other could be laid without end.
    if chain.step <= 0:
        return None
    leaning, behind = chain.row(), best_by_room(square, most)
    return [
        int((leaning[: room + 1] + behind[room::-1][: room + 1]).max()) if room >= 0 else 0
        for room in rooms
    ]


def best_by_room(used: Sequence[tuple[int, int, int]], most: int) -> Any:
    """Return, for each room up to ``most``, what (weight, value, count) pieces are worth in it."""
    import numpy as np

    row = np.zeros(most + 1, dtype=np.int64)
    for weight, value, count in used:
        # Bundles of 1, 2, 4 … equal pieces and a last one: together they make up every number.
        left, part = count, 1
        while left > 0:
            part = min(part, left)
            load = part * weight
            if load <= most:
                row[load:] = np.maximum(row[load:], row[: most + 1 - load] + part * value)
            left -= part
            part *= 2
    return row


class _Chain:
    """The dynamic program over the leaning pieces, by room and the lean that the last ends in."""

    def __init__(self, np: Any, pieces: Sequence[Laid], values: Sequence[int], most: int) -> None:
        self._np = np
        self._most = most
        mitred = [i for i, piece in enumerate(pieces) if piece.left or piece.right]
        lefts = sorted({pieces[i].left for i in mitred})
        rights = sorted({pieces[i].right for i in mitred})
        before = {lean: max(shared_by(right, lean) for right in rights) for lean in lefts}
        after = {lean: max(shared_by(lean, left) for left in lefts) for lean in rights}
        # A piece without worth is of use only if it lets its neighbours share more than it takes.
        used = [
            i
            for i in mitred
            if values[i] > 0 or pieces[i].weight < before[pieces[i].left] + after[pieces[i].right]
        ]
        net = {i: pieces[i].weight - before[pieces[i].left] for i in used}
        # In what steps the room is filled: the least that any piece adds.
        self.step = min(net.values(), default=1)
        if any(max(abs(pieces[i].left), abs(pieces[i].right)) > pieces[i].weight for i in used):
            self.step = 0
        self._pad = max((pieces[i].weight for i in used), default=0)
        width = self._width = max(WIDTH, self.step)
        self._wide = self._by_leans(pieces, values, [i for i in used if net[i] >= width])
        self._narrow = self._by_leans(pieces, values, [i for i in used if net[i] < width])
        # Before the cells for room stand _pad cells of less than none: a piece that does not fit
        # finds an impossible state there.
        cells = self._pad + most + 1
        self._ends = {lean: np.full(cells, LOW, dtype=np.int64) for lean in rights}
        self._starts = {lean: np.full(cells, LOW, dtype=np.int64) for lean in lefts}
        # The first piece has none before it: wherever it starts, nothing is worth anything yet.
        for starts in self._starts.values():
            starts[self._pad :] = 0

    def _by_leans(
        self, pieces: Sequence[Laid], values: Sequence[int], some: Sequence[int]
    ) -> list[tuple[int, int, Any, Any]]:
        """Return left and right lean, weights and values of the pieces that lean alike."""
        np = self._np
        alike: dict[tuple[int, int], list[int]] = {}
        for i in some:
            alike.setdefault((pieces[i].left, pieces[i].right), []).append(i)
        return [
            (
                left,
                right,
                np.array([pieces[i].weight for i in group], dtype=np.int64)[:, None],
                np.array([values[i] for i in group], dtype=np.int64)[:, None],
            )
            for (left, right), group in alike.items()
        ]

    def row(self) -> Any:
        """Return, for each room, the most that a chain of pieces within it is worth."""
        np = self._np
        for start in range(0, self._most + 1, self._width):
            stop = min(start + self._width, self._most + 1)
            self._lay(self._wide, start, stop)
            step = self.step if self._narrow else self._width
            for low in range(start, stop, step):
                high = min(low + step, stop)
                self._lay(self._narrow, low, high)
                self._settle(low, high)
        best = np.zeros(self._most + 1, dtype=np.int64)
        for ends in self._ends.values():
            best = np.maximum(best, ends[self._pad :])
        return best

    def _lay(self, groups: Sequence[tuple[int, int, Any, Any]], low: int, high: int) -> None:
        """Let pieces end within a stretch of the room."""
        np = self._np
        reach = self._pad + np.arange(low, high)
        for left, right, weights, values in groups:
            found = (self._starts[left][reach - weights] + values).max(axis=0)
            ends = self._ends[right][self._pad + low : self._pad + high]
            np.maximum(ends, found, out=ends)

    def _settle(self, low: int, high: int) -> None:
        """Carry the best of less room forward, and let pieces start after those that end here."""
        np = self._np
        first, last = self._pad + low, self._pad + high
        for right, ends in self._ends.items():
            ends[first:last] = np.maximum.accumulate(ends[max(first - 1, 0) : last])[
                -(last - first) :
            ]
            for left, starts in self._starts.items():
                shared = shared_by(right, left)
                begin = max(first - shared, 0)
                there = starts[begin : last - shared]
                np.maximum(there, ends[begin + shared : last], out=there)


__all__ = ["Laid", "best_by_room", "laid_tops", "shared_by"]
