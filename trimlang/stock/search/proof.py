"""Raises the bound and lowers the cost until they meet.

First the linear program over all that can be bought gives worths.  Then the
cheapest mix of sticks that no worth rules out is tried.  If it can be cut, it is the
least-cost plan; if it is shown to be too small, what showed it rules out more mixes;
if neither is found, the bound stays there while dearer mixes are tried.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from math import ceil

from trimlang.stock.mixes.buying import Buying
from trimlang.stock.mixes.mix import WORTHS_KEPT, Known, MixSearch
from trimlang.stock.packings.packing import Packing, better, packing_of
from trimlang.stock.patterns.nesting import can_nest
from trimlang.stock.patterns.relaxation import BATCH, FIRST, Relaxation, Way
from trimlang.stock.problem import Watch
from trimlang.stock.search.cutting import Answer, RackCut
from trimlang.stock.search.diving import Rack
from trimlang.stock.search.fewer_sticks import fewer_sticks
from trimlang.stock.solver import HAIR
from trimlang.stock.sticks.floor import Worth, cost_floor, spare_floor
from trimlang.stock.sticks.timber import Timber

MANY_STICKS = 1_000
"""With so many sticks the program's own rack is cut first, and racks close to it looked at."""
UNDECIDED = 12
"""So many mixes may be left undecided."""
SOON = 1e-3
"""How near to its optimum a program is solved whose patterns only start the next one."""
SIFTED = "search over the patterns that the bound leaves"
"""What is said of a bound that needs more than worths."""


@dataclass(slots=True)
class Proof:
    """The state of the search: the best packing, the bound, and why it holds.

    ``racks`` hold too little: no choice among the patterns that a worth allows cuts everything.
    """

    packing: Packing | None
    bound: int
    reason: str
    work: int = 0
    supply_short: bool = False
    stick_bound: int = 0
    worths: list[Worth] = field(default_factory=list)
    racks: list[tuple[tuple[int, ...], Worth]] = field(default_factory=list)


def prove(
    timber: Timber,
    buying: Buying,
    start: Packing | None,
    worths: list[Worth],
    seconds: Callable[[], float],
    watch: Watch | None = None,
) -> Proof:
    """Search for the least cost from a starting packing (None: none found yet)."""
    state = Proof(start, 0, "linear program over patterns")
    # Without a plan, each piece alone on a stick is a dear answer to begin with.
    relaxation = Relaxation(timber, start.sticks if start else singles(timber), seconds)
    known = Known([*worths, *relaxation.begin()])
    # Where mitres are shared the quick pricing comes first and near enough; the exact one starts
    # from its patterns.
    nests = timber.leaning and can_nest(timber.sizes, [kind.room for kind in timber.kinds])
    _solve_cost(relaxation, known, state, seconds, SOON if nests else 0.0)
    racks = RackCut(timber, relaxation, seconds)
    search = MixSearch(timber, buying)
    ceiling = _ceiling(timber, buying)
    if nests:
        relaxation = racks.seeded(relaxation, Way.NESTED)
        _solve_cost(relaxation, known, state, seconds, batch=BATCH)
        racks = RackCut(timber, relaxation, seconds)
    # Of many mixes that cost nearly the same most are far from what the program uses.
    usual = relaxation.sticks_used()
    if sum(usual) >= MANY_STICKS:
        rounded = racks.cut([ceil(count - HAIR) for count in usual])
        if rounded.sticks is not None:
            _take(search, state, rounded.sticks)
        known.worths.extend(racks.worths_around(usual))
    undecided = 0
    tried: set[tuple[int, ...]] = set()
    passed = Known(known.worths)  # Skips also mixes that were tried without a result.
    while undecided < UNDECIDED and seconds() > 0:
        if watch is not None:
            watch(None if state.packing is None else state.packing.cost, state.bound)
        below = ceiling if state.packing is None else state.packing.cost
        mix, floor = search.cheapest(passed, below, seconds())
        # With a mix left undecided, a plan of its cost may exist: the bound cannot rise above it.
        if not undecided:
            state.bound = max(state.bound, floor)
        if mix is None:
            # Only if nothing was left undecided is it certain that the supply runs out.
            state.supply_short = state.packing is None and not undecided and floor >= below
            break
        if mix.counts in tried and known.falls_short(mix.counts):
            # It misses a worth by less than the solver can see and would come again: rule it out
            # itself.
            known.too_small.append(mix.counts)
            passed.too_small.append(mix.counts)
            continue
        tried.add(mix.counts)
        answer = racks.cut(mix.counts)
        if answer.sticks is not None:
            _take(search, state, answer.sticks)
        elif answer.worth is not None:
            known.worths.append(answer.worth)
        else:
            passed.too_small.append(mix.counts)
            if answer.impossible:
                state.reason = SIFTED
                _rule_out(state, known, mix.counts, answer)
            else:
                undecided += 1
    if state.packing is not None:

        def ruled_out(counts: Sequence[int], answer: Answer) -> None:
            _rule_out(state, known, counts, answer)

        fewer = fewer_sticks(search, racks, known, state.packing, seconds, ruled_out)
        state.packing, state.stick_bound = fewer.packing, fewer.stick_bound
    state.work = relaxation.work + search.work
    state.worths = known.worths
    return state


def _rule_out(state: Proof, known: Known, counts: Sequence[int], answer: Answer) -> None:
    """Keep that a rack holds too little, by a choice among the patterns that a worth leaves."""
    known.too_small.append(tuple(counts))
    if answer.impossible is not None:
        state.racks.append((tuple(counts), answer.impossible))


def _take(search: MixSearch, state: Proof, sticks: Rack) -> None:
    """Keep these sticks as the packing if they are better than the one so far."""
    found = packing_of(search.timber, search.buying, sticks)
    state.packing = better(state.packing, found)


def singles(timber: Timber) -> list[tuple[int, tuple[int, ...]]]:
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


def _solve_cost(
    relaxation: Relaxation,
    known: Known,
    state: Proof,
    seconds: Callable[[], float],
    near: float = 0.0,
    batch: int = FIRST,
) -> None:
    """Price patterns until the bound meets the linear program's cost, and keep the best worths.

    ``near``: the part of the cost by which it may be missed.
    """
    relaxation.pose_cost()
    timber = relaxation.timber
    spare = float(spare_floor(timber))
    sound: list[tuple[int, Worth]] = []
    while seconds() > 0:
        value, _, duals = relaxation.solve()
        if duals is None:
            break
        worth, fresh = relaxation.priced(duals, batch)
        if worth is not None:
            floor = cost_floor(timber, worth)
            sound.append((floor, worth))
            state.bound = max(state.bound, floor)
        # The program knows of no spare, the bound does.
        met = (value + spare) * (1 - near) - 1e-6
        if not fresh or state.bound >= met:
            break
    # The worths that prove most come first, since only a few are kept.
    sound.sort(key=lambda entry: -entry[0])
    known.worths.extend(worth for _, worth in sound[:WORTHS_KEPT])
