"""Names a place in the user's files, as seen from another place."""

from __future__ import annotations

from trimlang.diagnostics.diagnostic import Span


class Place(str):
    """The text ``line 4`` that also knows its place: a fact of a message.

    It is a text like any other, so a message can be filled with it.  Where a finding is moved to
    another file, such as the table that a job file was made from, its places are named again.
    """

    __slots__ = ("span",)
    span: Span

    def __new__(cls, text: str, span: Span) -> Place:
        """Make the text that names ``span``."""
        made = super().__new__(cls, text)
        made.span = span
        return made

    def __getnewargs_ex__(self) -> tuple[tuple[str, Span], dict[str, object]]:
        """Return the arguments to make a copy with, also in another process (pickle)."""
        return (str(self), self.span), {}


def place(span: Span, seen_from: Span) -> Place:
    """Return ``line 4``, with the file's name where ``seen_from`` is in another file."""
    if span.file == seen_from.file:
        return Place(f"line {span.line}", span)
    return Place(f"line {span.line} of {span.file}", span)
