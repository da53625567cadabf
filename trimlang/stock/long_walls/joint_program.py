"""The linear program of a trim whose long walls may be joined anywhere.

Rows: one for each size (as in ``program.py``), one for each kind of stick, one for each *mark* of
length, one for each sort of long wall.  Columns: what is bought; patterns, which hold fixed
pieces and parts of walls of any length; and *splits*, ways to divide one wall into its parts.
A mark's row says that the patterns give as many parts from there to the next mark as the splits
ask for.  A longer part serves for a shorter one, so a column at no cost hands parts from
each mark down to the one below: a mark's dual is what a part of its length is worth, and a
longer one is never worth less.

Between two marks all parts are worth the same.  Patterns count a part from its mark on, splits
up to the next mark, so the program asks for no more than any plan needs; marks are added where
the patterns that are used end, until nothing is gained.
"""

from __future__ import annotations

from bisect import bisect, bisect_left
from collections import Counter
from collections.abc import Iterable, Sequence
from fractions import Fraction
from typing import Any

from trimlang.record import record
from trimlang.stock.long_walls.wall_divisions import WallSort
from trimlang.stock.patterns.program import LACK
from trimlang.stock.solver import add_column, add_row, quiet_solver
from trimlang.stock.sticks.timber import Pattern, Timber


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


class _Span:
    """From one mark to the next: its row, and the parts that columns give or ask for there.

    ``parts``: by the places of the columns, the shortest first.  ``down``: the column that
    hands parts to the mark below.
    """

    def __init__(self, row: int) -> None:
        self.row = row
        self.down: int | None = None
        self.parts: dict[int, list[int]] = {}


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
        # The shortest first.
        self.marks: list[int] = []
        self._spans: dict[int, _Span] = {}
        self.columns: list[Column] = []
        self._places: list[int] = []
        self._known: set[Column] = set()
        # Without presolve, since it is solved again and again with a few columns more, from where
        # it was.
        lp = self._lp = quiet_solver(
            {"presolve": "off", "solver": "simplex", "simplex_strategy": 4}
        )
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
        self.mark(marks)

    def mark(self, rooms: Iterable[int]) -> int:
        """Add the marks that are not there yet, and return how many those are."""
        fresh = sorted(set(rooms) - set(self._spans))
        for room in fresh:
            at = bisect(self.marks, room)
            below = self._spans[self.marks[at - 1]] if at else None
            above = self._spans[self.marks[at]] if at < len(self.marks) else None
            span = self._spans[room] = _Span(self._lp.getNumRow())
            self.marks.insert(at, room)
            add_row(self._lp, 0.0, {})
            # The mark above hands its parts to the new one now, no longer to the one below.
            if above is not None and above.down is not None and below is not None:
                self._lp.changeCoeff(below.row, above.down, 0.0)
                self._lp.changeCoeff(span.row, above.down, 1.0)
            elif above is not None:
                self._handed_down(above, span)
            if below is not None:
                self._divided(below, room, span)
                self._handed_down(span, below)
        return len(fresh)

    def _divided(self, below: _Span, room: int, span: _Span) -> None:
        """Give a new mark the parts from it on that were counted at the one below."""
        for place, parts in below.parts.items():
            cut = bisect_left(parts, room)
            if cut < len(parts):
                sign = self._sign(place)
                below.parts[place], span.parts[place] = parts[:cut], parts[cut:]
                self._lp.changeCoeff(below.row, self._places[place], sign * cut)
                self._lp.changeCoeff(span.row, self._places[place], sign * (len(parts) - cut))

    def _handed_down(self, span: _Span, below: _Span) -> None:
        span.down = self._lp.getNumCol()
        add_column(self._lp, 0.0, self._inf, {span.row: -1.0, below.row: 1.0})

    def _sign(self, place: int) -> float:
        """A split takes parts where a pattern gives them."""
        return -1.0 if isinstance(self.columns[place], Split) else 1.0

    def add(self, columns: Iterable[Column]) -> int:
        """Add the columns that are not known yet, and return how many those are."""
        fresh = [one for one in dict.fromkeys(columns) if one not in self._known]
        for column in fresh:
            place = len(self.columns)
            self._known.add(column)
            self.columns.append(column)
            self._places.append(self._lp.getNumCol())
            entries: dict[int, float] = {}
            if isinstance(column, Split):
                entries[self._sizes + self._kinds + column.sort] = 1.0
            else:
                entries.update({size: float(n) for size, n in Counter(column.pattern).items()})
                entries[self._sizes + column.kind] = -1.0
            sign = self._sign(place)
            for part in sorted(column.parts):
                at = bisect(self.marks, part)
                if at:
                    span = self._spans[self.marks[at - 1]]
                    span.parts.setdefault(place, []).append(part)
                    entries[span.row] = entries.get(span.row, 0.0) + sign
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
        return value, self._np.asarray(answer.col_value)[self._places], list(answer.row_dual)

    def parted(
        self, duals: Sequence[float]
    ) -> tuple[Sequence[float], Sequence[float], dict[int, float]]:
        """Return the duals of the sizes and of the kinds, and what a part is worth at each mark."""
        sizes, rest = duals[: self._sizes], duals[self._sizes :]
        worths = {room: duals[self._spans[room].row] for room in self.marks}
        return sizes, rest[: self._kinds], worths


__all__ = ["Column", "JoinedStick", "JointProgram", "Split"]
