"""The entrance to the stock planner: ``plan_stock``."""

from __future__ import annotations

from dataclasses import replace
from time import thread_time

from trimlang.record import record
from trimlang.stock.coarser_grid import for_a_bound, for_a_plan
from trimlang.stock.mixes.buying import Buying
from trimlang.stock.packings.laying import plan_of
from trimlang.stock.packings.longest_first import plain_packing, quick_packing
from trimlang.stock.packings.packing import Incumbent, Packing, better, packing_of
from trimlang.stock.packings.rests import tidied
from trimlang.stock.problem import NoPlan, Part, Plan, Problem, Watch
from trimlang.stock.spare_for_a_loss import kept_room, kept_whole, with_both_kinds_of_spare
from trimlang.stock.sticks.certifying import certificate_of, of_finer_grid
from trimlang.stock.sticks.floor import cost_floor, count_floor, length_worth
from trimlang.stock.sticks.timber import Timber, timber_of


@record
class Effort:
    """How hard to try.

    ``prove`` asks for a proof of least cost; ``seconds`` is an outer limit: how long
    this thread may work, not counting other work of the machine.  A search that ends
    before the limit gives the same plan on every machine.
    """

    prove: bool = True
    seconds: float = 10.0


CELLS = 40_000_000
"""Sizes times units of length on the longest stick: with more of them the grid is made coarser.

A length that no tape shows (a millionth of a foot) splits every stick so finely.
"""
GRIDS = (4_000_000, 32_000_000)
"""The same on coarser grids, each tried where the one before leaves the cost and the bound apart.

The first is a 256th of an inch for sixty sizes on sticks of 16 ft.
"""

QUICK = Effort(prove=False)
"""No proof: the quick plan, with the quick bound beside it."""
FULL = Effort()
"""The default: a proof, or the best plan with its gap after ten seconds."""


def plan_stock(
    problem: Problem, *, effort: Effort = FULL, watch: Watch | None = None
) -> Plan | NoPlan:
    """Cut every part from the sticks that cost least.

    ``watch``, if given, is called with the cost (None: no plan yet) and the bound
    each time the search moves on, for a progress bar.

    Returns:
        A plan with its cost, its proven lower bound and what that proves, or ``NoPlan`` with the
        parts that no stick holds, or the news that the supply runs out.

    Raises:
        ValueError: where the problem breaks its own rules (see ``checked``).
    """
    checked(problem)
    # One stick may serve for a loss and as the spare, or two are cheaper: both are planned.
    if problem.survive_loss and problem.spare:

        def planned(asked: Problem, room: Part | None, spare: int, share: int) -> Plan | NoPlan:
            some = replace(effort, seconds=effort.seconds / share)
            return _planned(asked, room, spare, some, watch)

        return with_both_kinds_of_spare(problem, planned, proving=effort.prove)
    return _planned(problem, _reserve(problem), problem.spare, effort, watch)


def _planned(
    problem: Problem, reserve: Part | None, spare: int, effort: Effort, watch: Watch | None
) -> Plan | NoPlan:
    """Plan a problem with room kept for one more part and so much spare, whatever it asks itself.

    The room is kept on a rest, or on a stick that stays whole if nothing else is cut from it.
    """
    timber = _with_reserve(replace(problem, spare=spare), reserve)
    too_long = _too_long(problem, timber)
    if too_long:
        return NoPlan(problem, too_long=too_long)
    buying = Buying(timber)
    # A bound that costs nothing.
    by_length = length_worth(timber)
    plain = plain_packing(timber, buying)
    best = Incumbent(
        # What a good hand would do, kept where the quick plan is no better.
        packing=better(plain, quick_packing(timber, buying)),
        bound=cost_floor(timber, by_length),
        stick_bound=count_floor(timber, by_length),
        worths=[by_length],
        reason="the length of the pieces",
    )
    # Where the lengths alone prove the quick plan, nothing is searched.
    met = best.packing is not None and best.packing.rank <= (best.bound, best.stick_bound)
    if best.packing is None or (effort.prove and not met):
        ends = thread_time() + effort.seconds
        if watch is not None:
            watch(None if best.packing is None else best.packing.cost, best.bound)
        if _can_be_tabled(timber):
            _prove(timber, buying, best, ends, watch)
        else:
            _prove_on_coarser_grids(timber, buying, best, ends)
    packing = best.packing
    if packing is None:
        return NoPlan(problem, short_of_supply=True, sure=best.supply_short)
    # Whatever a bound was made from, it is never shown above a plan that was found.
    bound = min(best.bound, packing.cost)
    certificate = best.certificate or certificate_of(timber, bound, best.worths, best.racks)
    if reserve is not None:
        timber, buying, packing, reserve = kept_whole(timber, buying, packing, reserve)
    return plan_of(
        problem,
        timber,
        buying,
        # Room in reserve is not tidied away: a move could use up the very rest that was kept.
        tidied(timber, packing) if reserve is None else packing,
        reserve=None if reserve is None else reserve.id,
        bound=bound,
        stick_bound=best.stick_bound,
        plain=plain,
        proof=best.reason,
        certificate=certificate,
        work=best.work,
        proving=effort.prove,
    )


def quick_plan(problem: Problem) -> Packing | None:
    """Return the quick plan's packing alone, to compare it with others; None: there is none."""
    timber = _with_reserve(problem, _reserve(problem))
    return None if _too_long(problem, timber) else quick_packing(timber, Buying(timber))


def quick_offcuts(problem: Problem) -> list[int]:
    """Return what the quick plan leaves of its sticks, the longest first; empty without a plan."""
    timber = _with_reserve(problem, _reserve(problem))
    packing = None if _too_long(problem, timber) else quick_packing(timber, Buying(timber))
    if packing is None:
        return []
    left = (
        timber.kinds[kind].room - sum(timber.sizes[size].weight for size in pattern)
        for kind, pattern in tidied(timber, packing).sticks
    )
    # The cut that frees the rest turns a kerf of it to dust.
    return sorted((max(rest - problem.kerf, 0) for rest in left), reverse=True)


def _can_be_tabled(timber: Timber) -> bool:
    """Return whether the search's tables stay small, by sizes and the longest stick's room."""
    room = max((kind.room for kind in timber.kinds), default=0)
    return len(timber.sizes) * (room + 1) <= CELLS


def _prove_on_coarser_grids(timber: Timber, buying: Buying, best: Incumbent, ends: float) -> None:
    """Search for a plan and a bound in coarser steps.

    The grids grow finer until cost and bound meet, or this thread's CPU time reaches ``ends``.
    """
    best.supply_short = False
    room = max(kind.room for kind in timber.kinds)
    for cells in GRIDS:
        # As many units in one step as bring the tables down to so many cells, rounded up.
        step = -(-len(timber.sizes) * (room + 1) // cells)
        # Every stick would be shorter than one step.
        if room < step:
            continue
        # Half of the time for a plan, the other half for a bound.
        half = Effort(seconds=max(ends - thread_time(), 0.0) / 2)
        # Pieces rounded up give a plan that fits, rounded down a bound that holds.
        found = plan_stock(for_a_plan(timber.problem, step), effort=half)
        if isinstance(found, Plan):
            best.take(_packing_like(found, timber, buying))
        # A plan that costs no more than its bound needs no second search.
        if best.packing is not None and best.packing.cost <= best.bound:
            return
        rounded = for_a_bound(timber.problem, step)
        least = plan_stock(rounded, effort=half)
        if isinstance(least, Plan) and least.bound > best.bound and least.certificate is not None:
            best.raise_bound(least.bound, least.proof or "a coarser grid")
            best.certificate = of_finer_grid(least.certificate, rounded, timber.problem, step)
        if best.packing is not None and best.packing.cost <= best.bound:
            return


def _packing_like(plan: Plan, timber: Timber, buying: Buying) -> Packing | None:
    """Return the packing of the same parts on sticks of the same blanks."""
    sizes = {part: number for number, size in enumerate(timber.sizes) for part in size.ids}
    kinds = {offer.key: k for k, kind in enumerate(timber.kinds) for offer in kind.offers}
    return packing_of(
        timber,
        buying,
        (
            (kinds[stick.blank], tuple(sorted(sizes[part] for part in stick.parts)))
            for stick in plan.sticks
        ),
    )


def _prove(
    timber: Timber, buying: Buying, best: Incumbent, ends: float, watch: Watch | None
) -> None:
    """Search with a solver until this thread's CPU time reaches ``ends``."""
    # The solver is slow to load, and most jobs never come here.
    from trimlang.stock.search.proof import prove

    prove(timber, buying, best, lambda: ends - thread_time(), watch)


def _with_reserve(problem: Problem, reserve: Part | None) -> Timber:
    """Return the timber of the problem, with room for a piece kept in reserve if there is one."""
    if reserve is None:
        return timber_of(problem)
    return timber_of(replace(problem, parts=(*problem.parts, reserve)))


def _too_long(problem: Problem, timber: Timber) -> tuple[str, ...]:
    """Return the parts that no stick holds."""
    room = max((kind.room for kind in timber.kinds), default=0)
    return tuple(sorted(part.id for part in problem.parts if part.length + problem.kerf > room))


def _reserve(problem: Problem) -> Part | None:
    """Return a piece as long as the longest, to keep room for if any one may be spoiled.

    Only one piece is lost, so room for the longest is room for any.
    """
    if not problem.survive_loss or not problem.longest_lost:
        return None
    return kept_room(problem, problem.longest_lost)


def checked(problem: Problem) -> None:
    """Refuse a problem that breaks its own rules.

    Raises:
        ValueError: two of one name; a length, pack or price out of range; leans past the piece.
    """
    ids = [part.id for part in problem.parts]
    keys = [blank.key for blank in problem.blanks]
    if len(set(ids)) < len(ids) or len(set(keys)) < len(keys):
        raise ValueError("two parts or two blanks have the same name")
    if min(problem.kerf, problem.end_waste, problem.spare, problem.short, problem.usable) < 0:
        raise ValueError("kerf, end waste, spare and thresholds are not negative")
    for part in problem.parts:
        # Ends never cross: a piece whose did would let its neighbours lie closer than without it.
        off_face = max(part.left_lean, 0) + max(-part.right_lean, 0)
        off_back = max(-part.left_lean, 0) + max(part.right_lean, 0)
        if part.length <= 0 or max(off_face, off_back) > part.length:
            raise ValueError(f"part {part.id} has no length, or ends that cross")
    for blank in problem.blanks:
        if blank.length <= 0 or blank.price < 0 or blank.pack < 1:
            raise ValueError(f"blank {blank.key} has no length, or a price or pack below nothing")
        if blank.limit is not None and blank.limit < 0:
            raise ValueError(f"blank {blank.key} has a limit below nothing")


__all__ = [
    "FULL",
    "QUICK",
    "Effort",
    "Watch",
    "checked",
    "plan_stock",
    "quick_offcuts",
    "quick_plan",
]
