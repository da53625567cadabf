"""``trimlang check`` of several jobs, one after the other."""

from __future__ import annotations

from collections.abc import Sequence

from trimlang.cli.check import check
from trimlang.cli.many_jobs import one_of_many, several, worse
from trimlang.cli.replies import CLEAN, WRONG_USAGE
from trimlang.diagnostics import Diagnostic
from trimlang.diagnostics.message_form import MessageForm


def check_many(jobs: Sequence[str], form: MessageForm) -> int:
    """Check the jobs; return the exit code."""
    files = several(jobs)
    if files is None:
        return WRONG_USAGE
    code = CLEAN
    told: set[tuple[str, Diagnostic]] = set()
    for file in files:
        code = worse(code, check(file, one_of_many(file, form), told).code)
    return code
