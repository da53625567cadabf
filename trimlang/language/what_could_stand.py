"""What could stand at a place in a line, in words, and what a wrong word there may mean."""

from __future__ import annotations

import re
from typing import Final

from trimlang.diagnostics.near_words import nearest
from trimlang.diagnostics.suggestion import Suggestion, did_you_mean
from trimlang.language.end_facts import Side
from trimlang.language.grammar import parser
from trimlang.language.line_examples import line_example
from trimlang.language.number_rules import NUMBER_TOKENS
from trimlang.language.vocabulary import SHORT_JOINTS, part_words, spellings

_CHOICES: Final = frozenset(
    {"JOINT", "SIDE", "TILT", "TAKEN_AT", "DIRECTION", "TAKEN_ALONG", "BEND", "SWINGS"}
)
"""Terminals whose words mean different things; for any other, its usual word is enough."""

_USUAL: Final = {"FL_OZ": "fl oz", "COATS": "coats"}
"""Terminals whose usual word is not the first of their spellings."""

_PHRASES: Final[dict[str, str]] = {
    "COMMA": "a comma",
    "COLON": "a colon",
    "EQUAL": "“=”",
    "LPAR": "“(”",
    "RPAR": "“)”",
    "PERCENT": "“%”",
    "NAME": "a name",
    "PIECE_ID": "a piece's name such as ST-N-base",
    "WORDS": "a material",
    "GAP_NAME": "a name",
    "STRING": "a text in quotes",
    "DATE": "a date such as 2026-04-18",
    "DEG": "“deg”",
    "$END": "the end of the line",
}
LENGTH_TOKENS: Final = NUMBER_TOKENS | {"_DASH"}
_UNIT_TOKENS: Final = frozenset({"FOOT", "INCH", "METRIC", "OTHER_UNIT"})
_FEW: Final = 2
"""Things that could stand at a place, and that a remedy names once more."""
_SELDOM: Final = frozenset({"RADIUS"})
"""Words that may stand behind any wall's length, and hardly ever are what was meant."""
WORD_AT: Final = re.compile(r"[^\W\d_][\w.\-]*|\d[\w./]*|\S")
_LONG_DASH: Final = re.compile(r"[–—‐‑−]")
_BEFORE_END: Final = re.compile(r" *=")
_SAME_JOINT: Final = {
    "inside": "in-corner",
    "outside": "out-corner",
    "square": "butt",
    "end": "open",
    "free": "open",
    "scarf": "splice",
    "cope": "in-corner cope",
    "coped": "in-corner cope",
    **dict.fromkeys(("innen", "innenecke"), "in-corner"),
    **dict.fromkeys(("außen", "aussen", "außenecke", "aussenecke"), "out-corner"),
    "stumpf": "butt",
}
_SAME_SIGN: Final = {
    ";": ("COMMA", ","),
    "@": ("AT", "at"),
    "[": ("LPAR", "("),
    "{": ("LPAR", "("),
    "]": ("RPAR", ")"),
    "}": ("RPAR", ")"),
}
"""Signs that mean another one in other places: the terminal that is meant, and its sign."""


def expected_words(terminals: set[str]) -> list[str]:
    """Return the words of the language that these terminals may be, as they are usually written."""
    known = spellings()
    words: list[str] = []
    for name in sorted(terminals & known.keys() - _UNIT_TOKENS - _PHRASES.keys() - _SELDOM):
        ways = known[name]
        # The short words for a corner are read, but a message that lists them all is too long to
        # help.
        usual = [way for way in ways if way not in SHORT_JOINTS]
        words.extend(usual if name in _CHOICES else [_USUAL.get(name, ways[0])])
    return words


def expected_phrase(terminals: set[str]) -> str:
    """Return what could stand there in words, the most helpful first: “a number, “butt” or …”."""
    phrases: list[str] = []
    if terminals & NUMBER_TOKENS:
        phrases.append("a number")
    elif terminals & _UNIT_TOKENS:
        phrases.append("a unit")
    phrases += [f"“{word}”" for word in expected_words(terminals)]
    phrases += [_PHRASES[name] for name in _PHRASES if name in terminals]
    # A longer list helps nobody.
    if len(phrases) > 8:
        phrases = [*phrases[:7], "…"]
    if not phrases:
        return "nothing more"
    return phrases[0] if len(phrases) == 1 else f"{', '.join(phrases[:-1])} or {phrases[-1]}"


def remedy_for(word: str, line: str, at: int, terminals: set[str]) -> str:
    """Return a remedy for a word at a place (from 0): the nearest expected word, or an example.

    Two words that together make a known one (``in corner``) are joined.
    """
    rest = line[at:]
    expected = expected_words(terminals)
    # A dash of another length looks the same on the screen and is typed by many keyboards by
    # themselves.
    two = list(WORD_AT.finditer(_LONG_DASH.sub(" ", rest)))[:2]
    joined = "-".join(found[0] for found in two).casefold()
    if joined in expected:
        return Suggestion(f"Did you mean “{joined}”?", joined, covers=two[-1].end())
    if "JOINT" in terminals and word.casefold() in _SAME_JOINT:
        joint = _SAME_JOINT[word.casefold()]
        return Suggestion(f"Did you mean “{joint}”?", joint)
    if word in _SAME_SIGN and _SAME_SIGN[word][0] in terminals:
        sign = _SAME_SIGN[word][1]
        named = "a comma" if sign == "," else f"“{sign}”"
        return Suggestion(f"Write {named} instead of “{word}”.", sign)
    side = nearest(word, tuple(Side)) if _BEFORE_END.match(rest, len(word)) else None
    if "COMMA" in terminals and side and word.casefold() != side:
        return Suggestion(f"Put a comma here, and write “{side}”.", f", {side}")
    if "COMMA" in terminals and word.casefold() in part_words():
        return Suggestion(f"Put a comma before “{word}”.", f", {word}")
    if "JOINT" in terminals:
        expected += SHORT_JOINTS
    # One thing or two are soon written; the message has named all others already.
    few = len(terminals - NUMBER_TOKENS) + bool(terminals & NUMBER_TOKENS) <= _FEW
    shown = f"Such a line is written so: {line_example(line)}"
    otherwise = f"Write {expected_phrase(terminals)} here." if few else shown
    return did_you_mean(word, expected, otherwise)


def accepted(begun: str) -> set[str]:
    """Return the terminals that a line which begins so can go on with."""
    reader = parser().parse_interactive(begun)
    reader.exhaust_lexer()
    return set(reader.accepts())
