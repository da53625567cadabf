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
from trimlang.stock.search.diving import Diver, Rack
from trimlang.stock.search.rack_worths import RackWorths
from trimlang.stock.search.sifting import sifted
from trimlang.stock.sticks.floor import Worth
from trimlang.stock.sticks.stick_order import fits, settles
from trimlang.stock.sticks.timber import Pattern, Timber

FEW_RETREATS = 2
RETREATS = 8
"""The most steps undone in the first dive, and in the one after no list has settled the rack."""
DIVES = 4
"""How often that one is made, each time with the patterns that were priced on the way before."""
PATTERNS = 15_000
"""The most patterns listed."""
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
        self._diver = Diver(timber, self._holds, seconds)
        # Dives use patterns that can really be laid; the bound those that might.
        self._laid = None if timber.leaning else relaxation

    def worths_around(self, usual: Sequence[float]) -> list[Worth]:
        """Return worths that hold close to a rack in fractions of sticks."""
        return self._worths.around(usual)

    def bought(self) -> Rack | None:
        """Cut everything from sticks that are chosen on the way, for little money."""
        laid = self._laid = self._laid or self.seeded(self._relaxation, Way.CHAINED)
        return self._diver.bought(laid)

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
        sticks = self._diver.dive(laid, counts, FEW_RETREATS)
        if sticks is not None or self._seconds() <= 0:
            return Answer(sticks=sticks)
        answer = self._among_allowed(counts)
        if answer != Answer():
            return answer
        for _ in range(DIVES):
            sticks = self._diver.dive(laid, counts, RETREATS)
            if sticks is not None:
                break
        return Answer(sticks=sticks)

    def _among_allowed(self, counts: Sequence[int]) -> Answer:
        """Search the patterns that a worth close to the rack's allows, if they are few."""
        worth = self._worths.tightest(counts)
        if worth is None:
            return Answer()
        # It may show what none before it did: the rack is worth less than the pieces.
        if worth.slack(counts) < 0:
            return Answer(worth=worth)
        patterns = sifted(self._timber, worth, counts, PATTERNS)
        if patterns is None:
            return Answer()
        held = [stick for stick in patterns if self._holds(stick)]
        beyond, seconds = worth.beyond(counts), self._seconds()
        choice = choose(self._timber, held, counts, beyond, seconds)
        if choice.sticks is not None or not choice.settled:
            return Answer(sticks=choice.sticks)
        # A pattern that could not be laid in the orders tried might still be laid in another: then
        # a failed choice proves nothing.
        sure = all(self._settles(stick) for stick in patterns if not self._holds(stick))
        return Answer(impossible=worth if sure else None)

    def seeded(self, relaxation: Relaxation, way: Way) -> Relaxation:
        """Return a program of another pricing, with the best patterns of one just solved."""
        near = relaxation.near(SEEDS * len(self._timber.sizes))
        laid = [(kind, self._mended(kind, pattern)) for kind, pattern in near]
        mend = self._mended if way is Way.CHAINED else None
        fitting = [stick for stick in laid if stick[1]]
        return Relaxation(self._timber, fitting, self._seconds, mend, way)

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
