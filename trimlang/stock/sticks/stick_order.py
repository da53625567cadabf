"""The order of the pieces on a stick: safe to cut in, or one in which they share more mitres."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise

from trimlang.stock.sticks.mitres import Leans, laid_best, most_shared, overlap
from trimlang.stock.sticks.timber import Size


def laid_weight(order: Sequence[Size]) -> int:
    """Return the room, kerfs included, that sizes take up when laid in this order."""
    total = sum(size.weight for size in order)
    for before, after in pairwise(order):
        total -= overlap(before.right, after.left)
    return total


def usual_order(sizes: Sequence[Size], short: int) -> list[Size]:
    """Return very short pieces first, held safely by a long stick; then longest first."""
    return sorted(
        sizes,
        key=lambda size: (size.length >= short, -size.length, size.left, size.right),
    )


def order_on_stick(sizes: Sequence[Size], room: int, short: int) -> tuple[Size, ...] | None:
    """Return an order in which the sizes fit the room; None where none is found.

    It is the usual order if that fits, else one that shares more mitres: see ``fits``.
    """
    usual = usual_order(sizes, short)
    plain = sum(size.weight for size in sizes)
    # The usual order is kept wherever it fits, since it is the one that is safe to cut in.
    if plain <= room or laid_weight(usual) <= room:
        return tuple(usual)
    if not fits(sizes, room):
        return None
    # The greedy order first: it does for most sticks, and trying all orders is slow.
    chain = _greedy_chain(usual)
    if laid_weight(chain) > room:
        chain = _best_chain(usual)
    return tuple(chain)


def fits(sizes: Iterable[Size], room: int) -> bool:
    """Return whether ``order_on_stick`` finds an order in which these fit the room."""
    leans, plain = [], 0
    for size in sizes:
        leans.append((size.left, size.right))
        plain += size.weight
    if plain <= room:
        return True
    shared, sure = most_shared(tuple(sorted(leans)))
    return sure and plain - shared <= room


def settles(sizes: Sequence[Size], room: int) -> bool:
    """Return whether ``fits`` can be trusted when it says that these do not fit."""
    plain = sum(size.weight for size in sizes)
    shared, sure = most_shared(tuple(sorted((size.left, size.right) for size in sizes)))
    return sure or plain - shared > room


def _greedy_chain(sizes: Sequence[Size]) -> list[Size]:
    """Return the best of these orders: start with each size, then always overlap most."""
    best: list[Size] = list(sizes)
    for start in range(len(sizes)):
        rest = list(sizes)
        chain = [rest.pop(start)]
        while rest:
            right = chain[-1].right
            # Of equal overlaps the first, to stay close to the usual, safe order.
            nearest = max(range(len(rest)), key=lambda i: (overlap(right, rest[i].left), -i))
            chain.append(rest.pop(nearest))
        if laid_weight(chain) < laid_weight(best):
            best = chain
    return best


def _best_chain(sizes: Sequence[Size]) -> list[Size]:
    """Return the order with the most overlap; sizes that lean alike keep their given order."""
    waiting: dict[Leans, list[Size]] = {}
    for size in sizes:
        waiting.setdefault((size.left, size.right), []).append(size)
    order = laid_best([(size.left, size.right) for size in sizes])[1]
    return [waiting[leans].pop(0) for leans in order]
