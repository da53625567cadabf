"""Whether a given rack of sticks holds everything.

``RackCut.cut`` first asks the linear program: is there a worth that the rack falls
short of?  Then a dive rounds the program's answer step by step (``diving.py``).  Where that
finds no way, the patterns that a worth allows are searched, all of them if they
are not too many: this settles most racks on which hardly anything may be wasted.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from trimlang.record import record
from trimlang.stock.packings.longest_first import fill_counts
from trimlang.stock.patterns.relaxation import Relaxation, Way
from trimlang.stock.search.choosing import choose
from trimlang.stock.search.diving import Diver, Ending, Rack
from trimlang.stock.search.rack_worths import RackWorths
from trimlang.stock.search.sifting import sifted, slack_of
from trimlang.stock.sticks.floor import Worth
from trimlang.stock.sticks.stick_order import fits, settles
from trimlang.stock.sticks.timber import Pattern, Timber

RETREATS = 40
"""The most steps undone in a dive when a rack is searched thoroughly."""
FEWER = 2
FEW = 8
"""The same in the first dive, and once no list can settle the rack."""
PATTERNS = 60_000
LONGEST = 150_000
"""The most patterns listed; and of a rack that is searched thoroughly."""
SHORT_LIST = 5_000
LONG_LIST = 15_000
LITTLE = 2e-5
LEAST = 1e-7
"""Lists searched at once: up to SHORT_LIST; up to LONG_LIST where no more than LITTLE of what is
needed may be wasted. Longer ones come after other ways, where no more than LEAST may be.
"""
BRANCHES = 20_000
FEW_BRANCHES = 200
"""Branches of the search among listed patterns."""
ENDINGS = 8
ENDING = 5_000
ENDING_BRANCHES = 200
"""How often a dive may be ended by such a search, and how large that is."""
LAST = 60
"""The most pieces left when a dive may be ended in this way."""
STARTS = 8
"""How many dives are made, each with another first pattern."""
FEW_STARTS = 1
"""The same where a list is searched after them in any case."""
SEEDS = 3
"""How many patterns, for each size, a new program takes over from the one before it."""


Stick = tuple[int, Pattern]


@record
class Answer:
    """Sticks that hold everything, or a worth that shows that none do, or neither.

    ``impossible``: a worth that leaves few patterns, and no choice among them will do.
    """

    sticks: Rack | None = None
    worth: Worth | None = None
    impossible: Worth | None = None

    @property
    def settled(self) -> bool:
        """Whether a choice among patterns was made, or shown to be impossible."""
        return self.sticks is not None or self.impossible is not None


class RackCut:
    """Cuts racks of one timber; the patterns priced for one rack are used for the next.

    ``relaxation`` is the one that the bound comes from.
    """

    def __init__(
        self,
        timber: Timber,
        relaxation: Relaxation,
        seconds: Callable[[], float],
    ) -> None:
        self._timber = timber
        self._worths = RackWorths(timber, relaxation, seconds)
        self._relaxation = relaxation
        self._seconds = seconds
        self._fits: dict[Stick, bool] = {}
        self._left: dict[tuple[int, ...], tuple[Worth | None, list[Stick] | None]] = {}
        self._diver = Diver(timber, self._holds, seconds)
        # Dives use patterns that can really be laid; the bound those that might.
        self._laid = None if timber.leaning else relaxation

    def worths_around(self, usual: Sequence[float]) -> list[Worth]:
        """Return worths that hold close to a rack in fractions of sticks."""
        return self._worths.around(usual)

    def cut(self, counts: Sequence[int]) -> Answer:
        """Try to cut everything from ``counts`` sticks of each kind."""
        timber = self._timber
        # From the cheapest test to the dearest; each ends the search as soon as it settles the
        # rack.
        quick = fill_counts(timber, timber.demand, counts)
        if quick is not None:
            return Answer(sticks=tuple(quick))
        worth = self._worths.short(counts)
        if worth is not None:
            return Answer(worth=worth)
        laid = self._laid = self._laid or self.seeded(self._relaxation, Way.CHAINED)
        sticks = self._diver.dive(laid, counts, FEWER)
        if sticks is not None or self._seconds() <= 0:
            return Answer(sticks=sticks)
        return self._among_allowed(laid, counts)

    def _among_allowed(self, laid: Relaxation, counts: Sequence[int]) -> Answer:
        """Search the patterns that the rack allows: at once if few, late, or not at all."""
        tight, patterns = self._allowed(counts)
        if tight is None:
            return Answer(sticks=self._diver.dive(laid, counts, FEW))
        slack = slack_of(tight, counts)
        # The blended worth shows what no single one did: the rack is worth less than the pieces.
        if slack < 0:
            return Answer(worth=tight)
        little = self._is_little(tight, counts)
        soon = patterns is not None and len(patterns) <= (LONG_LIST if little else SHORT_LIST)
        if patterns is not None and soon:
            answer = self._chosen(patterns, self._timber.demand, counts, BRANCHES, tight)
            if answer.settled:
                return answer
        if patterns is not None and not soon and slack <= LEAST * tight.needed:
            answer = self._chosen(patterns, self._timber.demand, counts, FEW_BRANCHES, tight)
            if answer.settled:
                return answer
        return Answer(sticks=self._diver.dive(laid, counts, FEW, 0, self._endings(tight)))

    def search(self, counts: Sequence[int]) -> Answer:
        """Try longer than ``cut``, where that had no answer."""
        timber = self._timber
        laid = self._laid = self._laid or self.seeded(self._relaxation, Way.CHAINED)
        tight, patterns = self._allowed(counts)
        if tight is not None and self._is_little(tight, counts):
            if patterns is None:
                patterns = sifted(timber, tight, timber.demand, counts, LONGEST)
            if patterns is not None:
                answer = self._chosen(patterns, timber.demand, counts, FEW_BRANCHES, tight)
                if answer.settled:
                    return answer
        # A long list is searched when diving fails.
        for skip in range(STARTS if patterns is None else FEW_STARTS):
            sticks = self._diver.dive(laid, counts, RETREATS, skip, self._endings(tight))
            if sticks is not None or self._seconds() <= 0:
                return Answer(sticks=sticks)
        return (
            Answer()
            if patterns is None or tight is None
            else self._chosen(patterns, timber.demand, counts, BRANCHES, tight)
        )

    def _is_little(self, worth: Worth, counts: Sequence[int]) -> bool:
        return slack_of(worth, counts) <= LITTLE * worth.needed

    def _allowed(self, counts: Sequence[int]) -> tuple[Worth | None, list[Stick] | None]:
        """Return a worth close to the rack's and the patterns it allows.

        None for the worth: there is none; for the patterns: they are too many.
        """
        rack = tuple(counts)
        if rack not in self._left:
            patterns, tight = None, self._worths.tightest(rack)
            if tight is not None:
                patterns = sifted(self._timber, tight, self._timber.demand, rack, PATTERNS)
            self._left[rack] = tight, patterns
        return self._left[rack]

    def seeded(self, relaxation: Relaxation, way: Way) -> Relaxation:
        """Return a program of another pricing, with the best patterns of one just solved."""
        near = relaxation.near(SEEDS * len(self._timber.sizes))
        laid = [(kind, self._mended(kind, pattern)) for kind, pattern in near]
        mend = self._mended if way is Way.CHAINED else None
        fitting = [stick for stick in laid if stick[1]]
        return Relaxation(self._timber, fitting, self._seconds, mend, way)

    def _chosen(
        self,
        patterns: Sequence[Stick],
        demand: Sequence[int],
        counts: Sequence[int],
        nodes: int,
        worth: Worth,
    ) -> Answer:
        """Choose among all the patterns that a worth allows on a rack."""
        held = [stick for stick in patterns if self._holds(stick)]
        choice = choose(self._timber, held, demand, counts, nodes=nodes, seconds=self._seconds())
        # A pattern that could not be laid in the orders tried might still be laid in another: then
        # a failed choice proves nothing.
        sure = all(self._settles(stick) for stick in patterns if not self._holds(stick))
        impossible = choice.settled and choice.sticks is None and sure
        return Answer(sticks=choice.sticks, impossible=worth if impossible else None)

    def _endings(self, worth: Worth | None) -> Ending | None:
        """Return what ends a dive by a choice among the patterns left, while these are few.

        It works ``ENDINGS`` times, and remembers the states that lead nowhere.
        """
        tries = ENDINGS
        dead: set[tuple[int, ...]] = set()
        if worth is None:
            return None

        def ended(demand: Sequence[int], left: Sequence[int]) -> tuple[Rack | None, bool]:
            nonlocal tries
            here = (*demand, *left)
            # Dives come back to the same rest by other ways.
            if here in dead:
                return None, True
            if not tries or sum(demand) > LAST:
                return None, False
            patterns = sifted(self._timber, worth, demand, left, ENDING)
            if patterns is None:
                return None, False
            tries -= 1
            answer = self._chosen(patterns, demand, left, ENDING_BRANCHES, worth)
            impossible = answer.impossible is not None
            if impossible:
                dead.add(here)
            return answer.sticks, impossible

        return ended

    def _mended(self, kind: int, pattern: Pattern) -> Pattern:
        """Return the pattern without the last, smallest pieces that keep it from being laid."""
        while pattern and not self._holds((kind, pattern)):
            pattern = pattern[:-1]
        return pattern

    def _settles(self, stick: Stick) -> bool:
        kind, pattern = stick
        sizes = [self._timber.sizes[size] for size in pattern]
        return settles(sizes, self._timber.kinds[kind].room)

    def _holds(self, stick: Stick) -> bool:
        """Whether the pattern can really be laid on its stick, mitres shared as needed."""
        if not self._timber.leaning:
            return True
        if stick not in self._fits:
            kind, pattern = stick
            sizes = [self._timber.sizes[size] for size in pattern]
            self._fits[stick] = fits(sizes, self._timber.kinds[kind].room)
        return self._fits[stick]
