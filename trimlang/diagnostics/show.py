"""Prints diagnostics: with their line and a caret for people, as JSON for programs."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Final, TextIO

from trimlang.diagnostics.diagnostic import Diagnostic
from trimlang.diagnostics.message_form import MessageForm
from trimlang.diagnostics.severity import Severity
from trimlang.diagnostics.source import Source
from trimlang.letters import printable

# Columns shown of a line: a line of a megabyte, all on one line, would fill the terminal.
_WIDEST: Final = 160
_STYLES: Final = {Severity.ERROR: "bold red", Severity.WARNING: "bold yellow"}


def as_data(finding: Diagnostic) -> dict[str, str | int]:
    """Return a diagnostic as plain data: columns from 1, ``end_column`` behind the last one."""
    return {
        "code": finding.code,
        "severity": finding.severity.value,
        "file": finding.span.file,
        "line": finding.span.line,
        "column": finding.span.column,
        "end_column": finding.span.end,
        "message": finding.message,
        "remedy": finding.remedy,
    }


def _shown(
    findings: Iterable[Diagnostic], sources: Mapping[str, Source], folder: str
) -> Iterator[tuple[str, str]]:
    """Yield the lines to print, each with its style."""
    # A file is split into lines once, however many findings it has.
    split: dict[str, list[str]] = {}
    for finding in findings:
        name = finding.span.file
        if name not in split:
            split[name] = sources[name].lines() if name in sources else []
        yield from _lines(finding, split[name], folder)


def _lines(finding: Diagnostic, lines: list[str], folder: str) -> Iterator[tuple[str, str]]:
    span = finding.span
    # A file's name and a message hold what the user typed: a control character in them could move
    # the cursor or hide a line.
    place = printable(f"{folder}{span.file}:{span.line}:{span.column}")
    head = f"{finding.severity.value} {finding.code}: {printable(finding.message)}"
    yield f"{place}: {head}", _STYLES[finding.severity]
    if 0 < span.line <= len(lines):
        # One character is shown for each that is in the file, so that the caret below stays in its
        # column.
        text = printable(lines[span.line - 1])
        # A long line is shown from half a width before the place that is marked.
        first = max(0, span.column - _WIDEST // 2) if len(text) > _WIDEST else 0
        margin = f"{span.line:>6} | "
        yield margin + text[first : first + _WIDEST].rstrip(), ""
        width = max(1, min(span.end, first + _WIDEST + 1) - span.column)
        yield " " * 7 + "| " + " " * (span.column - 1 - first) + "^" * width, "bold"
    if finding.remedy:
        yield " " * 9 + printable(finding.remedy), ""


def show(
    findings: Iterable[Diagnostic],
    sources: Mapping[str, Source],
    stream: TextIO,
    *,
    form: MessageForm = MessageForm.TEXT,
    folder: str = "",
) -> None:
    """Write findings to ``stream``: ``form`` is for people or for programs.

    ``folder`` is put before each file's name, where several jobs are built in one call.

    Text is coloured where the stream is a terminal and NO_COLOR is not set.
    """
    findings = tuple(findings)
    if form is MessageForm.JSON:
        import json

        for finding in findings:
            data = as_data(finding)
            data["file"] = f"{folder}{data['file']}"
            # In ASCII: no character can steer a terminal or fail in the terminal's encoding.
            stream.write(json.dumps(data) + "\n")
        return
    if not findings:
        return
    # A file or another program gets plain lines, and need not wait for the library that colours
    # them.
    # While a bar is shown rich stands before the stream, and said before its version 15 that it is
    # no terminal.
    if not getattr(stream, "rich_proxied_file", stream).isatty():
        for line, _style in _shown(findings, sources, folder):
            stream.write(line + "\n")
        return
    from rich.console import Console
    from rich.text import Text

    console = Console(file=stream, soft_wrap=True, highlight=False)
    # An old Windows console is coloured by calls to the system, not by signs that are printed.
    if console.legacy_windows:
        for line, style in _shown(findings, sources, folder):
            console.print(Text(line, style=style))
        return
    # Through the stream, which may be another's that keeps a bar below what is printed.
    with console.capture() as coloured:
        for line, style in _shown(findings, sources, folder):
            console.print(Text(line, style=style))
    stream.write(coloured.get())
