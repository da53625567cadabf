"""The grammar's words, as its terminals spell them."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from typing import Final

from trimlang.language.grammar import parser

_BLANKS: Final = {"[ \t]+": " ", "\\b": "", "\\.": "."}
_NOT_BEFORE: Final = re.compile(r"\(\?![^()]*\)")
"""What may not follow a word says nothing of how it is written."""


@cache
def spellings() -> dict[str, tuple[str, ...]]:
    """Return each terminal that is a word, with the ways it may be written, in small letters.

    The first way of each is the usual one: the shortest of those that begin the pattern.
    """
    found: dict[str, tuple[str, ...]] = {}
    for terminal in parser().terminals:
        pattern = str(terminal.pattern.value)
        if not is_word(pattern):
            continue
        ways = (way for way in _ways(pattern) if way[:1].isalpha())
        # a unit with its point is the rarer way
        found[terminal.name] = tuple(sorted(dict.fromkeys(ways), key=lambda way: way.endswith(".")))
    return found


def is_word(pattern: str) -> bool:
    """Tell whether a terminal's pattern spells words, and no names, numbers or signs."""
    return pattern.lstrip("(")[:1].isalpha()


def _ways(pattern: str) -> Iterator[str]:
    """Yield what a pattern of letters, choices and optional parts matches."""
    pattern = _NOT_BEFORE.sub("", pattern)
    for sign, plain in _BLANKS.items():
        pattern = pattern.replace(sign, plain)
    for branch in branches(pattern):
        yield from _sequence(branch)


def branches(pattern: str) -> list[str]:
    """Return the choices of a pattern that are not within brackets."""
    found, depth = [""], 0
    for sign in pattern:
        depth += (sign == "(") - (sign == ")")
        if sign == "|" and depth == 0:
            found.append("")
        else:
            found[-1] += sign
    return found


def _sequence(pattern: str) -> Iterator[str]:
    if not pattern:
        yield ""
        return
    if pattern[0] == "(":
        depth, end = 1, 0
        while depth:
            end += 1
            depth += (pattern[end] == "(") - (pattern[end] == ")")
        heads, rest = list(_ways(pattern[1:end])), pattern[end + 1 :]
    else:
        heads, rest = [pattern[0]], pattern[1:]
    if rest.startswith("?"):
        heads, rest = ["", *heads], rest[1:]
    for head in heads:
        for tail in _sequence(rest):
            yield head + tail
