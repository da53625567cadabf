"""Whether a given rack of sticks holds every piece: rounding the linear program.

``RackCut.cut`` dives: it solves the program for what is still to be cut, keeps
the patterns that the answer uses most, and goes on with the rest; before each
step longest-first best-fit tries to finish.  A dead end is left by taking
another pattern first.  Finding nothing proves nothing, unless the program
itself said that no rack so small can do.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from trimlang.stock.floor import Worth
from trimlang.stock.longest_first import fill_counts
from trimlang.stock.mitres import order_on_stick
from trimlang.stock.relaxation import Relaxation
from trimlang.stock.timber import Pattern, Timber

#: Rounding errors of the solver below this are none.
HAIR = 1e-7


@dataclass(frozen=True, slots=True)
class Answer:
    """Sticks that hold everything, or a worth that shows that none do, or neither."""

    sticks: tuple[tuple[int, Pattern], ...] | None = None
    worth: Worth | None = None


class RackCut:
    """Cuts racks of one timber, sharing the patterns priced so far."""

    def __init__(self, timber: Timber, relaxation: Relaxation, expired: Callable[[], bool]) -> None:
        self._timber = timber
        self._relaxation = relaxation
        self._expired = expired
        self._fits: dict[tuple[int, Pattern], bool] = {}

    def cut(self, counts: Sequence[int], dives: int) -> Answer:
        """Try to cut everything from ``counts`` sticks of each kind, in so many dives."""
        timber = self._timber
        quick = fill_counts(timber, timber.demand, counts)
        if quick is not None:
            return Answer(sticks=tuple(quick))
        for skip in range(dives):
            answer = self._dive(counts, skip)
            if answer.sticks is not None or answer.worth is not None or self._expired():
                return answer
        return Answer()

    def share(
        self, demand: Sequence[int], counts: Sequence[int], enough: float
    ) -> tuple[float, object, Worth | None]:
        """Solve for the share of the rack that is needed, pricing until it is settled.

        Returns the share over the patterns found, the columns' values, and a
        worth that the rack falls short of where there is one.  Pricing stops
        when the share is no more than ``enough``.
        """
        relaxation = self._relaxation
        relaxation.pose_rack(demand, counts)
        while True:
            share, columns, duals = relaxation.solve()
            if duals is None:
                return share, None, None
            if share <= enough or self._expired():
                return share, columns, None
            worth, fresh = relaxation.priced(duals)
            if sum(w * n for w, n in zip(worth.of_kind, counts, strict=True)) < worth.needed:
                return share, columns, worth
            if not fresh:
                return share, columns, None

    def _dive(self, counts: Sequence[int], skip: int) -> Answer:
        timber = self._timber
        demand = list(timber.demand)
        left = list(counts)
        cut: list[tuple[int, Pattern]] = []
        first = True
        while any(demand):
            share, columns, worth = self.share(demand, left, 1 + HAIR)
            if worth is not None and first:
                return Answer(worth=worth)
            if share > 1 + HAIR or columns is None or self._expired():
                return Answer()
            taken = self._taken(columns, demand, left, skip if first else 0, skip)
            if not taken:
                return Answer()
            cut.extend(taken)
            rest = fill_counts(timber, demand, left)
            if rest is not None:
                return Answer(sticks=(*cut, *rest))
            first = False
        return Answer(sticks=tuple(cut))

    def _taken(
        self, columns: object, demand: list[int], left: list[int], skip: int, dive: int
    ) -> list[tuple[int, Pattern]]:
        """Sticks kept from an answer, taken off ``demand`` and ``left``."""
        values = self._relaxation.pattern_values(columns)
        used = [
            (float(values[place]), stick)
            for place, stick in enumerate(self._relaxation.columns)
            if values[place] > HAIR and self._holds(stick)
        ]
        # Fuller patterns first among equals: they leave the small pieces for the end.
        used.sort(key=lambda entry: (-entry[0], entry[1]))
        taken: list[tuple[int, Pattern]] = []
        for value, stick in used:
            for _ in range(int(value + HAIR)):
                self._take(stick, demand, left, taken)
        if taken and skip == 0:
            return taken
        fractional = [(v - int(v + HAIR), stick) for v, stick in used]
        fractional.sort(key=lambda entry: (-entry[0], entry[1]))
        if skip:
            fractional = fractional[skip:] + fractional[:skip]
        bar = 0.9 - 0.1 * min(dive, 3)
        for value, stick in fractional:
            if taken and value < bar:
                break
            self._take(stick, demand, left, taken)
        return taken

    def _take(
        self,
        stick: tuple[int, Pattern],
        demand: list[int],
        left: list[int],
        taken: list[tuple[int, Pattern]],
    ) -> None:
        """Cut what is still wanted of a pattern, if a stick for it is left."""
        kind, pattern = stick
        wanted: Counter[int] = Counter()
        for size in pattern:
            if wanted[size] < demand[size]:
                wanted[size] += 1
        if not left[kind] or not wanted:
            return
        left[kind] -= 1
        for size, number in wanted.items():
            demand[size] -= number
        taken.append((kind, tuple(sorted(wanted.elements()))))

    def _holds(self, stick: tuple[int, Pattern]) -> bool:
        """Whether the pattern can really be laid on its stick, mitres shared as needed."""
        if not self._timber.leaning:
            return True
        if stick not in self._fits:
            kind, pattern = stick
            sizes = [self._timber.sizes[size] for size in pattern]
            order = order_on_stick(sizes, self._timber.kinds[kind].room, self._timber.problem.short)
            self._fits[stick] = order is not None
        return self._fits[stick]
