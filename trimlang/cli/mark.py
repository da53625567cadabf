"""``trimlang mark``: writes what was done into the job's site log."""

from __future__ import annotations

import sys
import time
from contextlib import suppress
from fractions import Fraction
from pathlib import Path
from typing import Final

from trimlang.cli.mark_log import log_of, take_back
from trimlang.cli.one_job import StopError, read_job
from trimlang.cli.options import MarkOptions, PlanOptions
from trimlang.cli.progress import checked_plans
from trimlang.cli.replies import (
    CLEAN,
    JOB_ERRORS,
    WRONG_USAGE,
    MessageOptions,
    complain,
    tell_done,
)
from trimlang.cli.site_progress import site_words
from trimlang.compiler import Result, compile_job
from trimlang.diagnostics import Span
from trimlang.diagnostics.named_codes import NO_PRICE, NOBODY_BOUGHT, NOT_IN_FULL
from trimlang.diagnostics.show import show
from trimlang.diagnostics.source import Source
from trimlang.money import money_text
from trimlang.output.lock import alone_in
from trimlang.output.one_file import replace_file
from trimlang.site_log.written_out import in_full, in_place, whole_lines

A_MOMENT: Final = 60
"""Seconds within which the same line again is more likely a retry than done twice."""


def mark(options: MarkOptions) -> int:
    """Write what was done into the log; return the exit code."""
    if not (options.lines or options.file or options.pin or options.undo):
        complain("say what was done, such as “cut ST-N-base”, or --pin or --undo")
        return WRONG_USAGE
    if options.undo and (options.lines or options.file or options.pin):
        complain("--undo takes the last line out, and nothing beside it")
        return WRONG_USAGE
    if options.job == "-":
        complain("a job that is read from standard input has no log file")
        return WRONG_USAGE
    # A log of several jobs is nobody's own, so its place has to be said, and only then.
    if bool(options.others) is (options.log is None):
        complain("jobs bought together are named by --with, and their one log by --log")
        return WRONG_USAGE

    try:
        log_path = log_of(options)
        # Another `mark` that read the log meanwhile would write it back without these lines, even
        # one that comes to it by a link.
        with alone_in(*(Path(one).resolve().parent for one in (options.job, log_path))):
            return (
                take_back(log_path, options.messages) if options.undo else _mark(options, log_path)
            )
    except StopError as stop:
        return stop.code


def _mark(options: MarkOptions, log_path: Path) -> int:
    messages = MessageOptions(form=options.messages)
    log = ""
    if log_path.exists():
        log = read_job(str(log_path), messages)[0]
    # A log written on another system keeps its kind of line ends.
    end = "\r\n" if "\r\n" in log else "\n"
    if log and not log.endswith("\n"):
        log += end
    # The number of the first new line: findings from there on are about what is being added.
    first = log.count("\n") + 1

    saved = read_job(options.file, messages)[0].splitlines() if options.file else []
    # What a phone saved may have blanks doubled or at its ends; the log has them once.
    lines = [" ".join(line.split()) for line in (*whole_lines(options.lines), *saved)]
    added = "".join(f"{line}{end}" for line in lines if line)
    # The log is compiled with the new lines before it is written: a line with an error never gets
    # in.
    result = _compiled(options, messages, Source(log_path.name, log + added))
    _show(result, options, log_path.name, first)
    if not result.ok:
        return JOB_ERRORS
    if not options.anyway and _counts_as_free(result, log_path.name, first):
        complain(
            "nothing is written, as a stick would count as free: say first what was bought, and"
            " what it cost, or add --anyway"
        )
        return JOB_ERRORS
    return _write(options, result, log_path, log + added, first)


def _compiled(options: MarkOptions, messages: MessageOptions, log: Source) -> Result:
    if options.others:
        from trimlang.cli.shared_build import of_log, planned_together

        files = (options.job, *options.others)
        shared = planned_together(files, options.messages, PlanOptions(), log)
        return of_log(shared.result, log)
    text, path = read_job(options.job, messages)
    with checked_plans("written"):
        return compile_job(text, path=path, log=log.text)


def _counts_as_free(result: Result, log_name: str, first: int) -> bool:
    """Tell whether a new line has a stick that nobody paid for, by all that the job knows."""
    # A stick with a price is on the order and only not marked as bought; one without is a slip.
    # Where nothing has a price, a purchase needs none.
    free = {
        NOBODY_BOUGHT: money_text(Fraction(0)),
        **({NO_PRICE: None} if not result.job.by_length else {}),
    }
    return any(
        finding.code in free
        and dict(finding.facts).get("price") == free[finding.code]
        and finding.span.file == log_name
        and finding.span.line >= first
        for finding in result.diagnostics
    )


def _said_just_now(log_path: Path, before: str, fresh: list[str]) -> bool:
    """Tell whether the log ends in these same lines and was written less than a minute ago."""
    lines = [line for line in before.splitlines() if line.strip()]
    # Compared as written out in full, so that a short line and its full form count as the same.
    if not fresh or lines[-len(fresh) :] != fresh:
        return False
    with suppress(OSError):
        return abs(time.time() - log_path.stat().st_mtime) < A_MOMENT
    return False


def _show(result: Result, options: MarkOptions, log_name: str, first: int) -> None:
    """Show the findings, except that lines are not written out, which is about to be mended."""
    found = [
        finding
        for finding in result.diagnostics
        if finding.code != NOT_IN_FULL
        or not (options.pin or (finding.span.file, finding.span.line) >= (log_name, first))
    ]
    show(found, result.sources, sys.stderr, form=options.messages)


def _write(options: MarkOptions, result: Result, log_path: Path, log: str, first: int) -> int:
    entries = () if result.progress is None else result.progress.full_entries
    full = in_full(result.job, entries, {piece.id: piece.unit for piece in result.pieces})
    texts = {name: source.text for name, source in result.sources.items()}
    texts[log_path.name] = log
    by_file: dict[str, dict[Span, str]] = {}
    for span, words in full.items():
        if options.pin or (span.file == log_path.name and span.line >= first):
            by_file.setdefault(span.file, {})[span] = words
    # Lines may stand in included files too, and each is written out where it stands.
    changed = {name: in_place(texts[name], spans) for name, spans in by_file.items()}
    # With --pin alone the log changes only where a line was short.
    if options.lines or options.file:
        changed.setdefault(log_path.name, log)
    after = changed.get(log_path.name, log).replace("\r\n", "\n").split("\n")
    written = [line for line in after[first - 1 :] if line]
    before = "\n".join(after[: first - 1])
    if not options.anyway and _said_just_now(log_path, before, written):
        complain(
            f"{log_path} ends in just that, written less than a minute ago, so nothing is"
            " written; was it done twice? Then add --anyway"
        )
        return WRONG_USAGE
    try:
        for name, text in changed.items():
            # Each file changes whole or not at all, so a cut of power leaves no half line.
            replace_file(log_path.parent / name, text.encode("utf-8"))
    except OSError as error:
        complain(f"cannot write the log: {(error.strerror or str(error)).lower()}")
        return WRONG_USAGE
    report = "".join(f"{line}\n" for line in written)
    if options.pin:
        report += f"written out in full: {sum(map(len, by_file.values()))}\n"
    tell_done(report + site_words(result), log_path)
    return CLEAN
