"""Turns a finding into edits of the file.

A mend is made from the finding's own facts and the line that it marks.  Where two remedies are
equally good both are offered; where only a tape or the yard can tell, what is written is marked as
a thing to measure or to ask, or the line is put aside.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import chain

from trimlang.diagnostics.diagnostic import Diagnostic, Span
from trimlang.diagnostics.further_mends import FURTHER
from trimlang.diagnostics.in_other_lines import IN_OTHER_LINES
from trimlang.diagnostics.mend import Edit, Mend, marked, write
from trimlang.diagnostics.mends_by_code import MENDS
from trimlang.diagnostics.suggestion import Suggestion


def mends(finding: Diagnostic, line: str, lines: Sequence[str] = ()) -> tuple[Mend, ...]:
    """Return the ways to mend ``finding``; ``line`` is the text of the line that it marks.

    ``lines`` are those of the whole file: where they are given, what is mended in another line is
    offered too.
    """
    facts = dict(finding.facts)
    remedy = facts.get("remedy")
    # What was worked out where the mistake was found knows more than a rule for its code, so it
    # goes first.
    further = chain.from_iterable(
        way(finding, lines) for way in (FURTHER.get(finding.code, ()) if lines else ())
    )
    if isinstance(remedy, Suggestion):
        sure = len(remedy.ways) == 1
        said = (_suggested(finding.span, remedy, way, line, sure) for way in remedy.ways)
        return (*said, *further)
    here = MENDS.get(finding.code, ())
    made = chain.from_iterable(way(finding.span, facts, line) for way in here)
    elsewhere = IN_OTHER_LINES.get(finding.code) if lines else None
    return (*made, *(elsewhere(finding, lines) if elsewhere is not None else ()), *further)


def _suggested(span: Span, remedy: Suggestion, way: str, line: str, sure: bool) -> Mend:
    if remedy.covers is not None:
        # A slip may be longer than the word that gave it away.
        span = replace(span, end=span.column + remedy.covers)
    if not way.strip(" "):
        said = marked(span, line).strip()
        return Mend(f"Leave “{said}” out", (Edit(span, way),), sure)
    if way.startswith(",") and marked(span, line).strip()[:1] != ",":
        # A comma follows a word without a blank, so it goes before the blank that is there.
        bare = line[: span.column - 1].rstrip()
        return Mend("Put a comma", (Edit(replace(span, column=len(bare) + 1), way),), sure)
    return write(span, way, sure=sure)
