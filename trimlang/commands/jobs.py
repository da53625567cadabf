"""``trimlang build`` and ``trimlang check``."""

from __future__ import annotations

import sys
from argparse import Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from trimlang.commands.words import CLEAN, JOB_ERRORS, OUR_FAULT, STDIN, WRONG_USAGE, complain
from trimlang.compiler import WrongPlanError, check_job, compile_job
from trimlang.diagnostics import Span, has_errors, say
from trimlang.diagnostics.show import show
from trimlang.reading import UnreadableError, read_stream, read_text

if TYPE_CHECKING:
    from trimlang.compiler import Result


class StopError(Exception):
    """The command ends here, with this exit code; its message is printed already."""

    def __init__(self, code: int) -> None:
        super().__init__(code)
        self.code = code


def check(options: Namespace) -> int:
    """Print a job file's diagnostics; return the exit code."""
    try:
        text, path = read_job(options.job, options.messages)
    except StopError as stop:
        return stop.code
    result = check_job(text, path=path, name=STDIN)
    show(result.diagnostics, result.sources, sys.stderr, form=options.messages)
    return JOB_ERRORS if has_errors(result.diagnostics) else CLEAN


def build(options: Namespace) -> int:
    """Compile a job file and write its sheets; return the exit code."""
    try:
        text, path = read_job(options.job, options.messages)
        result = _compile(options, text, path)
        files = _files(options, result)
    except StopError as stop:
        return stop.code
    from trimlang.commands.folder import NotOursError, write_folder

    target: Path = options.out or _beside(path)
    try:
        write_folder(target, files)
    except NotOursError:
        complain(f"{target} holds other files and was not made by trimlang; name a new --out")
        return WRONG_USAGE
    except OSError as error:
        complain(f"cannot write {target}: {(error.strerror or str(error)).lower()}")
        return WRONG_USAGE
    sys.stdout.write(_summary(result, target))
    return CLEAN


def read_job(job: str, messages: str) -> tuple[str, Path | None]:
    """Return a job file's text, and its path unless ``job`` is ``-`` for standard input.

    Raises:
        StopError: it cannot be read; that is said already, in the form ``messages``.
    """
    try:
        if job == "-":
            return read_stream(sys.stdin.buffer, STDIN), None
        path = Path(job)
        return read_text(path), path
    except UnreadableError as error:
        name = STDIN if job == "-" else Path(job).name
        finding = say(error.code, Span(name, 1, 1, 2), **error.facts)
        show((finding,), {}, sys.stderr, form=messages)
        raise StopError(JOB_ERRORS) from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        complain(f"cannot read {job}: {reason.lower()}")
        raise StopError(WRONG_USAGE) from None


def _compile(options: Namespace, text: str, path: Path | None) -> Result:
    from trimlang.commands.progress import Progress
    from trimlang.stock.planner import QUICK, Effort

    effort = QUICK if options.plan == "quick" else Effort(seconds=options.plan_seconds)
    try:
        with Progress(sys.stderr) as progress:
            result = compile_job(text, path=path, name=STDIN, effort=effort, watch=progress.watch)
    except WrongPlanError as error:
        complain(f"a stock plan failed its own check, so nothing is printed ({error})")
        raise StopError(OUR_FAULT) from None
    show(result.diagnostics, result.sources, sys.stderr, form=options.messages)
    if not result.ok:
        raise StopError(JOB_ERRORS)
    return result


def _files(options: Namespace, result: Result) -> dict[str, bytes]:
    formats = set(options.formats or ("html", "pdf"))
    from trimlang.sheets.data import plan_json

    files = {"plan.json": plan_json(result).encode()}
    if not formats & {"html", "pdf"}:
        return files
    from trimlang.sheets.order_csv import order_csv
    from trimlang.sheets.pages import render_sheets
    from trimlang.sheets.press import SheetTemplateError

    if options.templates is not None and not options.templates.is_dir():
        complain(f"there is no folder {options.templates}")
        raise StopError(WRONG_USAGE)
    paper = options.paper or ("a4" if result.job.settings.unit == "mm" else "letter")
    try:
        sheets = render_sheets(
            result,
            paper=paper,
            templates=options.templates,
            show=options.show,
            language=options.language,
            qr=not options.no_codes,
            ticket=options.ticket,
        )
    except SheetTemplateError as error:
        complain(f"a template is wrong: {error}")
        raise StopError(WRONG_USAGE) from None
    except ValueError as error:  # a language or a label that there is not
        complain(str(error))
        raise StopError(WRONG_USAGE) from None
    files["stock-order.csv"] = order_csv(result).encode()
    if "html" in formats:
        files |= {f"{name}.html": html.encode() for name, html in sheets.items()}
    if "pdf" in formats:
        from trimlang.sheets.pdf import PangoMissingError, to_pdf

        try:
            files |= {f"{name}.pdf": to_pdf(html) for name, html in sheets.items()}
        except PangoMissingError as error:
            complain(str(error))
            raise StopError(WRONG_USAGE) from None
    return files


def _beside(path: Path | None) -> Path:
    return Path("job-sheets") if path is None else path.with_name(f"{path.stem}-sheets")


def _summary(result: Result, target: Path) -> str:
    from trimlang.sheets.data import money_text, plan_status

    sticks = sum(len(plan.sticks) for plan in result.plans)
    return (
        f"{len(result.pieces)} pieces from {sticks} sticks,"
        f" {result.job.currency}{money_text(result.cost)} of trim"
        f" ({plan_status(result.plans)}; no plan costs less than"
        f" {result.job.currency}{money_text(result.bound)}) → {target}\n"
    )
