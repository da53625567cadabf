"""Check a bound for joints in any places, as ``proof_check.py`` checks that of a plan.

Nothing here comes from the planner: what pieces of any length are worth is judged by the
problem alone.  A value is told by the least room at which a piece is worth 1, 2 and so on, so
a longer piece is never worth less.
"""

from __future__ import annotations

from bisect import bisect_right
from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from trimlang.record import record
from trimlang.stock.certificate import FreeRun, Shape
from trimlang.stock.cheaper_mix import CheaperMix, Claim, GivenUpError
from trimlang.stock.problem import Part, Problem
from trimlang.stock.stick_tops import StickTops


def shown_anywhere(
    fixed: Problem, free: Sequence[FreeRun], values: Sequence[Sequence[int]], floor: int
) -> int:
    """The bound if every choice of joints is shown to cost so much, else what one value shows.

    ``values``: for each the least rooms at which a piece is worth 1, 2 and so on.
    """
    return _AnyPlace(fixed, free).shown(values, floor)


@record
class _Run:
    """The room that a run's pieces take together, and one alone, at the least."""

    pieces: int
    total: int
    least: int


class _AnyPlace:
    def __init__(self, fixed: Problem, free: Sequence[FreeRun]) -> None:
        self._problem = fixed
        kerf = fixed.kerf
        counts: Counter[Shape] = Counter(
            (part.length, part.left_lean, part.right_lean) for part in fixed.parts
        )
        if fixed.survive_loss and not fixed.spare:
            longest = [part.length for part in fixed.parts]
            # the longest of some pieces is no shorter than all of them in equal parts
            longest += [-(-run.total // run.pieces) for run in free]
            counts[max(longest, default=1), 0, 0] += 1
        own = Counter(dict(counts))
        # for what may lie within what, pieces that lean as those of the runs may
        for run in free:
            for lean in {run.lean, -run.lean}:
                counts[max(run.least, 1), lean, lean] += run.pieces
        self._lengths = sorted({blank.length for blank in fixed.blanks}, reverse=True)
        self._rooms = [length - 2 * fixed.end_waste + kerf for length in self._lengths]
        tops = StickTops(counts, self._rooms, kerf)
        self._fixed = [
            (weight, own[shape])
            for shape, weight in zip(counts, tops.lightest, strict=True)
            if own[shape]
        ]
        # what an end shares may be taken off it or its neighbour: off both is enough
        self._runs = [
            _Run(
                pieces=run.pieces,
                total=run.total + run.pieces * kerf - (run.leans if tops.leaning else 0),
                least=max(run.least + kerf - (2 * run.lean if tops.leaning else 0), 0),
            )
            for run in free
        ]

    def shown(self, values: Sequence[Sequence[int]], floor: int) -> int:
        """The bound, or what one value alone shows."""
        claims = [self._by_length(), *map(self._claim, filter(_rises, values))]
        stand_ins = [
            Part(f"\0{number}.{piece}", max(run.least, 1))
            for number, run in enumerate(self._runs)
            for piece in range(run.pieces)
        ]
        # of these only their number counts: no more sticks are of use than there are pieces
        problem = replace(self._problem, parts=(*self._problem.parts, *stand_ins))
        mixes = CheaperMix(problem, self._lengths, claims, ())
        try:
            if mixes.below(floor) is None:
                return floor
        except GivenUpError:
            pass
        return max(0, min(floor, *(mixes.alone(place) for place in range(len(claims)))))

    def _by_length(self) -> Claim:
        needed = sum(weight * count for weight, count in self._fixed)
        needed += sum(max(run.total, 0) for run in self._runs)
        return Claim(tuple(max(room, 0) for room in self._rooms), needed)

    def _claim(self, value: Sequence[int]) -> Claim:
        """What sticks are worth at most, and all the pieces at the least."""
        longest = max((0, *self._rooms))
        # the least room that pieces of any length take which are worth so much together
        filled = [0]
        while filled[-1] <= longest and value:
            worth = len(filled)
            filled.append(
                min(
                    begin + filled[worth - one]
                    for one, begin in enumerate(value, start=1)
                    if one <= worth
                )
            )
        tops = tuple(
            bisect_right(filled, room) - 1 if room >= 0 and value else 0 for room in self._rooms
        )
        needed = sum(bisect_right(value, weight) * count for weight, count in self._fixed)
        needed += sum(_least_worth(run, value, longest) for run in self._runs)
        return Claim(tops, needed)


def _rises(value: Sequence[int]) -> bool:
    """Whether each number of steps begins no sooner than the one before, above no room at all."""
    return min(value, default=1) > 0 and all(one <= other for one, other in pairwise(value))


def _least_worth(run: _Run, value: Sequence[int], longest: int) -> int:
    """What a run's pieces are worth together at the least, however it is divided."""
    # the longest piece that is worth no more than 0, 1, 2 and so on
    ends = [*(min(begin - 1, longest) for begin in value), longest]
    reach: dict[int, int] = {0: 0}
    for _ in range(run.pieces):
        after: dict[int, int] = {}
        for worth, length in reach.items():
            for one, end in enumerate(ends):
                if end >= run.least:
                    more = length + end
                    if more > after.get(worth + one, -1):
                        after[worth + one] = more
        reach = after
    return min((worth for worth, length in reach.items() if length >= run.total), default=0)


__all__ = ["shown_anywhere"]
