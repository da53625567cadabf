"""What a mend is: words for it, and the edits that make it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeAlias

from trimlang.diagnostics.diagnostic import Span
from trimlang.record import record

Facts: TypeAlias = Mapping[str, Any]
"""A finding's own facts, by their names in its message."""


@record
class Edit:
    """Writes ``text`` in place of ``span``; an empty span inserts."""

    span: Span
    text: str


@record
class Mend:
    """One way to mend a finding, in words and as edits.

    ``sure`` says that it is the only way and likely what was meant: an editor may prefer it.
    """

    words: str
    edits: tuple[Edit, ...]
    sure: bool = False


def write(span: Span, text: str, *, sure: bool = False) -> Mend:
    """Return the mend that writes a text in place of a span."""
    return Mend(f"Write “{text}”", (Edit(span, text),), sure)


def delete(span: Span, words: str, *, sure: bool = False) -> Mend:
    """Return the mend that deletes a span; ``words`` say so."""
    return Mend(words, (Edit(span, ""),), sure)


def marked(span: Span, line: str) -> str:
    """Return the part of its line that a span marks."""
    return line[span.column - 1 : span.end - 1]
