"""``trimlang mark``: writes what was done into the job's log file."""

from __future__ import annotations

import re
import sys
from argparse import Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from trimlang.cli.options import MarkOptions, MessageOptions
from trimlang.cli.replies import (
    CLEAN,
    JOB_ERRORS,
    WRONG_USAGE,
    Commands,
    add_command,
    complain,
    messages,
)
from trimlang.diagnostics.log_pages import NOT_IN_FULL
from trimlang.diagnostics.message_form import MessageForm

if TYPE_CHECKING:
    from trimlang.compiler import Result
    from trimlang.diagnostics import Span


def describe(commands: Commands) -> None:
    """Add the command and its options."""
    mark = add_command(
        commands,
        "mark",
        "write what was done (cut, spoiled, bought, fitted) into the job's log file",
    )
    mark.add_argument("job", metavar="JOB.trim", help="the job file; the log is JOB.site beside it")
    mark.add_argument(
        "lines",
        nargs="*",
        metavar="LINE",
        help="a line of the log, such as “cut ST-N-base”; it is written out in full",
    )
    mark.add_argument(
        "--pin",
        action="store_true",
        help="write the lines that are there already out in full too, in their place",
    )
    messages(mark)
    mark.set_defaults(run=run)


def run(asked: Namespace) -> int:
    """Mark what was done; return the exit code."""
    from trimlang.cli.build import StopError

    options = MarkOptions(
        job=asked.job,
        lines=tuple(asked.lines),
        pin=asked.pin,
        messages=MessageForm(asked.messages),
    )
    if not options.lines and not options.pin:
        complain("say what was done, such as “cut ST-N-base”, or --pin")
        return WRONG_USAGE
    try:
        return _mark(options)
    except StopError as stop:
        return stop.code


def _mark(options: MarkOptions) -> int:
    from trimlang.cli.build import checked_plans, read_job
    from trimlang.compiler import compile_job
    from trimlang.reading import log_beside

    if options.job == "-":
        complain("a job that is read from standard input has no log file")
        return WRONG_USAGE
    messages = MessageOptions(form=options.messages)
    text, path = read_job(options.job, messages)
    assert path is not None  # noqa: S101  it is no standard input
    log_path = log_beside(path)
    log = ""
    if log_path.exists():
        log = read_job(str(log_path), messages)[0]
    if log and not log.endswith("\n"):
        log += "\n"
    first = log.count("\n") + 1
    added = "".join(f"{' '.join(line.split())}\n" for line in options.lines)
    with checked_plans("written"):
        result = compile_job(text, path=path, log=log + added)
    _show(result, options, log_path.name, first)
    if not result.ok:
        return JOB_ERRORS
    return _write(options, result, path, log + added, first)


def _show(result: Result, options: MarkOptions, log_name: str, first: int) -> None:
    """Show what is wrong; that a line is not written out is about to be mended."""
    from trimlang.diagnostics.show import show

    found = [
        finding
        for finding in result.diagnostics
        if finding.code != NOT_IN_FULL
        or not (options.pin or (finding.span.file, finding.span.line) >= (log_name, first))
    ]
    show(found, result.sources, sys.stderr, form=options.messages)


def _write(options: MarkOptions, result: Result, path: Path, log: str, first: int) -> int:
    from trimlang.cli.site_progress import site_words
    from trimlang.output.one_file import replace_file
    from trimlang.reading import log_beside
    from trimlang.site_log.written_out import in_full

    log_path = log_beside(path)
    told = () if result.progress is None else result.progress.told
    full = in_full(result.job, told, {piece.id: piece.unit for piece in result.pieces})
    texts = {name: source.text for name, source in result.sources.items()}
    texts[log_path.name] = log
    by_file: dict[str, dict[Span, str]] = {}
    for span, words in full.items():
        if options.pin or (span.file == log_path.name and span.line >= first):
            by_file.setdefault(span.file, {})[span] = words
    changed = {name: _in_place(texts[name], spans) for name, spans in by_file.items()}
    if options.lines:
        changed.setdefault(log_path.name, log)
    try:
        for name, text in changed.items():
            replace_file(path.parent / name, text.encode("utf-8"))
    except OSError as error:
        complain(f"cannot write the log: {(error.strerror or str(error)).lower()}")
        return WRONG_USAGE
    written = changed.get(log_path.name, log).split("\n")[first - 1 :]
    sys.stdout.write("".join(f"{line}\n" for line in written if line))
    if options.pin:
        sys.stdout.write(f"written out in full: {sum(map(len, by_file.values()))}\n")
    sys.stdout.write(site_words(result))
    return CLEAN


def _in_place(text: str, spans: dict[Span, str]) -> str:
    """Return a file's text with parts of its lines written otherwise; the rest stays."""
    mark = "\ufeff" if text.startswith("\ufeff") else ""
    # lines and their ends in turn, as trimlang counts them
    parts = re.split(r"(\r\n|\r|\n)", text.removeprefix(mark))
    for span in sorted(spans, reverse=True):
        at = 2 * (span.line - 1)
        line = parts[at]
        parts[at] = line[: span.column - 1] + spans[span] + line[span.end - 1 :]
    return mark + "".join(parts)
