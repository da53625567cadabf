"""Turns a finding into edits of the file.

A mend is made from the finding's own facts and the line that it marks.  Where two remedies are
equally good both are offered; where only a tape or the yard can tell, what is written is marked as
a thing to measure or to ask, or the line is put aside.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import chain
from typing import Final

from trimlang.diagnostics.diagnostic import Diagnostic, Span
from trimlang.diagnostics.further_mends import FURTHER
from trimlang.diagnostics.in_other_lines import IN_OTHER_LINES
from trimlang.diagnostics.mend import Edit, Mend, marked, write
from trimlang.diagnostics.mends_by_code import MENDS
from trimlang.diagnostics.suggestion import Suggestion

_NUMBER: Final = re.compile(r"(?<![^\W\d_])\d+")
"""A number by itself: one behind a letter belongs to a name, and measures nothing."""


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
    said = marked(span, line).strip()
    kept = (Edit(span, way), *_remark(span, said, way, line))
    if not way.strip(" "):
        return Mend(f"Leave “{said}” out", kept, sure)
    if way.startswith(",") and marked(span, line).strip()[:1] != ",":
        # A comma follows a word without a blank, so it goes before the blank that is there.
        bare = line[: span.column - 1].rstrip()
        return Mend("Put a comma", (Edit(replace(span, column=len(bare) + 1), way),), sure)
    return replace(write(span, way, sure=sure), edits=kept)


def _remark(span: Span, said: str, way: str, line: str) -> tuple[Edit, ...]:
    """Return the edit that keeps what was measured as a remark, where the mend leaves it out."""
    left = _NUMBER.findall(way)
    # “l2” becomes 12 and “1,200” becomes 1200: there a number is part of another, and not lost.
    if all(not int(one) or any(one in other for other in left) for one in _NUMBER.findall(said)):
        return ()
    end = len(line.rstrip()) + 1
    sign = ";" if "#" in line[span.end - 1 :] else "  #"
    return (Edit(replace(span, column=end, end=end), f"{sign} {said.strip(' ,')}"),)
