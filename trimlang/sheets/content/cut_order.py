"""In which order the saw is set, so that no piece is left too short to hold for its next cut.

All marks are on the sticks, so that any order gives the pieces; but a cut that parts a stick
leaves two lengths, and one of them has to be held for each cut that is still to come.
"""

from __future__ import annotations

from bisect import bisect
from collections.abc import Iterable, Sequence
from fractions import Fraction
from itertools import pairwise
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
    for number in sorted(range(len(passes)), key=lambda number: passes[number].setting):
        waiting.setdefault(passes[number].setting, []).append(number)
    made: list[tuple[int, ...]] = []
    while waiting:
        tries = {setting: cuts.safely(numbers) for setting, numbers in waiting.items()}
        whole = (one for one, done in tries.items() if len(done) == len(waiting[one]))
        setting = next(whole, None) or max(tries, key=lambda one: len(tries[one]))
        done = tries[setting] or tuple(waiting[setting])
        cuts.make(done)
        made.append(done)
        rest = [number for number in waiting[setting] if number not in done]
        del waiting[setting]
        if rest:
            waiting[setting] = rest
    return tuple(made)


class _Sticks:
    """The sticks with the cuts that are made, and those that are still to come."""

    def __init__(self, passes: Sequence[Pass], hold: Fraction) -> None:
        self._passes = passes
        self._hold = hold
        self._parted = {one.stick: [Fraction(0), one.long] for one in passes}
        self._to_come: dict[str, set[int]] = {one.stick: set() for one in passes}
        for number, one in enumerate(passes):
            self._to_come[one.stick].add(number)

    def make(self, numbers: Iterable[int]) -> None:
        """Make cuts."""
        for number in numbers:
            one = self._passes[number]
            parted = self._parted[one.stick]
            parted.insert(bisect(parted, one.at), one.at)
            self._to_come[one.stick].discard(number)

    def safely(self, numbers: Sequence[int]) -> tuple[int, ...]:
        """Return which of these cuts can be made, in this order, and leave all others safe."""
        trial = _Sticks((), self._hold)
        trial._passes = self._passes
        sticks = {self._passes[number].stick for number in numbers}
        trial._parted = {stick: list(self._parted[stick]) for stick in sticks}
        trial._to_come = {stick: set(self._to_come[stick]) for stick in sticks}
        done: list[int] = []
        left = list(numbers)
        while (found := next((one for one in left if trial._may(one)), None)) is not None:
            trial.make([found])
            left.remove(found)
            done.append(found)
        return tuple(done)

    def _may(self, number: int) -> bool:
        """Whether a cut leaves every length that is still to be cut with a place to hold it by.

        That place is a piece (or rest) of ``hold`` inches which is still joined to it: what hangs
        on it can be cut off from the far end inwards.
        """
        one = self._passes[number]
        parted = self._parted[one.stick]
        place = bisect(parted, one.at)
        ends = (parted[place - 1], parted[min(place, len(parted) - 1)])
        coming = sorted(
            at
            for other in self._to_come[one.stick]
            if other != number and ends[0] < (at := self._passes[other].at) < ends[1]
        )
        # A length without such a place, as a short offcut, is made no worse by any order.
        if not self._can_be_held((ends[0], *sorted([*coming, one.at]), ends[1])):
            return True
        return all(
            self._can_be_held((begin, *between, end))
            for begin, end in ((ends[0], one.at), (one.at, ends[1]))
            if (between := [at for at in coming if begin < at < end])
        )

    def _can_be_held(self, places: Sequence[Fraction]) -> bool:
        return max(end - begin for begin, end in pairwise(places)) >= self._hold
