"""Several jobs in one call: each by itself, reported in the order in which they were given."""

from __future__ import annotations

import json
import os
import shutil
import signal
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager, suppress
from dataclasses import replace
from pathlib import Path
from threading import current_thread, main_thread
from types import FrameType
from typing import TYPE_CHECKING, Final

from trimlang.cli.one_job import Found, tell
from trimlang.cli.options import BuildOptions, JobBuild
from trimlang.cli.replies import (
    CLEAN,
    JOB_ERRORS,
    OUR_FAULT,
    WRONG_USAGE,
    MessageOptions,
    complain,
    tell_done,
)
from trimlang.diagnostics.message_form import MessageForm
from trimlang.output.own_templates import unusable
from trimlang.output.sheet_options import SheetOptions
from trimlang.workers.stopping import StoppedError

if TYPE_CHECKING:
    from trimlang.compiler import Result
    from trimlang.diagnostics import Diagnostic
    from trimlang.workers.worker import JobAnswer

_DEVICES: Final = frozenset(
    (
        "con",
        "prn",
        "aux",
        "nul",
        *(f"{port}{number}" for port in ("com", "lpt") for number in "123456789"),
    )
)
"""Names that no file may have on Windows, whatever stands behind a dot; nor may one end in a dot or
a blank (Microsoft, Naming Files, Paths, and Namespaces)."""


def build_many(options: BuildOptions) -> int:
    """Build the jobs on all cores; return the exit code."""
    files = several(options.jobs)
    if files is None or not _sound(options.sheets):
        return WRONG_USAGE
    from trimlang.workers.job_workers import WorkerPool

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
    from trimlang.cli.build import build

    def tell(_messages: MessageOptions, found: Result | Found) -> None:
        # Only a mend needs their facts, and only the lines that they are in are printed.
        findings = tuple(replace(one, facts=()) for one in found.diagnostics)
        names = {one.span.file for one in findings} & found.sources.keys()
        hand_back(Found(findings, {name: found.sources[name] for name in names}))

    outcome = build(job, tell)
    return outcome.code, outcome.why


def several(given: Sequence[str]) -> list[str] | None:
    """Return the job files, each only once; None, with a complaint, if standard input is one."""
    if "-" in given:
        complain("standard input is one job: - cannot stand beside other job files")
        return None
    seen: dict[tuple[str, int, int], str] = {}
    for file in given:
        with suppress(OSError, RuntimeError):
            # A file given twice, also by another path, is one job: two builds would write one
            # folder.
            seen.setdefault(_identity(Path(file).resolve()), file)
    return list(seen.values())


def _identity(path: Path) -> tuple[str, int, int]:
    """Return what is the same for two names of one file that differ by case at most."""
    try:
        there = path.stat()
    except OSError:
        return str(path), 0, 0  # that it is missing is told when it is read
    return str(path).casefold(), there.st_dev, there.st_ino


def one_of_many(file: str, form: MessageForm) -> MessageOptions:
    """Return the message options for one of several jobs: its folder stands before file names."""
    folder = Path(file).parent.as_posix()
    return MessageOptions(form=form, folder="" if folder == "." else f"{folder.rstrip('/')}/")


def places(files: Sequence[str], out: Path | None, reserved: Sequence[str] = ()) -> list[Path]:
    """Return each job's folder, in ``out`` or beside the job; no two are the same.

    A folder in ``out`` has the name of the job's file.  Where two would be the same, the name of
    the file's own folder is put before it; where that does not help, the later ones get a number.
    ``reserved`` are names in ``out`` that no job may have.
    """
    paths = [Path(file) for file in files]
    names = [_everywhere(path.stem) if out is not None else f"{path.stem}-sheets" for path in paths]
    folders = [path.resolve().parent if out is None else out for path in paths]
    if out is not None:
        # Names that differ only in case are one folder on some disks.
        counts = {name.casefold(): 1 for name in reserved}
        for name in names:
            counts[name.casefold()] = counts.get(name.casefold(), 0) + 1
        names = [
            f"{path.resolve().parent.name}-{name}" if counts[name.casefold()] > 1 else name
            for path, name in zip(paths, names, strict=True)
        ]
    taken = {(out, name.casefold()) for name in reserved}
    found: list[Path] = []
    for path, folder, name in zip(paths, folders, names, strict=True):
        number, free = 1, name
        while (folder, free.casefold()) in taken:
            number += 1
            free = f"{name}-{number}"
        taken.add((folder, free.casefold()))
        found.append(out / free if out is not None else path.with_name(free))
    return found


def _everywhere(stem: str) -> str:
    """Return a job's name as a folder may be called on Windows too, where a folder is copied."""
    name = stem.rstrip(". ") or "job"
    return f"{name}-sheets" if name.partition(".")[0].casefold() in _DEVICES else name


def worse(one: int, other: int) -> int:
    """Return the exit code of two jobs together: 1 if one failed, 3 if trimlang is at fault."""
    if OUR_FAULT in (one, other):
        return OUR_FAULT
    return JOB_ERRORS if one or other else CLEAN


def cores() -> int:
    """Return how many cores this process may use."""
    with suppress(AttributeError):
        # In a container there may be fewer cores for us than the machine has.
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def _sound(options: SheetOptions) -> bool:
    """Tell whether the options for all jobs can be followed; complain once where they cannot."""
    from trimlang.sheets.render.paper import label
    from trimlang.sheets.wording.catalogue import words_in

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
    from trimlang.workers.worker import JobAnswer

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
    from trimlang.output.folder import leftovers

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
