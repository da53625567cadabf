"""Divides all long walls of a trim at once, by rounding a linear program step by step.

The divisions that an answer of ``wall_program.py`` uses most are kept and the rest is solved
again, as in ``diving.py``; a dead end is left by taking another division first.  It ends when each
wall is divided and what is left can still be cut but for fractions of sticks.  What is found is a
proposal only: the pieces that come of it are planned and checked like any others.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final, TypeAlias

from trimlang.record import record
from trimlang.stock.long_walls.joint_bound import JointBound
from trimlang.stock.long_walls.wall_program import ToCut, WallProgram
from trimlang.stock.long_walls.wall_ways import Division, LongWall
from trimlang.stock.search.diving import NEARLY, Step, dive

Parts: TypeAlias = tuple[tuple[int, ...], ...]
"""The lengths of each wall's parts, longest first."""

_Tried: TypeAlias = tuple[tuple[int, ...], tuple[int, ...]]
"""A rack, and what the pieces take of it."""

RETREATS: Final = 30
"""Dead ends of one dive."""

AT_ONCE: Final = 10
"""Of so many walls one is divided in a step."""

RACKS: Final = 4
"""Racks that are tried for one proposal."""

JOINT_RACKS: Final = 8
"""The same where joints are paid for: the fullest one, then the fullest of the others."""

WORK: Final = 60_000
"""Ways to divide a wall that are looked at for one trim."""


class Dividing:
    """Proposals for the walls of one trim; ``price`` is that of a joint more than are needed."""

    def __init__(
        self,
        search: JointBound,
        walls: Sequence[LongWall],
        seconds: Callable[[], float],
        price: int | None = None,
    ) -> None:
        self._price = price
        self._search, self._walls, self._seconds = search, walls, seconds
        self._work = 0
        self._failed: set[_Tried] = set()
        self._last: _Tried | None = None

    def cheaper(self, cost: int, floor: int) -> Parts | None:
        """Return parts with which everything may cost less, found on the cheapest rack that does.

        ``cost`` is what a plan at hand costs, no plan costs less than ``floor``.
        """
        found: Parts | None = None
        # Where joints cost money the cheapest rack is not the goal: a joint has to pay for itself.
        if self._price is not None:
            return self._with_joints(cost, self._price)
        # First the least that there may be, then half-way between what failed and what did not.
        low, most = floor, floor
        for _ in range(RACKS):
            if low >= cost:
                break
            rack = self._search.roomiest(most)
            parts = None if rack is None else self._on_rack(rack.counts, 0)
            if parts is not None and rack is not None:
                found, cost = parts, rack.cost
            else:
                low = most + 1
            most = (low + cost - 1) // 2
        return found

    def _with_joints(self, cost: int, price: int) -> Parts | None:
        """Return parts with which sticks and joints cost less, on the fullest rack that does."""
        failed: list[tuple[int, ...]] = []
        for _ in range(JOINT_RACKS):
            rack = self._search.roomiest(cost - 1 - price, failed)
            if rack is None:
                return None
            # As many joints as what is saved pays for.
            left = cost - 1 - rack.cost
            joints = min(left // price, len(self._walls)) if price else len(self._walls)
            parts = self._on_rack(rack.counts, joints)
            if parts is not None:
                return parts
            failed.append(rack.counts)
        return None

    def refuse(self) -> None:
        """Propose no more what was proposed last: its pieces cannot be cut as was hoped."""
        if self._last is not None:
            self._failed.add(self._last)

    def _on_rack(self, counts: tuple[int, ...], joints: int) -> Parts | None:
        """Divide all walls so that a rack may hold everything; mitres shared at best, or not."""
        sizes = self._search.timber.sizes
        for weights in dict.fromkeys(
            # With every mitre shared more fits than may come true; where that fails, none are
            # shared.
            (tuple(size.least for size in sizes), tuple(size.weight for size in sizes))
        ):
            tried = counts, weights
            if tried in self._failed:
                continue
            # Work counts before the clock does, so that the same job has the same plan on every
            # machine.
            if self._work >= WORK or self._seconds() <= 0:
                return None
            program = WallProgram(self._search.timber, weights, self._walls, counts, joints)
            parts = self._dive(program)
            self._work += program.work
            if parts is not None:
                self._last = tried
                return parts
            self._failed.add(tried)
        return None

    def _dive(self, program: WallProgram) -> Parts | None:
        """Keep the surest divisions, solve anew, and turn back at a dead end."""

        def step_from(now: _Divided) -> Step[_Divided, Division] | None:
            answer = program.solved(now.left)
            if not answer:
                return None
            # What the program is all but sure of is taken together; in a large house one at a
            # time would take for ever.
            near = sum(value >= NEARLY for value, _ in answer)
            width = max(1, min(near, sum(now.left.walls) // AT_ONCE))
            return Step(now, [one for _, one in answer], width)

        def keep(before: _Divided, chosen: Sequence[Division]) -> _Divided:
            left, parts = before.left.copy(), list(before.parts)
            for one in chosen:
                if program.take(one, left) and one.wall is not None:
                    parts[one.wall] = tuple(sorted(one.parts, reverse=True))
            return _Divided(left, tuple(parts))

        def ended(now: _Divided) -> bool:
            return not any(now.left.walls) and program.solved(now.left) is not None

        whole = _Divided(program.whole, ((),) * len(self._walls))
        found = dive(whole, step_from, keep, ended, RETREATS, self._seconds)
        return None if found is None else found.parts


@record
class _Divided:
    """What is still to be cut, and the parts of the walls that are divided."""

    left: ToCut
    parts: Parts


__all__ = ["Dividing", "Parts"]
