"""The stock plan of a whole job, trim by trim; it may splice long runs elsewhere."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable
from dataclasses import replace
from fractions import Fraction
from time import thread_time
from typing import TypeAlias

from trimlang.diagnostics import Diagnostic, has_errors, say
from trimlang.incremental.cache import Cache, placeless
from trimlang.joinery.piece import Piece
from trimlang.joinery.pieces import Places, at_places, joinery, with_kept_joints
from trimlang.joinery.shorter_sticks import only_steady
from trimlang.joinery.spliced_pieces import Splice
from trimlang.planning.ask import Asking
from trimlang.planning.clock import Clock
from trimlang.planning.equal_walls import cut_alike
from trimlang.planning.layout import Added, TrimPlan, lay_out, with_bound_anywhere
from trimlang.planning.moved_joints import JoinedPlan, redrawn, stock_plan, with_more_joints
from trimlang.planning.placing import place_splices, with_places
from trimlang.planning.planned_job import Planned
from trimlang.planning.shortage import in_words
from trimlang.planning.sound_plan import sound_plan
from trimlang.stock.planner import QUICK, Effort, Watch
from trimlang.stock.problem import Plan, Status
from trimlang.survey.job import Job, Room, Stretch, Trim

PlanCache: TypeAlias = Cache[tuple[TrimPlan, Places]]
"""Plans of trims, by everything that they depend on; see ``trimlang.incremental.cache``."""


def first_plan(
    job: Job,
    pieces: tuple[Piece, ...],
    splices: tuple[Splice, ...],
    effort: Effort | None,
    watch: Callable[[str], Watch | None] | None,
    cache: PlanCache | None = None,
) -> Planned:
    """Plan each trim of the whole job; the plan may splice its runs elsewhere.

    Raises:
        WrongPlanError: the independent verifier rejects a plan.
    """
    plans: list[TrimPlan] = []
    problems: list[Diagnostic] = []
    joined = job
    kept = {one.whole.id: one.cut for one in splices if one.kept}
    places: dict[str, tuple[Fraction, ...]] = dict(kept)
    names = {piece.trim for piece in pieces}
    # Only trims with pieces take time, so only they get a share of it.
    clock = Clock(effort, sum(trim.name in names for trim in job.trims))
    for trim in job.trims:
        of_trim = tuple(piece for piece in pieces if piece.trim == trim.name)
        if not of_trim:
            continue
        share = clock.share()
        report = None if watch is None else watch(trim.name)
        runs = _of_trim(splices, trim)
        # Whether a proof was asked for is part of the key: a quick plan is no answer to that
        # question.
        key = None if cache is None else (share.prove, _asked(job, trim, of_trim, runs))
        plan = None if cache is None else cache.find(key)
        if plan is None:
            plan = plan_trim(job, trim, of_trim, runs, share, report)
            # A plan that time cut short is not kept: a later build may find a better one.
            if cache is not None and plan is not None and _settled(plan[0], share):
                cache.keep(key, plan)
        if plan is None:
            # Walls were spliced for the longest sticks, and there are too few of those: splice
            # again as if there were none.
            steady = only_steady(joined, {trim.name})
            again, respliced, findings = joinery(steady)
            again, respliced = with_kept_joints(steady, again, respliced, kept)
            shorter = tuple(piece for piece in again if piece.trim == trim.name)
            # The same pieces would run out of stock again; a wall that the shorter sticks cannot be
            # spliced for would have none.
            if shorter != of_trim and not has_errors(findings):
                plan = plan_trim(job, trim, shorter, _of_trim(respliced, trim), share, report)
                if plan is not None:
                    joined, pieces, splices = steady, again, respliced
        if plan is None:
            # The finding points at the first line that says what there is of this trim.
            limited = [offer.span for offer in trim.offers] + [rest.span for rest in trim.rests]
            span = limited[0] if limited else trim.span
            # There is wood enough, but not of one colour: another batch helps, longer sticks would
            # not.
            if trim.has_batches and _could_mix(job, trim, of_trim):
                scope = trim.batch_by.value
                problems.append(say("T502", span, trim=trim.name, scope=scope))
            else:
                problems.append(say("T501", span, **in_words(job, trim, of_trim)))
        else:
            plans.append(plan[0])
            places |= plan[1]
    if places:
        # At the end and all at once, since a room has walls of several trims.
        pieces = at_places(joined, pieces, splices, places)
    return Planned(
        pieces=pieces,
        plans=tuple(plans),
        problems=tuple(problems),
        joined=joined,
        splices=splices,
        places=places,
    )


def _of_trim(splices: Iterable[Splice], trim: Trim) -> tuple[Splice, ...]:
    return tuple(one for one in splices if one.trim.name == trim.name)


def _could_mix(job: Job, trim: Trim, pieces: tuple[Piece, ...]) -> bool:
    """Tell whether there is a plan that mixes batches."""
    problem = Asking(job, trim).about(pieces).problem
    free = replace(problem, parts=tuple(replace(one, group="") for one in problem.parts))
    return isinstance(sound_plan(free, effort=QUICK), Plan)


def _asked(
    job: Job, trim: Trim, pieces: Iterable[Piece], free: Iterable[Splice]
) -> tuple[Hashable, ...]:
    """Return everything that a trim's plan depends on: not places in the file, and not notes."""
    rooms = (one.wall.room for one in free)
    return (
        job.settings,
        placeless(trim),
        tuple((one.id, one.kind, one.length, one.left, one.right) for one in pieces),
        tuple(placeless(replace(room, note=None, walk=_plain(room))) for room in rooms),
    )


def _plain(room: Room) -> tuple[Stretch, ...]:
    return tuple(replace(stretch, note=None) for stretch in room.walk)


def _settled(plan: TrimPlan, effort: Effort) -> bool:
    """Tell whether the same search would find the same plan again, not one cut off by time."""
    return not effort.prove or plan.status is Status.PROVEN


def plan_trim(
    job: Job,
    trim: Trim,
    pieces: tuple[Piece, ...],
    runs: tuple[Splice, ...],
    effort: Effort,
    watch: Watch | None,
) -> tuple[TrimPlan, Places] | None:
    """Plan a trim, with its free runs spliced elsewhere where that costs less.

    ``runs`` are all of its runs that are spliced, or may be where the job has a price for a joint.
    """
    ends = thread_time() + effort.seconds
    # Joints may be anywhere, or on any of the studs.
    moving = tuple(one for one in runs if one.free or (one.studs is not None and one.is_joined))

    def left() -> float:
        return ends - thread_time()

    asking = Asking(job, trim)
    question = asking.about(pieces)
    # First a quick look at other places, then the usual ones in the time that is left, and only
    # then the joints of all walls together: each step begins from the best plan so far.
    places = place_splices(asking, pieces, moving, left) if moving else {}
    best: JoinedPlan | None = None
    if places:
        other = asking.about(with_places(pieces, moving, places))
        moved = stock_plan(other, replace(effort, seconds=effort.seconds / 2), watch)
        best = None if moved is None else JoinedPlan(other, moved, places)
    usual = stock_plan(question, replace(effort, seconds=max(left(), 0.0)), watch)
    # Where they cost the same the usual places win, with full sticks first: that is how one works.
    if usual is not None and (best is None or usual.rank <= best.plan.rank):
        best = JoinedPlan(question, usual, {})
    if best is None:
        return None
    share = replace(effort, seconds=left() if effort.prove else 0.0)
    least = best.plan.cost
    if moving:
        best, least = redrawn(asking, pieces, moving, best, share, watch)
        if effort.prove:
            best = cut_alike(asking, pieces, moving, best, replace(effort, seconds=left()))
    added = Added()
    if job.settings.joint_price is not None:
        share = replace(effort, seconds=left() if effort.prove else 0.0)
        best, for_more, added = with_more_joints(asking, pieces, runs, best, share, watch)
        least = min(least, for_more)
    laid = replace(lay_out(best.question, best.plan), added=added)
    if not any(one.could_differ for one in runs):
        return laid, best.places
    anywhere = Fraction(least, best.question.per_coin)
    return with_bound_anywhere(laid, anywhere), best.places
