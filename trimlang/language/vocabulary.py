"""The grammar's words, as its terminals spell them."""

from __future__ import annotations

import re
from collections.abc import Iterator
from difflib import get_close_matches
from functools import cache
from types import MappingProxyType
from typing import Final

from trimlang.language.grammar import parser

_BLANKS: Final = {"[ \t]+": " ", "\\b": "", "\\.": "."}
_NOT_BEFORE: Final = re.compile(r"\(\?![^()]*\)")
"""What may not follow a word says nothing of how it is written."""


SHORT_JOINTS: Final = MappingProxyType(
    {
        short: joint
        for joint, shorts in {
            "in-corner": ("in", "inside", "ic", "in corner", "inside corner"),
            "out-corner": ("out", "outside", "oc", "out corner", "outside corner"),
        }.items()
        for short in shorts
    }
)
"""Other words for a corner, and the one that stands for it everywhere else."""

GAP_WORDS: Final = frozenset({"door", "window", "stair", "cabinets", "radiator"})
"""Openings and bare walls by their own names: they are called so unless they get another name."""

_SURE: Final = 0.75
"""How alike a wall's name and a word of the language are where the word was likely meant."""

_BEFORE_A_PART: Final = ('room "x",', "x: 1 in,", "opening 1 in,", 'piece "x", 1 in,')
"""What stands before a word that begins a part of a line."""


def whole_joint(word: str) -> str:
    """Return the word for an end that stands for a short one; any other as it is."""
    word = " ".join(word.split())
    return SHORT_JOINTS.get(word, word)


@cache
def not_a_label(name: str) -> str | None:
    """Return the word of the language that a wall's name without a colon is or nearly is.

    Without a colon “opning 32 in” would be a wall with trim on it.
    """
    word = name.casefold()
    if len(word) < 3 or not word.isalpha():
        return None
    if any(word in ways for ways in spellings().values()):
        return word
    begins = (*line_words(), *part_words())
    close = get_close_matches(word, begins, n=1, cutoff=_SURE)
    return close[0] if close else None


@cache
def line_words() -> tuple[str, ...]:
    """Return the words that begin a line."""
    return words_after("")


@cache
def part_words() -> tuple[str, ...]:
    """Return the words that begin a part of a room's or a wall's line, after a comma."""
    return tuple(dict.fromkeys(word for line in _BEFORE_A_PART for word in words_after(line)))


def words_after(text: str) -> tuple[str, ...]:
    """Return the words that may follow the beginning of a line, as the grammar lists them."""
    reader = parser().parse_interactive(text)
    reader.exhaust_lexer()
    accepted = reader.accepts()
    return tuple(word for name, ways in spellings().items() if name in accepted for word in ways)


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
