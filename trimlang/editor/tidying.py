"""Lays a document out as ``trimlang tidy`` does, in edits of whole lines."""

from __future__ import annotations

from collections.abc import Iterator
from difflib import SequenceMatcher

from trimlang.language.source import Source
from trimlang.language.tidy_file import tidy
from trimlang.record import record


@record
class NewLines:
    """``lines`` stand in place of those from ``first`` to before ``last``, counted from 0."""

    first: int
    last: int
    lines: tuple[str, ...]


def tidied(text: str) -> Iterator[NewLines]:
    """Yield what tidying changes; lines that stay as they are are left alone."""
    before = Source("", text).lines()
    after = tidy(Source("", text)).text.split("\n")[:-1]
    if not before[-1]:
        before.pop()
    matcher = SequenceMatcher(None, before, after, autojunk=False)
    for kind, first, last, start, end in matcher.get_opcodes():
        if kind != "equal":
            yield NewLines(first, last, tuple(after[start:end]))
