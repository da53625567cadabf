"""The linear program over patterns, posed and solved through HiGHS.

Rows: one for each size (cut at least as many as wanted) and one for each kind (no more
sticks cut than bought or taken).  Columns: patterns; for each offer the sticks bought; one
column *share* that stands for "this much of a given rack of sticks"; for each
kind the sticks taken from a rack; for each size a column for pieces that go
uncut, so dear that they are used only while patterns are missing; and for each size but
the shortest a column for pieces cut in the stead of the next shorter one.  These make
no piece worth less than a shorter one, so the values of the sizes are found after half as many
patterns ("dual-optimal inequalities": J. M. Valério de Carvalho, "Using extra dual cuts to
accelerate column generation", INFORMS Journal on Computing 17, 2005).

It is asked three questions.  What do the sticks cost at least (``pose_cost``)?
Does a given rack hold everything (``pose_rack``: the part of the rack that is
needed, fractions of sticks allowed; more than 1 means no)?  And how is it cut so
that the most length stays on the rack (``pose_length``)?
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from fractions import Fraction
from typing import Any, Final

from trimlang.stock.solver import add_column, quiet_solver, stop_when
from trimlang.stock.sticks.timber import Pattern, Timber

LACK: Final = 4.0
"""The price of a piece left uncut: this many racks, or this many of the dearest sticks."""
LACK_OF_LENGTH: Final = 100.0
"""The same in ``pose_length``: so dear that everything is cut if the rack allows it."""
AMID: Final = {"solver": "ipm", "run_crossover": "off", "ipm_optimality_tolerance": 1e-7}
"""How HiGHS is asked for duals amid the best ones.

Nearer to the best the steps become too small for the solver's numbers, and the answer leaves the
middle again.
"""
AT_A_CORNER: Final = {"solver": "simplex", "run_crossover": "on"}
"""How it is asked for those of a corner."""
LARGE: Final = 1_000
"""With more rows than this one answer may take seconds."""


class PatternProgram:
    """The linear program and its patterns.

    ``seconds`` says how long one answer may still take; ``repeats``: patterns may hold more
    pieces of a size than are wanted.
    """

    def __init__(
        self,
        timber: Timber,
        sticks: Iterable[tuple[int, Pattern]],
        seconds: Callable[[], float],
        *,
        repeats: bool = False,
    ) -> None:
        import highspy
        import numpy as np

        self._np = np
        self.timber = timber
        self._sizes = len(timber.sizes)
        self._kinds = len(timber.kinds)
        self._rooms = [kind.room for kind in timber.kinds]
        self.columns: list[tuple[int, Pattern]] = []
        self._repeats = repeats
        self._known: set[tuple[int, Pattern]] = set()
        # For each batch of patterns: where each begins, its rows, its numbers.
        self._entries: list[tuple[Any, Any, Any]] = []
        # Each question changes little, and the last answer is a better start than a presolved
        # program.
        lp = quiet_solver({"presolve": "off", **AT_A_CORNER})
        # Smaller ones are solved so soon that asking at each step would cost more than it saves.
        if self._sizes + self._kinds > LARGE:
            stop_when(lp, lambda: seconds() <= 0)
        self._inf = highspy.kHighsInf
        rows = self._sizes + self._kinds
        lower = np.array([*timber.demand, *([0] * self._kinds)], dtype=np.float64)
        none = np.zeros(0, dtype=np.int32)
        lp.addRows(
            rows,
            lower,
            np.full(rows, self._inf),
            0,
            np.zeros(rows, dtype=np.int32),
            none,
            np.zeros(0),
        )
        self._lp = lp
        self._money = [
            # A pack's price is spread over its sticks: never dearer than whole packs, so bounds
            # hold.
            (kind, float(Fraction(offer.price, offer.pack)), offer.limit)
            for kind, sort in enumerate(timber.kinds)
            for offer in sort.offers
        ]
        for kind, price, limit in self._money:
            upper = self._inf if limit is None else float(limit)
            add_column(lp, price, upper, {self._sizes + kind: 1.0})
        self._share = len(self._money)
        self._taken = self._share + 1
        self._lacks = self._taken + self._kinds
        self._stead = self._lacks + self._sizes
        # No share of a rack and no stick of it may be used until a question opens the column.
        add_column(lp, 0.0, 0.0, {self._sizes + kind: 1.0 for kind in range(self._kinds)})
        # In parts of the longest stick, so that the solver's numbers stay near one.
        longest = max((*self._rooms, 1))
        for kind, room in enumerate(self._rooms):
            add_column(lp, room / longest, 0.0, {self._sizes + kind: 1.0})
        for size in range(self._sizes):
            add_column(lp, 0.0, self._inf, {size: 1.0})
        steads = [(a, b) for a, b in enumerate(timber.shorter) if b is not None]
        for longer, shorter in steads:
            add_column(lp, 0.0, self._inf, {longer: -1.0, shorter: 1.0})
        self._first = self._stead + len(steads)
        # One more, so that a lack has a price where every stick is free.
        self._dearest = max((price for _, price, _ in self._money), default=0.0) + 1.0
        self.demand: tuple[int, ...] = timber.demand
        self.add(sticks)

    def add(self, sticks: Iterable[tuple[int, Pattern]]) -> int:
        """Add the patterns that are not known yet, and return how many those are."""
        np = self._np
        starts: list[int] = []
        places: list[int] = []
        factors: list[float] = []
        fresh = 0
        for stick in sticks:
            if stick in self._known:
                continue
            self._known.add(stick)
            self.columns.append(stick)
            kind, pattern = stick
            starts.append(len(places))
            counted: dict[int, int] = {}
            for size in pattern:
                counted[size] = counted.get(size, 0) + 1
            places.extend(counted)
            factors.extend(counted.values())
            places.append(self._sizes + kind)
            factors.append(-1.0)
            fresh += 1
        if fresh:
            begins = np.array(starts, dtype=np.int32)
            rows = np.array(places, dtype=np.int32)
            numbers = np.array(factors, dtype=np.float64)
            none, free = np.zeros(fresh), np.full(fresh, self._inf)
            self._lp.addCols(fresh, none, none, free, len(places), begins, rows, numbers)
            # Kept beside the solver, which would be asked for every column again at each new
            # demand.
            self._entries.append((begins, rows, numbers))
        return fresh

    def pose_cost(self, demand: Sequence[int], left: Sequence[int]) -> None:
        """Ask for the least money for a demand, from what can be bought of ``left`` sticks."""
        self._close()
        for column, (kind, price, limit) in enumerate(self._money):
            most = left[kind] if limit is None else min(limit, left[kind])
            self._lp.changeColCost(column, price)
            self._lp.changeColBounds(column, 0.0, float(most))
        self._price_lacks(LACK * self._dearest)
        self._pose_demand(demand)

    def pose_rack(
        self, demand: Sequence[int], counts: Sequence[float], *, alone: bool = False
    ) -> None:
        """Ask how many times such a rack the demand needs; more than 1: the rack is too small.

        ``alone``: no piece may stand for a shorter one, which leaves the sizes more values.
        """
        self._close(alone=alone)
        self._lp.changeColCost(self._share, 1.0)
        self._lp.changeColBounds(self._share, 0.0, self._inf)
        for kind, count in enumerate(counts):
            self._lp.changeCoeff(self._sizes + kind, self._share, float(count))
        self._price_lacks(LACK)
        self._pose_demand(demand)
        # With very many rows the dual simplex may take ten thousand steps, the primal one dozens.
        if self._sizes + self._kinds > LARGE:
            self._lp.setOptionValue("simplex_strategy", 4)

    def pose_length(self, demand: Sequence[int], counts: Sequence[int]) -> None:
        """Ask how to cut the demand from ``counts`` sticks using the least length of them."""
        self._close()
        for kind, count in enumerate(counts):
            self._lp.changeColBounds(self._taken + kind, 0.0, float(count))
        self._price_lacks(LACK_OF_LENGTH)
        self._pose_demand(demand)

    def _close(self, *, alone: bool = False) -> None:
        """Let no stick be bought or taken, until a question opens its own columns again."""
        np = self._np
        places = np.arange(self._first, dtype=np.int32)
        uppers = np.full(self._first, self._inf)
        uppers[: self._lacks] = 0.0
        uppers[self._stead :] = 0.0 if alone else self._inf
        self._lp.changeColsBounds(self._first, places, np.zeros(self._first), uppers)

    def _price_lacks(self, price: float) -> None:
        np = self._np
        places = np.arange(self._lacks, self._stead, dtype=np.int32)
        self._lp.changeColsCost(self._sizes, places, np.full(self._sizes, price))

    def _pose_demand(self, demand: Sequence[int]) -> None:
        """Set the demand, and shut out patterns that hold more than is wanted."""
        np = self._np
        self.demand = tuple(demand)
        wanted = np.array(self.demand, dtype=np.float64)
        sizes = np.arange(self._sizes, dtype=np.int32)
        self._lp.changeRowsBounds(self._sizes, sizes, wanted, np.full(self._sizes, self._inf))
        count = len(self.columns)
        if count:
            places = np.arange(self._first, self._first + count, dtype=np.int32)
            uppers = np.where(self._held_by_demand(wanted), self._inf, 0.0)
            self._lp.changeColsBounds(count, places, np.zeros(count), uppers)
        # HiGHS's dual simplex, the better start after bounds have changed.
        self._lp.setOptionValue("simplex_strategy", 1)

    def _held_by_demand(self, wanted: Any) -> Any:
        """Return for each pattern whether every piece of it is in demand."""
        np = self._np
        # A size that is wanted may be cut beyond the demand, one that is not wanted may not.
        if self._repeats:
            wanted = np.where(wanted > 0, self._inf, 0.0)
        most = np.concatenate([wanted, np.full(self._kinds, self._inf)])
        return np.concatenate(
            [
                np.logical_and.reduceat(numbers <= most[rows], begins)
                for begins, rows, numbers in self._entries
            ]
        )

    def solve(self) -> tuple[float, Any, Any]:
        """Return the optimum over the patterns so far: value, columns' values, rows' duals."""
        import highspy

        self._lp.run()
        # Anything but an optimum proves nothing.
        if self._lp.getModelStatus() != highspy.HighsModelStatus.kOptimal:
            return float("inf"), None, None
        answer = self._lp.getSolution()
        # The primal simplex, the better start after columns have been added.
        self._lp.setOptionValue("simplex_strategy", 4)
        value = float(self._lp.getInfo().objective_function_value)
        return value, self._np.asarray(answer.col_value), self._np.asarray(answer.row_dual)

    def central_duals(self) -> Any:
        """Return the rows' duals from amid all that are best, where ``solve`` returns a corner.

        None: there are none.  What ``solve`` starts from is left as it was.
        """
        corner = self._lp.getBasis()
        for option, value in AMID.items():
            self._lp.setOptionValue(option, value)
        self._lp.clearSolver()
        self._lp.run()
        answer = self._lp.getSolution()
        duals = self._np.asarray(answer.row_dual) if answer.dual_valid else None
        for option, value in AT_A_CORNER.items():
            self._lp.setOptionValue(option, value)
        self._lp.clearSolver()
        self._lp.setBasis(corner)
        return duals

    def near(self, most: int) -> list[tuple[int, Pattern]]:
        """Return the patterns with the least reduced costs in the last answer, best first."""
        away = self._np.asarray(self._lp.getSolution().col_dual)[self._first :]
        # Stable, so that of patterns alike in cost every machine keeps the same.
        order = self._np.argsort(away[: len(self.columns)], kind="stable")[:most]
        return [self.columns[place] for place in order]

    def lacking(self, columns: Any) -> float:
        """Return how many pieces go uncut in an answer."""
        return float(columns[self._lacks : self._stead].sum())

    def sticks_used(self) -> tuple[float, ...]:
        """Return how many sticks of each kind the last answer cuts."""
        values = self.pattern_values(self._np.asarray(self._lp.getSolution().col_value))
        used = [0.0] * self._kinds
        for place in values.nonzero()[0]:
            used[self.columns[place][0]] += float(values[place])
        return tuple(used)

    def pattern_values(self, columns: Any) -> Any:
        """Return the patterns' part of the columns' values, in the order of ``columns``."""
        return columns[self._first :]
