"""The passes in their order: text to statements to job to pieces to plan to order."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from fractions import Fraction
from pathlib import Path
from time import thread_time
from typing import TYPE_CHECKING

from trimlang.diagnostics import Diagnostic, has_errors, say
from trimlang.joinery.pieces import joinery, splices
from trimlang.means import USUAL, Means
from trimlang.reading import Gathered, gather
from trimlang.site.planned import Planned, with_offers_of_log
from trimlang.survey.survey import survey

if TYPE_CHECKING:
    from collections.abc import Callable

    from trimlang.joinery.piece import Piece
    from trimlang.joinery.pieces import Places
    from trimlang.joinery.splicing import Splice
    from trimlang.site.site import Site
    from trimlang.stock.ask import Question
    from trimlang.stock.layout import TrimPlan
    from trimlang.stock.planner import Effort, Watch
    from trimlang.stock.problem import Plan
    from trimlang.survey.job import Job, Trim
    from trimlang.syntax.source import Source
    from trimlang.takeoff.supplies import Supply


class WrongPlanError(RuntimeError):
    """The verifier found a fault in a plan: a defect of trimlang, never of the job file."""


@dataclass(frozen=True, slots=True)
class Result:
    """What a job file compiles to.

    ``diagnostics`` are in the order of the file.  Where one of them is an
    error, ``plans`` and ``supplies`` are empty: nothing is cut from a survey
    that does not hold together.  ``site`` is how the job stands where it has a
    site log: ``plans`` are then of what is left, and ``pieces`` that are cut have the
    length that they were cut to.
    """

    job: Job
    pieces: tuple[Piece, ...]
    plans: tuple[TrimPlan, ...]
    supplies: tuple[Supply, ...]
    diagnostics: tuple[Diagnostic, ...]
    sources: dict[str, Source] = field(default_factory=dict)
    site: Site | None = None

    @property
    def ok(self) -> bool:
        """Whether sheets can be printed."""
        return not has_errors(self.diagnostics)

    @property
    def cost(self) -> Fraction:
        """What all trim costs, in the job's money, what was spent included."""
        return sum((plan.cost for plan in self.plans), self.spent)

    @property
    def bound(self) -> Fraction:
        """A cost below which no plan can go."""
        return sum((plan.bound for plan in self.plans), self.spent)

    @property
    def spent(self) -> Fraction:
        """What the site log says was spent on trim."""
        return Fraction(0) if self.site is None else self.site.spent


def check_job(
    text: str,
    *,
    path: Path | None = None,
    name: str = "<text>",
    means: Means = USUAL,
    log: str | None = None,
) -> Result:
    """Read, survey and join a job without planning its stock.

    ``log`` stands in for the text of the log file beside it.
    """
    gathered = gather(text, path=path, name=name, read=means.read, line=means.line, log=log)
    return check_gathered(gathered, path.name if path is not None else name, means)


def check_gathered(gathered: Gathered, file: str, means: Means = USUAL) -> Result:
    """Survey and join what was read; ``file`` is the name of the job's own file."""
    job, surveyed = survey(gathered.statements, file)
    pieces: tuple[Piece, ...] = ()
    joined: tuple[Diagnostic, ...] = ()
    if not has_errors(surveyed):
        pieces, joined = joinery(job, room=means.room)
        if job.log:
            from trimlang.site.ledger import check_log

            joined += check_log(job, pieces)
    findings = (*gathered.findings, *surveyed, *joined)
    order = {source: number for number, source in enumerate(gathered.sources)}
    # an end that could not be read is not missing too
    unread = {
        one.span.line
        for one in gathered.findings
        if one.code.startswith("T1") and has_errors((one,))
    }
    # and what an include that could not be read says may be all that is missing
    missing = {"T206", "T210", "T212", "T214"} if _lost_include(gathered.findings) else set()
    unique = dict.fromkeys(
        one
        for one in findings
        if one.code not in missing and (one.code != "T225" or one.span.line not in unread)
    )
    return Result(
        job,
        pieces,
        (),
        (),
        tuple(sorted(unique, key=lambda one: (order.get(one.span.file, 0), one.span, one.code))),
        gathered.sources,
    )


def _lost_include(findings: tuple[Diagnostic, ...]) -> bool:
    return any(one.code.startswith("T6") and one.code != "T607" for one in findings)


def compile_job(
    text: str,
    *,
    path: Path | None = None,
    name: str = "<text>",
    effort: Effort | None = None,
    watch: Callable[[str], Watch | None] | None = None,
    log: str | None = None,
) -> Result:
    """Compile a job file's text: survey, pieces, stock plan and supplies.

    ``path`` is the file that the text came from, for its includes; ``effort``
    is how hard the planner looks for a proof, all trims together.  ``watch`` is
    told each trim's name as its planning begins and gives what is to be told
    how the search goes.  ``log`` stands in for the text of the log file beside it.

    Raises:
        WrongPlanError: the independent verifier rejects a plan.
    """
    checked = check_job(text, path=path, name=name, log=log)
    return plan_checked(checked, effort=effort, watch=watch)


def plan_checked(
    checked: Result,
    *,
    effort: Effort | None = None,
    watch: Callable[[str], Watch | None] | None = None,
) -> Result:
    """Plan a checked job's stock and supplies; see ``compile_job``."""
    if not checked.ok:
        return checked
    from trimlang.takeoff.supplies import supplies

    planned = _first_plan(with_offers_of_log(checked.job), checked.pieces, effort, watch)
    pieces, plans, problems, site = planned.pieces, planned.plans, planned.problems, None
    if checked.job.log:
        from trimlang.site.under_way import WrongSiteError, under_way

        try:
            pieces, plans, problems, site = under_way(checked.job, planned, effort, watch)
        except WrongSiteError as error:
            raise WrongPlanError(str(error)) from None
    findings = checked.diagnostics + problems
    wrong = has_errors(problems)
    return Result(
        checked.job,
        pieces,
        () if wrong else plans,
        () if wrong else supplies(checked.job, pieces),
        findings,
        checked.sources,
        None if wrong else site,
    )


def plan_pieces(
    job: Job,
    pieces: tuple[Piece, ...],
    effort: Effort | None,
    watch: Callable[[str], Watch | None] | None,
) -> tuple[tuple[Piece, ...], tuple[TrimPlan, ...], tuple[Diagnostic, ...]]:
    """Plan each trim; return the pieces too, which the plan may have spliced otherwise."""
    planned = _first_plan(job, pieces, effort, watch)
    return planned.pieces, planned.plans, planned.problems


def _first_plan(
    job: Job,
    pieces: tuple[Piece, ...],
    effort: Effort | None,
    watch: Callable[[str], Watch | None] | None,
) -> Planned:
    """Plan each trim of the whole job, whose runs the plan may splice otherwise."""
    plans: list[TrimPlan] = []
    problems: list[Diagnostic] = []
    joined = job
    spliced = _spliced(joined, pieces)
    places: dict[str, tuple[Fraction, ...]] = {}
    names = {piece.trim for piece in pieces}
    clock = Clock(effort, sum(trim.name in names for trim in job.trims))
    for trim in job.trims:
        of_trim = tuple(piece for piece in pieces if piece.trim == trim.name)
        if not of_trim:
            continue
        share = clock.share()
        told = None if watch is None else watch(trim.name)
        free = _free(spliced, trim)
        plan = _plan_trim(job, trim, of_trim, free, share, told)
        if plan is None:
            # the few long sticks ran out: splice as if there were none
            steady = _only_steady(joined, trim)
            again = joinery(steady)[0]
            shorter = tuple(piece for piece in again if piece.trim == trim.name)
            if shorter != of_trim:
                respliced = _spliced(steady, again)
                plan = _plan_trim(job, trim, shorter, _free(respliced, trim), share, told)
                if plan is not None:
                    joined, pieces, spliced = steady, again, respliced
        if plan is None:
            from trimlang.stock.shortage import in_words

            limited = [offer.span for offer in trim.offers] + [rest.span for rest in trim.rests]
            span = limited[0] if limited else trim.span
            problems.append(say("T501", span, **in_words(job, trim, of_trim)))
        else:
            plans.append(plan[0])
            places |= plan[1]
    if places:
        pieces = joinery(joined, places)[0]
    return Planned(pieces, tuple(plans), tuple(problems), joined, places)


class Clock:
    """Shares the time for proofs among the trims; what one does not need the others have."""

    def __init__(self, effort: Effort | None, trims: int) -> None:
        from trimlang.stock.planner import FULL

        self._effort = effort or FULL
        self._ends = thread_time() + self._effort.seconds
        self._left = trims

    def share(self) -> Effort:
        """Return the effort for the next trim."""
        seconds = max(self._ends - thread_time(), 0.0) / max(self._left, 1)
        self._left -= 1
        return replace(self._effort, seconds=seconds)


def _only_steady(job: Job, trim: Trim) -> Job:
    """Return the job with ``trim`` only in lengths that never run out, where there are any."""
    steady = tuple(offer for offer in trim.offers if offer.at_most is None) or trim.offers
    return replace(
        job,
        trims=tuple(
            replace(trim, offers=steady) if other.name == trim.name else other
            for other in job.trims
        ),
    )


def _spliced(job: Job, pieces: tuple[Piece, ...]) -> tuple[Splice, ...]:
    """Return the runs that are pieced together."""
    if all(piece.parts == 1 for piece in pieces):
        return ()  # nothing is: the job need not be joined again to know
    return splices(job)


def _free(spliced: tuple[Splice, ...], trim: Trim) -> tuple[Splice, ...]:
    """Return the runs of a trim that may be pieced together elsewhere too."""
    return tuple(one for one in spliced if one.free and one.trim.name == trim.name)


def _plan_trim(
    job: Job,
    trim: Trim,
    pieces: tuple[Piece, ...],
    free: tuple[Splice, ...],
    effort: Effort,
    watch: Watch | None,
) -> tuple[TrimPlan, Places] | None:
    """Plan a trim, and piece its free runs together elsewhere where that costs less."""
    from trimlang.stock.ask import ask
    from trimlang.stock.layout import lay_out
    from trimlang.stock.placing import place_splices, with_places
    from trimlang.stock.planner import costs_more

    ends = thread_time() + effort.seconds
    question = ask(job, trim, pieces)
    places = place_splices(job, trim, pieces, free) if free else {}
    other = moved = None
    if places:
        other = ask(job, trim, with_places(pieces, free, places))
        moved = _stock_plan(other, replace(effort, seconds=effort.seconds / 2), watch)
        if moved is not None and effort.prove and costs_more(question.problem, moved.cost):
            return lay_out(other, moved), places
    plan = _stock_plan(question, replace(effort, seconds=max(ends - thread_time(), 0.0)), watch)
    if other is not None and moved is not None and (plan is None or _rank(moved) < _rank(plan)):
        return lay_out(other, moved), places
    return None if plan is None else (lay_out(question, plan), {})


def _rank(plan: Plan) -> tuple[int, int]:
    return plan.cost, len(plan.sticks)


def _stock_plan(question: Question, effort: Effort, watch: Watch | None) -> Plan | None:
    from trimlang.stock.planner import plan_stock
    from trimlang.stock.problem import NoPlan
    from trimlang.stock.verify import faults

    plan = plan_stock(question.problem, effort=effort, watch=watch)
    if isinstance(plan, NoPlan):
        return None
    wrong = faults(plan)
    if wrong:
        raise WrongPlanError("; ".join(wrong))
    return plan
