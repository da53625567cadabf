"""Plans a trim whose sticks are of several colour batches that the pieces of a room may not mix.

The plan without that rule is asked first: where it mixes none, it is the answer.  Otherwise each
group of pieces (a room, or a wall) is given a batch, and each batch is planned by itself: its
pieces, its sticks.

Why the bound holds: every plan gives each group one batch, and costs no less than the batches'
bounds together; where not every choice was looked at, no less than without the rule.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from itertools import product
from typing import Final, TypeAlias

from trimlang.planning.minimum_order import SoundPlan, holds_too_little, with_bound
from trimlang.record import record
from trimlang.stock.planner import QUICK, Effort
from trimlang.stock.problem import NoPlan, Part, Plan, Problem, Purchase, Status, Waste, Watch

MOST_LISTED: Final = 128
"""So many ways to give batches to groups are all looked at; of more, some that are near by."""
ROUNDS: Final = 3
"""How often one group after another is tried in another batch where there are too many ways."""

Given: TypeAlias = tuple[str, ...]
"""The batch of each group, in the order of the groups."""


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
class BatchWay:
    """A way to part the problem: the batch of each group, and where what mistakes need is kept.

    ``keeper`` is the batch that has room for a spoiled piece, ``spare_in`` the one that the spare
    is bought in; None where the problem asks for none.
    """

    given: Given
    keeper: str | None
    spare_in: str | None


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
        self._groups = sorted({_group(part) for part in problem.parts})
        self._batches = sorted({blank.batch for blank in problem.blanks})
        # The spare is bought, so it is asked of a batch that is sold.  Where several are, all of
        # it is asked of one, and then nothing is claimed of the other ways to have it.
        selling = sorted({blank.batch for blank in problem.blanks if not blank.on_hand})
        self._one_sells = len(selling) <= 1
        self._keepers = self._batches if problem.survive_loss else [None]
        self._spare_in = (selling or self._batches) if problem.spare else [None]
        self._shares: dict[Problem, BatchShare] = {}
        self._full: dict[Problem, Plan] = {}

    def best(self) -> tuple[Plan | None, int]:
        """Return the best plan found, and what every plan costs at least (0: not known)."""
        # Grows fast: eight rooms and two batches are 256 ways.
        listed = len(self._batches) ** len(self._groups) <= MOST_LISTED
        every = list(product(self._batches, repeat=len(self._groups))) if listed else self._near()
        best: Plan | None = None
        floors: list[int] = []
        # From the cheapest quick plan on; what a quick bound rules out is not planned in full.
        for way in sorted((way for given in every for way in self._ways(given)), key=self._dear):
            floor = self._floor(way)
            if floor is None:
                continue
            if best is None or floor < best.cost:
                plan = self._plan(way)
                if plan is not None and way == self._claimed(way):
                    floor = max(floor, plan.bound)
                if plan is not None and (best is None or plan.rank < best.rank):
                    best = plan
            floors.append(floor)
        return best, min(floors, default=0) if listed else 0

    def _ways(self, given: Given) -> list[BatchWay]:
        return [BatchWay(given, *kept) for kept in product(self._keepers, self._spare_in)]

    def _claimed(self, way: BatchWay) -> BatchWay:
        return way if self._one_sells else replace(way, spare_in=None)

    def _floor(self, way: BatchWay) -> int | None:
        """Return what plans of this way cost at least; None: there are none."""
        shares = [share for asked in (way, self._claimed(way)) for share in self._parted(asked)]
        if any(share.impossible for share in shares):
            return None
        # A batch without a quick plan may still have one, of any cost.
        claimed = shares[len(shares) // 2 :]
        return sum(share.quick.bound for share in claimed if share.quick is not None)

    def _parted(self, way: BatchWay) -> list[BatchShare]:
        shares = []
        for batch in self._batches:
            asked = self._asked(way, batch)
            if asked not in self._shares:
                self._shares[asked] = self._share(asked)
            shares.append(self._shares[asked])
        return shares

    def _asked(self, way: BatchWay, batch: str) -> Problem:
        own = {one for one, its in zip(self._groups, way.given, strict=True) if its == batch}
        return replace(
            self._problem,
            parts=tuple(
                replace(part, group="") for part in self._problem.parts if _group(part) in own
            ),
            blanks=tuple(blank for blank in self._problem.blanks if blank.batch == batch),
            spare=self._problem.spare if batch == way.spare_in else 0,
            survive_loss=batch == way.keeper,
            lost=self._problem.longest_lost,
        )

    def _share(self, asked: Problem) -> BatchShare:
        if not (asked.parts or asked.spare or asked.survive_loss):
            return BatchShare(asked, _nothing(asked))
        if _too_much(asked):
            return BatchShare(asked, None, impossible=True)
        plan = self._sound_plan(asked, effort=QUICK)
        return BatchShare(asked, plan if isinstance(plan, Plan) else None)

    def _near(self) -> list[Given]:
        """Return ways that one finds by moving one group at a time to another batch."""
        found: list[Given] = [(batch,) * len(self._groups) for batch in self._batches]
        best = min(found, key=self._dear_at_best)
        for _ in range(ROUNDS):
            before = best
            for at in range(len(self._groups)):
                # With the batch that it has, so that a group stays where no other is cheaper.
                others = [(*best[:at], batch, *best[at + 1 :]) for batch in self._batches]
                best = min(others, key=self._dear_at_best)
            found.append(best)
            if best == before:
                break
        return list(dict.fromkeys(found))

    def _dear(self, way: BatchWay) -> tuple[bool, int]:
        plans = [share.quick for share in self._parted(way)]
        return None in plans, sum(plan.cost for plan in plans if plan is not None)

    def _dear_at_best(self, given: Given) -> tuple[bool, int]:
        return min(map(self._dear, self._ways(given)))

    def _plan(self, way: BatchWay) -> Plan | None:
        """Return the batches' full plans as one; None where a batch has none."""
        plans: list[Plan] = []
        for share in self._parted(way):
            if share.quick is None:
                return None
            if share.problem not in self._full:
                self._full[share.problem] = self._full_plan(share.problem, share.quick)
            plans.append(self._full[share.problem])
        return _joined(self._problem, plans)

    def _full_plan(self, asked: Problem, quick: Plan) -> Plan:
        if not self._effort.prove or quick.bound == quick.cost:
            return quick
        full = self._sound_plan(asked, effort=self._effort)
        return full if isinstance(full, Plan) else quick


def _group(part: Part) -> tuple[str, str]:
    """Return what a part shares with those of its batch; a part of no group is alone."""
    return part.group, "" if part.group else part.id


def _too_much(problem: Problem) -> bool:
    """Tell whether a piece is longer than any stick, or all than all sticks that there are."""
    longest = max((blank.length for blank in problem.blanks), default=0) - 2 * problem.end_waste
    kept = problem.longest_lost if problem.survive_loss else 0
    if max(kept, *(part.length for part in problem.parts), 0) > longest:
        return True
    # Where one length can be bought without end, there is always enough.
    if any(blank.limit is None for blank in problem.blanks):
        return False
    return holds_too_little(problem, problem.blanks)


def _nothing(problem: Problem) -> Plan:
    return Plan(problem, sticks=(), purchases=(), cost=0, bound=0, status=Status.PROVEN)


def _joined(problem: Problem, plans: Sequence[Plan]) -> Plan:
    """Return the plans of all batches as one plan of the problem."""
    taken: Counter[str] = Counter()
    for plan in plans:
        taken.update({one.blank: one.packs for one in plan.purchases})
    return Plan(
        problem,
        sticks=tuple(stick for plan in plans for stick in plan.sticks),
        purchases=tuple(Purchase(key, packs) for key, packs in taken.items() if packs),
        cost=sum(plan.cost for plan in plans),
        bound=sum(plan.bound for plan in plans),
        # Each batch is planned for itself, which proves nothing of how pieces are shared out among
        # them.
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


__all__ = ["with_batches"]
