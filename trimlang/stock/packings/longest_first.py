"""Longest first: the plain plan that a plan is compared with, and better quick plans."""

from __future__ import annotations

from bisect import bisect_left, insort
from collections.abc import Sequence
from fractions import Fraction
from math import inf

from trimlang.stock.mixes.buying import Buying
from trimlang.stock.packings.packing import Packing, better, counts_of, packing_of
from trimlang.stock.sticks.timber import Pattern, Timber

FAVOURITES = 8
"""Kinds favoured one after another, the best price a length first: each is a plan to make."""


def plain_packing(timber: Timber, buying: Buying) -> Packing | None:
    """Return the plain plan: longest piece first, each from the first stick with room.

    A new stick is the shortest free rest that holds the piece, else the blank with
    the least price for its length.  None: the supply ran out in this way.
    """
    order = _opening_order(timber)
    filled = _fill(timber, timber.demand, order, _supplies(timber), first_fit=True)
    return None if filled is None else packing_of(timber, buying, filled)


def quick_packing(timber: Timber, buying: Buying) -> Packing | None:
    """Return the best of several longest-first best-fit packings, one for each kind favoured."""
    best: Packing | None = None
    bought = [k for k, kind in enumerate(timber.kinds) if not kind.on_hand]
    # A few kinds are all tried as they come; of many only the best prices, to save time.
    if len(bought) > FAVOURITES:
        bought.sort(key=lambda k: (timber.kinds[k].rate / timber.kinds[k].length, k))
    usual = _opening_order(timber)
    paid = [kind.rate != 0 for kind in timber.kinds]
    for favourite in (None, *bought[:FAVOURITES]):
        order = _favouring(favourite, usual, paid)
        filled = _fill(timber, timber.demand, order, _supplies(timber), first_fit=False)
        if filled is not None:
            best = better(best, packing_of(timber, buying, filled))
            # A long stick opened early may end up nearly empty, and a cheaper one would have done.
            shrunk = _shrunk(timber, filled)
            best = better(best, packing_of(timber, buying, shrunk))
    return best


def fill_counts(
    timber: Timber, demand: Sequence[int], counts: Sequence[int]
) -> list[tuple[int, Pattern]] | None:
    """Pack the demand by best fit into ``counts`` sticks of each kind; None: not found."""
    by_length = sorted(range(len(timber.kinds)), key=lambda k: timber.kinds[k].room)
    long_first = by_length[::-1]
    # Short sticks first saves long ones, long ones first fills them well: which does better depends
    # on the pieces.
    for order in (by_length, long_first):
        filled = _fill(timber, demand, order, list(counts), first_fit=False)
        if filled is not None:
            return filled
    return None


def _shrunk(timber: Timber, sticks: Sequence[tuple[int, Pattern]]) -> list[tuple[int, Pattern]]:
    """Move each stick's pieces to the cheapest kind that holds them, emptiest stick first."""
    kinds = timber.kinds
    rates = [float(kind.rate) for kind in kinds]
    # At one price the roomiest first, since it holds any stick's pieces most surely.
    cheapest = sorted(range(len(kinds)), key=lambda kind: (rates[kind], -kinds[kind].room))
    left = [
        inf if kind.supply is None else kind.supply - used
        for kind, used in zip(kinds, counts_of(timber, sticks), strict=True)
    ]
    loads = [sum(timber.sizes[size].weight for size in pattern) for _, pattern in sticks]
    moved = list(sticks)
    # The emptiest are the likeliest to fit a cheaper kind, of which there may be few.
    for place in sorted(range(len(sticks)), key=lambda s: loads[s]):
        now, pattern = moved[place]
        for kind in cheapest:
            if rates[kind] >= rates[now]:
                break
            if kinds[kind].room >= loads[place] and left[kind]:
                left[kind] -= 1
                left[now] += 1
                moved[place] = (kind, pattern)
                break
    return moved


def _supplies(timber: Timber) -> list[int | None]:
    return [kind.supply for kind in timber.kinds]


def _opening_order(timber: Timber) -> list[int]:
    """Return kinds in the order in which new sticks are taken: free rests, then the cheapest."""

    def key(kind: int) -> tuple[bool, Fraction, int]:
        rate, length = timber.kinds[kind].rate, timber.kinds[kind].length
        # Of free ones the shortest that holds the piece, so that long ones are left for long
        # pieces; of the others the best price for the length.
        return (rate != 0, rate / length, length if rate == 0 else -length)

    return sorted(range(len(timber.kinds)), key=key)


def _favouring(favourite: int | None, usual: Sequence[int], paid: Sequence[bool]) -> list[int]:
    """Return the usual order with one kind before the others: free ones, or those paid for."""
    # Rests cost nothing, so they stay ahead of any favourite that has to be bought.
    return sorted(usual, key=lambda k: (paid[k], k != favourite))


def _fill(
    timber: Timber,
    demand: Sequence[int],
    order: Sequence[int],
    supplies: Sequence[int | None],
    *,
    first_fit: bool,
) -> list[tuple[int, Pattern]] | None:
    """Longest first into open sticks, by first or by best fit; None: supply ran out."""
    left = list(supplies)
    kinds: list[int] = []
    contents: list[list[int]] = []
    rooms: list[int] = []
    open_rooms: list[tuple[int, int]] = []
    firsts = _FirstRoom(sum(demand) if first_fit else 0)
    for size, count in enumerate(demand):
        weight = timber.sizes[size].weight
        for _ in range(count):
            place = -1
            if first_fit:
                place = firsts.first(weight)
            else:
                # A place of -1 comes before every stick's, so a stick with exactly that room is
                # found too.
                at = bisect_left(open_rooms, (weight, -1))
                if at < len(open_rooms):
                    place = open_rooms.pop(at)[1]
            if place < 0:
                kind = _next_kind(timber, order, left, weight)
                if kind is None:
                    return None
                place = len(rooms)
                kinds.append(kind)
                rooms.append(timber.kinds[kind].room)
                contents.append([])
            rooms[place] -= weight
            contents[place].append(size)
            if first_fit:
                firsts.keep(place, rooms[place])
            else:
                insort(open_rooms, (rooms[place], place))
    return [(kind, tuple(pattern)) for kind, pattern in zip(kinds, contents, strict=True)]


class _FirstRoom:
    """Finds the first stick with so much room, in a tree of the greatest room under each node."""

    def __init__(self, most: int) -> None:
        self._leaves = 1 << most.bit_length()
        # Less than any room, so a stick that is not opened yet never seems to hold a piece.
        self._most = [-1] * (2 * self._leaves)

    def first(self, weight: int) -> int:
        """Return the place of the first stick with that much room, -1 where there is none."""
        if self._most[1] < weight:
            return -1
        node = 1
        while node < self._leaves:
            # To the left where that half has the room, so that the first stick is found.
            node = 2 * node + (self._most[2 * node] < weight)
        return node - self._leaves

    def keep(self, place: int, room: int) -> None:
        """Note what room a stick has now."""
        node = self._leaves + place
        self._most[node] = room
        while node > 1:
            node //= 2
            self._most[node] = max(self._most[2 * node], self._most[2 * node + 1])


def _next_kind(
    timber: Timber, order: Sequence[int], left: list[int | None], weight: int
) -> int | None:
    """Take a stick of the first kind in order that holds the weight and is left; None: no such."""
    for kind in order:
        supply = left[kind]
        if timber.kinds[kind].room >= weight and supply != 0:
            if supply is not None:
                left[kind] = supply - 1
            return kind
    return None
