"""Check a bound for joints in any places, as ``proof_check.py`` checks that of a plan.

Nothing here comes from the planner: what pieces and parts of walls are worth on a stick, and what a
wall is worth at the least, is worked out again from the problem alone.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise, product
from typing import Final, TypeAlias

from trimlang.record import record
from trimlang.stock.certificate import Certificate, FreeRun, Shape, WorthClaim
from trimlang.stock.checking.cheaper_mix import CheaperMix, Claim, GivenUpError
from trimlang.stock.checking.laid_tops import Laid, best_by_room, laid_tops
from trimlang.stock.checking.stick_tops import StickTops
from trimlang.stock.problem import Part, Problem

Steps: TypeAlias = Sequence[tuple[int, int]]
"""From which room on a part is worth how much, in rising order; below the first, nothing."""

MOST_WORTH: Final = 1 << 59
"""What a stick is worth stays below this, so that arrays of whole numbers hold it."""


def shown_anywhere(
    fixed: Problem,
    free: Sequence[FreeRun],
    certificate: Certificate,
    steps: Sequence[Steps],
    floor: int,
    laid: Sequence[bool],
) -> int:
    """The bound if every choice of joints is shown to cost so much, else what one worth shows.

    ``steps`` say for each worth of the certificate what parts of walls are worth; ``laid`` whether
    that is by the whole room of a part, which shares what it shares with its neighbours.
    """
    return _AnyPlace(fixed, free).shown(certificate, steps, floor, laid)


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
        self._own = Counter(dict(counts))
        # for what may lie within what, pieces that lean as those of the runs may
        self._leans = sorted({ends for run in free for ends in _leans(run)})
        for run in free:
            for left, right in _leans(run):
                counts[max(run.least, 1), left, right] += run.pieces
        # and long ones that lean as the ends of the runs do, of which there are none
        far = 1 + 2 * max((run.lean + abs(run.left) + abs(run.right) for run in free), default=0)
        for run in free:
            counts[far, run.left, 0] += 0
            counts[far, 0, run.right] += 0
        self._lengths = sorted({blank.length for blank in fixed.blanks}, reverse=True)
        self._rooms = [length - 2 * fixed.end_waste + kerf for length in self._lengths]
        self._longest = max((0, *self._rooms))
        tops = StickTops(counts, self._rooms, kerf)
        self._lightest = dict(zip(counts, tops.lightest, strict=True))
        # What is shared is taken off one end: of a joint's two ends off one, and off those of a
        # run's own ends that it is taken off from pieces that lean like it.
        every = [
            (run.pieces - 1) * run.lean
            + 2 * (far + kerf)
            - self._lightest[far, run.left, 0]
            - self._lightest[far, 0, run.right]
            for run in free
        ]
        lean = [max(run.lean, abs(run.left), abs(run.right)) for run in free]
        one = [2 * most for most in lean]
        if not tops.leaning:
            every = one = [0] * len(free)
        # a part that is no longer than what is taken off it would count for more than it takes
        self._too_short = any(run.least + kerf <= off for run, off in zip(free, one, strict=True))
        # what all runs take by length alone
        self._together = sum(
            max(run.total + run.pieces * kerf - off, 0)
            for run, off in zip(free, every, strict=True)
        )
        # how much less room a stick has that holds parts of runs
        self._lost = 0
        if tops.leaning and not any(left or right for _, left, right in self._own):
            # Only parts of runs share: n of them on a stick meet n - 1 times at the most, and the
            # one that leans least is never the deeper of two that meet.
            one = lean
            every = [run.pieces * most for run, most in zip(free, lean, strict=True)]
            self._lost = min(lean, default=0)
        whole = [_Run(run.pieces, run.total + run.pieces * kerf, run.least + kerf) for run in free]
        self._whole = Counter(whole)
        self._less = Counter(
            _Run(run.pieces, run.total - off, max(run.least - end, 1))
            for run, off, end in zip(whole, every, one, strict=True)
        )
        self._parts = sum(run.pieces for run in free)

    def shown(
        self, certificate: Certificate, steps: Sequence[Steps], floor: int, laid: Sequence[bool]
    ) -> int:
        """The bound, or what one worth alone shows."""
        if not len(certificate.worths) == len(steps) == len(laid):
            return 0
        claims = [self._by_length()]
        for worth, rising, is_laid in zip(certificate.worths, steps, laid, strict=True):
            claim = self._claim(certificate.shapes, worth, rising, is_laid)
            claims += [] if claim is None else [claim]
        # of these only their number counts: no more sticks are of use than there are pieces
        stand_ins = (Part(f"\0{number}", 1) for number in range(self._parts))
        problem = replace(self._problem, parts=(*self._problem.parts, *stand_ins))
        mixes = CheaperMix(problem, self._lengths, claims, ())
        try:
            if mixes.below(floor) is None:
                return floor
        # Given up is no proof; then the best of what single claims show is kept.
        except GivenUpError:
            pass
        return max(0, min(floor, max(mixes.alone(place) for place in range(len(claims)))))

    def _by_length(self) -> Claim:
        needed = sum(self._lightest[shape] * count for shape, count in self._own.items())
        return Claim(tuple(max(room, 0) for room in self._rooms), needed + self._together)

    def _claim(
        self, shapes: Sequence[Shape], worth: WorthClaim, steps: Steps, laid: bool
    ) -> Claim | None:
        """What sticks are worth at most, and all the pieces at the least; None: no such claim."""
        if self._too_short and not laid:
            return None
        rising = all(one < other for one, other in pairwise(step for step, _ in steps))
        rising &= all(one <= other for one, other in pairwise(value for _, value in steps))
        values = dict(zip(shapes, worth.of_shape, strict=True))
        every = [*values.values(), *(value for _, value in steps)]
        if not rising or min(every, default=0) < 0 or min((r for r, _ in steps), default=1) < 1:
            return None
        # Sums in the tables must not overflow, or a stick could seem to be worth less than it is.
        most = max(sum(self._own.values()) + self._parts, self._longest + 1)
        if max(every, default=0) * most >= MOST_WORTH:
            return None
        tops = self._laid_tops(values, steps) if laid else self._tops(values, steps)
        if tops is None:
            return None
        runs, longest = self._less, self._longest - self._lost
        if laid:
            runs, longest = self._whole, self._longest
        needed = sum(values.get(shape, 0) * count for shape, count in self._own.items())
        reaches = {
            alike: _reach(*alike, steps, longest)
            for alike in {(run.pieces, run.least) for run in runs}
        }
        for run, often in runs.items():
            reach = reaches[run.pieces, run.least]
            least = min((worth for worth, room in reach.items() if room >= run.total), default=0)
            needed += least * often
        return Claim(tuple(tops), needed)

    def _tops(self, values: dict[Shape, int], steps: Steps) -> list[int]:
        """What pieces and parts are worth on each stick, what they may share taken off."""
        used = [
            (self._lightest[shape], values[shape], count)
            for shape, count in self._own.items()
            if values.get(shape)
        ]
        alone = best_by_room(used, self._longest)
        used += [(room, value, self._parts) for room, value in steps if value]
        # a stick with parts of runs has less room
        beside = best_by_room(used, self._longest)
        return [
            max(int(alone[max(room, 0)]), int(beside[max(room - self._lost, 0)]))
            for room in self._rooms
        ]

    def _laid_tops(self, values: dict[Shape, int], steps: Steps) -> list[int] | None:
        """The same of pieces and parts laid one after another."""
        kerf = self._problem.kerf
        pieces = [
            Laid(length + kerf, left, right, n) for (length, left, right), n in self._own.items()
        ]
        worths = [values.get(shape, 0) for shape in self._own]
        # a part that is worth nothing may still lie between two others, and share with both
        least = min((run.least for run in self._whole), default=1)
        for room, value in [(least, 0), *steps]:
            pieces += [Laid(room, left, right, self._parts) for left, right in self._leans]
            worths += [value] * len(self._leans)
        return laid_tops(pieces, worths, self._rooms)


def _leans(run: FreeRun) -> set[tuple[int, int]]:
    """How a run's pieces may lean at both ends, since each of its joints may lean either way."""
    ways = {run.lean, -run.lean}
    found = {*product({run.left}, ways), *product(ways, {run.right})}
    return found | set(product(ways, ways)) if run.pieces > 2 else found


def _reach(pieces: int, shortest: int, steps: Steps, longest: int) -> dict[int, int]:
    """How much room pieces of a run may take together that are worth so much, for each worth."""
    # the longest part that is worth no more than each value
    ends = [(0, steps[0][0] - 1 if steps else longest)]
    for place, (_, value) in enumerate(steps):
        ends.append((value, steps[place + 1][0] - 1 if place + 1 < len(steps) else longest))
    ends = [(value, end) for value, end in ends if end >= shortest]
    reach: dict[int, int] = {0: 0}
    for _ in range(pieces):
        after: dict[int, int] = {}
        for worth, length in reach.items():
            for value, end in ends:
                if length + end > after.get(worth + value, -1):
                    after[worth + value] = length + end
        # one that is worth more and no longer is of no use
        reach, most = {}, -1
        for worth in sorted(after):
            if after[worth] > most:
                most = reach[worth] = after[worth]
    return reach


__all__ = ["shown_anywhere"]
