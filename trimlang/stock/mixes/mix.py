"""How many sticks of each kind: the cheapest mix that nothing known rules out.

What is known of a mix is a list of worths (see ``floor``), each true of every
plan, and mixes already shown to hold too little.  A small integer program finds
the least money that a mix could cost that satisfies them all.  That is a lower bound
for every plan, and the mix is the next to try.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from enum import Enum, auto
from math import ceil, inf
from typing import Final

from trimlang.record import record
from trimlang.stock.mixes.buying import Buying
from trimlang.stock.solver import SEARCH, add_column, add_row, quiet_solver, solve_within
from trimlang.stock.sticks.floor import Worth
from trimlang.stock.sticks.timber import Timber

WORTHS_KEPT: Final = 8
"""How many worths are kept of those that a program over all that can be bought gives."""
NODES = 20_000
"""Nodes that one search may visit before it gives up."""
EASE = 1e-6
"""The part by which a worth is eased before it is handed to the solver."""
FULL = 1e4
"""The price of all the room that is needed, where the fullest mix is sought."""


class Goal(Enum):
    """What is asked of a mix."""

    COST = auto()
    """The least money."""
    STICKS = auto()
    """The fewest sticks that are cut."""
    ROOM = auto()
    """The most that it exceeds what is needed by, judged by its least favourable worth."""


@record
class Mix:
    """How many sticks of each kind are cut, and their price with the spare."""

    counts: tuple[int, ...]
    cost: int


@dataclass(slots=True)
class Known:
    """What rules mixes out: worths that they must reach, and mixes that hold too little."""

    worths: list[Worth]
    too_small: list[tuple[int, ...]] = field(default_factory=list)

    def falls_short(self, counts: Sequence[int]) -> bool:
        """Return whether a worth rules the mix out; in whole numbers, so it is certain."""
        return any(worth.slack(counts) < 0 for worth in self.worths)


class MixSearch:
    """Searches among the mixes of one timber; each worth is eased by more than any rounding."""

    def __init__(self, timber: Timber, buying: Buying) -> None:
        self.timber = timber
        self.buying = buying
        self.work = 0

    def cheapest(self, known: Known, below: int, seconds: float) -> tuple[Mix | None, int]:
        """Return the cheapest mix under a cost, and a lower bound on the cost of every such mix.

        None with a bound of ``below``: no mix costs less.  None with a lower
        bound: the search gave up there.
        """
        mix, floor = self._best(Goal.COST, known, below - 1, seconds)
        return mix, int(min(floor, below if mix is None else mix.cost))

    def fewest(self, known: Known, cost: int, seconds: float) -> tuple[tuple[int, ...] | None, int]:
        """Return the mix of fewest cut sticks at a cost or less, and a bound on their number."""
        self.work += 1
        program = _Program(self.timber, known, cost, Goal.STICKS)
        values, floor = program.solved(seconds)
        return None if values is None else program.cut(values), 0 if floor == inf else int(floor)

    def roomiest(self, known: Known, cost: int, seconds: float) -> Mix | None:
        """Return the fullest mix at a cost or less; None: there is none, or it was not found."""
        return self._best(Goal.ROOM, known, cost, seconds)[0]

    def _best(
        self, goal: Goal, known: Known, cost: int, seconds: float
    ) -> tuple[Mix | None, float]:
        """Return the best mix at a cost or less, and a bound on what is asked of it."""
        self.work += 1
        program = _Program(self.timber, known, cost, goal)
        values, floor = program.solved(seconds)
        if values is None:
            return None, floor
        counts = program.counts(values)
        price = self.buying.cost(counts)
        return None if price is None or price > cost else Mix(counts, price), floor


class _Program:
    """The program over mixes: the packs bought of each offer, sticks cut and kept whole by kind."""

    def __init__(self, timber: Timber, known: Known, cost: int, goal: Goal) -> None:
        # With its presolve, which has cut off the cheapest mix, the bound was false.
        ends = {"mip_rel_gap": 0.0, "mip_abs_gap": 0.5, "mip_max_nodes": NODES}
        self._solver = quiet_solver({**SEARCH, **ends})
        self._most = timber.most
        self._offers = [(k, offer) for k, kind in enumerate(timber.kinds) for offer in kind.offers]
        kinds = range(len(timber.kinds))
        spare = timber.problem.spare
        paid, counted = goal is Goal.COST, goal is Goal.STICKS
        for _, offer in self._offers:
            most = inf if offer.limit is None else offer.limit // offer.pack
            self._whole_number(float(offer.price) if paid else 0.0, most)
        self._cut = len(self._offers)
        for most in self._most:
            self._whole_number(float(counted), most)
        self._whole = self._cut + len(kinds)
        for sort in timber.kinds:
            self._whole_number(0.0, 0 if sort.on_hand else -(-spare // sort.length))
        over = self._whole + len(kinds)
        add_column(self._solver, -FULL, inf if goal is Goal.ROOM else 0.0, {})
        self._row(-cost - 0.5, {c: -float(one.price) for c, (_, one) in enumerate(self._offers)})
        for kind in kinds:
            bought = {c: float(o.pack) for c, (k, o) in enumerate(self._offers) if k == kind}
            # Sticks cut and sticks kept whole are no more than those bought.
            self._row(0.0, {**bought, self._cut + kind: -1.0, self._whole + kind: -1.0})
        if spare:
            # Whole numbers, so half of one is ease enough.
            lengths = {self._whole + k: float(one.length) for k, one in enumerate(timber.kinds)}
            self._row(spare - 0.5, lengths)
        for worth in known.worths:
            if worth.needed > 0:
                each = {self._cut + k: w / worth.needed for k, w in enumerate(worth.of_kind) if w}
                self._row(1.0 - EASE, {**each, over: -1.0})
        for mix in known.too_small:
            self._more_than(mix)

    def _row(self, lower: float, factors: dict[int, float]) -> None:
        add_row(self._solver, lower, factors)

    def _whole_number(self, price: float, most: float) -> int:
        """Add a column of whole numbers up to ``most`` and return its place."""
        import highspy

        add_column(self._solver, price, most, {})
        column: int = self._solver.getNumCol() - 1
        self._solver.changeColIntegrality(column, highspy.HighsVarType.kInteger)
        return column

    def _more_than(self, mix: Sequence[int]) -> None:
        """Allow only mixes with more sticks of some kind than this one has."""
        # "This kind or that one" is not linear: one 0/1 column for each kind says where there are
        # more, and one of them at least must be 1.
        flags: dict[int, float] = {}
        for kind, count in enumerate(mix):
            if count < self._most[kind]:
                flag = self._whole_number(0.0, 1)
                flags[flag] = 1.0
                self._row(0.0, {self._cut + kind: 1.0, flag: -float(count + 1)})
        self._row(1.0, flags)

    def solved(self, seconds: float) -> tuple[list[int] | None, float]:
        """Return whole column values and a lower bound: the greatest where there is no such mix."""
        import highspy

        solve_within(self._solver, max(seconds, 0.1))
        status = self._solver.getModelStatus()
        if status == highspy.HighsModelStatus.kInfeasible:
            return None, inf
        bound = self._solver.getInfo().mip_dual_bound
        # A whole number of coins or sticks, so the bound may be rounded up; the 1e-4 gives back
        # what the solver's rounding could have added.
        floor = max(ceil(bound - 1e-4), 0) if abs(bound) < inf else 0
        answer = self._solver.getSolution()
        if status != highspy.HighsModelStatus.kOptimal or not answer.value_valid:
            return None, floor
        return [round(x) for x in answer.col_value], floor

    def cut(self, values: Sequence[int]) -> tuple[int, ...]:
        """Return the sticks to cut, by kind."""
        return tuple(values[self._cut : self._whole])

    def counts(self, values: Sequence[int]) -> tuple[int, ...]:
        """Return all the sticks bought that need not stay whole, by kind."""
        bought = [0] * len(self._most)
        for column, (kind, offer) in enumerate(self._offers):
            bought[kind] += values[column] * offer.pack
        return tuple(
            max(0, min(most, number - values[self._whole + kind]))
            for kind, (number, most) in enumerate(zip(bought, self._most, strict=True))
        )
