"""A remedy that also says exactly what to write instead."""

from __future__ import annotations

from trimlang.diagnostics.near_words import nearest


class Suggestion(str):
    """A remedy's text that also carries what it would have written.

    ``ways`` are the texts, one of which replaces what the finding marks, or as many columns from
    its beginning as ``covers`` says.  The remedy is a text like any other, so a message can be
    filled with it.
    """

    __slots__ = ("covers", "ways")
    covers: int | None
    ways: tuple[str, ...]

    def __new__(cls, text: str, *ways: str, covers: int | None = None) -> Suggestion:
        """Make the remedy ``text`` that would write one of ``ways``."""
        made = super().__new__(cls, text)
        made.ways = ways
        made.covers = covers
        return made

    def __getnewargs_ex__(self) -> tuple[tuple[str, ...], dict[str, int | None]]:
        """Return the arguments to make a copy with, also in another process (pickle)."""
        return (str(self), *self.ways), {"covers": self.covers}


def did_you_mean(
    word: str, known: list[str] | tuple[str, ...], otherwise: str, *, covers: int | None = None
) -> str:
    """Return a remedy that names the nearest known word, or ``otherwise``.

    ``covers`` is as for ``Suggestion``.
    """
    # A plain text carries no mend: where no word is near, an editor must not offer one.
    match = nearest(word, known)
    return Suggestion(f"Did you mean “{match}”?", match, covers=covers) if match else otherwise
