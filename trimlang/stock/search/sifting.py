"""Lists every pattern that a plan within a given rack could still use.

A worth values the sizes so that the pieces on a stick are worth no more than the stick.
If the rack is worth only a little more than the parts (the *slack*), then no
pattern in any plan within that rack may waste more than the slack.  Often few
patterns are left, and a search over them settles whether the rack will do.
All in whole numbers, so no pattern is lost to rounding.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate
from typing import Any

from trimlang.stock.sticks.floor import Worth
from trimlang.stock.sticks.mitres import most_shared
from trimlang.stock.sticks.timber import Pattern, Timber

TABLE = 25_000_000
"""With more table entries (eight bytes each) nothing is sifted."""
STEPS = 20
"""How many steps the walk may take for each pattern that may be listed."""


def sifted(
    timber: Timber, worth: Worth, counts: Sequence[int], most: int
) -> list[tuple[int, Pattern]] | None:
    """Return the patterns that could cut everything from a rack; None: more than ``most``.

    Only patterns are listed to which no further piece can be added, since a plan
    may as well cut more of a size than asked.
    """
    room = max((k.room for k, n in zip(timber.kinds, counts, strict=True) if n), default=0)
    # Too much memory for one question; the rack is left undecided instead.
    if (room + 1) * (len(timber.sizes) + 1) > TABLE:
        return None
    slack = worth.slack(counts)
    rest = _best_of_rest(timber, worth, room)
    found: list[tuple[int, Pattern]] = []
    for place, kind in enumerate(timber.kinds):
        if not counts[place] or kind.room <= 0:
            continue
        # A stick worth less than this wastes more than the whole rack can spare.
        least = worth.of_kind[place] - slack
        walked = _walk(timber, worth.of_size, rest, kind.room, least, most)
        if walked is None or len(found) + len(walked) > most:
            return None
        found.extend((place, pattern) for pattern in walked)
    return found


def _best_of_rest(timber: Timber, worth: Worth, room: int) -> list[Any]:
    """Return for each size the greatest value, by room, of that size and all after it.

    The rows are memoryviews, since ``_walk`` reads single numbers, at which arrays are slow.
    """
    import numpy as np

    table = np.zeros(room + 1, dtype=np.int64)
    rows: list[Any] = [table.copy()]
    # From the lightest back, so that each row knows the best of all sizes behind it.
    for size in range(len(timber.sizes) - 1, -1, -1):
        weight, value = timber.sizes[size].least, worth.of_size[size]
        # Counted from the table without this size, or a piece would be counted twice.
        before = table.copy()
        if value > 0 and weight <= room:
            for number in range(1, _most(timber.demand[size], room, weight) + 1):
                load = number * weight
                np.maximum(
                    table[load:], before[: room + 1 - load] + number * value, out=table[load:]
                )
        rows.append(table.copy())
    return [memoryview(row) for row in reversed(rows)]


def _walk(
    timber: Timber, values: Sequence[int], rest: list[Any], room: int, needed: int, most: int
) -> list[Pattern] | None:
    """Return the full patterns worth ``needed`` or more; None: too many, or too long a walk.

    ``rest`` is the greatest value of each size and all after it, by room.
    """
    steps = STEPS * most
    counts, last = timber.demand, len(timber.sizes)
    weights = [size.least for size in timber.sizes]
    lightest = [*accumulate((room + 1, *reversed(weights)), min)][::-1]
    found: list[Pattern] = []
    stack: list[tuple[int, int, int, Pattern]] = [(0, room, 0, ())]
    while stack:
        steps -= 1
        # A walk that is too long leaves the rack undecided; it never says that it is too small.
        if steps < 0:
            return None
        size, left, value, pattern = stack.pop()
        while size < last and weights[size] > left:
            size += 1
        if lightest[size] > left:
            if _is_full(timber, pattern, room):
                if len(found) == most:
                    return None
                found.append(pattern)
            continue
        weight, each = weights[size], values[size]
        for number in range(_most(counts[size], left, weight) + 1):
            after, worthy = left - number * weight, value + number * each
            # Else even the best of the sizes still to come does not reach what is needed.
            if worthy + rest[size + 1][after] >= needed:
                stack.append((size + 1, after, worthy, pattern + (size,) * number))
    return found


def _most(count: int, room: int, weight: int) -> int:
    """How many of so many pieces a room may hold: all, where one weighs nothing beside mitres."""
    return min(count, room // weight) if weight else count


def _is_full(timber: Timber, pattern: Pattern, room: int) -> bool:
    """Whether some order may lay the pattern, and no further piece fits behind the last."""
    sizes = [timber.sizes[size] for size in pattern]
    left = room - sum([size.weight for size in sizes])
    if timber.leaning:
        shared, sure = most_shared(tuple(sorted([(size.left, size.right) for size in sizes])))
        left += shared
        # Of too many orders it is not known how much the best one leaves.
        if left < 0 or not sure:
            return left >= 0
    # From the lightest up: behind the first that is too heavy, all others are too.
    for size in range(len(timber.sizes) - 1, -1, -1):
        if timber.sizes[size].weight > left:
            break
        # The fuller pattern is listed instead of this one.
        if pattern.count(size) < timber.sizes[size].count:
            return False
    return True
