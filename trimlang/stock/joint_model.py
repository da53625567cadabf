"""How long walls are best divided while all else is cut: a linear program with free lengths.

A wall that is longer than the sticks is a demand for length, in so many parts that each lie
between two limits.  A pattern may hold a part of any length: the dynamic program over the
fixed pieces tells what is best beside each, so one pass over all lengths prices a wall's
parts.  Parts as short as they may be are pieces like others, so two walls may share a stick.
The patterns found, and those of a plan at hand with their parts drawn out over its offcuts,
go to an integer program.  What it chooses is a proposal only: the pieces that come of it are
planned and checked like any others.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from typing import Final

from trimlang.stock.free_pricing import FreePricing, FreeStick, LongWall
from trimlang.stock.solver import quiet_solver, solve_within
from trimlang.stock.timber import Timber

PRICINGS: Final = 60
"""Pricings at most."""

NODES: Final = 150
"""Branches of the integer program."""

SECONDS: Final = 5.0
"""An outer guard of its work."""

GAIN: Final = 1e-6
"""A pattern is added that betters the program by more than this part of the dearest stick."""


def divided(
    timber: Timber,
    walls: Sequence[LongWall],
    at_hand: Sequence[FreeStick],
    seconds: Callable[[], float],
) -> list[tuple[int, ...]] | None:
    """Return the lengths of each wall's parts, longest first; None: nothing was found.

    ``timber`` has the pieces that are no parts of these walls; ``at_hand`` are the sticks
    of a plan of them all.
    """
    master = _Master(timber, walls)
    master.add(at_hand)
    pricing = FreePricing(timber, walls)
    # Gains are judged against the dearest stick, so that the limit means the same in every
    # currency.
    dearest = max((float(kind.rate) for kind in timber.kinds), default=1.0) or 1.0
    for _ in range(PRICINGS):
        duals = master.duals()
        if duals is None or seconds() <= 0:
            return None
        # Nothing new that pays: the program is at its best, and dual values only repeat themselves.
        if not master.add(pricing.sticks(duals, GAIN * dearest)):
            break
    chosen = master.chosen(min(SECONDS, seconds() / 2))
    if chosen is None:
        return None
    parts: list[list[int]] = [[] for _ in walls]
    for stick in chosen:
        for wall, length in stick.parts:
            parts[wall].append(length)
    return [_shortened(wall, own) for wall, own in zip(walls, parts, strict=True)]


def _shortened(wall: LongWall, parts: Iterable[int]) -> tuple[int, ...]:
    """The parts, as much shorter as their wall leaves over: the longest first, to keep a rest."""
    lengths = sorted(parts, reverse=True)
    # The program asks for no less than the wall, so a wall may come out a little long.
    over = sum(lengths) - wall.total
    for place, length in enumerate(lengths):
        less = max(min(over, length - wall.least), 0) // wall.step * wall.step
        lengths[place] -= less
        over -= less
    return tuple(sorted(lengths, reverse=True))


class _Master:
    """The program: rows for sizes, kinds, each wall's length and its number of parts."""

    def __init__(self, timber: Timber, walls: Sequence[LongWall]) -> None:
        import highspy
        import numpy as np

        self._np, self._inf = np, highspy.kHighsInf
        self._timber, self._walls = timber, walls
        self._sizes, self._kinds = len(timber.sizes), len(timber.kinds)
        self._lengths = self._sizes + self._kinds
        self._numbers = self._lengths + len(walls)
        self._sticks: list[FreeStick] = []
        self._known: set[FreeStick] = set()
        # Each row is “at least”: so many pieces, no stick cut that is not bought, so much wall, and
        # no more parts than the wall has (a minus on both sides turns it round).
        lower = [
            *map(float, timber.demand),
            *[0.0] * self._kinds,
            *(float(wall.total) for wall in walls),
            *(float(-wall.pieces) for wall in walls),
        ]
        # Presolve would drop columns and rows, and with them the dual values that pricing needs.
        lp = self._lp = quiet_solver({"presolve": "off", "solver": "simplex"})
        for bound in lower:
            lp.addRow(bound, self._inf, 0, np.zeros(0, dtype=np.int32), np.zeros(0))
        self._offers = 0
        for number, kind in enumerate(timber.kinds):
            for offer in kind.offers:
                upper = self._inf if offer.limit is None else float(offer.limit // offer.pack)
                self._column(offer.price, upper, {self._sizes + number: float(offer.pack)})
                self._offers += 1
        # what is lacking is far too dear to stay
        dear = 4.0 * (1.0 + max((float(kind.rate) for kind in timber.kinds), default=0.0))
        for size in range(self._sizes):
            self._column(dear, self._inf, {size: 1.0})
        # A lack of one wall stands for its whole length in two parts, the fewest that a splice has.
        for place, wall in enumerate(walls):
            lack = {self._lengths + place: float(wall.total), self._numbers + place: -2.0}
            self._column(dear * wall.pieces, self._inf, lack)
        self._first = self._offers + self._sizes + len(walls)

    def _column(self, price: float, upper: float, entries: dict[int, float]) -> None:
        np = self._np
        self._lp.addCol(
            float(price),
            0.0,
            upper,
            len(entries),
            np.array(list(entries), dtype=np.int32),
            np.array(list(entries.values()), dtype=np.float64),
        )

    def add(self, sticks: Iterable[FreeStick]) -> int:
        """Add the sticks that are not known yet; how many those are."""
        fresh = [stick for stick in dict.fromkeys(sticks) if stick not in self._known]
        for stick in fresh:
            self._known.add(stick)
            self._sticks.append(stick)
            entries = {size: float(n) for size, n in Counter(stick.pattern).items()}
            # A stick that is cut must be bought: it takes one from the row of its kind.
            entries[self._sizes + stick.kind] = -1.0
            for wall, length in stick.parts:
                row = self._lengths + wall
                entries[row] = entries.get(row, 0.0) + length
                row = self._numbers + wall
                entries[row] = entries.get(row, 0.0) - 1.0
            self._column(0.0, self._inf, entries)
        return len(fresh)

    def duals(self) -> list[float] | None:
        """What a piece of each size, a stick of each kind, length and number of parts are worth."""
        import highspy

        self._lp.run()
        if self._lp.getModelStatus() != highspy.HighsModelStatus.kOptimal:
            return None
        # Primal simplex from here on: added columns leave the last answer feasible, so it starts
        # warm.
        self._lp.setOptionValue("simplex_strategy", 4)
        return list(self._lp.getSolution().row_dual)

    def chosen(self, seconds: float) -> list[FreeStick] | None:
        """Whole sticks of least cost among those known, found in a fair time."""
        import highspy

        np, columns = self._np, self._lp.getNumCol()
        solver = quiet_solver({"mip_max_nodes": NODES, "mip_rel_gap": 1e-5})
        solver.passModel(self._lp.getLp())
        whole = np.full(columns, highspy.HighsVarType.kInteger)
        solver.changeColsIntegrality(columns, np.arange(columns, dtype=np.int32), whole)
        # What was allowed to be lacking while the program was being built must now be there.
        lacks = np.arange(self._offers, self._first, dtype=np.int32)
        none = np.zeros(len(lacks))
        solver.changeColsBounds(len(lacks), lacks, none, none)
        solve_within(solver, max(seconds, 0.1))
        answer = solver.getSolution()
        if not answer.value_valid:
            return None
        # The solver gives whole numbers as floats that are off by its tolerance.
        values = [round(value) for value in answer.col_value[self._first :]]
        return [stick for stick, n in zip(self._sticks, values, strict=True) for _ in range(n)]


__all__ = ["FreeStick", "LongWall", "divided"]
