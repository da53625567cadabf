"""A plan that suits the hand, at no cost in sticks or money: one long offcut, and few scraps.

Pieces are moved and exchanged between the sticks of a finished packing.  First one stick is to keep
the longest rest, then as few others as can be are to leave a scrap, a rest too short to keep.
It is a local search: it says nothing of the best that there is.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final, TypeAlias

from trimlang.stock.packings.packing import Packing
from trimlang.stock.sticks.timber import Pattern, Timber

TARGETS: Final = 4
"""Sticks tried as the one that keeps the long rest, emptiest first."""

MOVES: Final = 40
"""Pieces moved or exchanged for one target, and to be rid of scraps."""

SCRAPS: Final = 60
"""Sticks among which pieces are moved to be rid of scraps, emptiest first."""

_Move: TypeAlias = tuple[int, int, int, int | None]
"""What a stick gains, the other stick, the size moved there, the size taken in exchange."""


@dataclass(slots=True)
class _Laid:
    """What lies on each stick, and the room that is left beside it; negative: mitres are shared."""

    weights: Sequence[int]
    patterns: list[list[int]]
    rests: list[int]

    def copy(self) -> _Laid:
        return _Laid(self.weights, [list(one) for one in self.patterns], list(self.rests))

    def move(self, here: int, move: _Move) -> None:
        """Move a piece from one stick to another, or exchange two."""
        gain, there, out, back = move
        self.patterns[here].remove(out)
        self.patterns[there].append(out)
        if back is not None:
            self.patterns[there].remove(back)
            self.patterns[here].append(back)
        self.rests[here] += gain
        self.rests[there] -= gain


def tidied(timber: Timber, packing: Packing) -> Packing:
    """Return a packing of the same sticks with one long offcut and few scraps.

    The longest offcut of the result is no shorter, and at the same length it leaves no more scraps.
    """
    weights = [size.weight for size in timber.sizes]
    sticks = _Laid(
        weights,
        [list(pattern) for _, pattern in packing.sticks],
        [
            timber.kinds[kind].room - sum(weights[size] for size in pattern)
            for kind, pattern in packing.sticks
        ],
    )
    # A negative rest: the pieces fit only because they share mitres.  Such a stick is left alone.
    order = sorted(range(len(sticks.rests)), key=lambda place: (-sticks.rests[place], place))
    best = sticks
    for target in order[:TARGETS]:
        if sticks.rests[target] < 0:
            continue
        # Each target starts from the packing as it was: moves for another one may stand in its way.
        tried = sticks.copy()
        _empty(tried, target)
        # Only a longer rest than any so far is worth the change.
        if tried.rests[target] > max(best.rests):
            best = tried
    best = best.copy()
    _use_up_scraps(best, timber.problem.kerf, timber.problem.usable)
    if best.patterns == sticks.patterns:
        return packing
    kinds = (kind for kind, _ in packing.sticks)
    laid = ((kind, _pattern(one)) for kind, one in zip(kinds, best.patterns, strict=True))
    return Packing(tuple(laid), packing.cost)


def _pattern(pattern: Sequence[int]) -> Pattern:
    return tuple(sorted(pattern))


def _empty(sticks: _Laid, target: int) -> None:
    """Move what can be moved off the target, so that its rest grows."""
    for _ in range(MOVES):
        # The most gain first; of those the first move found.
        move = max(_moves(sticks, target), key=lambda one: one[0], default=None)
        if move is None:
            return
        sticks.move(target, move)


def _moves(sticks: _Laid, here: int, others: Sequence[int] | None = None) -> Iterator[_Move]:
    """Yield the moves and exchanges that make a stick's rest longer.

    The last piece stays: a stick with none would not be cut at all.
    """
    weights, alone = sticks.weights, len(sticks.patterns[here]) == 1
    # In order of size, so that every machine makes the same moves.
    for out in sorted(set(sticks.patterns[here])):
        for there in range(len(sticks.rests)) if others is None else others:
            rest = sticks.rests[there]
            # A stick that fits only by shared mitres has less than nothing left, and takes no
            # piece.
            if there == here or rest <= 0:
                continue
            if weights[out] <= rest and not alone:
                yield weights[out], there, out, None
            for back in sticks.patterns[there]:
                gain = weights[out] - weights[back]
                if 0 < gain <= rest:
                    yield gain, there, out, back


def _use_up_scraps(sticks: _Laid, kerf: int, usable: int) -> None:
    """Move pieces so that fewer sticks leave a scrap; the longest rest stays as long."""

    def scraps(*rests: int) -> int:
        # What is no longer than a kerf turns to dust.
        return sum(0 < rest - kerf < usable for rest in rests)

    longest = max(range(len(sticks.rests)), key=lambda place: sticks.rests[place], default=0)
    order = sorted(range(len(sticks.rests)), key=lambda place: (-sticks.rests[place], place))
    # The longest rest stays out of this: it was won just before.
    near = [place for place in order if sticks.rests[place] >= 0 and place != longest][:SCRAPS]
    for _ in range(MOVES):
        rests = sticks.rests
        # The first move that helps will do: looking for the best each time costs more than it
        # saves.
        move = next(
            (
                (here, move)
                for here in near
                for move in _moves(sticks, here, near)
                if scraps(rests[here] + move[0], rests[move[1]] - move[0])
                < scraps(rests[here], rests[move[1]])
            ),
            None,
        )
        if move is None:
            return
        sticks.move(*move)
