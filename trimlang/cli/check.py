"""``trimlang check``: what is wrong with job files, and how their rooms close."""

from __future__ import annotations

import sys
from argparse import Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from trimlang.cli.replies import (
    CLEAN,
    STDIN,
    WRONG_USAGE,
    Commands,
    MessageOptions,
    jobs_and_messages,
)
from trimlang.diagnostics.message_form import MessageForm
from trimlang.record import record

if TYPE_CHECKING:
    from trimlang.cli.one_job import Outcome
    from trimlang.compiler import Result
    from trimlang.diagnostics import Diagnostic


@record
class CheckOptions:
    """``trimlang check``: the job files; ``-`` is standard input."""

    jobs: tuple[str, ...]
    messages: MessageForm


def describe(commands: Commands) -> None:
    """Add the command and its options."""
    check = commands.add_parser(
        "check", help="print what is wrong with job files and how their rooms close; write nothing"
    )
    jobs_and_messages(check)
    check.set_defaults(run=run)


def run(asked: Namespace) -> int:
    """Check the jobs; return the exit code."""
    options = CheckOptions(jobs=tuple(asked.job_files), messages=MessageForm(asked.messages))
    if len(options.jobs) > 1:
        return _one_after_the_other(options)
    return _check(options.jobs[0], MessageOptions(form=options.messages)).code


def _one_after_the_other(options: CheckOptions) -> int:
    from trimlang.cli.many_jobs import one_of_many, several, worse

    files = several(options.jobs)
    if files is None:
        return WRONG_USAGE
    code = CLEAN
    told: set[tuple[str, Diagnostic]] = set()
    for file in files:
        code = worse(code, _check(file, one_of_many(file, options.messages), told).code)
    return code


def _check(
    job: str, messages: MessageOptions, told: set[tuple[str, Diagnostic]] | None = None
) -> Outcome:
    """Print a job file's diagnostics and how its rooms close; ``told`` as for ``tell``."""
    from trimlang.cli.one_job import StopError, outcome, read_job, tell
    from trimlang.compiler import check_job

    try:
        text, path = read_job(job, messages)
    except StopError as stop:
        return stop.outcome
    result = check_job(text, path=path, name=STDIN)
    tell(messages, result, told)
    _tell_closings(messages, result, job)
    return outcome(result)


def _tell_closings(messages: MessageOptions, result: Result, job: str) -> None:
    """Print how each room closes, one line each; it is a result, so it goes to standard output."""
    from trimlang.letters import printable

    if messages.form is MessageForm.JSON:
        import json
    for closing in result.closings:
        if messages.form is MessageForm.JSON:
            said = {"room": closing.room, "closing": closing.text}
            sys.stdout.write(json.dumps(said, ensure_ascii=False) + "\n")
        else:
            where = f"{messages.folder}{Path(job).name}: " if messages.folder else ""
            sys.stdout.write(printable(f"{where}{closing.room}: {closing.text}") + "\n")
