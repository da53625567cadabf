"""A remedy that also says exactly what to write instead."""

from __future__ import annotations

from trimlang.diagnostics.near_words import nearest


class Suggestion(str):
    """A remedy's text that also carries what it would have written.

    ``instead`` replaces what the finding marks, or only the first ``covers`` columns of it.  The
    remedy is a text like any other, so a message can be filled with it.
    """

    __slots__ = ("covers", "instead")
    covers: int | None
    instead: str

    def __new__(cls, text: str, instead: str, *, covers: int | None = None) -> Suggestion:
        """Make the remedy ``text`` that would write ``instead``."""
        made = super().__new__(cls, text)
        made.instead = instead
        made.covers = covers
        return made

    def __getnewargs_ex__(self) -> tuple[tuple[str, str], dict[str, int | None]]:
        """Return the arguments to make a copy with, also in another process (pickle)."""
        return (str(self), self.instead), {"covers": self.covers}


def did_you_mean(word: str, known: list[str] | tuple[str, ...], otherwise: str) -> str:
    """Return a remedy that names the nearest known word, or ``otherwise``."""
    # A plain text carries no mend: where no word is near, an editor must not offer one.
    match = nearest(word, known)
    return Suggestion(f"Did you mean “{match}”?", match) if match else otherwise
