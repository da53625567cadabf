"""Plans a trim of which the yard sells no less than so many sticks, or so much money's worth.

A plan buys nothing, or no less than the minimum.  The plan without any minimum is asked first:
where it buys enough, it is the answer.  Otherwise sticks are added to it, and the same is tried
with every price lowered by one amount ``l`` a stick, which makes buying more sticks look good.

Why the bound holds: where at least ``m`` sticks are bought, the price of a plan is what it costs
at the lowered prices, and ``l`` for each stick bought: no less than the bound at lowered prices
and ``l * m`` together (a Lagrangian bound: M. L. Fisher, "The Lagrangian relaxation method for
solving integer programming problems", Management Science 27, 1981).  Where at least ``s`` is
spent, the sticks cost no less than the least sum of prices that is ``s`` or more.  Where nothing
is bought, the bound of the plan without the yard holds.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace
from typing import Final, Protocol

from trimlang.planning.bundles import sold_as_one
from trimlang.planning.covering import Addition, is_exact, least_cover
from trimlang.stock.planner import Effort
from trimlang.stock.problem import Blank, NoPlan, Plan, Problem, Purchase, Status, Watch

STEPS: Final = 4
"""How many amounts are tried by which prices are lowered."""


class SoundPlan(Protocol):
    """Plans a problem; its bound is one that was checked."""

    def __call__(
        self, problem: Problem, *, effort: Effort, watch: Watch | None = None
    ) -> Plan | NoPlan:
        """Return the plan, or why there is none."""


def with_minimum(
    problem: Problem, effort: Effort, watch: Watch | None, sound_plan: SoundPlan
) -> Plan | NoPlan:
    """Plan a problem whose yard has a minimum; ``sound_plan`` plans it without."""
    # The planner itself knows nothing of minimums, so each question to it is one without.
    free = replace(problem, least_sticks=0, least_spent=0)
    # One plan as it is, one without the yard, and one for each amount: together they take the time
    # of one.
    part = replace(effort, seconds=effort.seconds / (STEPS + 2))
    first = sound_plan(free, effort=part, watch=watch)
    if isinstance(first, NoPlan):
        return replace(first, problem=problem)
    # What costs least without a minimum, and meets it, costs least with it.
    if _enough(problem, first.purchases):
        return replace(first, problem=problem)
    found = [_filled_up(problem, first)]
    # Without the yard: what is on hand may do, if dearer than buying a little.
    shop = tuple(blank for blank in problem.blanks if blank.on_hand)
    least_without: int | None = None
    # A spare is bought, so with one asked for the yard cannot be left out.
    if shop and not problem.spare:
        without = sound_plan(replace(free, blanks=shop), effort=part, watch=watch)
        if isinstance(without, Plan):
            found.append(replace(without, problem=problem))
            least_without = without.bound
        # No plan was found, which proves nothing unless the shop plainly holds too little.
        elif not holds_too_little(problem, shop):
            least_without = first.bound
    least_with = max(first.bound, _least_spent(problem))
    low, high = 0, _lowest_rate(problem)
    amount = high
    for _ in range(STEPS if problem.least_sticks else 0):
        lowered = sound_plan(_lowered(free, amount), effort=part, watch=watch)
        if isinstance(lowered, NoPlan):
            break
        # The Lagrangian bound of the docstring, at this amount.
        least_with = max(least_with, lowered.bound + amount * problem.least_sticks)
        plan = _at_own_prices(problem, lowered)
        found.append(_filled_up(problem, plan))
        sticks = _sticks(problem, plan.purchases)
        if sticks == problem.least_sticks or (sticks < problem.least_sticks and amount == high):
            break
        # Too many sticks: the amount was too high.
        low, high = (low, amount) if sticks > problem.least_sticks else (amount, high)
        if (low + high) // 2 in (low, high):
            break
        amount = (low + high) // 2
    plans = [plan for plan in found if plan is not None]
    # What has to be bought anyway is cut before anything else costs money.
    orders = [{one.blank: one.packs for one in plan.purchases} for plan in plans]
    orders.append(_least_order(problem))
    for order in orders if not problem.has_bundles else ():
        filled = _from_order(problem, order, part, sound_plan)
        if filled is not None:
            plans.append(filled)
    if not plans:
        return NoPlan(problem, short_of_supply=True, sure=False)
    # A plan either buys or does not; what holds for all is the smaller of the two.
    bound = least_with if least_without is None else min(least_with, least_without)
    best = min(plans, key=lambda plan: plan.rank)
    return with_bound(best, problem, bound, effort)


def with_bound(plan: Plan, problem: Problem, bound: int, effort: Effort) -> Plan:
    """Return a plan that was found by way of other problems, with the bound that they came to."""
    bound = min(bound, plan.cost)
    status = Status.GAP if effort.prove else Status.UNPROVEN
    return replace(
        plan,
        problem=problem,
        bound=bound,
        status=Status.PROVEN if bound == plan.cost else status,
        # What is known of sticks and of the usual way is of another problem.
        stick_bound=0,
        plain=None,
        proof="",
        certificate=None,
    )


def _for_sale(problem: Problem) -> tuple[Blank, ...]:
    return tuple(blank for blank in problem.blanks if not blank.on_hand)


def _sticks(problem: Problem, purchases: Iterable[Purchase]) -> int:
    packs = {blank.key: blank.pack for blank in _for_sale(problem)}
    return sum(one.packs * packs.get(one.blank, 0) for one in purchases)


def _spent(problem: Problem, purchases: Iterable[Purchase]) -> int:
    prices = {blank.key: blank.price for blank in _for_sale(problem)}
    return sum(one.packs * prices.get(one.blank, 0) for one in purchases)


def _enough(problem: Problem, purchases: Sequence[Purchase]) -> bool:
    sticks = _sticks(problem, purchases)
    spent = _spent(problem, purchases)
    return not sticks or (sticks >= problem.least_sticks and spent >= problem.least_spent)


def _lowest_rate(problem: Problem) -> int:
    """Return the least that a stick costs at the yard, down to a whole coin."""
    return min((blank.price // blank.pack for blank in _for_sale(problem)), default=0)


def _lowered(problem: Problem, amount: int) -> Problem:
    """Return the problem with ``amount`` off each stick of the yard; no price is below nothing."""
    return replace(
        problem,
        blanks=tuple(
            blank if blank.on_hand else replace(blank, price=blank.price - amount * blank.pack)
            for blank in problem.blanks
        ),
    )


def _at_own_prices(problem: Problem, plan: Plan) -> Plan:
    prices = {blank.key: blank.price for blank in problem.blanks}
    cost = sum(prices[one.blank] * one.packs for one in plan.purchases)
    return replace(plan, problem=problem, cost=cost)


def _filled_up(problem: Problem, plan: Plan) -> Plan | None:
    """Return the plan with as many sticks bought besides as the minimum asks for.

    None: the yard has not so many.
    """
    bought = Counter({one.blank: one.packs for one in plan.purchases})
    # Sticks first, then money: sticks bought for their number may be money enough.
    least = problem.least_sticks - _sticks(problem, plan.purchases)
    more = _added(problem, least_cover(_choices(problem, _pack, bought), least))
    if more is None:
        return None
    bought += more
    least = problem.least_spent - _spent(problem, _as_purchases(bought))
    more = _added(problem, least_cover(_choices(problem, _price, bought), least))
    if more is None:
        return None
    bought += more
    prices = {blank.key: blank.price for blank in problem.blanks}
    cost = sum(prices[key] * packs for key, packs in bought.items())
    return replace(plan, problem=problem, purchases=_as_purchases(bought), cost=cost)


def _choices(
    problem: Problem, gain: Callable[[Blank], int], bought: Mapping[str, int]
) -> list[Addition]:
    """Return what the yard has besides the packs that are bought already."""
    return [
        Addition(
            gain=sum(gain(blank) for blank in one.blanks), cost=one.price, most=one.most(bought)
        )
        for one in sold_as_one(_for_sale(problem))
    ]


def _added(problem: Problem, counts: tuple[int, ...] | None) -> Counter[str] | None:
    """Return the packs, by blank, of so many of what the yard sells by itself."""
    if counts is None:
        return None
    return Counter(
        {
            blank.key: count
            for one, count in zip(sold_as_one(_for_sale(problem)), counts, strict=True)
            for blank in one.blanks
            if count
        }
    )


def _pack(blank: Blank) -> int:
    return blank.pack


def _price(blank: Blank) -> int:
    return blank.price


def _as_purchases(bought: Mapping[str, int]) -> tuple[Purchase, ...]:
    return tuple(Purchase(key, packs) for key, packs in bought.items() if packs)


def _least_order(problem: Problem) -> dict[str, int]:
    """Return the packs of each blank that come to the least sum that is enough; empty: none do."""
    counts = least_cover(_choices(problem, _price, {}), problem.least_spent)
    return dict(_added(problem, counts) or {})


def _from_order(
    problem: Problem, order: Mapping[str, int], effort: Effort, sound_plan: SoundPlan
) -> Plan | None:
    """Return a plan that buys so many packs of each blank first; None: they are no whole order."""
    packs = {blank.key: order.get(blank.key, 0) for blank in _for_sale(problem)}
    bought = _as_purchases(packs)
    if not bought or not _enough(problem, bought):
        return None
    # What the order has is paid already: to the planner it costs nothing.
    own = {f"{blank.key}, bought": blank for blank in _for_sale(problem) if packs[blank.key]}
    paid = tuple(
        replace(blank, key=key, price=0, pack=1, limit=packs[blank.key] * blank.pack)
        for key, blank in own.items()
    )
    # What is in the order cannot be bought a second time.
    others = tuple(
        replace(blank, limit=blank.limit - packs.get(blank.key, 0) * blank.pack)
        if blank.limit is not None
        else blank
        for blank in problem.blanks
    )
    asked = replace(problem, blanks=(*paid, *others), least_sticks=0, least_spent=0)
    plan = sound_plan(asked, effort=effort)
    if isinstance(plan, NoPlan):
        return None
    # Beside the order the plan may have bought more.
    more = Counter({one.blank: one.packs for one in plan.purchases if one.blank not in own})
    prices = {blank.key: blank.price for blank in problem.blanks}
    return replace(
        plan,
        problem=problem,
        sticks=tuple(
            replace(one, blank=own[one.blank].key if one.blank in own else one.blank)
            for one in plan.sticks
        ),
        purchases=_as_purchases(more + Counter(packs)),
        cost=plan.cost + sum(prices[key] * count for key, count in packs.items()),
    )


def _least_spent(problem: Problem) -> int:
    """Return the least sum of the yard's prices that is no less than its minimum."""
    choices, least = _choices(problem, _price, {}), problem.least_spent
    # Only an exact cover bounds what must be spent; one that is nearly so would claim too much.
    counts = least_cover(choices, least) if is_exact(choices, least) else None
    if counts is None:
        return least
    return sum(one.cost * count for one, count in zip(choices, counts, strict=True))


def holds_too_little(problem: Problem, blanks: Iterable[Blank]) -> bool:
    """Tell whether limited sticks are shorter together than the pieces, shared mitres and all."""
    room = sum(
        max(blank.length - 2 * problem.end_waste, 0) * (blank.limit or 0) for blank in blanks
    )
    # Two ends share the smaller lean at most, so no piece gives more than half of both its leans.
    # In doubled units, so that half a lean stays a whole number.
    twice = sum(
        2 * part.length - abs(part.left_lean) - abs(part.right_lean) for part in problem.parts
    )
    return twice > 2 * room


__all__ = ["SoundPlan", "holds_too_little", "with_bound", "with_minimum"]
