"""Mitres that neighbours share, and the order of the pieces on a stick.

Two neighbours whose facing ends lean the same way overlap by the smaller lean.
An overlap belongs to one right end and one left end, so charging it wholly to
the right ends, wholly to the left ends, or half to each never charges too
little: that gives every part a least weight, and bounds made from those hold
for every order on every stick.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from itertools import pairwise
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from trimlang.stock.timber import Size

#: More pieces than this on a stick are ordered greedily, not by every order.
EXACT_ORDER = 9


def overlap(right_lean: int, left_lean: int) -> int:
    """By how much two neighbours overlap, given the leans of the ends that meet."""
    if (right_lean > 0) != (left_lean > 0):
        return 0
    return min(abs(right_lean), abs(left_lean))


def least_weights(
    shapes: Sequence[tuple[int, int, int]], counts: Sequence[int], kerf: int
) -> list[int]:
    """For each ``(length, left lean, right lean)``, a room that it takes on any stick.

    Each way of leaning is charged to the side on which it is scarcer in the
    whole job, since an overlap needs an end of either side.
    """
    charged_right: dict[bool, bool] = {}
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
            weight -= min(abs(right), largest_left[right > 0])
        if left and not charged_right[left > 0]:
            weight -= min(abs(left), largest_right[left > 0])
        weights.append(max(weight, 0))
    return weights


def _largest(leans: object) -> int:
    return max((abs(lean) for lean in leans), default=0)  # type: ignore[attr-defined]


def laid_weight(order: Sequence[Size]) -> int:
    """The room, kerfs included, that sizes take up laid in this order."""
    total = sum(size.weight for size in order)
    for before, after in pairwise(order):
        total -= overlap(before.right, after.left)
    return total


def usual_order(sizes: Sequence[Size], short: int) -> list[Size]:
    """Very short pieces first, held safely by a long stick; then longest first."""
    return sorted(
        sizes,
        key=lambda size: (size.length >= short, -size.length, size.left, size.right),
    )


def order_on_stick(sizes: Sequence[Size], room: int, short: int) -> tuple[Size, ...] | None:
    """An order in which the sizes fit the room, or None where none is found.

    The usual order if it fits, else one that shares more mitres.  Up to nine
    pieces every order is weighed; beyond that a greedy chain is tried, and None
    does not prove that no order fits.
    """
    usual = usual_order(sizes, short)
    plain = sum(size.weight for size in sizes)
    if plain <= room or laid_weight(usual) <= room:
        return tuple(usual)
    if plain - _most_overlap(sizes) > room:
        return None
    chain = _greedy_chain(usual)
    if laid_weight(chain) > room and len(usual) <= EXACT_ORDER:
        chain = _best_chain(usual)
    return tuple(chain) if laid_weight(chain) <= room else None


def settles(sizes: Sequence[Size], room: int) -> bool:
    """Whether ``order_on_stick`` is sure that these sizes fit no stick, if it finds no order."""
    plain = sum(size.weight for size in sizes)
    return len(sizes) <= EXACT_ORDER or plain - _most_overlap(sizes) > room


def _most_overlap(sizes: Sequence[Size]) -> int:
    """No order overlaps more: the longest leans of either side meet, all but one end of each."""
    total = 0
    for up in (True, False):
        rights = sorted(abs(s.right) for s in sizes if s.right and (s.right > 0) == up)
        lefts = sorted(abs(s.left) for s in sizes if s.left and (s.left > 0) == up)
        pairs = min(len(rights), len(lefts), len(sizes) - 1)
        total += sum(min(rights.pop(), lefts.pop()) for _ in range(pairs))
    return total


def _greedy_chain(sizes: Sequence[Size]) -> list[Size]:
    """Start with each size in turn, then always the largest overlap that is left."""
    best: list[Size] = list(sizes)
    for start in range(len(sizes)):
        rest = list(sizes)
        chain = [rest.pop(start)]
        while rest:
            right = chain[-1].right
            nearest = max(range(len(rest)), key=lambda i: (overlap(right, rest[i].left), -i))
            chain.append(rest.pop(nearest))
        if laid_weight(chain) < laid_weight(best):
            best = chain
    return best


def _best_chain(sizes: Sequence[Size]) -> list[Size]:
    """The order with the most overlap, over all orders (sets of pieces used so far)."""
    count = len(sizes)

    @cache
    def gain(used: int, last: int) -> tuple[int, int]:
        best = (0, -1)
        for after in range(count):
            if not used >> after & 1:
                more = gain(used | 1 << after, after)[0]
                if last >= 0:
                    more += overlap(sizes[last].right, sizes[after].left)
                if best[1] < 0 or more > best[0]:
                    best = (more, after)
        return best

    order: list[Size] = []
    used, last = 0, -1
    while len(order) < count:
        last = gain(used, last)[1]
        used |= 1 << last
        order.append(sizes[last])
    return order
