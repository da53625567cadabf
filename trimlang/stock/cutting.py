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

from trimlang.record import record
from trimlang.stock.choosing import choose
from trimlang.stock.diving import Step, retreat
from trimlang.stock.floor import Worth
from trimlang.stock.longest_first import fill_counts
from trimlang.stock.mitres import order_on_stick, settles
from trimlang.stock.nesting import can_nest
from trimlang.stock.relaxation import Relaxation, Way
from trimlang.stock.sifting import sifted, slack_of
from trimlang.stock.timber import Pattern, Timber

#: Steps undone in the first dive, before the patterns left are listed.
FEW = 8
#: Patterns listed at most.
PATTERNS = 20_000
SHORT_LIST = 4_000
#: Branches of the search among listed patterns.
BRANCHES = 20_000
#: How often a dive is ended by such a search, and how large that is.
ENDINGS = 8
ENDING = 5_000
ENDING_BRANCHES = 200
#: Quick dives before that.
EASY_STARTS = 2
#: Dives that start with another pattern each.
STARTS = 8
#: Rounding errors of the solver below this are none.
HAIR = 1e-7


#: A pattern used this often, or more, is kept at once with those used wholly.
NEARLY = 0.8


@record
class Answer:
    """Sticks that hold everything, or a worth that shows that none do, or neither."""

    sticks: tuple[tuple[int, Pattern], ...] | None = None
    worth: Worth | None = None
    impossible: bool = False


class RackCut:
    """Cuts racks of one timber, sharing the patterns priced so far."""

    def __init__(
        self, timber: Timber, relaxation: Relaxation, seconds: Callable[[], float]
    ) -> None:
        self._timber = timber
        self._relaxation = relaxation
        self._seconds = seconds
        self._fits: dict[tuple[int, Pattern], bool] = {}
        self._tight: Worth | None = None
        # Dives use patterns that can really be laid; the bound those that might.
        self._laid = (
            Relaxation(timber, relaxation.columns[:0], self._mended)
            if timber.leaning
            else relaxation
        )
        self._nested: Relaxation | None = None
        self._chain: Relaxation | None = None

    def cut(self, counts: Sequence[int], retreats: int) -> Answer:
        """Try to cut everything from ``counts`` sticks of each kind, going back so often."""
        timber = self._timber
        quick = fill_counts(timber, timber.demand, counts)
        if quick is not None:
            return Answer(sticks=tuple(quick))
        if timber.leaning:
            _, _, worth = self.share(self._relaxation, timber.demand, counts, 1 + HAIR)
            if worth is not None:
                return Answer(worth=worth)
        self._tight = None
        laid = self._laid
        for skip in range(EASY_STARTS):
            answer = self._dive(laid, counts, FEW, skip)
            if answer.sticks is not None or answer.worth is not None or self._seconds() <= 0:
                return answer
        if timber.leaning:
            worth = self._nested_worth(counts)
            if worth is not None:
                return Answer(worth=worth)
            laid = self._chained()
        patterns = self._allowed(counts)
        if self._tight is not None and slack_of(self._tight, counts) < 0:
            return Answer(worth=self._tight)
        # A short list is searched at once, a long one only when diving fails too.
        if patterns is None or len(patterns) > SHORT_LIST:
            for skip in range(STARTS):
                answer = self._dive(laid, counts, retreats, skip)
                if answer.sticks is not None or self._seconds() <= 0:
                    return answer
            if patterns is None:
                return answer
        return self._settle(counts, patterns)

    def _nested_worth(self, counts: Sequence[int]) -> Worth | None:
        """A worth that the rack falls short of when mitres are shared only as they can be."""
        if self._nested is None:
            if not can_nest(self._timber.sizes, [kind.room for kind in self._timber.kinds]):
                return None
            self._nested = Relaxation(self._timber, self._held_columns(), way=Way.NESTED)
        return self.share(self._nested, self._timber.demand, counts, 1 + HAIR)[2]

    def _chained(self) -> Relaxation:
        if self._chain is None:
            self._chain = Relaxation(
                self._timber, self._held_columns(), self._mended, way=Way.CHAINED
            )
        return self._chain

    def _held_columns(self) -> list[tuple[int, Pattern]]:
        return [stick for stick in self._laid.columns if self._holds(stick)]

    def _allowed(self, counts: Sequence[int]) -> list[tuple[int, Pattern]] | None:
        """The patterns that the rack still allows, or None for too many."""
        _, _, self._tight = self.share(
            self._relaxation, self._timber.demand, counts, 0.0, tight=True
        )
        if self._tight is None or slack_of(self._tight, counts) < 0:
            return None
        return sifted(self._timber, self._tight, self._timber.demand, counts, PATTERNS)

    def _settle(self, counts: Sequence[int], patterns: Sequence[tuple[int, Pattern]]) -> Answer:
        """Choose among all the patterns that the rack allows."""
        held = [stick for stick in patterns if self._holds(stick)]
        choice = choose(
            self._timber, held, self._timber.demand, counts, nodes=BRANCHES, seconds=self._seconds()
        )
        sure = all(self._settles(stick) for stick in patterns if not self._holds(stick))
        impossible = choice.settled and choice.sticks is None and sure
        return Answer(sticks=choice.sticks, impossible=impossible)

    def share(
        self,
        relaxation: Relaxation,
        demand: Sequence[int],
        counts: Sequence[int],
        enough: float,
        *,
        tight: bool = False,
    ) -> tuple[float, object, Worth | None]:
        """Solve for the share of the rack that is needed, pricing until it is settled.

        Returns the share over the patterns found, the columns' values, and a
        worth that the rack falls short of where there is one (``tight``: the
        worth closest to the rack's, in any case).  Pricing stops when the share
        is no more than ``enough``.
        """
        relaxation.pose_rack(demand, counts)
        closest: Worth | None = None
        while True:
            share, columns, duals = relaxation.solve()
            if duals is None or share <= enough or self._seconds() <= 0:
                return share, columns, closest if tight else None
            worth, fresh = relaxation.priced(duals)
            if worth is not None:
                slack = slack_of(worth, counts)
                if slack < 0:
                    return share, columns, worth
                if closest is None or (
                    slack * closest.needed < slack_of(closest, counts) * worth.needed
                ):
                    closest = worth
            if not fresh:
                return share, columns, closest if tight else None

    def _dive(
        self, laid: Relaxation, counts: Sequence[int], retreats: int, skip: int = 0
    ) -> Answer:
        """Round the program's answer step by step, going back at most so often.

        The first step passes over the ``skip`` most used patterns, and keeps one.
        """
        cut: list[tuple[int, Pattern]] = []
        demand, left = list(self._timber.demand), list(counts)
        steps: list[Step] = []
        endings = ENDINGS
        while any(demand):
            share, columns, worth = self.share(laid, demand, left, 1 + HAIR)
            if worth is not None and not steps:
                return Answer(worth=worth)
            if self._seconds() <= 0:
                return Answer()
            step: Step | None
            if share > 1 + HAIR or columns is None:
                step = retreat(steps)
                retreats -= 1
                if step is None or retreats < 0:
                    return Answer()
            else:
                step = self._step(laid, columns, demand, left, len(cut))
                if skip and not steps:
                    step.first, step.width = min(skip, len(step.ranked) - 1), 1
                steps.append(step)
            del cut[step.done :]
            demand, left = list(step.demand), list(step.left)
            for stick in step.chosen():
                self._take(stick, demand, left, cut)
            rest = fill_counts(self._timber, demand, left)
            if rest is not None:
                return Answer(sticks=(*cut, *rest))
            if self._tight is not None and endings > 0:
                ending, tried = self._ending(self._tight, demand, left)
                if ending is not None:
                    return Answer(sticks=(*cut, *ending))
                endings -= tried
        return Answer(sticks=tuple(cut))

    def _ending(
        self, worth: Worth, demand: Sequence[int], left: Sequence[int]
    ) -> tuple[Sequence[tuple[int, Pattern]] | None, bool]:
        """Finish a dive by choosing among the patterns that the rest allows, if few."""
        patterns = sifted(self._timber, worth, demand, left, ENDING)
        if patterns is None:
            return None, False
        held = [stick for stick in patterns if self._holds(stick)]
        seconds = self._seconds()
        choice = choose(self._timber, held, demand, left, nodes=ENDING_BRANCHES, seconds=seconds)
        return choice.sticks, True

    def _step(
        self,
        laid: Relaxation,
        columns: object,
        demand: Sequence[int],
        left: Sequence[int],
        done: int,
    ) -> Step:
        """The patterns that an answer uses, the most used first, and how many to keep."""
        values = laid.pattern_values(columns)
        whole: list[tuple[int, Pattern]] = []
        parts: list[tuple[float, tuple[int, Pattern]]] = []
        for place in values.nonzero()[0]:
            value, stick = float(values[place]), laid.columns[place]
            if value > HAIR and self._holds(stick):
                whole.extend([stick] * int(value + HAIR))
                parts.append((value - int(value + HAIR), stick))
        parts = [part for part in parts if part[0] > HAIR]
        parts.sort(key=lambda part: (-part[0], part[1]))
        width = max(len(whole) + sum(value >= NEARLY for value, _ in parts), 1)
        ranked = (*whole, *(stick for _, stick in parts))
        return Step(tuple(demand), tuple(left), done, ranked, width)

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

    def _mended(self, kind: int, pattern: Pattern) -> Pattern:
        """The pattern without the last, smallest pieces that keep it from being laid."""
        while pattern and not self._holds((kind, pattern)):
            pattern = pattern[:-1]
        return pattern

    def _settles(self, stick: tuple[int, Pattern]) -> bool:
        kind, pattern = stick
        sizes = [self._timber.sizes[size] for size in pattern]
        return settles(sizes, self._timber.kinds[kind].room)

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
