"""How many sticks of each kind: the cheapest mix that nothing known rules out.

What is known of a mix is a list of worths (see ``floor``), each true of every
plan, and mixes already shown to hold too little.  A search over counts finds
the least money that a mix could cost that satisfies them all.  That is a lower bound
for every plan, and the mix is the next to try.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from math import ceil, inf, isfinite
from typing import Any, Final

from trimlang.record import record
from trimlang.stock.mixes.all_mixes import AllMixes, held
from trimlang.stock.mixes.buying import Buying
from trimlang.stock.solver import quiet_solver, solve_within
from trimlang.stock.sticks.floor import Worth, cost_floor, spare_floor
from trimlang.stock.sticks.timber import Timber

WORTHS_KEPT: Final = 8
"""How many worths are kept of those that a program over all that can be bought gives."""
NODES = 20_000
"""Nodes that one search may visit before it gives up."""
NEAR = 1 / 8192
FARTHER = 4
"""The first look goes this part of the cost beyond the bound, each next one so many times."""
EASE = 1e-6
"""The part by which a worth is eased before it is handed to the solver."""


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
        return any(
            sum(w * n for w, n in zip(worth.of_kind, counts, strict=True)) < worth.needed
            for worth in self.worths
        )


class MixSearch:
    """Searches for the cheapest mix.

    Few mixes near the bound are all listed.  Else HiGHS solves a small integer program, with each
    worth eased by far more than its rounding.
    """

    def __init__(self, timber: Timber, buying: Buying) -> None:
        self.timber = timber
        self.buying = buying
        self._most = timber.most
        self._spare = spare_floor(timber)
        self._all = AllMixes(timber, buying)
        self.work = 0

    def cheapest(self, known: Known, below: int, seconds: float) -> tuple[Mix | None, int]:
        """Return the cheapest mix under a cost, and a lower bound on the cost of every such mix.

        None with a bound of ``below``: no mix costs less.  None with a lower
        bound: the search gave up there.
        """
        reach = bound = self._bound(known)
        step = int((bound - self._spare) * NEAR) + 1
        # Mixes a little above the bound first: the list is short there, and the cheapest mix is
        # mostly among them.
        while reach < below:
            reach, step = min(reach + step, below), step * FARTHER
            listed = self._listed(known, reach, free=True)
            if listed is None:
                return self._solved_for_cost(known, below, seconds)
            counts, costs = listed
            if len(costs):
                cost = int(costs.min())
                return Mix(self._fullest(known, counts[costs == cost]), cost), cost
        return None, below

    def too_many(self, known: Known) -> bool:
        """Return whether even the mixes nearest to the bound are too many to list."""
        bound = self._bound(known)
        return self._listed(known, bound + int((bound - self._spare) * NEAR) + 1, free=True) is None

    def _bound(self, known: Known) -> int:
        return max((cost_floor(self.timber, worth) for worth in known.worths), default=0)

    def _solved_for_cost(self, known: Known, below: int, seconds: float) -> tuple[Mix | None, int]:
        program = self._program(known, below - 0.5)
        values, floor = self._solved(program, seconds)
        if values is None:
            # No mix at all, or a search that gave up at its floor.
            return None, below if floor is None else min(floor, below)
        counts = program.counts(values)
        cost = self.buying.cost(counts)
        if cost is None or floor is None:
            return None, min(floor or 0, below)
        return Mix(counts, cost), min(floor, cost)

    def fewest(self, known: Known, cost: int, seconds: float) -> tuple[tuple[int, ...] | None, int]:
        """Return the mix of fewest cut sticks at a cost or less, and a bound on their number."""
        listed = self._listed(known, cost + 1, free=False)
        if listed is not None:
            sticks = listed[0].sum(axis=1)
            if not len(sticks):
                return None, 0
            least = int(sticks.min())
            return self._fullest(known, listed[0][sticks == least]), least
        program = self._program(known, cost + 0.5)
        program.count_sticks()
        values, floor = self._solved(program, seconds)
        if values is None:
            return None, floor or 0
        return program.cut(values), floor or 0

    def roomiest(self, known: Known, cost: int) -> Mix | None:
        """Return the fullest mix at a cost or less; None: there is none, or they are too many."""
        listed = self._listed(known, cost + 1, free=True)
        if listed is None or not len(listed[0]):
            return None
        fullest = self._fullest(known, listed[0])
        return Mix(fullest, int(listed[1][(listed[0] == [fullest]).all(axis=1)][0]))

    def _listed(self, known: Known, below: int, *, free: bool) -> tuple[Any, Any] | None:
        """Return all mixes under a cost that are not ruled out, and their costs; None: too many."""
        self.work += 1
        listed = self._all.below(known.worths, below, free=free)
        if listed is None:
            return None
        counts, costs = listed
        for mix in known.too_small:
            # A mix with no more of any kind than one that is too small is too small as well.
            more = (counts > mix).any(axis=1)
            counts, costs = counts[more], costs[more]
        return counts, costs

    def _fullest(self, known: Known, counts: Any) -> tuple[int, ...]:
        """Return the mix that exceeds what is needed most, judged by its least favourable worth."""
        import numpy as np

        above = np.full(len(counts), inf)
        for worth in known.worths:
            if worth.needed > 0:
                over = held(counts, worth) - worth.needed
                above = np.minimum(above, over / worth.needed)
        return tuple(int(count) for count in counts[int(above.argmax())])

    def _program(self, known: Known, most: float) -> _Program:
        program = _Program(self.timber, self._most)
        program.cost_at_most(most)
        for worth in known.worths:
            program.worth(worth)
        for mix in known.too_small:
            program.more_than(mix)
        return program

    def _solved(self, program: _Program, seconds: float) -> tuple[list[int] | None, int | None]:
        """Return whole column values and a lower bound; (None, None): there is no such mix."""
        import highspy

        # Its presolve has cut off the cheapest mix, and the bound was false.
        options = {"presolve": "off", "mip_rel_gap": 0.0, "mip_abs_gap": 0.5}
        solver = quiet_solver({**options, "mip_max_nodes": NODES})
        solver.passModel(program.model())
        solve_within(solver, max(seconds, 0.1))
        self.work += 1
        status = solver.getModelStatus()
        if status == highspy.HighsModelStatus.kInfeasible:
            return None, None
        bound = solver.getInfo().mip_dual_bound
        # The cost is a whole number of coins, so the bound may be rounded up; the 1e-4 gives back
        # what the solver's rounding could have added.
        floor = ceil(bound - 1e-4) if isfinite(bound) else 0
        answer = solver.getSolution()
        if status != highspy.HighsModelStatus.kOptimal or not answer.value_valid:
            return None, floor
        return [round(x) for x in answer.col_value], floor


class _Program:
    """The program over mixes: the packs bought of each offer, sticks cut and kept whole by kind."""

    def __init__(self, timber: Timber, most: Sequence[int]) -> None:
        self._timber = timber
        self._most = most
        self._counting = False
        self._rows: list[tuple[float, float, dict[int, float]]] = []
        self._offers = [(k, offer) for k, kind in enumerate(timber.kinds) for offer in kind.offers]
        kinds, offers = len(timber.kinds), len(self._offers)
        self._cut, self._whole = offers, offers + kinds
        self._uppers = [
            inf if offer.limit is None else float(offer.limit // offer.pack)
            for _, offer in self._offers
        ]
        self._uppers += [float(count) for count in most]
        spare = timber.problem.spare
        self._uppers += [
            0.0 if kind.on_hand else float(-(-spare // kind.length)) for kind in timber.kinds
        ]
        for kind in range(kinds):
            bought: dict[int, float] = {
                column: float(offer.pack)
                for column, (k, offer) in enumerate(self._offers)
                if k == kind
            }
            # Sticks cut and sticks kept whole are no more than those bought.
            self._rows.append(
                (0.0, inf, {**bought, self._cut + kind: -1.0, self._whole + kind: -1.0})
            )
        if spare:
            lengths = {
                self._whole + k: kind.length / spare
                for k, kind in enumerate(timber.kinds)
                if not kind.on_hand
            }
            self._rows.append((1.0 - EASE, inf, lengths))

    def cost_at_most(self, most: float) -> None:
        """Allow only mixes that cost no more than this."""
        prices = {c: float(offer.price) for c, (_, offer) in enumerate(self._offers)}
        self._rows.append((-inf, most, prices))

    def count_sticks(self) -> None:
        """Minimise the sticks that are cut, not the money."""
        self._counting = True

    def cut(self, values: Sequence[int]) -> tuple[int, ...]:
        """Return the sticks to cut, by kind."""
        return tuple(values[self._cut : self._whole])

    def worth(self, worth: Worth) -> None:
        """Allow only mixes whose sticks reach a worth."""
        if worth.needed > 0:
            each = {self._cut + k: w / worth.needed for k, w in enumerate(worth.of_kind) if w}
            self._rows.append((1.0 - EASE, inf, each))

    def more_than(self, mix: Sequence[int]) -> None:
        """Allow only mixes with more sticks of some kind than this one has."""
        # "This kind or that one" is not linear: one 0/1 column for each kind says where there are
        # more, and one of them at least must be 1.
        flags: dict[int, float] = {}
        for kind, count in enumerate(mix):
            if count < self._most[kind]:
                flag = len(self._uppers)
                self._uppers.append(1.0)
                flags[flag] = 1.0
                self._rows.append((0.0, inf, {self._cut + kind: 1.0, flag: -float(count + 1)}))
        self._rows.append((1.0, inf, flags))

    def model(self) -> Any:
        """Return the program in the solver's form."""
        import highspy
        import numpy as np

        columns = len(self._uppers)
        program: Any = highspy.HighsLp()
        program.num_col_ = columns
        program.num_row_ = len(self._rows)
        costs = np.zeros(columns)
        if self._counting:
            costs[self._cut : self._whole] = 1.0
        else:
            costs[: len(self._offers)] = [float(offer.price) for _, offer in self._offers]
        program.col_cost_ = costs
        program.col_lower_ = np.zeros(columns)
        program.col_upper_ = np.array(self._uppers)
        program.row_lower_ = np.array([row[0] for row in self._rows])
        program.row_upper_ = np.array([row[1] for row in self._rows])
        program.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
        starts = np.cumsum([0, *(len(row[2]) for row in self._rows)])
        program.a_matrix_.start_ = starts.astype(np.int32)
        program.a_matrix_.index_ = np.array(
            [column for row in self._rows for column in row[2]], dtype=np.int32
        )
        program.a_matrix_.value_ = np.array([v for row in self._rows for v in row[2].values()])
        program.integrality_ = [highspy.HighsVarType.kInteger] * columns
        return program

    def counts(self, values: Sequence[int]) -> tuple[int, ...]:
        """Return all the sticks bought that need not stay whole, by kind."""
        bought = [0] * len(self._timber.kinds)
        for column, (kind, offer) in enumerate(self._offers):
            bought[kind] += values[column] * offer.pack
        return tuple(
            max(0, min(most, number - values[self._whole + kind]))
            for kind, (number, most) in enumerate(zip(bought, self._most, strict=True))
        )
