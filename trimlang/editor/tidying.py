"""Formats a document as ``trimlang tidy`` does, as edits of whole lines."""

from __future__ import annotations

from collections.abc import Iterator
from difflib import SequenceMatcher

from trimlang.diagnostics.source import Source
from trimlang.language.tidy_file import tidy
from trimlang.record import record


@record
class NewLines:
    """``lines`` replace those from ``first`` up to, not including, ``last``, counted from 0."""

    first: int
    last: int
    lines: tuple[str, ...]


def tidied(text: str) -> Iterator[NewLines]:
    """Yield what tidying changes; lines that are tidy already are not touched."""
    before = Source("", text).lines()
    after = tidy(Source("", text)).text.split("\n")[:-1]
    if not before[-1]:
        before.pop()
    matcher = SequenceMatcher(None, before, after, autojunk=False)
    for kind, first, last, start, end in matcher.get_opcodes():
        if kind != "equal":
            yield NewLines(first, last, tuple(after[start:end]))
