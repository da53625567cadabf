"""Plans one purchase for several jobs, which never costs more than buying for each alone.

All pieces of one trim are planned as if one job held them.  Each job is also planned by itself.
Where those plans together are possible with the stock, and cost less than what the search for
all found within its effort, they are used as they are.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING

from trimlang.diagnostics import Diagnostic, has_errors, say
from trimlang.diagnostics.source import Source
from trimlang.joinery.piece import Piece
from trimlang.joinery.pieces import joinery
from trimlang.planning.first_plan import first_plan
from trimlang.planning.planned_job import Planned, with_offers_of_log
from trimlang.planning.supplier_order import fill_up_orders
from trimlang.planning.wrong_plan import reject_faults
from trimlang.shared_order.flat import Flat
from trimlang.shared_order.log_of_site import places_of, with_log
from trimlang.shared_order.shared_check import faults
from trimlang.shared_order.shared_result import SharedOrder, shared_order, tagged, untagged
from trimlang.shared_order.side_by_side import can_be_had, side_by_side
from trimlang.site_log.cut_lengths import with_joints_of_log
from trimlang.site_log.under_way import under_way
from trimlang.survey.job import Job, Rest, Trim

if TYPE_CHECKING:
    from trimlang.planning.layout import TrimPlan
    from trimlang.stock.planner import Effort, Watch


def plan_together(
    pool: Sequence[Flat],
    effort: Effort | None = None,
    watch: Callable[[str], Watch | None] | None = None,
    log: Source | None = None,
) -> SharedOrder:
    """Plan the purchase of all flats together.

    ``effort`` is the limit for all flats together, and again for each flat by itself.  ``log``
    is the site's log: what is still to cut is then planned from the sticks that are left.

    Raises:
        WrongPlanError: a plan breaks its own rules.
    """
    shared, wrong = joined_job(pool), tuple[Diagnostic, ...]()
    if log is not None:
        shared, wrong = with_log(shared, log, pool)
        # What is left is not known from a log that errs, and a plan of all would be thrown away.
        if has_errors(wrong):
            return shared_order(pool, shared, [flat.pieces for flat in pool], (), wrong, log=log)
    # Two flats may both have a "Bath", so rooms carry their flat's tag while all jobs are one.
    names = {f"{flat.tag} {room.name}": room.name for flat in pool for room in flat.job.rooms}
    # All rooms laid out as one job, so that a stick may hold pieces of several flats.
    joined, spliced, _ = joinery(shared)
    if shared.log:
        joined, spliced = with_joints_of_log(shared, joined, spliced)
    planned = first_plan(with_offers_of_log(shared), joined, spliced, effort, watch)
    pieces = planned.pieces
    pooled = {plan.trim: plan for plan in planned.plans}
    # This is what makes the promise hold: without the flats' own plans, a search that ran out of
    # time could cost more than buying apart.
    own = [first_plan(flat.job, flat.pieces, flat.splices, effort, None) for flat in pool]
    chosen: dict[str, TrimPlan] = {}
    apart: list[str] = []
    scarce: list[str] = []
    lost: list[Diagnostic] = []
    for trim in shared.trims:
        parts = [
            (plan, tuple(one for one in flat.pieces if one.trim == trim.name))
            for flat in own
            for plan in flat.plans
            if plan.trim == trim.name
        ]
        # A flat without this trim has no plan for it, and none is missing.
        wanted = sum(any(one.trim == trim.name for one in flat.pieces) for flat in pool)
        if not wanted:
            continue
        every = len(parts) == wanted
        together = every and can_be_had(trim, [plan for plan, _ in parts])
        if every and not together:
            scarce.append(trim.name)
        best = pooled.get(trim.name)
        # At equal cost the plan with fewer sticks is taken, as within one job.
        if together and (best is None or _rank(parts) < (best.cost, len(best.sticks))):
            best = side_by_side(shared, trim, parts, best, pieces)
            apart.append(trim.name)
        if best is None:
            lost.append(say("T663", trim.span, trim=trim.name, jobs=wanted))
            continue
        chosen[trim.name] = best
    cut = _cut(pool, pieces, [flat.pieces for flat in own], names, set(apart))
    _verify(shared, cut, chosen)
    plans = tuple(chosen.values())
    if log is None or has_errors(lost):
        plans, short = fill_up_orders(shared, plans)
        lost.extend(short)
        alone = [
            None if one.problems else _alone(flat.job, one)
            for flat, one in zip(pool, own, strict=True)
        ]
        return shared_order(
            pool,
            shared,
            cut,
            plans,
            (*wrong, *lost),
            alone=alone,
            apart=tuple(apart),
            scarce=tuple(scarce),
            log=log,
        )
    first = replace(
        planned,
        pieces=tagged(pool, cut),
        plans=plans,
        places=places_of(planned, own, set(apart)),
    )
    # What buying apart would have cost is known for a plan of the whole site only.
    as_cut, plans, found, progress = under_way(shared, first, effort, watch)
    return shared_order(
        pool, shared, untagged(pool, as_cut), plans, (*wrong, *found), log=log, progress=progress
    )


def _alone(job: Job, planned: Planned) -> Fraction:
    """Return what a flat would cost by itself, with its own least orders."""
    plans, _ = fill_up_orders(job, planned.plans)
    return sum((plan.cost for plan in plans), Fraction(0))


def joined_job(pool: Sequence[Flat]) -> Job:
    """Return all flats as one job: every room, each trim once, all the offcuts on hand.

    Where several jobs include one file, the offcuts that its lines state are the same offcuts
    and count once.
    """
    trims: dict[str, Trim] = {}
    counted_by: dict[tuple[Path, int, int], str] = {}
    for flat in pool:
        for trim in flat.job.trims:
            rests = tuple(rest for rest in trim.rests if _is_new(flat, rest, counted_by))
            if trim.name not in trims:
                trims[trim.name] = replace(trim, rests=rests)
                continue
            # The first job's lines are kept. That the others say the same was checked before
            # (agreement.py).
            known = trims[trim.name]
            offers = known.offers or trim.offers
            trims[trim.name] = replace(known, offers=offers, rests=known.rests + rests)
    rooms = tuple(
        replace(room, name=f"{flat.tag} {room.name}") for flat in pool for room in flat.job.rooms
    )
    first = pool[0].job
    others = len(pool) - 1
    name = f"{first.name} and {others} more" if others else first.name
    return replace(first, name=name, trims=tuple(trims.values()), rooms=rooms)


def _is_new(flat: Flat, rest: Rest, counted_by: dict[tuple[Path, int, int], str]) -> bool:
    place = ((flat.folder / rest.span.file).resolve(), rest.span.line, rest.span.column)
    return counted_by.setdefault(place, flat.tag) == flat.tag


def _rank(parts: Iterable[tuple[TrimPlan, object]]) -> tuple[Fraction, int]:
    plans = [plan for plan, _ in parts]
    return sum((plan.cost for plan in plans), Fraction(0)), sum(len(p.sticks) for p in plans)


def _cut(
    pool: Sequence[Flat],
    pooled: Iterable[Piece],
    own: Sequence[tuple[Piece, ...]],
    names: dict[str, str],
    apart: set[str],
) -> list[tuple[Piece, ...]]:
    """Return each flat's pieces as the chosen plans cut them, in the order of the walls."""
    of_room: dict[str, list[Piece]] = {}
    for piece in pooled:
        of_room.setdefault(piece.room, []).append(piece)
    cut: list[tuple[Piece, ...]] = []
    for flat, alone in zip(pool, own, strict=True):
        # Where a spliced wall is cut depends on the plan: the pooled pieces are right for a pooled
        # trim, and the flat's own pieces for one that is planned apart. So one list is the frame,
        # and the runs of the trims in `apart` are replaced in it.
        in_pool = [
            replace(piece, room=names[piece.room])
            for room in dict.fromkeys(room.name for room in flat.job.rooms)
            for piece in of_room.get(f"{flat.tag} {room}", ())
        ]
        places: dict[tuple[str, str, str], list[Piece]] = {}
        for piece in alone if apart else ():
            places.setdefault((piece.room, piece.run, piece.trim), []).append(piece)
        taken: dict[str, Piece] = {}
        for piece in in_pool:
            here = [piece]
            if piece.trim in apart:
                here = places.pop((piece.room, piece.run, piece.trim), [])
            taken |= {one.id: one for one in here}
        cut.append(tuple(taken.values()))
    return cut


def _verify(shared: Job, cut: Iterable[tuple[Piece, ...]], plans: dict[str, TrimPlan]) -> None:
    pieces = [piece for of_flat in cut for piece in of_flat]
    for name, plan in plans.items():
        own = [piece for piece in pieces if piece.trim == name]
        reject_faults(name, faults(shared.trim(name), own, plan, shared.settings.tape_step))
