"""The mitres that neighbours on a stick share, from how their ends lean alone.

Two neighbours whose facing ends lean the same way overlap by the smaller lean.
An overlap belongs to one right end and one left end, so charging it wholly to
the right ends, wholly to the left ends, or half to each never charges too
little: that gives every part a least weight, and bounds made from those hold
for every order on every stick.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache, lru_cache
from math import prod
from typing import Final, TypeAlias

NEVER: Final = -(1 << 61)
"""Stands for an impossible state: less than any sum of worths, and far from an overflow."""

Leans: TypeAlias = tuple[int, int]
"""How the left and the right end of a piece lean."""

ORDERS = 3_000
"""The most sets of pieces examined for the best order; with more it is only bounded."""
PIECES = 300
"""The most pieces on a stick for which that is done."""


def overlap(right_lean: int, left_lean: int) -> int:
    """Return by how much two neighbours overlap, given the leans of the ends that meet."""
    # Ends that lean apart, or are square, leave a wedge between them that fits no piece.
    if (right_lean > 0) != (left_lean > 0):
        return 0
    return min(abs(right_lean), abs(left_lean))


def least_weights(
    shapes: Sequence[tuple[int, int, int]], counts: Sequence[int], kerf: int
) -> list[int]:
    """Return for each ``(length, left lean, right lean)`` the room that it takes at least.

    Overlaps of ends that lean one way are charged to the side that leans less in the
    whole job, since each overlap needs an end of either side: so the least is charged.
    """
    charged_right: dict[bool, bool] = {}
    # An end shares only with one that leans the same way, so each way is charged for itself.
    for up in (True, False):
        rights = sum(
            n * abs(right)
            for (_, _, right), n in zip(shapes, counts, strict=True)
            if right and (right > 0) == up
        )
        lefts = sum(
            n * abs(left)
            for (_, left, _), n in zip(shapes, counts, strict=True)
            if left and (left > 0) == up
        )
        # Either choice is valid for the bound; the smaller sum takes less off the weights.
        charged_right[up] = rights <= lefts
    largest_right = {
        up: _largest(right for _, _, right in shapes if (right > 0) == up) for up in (True, False)
    }
    largest_left = {
        up: _largest(left for _, left, _ in shapes if (left > 0) == up) for up in (True, False)
    }
    weights = []
    for length, left, right in shapes:
        weight = length + kerf
        if right and charged_right[right > 0]:
            # No left end leans further, so no neighbour can overlap by more.
            weight -= min(abs(right), largest_left[right > 0])
        if left and not charged_right[left > 0]:
            weight -= min(abs(left), largest_right[left > 0])
        # A small piece between deep mitres may take no room; less than none would make room.
        weights.append(max(weight, 0))
    return weights


def _largest(leans: object) -> int:
    return max((abs(lean) for lean in leans), default=0)  # type: ignore[attr-defined]


@lru_cache(maxsize=1 << 16)
def most_shared(leans: tuple[Leans, ...]) -> tuple[int, bool]:
    """Return the most that pieces with these leans overlap in any order, and whether it is exact.

    Where there are too many orders it is not exact, but never less than the most.
    """
    # An overlap takes a right and a left end, so with ends of one side only there is none.
    if not any(left for left, _ in leans) or not any(right for _, right in leans):
        return 0, True
    if len(leans) > PIECES or _orders(leans) > ORDERS:
        return _most_overlap(leans), False
    return laid_best(leans)[0], True


def _orders(leans: Sequence[Leans]) -> int:
    return prod(leans.count(one) + 1 for one in set(leans))


def _most_overlap(leans: Sequence[Leans]) -> int:
    """Return a bound: the longest leans of both sides meet, all but the stick's outer ends."""
    total = 0
    for up in (True, False):
        rights = sorted(abs(right) for _, right in leans if right and (right > 0) == up)
        lefts = sorted(abs(left) for left, _ in leans if left and (left > 0) == up)
        # n pieces have n - 1 meetings.
        pairs = min(len(rights), len(lefts), len(leans) - 1)
        total += sum(min(rights.pop(), lefts.pop()) for _ in range(pairs))
    return total


def laid_best(leans: Sequence[Leans]) -> tuple[int, list[Leans]]:
    """Return the most overlap over all orders, and an order that has it."""
    sorts = sorted(set(leans))

    @cache
    def best(counts: tuple[int, ...], right: int) -> tuple[int, int]:
        """Return the most overlap of what is left behind such an end, and what comes first."""
        most = (0, -1)
        for at, count in enumerate(counts):
            if count:
                rest = (*counts[:at], count - 1, *counts[at + 1 :])
                more = overlap(right, sorts[at][0]) + best(rest, sorts[at][1])[0]
                # Of equal ones the first, so that every machine finds the same order.
                if most[1] < 0 or more > most[0]:
                    most = (more, at)
        return most

    counts = tuple(leans.count(one) for one in sorts)
    shared = best(counts, 0)[0]
    order: list[Leans] = []
    right = 0
    while any(counts):
        at = best(counts, right)[1]
        order.append(sorts[at])
        counts = (*counts[:at], counts[at] - 1, *counts[at + 1 :])
        right = sorts[at][1]
    return shared, order
