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

from trimlang.compiler import Result
from trimlang.diagnostics import Diagnostic, say
from trimlang.joinery.piece import Piece
from trimlang.joinery.pieces import joinery
from trimlang.language.source import Source
from trimlang.planning.first_plan import plan_pieces
from trimlang.planning.wrong_plan import reject_faults
from trimlang.record import record
from trimlang.shared_order.flat import Flat
from trimlang.shared_order.shared_check import faults
from trimlang.shared_order.side_by_side import can_be_had, side_by_side
from trimlang.survey.job import Job, Rest, Trim
from trimlang.takeoff.supplies import Supply, blocks, supplies

if TYPE_CHECKING:
    from trimlang.planning.layout import TrimPlan
    from trimlang.stock.planner import Effort, Watch


@record
class FlatPlan:
    """A flat as the shared order leaves it.

    ``result`` holds its own pieces and those shared sticks that any of them is cut from.
    ``alone`` is what its trim would cost bought by itself, None where the stock would not
    be enough.
    """

    flat: Flat
    result: Result
    alone: Fraction | None


@record
class SharedOrder:
    """One purchase for several jobs: ``result`` is all jobs as one, ``flats`` each by itself.

    ``apart`` names the trims that are planned job by job, because nothing better was found;
    ``scarce`` those whose separate plans together take more than the stock lines allow.
    """

    result: Result
    flats: tuple[FlatPlan, ...]
    apart: tuple[str, ...] = ()
    scarce: tuple[str, ...] = ()

    @property
    def alone(self) -> Fraction | None:
        """What the trim costs where each job buys its own; None where one of them cannot."""
        costs = [one.alone for one in self.flats]
        return None if None in costs else sum((cost for cost in costs if cost), Fraction(0))


def plan_together(
    pool: Sequence[Flat],
    effort: Effort | None = None,
    watch: Callable[[str], Watch | None] | None = None,
) -> SharedOrder:
    """Plan the purchase of all flats together.

    ``effort`` is the limit for all flats together, and again for each flat by itself.

    Raises:
        WrongPlanError: a plan breaks its own rules.
    """
    shared = joined_job(pool)
    # Two flats may both have a "Bath", so rooms carry their flat's tag while all jobs are one.
    names = {f"{flat.tag} {room.name}": room.name for flat in pool for room in flat.job.rooms}
    joined, spliced, _ = joinery(shared)
    pieces, plans, _ = plan_pieces(shared, joined, spliced, effort, watch)
    pooled = {plan.trim: plan for plan in plans}
    # This is what makes the promise hold: without the flats' own plans, a search that ran out of
    # time could cost more than buying apart.
    own = [plan_pieces(flat.job, flat.pieces, flat.splices, effort, None) for flat in pool]
    chosen: dict[str, TrimPlan] = {}
    apart: list[str] = []
    scarce: list[str] = []
    lost: list[Diagnostic] = []
    for trim in shared.trims:
        parts = [
            (plan, tuple(one for one in of_flat if one.trim == trim.name))
            for of_flat, flat_plans, _ in own
            for plan in flat_plans
            if plan.trim == trim.name
        ]
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
    cut = _cut(pool, pieces, [of_flat for of_flat, _, _ in own], names, set(apart))
    _verify(shared, cut, chosen)
    return _shared(pool, shared, cut, tuple(chosen.values()), own, (apart, scarce, lost))


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


def _shared(
    pool: Sequence[Flat],
    shared: Job,
    cut: Sequence[tuple[Piece, ...]],
    plans: tuple[TrimPlan, ...],
    own: Sequence[tuple[tuple[Piece, ...], tuple[TrimPlan, ...], tuple[Diagnostic, ...]]],
    unshared: tuple[list[str], list[str], list[Diagnostic]],
) -> SharedOrder:
    apart, scarce, lost = unshared
    made: list[FlatPlan] = []
    for flat, pieces, (_, alone, problems) in zip(pool, cut, own, strict=True):
        ids = {piece.id for piece in pieces}
        on = tuple(
            replace(
                plan,
                sticks=tuple(
                    stick for stick in plan.sticks if any(p.piece in ids for p in stick.places)
                ),
            )
            for plan in plans
        )
        # A stick that several flats share stands in the result of each, so that each flat's sheets
        # show the whole stick.
        result = replace(
            flat.result,
            job=flat.job,
            pieces=pieces,
            plans=tuple(plan for plan in on if plan.sticks),
            supplies=(*supplies(flat.job, pieces), *blocks([flat.job])),
        )
        cost = sum((plan.cost for plan in alone), Fraction(0))
        made.append(FlatPlan(flat, result, None if problems else cost))
    all_pieces = tuple(
        replace(piece, room=f"{flat.tag} {piece.room}")
        for flat, pieces in zip(pool, cut, strict=True)
        for piece in pieces
    )
    # by tag, not by path: where the jobs lie is no part of the revision
    sources = {
        f"{flat.tag}: {name}": Source(name, source.text)
        for flat in pool
        for name, source in flat.result.sources.items()
    }
    result = Result(
        job=shared,
        pieces=all_pieces,
        plans=() if lost else plans,
        supplies=() if lost else _supplies(shared, pool, cut),
        diagnostics=tuple(lost),
        sources=sources,
    )
    return SharedOrder(result, tuple(made), tuple(apart), tuple(scarce))


def _supplies(
    shared: Job, pool: Sequence[Flat], cut: Sequence[tuple[Piece, ...]]
) -> tuple[Supply, ...]:
    """Return nails, caulk, paint and blocks: bought together for all flats that want the same."""
    # Rounding up to whole boxes and tubes once for all flats is what buying together saves.
    alike: dict[tuple[object, ...], list[Piece]] = {}
    jobs: dict[tuple[object, ...], Job] = {}
    for flat, pieces in zip(pool, cut, strict=True):
        said = flat.job.settings
        kinds = (
            said.unit,
            said.nail_every,
            said.nail_long,
            said.nail_box,
            said.caulk_bead,
            said.caulk_tube,
            said.caulk_waste,
            said.paint_coats,
            said.paint_spread,
            said.paint_can,
        )
        alike.setdefault(kinds, []).extend(pieces)
        jobs.setdefault(kinds, replace(shared, settings=said))
    pooled = (line for kinds in jobs for line in supplies(jobs[kinds], alike[kinds]))
    return (*pooled, *blocks(flat.job for flat in pool))
