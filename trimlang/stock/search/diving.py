"""Rounding the linear program of a rack step by step.

A dive solves the program for what is still to be cut so that as much length as possible is left
over, keeps the patterns that the answer uses most, and goes on with the rest;
after each step longest-first best-fit tries to finish.  A dead end is left by
taking another pattern first.  Finding nothing proves nothing.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

from trimlang.stock.packings.longest_first import fill_counts
from trimlang.stock.patterns.relaxation import Relaxation
from trimlang.stock.solver import HAIR
from trimlang.stock.sticks.timber import Pattern, Timber

OTHERS = 3
"""How many other patterns are tried at one step before the step before it is undone."""
NEARLY = 0.8
"""A pattern used this often, or more, is kept at once with those used wholly."""

Rack = tuple[tuple[int, Pattern], ...]
Ending = Callable[[Sequence[int], Sequence[int]], tuple[Rack | None, bool]]
"""Finishes what is left of a rack, if it can, and says whether that is known to be impossible."""


@dataclass(slots=True)
class Step:
    """One step of a dive: what was to be cut before it, and the patterns to keep.

    ``ranked`` are the patterns that the answer uses, most used first; from place ``first`` on,
    ``width`` of them are kept.  ``done`` is how many sticks were cut before.
    """

    demand: tuple[int, ...]
    left: tuple[int, ...]
    done: int
    ranked: Rack
    width: int
    first: int = 0

    def chosen(self) -> Rack:
        """Return the patterns that this step keeps."""
        return self.ranked[self.first : self.first + self.width]

    def narrow(self) -> bool:
        """Keep fewer patterns, then another single one; return False when there is no other."""
        # Half of them first: fewer patterns kept leave more ways to end the dive.
        if self.width > 1:
            self.width //= 2
            return True
        # With one pattern left, another one is the only other way to go on.
        self.first += 1
        return self.first < min(len(self.ranked), OTHERS + 1)


def retreat(steps: list[Step]) -> Step | None:
    """Narrow the last step that can be narrowed, and undo those after it; None: none can be."""
    while steps:
        if steps[-1].narrow():
            return steps[-1]
        steps.pop()
    return None


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
        self._seconds = seconds

    def dive(
        self,
        laid: Relaxation,
        counts: Sequence[int],
        retreats: int,
        skip: int = 0,
        ending: Ending | None = None,
    ) -> Rack | None:
        """Cut everything from ``counts`` sticks of each kind, with at most so many ``retreats``.

        With ``skip``, the first step passes over that many of the most used patterns and keeps one.
        ``ending`` may finish what is left, or say that it is a dead end.
        """
        cut: list[tuple[int, Pattern]] = []
        demand, left = list(self._timber.demand), list(counts)
        steps: list[Step] = []
        dead = False
        while any(demand):
            columns = None if dead else self._solved(laid, demand, left)
            # A dive that is out of time has proven nothing, so it just ends.
            if self._seconds() <= 0:
                return None
            if columns is None:
                step = retreat(steps)
                retreats -= 1
                if step is None or retreats < 0:
                    return None
            else:
                step = self._step(laid, columns, demand, left, len(cut))
                # Another first pattern leads the whole dive elsewhere, which is what a second dive
                # is for.
                if skip and not steps:
                    step.first, step.width = min(skip, len(step.ranked) - 1), 1
                steps.append(step)
            del cut[step.done :]
            demand, left = list(step.demand), list(step.left)
            for stick in step.chosen():
                self._take(stick, demand, left, cut)
            rest: Sequence[tuple[int, Pattern]] | None = fill_counts(self._timber, demand, left)
            dead = False
            if rest is None and ending is not None:
                rest, dead = ending(demand, left)
            if rest is not None:
                return (*cut, *rest)
        return tuple(cut)

    def _solved(self, laid: Relaxation, demand: Sequence[int], left: Sequence[int]) -> Any:
        """Return how often each column is used; None where the patterns do not cut everything."""
        laid.pose_length(demand, left)
        while True:
            _, columns, duals = laid.solve()
            if duals is None or self._seconds() <= 0:
                return None
            # Pieces are still left uncut: price more patterns, and give up when there are none.
            if laid.lacking(columns) <= HAIR:
                return columns
            if not laid.priced(duals)[1]:
                return None

    def _step(
        self,
        laid: Relaxation,
        columns: Any,
        demand: Sequence[int],
        left: Sequence[int],
        done: int,
    ) -> Step:
        """Return the patterns that an answer uses, the most used first, and how many to keep."""
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
        ranked = (*whole, *(stick for _, stick in parts))
        return Step(demand=tuple(demand), left=tuple(left), done=done, ranked=ranked, width=width)

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
        # Other patterns of this step may have used the last stick, or cut the last of these pieces.
        if not left[kind] or not wanted:
            return
        left[kind] -= 1
        for size, number in wanted.items():
            demand[size] -= number
        taken.append((kind, tuple(sorted(wanted.elements()))))
