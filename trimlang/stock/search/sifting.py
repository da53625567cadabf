"""Lists every pattern that a plan within a given rack could still use.

A worth values the sizes so that the pieces on a stick are worth no more than the stick.
If the rack is worth only a little more than the parts (the *slack*), then no
pattern in any plan within that rack may waste more than the slack.  Often few
patterns are left, and a search over them settles whether the rack will do.
All in whole numbers, so no pattern is lost to rounding.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, overload

from trimlang.record import record
from trimlang.stock.sticks.floor import Worth
from trimlang.stock.sticks.mitres import most_shared
from trimlang.stock.sticks.timber import Pattern, Timber

TABLE = 25_000_000
"""With more table entries (eight bytes each) nothing is sifted."""
STEPS = 20
"""How many steps the walk may take for each pattern that may be listed."""


@overload
def slack_of(worth: Worth, counts: Sequence[int]) -> int: ...
@overload
def slack_of(worth: Worth, counts: Sequence[float]) -> float: ...
def slack_of(worth: Worth, counts: Sequence[float]) -> float:
    """Return how much more the rack is worth than the parts; negative: it cannot hold them."""
    return sum(w * n for w, n in zip(worth.of_kind, counts, strict=True)) - worth.needed


def sifted(
    timber: Timber, worth: Worth, demand: Sequence[int], counts: Sequence[int], most: int
) -> list[tuple[int, Pattern]] | None:
    """Return the patterns that could cut a demand from a rack; None: more than ``most``.

    Only patterns are listed to which no further piece can be added, since a plan
    may as well cut more of a size than asked.
    """
    room = max((k.room for k, n in zip(timber.kinds, counts, strict=True) if n), default=0)
    # Too much memory for one question; the rack is left undecided instead.
    if (room + 1) * (len(timber.sizes) + 1) > TABLE:
        return None
    needed = sum(v * n for v, n in zip(worth.of_size, demand, strict=True))
    slack = sum(w * n for w, n in zip(worth.of_kind, counts, strict=True)) - needed
    rest = _best_of_rest(timber, worth, demand, room)
    wanted = _Wanted(timber=timber, values=worth.of_size, counts=demand, rest=rest)
    found: list[tuple[int, Pattern]] = []
    for place, kind in enumerate(timber.kinds):
        if not counts[place] or kind.room <= 0:
            continue
        # A stick worth less than this wastes more than the whole rack can spare.
        least = worth.of_kind[place] - slack
        walked = _walk(wanted, kind.room, least, most)
        if walked is None or len(found) + len(walked) > most:
            return None
        found.extend((place, pattern) for pattern in walked)
    return found


def _best_of_rest(timber: Timber, worth: Worth, demand: Sequence[int], room: int) -> list[Any]:
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
        if value > 0 and 0 < weight <= room:
            for number in range(1, min(demand[size], room // weight) + 1):
                load = number * weight
                np.maximum(
                    table[load:], before[: room + 1 - load] + number * value, out=table[load:]
                )
        rows.append(table.copy())
    return [memoryview(row) for row in reversed(rows)]


@record
class _Wanted:
    """What is to be cut, on whatever stick: how often each size, and what one is worth.

    ``rest`` is the greatest value of each size and all after it, by room.
    """

    timber: Timber
    values: Sequence[int]
    counts: Sequence[int]
    rest: list[Any]


def _walk(wanted: _Wanted, room: int, needed: int, most: int) -> list[Pattern] | None:
    """Return the full patterns worth ``needed`` or more; None: too many, or too long a walk."""
    steps = STEPS * most
    values, counts, rest = wanted.values, wanted.counts, wanted.rest
    weights = [size.least for size in wanted.timber.sizes]
    found: list[Pattern] = []
    ends = _Ends(wanted.timber, counts, room)
    stack: list[tuple[int, int, int, Pattern]] = [(0, room, 0, ())]
    last = ends.last
    # More than the room: of what is not wanted, nothing is ever light enough.
    lightest = [room + 1] * (last + 1)
    for size in range(last - 1, -1, -1):
        lightest[size] = min(weights[size] if counts[size] else room + 1, lightest[size + 1])
    while stack:
        steps -= 1
        # A walk that is too long leaves the rack undecided; it never says that it is too small.
        if steps < 0:
            return None
        size, left, value, pattern = stack.pop()
        while size < last and weights[size] > left:
            size += 1
        if size == last or lightest[size] > left:
            ended = ends.ended(pattern)
            if ended is not None and value + values[-1] * (len(ended) - len(pattern)) >= needed:
                if len(found) == most:
                    return None
                found.append(ended)
            continue
        # Even the best of the sizes still to come does not reach what is needed.
        if value + rest[size][left] < needed:
            continue
        weight, each = weights[size], values[size]
        # A small piece may weigh nothing beside deep mitres: then only the demand limits it.
        for number in range(min(counts[size], left // weight if weight else counts[size]) + 1):
            after, worthy = left - number * weight, value + number * each
            if worthy + rest[size + 1][after] >= needed:
                stack.append((size + 1, after, worthy, pattern + (size,) * number))
    return found


class _Ends:
    """Ends patterns with the lightest size and says which are worth listing.

    Left out are those that no order lays on the stick, and those that leave room for one
    more piece behind the last.
    """

    def __init__(self, timber: Timber, counts: Sequence[int], room: int) -> None:
        self._room = room
        self._leaning = timber.leaning
        self._weights = [size.weight for size in timber.sizes]
        self._leans = [(size.left, size.right) for size in timber.sizes]
        self._wanted = [
            (self._weights[size], size, counts[size])
            for size in range(len(counts) - 1, -1, -1)
            if counts[size]
        ]
        lightest = len(counts) - 1
        plain = self._leans[lightest] == (0, 0) and self._weights[lightest] > 0
        # Pieces from this size on are laid by ``ended``: the lightest, where it shares no mitre.
        self.last = lightest if plain else lightest + 1
        self._number = counts[lightest] if plain else 0

    def ended(self, pattern: Pattern) -> Pattern | None:
        """Return the pattern and as many of the lightest as fit; None: not worth listing."""
        left = self._room - sum([self._weights[size] for size in pattern])
        if self._leaning:
            shared, sure = most_shared(tuple(sorted([self._leans[size] for size in pattern])))
            if not sure:
                # Too many orders: what might fit is listed, with all that the stick could hold.
                return pattern + (self.last,) * self._most(left + shared)
            left += shared
            if left < 0:
                return None
        number = self._most(left)
        if number:
            pattern += (self.last,) * number
            left -= number * self._weights[self.last]
        # From the lightest up: behind the first that is too heavy, all others are too.
        for weight, size, count in self._wanted:
            if weight > left:
                break
            # One more piece would fit, so the fuller pattern is listed instead of this one.
            if pattern.count(size) < count:
                return None
        return pattern

    def _most(self, left: int) -> int:
        return min(self._number, max(left, 0) // self._weights[-1]) if self._number else 0
