"""Plans with whole sticks to spare that can also replace any one piece that is spoiled.

Mostly a spare stick or a rest is long enough anyway.  Else there are these ways, each a problem of
its own with one more part that keeps the room: a rest as long as the longest piece, or a whole
stick of one length.  A stick that is bought and stays whole counts as spare too, so less of that is
asked for.  Every plan is of one of these ways, so the least of their bounds holds for all.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Final, TypeAlias

from trimlang.stock.mixes.buying import Buying
from trimlang.stock.packings.longest_first import quick_packing
from trimlang.stock.packings.packing import Packing
from trimlang.stock.problem import NoPlan, Part, Plan, Problem, Status
from trimlang.stock.sticks.timber import Timber, timber_of

Keeping: TypeAlias = Callable[[Problem, Part | None, int, int], Plan | NoPlan]
"""Plans a problem with room for one more part and so much spare, in one of so many shares of the
time."""

WAYS: Final = 12
"""With more ways only that of a rest is planned, and nothing is proven of the others."""


def with_both_kinds_of_spare(problem: Problem, planned: Keeping, *, proving: bool) -> Plan | NoPlan:
    """Return the plan of the way that costs least, and the least that any way costs."""
    # Half of the time is for the ways, which are seldom needed.
    plain = planned(replace(problem, survive_loss=False), None, problem.spare, 2)
    if isinstance(plain, NoPlan):
        return replace(plain, problem=problem)
    if plain.has_room_for_a_loss:
        return replace(plain, problem=problem)
    ways = list(_ways(problem))
    all_tried = len(ways) <= WAYS
    ways = ways if all_tried else ways[:1]
    answers = [planned(problem, part, spare, 2 * len(ways)) for part, spare in ways]
    plans = [answer for answer in answers if isinstance(answer, Plan)]
    # A part that stands for a whole stick may have come onto a longer one beside others.
    sound = [plan for plan in plans if _keeps_its_spare(plan)]
    if not sound:
        return NoPlan(problem, short_of_supply=True, sure=False)
    best = min(sound, key=lambda plan: plan.rank)
    cases = tuple(plan.certificate for plan in plans if plan.certificate is not None)
    bound, certificate = plain.bound, plain.certificate
    if all_tried and len(cases) == len(ways) and certificate is not None:
        bound = max(bound, min(best.cost, *(plan.bound for plan in plans)))
        if bound > plain.bound:
            certificate = replace(certificate, bound=bound, cases=cases)
    met = bound == best.cost
    # Ways that cost more say nothing of how many sticks are cut at this cost.
    as_cheap = [plan for plan in plans if plan.bound <= best.cost]
    known = met and len(plans) == len(ways) and all_tried and all(p in sound for p in as_cheap)
    return replace(
        best,
        bound=bound,
        certificate=certificate,
        stick_bound=min(
            len(best.sticks), *(plan.stick_bound for plan in as_cheap), plain.stick_bound
        )
        if known
        else 0,
        status=Status.PROVEN if met else Status.GAP if proving else Status.UNPROVEN,
        proof=(best.proof or plain.proof) if met else "",
    )


def kept_room(problem: Problem, length: int) -> Part:
    """Return a part of a length, of a name that no part of the problem has."""
    taken = {part.id for part in problem.parts}
    name = "reserve"
    while name in taken:
        name += "'"
    return Part(name, length)


def kept_whole(
    timber: Timber, buying: Buying, packing: Packing, reserve: Part
) -> tuple[Timber, Buying, Packing, Part]:
    """Return a packing no dearer with room kept on a stick that stays whole, so that fewer are cut.

    As it was, with its timber and the part that stands for the room, where a quick search finds
    none.
    """
    problem = replace(timber.problem, parts=timber.problem.parts[:-1])
    alone = any(
        len(pattern) == 1 and reserve.id in timber.sizes[pattern[0]].ids
        for _, pattern in packing.sticks
    )
    rooms = {timber.kinds[kind].room - problem.kerf for kind, _ in packing.sticks}
    for room in sorted(rooms) if not alone else ():
        if room >= reserve.length:
            whole = replace(reserve, length=room)
            other = timber_of(replace(problem, parts=(*problem.parts, whole)))
            bought = Buying(other)
            found = quick_packing(other, bought)
            if found is not None and found.rank <= packing.rank:
                return other, bought, found, whole
    return timber, buying, packing, reserve


def _ways(problem: Problem) -> Iterator[tuple[Part, int]]:
    """Yield the part that keeps the room, and the spare besides; see ``Certificate.cases``."""
    longest = problem.longest_lost
    yield kept_room(problem, longest), problem.spare
    for length, on_hand in sorted({(blank.length, blank.on_hand) for blank in problem.blanks}):
        room = length - 2 * problem.end_waste
        if room >= longest:
            spare = problem.spare if on_hand else max(problem.spare - length, 0)
            yield kept_room(problem, room), spare


def _keeps_its_spare(plan: Plan) -> bool:
    """Whether the sticks that stay whole are spare enough, and room is left for any one piece."""
    problem = plan.problem
    used = {blank.key: 0 for blank in problem.blanks}
    for stick in plan.sticks:
        used[stick.blank] += 1
    bought = dict.fromkeys(used, 0)
    for purchase in plan.purchases:
        bought[purchase.blank] += purchase.packs
    spare = sum(
        (bought[blank.key] * blank.pack - used[blank.key]) * blank.length
        for blank in problem.blanks
        if not blank.on_hand
    )
    return spare >= problem.spare and plan.has_room_for_a_loss


__all__ = ["kept_room", "kept_whole", "with_both_kinds_of_spare"]
