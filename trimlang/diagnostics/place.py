"""Names a place in the user's files, as seen from another."""

from __future__ import annotations

from trimlang.diagnostics.diagnostic import Span


class Place(str):
    """The text ``line 4`` that also knows the line: a fact of a message.

    It reads like any other text, so a message takes it as it is; where a finding is told of
    another file, such as the table that a job file was made of, its place is named anew.
    """

    __slots__ = ("span",)
    span: Span

    def __new__(cls, text: str, span: Span) -> Place:
        """Make the text that names ``span``."""
        made = super().__new__(cls, text)
        made.span = span
        return made

    def __getnewargs_ex__(self) -> tuple[tuple[str, Span], dict[str, object]]:
        """Tell how a copy is made, from one process to another too."""
        return (str(self), self.span), {}


def place(span: Span, seen_from: Span) -> Place:
    """Return ``line 4``, with the file's name where ``seen_from`` is in another file."""
    if span.file == seen_from.file:
        return Place(f"line {span.line}", span)
    return Place(f"line {span.line} of {span.file}", span)
