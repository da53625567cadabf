"""What ``trimlang build`` does for one job."""

from __future__ import annotations

import sys
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from trimlang.cli.one_job import Outcome, StopError, Tell, complained, outcome, read_job, tell
from trimlang.cli.options import JobBuild
from trimlang.cli.progress import Progress, checked_plans, effort_of
from trimlang.cli.replies import CLEAN, JOB_ERRORS, STDIN, WRONG_USAGE, tell_done
from trimlang.cli.site_progress import site_words
from trimlang.compiler import Result, compile_job
from trimlang.letters import printable
from trimlang.output.folder import write_folder
from trimlang.output.job_files import Share, paperwork
from trimlang.output.made_by import NotOursError
from trimlang.output.sheet_options import SheetOptions
from trimlang.shared_order.shared_result import SharedOrder
from trimlang.sheets.export.plan_json import least_words
from trimlang.workers.forked import RefusedError

if TYPE_CHECKING:
    from trimlang.sheets.render.template_filling import TemplateFiller


def build(options: JobBuild, tell: Tell = tell) -> Outcome:
    """Compile a job file and write its folder of sheets."""
    try:
        text, path = read_job(options.job, options.messages, tell)
        result = _compile(options, text, path, tell)
        target: Path = options.out or sheets_beside(path)
        # Everything is made before the folder is touched, so that a failure leaves the old sheets
        # whole.
        write(target, sheet_files(options.sheets, result, alone=not options.quiet))
    except StopError as stop:
        return stop.outcome
    tell_done(summary(result, target), target)
    return Outcome(CLEAN)


def write(target: Path, files: Mapping[str, bytes]) -> None:
    """Write a folder of sheets.

    Raises:
        StopError: it cannot be written; the reason has been printed.
    """
    try:
        write_folder(target, files)
    except NotOursError:
        # Nothing of the user's is ever deleted, so a folder with other files is left alone.
        text = f"{target} holds other files and was not made by trimlang; name a new --out"
        raise complained(WRONG_USAGE, text) from None
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise complained(WRONG_USAGE, f"cannot write {target}: {reason}") from None


def _compile(options: JobBuild, text: str, path: Path | None, tell: Tell) -> Result:
    effort = effort_of(options.plan)
    with checked_plans(), Progress(sys.stderr, quiet=options.quiet) as progress:
        result = compile_job(text, path=path, name=STDIN, effort=effort, watch=progress.watch)
    tell(options.messages, result)
    # Sheets of a job with errors would be cut from.
    if not result.ok:
        raise StopError(JOB_ERRORS, outcome(result).why)
    return result


def sheet_files(
    options: SheetOptions,
    result: Result,
    *,
    alone: bool = True,
    share: Share | None = None,
    shared: SharedOrder | None = None,
    filler: TemplateFiller | None = None,
) -> dict[str, bytes]:
    """Return the files of a compiled job: name to contents; see ``paperwork``.

    Raises:
        StopError: an option cannot be followed; the reason has been printed.
    """
    try:
        return paperwork(options, result, alone=alone, share=share, shared=shared, filler=filler)
    except RefusedError as error:
        raise complained(WRONG_USAGE, str(error)) from None


def sheets_beside(path: Path | None) -> Path:
    """Return the folder for a job's sheets where the user names none."""
    return Path("job-sheets") if path is None else path.with_name(f"{path.stem}-sheets")


def summary(result: Result, target: Path) -> str:
    """Return what a build that went well prints: pieces, sticks, cost and folder."""
    sticks = sum(len(plan.sticks) for plan in result.plans)

    spare = sum(len(plan.whole_sticks) for plan in result.plans)
    text = (
        f"{counted(len(result.pieces), 'piece')} from {counted(sticks, 'stick')}"
        f"{f' and {spare} spare' if spare else ''},"
        f" {result.job.cost_text(result.cost)} of trim"
        f" ({least_words(result)}) → {target}"
    )
    return f"{site_words(result)}{printable(text)}\n"


def counted(count: int, word: str) -> str:
    """Return a number of things in words: ``1 piece``, ``3 pieces``."""
    return f"{count} {word}" if count == 1 else f"{count} {word}s"
