"""What ``trimlang build`` and ``trimlang check`` do for one job."""

from __future__ import annotations

import sys
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, BinaryIO

from trimlang.cli.options import JobBuild, MessageOptions
from trimlang.cli.replies import (
    CLEAN,
    JOB_ERRORS,
    OUR_FAULT,
    STDIN,
    WRONG_USAGE,
    complain,
    tell_done,
)
from trimlang.compiler import check_job, compile_job
from trimlang.diagnostics import Severity, Span, say
from trimlang.diagnostics.message_form import MessageForm
from trimlang.diagnostics.show import show
from trimlang.letters import printable
from trimlang.planning.wrong_plan import WrongPlanError
from trimlang.reading import UnreadableError, read_stream, read_text
from trimlang.record import record

if TYPE_CHECKING:
    from trimlang.compiler import Result
    from trimlang.output.job_files import Share
    from trimlang.output.sheet_options import SheetOptions
    from trimlang.shared_order.shared_result import SharedOrder
    from trimlang.sheets.render.template_filling import TemplateFiller


@record
class Outcome:
    """How a job went: its exit code and, where that is not 0, the reason in one line."""

    code: int
    why: str = ""


class StopError(Exception):
    """The command ends here with this exit code; the message has been printed already."""

    def __init__(self, code: int, why: str = "") -> None:
        super().__init__(code)
        self.code = code
        self.outcome = Outcome(code, why)


def check(job: str, messages: MessageOptions) -> Outcome:
    """Print a job file's diagnostics and how its rooms close."""
    try:
        text, path = read_job(job, messages)
    except StopError as stop:
        return stop.outcome
    result = check_job(text, path=path, name=STDIN)
    tell(messages, result)
    tell_closings(messages, result, job)
    return outcome(result)


def tell_closings(messages: MessageOptions, result: Result, job: str) -> None:
    """Print how each room closes, one line each; it is a result, so it goes to standard output."""
    if messages.form is MessageForm.JSON:
        import json
    for closing in result.closings:
        if messages.form is MessageForm.JSON:
            said = {"room": closing.room, "closing": closing.text}
            sys.stdout.write(json.dumps(said, ensure_ascii=False) + "\n")
        else:
            where = f"{messages.folder}{Path(job).name}: " if messages.folder else ""
            sys.stdout.write(printable(f"{where}{closing.room}: {closing.text}") + "\n")


def build(options: JobBuild) -> Outcome:
    """Compile a job file and write its folder of sheets."""
    try:
        text, path = read_job(options.job, options.messages)
        result = _compile(options, text, path)
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
    from trimlang.output.folder import write_folder
    from trimlang.output.made_by import NotOursError

    try:
        write_folder(target, files)
    except NotOursError:
        # Nothing of the user's is ever deleted, so a folder with other files is left alone.
        text = f"{target} holds other files and was not made by trimlang; name a new --out"
        raise complained(WRONG_USAGE, text) from None
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise complained(WRONG_USAGE, f"cannot write {target}: {reason}") from None


def tell(messages: MessageOptions, result: Result) -> None:
    """Print a job's diagnostics in the form that the options ask for."""
    show(
        result.diagnostics,
        result.sources,
        sys.stderr,
        form=messages.form,
        folder=messages.folder,
    )


def complained(code: int, text: str) -> StopError:
    """Print a complaint, and return the exception that ends the command."""
    complain(text)
    return StopError(code, text)


@contextmanager
def checked_plans(what: str = "printed") -> Iterator[None]:
    """Plan within this: a plan that the verifier rejects is our defect and ends the command.

    Raises:
        StopError: a plan was rejected; the reason has been printed.
    """
    try:
        yield
    except WrongPlanError as error:
        text = f"a stock plan failed its own check, so nothing is {what} ({error})"
        raise complained(OUR_FAULT, text) from None


def outcome(result: Result) -> Outcome:
    """Return how a job went by its diagnostics, with the first error if there is one."""
    # Warnings do not fail a job.
    errors = [one for one in result.diagnostics if one.severity is Severity.ERROR]
    if not errors:
        return Outcome(CLEAN)
    # One line for a summary of many jobs: the first mistake is where one begins to mend.
    first = errors[0]
    count = f"{len(errors)} errors, the first in" if len(errors) > 1 else "an error in"
    why = f"{count} line {first.span.line}: {first.code} {first.message}"
    return Outcome(JOB_ERRORS, why)


def read_job(job: str, messages: MessageOptions) -> tuple[str, Path | None]:
    """Return a job file's text, and its path unless ``job`` is ``-`` for standard input.

    Raises:
        StopError: it cannot be read; the reason has been printed.
    """
    try:
        if job == "-":
            return read_stream(_standard_input(), STDIN), None
        path = Path(job)
        return read_text(path), path
    except UnreadableError as error:
        name = STDIN if job == "-" else Path(job).name
        # A file that cannot be read is reported like any mistake in it, at its first place.
        finding = say(error.code, Span(name, 1, 1, 2), **error.facts)
        show((finding,), {}, sys.stderr, form=messages.form, folder=messages.folder)
        raise StopError(JOB_ERRORS, f"{finding.code} {finding.message}") from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        text = f"cannot read {job}: {reason.lower()}"
        raise complained(WRONG_USAGE, text) from None


def _standard_input() -> BinaryIO:
    # Python gives None for a stream that its caller has closed.
    if sys.stdin is None:
        raise OSError("standard input is closed")
    return sys.stdin.buffer


def _compile(options: JobBuild, text: str, path: Path | None) -> Result:
    from trimlang.cli.progress import Progress

    effort = options.plan.effort()
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
    # Imported here, since `check` needs nothing of the sheets.
    from trimlang.output.job_files import paperwork
    from trimlang.workers.forked import RefusedError

    try:
        return paperwork(options, result, alone=alone, share=share, shared=shared, filler=filler)
    except RefusedError as error:
        raise complained(WRONG_USAGE, str(error)) from None


def sheets_beside(path: Path | None) -> Path:
    """Return the folder for a job's sheets where the user names none."""
    return Path("job-sheets") if path is None else path.with_name(f"{path.stem}-sheets")


def summary(result: Result, target: Path) -> str:
    """Return what a build that went well prints: pieces, sticks, cost and folder."""
    from trimlang.sheets.export.plan_json import least_words

    sticks = sum(len(plan.sticks) for plan in result.plans)
    from trimlang.cli.site_progress import site_words

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
