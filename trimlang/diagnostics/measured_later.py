"""Mends that write a figure which only a tape can tell: a likely one, and a remark to measure."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from trimlang.diagnostics.diagnostic import Diagnostic, Span
from trimlang.diagnostics.leaving_out import end_of_words
from trimlang.diagnostics.mend import Edit, Mend
from trimlang.diagnostics.setting_aside import TO_MEASURE, remark

Way = Callable[[Diagnostic, Sequence[str]], Iterator[Mend]]


def added(file: str, number: int, line: str, column: int, words: str) -> tuple[Edit, ...]:
    """Return what adds words behind a part of a line, and a remark to measure them."""
    asks = remark(file, number, line, f"{TO_MEASURE}: {words}?")
    if column == end_of_words(line):
        # In one edit: of two at the same place an editor may write the remark first.
        behind = line[column - 1 : asks.span.column - 1]
        whole = Span(file, number, column, asks.span.end)
        return (Edit(whole, f", {words}{behind}{asks.text}"),)
    return (asks, Edit(Span(file, number, column, column), f", {words}"))


def add_measured(words: str) -> Way:
    """Return what adds words behind the part that is marked; `{side}` is the finding's own fact."""

    def offer(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
        span, line = finding.span, lines[finding.span.line - 1]
        said = words.format(**dict(finding.facts))
        # What it says of its slope already could not be read, and is told of by itself.
        if re.search(r"(?<!ceiling )\brising\b", line) and said.startswith("rising"):
            return
        rest = re.match(r"[^,#]*", line[span.end - 1 :])
        column = len(line[: span.end - 1] + (rest[0] if rest else "").rstrip()) + 1
        edits = added(span.file, span.line, line, column, said)
        yield Mend(f"Add {said}, to be measured", edits)

    return offer


def as_one_step(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Say a stair's pitch as one step, in the place of its angle."""
    span, line = finding.span, lines[finding.span.line - 1]
    found = re.search(r"\brising\s+(?P<side>left|right)\s+[^,#]*[^,#\s]", line, re.IGNORECASE)
    if found is not None:
        # a common step (common practice, no source)
        step = f"rising {found['side'].lower()} 7 3/4 in rise, 10 in run"
        place = replace(span, column=found.start() + 1, end=found.end() + 1)
        edits = (remark(span.file, span.line, line, f"{TO_MEASURE}: {step}?"), Edit(place, step))
        yield Mend(f"Write “{step}”, to be measured", edits)


def with_sill(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Say how high the window's sill is, over which boxes are to go."""
    named = f'"{dict(finding.facts)["opening"]}"'
    for number, line in enumerate(lines, start=1):
        if named in line and re.match(r"\s*window\b", line, re.IGNORECASE):
            words = "sill 30 in"
            edits = added(finding.span.file, number, line, end_of_words(line), words)
            yield Mend(f"Add {words}, to be measured", edits)
            return
