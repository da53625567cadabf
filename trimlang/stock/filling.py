"""Fills a given rack stick by stick, wasting no more than a worth allows.

The longest piece that is left goes on a stick, with some choices of pieces beside it.  After
each stick only the few racks are kept that waste least, in room and in what
the worth counts (a beam search).  Where nothing is found nothing is proven.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final, TypeAlias

from trimlang.stock.floor import Worth
from trimlang.stock.longest_first import fill_counts
from trimlang.stock.timber import Pattern, Timber

Stick = tuple[int, Pattern]

WIDTHS: Final = (4, 16)
"""How many racks are kept after each stick: in a first search, then in a second."""

BESIDE: Final = 200
"""Steps taken to list what may lie beside one piece on one kind of stick."""

BRANCHES: Final = 6
"""How many fillings of the next stick are tried from one rack."""

Laid: TypeAlias = "tuple[Laid, Stick] | None"
"""The sticks laid so far, the last one outermost."""

State = tuple[float, tuple[int, ...], tuple[int, ...], int, int, Laid]
"""A rack so far: part wasted, pieces to cut, sticks left, worth and room to waste, its sticks."""


def fill_rack(timber: Timber, counts: Sequence[int], worth: Worth | None) -> list[Stick] | None:
    """Cut everything from so many sticks of each kind, sharing no mitre; None: not found.

    ``worth`` is one that leaves little of such a rack to waste.
    """
    quick = fill_counts(timber, timber.demand, counts)
    if quick is not None or worth is None:
        return quick
    filling = _Filling(timber, counts, worth)
    for width in WIDTHS:
        found = filling.found(width)
        if found is not None:
            return found
    return None


class _Filling:
    def __init__(self, timber: Timber, counts: Sequence[int], worth: Worth) -> None:
        self._demand, self._counts = timber.demand, tuple(counts)
        self._rooms = [kind.room for kind in timber.kinds]
        self._weights = [size.weight for size in timber.sizes]
        self._values, self._of_kind = worth.of_size, worth.of_kind
        # What the rack has more than the pieces need, in worth and in room: the most that may be
        # wasted.
        self._spoil = sum(w * n for w, n in zip(worth.of_kind, counts, strict=True)) - worth.needed
        self._spare = sum(r * n for r, n in zip(self._rooms, counts, strict=True)) - sum(
            w * n for w, n in zip(self._weights, self._demand, strict=True)
        )

    def found(self, width: int) -> list[Stick] | None:
        """Return the sticks; None where the search ends without them, which proves nothing."""
        if min(self._spoil, self._spare) < 0:
            return None
        states: list[State] = [(0.0, self._demand, self._counts, self._spoil, self._spare, None)]
        while states:
            after: dict[tuple[tuple[int, ...], tuple[int, ...]], State] = {}
            for state in states:
                for follower in self._followers(state):
                    wasted, wanted, left, *_ = follower
                    if not any(wanted):
                        return _sticks(follower[5])
                    known = after.get((wanted, left))
                    if known is None or wasted < known[0]:
                        after[wanted, left] = follower
            states = sorted(after.values(), key=lambda state: state[:3])[:width]
        return None

    def _followers(self, state: State) -> Iterator[State]:
        """Yield the racks after one more stick, those that waste least first."""
        _, wanted, left, spoil, spare, sticks = state
        pieces = [size for size, number in enumerate(wanted) for _ in range(number)]
        first = pieces.pop(0)
        ways: list[tuple[float, int, Pattern, int, int]] = []
        for kind, number in enumerate(left):
            room = self._rooms[kind] - self._weights[first]
            if number and room >= 0:
                short = self._of_kind[kind] - self._values[first]
                for gap, value, beside in self._beside(pieces, room):
                    rest, more = spoil - short + value, spare - gap
                    if rest >= 0 and more >= 0:
                        # What counts is the scarcer of the two: the worth and the room that may
                        # still be wasted.
                        wasted = max(
                            (self._spoil - rest + 0.5) / (self._spoil + 1),
                            (self._spare - more) / (self._spare + 1),
                        )
                        ways.append((wasted, kind, beside, rest, more))
        ways.sort()
        for wasted, kind, beside, rest, more in ways[:BRANCHES]:
            after = list(wanted)
            after[first] -= 1
            for size in beside:
                after[size] -= 1
            sticks_left = (*left[:kind], left[kind] - 1, *left[kind + 1 :])
            laid: Laid = (sticks, (kind, (first, *beside)))
            yield (wasted, tuple(after), sticks_left, rest, more, laid)

    def _beside(self, pieces: Sequence[int], room: int) -> Iterator[tuple[int, int, Pattern]]:
        """Yield (gap, value, sizes) of the fillings of a room to which no piece can be added."""
        weights, values = self._weights, self._values
        start = next((at for at, size in enumerate(pieces) if weights[size] <= room), len(pieces))
        stack: list[tuple[int, int, int, tuple[int, ...]]] = [(start, room, 0, ())]
        for _ in range(BESIDE):
            if not stack:
                return
            place, left, value, taken = stack.pop()
            full = True
            for at in range(len(pieces) - 1, place - 1, -1):
                size = pieces[at]
                if weights[size] > left:
                    break
                full = False
                if at > place and pieces[at - 1] == size:
                    continue  # pieces of one size: taking either gives the same filling
                stack.append((at + 1, left - weights[size], value + values[size], (*taken, size)))
            if full:
                yield left, value, taken


def _sticks(laid: Laid) -> list[Stick]:
    sticks: list[Stick] = []
    while laid is not None:
        laid, stick = laid
        sticks.append(stick)
    return sticks[::-1]
