"""A plain-text language for interior trim jobs, and its compiler.

    >>> import trimlang
    >>> result = trimlang.compile(open("job.trim").read())  # doctest: +SKIP
    >>> [piece.id for piece in result.pieces]               # doctest: +SKIP

The front door is ``compile``; what it returns is a ``Result`` of plain frozen
values.  ``read_plan`` gives the values of a ``plan.json`` that was written.
Everything else is for the command line and may change.
"""

from __future__ import annotations

from os import PathLike
from pathlib import Path
from typing import TYPE_CHECKING, Any

from trimlang.version import __version__

if TYPE_CHECKING:
    from trimlang.compiler import Result
    from trimlang.diagnostics import Diagnostic, Severity, Span
    from trimlang.sheets.export.read_plan import PlanFile, PlanFileError

__all__ = [
    "Diagnostic",
    "PlanFile",
    "PlanFileError",
    "Result",
    "Severity",
    "Span",
    "__version__",
    "check",
    "compile",
    "plan_json",
    "read_plan",
    "write_plan",
]


def compile(text: str, *, path: str | PathLike[str] | None = None) -> Result:  # noqa: A001
    """Compile a job file's text.

    Args:
        text: the job file.
        path: where it came from; includes are looked for in that folder, and
            messages show its name.

    Returns:
        The job, its pieces, the stock plan, what else to buy, and all
        diagnostics.  ``result.ok`` tells whether there is no error among them.
        Bad text never raises.
    """
    from trimlang.compiler import compile_job

    return compile_job(text, path=Path(path) if path is not None else None)


def check(text: str, *, path: str | PathLike[str] | None = None) -> Result:
    """Check a job file's text as ``compile`` does, without planning its stock.

    ``result.sources`` holds the text of the job file and of all that it includes.
    """
    from trimlang.compiler import check_job

    return check_job(text, path=Path(path) if path is not None else None)


def plan_json(result: Result) -> bytes:
    """Return a compiled job as ``trimlang build`` writes it to ``plan.json`` (UTF-8)."""
    from trimlang.sheets.export.plan_json import plan_json as written

    return written(result).encode()


def read_plan(text: str) -> PlanFile:
    """Return what stands in a ``plan.json`` that ``trimlang build`` wrote.

    Raises:
        PlanFileError: it is no such file, or of another version; its
            ``diagnostic`` says why (T631 to T634).
    """
    from trimlang.sheets.export.read_plan import read_plan as read

    return read(text)


def write_plan(plan: PlanFile) -> str:
    """Return the text of ``plan.json``: the very bytes that ``plan`` was read from."""
    from trimlang.sheets.export.read_plan import write_plan as write

    return write(plan)


def __getattr__(name: str) -> Any:
    """Load the front door's types when they are asked for: importing trimlang stays cheap."""
    if name == "Result":
        from trimlang.compiler import Result

        return Result
    if name in ("PlanFile", "PlanFileError"):
        from trimlang.sheets.export import read_plan

        return getattr(read_plan, name)
    if name in ("Diagnostic", "Severity", "Span"):
        from trimlang import diagnostics

        return getattr(diagnostics, name)
    raise AttributeError(f"module 'trimlang' has no attribute {name!r}")
