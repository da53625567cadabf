"""Keeps the plan in force for everything that the log has not changed."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import pairwise, starmap

from trimlang.record import record
from trimlang.site_log.rack import Origin, Rack, WholeStick
from trimlang.site_log.whole_units import PlanInForce, PlannedStick, ScaledTrim
from trimlang.stock.problem import Part
from trimlang.stock.sticks.timber import Timber


@dataclass(slots=True)
class KeptStick:
    """A stick of the plan in force, with what was cut from it and what still will be.

    ``shop`` is its kind where it is an offcut of the shop that nobody has cut from yet.  It is
    None for a stick that is begun and for one of the yard, in hand or still to be bought.
    """

    name: str
    length: Fraction
    begun: bool
    shop: WholeStick | None = None
    done: tuple[Part, ...] = ()
    todo: list[str] = field(default_factory=list)


@record
class StillToCut:
    """One trim in the middle of the work: what is in hand, the plan in force, the pieces left.

    ``to_cut`` are the ids of the pieces that are still to be cut.
    """

    scaled: ScaledTrim
    rack: Rack
    in_force: PlanInForce
    to_cut: frozenset[str]


def keep(work: StillToCut) -> list[KeptStick] | None:
    """Return the plan in force with every piece on a stick, None where there is not enough room.

    Pieces stay where they were.  Those without a stick are placed the longest first: on the
    smallest rest that holds them, or else on a stick in hand or one to be bought.
    """
    scaled, to_cut = work.scaled, work.to_cut
    sticks = _as_before(work)
    placed = {name for stick in sticks for name in stick.todo}
    # The longest first, since it has the fewest places to go; the name makes the order sure.
    homeless = sorted(
        (name for name in scaled.parts if name in to_cut and name not in placed),
        key=lambda name: (-scaled.parts[name].length, name),
    )
    for name in homeless:
        stick = _roomiest(scaled, sticks, name) or _another(work, sticks, name)
        if stick is None:
            return None
        if scaled.parts[name].length < scaled.question.problem.short:
            stick.todo.insert(0, name)  # while the stick is still long
        else:
            stick.todo.append(name)
    # A short piece is hard to hold on a short stick, so it is cut while the stick is long.
    return [stick for stick in sticks if stick.todo]


def fits(scaled: ScaledTrim, length: Fraction, done: Iterable[Part], todo: Iterable[str]) -> bool:
    """Tell whether the pieces ``todo`` fit on a stick behind what is cut from it already."""
    cut, parts = tuple(done), [scaled.parts[name] for name in todo]
    # A plan gives each cut that is still to be made the kerf of its steepest, which is feet where
    # the blade runs almost along the stick; what is cut took no more than its own.
    more = sum(starmap(scaled.steepest_more, pairwise([*cut[-1:], *parts])))
    return scaled.reach([*cut, *parts]) + more <= scaled.between(length)


def _as_before(work: StillToCut) -> list[KeptStick]:
    scaled, rack = work.scaled, work.rack
    shop = Counter({kind: n for kind, n in rack.whole.items() if kind.origin is Origin.SHOP})
    sticks = [
        KeptStick(stick.name, stick.length, True, done=stick.done)
        for stick in rack.started.values()
    ]
    begun = {stick.name: stick for stick in sticks}
    seen: set[str] = set()
    for laid in work.in_force.sticks:
        todo = [name for name in laid.todo if name in work.to_cut and name not in seen]
        stick = begun.get(laid.name)
        if stick is None:
            stick = KeptStick(laid.name, laid.length, False)
            if laid.origin is Origin.SHOP:
                kinds = [kind for kind, n in shop.items() if n and kind.length == laid.length]
                if not kinds:
                    continue  # that offcut is no longer there
                # Of the offcuts of that length, the one at the planned price, or else the cheapest.
                stick.shop = min(kinds, key=lambda kind: (kind.price != laid.price, kind.price))
                shop[stick.shop] -= 1
            sticks.append(stick)
        # A piece was cut longer than planned: the last pieces lose their place on this stick.
        while todo and not fits(scaled, stick.length, stick.done, todo):
            todo.pop()
        stick.todo = todo
        seen.update(todo)
    return [stick for stick in sticks if stick.todo or stick.begun]


def _roomiest(scaled: ScaledTrim, sticks: Iterable[KeptStick], name: str) -> KeptStick | None:
    """Return the stick with the smallest rest that still holds the piece, None if none does."""
    able = [
        stick for stick in sticks if fits(scaled, stick.length, stick.done, [*stick.todo, name])
        and (scaled.parts[name].length >= scaled.question.problem.short
             or fits(scaled, stick.length, stick.done, [name, *stick.todo]))
    ]  # fmt: skip
    return min(able, key=lambda stick: (_rest(scaled, stick), stick.name), default=None)


def _rest(scaled: ScaledTrim, stick: KeptStick) -> int:
    parts = [*stick.done, *(scaled.parts[name] for name in stick.todo)]
    return scaled.between(stick.length) - scaled.reach(parts)


def _another(work: StillToCut, sticks: list[KeptStick], name: str) -> KeptStick | None:
    """Add and return one more stick that holds the piece: the cheapest, then the shortest."""
    scaled, rack = work.scaled, work.rack
    taken = Counter(stick.shop for stick in sticks if stick.shop is not None)
    used = Counter(stick.length for stick in sticks if not stick.begun and stick.shop is None)
    choices: list[tuple[Fraction, Fraction, WholeStick | None]] = []
    hand: Counter[Fraction] = Counter()
    for kind, count in rack.whole.items():
        if kind.origin is Origin.HAND:
            hand[kind.length] += count
        elif count > taken[kind]:
            choices.append((kind.price, kind.length, kind))
    # A stick of the yard that is in hand is paid for, so it costs nothing more.
    choices += [(Fraction(0), length, None) for length in hand if hand[length] > used[length]]
    for offer in scaled.trim.offers:
        if offer.at_most is None or used[offer.length] < offer.at_most:
            choices.append((offer.price / offer.pack, offer.length, None))
    able = [choice for choice in choices if fits(scaled, choice[1], (), [name])]
    if not able:
        return None
    _, length, shop = min(able, key=lambda choice: (choice[0], choice[1], choice[2] is None))
    # Past the numbers of the plan before as well, so that no ticket of today looks like one of
    # another day.
    number = next_number(scaled, rack, [*(one.name for one in sticks)], work.in_force.sticks)
    sticks.append(KeptStick(f"{scaled.trim.name}-{number}", length, False, shop))
    return sticks[-1]


def next_number(
    scaled: ScaledTrim, rack: Rack, taken: Iterable[str], before: Iterable[PlannedStick] = ()
) -> int:
    """Return the first number that no stick of the trim has, or had in the plan before.

    A number that stood on a printed ticket must not mean another stick.
    """
    names = {*taken, *rack.started, *(laid.name for laid in before)}
    number = 1
    while f"{scaled.trim.name}-{number}" in names:
        number += 1
    return number


def to_be_had(work: StillToCut, sticks: Iterable[KeptStick]) -> list[KeptStick]:
    """Return the sticks that are begun, lie in the rack, or can still be bought."""
    offers, rack = work.scaled.trim.offers, work.rack
    left: Counter[Fraction] = Counter()
    for kind, count in rack.whole.items():
        if kind.origin is Origin.HAND:
            left[kind.length] += count
    # A length that the yard has without limit never runs out.
    endless = {offer.length for offer in offers if offer.at_most is None}
    for offer in offers:
        left[offer.length] += max((offer.at_most or 0) - rack.bought[offer.length], 0)
    found: list[KeptStick] = []
    for stick in sticks:
        if not stick.begun and stick.shop is None and stick.length not in endless:
            if not left[stick.length]:
                continue
            left[stick.length] -= 1
        found.append(stick)
    return found


def free_first(timber: Timber, wanted: Mapping[int, int]) -> tuple[int, ...]:
    """Return how many sticks of each kind to take for so many of each length.

    ``wanted`` is counts by length (units of the plan).  Sticks of one length are of two kinds
    where some are paid for and others still to be bought; the paid ones are taken first.
    """
    left = dict(wanted)
    counts = [0] * len(timber.kinds)
    for place in sorted(range(len(counts)), key=lambda place: timber.kinds[place].rate):
        kind = timber.kinds[place]
        if kind.on_hand:
            continue
        want = left.get(kind.length, 0)
        counts[place] = want if kind.supply is None else min(want, kind.supply)
        left[kind.length] = want - counts[place]
    return tuple(counts)
