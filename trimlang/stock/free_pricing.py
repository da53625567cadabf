"""Patterns with a part of any length, priced for ``joint_model.py``."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from trimlang.record import record
from trimlang.stock.timber import Pattern, Timber


@record
class LongWall:
    """A wall in so many parts, in the problem's units.

    Together they measure ``total`` at the least, each from ``least`` to ``most``, in whole
    multiples of ``step`` but for the last one.
    """

    total: int
    pieces: int
    least: int
    most: int
    step: int


@record
class FreeStick:
    """A stick with fixed pieces, by their sizes, and parts of walls: (wall, length)."""

    kind: int
    pattern: Pattern
    parts: tuple[tuple[int, int], ...] = ()


class FreePricing:
    """Prices patterns of one timber with at most one part between its wall's limits."""

    def __init__(self, timber: Timber, walls: Sequence[LongWall]) -> None:
        self._timber, self._walls = timber, walls
        self._kerf = timber.problem.kerf
        self._rooms = [kind.room for kind in timber.kinds]

    def sticks(self, duals: Sequence[float], above: float) -> Iterator[FreeStick]:
        """Yield for each kind the best stick with a part of each wall, and the best without."""
        import numpy as np

        sizes, kinds, walls = len(self._timber.sizes), len(self._timber.kinds), len(self._walls)
        paid = duals[sizes : sizes + kinds]
        each_inch = duals[sizes + kinds : sizes + kinds + walls]
        each_part = duals[sizes + kinds + walls :]
        items = [
            (size.weight, duals[number], size.count, number)
            for number, size in enumerate(self._timber.sizes)
        ]
        # a part as short as it may be is a piece like others
        items += [
            (
                wall.least + self._kerf,
                each_inch[w] * wall.least - each_part[w],
                wall.pieces,
                sizes + w,
            )
            for w, wall in enumerate(self._walls)
        ]
        best = _Best(np, items, max(self._rooms, default=0))
        for kind, room in enumerate(self._rooms):
            if room < 0:
                continue
            # Only a stick whose pieces are worth more than it costs betters the program.
            limit = paid[kind] + above
            if best.row[room] > limit:
                yield self._stick(kind, best.pieces(room), ())
            for w, wall in enumerate(self._walls):
                most = min(wall.most, room - self._kerf)
                if most < wall.least:
                    continue
                # All lengths at once: what the part itself is worth, and what the fixed pieces are
                # worth in the room that it leaves.
                lengths = np.arange(wall.least, most + 1, wall.step)
                worth = best.row[room - self._kerf - lengths] + each_inch[w] * lengths
                place = int(worth.argmax())
                if worth[place] - each_part[w] > limit:
                    length = int(lengths[place])
                    others = best.pieces(room - self._kerf - length)
                    yield self._stick(kind, others, ((w, length),))

    def _stick(
        self, kind: int, pieces: Sequence[int], parts: tuple[tuple[int, int], ...]
    ) -> FreeStick:
        sizes = len(self._timber.sizes)
        # Parts of the least length were priced as pieces; here they become parts of their walls
        # again.
        least = [(p - sizes, self._walls[p - sizes].least) for p in pieces if p >= sizes]
        return FreeStick(
            kind, tuple(sorted(p for p in pieces if p < sizes)), tuple(sorted((*parts, *least)))
        )


class _Best:
    """What (weight, value, count, number) items in each room are worth at most, and which."""

    def __init__(self, np: Any, items: Sequence[tuple[int, float, int, int]], most: int) -> None:
        self.row = np.zeros(max(most, 0) + 1)
        self._stages: list[tuple[int, int, int, Any]] = []
        for weight, value, count, number in items:
            if value <= 1e-9 or weight > most or weight <= 0:
                continue
            # A count is split into 1, 2, 4, …: each number of pieces is some sum of these, and
            # there are few of them to try.
            left, part = min(count, most // weight), 1
            while left > 0:
                part = min(part, left)
                load = part * weight
                reach = self.row[: most + 1 - load] + part * value
                takes = reach > self.row[load:]
                self._stages.append((number, part, load, takes))
                self.row[load:] = np.where(takes, reach, self.row[load:])
                left -= part
                part *= 2

    def pieces(self, room: int) -> list[int]:
        """The numbers of the best items in a room."""
        found: list[int] = []
        # Back through the stages: what the last one took leaves the room that the ones before it
        # had.
        for number, part, load, takes in reversed(self._stages):
            if room >= load and takes[room - load]:
                found += [number] * part
                room -= load
        return found


__all__ = ["FreePricing", "FreeStick", "LongWall"]
