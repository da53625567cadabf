"""The cheapest way to gain so much from a few choices: sticks to fill up an order with."""

from __future__ import annotations

from collections.abc import Sequence
from math import gcd
from typing import Final

from trimlang.record import record

MOST_STATES: Final = 100_000
"""With more steps than this between nothing and what is wanted, the choice is not the cheapest."""


@record
class Addition:
    """Something that can be had up to ``most`` times (None: without end)."""

    gain: int
    cost: int
    most: int | None


def least_cover(choices: Sequence[Addition], want: int) -> tuple[int, ...] | None:
    """Return how often to take each choice, to gain ``want`` or more for the least cost.

    None where all of them together gain too little.  An exact dynamic program over the gain (a
    covering knapsack), in steps of the gains' common divisor; with too many steps the choice
    that gains most for its cost is taken again and again instead.
    """
    none = (0,) * len(choices)
    if want <= 0:
        return none
    # Too fine a step makes the table too long; then good is enough.
    if not is_exact(choices, want):
        return _by_rate(choices, want)
    step = _step(choices)
    units = -(-want // step)
    # best[g]: the least cost of gaining g steps or more, and how often each choice is taken.
    best: list[tuple[int, tuple[int, ...]] | None] = [(0, none)] + [None] * units
    for number, one in enumerate(choices):
        # What adds nothing, or cannot be had, would only lengthen the table.
        if one.gain <= 0 or one.most == 0:
            continue
        most = -(-units * step // one.gain) if one.most is None else one.most
        best = _with_choice(best, number, one, min(most, -(-want // one.gain)), step)
    reached = best[units]
    return None if reached is None else reached[1]


def is_exact(choices: Sequence[Addition], want: int) -> bool:
    """Tell whether ``least_cover`` finds the least cost, not only a cost that is nearly so low."""
    return -(-want // _step(choices)) <= MOST_STATES


def _step(choices: Sequence[Addition]) -> int:
    return gcd(*(one.gain for one in choices)) or 1


def _with_choice(
    best: list[tuple[int, tuple[int, ...]] | None], number: int, one: Addition, most: int, step: int
) -> list[tuple[int, tuple[int, ...]] | None]:
    """Return the table with up to ``most`` of one more choice, in bundles of 1, 2, 4 and so on."""
    units = len(best) - 1
    # Any number up to the most is a sum of such bundles, so a few steps do for thousands of packs.
    bundle = 1
    while most > 0:
        count = min(bundle, most)
        most, bundle = most - count, bundle * 2
        gain, cost = count * one.gain // step, count * one.cost
        # Downwards, so that a bundle is not counted twice in one go.
        for reach in range(units, 0, -1):
            before = best[max(reach - gain, 0)]
            here = best[reach]
            if before is not None and (here is None or before[0] + cost < here[0]):
                taken = before[1]
                best[reach] = (
                    before[0] + cost,
                    (*taken[:number], taken[number] + count, *taken[number + 1 :]),
                )
    return best


def _by_rate(choices: Sequence[Addition], want: int) -> tuple[int, ...] | None:
    counts = [0] * len(choices)
    for number in sorted(
        (number for number, one in enumerate(choices) if one.gain > 0),
        # The number breaks ties, so that two builds of one file fill an order up alike.
        key=lambda number: (choices[number].cost / choices[number].gain, number),
    ):
        one = choices[number]
        take = -(-want // one.gain) if want > 0 else 0
        counts[number] = take if one.most is None else min(take, one.most)
        want -= counts[number] * one.gain
    return None if want > 0 else tuple(counts)
