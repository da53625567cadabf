"""Finds valuable patterns that can really be laid, with the mitres shared that then meet.

``Nesting`` bounds what a stick can be worth, and may lay a size more often than
there are pieces of it.  Here each piece is laid at most once: the pieces are offered
in some order, and each is laid at the right end of those laid so far, or left out.  It
overlaps its neighbour as far as their leans allow.  Other orders give other patterns,
so the best pattern of all may be missed; what is found can be cut.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, Final

from trimlang.stock.patterns.pricing import most_valuable
from trimlang.stock.sticks.mitres import NEVER, overlap
from trimlang.stock.sticks.timber import Pattern

if TYPE_CHECKING:
    from trimlang.stock.sticks.timber import Size

NO_PIECE: Final = -1
"""In a row of predecessors: no piece lies before this one."""
LEFT_OUT: Final = -2
"""In a row of predecessors: the piece is left out here."""


class Chaining:
    """One run of the dynamic program over the room and the lean of the last piece.

    Args:
        sizes: what can be laid.
        rooms: of each kind, in the problem's unit.
        values: of one piece of each size.
        order: sizes in the order in which they are offered, one entry for each piece.
    """

    def __init__(
        self,
        sizes: Sequence[Size],
        rooms: Sequence[int],
        values: Sequence[int],
        order: Sequence[int],
    ) -> None:
        import numpy as np

        self._sizes = sizes
        self._rooms = rooms
        most = max(max(rooms, default=0), 0)
        self._leans = sorted({sizes[i].right for i in order})
        rows = [np.full(most + 1, NEVER, dtype=np.int64) for _ in self._leans]
        # The best by room whatever the last lean, and which lean that is: most neighbours share
        # nothing.
        any_row = np.zeros(most + 1, dtype=np.int64)
        any_lean = np.full(most + 1, NO_PIECE, dtype=np.int8)
        places = np.array([max(room, 0) for room in rooms], dtype=np.int64)
        # Of each piece laid: its size, the place of the lean it ends in, what lies before it.
        self._stages: list[tuple[int, int, Any]] = []
        ends: list[Any] = []
        for size in order:
            shape, value = sizes[size], values[size]
            # What is worth nothing is left out: a pattern may be cut without it.
            if value <= 0 or shape.weight > most:
                continue
            count = most + 1 - shape.weight
            best, before = any_row[:count], any_lean[:count]
            for number, lean in enumerate(self._leans):
                shift = overlap(lean, shape.left)
                # Beside such a neighbour the piece begins `shift` earlier, so more room was there
                # before it.
                if shift:
                    shift = min(shift, shape.weight)
                    other = rows[number][shift : shift + count]
                    better = other > best
                    best = np.where(better, other, best)
                    before = np.where(better, np.int8(number), before)
            reach = best + value
            right = self._leans.index(shape.right)
            row = rows[right]
            # Only where laying the piece here is better than what already ends in this lean.
            take = reach > row[shape.weight :]
            pred = np.where(take, before, np.int8(LEFT_OUT))
            at = places - shape.weight
            ends.append(np.where(at >= 0, reach[np.maximum(at, 0)], -1))
            self._stages.append((size, right, (pred, before)))
            np.maximum(row[shape.weight :], reach, out=row[shape.weight :])
            rise = row > any_row
            any_row = np.where(rise, row, any_row)
            any_lean = np.where(rise, np.int8(right), any_lean)
        self._ends = np.array(ends, dtype=np.int64).reshape(len(ends), len(rooms))

    def patterns(self, kind: int, above: int, most: int) -> list[Pattern]:
        """Return up to ``most`` patterns for a kind worth more than ``above``, best first."""
        room = self._rooms[kind]
        values = self._ends[:, kind].tolist()
        return most_valuable(values, above, most, lambda stage: self._traced(stage, room))

    def _traced(self, last: int, room: int) -> Pattern:
        """Return the best pattern that ends with the piece of stage ``last``."""
        size, _, (_, before) = self._stages[last]
        pattern = [size]
        at = room - self._sizes[size].weight
        lean = int(before[at])
        stage = last
        while lean != NO_PIECE:
            at += overlap(self._leans[lean], self._sizes[pattern[-1]].left)
            stage -= 1
            # The piece before was laid in an earlier stage, the last one that was taken there and
            # ends in this lean.
            while True:
                size, right, (pred, _) = self._stages[stage]
                place = at - self._sizes[size].weight
                if right == lean and place >= 0 and pred[place] != LEFT_OUT:
                    break
                stage -= 1
            pattern.append(size)
            lean, at = int(pred[place]), place
        return tuple(sorted(pattern))
