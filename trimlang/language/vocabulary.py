"""The grammar's words, as its terminals spell them."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from types import MappingProxyType
from typing import Final

from trimlang.joints import Joint
from trimlang.language.grammar import parser
from trimlang.settings.table import Settings

_BLANKS: Final = {"[ \t]+": " ", "\\b": "", "\\.": "."}
_NOT_BEFORE: Final = re.compile(r"\(\?![^()]*\)")
"""Lookaheads (what must not follow a word), which say nothing about the word's spelling."""


SHORT_JOINTS: Final = MappingProxyType(
    {short: joint.word for joint in Joint for short in joint.row.shorts}
)
"""Other words for a corner, and the word that is used for it everywhere else."""

GAP_WORDS: Final = frozenset({"door", "window", "stair", "cabinets", "radiator", "newel", "beam"})
"""Openings and bare walls by their own words, which are also their names unless they get one."""

NO_WALLS: Final = MappingProxyType(
    {
        name: word
        for word, names in {
            "opening": "closet pantry arch archway passage doorway slider patio tür tuer"
            " fenster porte fenêtre fenetre puerta ventana porta finestra deur raam janela",
            "bare": "tub bathtub shower vanity toilet fireplace hearth stove range oven fridge"
            " refrigerator dishwasher sink counter bench bookcase wardrobe heater"
            " cupboard cupboards vent register units worktop dresser settle",
            "newel": "post column",
            "beam": "joist girder rafter purlin",
        }.items()
        for name in names.split()
    }
)
"""What stands in a list of walls and gets no trim, and the word that begins such a line."""

JOTTED: Final = MappingProxyType(
    {
        short: word
        for word, shorts in {
            "door": "dr drs dwr",
            "window": "win wdw wnd wdo",
            "opening": "opg opn opng",
            "opening closet": "clo clos clst",
            "cabinets": "cab cabs",
            "radiator": "rad rads",
            "bare fireplace": "fp",
        }.items()
        for short in shorts.split()
    }
)
"""How openings and bare walls are shortened on a pad, and how their line begins."""

BESIDE_A_MARK: Final = frozenset("strong heavy fat plus full shy light scant weak minus".split())
"""What carpenters say of a reading that is not quite on its mark."""

COMPASS: Final = frozenset("north south east west back".split())
"""What people call walls; “north” is spelled much like “notch”."""

SHORT_NAME: Final = 2
"""Letters and figures that a wall's name has mostly: N, E2."""

_SURE: Final = 0.75
"""How alike a wall's name and a word must be for the word to be meant (difflib's ratio)."""

_BEFORE_A_PART: Final = ('room "x",', "x: 1 in,", "opening 1 in,", 'piece "x", 1 in,')
"""Beginnings of lines after which a new part of the line may begin."""


def whole_joint(word: str) -> str:
    """Return the full word for an end's short word; any other word as it is."""
    word = " ".join(word.split())
    return SHORT_JOINTS.get(word, word)


def called_as_a_wall(name: str) -> bool:
    """Tell whether a name is one of those that walls have: a letter or two, a point of the sky."""
    return len(name) <= SHORT_NAME or name.casefold() in COMPASS


@cache
def not_a_label(name: str) -> str | None:
    """Return the word of the language that a wall's name equals or resembles, None if neither.

    Asked for walls without a colon: “opning 32 in” would otherwise be a wall with trim on it.
    """
    word = name.casefold()
    # Short names and names with figures resemble too much by chance: N, E2, A1.
    if len(word) < 3 or not word.isalpha() or word in COMPASS:
        return None
    # Any word of the language: whoever reads the file takes the label for that word.
    if any(word in ways for ways in spellings().values()):
        return word
    from difflib import get_close_matches

    begins = (*line_words(), *part_words())
    close = get_close_matches(word, begins, n=1, cutoff=_SURE)
    return close[0] if close else None


@cache
def topic_of(word: str) -> str | None:
    """Return the word that begins the line of settings in which another one says a setting.

    >>> topic_of("kerf"), topic_of("thick")
    ('saw', None)
    """
    for row in Settings.rows():
        topic, colon, said = row.words.partition(": ")
        if colon and said.split()[0] == word:
            return topic
    return None


@cache
def line_words() -> tuple[str, ...]:
    """Return the words that a line may begin with."""
    return words_after("")


@cache
def part_words() -> tuple[str, ...]:
    """Return the words that may begin a part of a room's or a wall's line, after a comma."""
    return tuple(dict.fromkeys(word for line in _BEFORE_A_PART for word in words_after(line)))


def words_after(text: str) -> tuple[str, ...]:
    """Return the words that may follow the beginning of a line, in the order of the grammar."""
    # Asking the parser itself keeps these lists in step with the grammar.
    reader = parser().parse_interactive(text)
    reader.exhaust_lexer()
    accepted = reader.accepts()
    return tuple(word for name, ways in spellings().items() if name in accepted for word in ways)


@cache
def spellings() -> dict[str, tuple[str, ...]]:
    """Return each terminal that is a word, with its spellings in small letters.

    The first spelling of each is the usual one: the shortest at the beginning of its pattern.
    """
    found: dict[str, tuple[str, ...]] = {}
    for terminal in parser().terminals:
        pattern = str(terminal.pattern.value)
        if not is_word(pattern):
            continue
        ways = (way for way in _ways(pattern) if way[:1].isalpha())
        # A unit with a point (“in.”) is the rarer spelling.
        found[terminal.name] = tuple(sorted(dict.fromkeys(ways), key=lambda way: way.endswith(".")))
    return found


def is_word(pattern: str) -> bool:
    """Tell whether a terminal's pattern spells words, not names, numbers or signs."""
    return pattern.lstrip("(")[:1].isalpha()


def _ways(pattern: str) -> Iterator[str]:
    """Yield everything that a pattern of letters, choices and optional parts matches."""
    pattern = _NOT_BEFORE.sub("", pattern)
    for sign, plain in _BLANKS.items():
        pattern = pattern.replace(sign, plain)
    for branch in branches(pattern):
        yield from _sequence(branch)


def branches(pattern: str) -> list[str]:
    """Return the choices of a pattern, without those within brackets."""
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
        # To the bracket that closes the first one; brackets within it are taken with it.
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
