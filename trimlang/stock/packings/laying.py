"""From a packing to the plan: parts laid on sticks in cutting order, purchases, figures."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence

from trimlang.stock.certificate import Certificate
from trimlang.stock.mixes.buying import Buying
from trimlang.stock.packings.packing import Packing, counts_of
from trimlang.stock.problem import Plain, Plan, Problem, Purchase, Status, Stick, Waste
from trimlang.stock.sticks.stick_order import laid_weight, order_on_stick, usual_order
from trimlang.stock.sticks.timber import Pattern, Size, Timber


def plan_of(
    problem: Problem,
    timber: Timber,
    buying: Buying,
    packing: Packing,
    *,
    bound: int,
    stick_bound: int,
    plain: Packing | None,
    proof: str,
    certificate: Certificate | None = None,
    work: int = 0,
    proving: bool = True,
    reserve: str | None = None,
) -> Plan:
    """Return the plan of a packing, each stick of which is known to fit.

    ``reserve`` is the id of a part that only keeps room free: it is not cut,
    and a stick that holds nothing else stays whole.
    """
    laid = sorted(
        (
            (kind, _ordered(timber, pattern, room))
            for kind, pattern, room in _without_reserve(timber, packing.sticks, reserve)
        ),
        key=lambda stick: (
            timber.kinds[stick[0]].on_hand,
            -timber.kinds[stick[0]].length,
            [(-size.length, size.left, size.right) for size in stick[1]],
        ),
    )
    counts = counts_of(timber, packing.sticks)
    purchases = buying.purchases(counts)
    names = _blank_names(timber, purchases)
    ids = {id(size): iter([i for i in size.ids if i != reserve]) for size in timber.sizes}
    sticks: list[Stick] = []
    offcuts: list[int] = []
    shared: list[int] = []
    kerf_lost = 0
    for kind, order in laid:
        sticks.append(Stick(names[kind].pop(), tuple(next(ids[id(size)]) for size in order)))
        rest = timber.kinds[kind].room - laid_weight(order)
        # A rest shorter than the kerf behind the last piece turns to dust.
        kerf_lost += (len(order) - 1) * problem.kerf + min(rest, problem.kerf)
        offcuts.append(max(rest - problem.kerf, 0))
        # Without sharing mitres these pieces would not fit: say so on the sheet.
        if sum(size.weight for size in order) > timber.kinds[kind].room:
            shared.append(len(sticks) - 1)
    worth_keeping = sum(rest for rest in offcuts if rest >= problem.usable)
    waste = Waste(
        kerf=kerf_lost,
        ends=2 * problem.end_waste * len(sticks),
        offcut=worth_keeping,
        scrap=sum(offcuts) - worth_keeping,
    )
    status = Status.PROVEN if bound >= packing.cost else Status.GAP if proving else Status.UNPROVEN
    return Plan(
        problem=problem,
        sticks=tuple(sticks),
        purchases=purchases,
        cost=packing.cost,
        bound=min(bound, packing.cost),
        status=status,
        # A stick that only keeps room may be counted in the bound.
        stick_bound=min(stick_bound - (reserve is not None), len(sticks)),
        offcuts=tuple(offcuts),
        shared=tuple(shared),
        waste=waste,
        plain=None if plain is None else Plain(plain.cost, len(plain.sticks)),
        proof=proof if status is Status.PROVEN else "",
        work=work,
        certificate=certificate,
    )


def _without_reserve(
    timber: Timber, sticks: Sequence[tuple[int, Pattern]], reserve: str | None
) -> list[tuple[int, Pattern, int]]:
    """Return the sticks to cut, each with the room for its pieces: kind, pattern, room.

    Room is kept for the reserve on the stick with fewest others, whose pieces must leave it
    free: without it they might lie in an order that shares less and takes more.
    """
    whole = [(kind, pattern, timber.kinds[kind].room) for kind, pattern in sticks]
    if reserve is None:
        return whole
    size = next(i for i, size in enumerate(timber.sizes) if reserve in size.ids)
    keeper = min(
        (place for place, (_, pattern) in enumerate(sticks) if size in pattern),
        key=lambda place: (len(sticks[place][1]), sticks[place], place),
    )
    kind, pattern, room = whole[keeper]
    at = pattern.index(size)
    others = pattern[:at] + pattern[at + 1 :]
    # The reserve has square ends and shares nothing, so its weight is exactly what the others must
    # leave free.
    keeper_alone = [(kind, others, room - timber.sizes[size].weight)] if others else []
    return [*whole[:keeper], *keeper_alone, *whole[keeper + 1 :]]


def _ordered(timber: Timber, pattern: Sequence[int], room: int) -> tuple[Size, ...]:
    sizes = [timber.sizes[i] for i in pattern]
    order = order_on_stick(sizes, room, timber.problem.short)
    if order is None:
        message = f"pieces {[s.ids[0] for s in usual_order(sizes, 0)]} do not fit their stick"
        raise AssertionError(message)
    return order


def _blank_names(timber: Timber, purchases: Sequence[Purchase]) -> list[list[str]]:
    """Return for each kind the names for its sticks, to be taken from the end of the list.

    Singles are at the end, so that sticks that stay whole stay in their pack.
    """
    packs: defaultdict[str, int] = defaultdict(int)
    for purchase in purchases:
        packs[purchase.blank] += purchase.packs
    names: list[list[str]] = []
    for kind in timber.kinds:
        having: list[str] = []
        for offer in sorted(kind.offers, key=lambda o: (-o.pack, o.price, o.key)):
            having.extend([offer.key] * (packs[offer.key] * offer.pack))
        names.append(having)
    return names
