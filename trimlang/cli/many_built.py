"""``trimlang build`` of several jobs: each by itself, told in the order in which they are given."""

from __future__ import annotations

import json
import shutil
import signal
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from threading import current_thread, main_thread
from types import FrameType

from trimlang.cli.build import build
from trimlang.cli.many_jobs import cores, one_of_many, places, several, worse
from trimlang.cli.one_job import Found, tell
from trimlang.cli.options import BuildOptions, JobBuild
from trimlang.cli.replies import (
    CLEAN,
    OUR_FAULT,
    WRONG_USAGE,
    MessageOptions,
    complain,
    tell_done,
)
from trimlang.compiler import Result
from trimlang.diagnostics import Diagnostic
from trimlang.diagnostics.message_form import MessageForm
from trimlang.output.folder import leftovers
from trimlang.output.own_templates import unusable
from trimlang.output.sheet_options import SheetOptions
from trimlang.sheets.render.paper import label
from trimlang.sheets.wording.catalogue import words_in
from trimlang.workers.job_workers import WorkerPool
from trimlang.workers.stopping import StoppedError
from trimlang.workers.worker import JobAnswer


def build_many(options: BuildOptions) -> int:
    """Build the jobs on all cores; return the exit code."""
    files = several(options.jobs)
    if files is None or not _sound(options.sheets):
        return WRONG_USAGE

    targets = places(files, options.out)
    jobs = [
        JobBuild(
            job=file,
            messages=one_of_many(file, options.messages),
            out=target,
            plan=options.plan,
            sheets=options.sheets,
            quiet=True,
        )
        for file, target in zip(files, targets, strict=True)
    ]
    # No more processes than jobs: an idle one costs its start.
    processes = min(options.at_once or cores(), len(files))
    answers: dict[int, JobAnswer] = {}
    told: set[tuple[str, Diagnostic]] = set()
    printed = 0
    with _stoppable(), _bar(len(files)) as step, WorkerPool(processes, _built, OUR_FAULT) as pool:
        try:
            for place, answer in pool.do(jobs):
                # No answer means that the process died; its job is reported, and the others go on.
                answers[place] = answer or _died(files[place])
                step()
                # Jobs finish in any order; an answer waits until all before it have been printed.
                while printed in answers:
                    _print_answer(answers[printed], jobs[printed].messages, told)
                    printed += 1
        except KeyboardInterrupt as stop:
            at = pool.at_work()
            # The processes first, or one of them might write a folder anew that is being removed.
            pool.end()
            _sweep(at, targets)
            built = sum(answer.code == CLEAN for answer in answers.values())
            complain(f"stopped; {_counted(built, len(files))} built, no folder is half written")
            return 128 + (stop.number if isinstance(stop, StoppedError) else signal.SIGINT)
    failed = [(file, answers[n]) for n, file in enumerate(files) if answers[n].code != CLEAN]
    _tell_failed(failed, len(files), options.messages)
    code = CLEAN
    for _, answer in failed:
        code = worse(code, answer.code)
    return code


def _built(job: JobBuild, hand_back: Callable[[Found], None]) -> tuple[int, str]:
    """Build one job; this runs in a worker process, which hands back what it finds."""

    def tell(_messages: MessageOptions, found: Result | Found) -> None:
        # Only a mend needs their facts, and only the lines that they are in are printed.
        findings = tuple(replace(one, facts=()) for one in found.diagnostics)
        names = {one.span.file for one in findings} & found.sources.keys()
        hand_back(Found(findings, {name: found.sources[name] for name in names}))

    outcome = build(job, tell)
    return outcome.code, outcome.why


def _sound(options: SheetOptions) -> bool:
    """Tell whether the options for all jobs can be followed; complain once where they cannot."""
    try:
        words_in(options.language)
        if options.ticket is not None:
            label(options.ticket)
    except ValueError as error:
        complain(str(error))
        return False
    why = unusable(options.templates)
    if why is not None:
        complain(why)
        return False
    return True


def _died(file: str) -> JobAnswer:
    why = "the process that built it came down"
    return JobAnswer(code=OUR_FAULT, why=why, out="", err=f"trimlang: {file}: {why}\n")


def _print_answer(
    answer: JobAnswer, messages: MessageOptions, told: set[tuple[str, Diagnostic]]
) -> None:
    """Print what was found in a job and what it had to say; ``told`` as for ``tell``."""
    for found in answer.back:
        tell(messages, found, told)
    sys.stderr.write(answer.err)
    sys.stderr.flush()
    if answer.out:  # as it is where the job's folder was written
        tell_done(answer.out, "the job's folder")


def _tell_failed(failed: Sequence[tuple[str, JobAnswer]], count: int, form: MessageForm) -> None:
    """Print which jobs failed and why, one line each."""
    if form is MessageForm.JSON:
        for file, answer in failed:
            said = {"job": file, "exit_code": answer.code, "why": answer.why}
            sys.stderr.write(json.dumps(said, ensure_ascii=False) + "\n")
        return
    if failed:
        complain(f"{len(failed)} of {_counted(count, count)} failed:")
        for file, answer in failed:
            sys.stderr.write(f"  {file}: {answer.why}\n")


def _counted(number: int, of: int) -> str:
    return f"{number} jobs" if number == of else f"{number} of {of} jobs"


def _sweep(at: dict[int, int], targets: Sequence[Path]) -> None:
    """Remove the half-written folders of processes that had to be killed."""
    for pid, place in at.items():
        for path in leftovers(targets[place], pid):
            shutil.rmtree(path, ignore_errors=True)


@contextmanager
def _stoppable() -> Iterator[None]:
    """Have SIGTERM answered as Ctrl-C is, so that the worker processes are ended first.

    Raises:
        StoppedError: SIGTERM came.
    """
    if current_thread() is not main_thread():
        yield  # only the main thread may set what a signal does
        return

    def stop(number: int, _frame: FrameType | None) -> None:
        raise StoppedError(number)

    before = signal.signal(signal.SIGTERM, stop)
    try:
        yield
    finally:
        signal.signal(signal.SIGTERM, before)


@contextmanager
def _bar(jobs: int) -> Iterator[Callable[[], None]]:
    """Show on a terminal how many jobs are done; yield a function to call after each."""
    if not sys.stderr.isatty():
        yield lambda: None
        return
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TimeRemainingColumn

    columns = ("building", BarColumn(), MofNCompleteColumn(), TimeRemainingColumn())
    bar = Progress(
        *columns,
        console=Console(file=sys.stderr),
        transient=True,
        redirect_stdout=sys.stdout.isatty(),
    )
    with bar:
        row = bar.add_task("building", total=jobs)
        yield lambda: bar.advance(row)
