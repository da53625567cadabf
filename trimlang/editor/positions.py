"""Columns as an editor counts them: in bytes, in UTF-16 units or in characters."""

from __future__ import annotations

from typing import Final

BYTES: Final = "utf-8"
UNITS: Final = "utf-16"
CHARACTERS: Final = "utf-32"


def size(text: str, encoding: str) -> int:
    """Return how many units of ``encoding`` a text takes."""
    if encoding == CHARACTERS or text.isascii():
        return len(text)
    if encoding == BYTES:
        return len(text.encode(errors="surrogatepass"))
    return len(text) + sum(sign > "\uffff" for sign in text)


def character(line: str, column: int, encoding: str) -> int:
    """Return the editor's count (from 0) of a column of ours (from 1)."""
    beyond = max(column - 1 - len(line), 0)
    return size(line[: column - 1], encoding) + beyond


def column(line: str, count: int, encoding: str) -> int:
    """Return our column (from 1) of an editor's count (from 0), no further than the line's end.

    A count inside a character means the character's beginning.
    """
    if encoding == CHARACTERS or line.isascii():
        return min(count, len(line)) + 1
    at = 0
    for index, sign in enumerate(line):
        at += size(sign, encoding)
        if at > count:
            return index + 1
    return len(line) + 1
