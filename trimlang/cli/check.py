"""``trimlang check``: what is wrong with a job file, and how its rooms close."""

from __future__ import annotations

import sys
from pathlib import Path

from trimlang.cli.one_job import Outcome, StopError, outcome, read_job, tell
from trimlang.cli.replies import STDIN, MessageOptions
from trimlang.compiler import Result, check_job
from trimlang.diagnostics import Diagnostic
from trimlang.diagnostics.message_form import MessageForm
from trimlang.letters import printable


def check(
    job: str, messages: MessageOptions, told: set[tuple[str, Diagnostic]] | None = None
) -> Outcome:
    """Print a job file's diagnostics and how its rooms close; ``told`` as for ``tell``."""
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
    if messages.form is MessageForm.JSON:
        import json
    for closing in result.closings:
        if messages.form is MessageForm.JSON:
            said = {"room": closing.room, "closing": closing.text}
            sys.stdout.write(json.dumps(said, ensure_ascii=False) + "\n")
        else:
            where = f"{messages.folder}{Path(job).name}: " if messages.folder else ""
            sys.stdout.write(printable(f"{where}{closing.room}: {closing.text}") + "\n")
