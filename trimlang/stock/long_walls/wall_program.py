"""A linear program that divides each long wall as a whole while all else is cut from a rack.

Columns: the sticks taken of each kind; sticks with fixed pieces alone; and *divisions*, ways to cut
one wall.  A division names the sticks of all the wall's parts and what else is cut from them:
two parts share their wall so that both sticks are used up as well as can be, all others are whole
sticks.  Another way leaves a *remainder* beside whole sticks; it becomes one more fixed
piece, so that the remainders of several walls may lie on one stick.  Rows: sizes, remainders
and kinds as in ``program.py``, and one for each wall.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Final, TypeAlias

from trimlang.stock.long_walls.wall_ways import Division, LongWall, WallWays
from trimlang.stock.patterns.pricing import SCALE, Pricing
from trimlang.stock.solver import HAIR, add_column, add_row, quiet_solver
from trimlang.stock.sticks.timber import Timber

LACK: Final = 10.0
"""The price of a piece left uncut, in longest sticks: so dear that all is cut if it can be."""

PATTERNS: Final = 10
"""Sticks without a wall's part that are added for one kind after one pricing."""

WAYS: Final = 3
"""Divisions of one wall that are tried after one pricing: the best of so many pairs of kinds."""

KINDS: Final = 8
"""Walls are divided over so many kinds of stick: those of which there is most length."""

ANSWERS: Final = 100
"""No more answers are asked for between two steps of a dive."""

Divisions: TypeAlias = Iterable[Division]
_Numbers: TypeAlias = tuple[tuple[int, int], ...]


@dataclass(slots=True)
class ToCut:
    """What is still to be cut: pieces of each size, and walls; and the sticks left for it.

    ``joints`` is how many more than are needed there may be.
    """

    demand: list[int]
    rack: list[int]
    walls: list[bool]
    joints: int

    def copy(self) -> ToCut:
        """Return a copy to be changed."""
        return ToCut([*self.demand], [*self.rack], [*self.walls], self.joints)


class WallProgram:
    """The program for one rack, with pieces of these ``weights`` on its sticks.

    Walls may have so many ``joints`` more than they need, all together.
    """

    def __init__(
        self,
        timber: Timber,
        weights: Sequence[int],
        walls: Sequence[LongWall],
        counts: Sequence[int],
        joints: int = 0,
    ) -> None:
        import highspy
        import numpy as np

        self._np, self._inf = np, highspy.kHighsInf
        self._walls = walls
        self._kerf = timber.problem.kerf
        self._rooms = [max(kind.room, 0) for kind in timber.kinds]
        self._longest = max((*self._rooms, 1))
        # Ways to divide a wall multiply with the kinds of stick, so that only those with most
        # length are asked.
        most = sorted(range(len(counts)), key=lambda k: (-counts[k] * self._rooms[k], k))
        own = [kind for kind in most[:KINDS] if counts[kind]]
        self._ways = WallWays(walls, self._rooms, own, self._kerf)
        self._pieces = len(weights)
        self._remainders = list(self._ways.remainders(counts))
        # A remainder lies on its stick as a piece does, with a cut behind it.
        rests = [one.length + self._kerf for one in self._remainders]
        self._weights = [*weights, *rests]
        # All that there is to cut, at first.
        self.whole = ToCut(
            [*timber.demand, *[0] * len(rests)], list(counts), [True] * len(walls), joints
        )
        self.columns: list[Division] = []
        # Of each how many sticks of which kinds, and how many pieces of which sizes, it takes.
        self._holds: dict[Division, tuple[_Numbers, _Numbers]] = {}
        lp = self._lp = quiet_solver({"presolve": "off", "solver": "simplex"})
        self._first_kind = len(self._weights)
        self._first_wall = self._first_kind + len(self._rooms)
        self._joint_row = self._first_wall + len(walls)
        # A row for each size, each kind of stick and each wall, and one for the joints; what may be
        # used of each is set anew whenever it is solved.
        for _ in range(self._joint_row + 1):
            add_row(lp, 0.0, {})
        for kind, room in enumerate(self._rooms):
            # A stick that is used costs its length, so that the program leaves the most length on
            # the rack.
            self._column(room / self._longest, {self._first_kind + kind: 1.0})
        for size in range(len(self._weights)):
            # Doing without a piece or a wall is possible and so dear that it tells: the rack does
            # not hold everything.
            self._column(LACK, {size: 1.0})
        for number, wall in enumerate(walls):
            self._column(LACK * wall.pieces, {self._first_wall + number: 1.0})
        self._first = lp.getNumCol()
        self._add(
            Division(
                tuple((one.kind, ()) for _ in range(walls[one.wall].pieces - 1)),
                one.wall,
                (*[one.part] * (walls[one.wall].pieces - 1), one.length),
                place,
            )
            for place, one in enumerate(self._remainders)
        )

    def _column(self, price: float, entries: dict[int, float]) -> None:
        add_column(self._lp, price, self._inf, entries)

    def _add(self, divisions: Divisions) -> int:
        """Add what is not known yet, and return how many those are."""
        fresh = [one for one in dict.fromkeys(divisions) if one not in self._holds]
        for one in fresh:
            kinds = Counter(kind for kind, _ in one.sticks)
            sizes = Counter(size for _, pattern in one.sticks for size in pattern)
            self._holds[one] = tuple(kinds.items()), tuple(sizes.items())
            entries = Counter(sizes)
            entries.update({self._first_kind + kind: -number for kind, number in kinds.items()})
            if one.wall is not None:
                entries[self._first_wall + one.wall] += 1
            if one.left is not None:
                # What a wall leaves for another stick becomes a piece that has to be cut like any
                # other.
                entries[self._pieces + one.left] -= 1
            if one.added:
                entries[self._joint_row] -= one.added
            self._column(0.0, {row: float(number) for row, number in entries.items()})
        self.columns += fresh
        return len(fresh)

    @property
    def work(self) -> int:
        """How many ways to divide a wall were looked at."""
        return self._ways.work

    def _wanted(self, now: ToCut) -> list[int]:
        """How many pieces of each size a division may hold: of remainders those that may come."""
        rests = [
            max(number, int(now.walls[rest.wall]))
            for number, rest in zip(now.demand[self._pieces :], self._remainders, strict=True)
        ]
        return [*now.demand[: self._pieces], *rests]

    def _fits(self, one: Division, wanted: Sequence[int], now: ToCut) -> bool:
        kinds, sizes = self._holds[one]
        return (
            (one.wall is None or now.walls[one.wall])
            and one.added <= now.joints
            and all(number <= now.rack[kind] for kind, number in kinds)
            and all(number <= wanted[size] for size, number in sizes)
        )

    def take(self, one: Division, now: ToCut) -> bool:
        """Take a division off what is to be cut if all of it is; return whether it was taken."""
        if not self._fits(one, now.demand, now):
            return False
        for kind, pattern in one.sticks:
            now.rack[kind] -= 1
            for size in pattern:
                now.demand[size] -= 1
        if one.wall is not None:
            now.walls[one.wall] = False
            now.joints -= one.added
        if one.left is not None:
            now.demand[self._pieces + one.left] += 1
        return True

    def solved(self, now: ToCut) -> list[tuple[float, Division]] | None:
        """Return how often each division of a wall is used where most length stays on the rack.

        The most used first; none with a remainder of a wall that is not divided yet.
        None: the rack does not hold everything.
        """
        np, lp = self._np, self._lp
        wanted = self._wanted(now)
        for size, number in enumerate(now.demand):
            lp.changeRowBounds(size, float(number), self._inf)
        for wall, open_ in enumerate(now.walls):
            lp.changeRowBounds(self._first_wall + wall, float(open_), self._inf)
        lp.changeRowBounds(self._joint_row, -float(now.joints), self._inf)
        for kind, number in enumerate(now.rack):
            lp.changeColBounds(kind, 0.0, float(number))
        # Columns stay from one rack to the next; those that hold too much are shut, not removed.
        for place, column in enumerate(self.columns, start=self._first):
            held = self._fits(column, wanted, now)
            lp.changeColBounds(place, 0.0, self._inf if held else 0.0)
        # the dual simplex after bounds have changed, the primal after columns were added
        lp.setOptionValue("simplex_strategy", 1)
        values = np.zeros(0)
        # New patterns change what pieces are worth, and that asks for new patterns; most of the
        # gain comes early.
        for _ in range(ANSWERS):
            lp.run()
            lp.setOptionValue("simplex_strategy", 4)
            answer = lp.getSolution()
            values = np.asarray(answer.col_value)
            if not self._add(self._priced(list(answer.row_dual), wanted, now)):
                break
        # Some piece or wall was done without: this rack is too small.
        if float(values[len(self._rooms) : self._first].sum()) > HAIR:
            return None
        used = [(float(values[self._first + n]), n) for n in values[self._first :].nonzero()[0]]
        used.sort(key=lambda one: (-one[0], one[1]))
        return [
            (value, self.columns[n])
            for value, n in used
            if value > HAIR
            and self.columns[n].wall is not None
            and self._fits(self.columns[n], now.demand, now)
        ]

    def _priced(
        self, duals: Sequence[float], wanted: Sequence[int], now: ToCut
    ) -> Iterator[Division]:
        """Yield sticks and divisions that are worth more than their sticks."""
        # Whole numbers from here on: the search for patterns compares worths exactly.
        scale = SCALE / max(*duals, 1e-12)
        values = [max(int(value * scale), 0) for value in duals[: len(self._weights)]]
        paid = [max(int(value * scale), 0) for value in duals[self._first_kind : self._first_wall]]
        hair, joint = int(1e-9 * SCALE), max(int(duals[self._joint_row] * scale), 0)
        pricing = Pricing(self._weights, self._rooms, values, wanted)
        for kind, number in enumerate(now.rack):
            if number:
                for pattern in pricing.patterns(kind, paid[kind] + hair, PATTERNS):
                    yield Division(((kind, pattern),))
        for wall, is_open in enumerate(now.walls):
            if is_open:
                least = hair - int(duals[self._first_wall + wall] * scale)
                found = self._ways.ways(wall, pricing.by_room, paid, now.rack)
                ways = [(worth - one.added * joint, one) for worth, one in found]
                for worth, way in sorted(ways, key=lambda one: -one[0])[:WAYS]:
                    if worth > least and way.added <= now.joints:
                        yield self._ways.divided(way, pricing, self._weights, values, wanted)


__all__ = ["ToCut", "WallProgram"]
