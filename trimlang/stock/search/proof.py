"""Raises the bound and lowers the cost until they meet.

First the linear program over all that can be bought gives worths.  Then the
cheapest mix of sticks that no worth rules out is tried.  If it can be cut, it is the
least-cost plan; if it is shown to be too small, what showed it rules out more mixes;
if neither is found, the bound stays there while dearer mixes are tried.  In the same way fewer
sticks are then looked for at the cost reached: fewer to carry, to square off and to keep apart.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from trimlang.stock.mixes.buying import Buying
from trimlang.stock.mixes.mix import WORTHS_KEPT, Known, MixSearch
from trimlang.stock.packings.longest_first import fill_counts
from trimlang.stock.packings.packing import Incumbent, counts_of, packing_of
from trimlang.stock.patterns.nesting import can_nest
from trimlang.stock.patterns.relaxation import BATCH, FIRST, Relaxation, Way
from trimlang.stock.problem import Watch
from trimlang.stock.search.cutting import RackCut
from trimlang.stock.search.diving import Rack
from trimlang.stock.sticks.floor import Worth, cost_floor, count_floor, spare_floor
from trimlang.stock.sticks.timber import Timber

MANY_STICKS: Final = 1_000
"""With so many sticks racks close to what the program uses are looked at."""
MANY_KINDS: Final = 30
"""With more kinds, or so many sticks, the program's own answer is rounded first."""
UNDECIDED: Final = 12
FEW_UNDECIDED: Final = 2
"""So many mixes may be left undecided; and where there are many kinds, and so countless mixes."""
FEWER: Final = 6
"""The most racks of fewer sticks tried."""
FEW_KINDS: Final = 100
"""With more kinds of stick their numbers are not searched: each look would take seconds."""
SOON: Final = 1e-3
"""How near to its optimum a program is solved whose patterns only start the next one."""
BY_PATTERNS: Final = "linear program over patterns"
SIFTED: Final = "search over the patterns that the bound leaves"
"""What is said of a bound that needs more than worths."""


def prove(
    timber: Timber,
    buying: Buying,
    best: Incumbent,
    seconds: Callable[[], float],
    watch: Watch | None = None,
) -> None:
    """Search for the least cost, and at that cost for the fewest sticks."""
    search = _Search(timber, buying, best, seconds)
    search.solve()
    search.try_mixes(watch)
    if len(timber.kinds) > FEW_KINDS:
        search.try_longest_rests()
    else:
        search.try_fewer_sticks()
    best.work = search.work


class _Search:
    def __init__(
        self, timber: Timber, buying: Buying, best: Incumbent, seconds: Callable[[], float]
    ) -> None:
        self._timber, self._buying, self._best = timber, buying, best
        self._seconds = seconds
        self._mixes = MixSearch(timber, buying)
        self._known = Known(best.worths)
        start = best.packing
        # Without a plan, each piece alone on a stick is a dear answer to begin with.
        self._relaxation = Relaxation(timber, start.sticks if start else _singles(timber), seconds)
        self._racks = RackCut(timber, self._relaxation, seconds)

    @property
    def work(self) -> int:
        """Patterns priced and mixes searched for, the same on every machine."""
        return self._relaxation.work + self._mixes.work

    def solve(self) -> None:
        """Get worths from the linear program over all that can be bought."""
        timber = self._timber
        self._known.worths.extend(self._relaxation.begin())
        # Where mitres are shared the quick pricing comes first and near enough; the exact one
        # starts from its patterns.
        nests = timber.leaning and can_nest(timber.sizes, [kind.room for kind in timber.kinds])
        self._solve_cost(SOON if nests else 0.0, FIRST)
        if nests and not self._quickly_settled():
            self._relaxation = self._racks.seeded(self._relaxation, Way.NESTED)
            self._solve_cost(0.0, BATCH)
            self._racks = RackCut(timber, self._relaxation, self._seconds)
        # Of many mixes that cost nearly the same most are far from what the program uses.
        usual = self._relaxation.sticks_used()
        many = sum(usual) >= MANY_STICKS
        if many or len(timber.kinds) > MANY_KINDS:
            bought = self._racks.bought()
            if bought is not None:
                self._take(bought)
        if many:
            self._known.worths.extend(self._racks.worths_around(usual))

    def _quickly_settled(self) -> bool:
        """Tell whether quick packings of the cheapest mix, and of the fewest sticks, settle both.

        Then the exact pricing of shared mitres, most of the work on a small job, can add nothing.
        """
        best, known = self._best, self._known
        if best.packing is None:
            return False
        mix, _ = self._mixes.cheapest(known, best.packing.cost, self._seconds())
        if mix is not None and not self._filled(mix.counts):
            return False
        counts, least = self._mixes.fewest(known, best.packing.cost, self._seconds())
        return least >= len(best.packing.sticks) or (counts is not None and self._filled(counts))

    def _filled(self, counts: tuple[int, ...]) -> bool:
        """Keep a quick packing of a rack, if it holds everything."""
        sticks = fill_counts(self._timber, self._timber.demand, counts)
        if sticks is not None:
            self._take(tuple(sticks))
        return sticks is not None

    def _solve_cost(self, near: float, batch: int) -> None:
        """Price patterns until the bound meets the program's cost, and keep the best worths.

        ``near``: the part of the cost by which it may be missed.
        """
        relaxation = self._relaxation
        relaxation.pose_cost(self._timber.demand, self._timber.most)
        spare = float(spare_floor(self._timber))
        sound: list[tuple[int, Worth]] = []
        while self._seconds() > 0:
            value, _, duals = relaxation.solve()
            if duals is None:
                break
            worth, fresh = relaxation.priced(duals, batch)
            if worth is not None:
                floor = cost_floor(self._timber, worth)
                sound.append((floor, worth))
                self._best.raise_bound(floor, BY_PATTERNS)
            # The program knows of no spare, the bound does.
            met = (value + spare) * (1 - near) - 1e-6
            if not fresh or self._best.bound >= met:
                break
        # The worths that prove most come first, since only a few are kept.
        sound.sort(key=lambda entry: -entry[0])
        self._known.worths.extend(worth for _, worth in sound[:WORTHS_KEPT])

    def try_mixes(self, watch: Watch | None) -> None:
        """Try the cheapest mix that nothing rules out, until none costs less than the plan."""
        best, known, seconds = self._best, self._known, self._seconds
        ceiling = _ceiling(self._timber, self._buying)
        undecided: list[tuple[int, ...]] = []
        tried: set[tuple[int, ...]] = set()
        best.supply_short = False
        most = FEW_UNDECIDED if len(self._timber.kinds) > MANY_KINDS else UNDECIDED
        while len(undecided) < most and seconds() > 0:
            if watch is not None:
                watch(None if best.packing is None else best.packing.cost, best.bound)
            below = ceiling if best.packing is None else best.packing.cost
            left = Known(known.worths, [*known.too_small, *undecided])
            mix, floor = self._mixes.cheapest(left, below, seconds())
            # With a mix left undecided, a plan of its cost may exist: the bound stays below it.
            if not undecided:
                best.raise_bound(floor, SIFTED if best.racks else BY_PATTERNS)
            if mix is None:
                # Only if nothing was left undecided is it certain that the supply runs out.
                best.supply_short = best.packing is None and not undecided and floor >= below
                return
            if mix.counts in tried and known.falls_short(mix.counts):
                # It misses a worth by less than the solver can see and would come again: rule it
                # out itself.
                known.too_small.append(mix.counts)
            elif not self._settled(mix.counts):
                undecided.append(mix.counts)
            tried.add(mix.counts)

    def try_fewer_sticks(self) -> None:
        """Try the mix of fewest sticks that nothing rules out, at the cost reached."""
        best = self._best
        for _ in range(FEWER):
            if best.packing is None or self._seconds() <= 0:
                return
            counts, floor = self._mixes.fewest(self._known, best.packing.cost, self._seconds())
            best.stick_bound = max(best.stick_bound, floor)
            # Nothing is left between what is cut and what must be cut.
            if counts is None or len(best.packing.sticks) <= best.stick_bound:
                return
            if not self._settled(counts):
                return

    def try_longest_rests(self) -> None:
        """Keep the bought sticks, and as few of the longest free ones as best fit needs."""
        timber, best = self._timber, self._best
        best.stick_bound = max(count_floor(timber, worth) for worth in self._known.worths)
        if best.packing is None:
            return
        free = [k for k, one in enumerate(timber.kinds) if one.to_be_used_up(timber.problem.spare)]
        counts = counts_of(timber, best.packing.sticks)
        paid = [0 if kind in free else count for kind, count in enumerate(counts)]

        def rack(number: int) -> list[int]:
            taken = list(paid)
            for kind in free:
                taken[kind] = min(timber.most[kind], number)
                number -= taken[kind]
            return taken

        least, most = max(best.stick_bound - sum(paid), 0), sum(counts) - sum(paid)
        # A binary search: more of the free sticks never make a rack harder to fill, as a rule, and
        # a wrong turn only misses a better plan.
        while least < most and self._seconds() > 0:
            middle = (least + most) // 2
            sticks = fill_counts(timber, timber.demand, rack(middle))
            if sticks is None:
                least = middle + 1
            else:
                self._take(tuple(sticks))
                most = min(middle, len(best.packing.sticks) - sum(paid))

    def _settled(self, counts: tuple[int, ...]) -> bool:
        """Try to cut a rack; return whether it was cut, or is ruled out from now on."""
        answer = self._racks.cut(counts)
        if answer.sticks is not None:
            # Sticks that were meant to be fewer may still cost more once they are bought in packs.
            self._take(answer.sticks)
        elif answer.worth is not None:
            self._known.worths.append(answer.worth)
        elif answer.impossible is not None:
            self._known.too_small.append(counts)
            self._best.racks.append((counts, answer.impossible))
        else:
            return False
        return True

    def _take(self, sticks: Rack) -> None:
        self._best.take(packing_of(self._timber, self._buying, sticks))


def _singles(timber: Timber) -> list[tuple[int, tuple[int, ...]]]:
    """Return each size alone on each kind that holds it: a start for the linear program."""
    return [
        (kind, (size,))
        for kind, sort in enumerate(timber.kinds)
        for size, shape in enumerate(timber.sizes)
        if shape.weight <= sort.room
    ]


def _ceiling(timber: Timber, buying: Buying) -> int:
    """Return more than any plan needs to cost: every kind as often as it could be used."""
    total = 1 + sum(buying.least(kind, most) or 0 for kind, most in enumerate(timber.most))
    return total + sum(b.price for k in timber.kinds for b in k.offers) * (
        1 + timber.problem.spare // min((k.length for k in timber.kinds), default=1)
    )
