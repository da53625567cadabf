"""Plans what is left to cut from what is left, changing as few tickets as least cost allows.

The plan in force is kept as long as it is still as cheap as any: every piece stays on its stick,
and only pieces without one (such as a spoiled one) are placed on what is free.  Only where
another plan costs less is everything planned anew.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from fractions import Fraction

from trimlang.planning.sound_plan import sound_plan
from trimlang.record import record
from trimlang.site_log.keeping import (
    KeptStick,
    StillToCut,
    free_first,
    keep,
    next_number,
    to_be_had,
)
from trimlang.site_log.rack import Origin, Rack, WholeStick
from trimlang.site_log.what_is_left import Left, Spare, left
from trimlang.site_log.whole_units import PlanInForce, PlannedStick, ScaledTrim
from trimlang.stock.checking.verify import faults
from trimlang.stock.mixes.buying import Buying
from trimlang.stock.planner import Effort, Watch
from trimlang.stock.problem import Blank, NoPlan, Plan, Purchase, Status, Stick
from trimlang.stock.sticks.timber import timber_of
from trimlang.survey.job import Offer


@record
class WatchedEffort:
    """How much effort the planner may take, and who watches it."""

    planner: Effort
    watch: Watch | None = None


def replan(work: StillToCut, spare: Spare, effort: WatchedEffort, floor: int = 0) -> PlanInForce:
    """Return the plan of the pieces that are still to be cut.

    Once the saw has started, spare alone is no reason to go to the yard again: it is there to be
    used up.  Where sticks must be bought anyway, the spare for what is still to cut is bought
    with them.  ``floor`` is a lower bound on what the rest of the order costs, spare included
    (smallest coin).
    """
    tries = [(spare, floor)]
    if work.rack.started and spare != Spare():
        tries.append((Spare(), 0))
    for asked, least in tries:
        layout = kept_layout(work, asked, least)
        if layout is not None and layout.cost == 0:
            return layout
    # Nothing can be kept for nothing, so something is bought: then it is worth asking for other
    # plans.
    best: PlanInForce | None = None
    for asked, least in tries:
        layout = _cheapest(work, asked, effort, least)
        if layout is not None and (best is None or layout.cost == 0):
            best = layout
    return best if best is not None else _what_stands(work)


def kept_layout(work: StillToCut, spare: Spare, floor: int) -> PlanInForce | None:
    """Return the plan in force, with pieces that have no stick placed on what is free.

    Its bound is ``floor``.  None where it cannot be kept.
    """
    scaled, in_force = work.scaled, keep(work)
    if in_force is None:
        return None
    # A begun stick may hold what its rest alone does not: its first piece may share a mitre with
    # the last one that was cut.
    held = {
        stick.name: scaled.reach([scaled.parts[name] for name in stick.todo])
        for stick in in_force
        if stick.begun
    }
    question = left(scaled, work.rack, work.to_cut, spare, held)
    plan = _plan_of(scaled, question, in_force)
    # The kept sticks hold all pieces, but leave no room for one that is spoiled: one stick more
    # may.
    if plan is not None and spare.any_one and faults(plan):
        plan = _with_reserve(scaled, question, in_force)
    if plan is None or faults(plan):
        return None
    return _layout(question, plan, [stick.name for stick in in_force], work.rack, floor)


def _cheapest(
    work: StillToCut, spare: Spare, effort: WatchedEffort, floor: int
) -> PlanInForce | None:
    """Return the plan in force where nothing is cheaper, otherwise a new plan."""
    layout = kept_layout(work, spare, floor)
    # Batches are kept apart by the plan in force: the log does not say of which batch a stick is,
    # so a new plan could mix them.
    if layout is not None and (layout.bound == layout.cost or work.scaled.trim.has_batches):
        return layout
    question = left(work.scaled, work.rack, work.to_cut, spare, {})
    plan = sound_plan(question.problem, effort=effort.planner, watch=effort.watch)
    if isinstance(plan, NoPlan):
        return layout
    # At equal cost the tickets that are printed already stay right.
    if layout is None or plan.cost < layout.cost:
        names = _names(work, question, plan)
        return _layout(question, plan, names, work.rack, plan.bound)
    return judged(layout, max(plan.bound, floor), unproven=plan.status)


def judged(layout: PlanInForce, bound: int, *, unproven: Status = Status.GAP) -> PlanInForce:
    """Return the plan with a lower bound on its cost, and whether that proves it."""
    status = unproven if unproven is not Status.PROVEN else Status.GAP
    return replace(
        layout,
        bound=min(bound, layout.cost),
        status=Status.PROVEN if bound >= layout.cost else status,
    )


def _with_reserve(scaled: ScaledTrim, question: Left, in_force: list[KeptStick]) -> Plan | None:
    """Return the plan of kept sticks with one more: the cheapest that holds the longest piece."""
    problem = question.problem
    longest = max(part.length for part in problem.parts)
    roomy = [one for one in problem.blanks if one.length - 2 * problem.end_waste >= longest]
    plans = (_plan_of(scaled, question, in_force, besides=blank) for blank in roomy)
    sound = [plan for plan in plans if plan is not None and not faults(plan)]
    return min(sound, key=lambda plan: plan.cost, default=None)


def _plan_of(
    scaled: ScaledTrim, question: Left, in_force: list[KeptStick], besides: Blank | None = None
) -> Plan | None:
    """Return the planner's form of kept sticks, None where there is not the stock for them.

    ``besides`` is one more stick to have, which stays whole.
    """
    problem = question.problem
    timber = timber_of(problem)
    buying = Buying(timber)
    yards = Counter(
        scaled.units(stick.length) for stick in in_force if not stick.begun and stick.shop is None
    )
    if besides is not None and not besides.on_hand:
        yards[besides.length] += 1
    counts = free_first(timber, yards)
    cost = buying.cost(counts)
    if cost is None or sum(counts) != sum(yards.values()):
        return None
    purchases = list(buying.purchases(counts))
    blanks = {blank.key: blank for blank in problem.blanks}
    keys_by_length: dict[int, list[str]] = {}
    for purchase in purchases:
        blank = blanks[purchase.blank]
        keys_by_length.setdefault(blank.length, []).extend(
            [blank.key] * (purchase.packs * blank.pack)
        )
    # Popped from the end: what is in hand is cut before what is still to be bought.
    for keys in keys_by_length.values():
        keys.sort(key=lambda key: isinstance(question.supply[key], Offer), reverse=True)
    shop_keys = {kind: key for key, kind in question.supply.items() if isinstance(kind, WholeStick)}
    sticks: list[Stick] = []
    taken: Counter[str] = Counter()
    for stick in in_force:
        if stick.begun or stick.shop is not None:
            key = f"stick {stick.name}" if stick.shop is None else shop_keys[stick.shop]
            if key not in blanks:
                return None
            taken[key] += 1
            cost += blanks[key].price
        else:
            key = keys_by_length[scaled.units(stick.length)].pop()
        sticks.append(Stick(key, tuple(stick.todo)))
    if besides is not None and besides.on_hand:
        if taken[besides.key] >= (besides.limit or 0):
            return None
        taken[besides.key] += 1
        cost += besides.price
    purchases += [Purchase(key, count) for key, count in taken.items()]
    status = Status.PROVEN if cost == 0 else Status.UNPROVEN
    return Plan(
        problem=problem,
        sticks=tuple(sticks),
        purchases=tuple(purchases),
        cost=cost,
        bound=0,
        status=status,
    )


def _names(work: StillToCut, question: Left, plan: Plan) -> list[str]:
    """Name a new plan's sticks after the old sticks that hold most of the same pieces."""
    names: list[str | None] = [
        supply if isinstance(supply := question.supply[stick.blank], str) else None
        for stick in plan.sticks
    ]
    free = [laid for laid in work.in_force.sticks if laid.name not in work.rack.started]
    for place, stick in enumerate(plan.sticks):
        supply = question.supply[stick.blank]
        if isinstance(supply, str):
            continue
        # No other stick has pieces of an old one that comes again as it was, so its ticket stays.
        shared = {
            laid: len(set(laid.todo) & set(stick.parts))
            for laid in free
            if laid.length == supply.length
        }
        best = max(shared, key=lambda laid: shared[laid], default=None)
        if best is not None and shared[best]:
            free.remove(best)
            names[place] = best.name
    named: list[str] = [name for name in names if name is not None]
    result: list[str] = []
    for name in names:
        if name is None:
            number = next_number(work.scaled, work.rack, named)
            name = f"{work.scaled.trim.name}-{number}"
            named.append(name)
        result.append(name)
    return result


def _layout(question: Left, plan: Plan, names: list[str], rack: Rack, floor: int) -> PlanInForce:
    sticks: list[PlannedStick] = []
    for name, stick in zip(names, plan.sticks, strict=True):
        supply = question.supply[stick.blank]
        # Its price is asked of the stick that was begun or taken off the rack, or else of the yard.
        source = rack.started[supply] if isinstance(supply, str) else supply
        if isinstance(source, Offer):
            origin, price = Origin.ORDER, source.price / source.pack
        else:
            origin, price = source.origin, source.price
        sticks.append(
            PlannedStick(
                name=name, length=source.length, origin=origin, price=price, todo=stick.parts
            )
        )
    order = [
        (supply, purchase.packs)
        for purchase in plan.purchases
        if isinstance(supply := question.supply[purchase.blank], Offer)
    ]
    used = Counter(stick.blank for stick in plan.sticks)
    aside = [
        (supply, purchase.packs - used[purchase.blank])
        for purchase in plan.purchases
        if isinstance(supply := question.supply[purchase.blank], WholeStick)
        and supply.origin is Origin.SHOP
        and purchase.packs > used[purchase.blank]
    ]
    problem = plan.problem
    return judged(
        PlanInForce(
            sticks=tuple(sorted(sticks, key=lambda laid: stick_number(laid.name))),
            order=tuple(order),
            aside=tuple(aside),
            cost=plan.cost,
            spare=problem.spare,
            survives_loss=problem.survive_loss,
        ),
        floor,
        unproven=plan.status,
    )


def stick_number(name: str) -> tuple[str, int, str]:
    """Return a key that sorts stick names as people count: ``base-2`` before ``base-10``."""
    stem, _, number = name.rpartition("-")
    return (stem, int(number), "") if number.isdecimal() else (name, 0, number)


def _what_stands(work: StillToCut) -> PlanInForce:
    """Return what remains of the plan in force where there is not enough stock for the rest."""
    # A piece that came into the job since then has no place in the plan in force.
    known = work.to_cut.intersection(name for laid in work.in_force.sticks for name in laid.todo)
    in_force = to_be_had(work, keep(replace(work, to_cut=known)) or [])
    sticks = tuple(
        PlannedStick(
            name=stick.name,
            length=stick.length,
            origin=Origin.HAND,
            price=Fraction(0),
            todo=tuple(stick.todo),
        )
        for stick in in_force
    )
    placed = {name for stick in in_force for name in stick.todo}
    return PlanInForce(sticks, unplaced=tuple(sorted(work.to_cut - placed)))
