"""The linear program of a trim whose long walls may be joined anywhere.

Rows: one for each size (as in ``program.py``), one for each kind of stick, one for each *mark* of
length, one for each sort of long wall.  Columns: what is bought; patterns, which hold fixed
pieces and parts of walls of any length; and *splits*, ways to divide one wall into its parts.
A mark's row says that the patterns give at least as many parts of that length or more as
the splits ask for: a longer part serves for a shorter one.  So the marks' dual values
add up to a value of a part that never falls as the part grows longer.

Between two marks all parts are worth the same.  Patterns count a part from its mark on, splits
up to the next mark, so the program asks for no more than any plan needs; marks are added where
the patterns that are used end, until nothing is gained.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from fractions import Fraction
from typing import Any

from trimlang.record import record
from trimlang.stock.program import LACK
from trimlang.stock.solver import add_column, add_row, quiet_solver
from trimlang.stock.timber import Pattern, Timber
from trimlang.stock.wall_divisions import WallSort


@record
class JoinedStick:
    """A stick's fixed pieces, by their sizes, and the rooms that its parts of walls take."""

    kind: int
    pattern: Pattern
    parts: tuple[int, ...] = ()


@record
class Split:
    """A wall of one sort divided into parts that take these rooms."""

    sort: int
    parts: tuple[int, ...]


Column = JoinedStick | Split


class JointProgram:
    """The program and its columns; ``marks`` are the rooms at which a part may be worth more."""

    def __init__(self, timber: Timber, sorts: Counter[WallSort], marks: Iterable[int]) -> None:
        import highspy
        import numpy as np

        self._np = np
        self._inf = highspy.kHighsInf
        self._optimal = highspy.HighsModelStatus.kOptimal
        # How many walls there are of each sort.
        self.sorts = dict(sorts)
        self._sizes, self._kinds = len(timber.sizes), len(timber.kinds)
        self._first_mark = self._sizes + self._kinds + len(self.sorts)
        self.marks: list[int] = []
        self.columns: list[Column] = []
        self._known: set[Column] = set()
        # Without presolve, since it is solved again and again with a few columns more, from where
        # it was.
        lp = self._lp = quiet_solver({"presolve": "off", "solver": "simplex"})
        for wanted in (*timber.demand, *[0] * self._kinds, *sorts.values()):
            add_row(lp, float(wanted), {})
        self._money = [
            (kind, float(Fraction(offer.price, offer.pack)), offer.limit)
            for kind, sort in enumerate(timber.kinds)
            for offer in sort.offers
        ]
        for kind, price, limit in self._money:
            add_column(
                self._lp,
                price,
                self._inf if limit is None else float(limit),
                {self._sizes + kind: 1.0},
            )
        # The columns that a question opens are there from the start, closed by an upper bound of 0.
        self._share = len(self._money)
        add_column(self._lp, 0.0, 0.0, {self._sizes + kind: 1.0 for kind in range(self._kinds)})
        self._dear = LACK * (1.0 + max((price for _, price, _ in self._money), default=0.0))
        # While patterns are missing a piece may be left uncut at a price, so that there always is
        # an answer and with it duals to price new patterns by.
        first = self._share + 1
        self._lacks = range(first, first + self._sizes + len(self.sorts))
        for size in range(self._sizes):
            add_column(self._lp, self._dear, self._inf, {size: 1.0})
        for place, wall in enumerate(self.sorts):
            add_column(
                self._lp,
                self._dear * wall.parts,
                self._inf,
                {self._sizes + self._kinds + place: 1.0},
            )
        self._first = lp.getNumCol()
        self.mark(marks)

    def mark(self, rooms: Iterable[int]) -> int:
        """Add the marks that are not there yet, and return how many those are."""
        fresh = sorted(set(rooms) - set(self.marks))
        for room in fresh:
            # Columns that are there already may give parts so long, so they get an entry too.
            entries = {
                self._first + place: number
                for place, column in enumerate(self.columns)
                if (number := _beyond(column, room))
            }
            add_row(self._lp, 0.0, entries)
            self.marks.append(room)
        return len(fresh)

    def add(self, columns: Iterable[Column]) -> int:
        """Add the columns that are not known yet, and return how many those are."""
        fresh = [one for one in dict.fromkeys(columns) if one not in self._known]
        for column in fresh:
            self._known.add(column)
            self.columns.append(column)
            entries: dict[int, float] = {}
            if isinstance(column, Split):
                entries[self._sizes + self._kinds + column.sort] = 1.0
            else:
                entries.update({size: float(n) for size, n in Counter(column.pattern).items()})
                entries[self._sizes + column.kind] = -1.0
            for place, room in enumerate(self.marks):
                number = _beyond(column, room)
                if number:
                    entries[self._first_mark + place] = number
            add_column(self._lp, 0.0, self._inf, entries)
        return len(fresh)

    def pose_cost(self) -> None:
        """Ask for the least money, from anything that can be bought."""
        self._pose(0.0, self._dear, [limit for _, _, limit in self._money])
        for column, (_, price, _) in enumerate(self._money):
            self._lp.changeColCost(column, price)

    def pose_rack(self, counts: Sequence[int]) -> None:
        """Ask how many times such a rack is needed; more than 1: the rack is too small."""
        self._pose(1.0, LACK, [0] * len(self._money))
        for kind, count in enumerate(counts):
            self._lp.changeCoeff(self._sizes + kind, self._share, float(count))

    def _pose(self, share: float, lack: float, limits: Sequence[int | None]) -> None:
        for column, limit in enumerate(limits):
            self._lp.changeColBounds(column, 0.0, self._inf if limit is None else float(limit))
        self._lp.changeColCost(self._share, share)
        self._lp.changeColBounds(self._share, 0.0, self._inf if share else 0.0)
        # A wall left uncut lacks all its parts, so it costs as much as they together.
        weights = [1.0] * self._sizes + [float(sort.parts) for sort in self.sorts]
        for column, weight in zip(self._lacks, weights, strict=True):
            self._lp.changeColCost(column, lack * weight)

    def solve(self) -> tuple[float, Any, Any]:
        """Return the optimum over the columns so far: value, columns' values, rows' duals."""
        self._lp.run()
        if self._lp.getModelStatus() != self._optimal:
            return float("inf"), None, None
        answer = self._lp.getSolution()
        value = float(self._lp.getInfo().objective_function_value)
        return value, self._np.asarray(answer.col_value)[self._first :], list(answer.row_dual)

    def parted(
        self, duals: Sequence[float]
    ) -> tuple[Sequence[float], Sequence[float], dict[int, float]]:
        """Return the duals of the sizes and of the kinds, and what each mark adds to a value."""
        sizes, rest = duals[: self._sizes], duals[self._sizes :]
        rises = dict(zip(self.marks, duals[self._first_mark :], strict=True))
        return sizes, rest[: self._kinds], rises


def _beyond(column: Column, room: int) -> float:
    """Return how many parts at least so long a pattern gives, or a split takes (negative)."""
    # A split takes parts where a pattern gives them, hence the sign.
    number = sum(part >= room for part in column.parts)
    return -float(number) if isinstance(column, Split) else float(number)


__all__ = ["Column", "JoinedStick", "JointProgram", "Split"]
