"""In which order the saw is set, so that no piece is left too short to hold for its next cut.

All marks are on the sticks, so that any order gives the pieces; but a cut that parts a stick
leaves two lengths, and one of them has to be held for each cut that is still to come.
"""

from __future__ import annotations

from bisect import bisect
from collections.abc import Iterable, Sequence
from fractions import Fraction
from itertools import pairwise
from math import lcm
from typing import TypeAlias

from trimlang.record import record

Setting: TypeAlias = tuple[int, str, Fraction, str, Fraction, str]
"""How a piece lies, and the sides and degrees of table and blade, to sort by."""


@record
class Pass:
    """One pass of the saw: at which setting, and where on which stick (inches from its left end).

    ``setting`` sorts settings in the order that changes the saw least.
    """

    setting: Setting
    stick: str
    at: Fraction
    long: Fraction


def visits(passes: Sequence[Pass], hold: Fraction) -> tuple[tuple[int, ...], ...]:
    """Return the passes by number, in the order in which they are made, a setting after another.

    Each setting is visited once where that leaves at least ``hold`` inches to hold on one side of
    every cut still to come; what would not is left for a second visit.  Where nothing helps, as
    on an offcut shorter than that, the rest follows in the order of the settings.
    """
    cuts = _Sticks(passes, hold)
    waiting: dict[Setting, list[int]] = {}
    # Sorted by setting first, so that of equal choices the saw is changed least.
    for number in sorted(range(len(passes)), key=lambda number: passes[number].setting):
        waiting.setdefault(passes[number].setting, []).append(number)
    made: list[tuple[int, ...]] = []
    while waiting:
        tries = {setting: cuts.safely(numbers) for setting, numbers in waiting.items()}
        # A setting whose cuts are all safe now is done with; one that is left half done must be set
        # again.
        whole = (one for one, done in tries.items() if len(done) == len(waiting[one]))
        setting = next(whole, None) or max(tries, key=lambda one: len(tries[one]))
        # None of its cuts is safe: made all the same, since every order would hold too little.
        done = tries[setting] or tuple(waiting[setting])
        cuts.make(done)
        made.append(done)
        rest = [number for number in waiting[setting] if number not in done]
        del waiting[setting]
        if rest:
            waiting[setting] = rest
    return tuple(made)


class _Sticks:
    """The sticks with the cuts that are made, and those that are still to come.

    Places are whole numbers, as fractions over one denominator take many times as long to
    compare; a stick's cuts to come are the bits of a number, so that what was found out about one
    state of a stick is known again.
    """

    def __init__(self, passes: Sequence[Pass], hold: Fraction) -> None:
        # One denominator for all places turns them into whole numbers.
        finest = lcm(*(size.denominator for one in passes for size in (one.at, one.long, hold)))
        self._at = [int(one.at * finest) for one in passes]
        self._hold = int(hold * finest)
        self._stick = [one.stick for one in passes]
        self._ends = {one.stick: (0, int(one.long * finest)) for one in passes}
        self._on: dict[str, list[int]] = {one.stick: [] for one in passes}
        for number in sorted(range(len(passes)), key=self._at.__getitem__):
            self._on[passes[number].stick].append(number)
        self._bit = {number: 1 << at for on in self._on.values() for at, number in enumerate(on)}
        # Every cut of a stick as one bit, all of them still to come.
        self._to_come = {stick: (1 << len(on)) - 1 for stick, on in self._on.items()}
        self._known: dict[tuple[int, int], bool] = {}

    def make(self, numbers: Iterable[int]) -> None:
        """Make cuts."""
        for number in numbers:
            self._to_come[self._stick[number]] &= ~self._bit[number]

    def safely(self, numbers: Sequence[int]) -> tuple[int, ...]:
        """Return which of these cuts can be made, in this order, and leave all others safe."""
        to_come = dict(self._to_come)
        done: list[int] = []
        left = list(numbers)
        # Each cut that is made may make another one safe, or unsafe, so all are asked again.
        while (found := next((one for one in left if self._may(one, to_come)), None)) is not None:
            to_come[self._stick[found]] &= ~self._bit[found]
            left.remove(found)
            done.append(found)
        return tuple(done)

    def _may(self, number: int, to_come: dict[str, int]) -> bool:
        """Whether a cut leaves every length that is still to be cut with a place to hold it by.

        That place is a piece (or rest) of the least length to hold which is still joined to it:
        what hangs on it can be cut off from the far end inwards.
        """
        key = (number, to_come[self._stick[number]])
        known = self._known.get(key)
        if known is None:
            known = self._known[key] = self._leaves_all_safe(*key)
        return known

    def _leaves_all_safe(self, number: int, to_come: int) -> bool:
        stick, at = self._stick[number], self._at[number]
        made, coming = set(self._ends[stick]), []
        for other in self._on[stick]:
            if not self._bit[other] & to_come:
                made.add(self._at[other])
            elif other != number:
                coming.append(self._at[other])
        parted = sorted(made)
        # The length of stick that this cut parts, between the nearest cuts that are made.
        place = bisect(parted, at)
        first, last = parted[place - 1], parted[min(place, len(parted) - 1)]
        coming = [one for one in coming if first < one < last]
        # A length without such a place, as a short offcut, is made no worse by any order.
        if not self._can_be_held((first, *sorted([*coming, at]), last)):
            return True
        return all(
            self._can_be_held((begin, *between, end))
            for begin, end in ((first, at), (at, last))
            if (between := [one for one in coming if begin < one < end])
        )

    def _can_be_held(self, places: Sequence[int]) -> bool:
        return max(end - begin for begin, end in pairwise(places)) >= self._hold
