"""One long offcut rather than many short ones, at no cost in sticks or money."""

from __future__ import annotations

from collections.abc import Sequence

from trimlang.stock.packing import Packing
from trimlang.stock.timber import Pattern, Timber

#: Sticks tried as the one that keeps the long rest, emptiest first.
TARGETS = 4
#: Pieces moved or exchanged for one target.
MOVES = 40


def gathered(timber: Timber, packing: Packing) -> Packing:
    """Return the packing with pieces moved so that one stick keeps a longer rest.

    Pieces move from that stick into rests elsewhere, or change places with
    shorter ones.  This finds a long rest, not always the longest: the plan
    states a bound beside it.
    """
    weights = [size.weight for size in timber.sizes]
    rooms = [timber.kinds[kind].room for kind, _ in packing.sticks]
    rests = [
        room - sum(weights[size] for size in pattern)
        for room, (_, pattern) in zip(rooms, packing.sticks, strict=True)
    ]
    # A negative rest: the pieces fit only because they share mitres.  Such a stick is left alone.
    order = sorted(range(len(rests)), key=lambda place: (-rests[place], place))
    best, longest = None, max(rests, default=0)
    for target in order[:TARGETS]:
        if rests[target] < 0:
            continue
        patterns = [list(pattern) for _, pattern in packing.sticks]
        reached = _emptied(weights, patterns, list(rests), target)
        if reached > longest:
            best, longest = patterns, reached
    if best is None:
        return packing
    sticks = [
        (kind, _pattern(pattern))
        for (kind, _), pattern in zip(packing.sticks, best, strict=True)
        if pattern
    ]
    return Packing(tuple(sticks), packing.cost)


def _pattern(pattern: Sequence[int]) -> Pattern:
    return tuple(sorted(pattern))


def _emptied(
    weights: Sequence[int], patterns: list[list[int]], rests: list[int], target: int
) -> int:
    """Move what can be moved off the target and return its rest afterwards."""
    for _ in range(MOVES):
        move = _best_move(weights, patterns, rests, target)
        if move is None:
            break
        gain, place, out, back = move
        patterns[target].remove(out)
        patterns[place].append(out)
        if back is not None:
            patterns[place].remove(back)
            patterns[target].append(back)
        rests[target] += gain
        rests[place] -= gain
    return rests[target]


def _best_move(
    weights: Sequence[int], patterns: list[list[int]], rests: list[int], target: int
) -> tuple[int, int, int, int | None] | None:
    """Return (gain, other stick, size moved there, size taken in exchange) with the most gain.

    The last piece stays: a stick with none would not be cut at all.
    """
    best: tuple[int, int, int, int | None] | None = None
    alone = len(patterns[target]) == 1
    for out in sorted(set(patterns[target])):
        for place, rest in enumerate(rests):
            if place == target or rest <= 0:
                continue
            if weights[out] <= rest and not alone and (best is None or weights[out] > best[0]):
                best = (weights[out], place, out, None)
            for back in patterns[place]:
                gain = weights[out] - weights[back]
                if 0 < gain <= rest and (best is None or gain > best[0]):
                    best = (gain, place, out, back)
    return best
