"""Names a place in the user's files, as seen from another."""

from __future__ import annotations

from trimlang.diagnostics.diagnostic import Span


def place(span: Span, seen_from: Span) -> str:
    """Return ``line 4``, with the file's name where ``seen_from`` is in another file."""
    if span.file == seen_from.file:
        return f"line {span.line}"
    return f"line {span.line} of {span.file}"
