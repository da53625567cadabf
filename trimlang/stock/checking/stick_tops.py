"""The most that the pieces on one stick can be worth; part of the check of a proof.

Nothing here comes from the planner: weights of mitred pieces, dynamic programs and bounds
are written separately, from ``problem.py``.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from typing import Final

from trimlang.stock.certificate import Shape
from trimlang.stock.checking.laid_tops import Laid, best_by_room, laid_tops, shared_by
from trimlang.stock.checking.rack_check import Listing, holds_too_little

FEW: Final = 4_000
"""Up to this worth of a stick a table by worth is used; beyond it, one by room."""


class StickTops:
    """Checks what sticks are worth at most, for the pieces of one problem.

    Args:
        counts: how many pieces of each shape.
        rooms: between the trimmed ends of a stick of each length, and one kerf.
        kerf: taken by each piece.
        step: of a coarser grid, on which pieces are rounded down and rooms up.
    """

    def __init__(
        self, counts: dict[Shape, int], rooms: Sequence[int], kerf: int, step: int = 1
    ) -> None:
        self._pieces = [
            Laid(
                weight=(length + kerf) // step,
                left=_away(left, step),
                right=_away(right, step),
                count=count,
            )
            for (length, left, right), count in counts.items()
        ]
        shortest = min((one.weight for one in self._pieces), default=0)
        # the first piece on a stick shares nothing
        self._rooms = [-(-room // step) if -(-room // step) >= shortest else -1 for room in rooms]
        # The least room of a piece of each shape, in the order of ``counts``.
        self.lightest = self._least = _least_weights(self._pieces)
        # Whether any two may share a mitre.
        self.leaning = self._leaning = any(
            any(shared_by(one.right, way) for one in self._pieces)
            and any(shared_by(way, one.left) for one in self._pieces)
            for way in (1, -1)
        )

    def hold(self, values: Sequence[int], tops: Sequence[int]) -> bool:
        """Return whether no pattern on a stick of each length is worth more than its top.

        ``values`` are in the order of the shapes.
        """
        # A negative worth would let patterns look cheaper by pieces that a plan must cut anyway.
        if min(values, default=0) < 0:
            return False
        # From the quickest test to the slowest: each may already show that the tops hold.
        if self._by_rate(values, tops) or _all_within(self._counted(values, tops), tops):
            return True
        # The count was exact then, so the claim is false.
        if not self._leaning:
            return False
        found = laid_tops(self._pieces, values, self._rooms)
        return found is not None and _all_within(found, tops)

    def too_little(self, values: Sequence[int], tops: Sequence[int], counts: Sequence[int]) -> bool:
        """Return whether these sticks are shown to hold too little, given true tops."""
        return holds_too_little(
            Listing(
                pieces=tuple(self._pieces),
                least=tuple(self._least),
                values=tuple(values),
                rooms=tuple(self._rooms),
                tops=tuple(tops),
                counts=tuple(counts),
            )
        )

    def _by_rate(self, values: Sequence[int], tops: Sequence[int]) -> bool:
        """Return whether the best worth for the room, over the whole room, is within each top."""
        worthy = [(v, w) for v, w in zip(values, self._least, strict=True) if v > 0]
        return all(
            v * room <= top * w
            for room, top in zip(self._rooms, tops, strict=True)
            if room > 0
            for v, w in worthy
        )

    def _counted(self, values: Sequence[int], tops: Sequence[int]) -> list[int]:
        """Return the most that pieces are worth on each stick, none used more than there are."""
        most = max(max(self._rooms, default=0), 0)
        used = [
            (weight, value, piece.count if weight == 0 else min(piece.count, most // weight))
            for weight, value, piece in zip(self._least, values, self._pieces, strict=True)
            if value > 0 and weight <= most
        ]
        if max(tops, default=0) <= FEW:
            table = _least_rooms(used, most)
            return [bisect_right(table, room) - 1 if room >= 0 else 0 for room in self._rooms]
        row = best_by_room(used, most)
        # Where there is no stick, not even a piece that takes no room lies on it.
        return [int(row[room]) if room >= 0 else 0 for room in self._rooms]


def _all_within(found: Sequence[int], tops: Sequence[int]) -> bool:
    return all(one <= top for one, top in zip(found, tops, strict=True))


def _away(lean: int, step: int) -> int:
    """Return a lean in whole steps, rounded away from square so that neighbours share no less."""
    size = -(-abs(lean) // step)
    return size if lean > 0 else -size


def _least_weights(pieces: Sequence[Laid]) -> list[int]:
    """Return the least room of each piece, whatever it lies beside.

    A shared mitre takes one right and one left end that lean alike.  All that is shared
    that way is taken off the ends of one side, the side that leans less in all.
    """
    off_right: dict[bool, bool] = {}
    most_right: dict[bool, int] = {}
    most_left: dict[bool, int] = {}
    for way in (True, False):
        rights = [(abs(p.right), p.count) for p in pieces if p.right and (p.right > 0) == way]
        lefts = [(abs(p.left), p.count) for p in pieces if p.left and (p.left > 0) == way]
        off_right[way] = sum(a * n for a, n in rights) <= sum(a * n for a, n in lefts)
        most_right[way] = max((a for a, _ in rights), default=0)
        most_left[way] = max((a for a, _ in lefts), default=0)
    least = []
    for piece in pieces:
        weight = piece.weight
        if piece.right and off_right[piece.right > 0]:
            weight -= min(abs(piece.right), most_left[piece.right > 0])
        if piece.left and not off_right[piece.left > 0]:
            weight -= min(abs(piece.left), most_right[piece.left > 0])
        least.append(max(weight, 0))
    return least


def _least_rooms(used: Sequence[tuple[int, int, int]], most: int) -> list[int]:
    """Return at place n the least room of pieces worth n or more, for rooms up to ``most``.

    Of pieces worth the same the lightest come first, so each worth is gone through once.
    """
    by_value: dict[int, list[int]] = {}
    for weight, value, count in used:
        by_value.setdefault(value, []).extend([weight] * count)
    table = [0]
    for value, weights in by_value.items():
        before, load = table, 0
        table = list(before)
        for number, weight in enumerate(sorted(weights), start=1):
            load += weight
            if load > most:
                break
            shift = number * value
            table.extend([most + 1] * (shift + len(before) - len(table)))
            for worth, room in enumerate(before, start=shift):
                if room + load < table[worth]:
                    table[worth] = room + load
        # Pieces worth more that take less room count for the smaller worth too.
        for worth in range(len(table) - 2, -1, -1):
            if table[worth + 1] < table[worth]:
                table[worth] = table[worth + 1]
        while table[-1] > most:
            table.pop()
    return table


__all__ = ["StickTops"]
