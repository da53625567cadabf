"""The passes in their order: text to statements to job to pieces to plan to order.

Read this module first.  Each pass takes frozen values and returns frozen values and diagnostics;
none reaches back, and none but ``gather`` reads a file.
"""

from __future__ import annotations

from dataclasses import field
from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING

from trimlang.diagnostics import Diagnostic, Whole, has_errors
from trimlang.incremental.compiler_steps import PLAIN, Steps
from trimlang.joinery.pieces import joinery
from trimlang.reading import Gathered, gather
from trimlang.record import record
from trimlang.survey.survey import survey

if TYPE_CHECKING:
    from collections.abc import Callable

    from trimlang.diagnostics.source import Source
    from trimlang.joinery.piece import Piece
    from trimlang.joinery.spliced_pieces import Splice
    from trimlang.planning.first_plan import PlanCache
    from trimlang.planning.layout import TrimPlan
    from trimlang.site_log.progress_of_job import JobProgress
    from trimlang.stock.planner import Effort, Watch
    from trimlang.survey.job import Job
    from trimlang.survey.verdict import Closing
    from trimlang.takeoff.supplies import Supply


@record
class Result:
    """What a job file compiles to.

    ``diagnostics`` are in the order of the file.  Where one of them is an error, ``plans`` and
    ``supplies`` are empty: nothing is cut from a survey that does not hold together.
    ``progress`` is there where the job has a site log; ``plans`` are then of what is left, and
    pieces that are cut have the length that they were cut to.  ``splices`` are the runs that are
    spliced, in the usual places until they are planned.  ``closings`` say, room by room, how
    far the survey is from closing.
    """

    job: Job
    pieces: tuple[Piece, ...]
    plans: tuple[TrimPlan, ...]
    supplies: tuple[Supply, ...]
    diagnostics: tuple[Diagnostic, ...]
    sources: dict[str, Source] = field(default_factory=dict)
    progress: JobProgress | None = None
    splices: tuple[Splice, ...] = ()
    closings: tuple[Closing, ...] = ()

    @property
    def ok(self) -> bool:
        """Whether there is no error, so that sheets can be printed."""
        return not has_errors(self.diagnostics)

    @property
    def cost(self) -> Fraction:
        """What all trim costs, in the job's money, with what was spent already."""
        return sum((plan.cost for plan in self.plans), self.spent)

    @property
    def bound(self) -> Fraction:
        """A proven lower bound on ``cost``: no plan can cost less."""
        return sum((plan.bound for plan in self.plans), self.spent)

    @property
    def spent(self) -> Fraction:
        """What the site log says was spent on trim."""
        return Fraction(0) if self.progress is None else self.progress.spent


def check_job(
    text: str,
    *,
    path: Path | None = None,
    name: str = "<text>",
    steps: Steps = PLAIN,
    log: str | None = None,
) -> Result:
    """Read, survey and join a job without planning its stock.

    ``log`` stands in for the text of the log file beside it.
    """
    gathered = gather(text, path=path, name=name, read=steps.read, line=steps.line, log=log)
    return check_gathered(gathered, path.name if path is not None else name, steps)


def check_gathered(gathered: Gathered, file: str, steps: Steps = PLAIN) -> Result:
    """Survey and join what was read; ``file`` is the name of the job's own file in messages."""
    job, closings, surveyed = survey(gathered.statements, file)
    pieces: tuple[Piece, ...] = ()
    spliced: tuple[Splice, ...] = ()
    joined: tuple[Diagnostic, ...] = ()
    # Pieces of a survey with errors would only bring up errors that follow from those.
    if not has_errors(surveyed):
        pieces, spliced, joined = joinery(job, join=steps.room)
        if job.log:
            # Imported here: most jobs have no log.
            from trimlang.site_log.cut_lengths import with_joints_of_log
            from trimlang.site_log.former_names import named_as_now
            from trimlang.site_log.ledger import check_log

            job = named_as_now(job, {piece.id for piece in pieces})
            pieces, spliced = with_joints_of_log(job, pieces, spliced)
            joined += check_log(job, pieces, spliced)
    findings = (*gathered.findings, *surveyed, *joined)
    # In the order in which the files are read, not in that of the passes: people mend a file from
    # top to bottom.
    order = {source: number for number, source in enumerate(gathered.sources)}
    # Where something could not be read, a finding that depends on it may be false: mending what
    # could not be read mends it too, or shows what is really wrong. So it is left out for now.
    lost_lines = {
        (one.span.file, one.span.line) for one in findings if one.page.loses is Whole.LINE
    }
    # One slip should be one finding.
    better = [one for one in findings if one.page.settles]
    lost = [Whole.FILES] if any(one.page.loses is Whole.FILES for one in gathered.findings) else []
    unique = dict.fromkeys(
        one
        for one in findings
        if not one.needs_any(lost)
        and not (one.needs_any([Whole.LINE]) and (one.span.file, one.span.line) in lost_lines)
        and not any(by.settles(one) for by in better)
    )
    return Result(
        job=job,
        pieces=pieces,
        plans=(),
        supplies=(),
        diagnostics=tuple(
            sorted(unique, key=lambda one: (order.get(one.span.file, 0), one.span, one.code))
        ),
        sources=gathered.sources,
        splices=spliced,
        closings=closings,
    )


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

    ``path`` is the file that the text came from, for its includes.  ``effort`` is how hard the
    planner looks for a proof, for all trims together.  ``watch`` is called with each trim's
    name as its planning begins, and returns what to call as the search goes on.  ``log`` is used
    in place of the text of the log file beside the job.

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
    cache: PlanCache | None = None,
) -> Result:
    """Plan a checked job's stock and supplies; see ``compile_job``.

    ``cache`` holds plans of earlier turns, which are used again for trims that are cut the same.
    """
    if not checked.ok:
        return checked
    # Imported here: the planner is twice as much code as a check loads.
    from trimlang.planning.first_plan import first_plan
    from trimlang.planning.planned_job import with_offers_of_log
    from trimlang.planning.supplier_order import fill_up_orders
    from trimlang.takeoff.supplies import blocks, supplies

    job = with_offers_of_log(checked.job)
    planned = first_plan(job, checked.pieces, checked.splices, effort, watch, cache)
    pieces, plans, problems, progress = planned.pieces, planned.plans, planned.problems, None
    # The log is replayed over the plan of the whole job, as if nothing had been done yet: that is
    # the plan that the first tickets showed.
    if checked.job.log:
        from trimlang.site_log.under_way import under_way

        pieces, plans, problems, progress = under_way(checked.job, planned, effort, watch)
    else:
        plans, short = fill_up_orders(checked.job, plans)
        problems += short
    findings = checked.diagnostics + problems
    wrong = has_errors(problems)
    return Result(
        job=checked.job,
        pieces=pieces,
        plans=() if wrong else plans,
        supplies=() if wrong else (*supplies(checked.job, pieces), *blocks([checked.job])),
        diagnostics=findings,
        sources=checked.sources,
        progress=None if wrong else progress,
        splices=planned.splices,
        closings=checked.closings,
    )
