"""Plans a trim of which some sticks are sold together: a bundle of random lengths, whole or not.

So many bundles are supposed to be bought: then their sticks are there for nothing, no more than
the bundles hold, and the planner plans with them.  This is done for every choice of numbers of
bundles that may be the best.

Why the bound holds: every plan buys some numbers of bundles.  For numbers that were tried it costs
no less than the bundles and the bound of what was planned with them; for others no less than the
bundles alone, and no less than where each length can be had by itself, at its share of the price.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

from trimlang.planning.bundles import SoldAsOne, sold_as_one
from trimlang.planning.minimum_order import SoundPlan, with_bound
from trimlang.stock.planner import QUICK, Effort
from trimlang.stock.problem import NoPlan, Plan, Problem, Purchase, Watch

MOST_TRIED: Final = 60
"""So many choices of numbers of bundles are planned."""
MOST_LISTED: Final = 5_000
"""So many are listed, from the cheapest, to find those."""


def with_bundles(
    problem: Problem, effort: Effort, watch: Watch | None, sound_plan: SoundPlan
) -> Plan | NoPlan:
    """Plan a problem with bundles; ``sound_plan`` plans it without."""
    bundles = sold_as_one(blank for blank in problem.blanks if blank.bundle)
    # Many plans are made on the way, so that each gets only a part of the time.
    part = replace(effort, seconds=effort.seconds / 4)
    # As if each length could be had by itself at its share: no plan with whole bundles costs less,
    # so its bound holds for all.
    apart = replace(problem, blanks=tuple(replace(blank, bundle="") for blank in problem.blanks))
    relaxed = sound_plan(apart, effort=part, watch=watch)
    if isinstance(relaxed, NoPlan):
        return replace(relaxed, problem=problem)
    best: Plan | None = None
    # The least that any plan costs whose numbers were not ruled out, and of those not tried.
    least: int | None = None
    tried = 0
    left = _choices(bundles, problem)
    for cost, numbers in left:
        floor = max(cost, relaxed.bound)
        if best is not None and floor >= best.cost:
            # The choices come cheapest first: neither this nor any behind it can be better.
            least = floor if least is None else min(least, floor)
            break
        # What was not tried may still cost as little as this, and the bound must say so.
        if tried >= MOST_TRIED:
            least = floor if least is None else min(least, floor)
            break
        tried += 1
        found = _with_numbers(problem, bundles, numbers, best, part, sound_plan)
        if found is None:
            continue
        plan, bound = found
        bound = max(bound, relaxed.bound)
        least = bound if least is None else min(least, bound)
        if plan is not None and (best is None or plan.rank < best.rank):
            best = plan
    if best is None:
        return NoPlan(problem, short_of_supply=True, sure=tried < MOST_TRIED)
    return with_bound(best, problem, best.cost if least is None else least, effort)


def _choices(
    bundles: Sequence[SoldAsOne], problem: Problem
) -> Iterator[tuple[int, tuple[int, ...]]]:
    """Yield numbers of bundles with what they cost, cheapest first.

    More bundles of one kind than there are pieces, spare and least order are of no use.
    """
    # How many of each kind are worth looking at.
    useful: list[int] = []
    for one in bundles:
        supply = one.most({})
        most = len(problem.parts) + problem.spare // max(one.length, 1) + 1
        useful.append(most if supply is None else min(most, supply))
    reached: dict[tuple[int, ...], int] = {(0,) * len(bundles): 0}
    done: set[tuple[int, ...]] = set()
    while reached and len(done) < MOST_LISTED:
        cost, numbers = min((cost, numbers) for numbers, cost in reached.items())
        del reached[numbers]
        done.add(numbers)
        yield cost, numbers
        for at, one in enumerate(bundles):
            more = (*numbers[:at], numbers[at] + 1, *numbers[at + 1 :])
            # Cheapest first, as in a shortest path: one bundle more of each kind from every choice
            # reached.
            if more[at] <= useful[at] and more not in done:
                reached[more] = cost + one.price


def _with_numbers(
    problem: Problem,
    bundles: Sequence[SoldAsOne],
    numbers: tuple[int, ...],
    best: Plan | None,
    effort: Effort,
    sound_plan: SoundPlan,
) -> tuple[Plan | None, int] | None:
    """Return the plan with so many bundles and its bound; None: there is none.

    Where a quick bound shows that it costs more than the best, the plan is not looked for.
    """
    held = {
        blank.key: number * blank.pack
        for one, number in zip(bundles, numbers, strict=True)
        for blank in one.blanks
    }
    price = sum(one.price * number for one, number in zip(bundles, numbers, strict=True))
    given = replace(
        problem,
        blanks=tuple(
            blank
            if not blank.bundle
            else replace(blank, price=0, pack=1, limit=held[blank.key], bundle="")
            for blank in problem.blanks
        ),
    )
    # A look that costs little: most choices are ruled out by their bound alone.
    if best is not None and effort.prove:
        quick = sound_plan(given, effort=QUICK)
        if isinstance(quick, Plan) and quick.bound + price >= best.cost:
            return None, quick.bound + price
    plan = sound_plan(given, effort=effort)
    if isinstance(plan, NoPlan):
        # Not sure that there is none: then it may cost as little as the bundles alone.
        return None if plan.sure else (None, price)
    # What was there for nothing is bought in bundles after all, whether it was cut or not.
    packs: Counter[str] = Counter(
        {one.blank: one.packs for one in plan.purchases if one.blank not in held}
    )
    for one, number in zip(bundles, numbers, strict=True):
        packs.update({blank.key: number for blank in one.blanks})
    bought = tuple(Purchase(key, count) for key, count in packs.items() if count)
    whole = replace(plan, problem=problem, purchases=bought, cost=plan.cost + price)
    return whole, plan.bound + price


__all__ = ["with_bundles"]
