"""Plans a trim whose sticks are of several colour batches that the pieces of a room may not mix.

The plan without that rule is asked first: where it mixes none, it is the answer.  Otherwise each
group of pieces (a room, or a wall) is given a batch, and each batch is planned by itself: its
pieces, its sticks.

Why the bound holds: every plan gives each group one batch, and costs no less than the batches'
bounds together; where not every choice was looked at, no less than without the rule.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import product
from typing import Final, TypeAlias

from trimlang.planning.minimum_order import SoundPlan, holds_too_little, with_bound
from trimlang.record import record
from trimlang.stock.planner import QUICK, Effort
from trimlang.stock.problem import NoPlan, Plan, Problem, Purchase, Status, Waste, Watch

MOST_LISTED: Final = 128
"""So many ways to give batches to groups are all looked at; of more, some that are near by."""
ROUNDS: Final = 3
"""How often one group after another is tried in another batch where there are too many ways."""

Given: TypeAlias = tuple[str, ...]
"""The batch of each group, in the order of the groups."""
Own: TypeAlias = tuple[str, tuple[str, ...]]
"""A batch and the groups that are cut from it."""


def with_batches(
    problem: Problem, effort: Effort, watch: Watch | None, sound_plan: SoundPlan
) -> Plan | NoPlan:
    """Plan a problem with batches; ``sound_plan`` plans it without."""
    # Several plans are made on the way, each of a part of the pieces.
    part = replace(effort, seconds=effort.seconds / 4)
    free = replace(problem, parts=tuple(replace(one, group="") for one in problem.parts))
    mixed = sound_plan(free, effort=part, watch=watch)
    if isinstance(mixed, NoPlan):
        return replace(mixed, problem=problem)
    if not _mixes(problem, mixed):
        return replace(mixed, problem=problem)
    best, least = _BatchSearch(problem, part, sound_plan).best()
    if best is None:
        return NoPlan(problem, short_of_supply=True, sure=False)
    return with_bound(best, problem, max(mixed.bound, least), effort)


def _mixes(problem: Problem, plan: Plan) -> bool:
    """Tell whether some group's pieces are cut from more batches than one."""
    group_of = {part.id: part.group for part in problem.parts}
    batch_of = {blank.key: blank.batch for blank in problem.blanks}
    batches: dict[str, set[str]] = {}
    for stick in plan.sticks:
        for name in stick.parts:
            batches.setdefault(group_of[name], set()).add(batch_of[stick.blank])
    return any(len(found) > 1 for group, found in batches.items() if group)


@record
class BatchShare:
    """One batch's part of the problem, with the quick plan of it (None: none was found).

    ``impossible`` tells that its pieces are shown to be too long for its sticks.
    """

    problem: Problem
    quick: Plan | None
    impossible: bool = False


class _BatchSearch:
    """Gives batches to groups and plans each batch by itself."""

    def __init__(self, problem: Problem, effort: Effort, sound_plan: SoundPlan) -> None:
        self._problem = problem
        self._effort = effort
        self._sound_plan = sound_plan
        self._groups = sorted({part.group for part in problem.parts})
        self._batches = sorted({blank.batch for blank in problem.blanks})
        selling = {blank.batch for blank in problem.blanks if not blank.on_hand}
        # The spare is bought, so it is asked of a batch that is sold.  Where several are, all of
        # it is asked of one, and then nothing is claimed of the other ways to have it.
        self._spare_in = min(selling, default=self._batches[0])
        self._one_sells = len(selling) <= 1
        self._shares: dict[Own, BatchShare] = {}
        self._full: dict[Own, Plan | None] = {}

    def best(self) -> tuple[Plan | None, int]:
        """Return the best plan found, and what every plan costs at least (0: not known)."""
        # Grows fast: eight rooms and two batches are 256 ways.
        ways = len(self._batches) ** len(self._groups)
        listed = ways <= MOST_LISTED
        every = list(product(self._batches, repeat=len(self._groups))) if listed else self._near()
        able = sorted(
            (cost, given) for given in every if (cost := self._quick_cost(given)) is not None
        )
        unable = len(every) - len(able) - sum(self._is_impossible(given) for given in every)
        best: Plan | None = None
        floors: list[int] = []
        # From the cheapest quick plan on; what a quick bound rules out is not planned in full.
        for _, given in able:
            floor = sum(share.quick.bound for _, share in self._parted(given) if share.quick)
            if best is None or floor < best.cost:
                plan = self._plan(given)
                if plan is not None:
                    floor = max(floor, plan.bound)
                    if best is None or plan.rank < best.rank:
                        best = plan
            floors.append(floor)
        # A batch without a quick plan may still have one: then the ways are not all known.
        known = listed and not unable and self._one_sells
        return best, min(floors, default=0) if known else 0

    def _parted(self, given: Given) -> Iterator[tuple[Own, BatchShare]]:
        for batch in self._batches:
            own = (
                batch,
                tuple(one for one, its in zip(self._groups, given, strict=True) if its == batch),
            )
            if own not in self._shares:
                self._shares[own] = self._share(*own)
            yield own, self._shares[own]

    def _share(self, batch: str, groups: Sequence[str]) -> BatchShare:
        has_spare = batch == self._spare_in
        asked = replace(
            self._problem,
            parts=tuple(
                replace(part, group="") for part in self._problem.parts if part.group in groups
            ),
            blanks=tuple(blank for blank in self._problem.blanks if blank.batch == batch),
            spare=self._problem.spare if has_spare else 0,
            # A spoiled piece is cut again from the spare, which is in one batch only; whether it
            # does for the others is asked of the joined plan.
            survive_loss=self._problem.survive_loss and has_spare and bool(groups),
        )
        if not groups and not asked.spare:
            return BatchShare(asked, _nothing(asked))
        if _too_much(asked):
            return BatchShare(asked, None, impossible=True)
        plan = self._sound_plan(asked, effort=QUICK)
        return BatchShare(asked, plan if isinstance(plan, Plan) else None)

    def _quick_cost(self, given: Given) -> int | None:
        cost = 0
        for _, share in self._parted(given):
            if share.quick is None:
                return None
            cost += share.quick.cost
        return cost

    def _is_impossible(self, given: Given) -> bool:
        return any(share.impossible for _, share in self._parted(given))

    def _near(self) -> list[Given]:
        """Return ways that one finds by moving one group at a time to another batch."""
        found: list[Given] = [(batch,) * len(self._groups) for batch in self._batches]
        best = min(found, key=self._dear)
        for _ in range(ROUNDS):
            before = best
            for at in range(len(self._groups)):
                # With the batch that it has, so that a group stays where no other is cheaper.
                others = [(*best[:at], batch, *best[at + 1 :]) for batch in self._batches]
                best = min(others, key=self._dear)
            found.append(best)
            if best == before:
                break
        return list(dict.fromkeys(found))

    def _dear(self, given: Given) -> tuple[bool, int, Given]:
        cost = self._quick_cost(given)
        return cost is None, cost or 0, given

    def _plan(self, given: Given) -> Plan | None:
        """Return the batches' full plans as one; None where a spoiled piece finds no room."""
        plans: list[Plan] = []
        for own, share in self._parted(given):
            if own not in self._full:
                plan = share.quick
                if plan is not None and self._effort.prove and plan.bound < plan.cost:
                    full = self._sound_plan(share.problem, effort=self._effort)
                    plan = full if isinstance(full, Plan) else plan
                self._full[own] = plan
            known = self._full[own]
            if known is None:
                return None
            plans.append(known)
        return _joined(self._problem, plans)


def _too_much(problem: Problem) -> bool:
    """Tell whether a piece is longer than any stick, or all than all sticks that there are."""
    longest = max((blank.length for blank in problem.blanks), default=0) - 2 * problem.end_waste
    if any(part.length > longest for part in problem.parts):
        return True
    if any(blank.limit is None for blank in problem.blanks):
        return False
    return holds_too_little(problem, problem.blanks)


def _nothing(problem: Problem) -> Plan:
    return Plan(problem, sticks=(), purchases=(), cost=0, bound=0, status=Status.PROVEN)


def _joined(problem: Problem, plans: Sequence[Plan]) -> Plan | None:
    """Return the plans of all batches as one plan of the problem."""
    taken: Counter[str] = Counter()
    for plan in plans:
        taken.update({one.blank: one.packs for one in plan.purchases})
    joined = Plan(
        problem,
        sticks=tuple(stick for plan in plans for stick in plan.sticks),
        purchases=tuple(Purchase(key, packs) for key, packs in taken.items() if packs),
        cost=sum(plan.cost for plan in plans),
        bound=sum(plan.bound for plan in plans),
        status=Status.GAP,
        offcuts=tuple(rest for plan in plans for rest in plan.offcuts),
        waste=Waste(
            kerf=sum(plan.waste.kerf for plan in plans),
            ends=sum(plan.waste.ends for plan in plans),
            offcut=sum(plan.waste.offcut for plan in plans),
            scrap=sum(plan.waste.scrap for plan in plans),
        ),
        work=sum(plan.work for plan in plans),
    )
    return joined if not problem.survive_loss or joined.has_room_for_a_loss else None


__all__ = ["with_batches"]
