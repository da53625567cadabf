"""Rounding the answers of a linear program step by step.

A dive keeps what an answer uses most, solves what is left again, and goes on; a dead end
is left by keeping less, and then by keeping something else first.  Finding nothing proves nothing.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any, Final, Generic, TypeAlias, TypeVar

from trimlang.record import record
from trimlang.stock.packings.longest_first import fill_counts
from trimlang.stock.patterns.relaxation import Relaxation
from trimlang.stock.solver import HAIR
from trimlang.stock.sticks.timber import Pattern, Timber

State = TypeVar("State")
Choice = TypeVar("Choice")

OTHERS: Final = 3
"""How many other choices are tried at one step before the step before it is undone."""
NEARLY: Final = 0.8
"""What an answer uses this often, or more, is kept at once with what it uses wholly."""

ROUNDS: Final = 2
"""How often more patterns are priced at each step of a dive that chooses its sticks on the way."""

Rack: TypeAlias = tuple[tuple[int, Pattern], ...]


@dataclass(slots=True)
class Step(Generic[State, Choice]):
    """One step of a dive: where it was before it, and what it may keep, most used first.

    From place ``first`` on, ``width`` of these are kept.
    """

    before: State
    ranked: Sequence[Choice]
    width: int
    first: int = 0

    def narrow(self) -> bool:
        """Keep fewer, then another single one; return False when there is no other."""
        # Half of them first: with fewer kept more ways are left to end the dive.
        if self.width > 1:
            self.width //= 2
            return True
        # With one left, another one is the only other way to go on.
        self.first += 1
        return self.first < min(len(self.ranked), OTHERS + 1)


def dive(
    start: State,
    step_from: Callable[[State], Step[State, Choice] | None],
    keep: Callable[[State, Sequence[Choice]], State],
    ended: Callable[[State], bool],
    retreats: int,
    seconds: Callable[[], float],
) -> State | None:
    """Go on from a start until it has ``ended``, with at most so many ``retreats``.

    ``step_from`` returns the next step, or None at a dead end; ``keep`` where a step leads;
    ``seconds`` what is left of the time, an outer guard.
    """
    steps: list[Step[State, Choice]] = []
    now = start
    while not ended(now):
        step = step_from(now)
        if step is not None:
            steps.append(step)
        else:
            retreats -= 1
            while steps and not steps[-1].narrow():
                steps.pop()
            if not steps or retreats < 0 or seconds() <= 0:
                return None
        last = steps[-1]
        now = keep(last.before, last.ranked[last.first : last.first + last.width])
    return now


@record
class _Cut:
    """What is still to be cut, the sticks left for it, and what is cut already."""

    demand: tuple[int, ...]
    left: tuple[int, ...]
    sticks: Rack


class Diver:
    """Dives of one timber.

    Args:
        timber: what is cut.
        holds: whether a pattern can really be laid on its stick.
        seconds: what is left of the time, an outer guard.
    """

    def __init__(
        self,
        timber: Timber,
        holds: Callable[[tuple[int, Pattern]], bool],
        seconds: Callable[[], float],
    ) -> None:
        self._timber = timber
        self._holds = holds
        self._shorter = timber.shorter
        self._seconds = seconds

    def dive(self, laid: Relaxation, counts: Sequence[int], retreats: int) -> Rack | None:
        """Cut everything from ``counts`` sticks of each kind.

        As much length as possible is to be left over; after each step best fit tries to finish.
        """
        rest: Rack = ()

        def ended(cut: _Cut) -> bool:
            nonlocal rest
            filled = fill_counts(self._timber, cut.demand, cut.left)
            rest = tuple(filled or ())
            return filled is not None

        def step_from(cut: _Cut) -> Step[_Cut, tuple[int, Pattern]] | None:
            columns = self._solved(laid, laid.pose_length, cut)
            return None if columns is None else self._step(laid, columns, cut)

        whole = _Cut(self._timber.demand, tuple(counts), ())
        cut = dive(whole, step_from, self._kept, ended, retreats, self._seconds)
        return None if cut is None else (*cut.sticks, *rest)

    def bought(self, laid: Relaxation) -> Rack | None:
        """Cut everything from sticks that are chosen on the way, for little money."""

        def step_from(cut: _Cut) -> Step[_Cut, tuple[int, Pattern]] | None:
            columns = self._solved(laid, laid.pose_cost, cut, ROUNDS)
            return None if columns is None else self._step(laid, columns, cut)

        def ended(cut: _Cut) -> bool:
            return not any(cut.demand)

        whole = _Cut(self._timber.demand, self._timber.most, ())
        cut = dive(whole, step_from, self._kept, ended, 0, self._seconds)
        return None if cut is None else cut.sticks

    def _solved(
        self,
        laid: Relaxation,
        pose: Callable[[Sequence[int], Sequence[int]], None],
        cut: _Cut,
        rounds: int = 0,
    ) -> Any:
        """Return how often each column is used; None where the patterns do not cut everything."""
        pose(cut.demand, cut.left)
        while self._seconds() > 0:
            _, columns, duals = laid.solve()
            if duals is None:
                return None
            # Pieces are still left uncut: price more patterns, and give up when there are none.
            lacking = laid.lacking(columns) > HAIR
            if rounds <= 0 and not lacking:
                return columns
            rounds -= 1
            if not laid.priced(duals)[1]:
                return None if lacking else columns
        return None

    def _step(self, laid: Relaxation, columns: Any, cut: _Cut) -> Step[_Cut, tuple[int, Pattern]]:
        """Return the patterns that an answer uses, and how many of them to keep."""
        values = laid.pattern_values(columns)
        whole: list[tuple[int, Pattern]] = []
        parts: list[tuple[float, tuple[int, Pattern]]] = []
        for place in values.nonzero()[0]:
            value, stick = float(values[place]), laid.columns[place]
            if value > HAIR and self._holds(stick):
                # Whole numbers of a pattern are safe to keep: with them removed, the same answer
                # still solves what is left.
                whole.extend([stick] * int(value + HAIR))
                parts.append((value - int(value + HAIR), stick))
        # What was kept as whole leaves a hair of rounding, and that is no pattern.
        parts = [part for part in parts if part[0] > HAIR]
        # At equal parts in the order of the patterns, so that every machine dives alike.
        parts.sort(key=lambda part: (-part[0], part[1]))
        width = max(len(whole) + sum(value >= NEARLY for value, _ in parts), 1)
        return Step(cut, (*whole, *(stick for _, stick in parts)), width)

    def _kept(self, cut: _Cut, chosen: Sequence[tuple[int, Pattern]]) -> _Cut:
        """Cut what is still wanted of some patterns, while sticks for them are left."""
        demand, left, sticks = list(cut.demand), list(cut.left), list(cut.sticks)
        for kind, pattern in chosen:
            wanted: Counter[int] = Counter()
            for longest in pattern:
                # As in the program, a longer piece may stand for the next shorter that is wanted.
                size: int | None = longest
                while size is not None and wanted[size] >= demand[size]:
                    size = self._shorter[size]
                if size is not None:
                    wanted[size] += 1
            # Other patterns of this step may have used the last stick, or cut the last of these
            # pieces.
            if left[kind] and wanted:
                left[kind] -= 1
                for size, number in wanted.items():
                    demand[size] -= number
                sticks.append((kind, tuple(sorted(wanted.elements()))))
        return _Cut(tuple(demand), tuple(left), tuple(sticks))
