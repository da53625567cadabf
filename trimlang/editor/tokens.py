"""The words of a line and what may come next, from the grammar's own parser."""

from __future__ import annotations

from contextlib import suppress

from lark import Token
from lark.exceptions import LarkError

from trimlang.language.grammar import parser


def tokens(text: str) -> list[Token]:
    """Return the words of a line, as far as it can be read."""
    reading = parser().parse_interactive(text)
    found: list[Token] = []
    with suppress(LarkError):
        for token in reading.iter_parse():
            # Not list(): the words before a mistake are kept too.
            found.append(token)  # noqa: PERF402
    return found


def token_at(text: str, column: int) -> Token | None:
    """Return the word at a column (from 1) of a line, None where there is none."""
    for token in tokens(text):
        start = token.column or 1
        if start <= column < start + len(token):
            return token
    return None


def expected(text: str) -> tuple[list[Token], set[str]]:
    """Return the words of an unfinished line and the kinds of words that may follow.

    Both are empty where the line cannot be read.
    """
    reading = parser().parse_interactive(text)
    try:
        return reading.exhaust_lexer(), set(reading.accepts())
    except LarkError:
        return [], set()
