"""What any order at a supplier costs at least who sells so much of all trims together.

Every trim is bought for no less than its own bound, in sums that its prices can make; the least
sum of such sums that is enough is a floor under every order.  Likewise for a number of sticks: of
each trim so many, for no less than its bound.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import gcd
from typing import Final

from trimlang.planning.covering import Addition, least_cover
from trimlang.record import record

MOST_SUMS: Final = 20_000
"""Steps between nothing and what is wanted up to which all sums are tried."""
MOST_STICKS: Final = 200
"""Sticks up to which every share of each trim is tried."""


@record
class Sold:
    """One thing that a supplier sells: how many sticks it is, its price, how many there are."""

    sticks: int
    price: int
    most: int | None


@record
class TrimSpent:
    """What a supplier sells of one trim, and what is spent on that at least (whole coins)."""

    sold: tuple[Sold, ...]
    bound: int


def least_money(trims: Sequence[TrimSpent], want: int) -> int | None:
    """Return the least sum of at least ``want`` that the trims can be bought for together.

    None where there are too many sums to try, or none is enough.
    """
    step = gcd(*(one.price for trim in trims for one in trim.sold)) or 1
    # A sum past what is wanted by the dearest thing is never the least one that is enough.
    dearest = max((one.price for trim in trims for one in trim.sold), default=0)
    bounds = sum(-(-trim.bound // step) for trim in trims)
    last = max(-(-want // step), bounds) + len(trims) * (dearest // step)
    if last > MOST_SUMS:
        return None
    together = 1  # a bit for each sum, in steps
    for trim in trims:
        own = _sums(trim.sold, step, last)
        low = -(-trim.bound // step)
        sums = (at for at in range(low, last + 1) if own >> at & 1)
        added = 0
        for at in sums:
            added |= together << at
        together = added & ((1 << (last + 1)) - 1)
    enough = together >> -(-want // step)
    if not enough:
        return None
    return (-(-want // step) + (enough & -enough).bit_length() - 1) * step


def _sums(sold: Sequence[Sold], step: int, last: int) -> int:
    """Return the sums that some of what is sold comes to, a bit for each step."""
    found, mask = 1, (1 << (last + 1)) - 1
    for one in sold:
        price = one.price // step
        if price <= 0:
            continue
        left = last // price if one.most is None else min(one.most, last // price)
        # In bundles of 1, 2, 4 and so on, of which any number is a sum.
        bundle = 1
        while left > 0:
            count = min(bundle, left)
            found = (found | found << (count * price)) & mask
            left, bundle = left - count, bundle * 2
    return found


def least_for_sticks(trims: Sequence[TrimSpent], want: int) -> int | None:
    """Return what ``want`` sticks of the trims together cost at least, each no less than its bound.

    None where there are too many, or too few can be had.
    """
    if want > MOST_STICKS:
        return None
    # For each number of sticks the least cost with the trims so far; None: it cannot be had.
    best: list[int | None] = [0] + [None] * want
    for trim in trims:
        choices = [Addition(gain=one.sticks, cost=one.price, most=one.most) for one in trim.sold]
        own = [_cost(choices, count, trim.bound) for count in range(want + 1)]
        best = [
            min(
                (
                    before + cost
                    for count, cost in enumerate(own[: reach + 1])
                    if cost is not None and (before := best[reach - count]) is not None
                ),
                default=None,
            )
            for reach in range(want + 1)
        ]
    return best[want]


def _cost(choices: Sequence[Addition], sticks: int, bound: int) -> int | None:
    counts = least_cover(choices, sticks)
    if counts is None:
        return None
    spent = sum(one.cost * count for one, count in zip(choices, counts, strict=True))
    return max(spent, bound)
