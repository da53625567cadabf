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
from typing import Any, Final, TypeAlias

from trimlang.record import record
from trimlang.stock.certificate import Certificate, FreeRun
from trimlang.stock.long_walls.joint_pricing import JointPricing
from trimlang.stock.long_walls.joint_program import JoinedStick, JointProgram, Split
from trimlang.stock.long_walls.wall_divisions import Steps, cheapest_divisions, steps_of
from trimlang.stock.long_walls.wall_rooms import (
    WallRooms,
    by_length,
    timber_beside_walls,
    wall_rooms,
    worth_by_length,
)
from trimlang.stock.mixes.buying import Buying
from trimlang.stock.mixes.mix import WORTHS_KEPT, Known, Mix, MixSearch
from trimlang.stock.patterns.pricing import SCALE
from trimlang.stock.problem import Problem
from trimlang.stock.solver import HAIR
from trimlang.stock.sticks.certifying import certificate_of
from trimlang.stock.sticks.floor import Worth, cost_floor

MARKS: Final = 400
"""With so many marks no more are added."""

ROUNDS: Final = 40
"""How often marks are added while one question is asked."""

IN_VAIN: Final = 3
"""How often marks are added while the bound of the cost rises no further."""

MIXES: Final = 40
"""The most mixes of sticks tried."""


@record
class Argued:
    """A bound, and the worths that show it; ``steps``: what parts of walls are worth in each.

    ``laid``: whether parts and pieces are laid one after another in it.
    """

    floor: int
    certificate: Certificate
    steps: tuple[Steps, ...] = ()
    laid: tuple[bool, ...] = ()


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
        self.timber, among = timber_beside_walls(fixed, free)
        self._search = MixSearch(among, Buying(among))
        self._ways = wall_rooms(free, self.timber, among)
        self._known = Known([worth_by_length(self.timber, by_length(free, among))])
        self._steps: list[Steps] = [()]
        self._laid = [False]
        self._floor = cost_floor(self.timber, self._known.worths[0])

    def bound(self, enough: int) -> Argued:
        """Return a bound, no more than ``enough``: what every plan costs, or more than that."""
        for walls in self._ways:
            if self._floor >= enough or self._seconds() <= 0:
                break
            if self._turned_to(walls):
                self._solve_cost(enough)
                self._try_mixes(enough)
        floor = min(self._floor, enough)
        worths = self._known.worths
        useful = [place for place, worth in enumerate(worths) if worth.needed > 0]
        return Argued(
            floor,
            certificate_of(self.timber, floor, [worths[place] for place in useful]),
            tuple(self._steps[place] for place in useful),
            tuple(self._laid[place] for place in useful),
        )

    def _turned_to(self, walls: WallRooms) -> bool:
        """Count the room of walls' parts in this way; return whether there is a plan at all.

        There is none with a wall that no parts make up, or a piece that no stick holds.
        """
        self._walls = walls
        # The most room that a part of a wall can take on each kind of stick.
        reach = {max(kind.room, 0) - walls.lost for kind in self.timber.kinds}
        self._longest = max(reach, default=0)
        # The solver is loaded here.
        marks = self._first_marks(reach)
        self.program = JointProgram(self.timber, Counter(walls.sorts), marks)
        return all(
            sort.least <= self._longest and sort.total <= sort.parts * self._longest
            for sort in walls.sorts
        ) and all(size.least <= self._longest + walls.lost for size in self.timber.sizes)

    def _first_marks(self, reach: Iterable[int]) -> Iterator[int]:
        """Yield the least parts' rooms, and what exceeds a stick, its half and its third."""
        least = min(sort.least for sort in self._walls.sorts)
        yield from {sort.least for sort in self._walls.sorts}
        for room in reach:
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
            if worth.slack(counts) < 0:
                self._learn(worth, steps)
                return True
            if not fresh:
                rounds += 1
                if rounds > ROUNDS or not self._marked(columns):
                    return False
        return False

    def roomiest(self, cost: int, aside: Sequence[tuple[int, ...]] = ()) -> Mix | None:
        """Return the mix with most room of those that cost no more and that nothing rules out.

        Nor any mix that has no more of any kind than one of those set ``aside``.
        """
        known = Known(self._known.worths, [*self._known.too_small, *aside])
        return self._search.roomiest(known, cost, self._seconds())

    def _learn(self, worth: Worth, steps: Steps) -> None:
        self._known.worths.append(worth)
        self._steps.append(steps)
        self._laid.append(bool(self._walls.leans))

    def _marked(self, columns: Any) -> int:
        """Add marks where the parts on the patterns used end; how many are new."""
        if len(self.program.marks) > MARKS:
            return 0
        sorts = list(self.program.sorts)
        least = min(sort.least for sort in sorts)
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
                marks.update(part - over for part in column.parts if part - over > least)
        return self.program.mark(marks)

    def _priced(self, duals: Sequence[float]) -> tuple[Worth, Steps, int] | None:
        """Return the inequality that duals suggest, and how many columns the program gains."""
        of_size, of_kind, of_mark = self.program.parted(duals)
        scale = SCALE / max(*duals, 1e-12)
        # From here on everything is in whole numbers, and true whatever these are.
        values = [int(value * scale) if value > 0 else 0 for value in of_size]
        steps = steps_of(of_mark, scale)
        pricing = JointPricing(self.timber, self._walls, values, steps)
        fresh: list[JoinedStick | Split] = []
        for kind, paid in enumerate(of_kind):
            above = int(max(paid, 0.0) * scale) + int(1e-9 * SCALE)
            fresh.extend(pricing.sticks(kind, above))
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
