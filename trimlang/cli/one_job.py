"""How one job file is read and reported: what ``build``, ``check`` and all other commands share."""

from __future__ import annotations

import sys
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, BinaryIO, TypeAlias

from trimlang.cli.replies import (
    CLEAN,
    JOB_ERRORS,
    STDIN,
    WRONG_USAGE,
    MessageOptions,
    complain,
)
from trimlang.diagnostics import Diagnostic, Severity, Span, say
from trimlang.diagnostics.show import show
from trimlang.reading import UnreadableError, read_stream, read_text
from trimlang.record import record

if TYPE_CHECKING:
    from trimlang.compiler import Result
    from trimlang.diagnostics.source import Source


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


def complained(code: int, text: str) -> StopError:
    """Print a complaint, and return the exception that ends the command."""
    complain(text)
    return StopError(code, text)


@record
class Found:
    """Findings, and the texts of the files that they are in, by name."""

    diagnostics: tuple[Diagnostic, ...]
    sources: Mapping[str, Source]


Tell: TypeAlias = Callable[[MessageOptions, "Result | Found"], None]
"""What is done with findings, given how they are to be printed."""


def tell(
    messages: MessageOptions,
    result: Result | Found,
    told: set[tuple[str, Diagnostic]] | None = None,
) -> None:
    """Print a job's diagnostics in the form that the options ask for.

    ``told`` has those of the jobs before it, and gets its own: what is wrong in a file that
    several jobs include is told once.
    """
    found = {(f"{messages.folder}{one.span.file}", one): one for one in result.diagnostics}
    show(
        [one for key, one in found.items() if told is None or key not in told],
        result.sources,
        sys.stderr,
        form=messages.form,
        folder=messages.folder,
    )
    if told is not None:
        told.update(found)


def read_job(job: str, messages: MessageOptions, tell: Tell = tell) -> tuple[str, Path | None]:
    """Return a job file's text, and its path unless ``job`` is ``-`` for standard input.

    Raises:
        StopError: it cannot be read; the reason has been told.
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
        tell(messages, Found((finding,), {}))
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
