"""What a trim costs at least, wherever its long walls are joined.

The planner's bound holds for the pieces as they are cut.  Here a wall is so many parts of
any length that together take the wall's room.  The duals of a linear program over patterns and
splits (``joint_program.py``) only suggest values; they are made whole numbers, and then two
dynamic programs make an inequality of them that is true of every plan: what the pieces and
parts on a stick are worth at most (``pricing.py``), and what each wall is worth in the way of
dividing it that is worth least.  The cheapest mix of sticks that satisfies all such
inequalities bounds the cost.
"""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import cached_property
from typing import Any, Final, TypeAlias

from trimlang.record import record
from trimlang.stock.beside_walls import beside_walls, wall_rooms, worth_by_length
from trimlang.stock.buying import Buying
from trimlang.stock.certificate import Certificate, FreeRun
from trimlang.stock.certifying import certificate_of
from trimlang.stock.floor import Worth, cost_floor
from trimlang.stock.joint_program import JoinedStick, JointProgram, Split
from trimlang.stock.mix import WORTHS_KEPT, Known, Mix, MixSearch
from trimlang.stock.pricing import SCALE, Pricing
from trimlang.stock.problem import Problem
from trimlang.stock.solver import HAIR
from trimlang.stock.wall_divisions import Steps, cheapest_divisions, steps_of

BATCH: Final = 12
"""Patterns added for one kind after one pricing."""

MARKS: Final = 400
"""No more marks than these."""

ROUNDS: Final = 40
"""How often marks are added while one question is asked."""

IN_VAIN: Final = 3
"""How often marks are added while the bound of the cost rises no further."""

MIXES: Final = 40
"""The most mixes of sticks tried."""


@record
class Argued:
    """A bound, and the worths that show it; ``steps``: what parts of walls are worth in each."""

    floor: int
    certificate: Certificate
    steps: tuple[Steps, ...] = ()


_Kept: TypeAlias = tuple[int, int, Worth, Steps]
"""An inequality behind the bound that it shows, less than 0, and when it was found."""


def _best(kept: Iterable[_Kept]) -> list[tuple[Worth, Steps]]:
    return [(worth, steps) for _, _, worth, steps in sorted(kept)[:WORTHS_KEPT]]


class JointBound:
    """The search for a bound of one trim; ``roomiest`` says where a cheaper plan may be.

    Args:
        fixed: the problem without the long walls' parts.
        free: the long walls.
        seconds: what is left of the time, an outer guard.
    """

    def __init__(
        self, fixed: Problem, free: Sequence[FreeRun], seconds: Callable[[], float]
    ) -> None:
        self._seconds = seconds
        self.timber, among = beside_walls(fixed, free)
        self._search = MixSearch(among, Buying(among))
        of_walls = wall_rooms(free, self.timber)
        self.sorts, self._lost = of_walls.sorts, of_walls.lost
        self._rooms = [max(kind.room, 0) for kind in among.kinds]
        # The most room that a part of a wall can take.
        self._longest = max((room - self._lost for room in self._rooms), default=0)
        self._parts = sum(sort.parts for sort in self.sorts)
        self._known = Known([worth_by_length(self.timber, free)])
        self._steps: list[Steps] = [()]
        self._floor = cost_floor(self.timber, self._known.worths[0])
        self._solved = False
        # A wall that no parts make up, or a piece that no stick holds: there is no plan at all.
        self._possible = all(
            sort.least <= self._longest and sort.total <= sort.parts * self._longest
            for sort in self.sorts
        ) and all(size.least <= max(self._rooms) for size in self.timber.sizes)

    @cached_property
    def program(self) -> JointProgram:
        """The linear program with the columns met so far; the solver is loaded when it is asked."""
        return JointProgram(self.timber, Counter(self.sorts), self._first_marks())

    def bound(self, enough: int) -> Argued:
        """Return a bound, no more than ``enough``: what every plan costs, or more than that."""
        if self._floor < enough and self._possible and self._parts and self._seconds() > 0:
            if not self._solved:
                self._solve_cost(enough)
            self._try_mixes(enough)
        floor = min(self._floor, enough)
        worths = self._known.worths
        useful = [place for place, worth in enumerate(worths) if worth.needed > 0]
        return Argued(
            floor,
            certificate_of(self.timber, floor, [worths[place] for place in useful]),
            tuple(self._steps[place] for place in useful),
        )

    def _first_marks(self) -> Iterator[int]:
        """Yield the least parts' rooms, and what exceeds a stick, its half and its third."""
        least = min((sort.least for sort in self.sorts), default=self._longest)
        yield from {sort.least for sort in self.sorts}
        for room in {room - self._lost for room in self._rooms}:
            yield from (room // n + 1 for n in (1, 2, 3) if least < room // n + 1 <= self._longest)

    def _solve_cost(self, enough: int) -> None:
        """Price until nothing is gained, and keep the inequalities that ask for most money."""
        self.program.pose_cost()
        kept: list[_Kept] = []
        rounds = 0
        while self._seconds() > 0 and self._floor < enough:
            value, columns, duals = self.program.solve()
            priced = None if duals is None else self._priced(duals)
            if priced is None:
                break
            worth, steps, fresh = priced
            floor = cost_floor(self.timber, worth)
            kept.append((-floor, len(kept), worth, steps))
            if floor > self._floor:
                self._floor, rounds = floor, 0
            # Either no pattern is missing, or the bound is as high as this program can show: only
            # finer marks can raise it now.
            if not fresh or floor >= value - 1e-6:
                rounds += 1
                # Whole sticks often cost more than the program says, so no finer marks may be
                # needed.
                met = floor == self._floor and self._is_met(enough, _best(kept))
                if met or rounds > IN_VAIN or not self._marked(columns):
                    self._solved = not met
                    break
        for worth, steps in _best(kept):
            self._learn(worth, steps)

    def _is_met(self, enough: int, kept: Sequence[tuple[Worth, Steps]]) -> bool:
        """Tell whether no mix that satisfies these worths costs less; that is the bound then."""
        known = Known([*self._known.worths, *(worth for worth, _ in kept)])
        _, floor = self._search.cheapest(known, enough, self._seconds())
        if floor >= enough:
            self._floor = floor
        return floor >= enough

    def _try_mixes(self, enough: int) -> None:
        """Rule out mixes, the cheapest first, until the program knows of none against one."""
        for _ in range(MIXES):
            if self._floor >= enough or self._seconds() <= 0:
                return
            # No mix below is left, so every plan costs at least the floor that comes with it.
            mix, floor = self._search.cheapest(self._known, enough, self._seconds())
            self._floor = max(self._floor, floor)
            if mix is None:
                return
            if not self._ruled_out(mix.counts):
                return

    def _ruled_out(self, counts: Sequence[int]) -> bool:
        """Look for an inequality that such a rack does not satisfy."""
        self.program.pose_rack(counts)
        rounds = 0
        while self._seconds() > 0:
            share, columns, duals = self.program.solve()
            # By fractions of patterns the rack is enough, so no inequality can rule it out.
            if duals is None or share <= 1 + HAIR:
                return False
            priced = self._priced(duals)
            if priced is None:
                return False
            worth, steps, fresh = priced
            if sum(w * n for w, n in zip(worth.of_kind, counts, strict=True)) < worth.needed:
                self._learn(worth, steps)
                return True
            if not fresh:
                rounds += 1
                if rounds > ROUNDS or not self._marked(columns):
                    return False
        return False

    @property
    def floor(self) -> int:
        """What every plan costs at the least, as far as is known."""
        return self._floor

    def roomiest(self, cost: int, aside: Sequence[tuple[int, ...]] = ()) -> Mix | None:
        """Return the mix with most room of those that cost no more and that nothing rules out.

        Nor any mix that has no more of any kind than one of those set ``aside``.
        """
        known = Known(self._known.worths, [*self._known.too_small, *aside])
        return self._search.roomiest(known, cost)

    def _learn(self, worth: Worth, steps: Steps) -> None:
        self._known.worths.append(worth)
        self._steps.append(steps)

    def _marked(self, columns: Any) -> int:
        """Add marks where the parts on the patterns used end; how many are new."""
        if len(self.program.marks) > MARKS:
            return 0
        sorts = list(self.program.sorts)
        marks: set[int] = set()
        # Columns that were added since are in no answer yet.
        for column, value in zip(self.program.columns, columns, strict=False):
            if value <= HAIR:
                continue
            if isinstance(column, JoinedStick):
                marks.update(part + 1 for part in column.parts if part < self._longest)
            else:
                # What a part must at least be beside the others.
                over = sum(column.parts) - sorts[column.sort].total
                marks.update(part - over for part in column.parts if part - over > 0)
        return self.program.mark(marks)

    def _priced(self, duals: Sequence[float]) -> tuple[Worth, Steps, int] | None:
        """Return the inequality that duals suggest, and how many columns the program gains."""
        of_size, of_kind, of_mark = self.program.parted(duals)
        scale = SCALE / max(*duals, 1e-12)
        # From here on everything is in whole numbers, and true whatever these are.
        values = [int(value * scale) if value > 0 else 0 for value in of_size]
        steps = steps_of(of_mark, scale)
        sizes = self.timber.sizes
        weights = [size.least for size in sizes] + [room for room, _ in steps]
        pricing = Pricing(
            weights,
            self._rooms,
            values + [value for _, value in steps],
            [*self.timber.demand, *[self._parts] * len(steps)],
            len(sizes),
            self._lost,
        )
        fresh: list[JoinedStick | Split] = []
        for kind, room in enumerate(self._rooms):
            above = int(max(of_kind[kind], 0.0) * scale) + int(1e-9 * SCALE)
            for pattern in pricing.patterns(kind, above, BATCH):
                left = room - self._lost - sum(weights[item] for item in pattern)
                parts = sorted((weights[n] for n in pattern if n >= len(sizes)), reverse=True)
                # what is left over makes the longest part longer
                drawn = (parts[0] + left, *parts[1:]) if parts else ()
                fresh.append(JoinedStick(kind, tuple(n for n in pattern if n < len(sizes)), drawn))
        needed = sum(v * n for v, n in zip(values, self.timber.demand, strict=True))
        divisions: dict[tuple[int, int], list[tuple[int, int, tuple[int, ...]]]] = {}
        for place, (sort, often) in enumerate(self.program.sorts.items()):
            alike = sort.parts, sort.least
            if alike not in divisions:
                divisions[alike] = cheapest_divisions(steps, self._longest, *alike)
            found = divisions[alike]
            at = bisect_left(found, sort.total, key=lambda one: one[0])
            # No parts of this many make the wall up: no plan, and nothing to learn from these
            # duals.
            if at == len(found):
                return None
            _, worth, rooms = found[at]
            needed += worth * often
            fresh.append(Split(place, rooms))
        return Worth(tuple(pricing.best), needed, tuple(values)), steps, self.program.add(fresh)


__all__ = ["Argued", "JointBound"]
