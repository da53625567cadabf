"""``trimlang build --pool``: one purchase for several jobs, with sheets for each job."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import Final

from trimlang.cli.build import counted, sheet_files, write
from trimlang.cli.many_jobs import one_of_many, places, several
from trimlang.cli.one_job import StopError, outcome, read_job, tell
from trimlang.cli.options import BuildOptions, PlanOptions
from trimlang.cli.progress import Progress, checked_plans, effort_of
from trimlang.cli.replies import (
    CLEAN,
    JOB_ERRORS,
    STDIN,
    WRONG_USAGE,
    MessageOptions,
    complain,
    tell_done,
)
from trimlang.cli.site_progress import site_words
from trimlang.compiler import Result, check_job
from trimlang.diagnostics import Diagnostic
from trimlang.diagnostics.message_form import MessageForm
from trimlang.diagnostics.source import Source
from trimlang.output.job_files import Share
from trimlang.shared_order.agreement import disagreements
from trimlang.shared_order.flat import flats
from trimlang.shared_order.shared_plan import plan_together
from trimlang.shared_order.shared_result import SharedOrder
from trimlang.sheets.export.plan_json import least_words
from trimlang.sheets.sheet_table import Whose, sheets_of

SHARED_FOLDER: Final = "site"


def build_together(options: BuildOptions) -> int:
    """Plan one purchase for all jobs and write one folder; return the exit code."""
    files = several(options.jobs)
    if files is None:
        return WRONG_USAGE
    first = Path(files[0])
    # Beside the first job, for the purchase itself has no file whose name it could have.
    target: Path = options.out or first.with_name("site-sheets")
    try:
        log = None
        # Read before the jobs, so that a mistyped name is told before the long work.
        if options.log is not None:
            text, _ = read_job(str(options.log), MessageOptions(form=options.messages))
            log = Source(options.log.name, text)
        shared = planned_together(files, options.messages, options.plan, log)
        tell(MessageOptions(form=options.messages), of_log(shared.result, log))
        # With errors in the log the order has no plans, and a build without them would mislead.
        if not shared.result.ok:
            return JOB_ERRORS
        write(target, _files(options, shared))
    except StopError as stop:
        return stop.outcome.code
    tell_done(_summary(shared, target), target)
    return CLEAN


def planned_together(
    files: Sequence[str], form: MessageForm, plan: PlanOptions, log: Source | None
) -> SharedOrder:
    """Check the jobs, and plan what is bought for all; what is found in the jobs is printed.

    Where the log has errors the order has no plans.

    Raises:
        StopError: a job has errors, or they cannot be bought together.
    """
    checked = _checked(files, form)
    pool = flats(checked)
    # Before planning: flats that disagree about a trim or the saw cannot share a stick.
    wrong = disagreements(pool)
    for flat, finding in wrong:
        messages = one_of_many(flat.file, form)
        tell(messages, replace(flat.result, diagnostics=(finding,)))
    if wrong:
        raise StopError(JOB_ERRORS, wrong[0][1].message)
    with checked_plans(), Progress(sys.stderr) as progress:
        shared = plan_together(pool, effort_of(plan), progress.watch, log)
    # The warnings of each job were printed when it was read.
    printed = {finding for _, result in checked for finding in result.diagnostics}
    printed |= set(of_log(shared.result, log).diagnostics)
    new = tuple(one for one in shared.result.diagnostics if one not in printed)
    tell(one_of_many(pool[0].file, form), replace(pool[0].result, diagnostics=new))
    return shared


def of_log(result: Result, log: Source | None) -> Result:
    """Return the result with only those findings that are about the site's log."""
    found = (one for one in result.diagnostics if log is not None and one.span.file == log.name)
    return replace(result, diagnostics=tuple(found))


def _checked(files: Sequence[str], form: MessageForm) -> list[tuple[str, Result]]:
    """Return each file with its checked job; every job's mistakes are printed before it stops."""
    checked: list[tuple[str, Result]] = []
    failed: list[tuple[str, str]] = []
    told: set[tuple[str, Diagnostic]] = set()
    for file in files:
        messages = one_of_many(file, form)
        try:
            text, path = read_job(file, messages)
        except StopError as stop:
            # Go on: all jobs' mistakes are told in one go.
            failed.append((file, stop.outcome.why))
            continue
        result = check_job(text, path=path, name=STDIN)
        tell(messages, result, told)
        how = outcome(result)
        if how.code != CLEAN:
            failed.append((file, how.why))
        checked.append((file, result))
    if failed:
        complain("an order for a site wants every job sound, so nothing is written:")
        for file, why in failed:
            sys.stderr.write(f"  {file}: {why}\n")
        raise StopError(JOB_ERRORS, failed[0][1])
    return checked


def _files(options: BuildOptions, shared: SharedOrder) -> dict[str, bytes]:
    """Return every file: those for all jobs together in one folder, each job's in its own."""
    folders = [
        folder.as_posix()
        for folder in places(
            # A job called “site” must not be written over the folder of the whole purchase.
            [one.flat.file for one in shared.flats],
            Path(),
            reserved=(SHARED_FOLDER,),
        )
    ]
    flats = tuple(
        (one.flat.job.name, f"../{folder}/index.html")
        for one, folder in zip(shared.flats, folders, strict=True)
    )
    bought = Share(sheets=sheets_of(Whose.THE_SITE), other_folders=flats)
    files = {
        f"{SHARED_FOLDER}/{name}": data
        for name, data in sheet_files(
            options.sheets, shared.result, share=bought, shared=shared
        ).items()
    }
    # The order, and what is cut from which stick, exist only once, for all jobs together.
    own = Share(
        sheets=sheets_of(Whose.EACH_JOB),
        # These would differ from the site's own and could be ordered a second time.
        elsewhere=("plan.json", "stock-order.csv", "sticks.csv"),
        other_folders=((shared.result.job.name, f"../{SHARED_FOLDER}/index.html"),),
    )
    for one, folder in zip(shared.flats, folders, strict=True):
        made = sheet_files(options.sheets, one.result, share=own)
        files |= {f"{folder}/{name}": data for name, data in made.items()}
    return files


def _summary(shared: SharedOrder, target: Path) -> str:
    result = shared.result
    cost = result.job.cost_text
    sticks = sum(len(plan.sticks) for plan in result.plans)
    lines = [
        f"{counted(len(shared.flats), 'job')}, {counted(len(result.pieces), 'piece')}"
        f" from {counted(sticks, 'stick')},"
        f" {cost(result.cost)} of trim ({least_words(result)}) → {target}"
    ]
    # With too little stock for each alone there is no cost to compare with.
    if shared.scarce:
        lines.append(f"bought job by job there would not be enough of {', '.join(shared.scarce)}")
    elif shared.alone is not None:
        saved = shared.alone - result.cost
        lines.append(f"bought job by job: {cost(shared.alone)}; together saves {cost(saved)}")
    return site_words(result) + "".join(f"{line}\n" for line in lines)
