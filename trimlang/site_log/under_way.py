"""Replays the log: the first plan and the log together give the plan of what is left."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from fractions import Fraction

from trimlang.diagnostics import Diagnostic, has_errors, say
from trimlang.joinery.piece import Piece
from trimlang.joinery.pieces import at_places
from trimlang.planning.layout import TrimPlan
from trimlang.planning.planned_job import Planned
from trimlang.planning.supplier_order import fill_up_orders
from trimlang.planning.wrong_plan import reject_faults
from trimlang.site_log.cut_lengths import frozen, splices_that_follow
from trimlang.site_log.ledger import check_lengths, check_parts, standing, trim_of_stick
from trimlang.site_log.left_check import progress_faults
from trimlang.site_log.left_plan import trim_plan
from trimlang.site_log.progress_of_job import InHand, JobProgress, State
from trimlang.site_log.rack import Origin
from trimlang.site_log.replan import WatchedEffort
from trimlang.site_log.replay import Replay
from trimlang.site_log.trim_progress import TrimProgress
from trimlang.site_log.whole_units import PlanInForce, PlannedStick, ScaledTrim, scaled_trim
from trimlang.stock.planner import FULL, Effort, Watch
from trimlang.survey.job import Job
from trimlang.survey.log_entries import BoughtSticks, Counted, CutPiece, Entry, Spoiled


def under_way(
    job: Job,
    planned: Planned,
    effort: Effort | None,
    watch: Callable[[str], Watch | None] | None,
) -> tuple[tuple[Piece, ...], tuple[TrimPlan, ...], tuple[Diagnostic, ...], JobProgress]:
    """Replay the log over the first plan.

    Returns:
        The pieces, with those that are cut at the length that they were cut to; each trim's plan
        of what is left; what is wrong in the log; the job's progress.

    Raises:
        WrongPlanError: the verifier rejects a plan.
    """
    live = standing(job.log)
    # Splices first: a wall that is cut in part decides the lengths of its other pieces, and every
    # later step needs those.
    pieces = planned.pieces
    if planned.splices:
        places = splices_that_follow(planned.splices, planned.places, live)
        pieces = at_places(planned.joined, pieces, planned.splices, places)
    findings = list(check_parts(job, pieces, planned.splices))
    findings += list(check_lengths([piece for piece in pieces if piece.parts > 1], live))
    first = {plan.trim: plan for plan in planned.plans}
    of_piece = {piece.id: piece.trim for piece in pieces}
    plans: list[TrimPlan] = []
    trims: list[TrimProgress] = []
    for trim in job.trims:
        own = {piece.id: piece for piece in pieces if piece.trim == trim.name}
        log = tuple(entry for entry in job.log if _trim_of(entry, of_piece) == trim.name)
        if not own and not log:
            continue
        scaled = scaled_trim(job, trim, own.values())
        # From the plan without any log, as it was printed before the first line was written.
        before = _first_layout(scaled, first.get(trim.name), own)
        report = None if watch is None else watch(trim.name)
        planning = WatchedEffort(effort or FULL, report)
        percent = job.settings.spare_percent
        progress = Replay(scaled, own, before, percent, planning).run(log)
        trims.append(progress)
        findings.extend(progress.findings)
        if progress.layout.unplaced and not has_errors(progress.findings):
            lacking = ", ".join(progress.layout.unplaced)
            findings.append(say("T707", trim.span, trim=trim.name, pieces=lacking))
        # With an error in the log the plan is not printed, and may well contradict itself.
        if not has_errors(findings):
            reject_faults(trim.name, progress_faults(progress, trim, log))
        plans.append(trim_plan(progress))
    brought = {one.scaled.trim.name for one in trims if one.rack.was_bought}
    filled, short = fill_up_orders(job, plans, brought)
    findings.extend(short)
    as_cut = frozen(pieces, live)
    asked = {one.id: one for one, now in zip(pieces, as_cut, strict=True) if one is not now}
    return as_cut, filled, tuple(findings), _job_progress(job, as_cut, trims, filled, asked)


def _trim_of(entry: Entry, of_piece: Mapping[str, str]) -> str | None:
    if isinstance(entry, BoughtSticks | Counted):
        return entry.trim
    if entry.piece in of_piece:
        return of_piece[entry.piece]
    # The piece's wall is gone; the stick's name still says of which trim it was.
    source = entry.source if isinstance(entry, CutPiece | Spoiled) else None
    return trim_of_stick(source.stick) if source is not None and source.stick else None


def _first_layout(
    scaled: ScaledTrim, plan: TrimPlan | None, pieces: Mapping[str, Piece]
) -> PlanInForce:
    if plan is None:
        return PlanInForce((), unplaced=tuple(pieces))
    coin = scaled.question.per_coin
    sticks = tuple(
        PlannedStick(
            name=stick.id,
            length=stick.length,
            origin=Origin.SHOP if stick.on_hand else Origin.ORDER,
            price=stick.price,
            todo=tuple(place.piece for place in stick.places),
        )
        for stick in plan.sticks
    )
    return PlanInForce(
        sticks,
        bound=int(plan.bound * coin),
        spare=scaled.units(plan.spare_asked),
        survives_loss=plan.survives_loss,
    )


def _job_progress(
    job: Job,
    pieces: Iterable[Piece],
    trims: Iterable[TrimProgress],
    plans: Iterable[TrimPlan],
    asked: Mapping[str, Piece],
) -> JobProgress:
    live = standing(job.log)
    # A piece that was spoiled and cut again stands as cut: what is live decides first.
    lost = {entry.piece for entry in job.log if isinstance(entry, Spoiled)}
    states: dict[str, State] = {}
    for piece in pieces:
        now = live.get(piece.id)
        if now is not None:
            states[piece.id] = State.FITTED if now.fitted else State.CUT
        else:
            states[piece.id] = State.SPOILED if piece.id in lost else State.TO_CUT
    trims = tuple(trims)
    changed = {name for progress in trims for name in progress.changed or ()}
    return JobProgress(
        states=states,
        changed=tuple(name for name in states if name in changed),
        replanned=any(progress.changed is not None for progress in trims),
        spent=sum((progress.rack.spent for progress in trims), Fraction(0)),
        to_buy=sum((plan.cost for plan in plans), Fraction(0)),
        in_hand=tuple(held for progress in trims for held in _in_hand(progress)),
        full_entries=tuple(entry for progress in trims for entry in progress.full_entries),
        asked=asked,
    )


def _in_hand(progress: TrimProgress) -> Iterable[InHand]:
    """Yield what is in hand of a trim apart from the sticks that pieces are planned on."""
    scaled, rack = progress.scaled, progress.rack
    # A stick with work left is shown with that work, so it is not listed as free as well.
    planned = {laid.name for laid in progress.layout.sticks if laid.todo}
    for stick in rack.started.values():
        rest = scaled.inches(scaled.rest(stick.length, stick.done))
        if stick.name not in planned and rest:
            yield InHand(scaled.trim.name, rest, 1, stick.name)
    # Each planned stick that has not been begun takes one whole stick of its kind off the rack.
    left = rack.whole.copy()
    for laid in progress.layout.sticks:
        if laid.name in rack.started or laid.origin is Origin.ORDER:
            continue
        for kind in sorted(left):
            if left[kind] and kind.length == laid.length and kind.origin == laid.origin:
                left[kind] -= 1
                break
    # Listed by length alone: at the rack nobody sees where a stick came from.
    lengths = sorted({kind.length for kind in left}, reverse=True)
    for length in lengths:
        count = sum(n for kind, n in left.items() if kind.length == length)
        if count:
            yield InHand(scaled.trim.name, length, count, None)
