"""Says in the trade's words where a line could not be read, and why."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from lark import Token
from lark.exceptions import UnexpectedCharacters, UnexpectedInput, UnexpectedToken

from trimlang.diagnostics import Diagnostic, Span, say
from trimlang.diagnostics.near_words import nearest
from trimlang.diagnostics.suggestion import Suggestion, did_you_mean
from trimlang.language.end_facts import Side
from trimlang.language.grammar import parser
from trimlang.language.known_slips import known_slip
from trimlang.language.number_rules import NUMBER_TOKENS
from trimlang.language.vocabulary import SHORT_JOINTS, line_words, part_words, spellings

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
    "STRING": "a text in quotes",
    "DATE": "a date such as 2026-04-18",
    "DEG": "“deg”",
    "$END": "the end of the line",
}
_LENGTH_TOKENS: Final = NUMBER_TOKENS | {"_DASH"}
_UNIT_TOKENS: Final = frozenset({"FOOT", "INCH", "METRIC", "OTHER_UNIT"})
_SELDOM: Final = frozenset({"RADIUS"})
"""Words that may stand behind any wall's length, and hardly ever are what was meant."""
_WORD_AT: Final = re.compile(r"[^\W\d_][\w.\-]*|\d[\w./]*|\S")


def _expected_words(terminals: set[str]) -> list[str]:
    known = spellings()
    words: list[str] = []
    for name in sorted(terminals & known.keys() - _UNIT_TOKENS - _PHRASES.keys() - _SELDOM):
        ways = known[name]
        usual = [way for way in ways if way not in SHORT_JOINTS]
        words.extend(usual if name in _CHOICES else [_USUAL.get(name, ways[0])])
    return words


def _expected_phrase(terminals: set[str]) -> str:
    """Return what could stand there in words, the most helpful first: “a number, “butt” or …”."""
    phrases: list[str] = []
    if terminals & NUMBER_TOKENS:
        phrases.append("a number")
    elif terminals & _UNIT_TOKENS:
        phrases.append("a unit")
    phrases += [f"“{word}”" for word in _expected_words(terminals)]
    phrases += [_PHRASES[name] for name in _PHRASES if name in terminals]
    # A longer list helps nobody.
    if len(phrases) > 8:
        phrases = [*phrases[:7], "…"]
    if not phrases:
        return "nothing more"
    return phrases[0] if len(phrases) == 1 else f"{', '.join(phrases[:-1])} or {phrases[-1]}"


_LONG_DASH: Final = re.compile(r"[–—‐‑−]")
_LAST_PART: Final = re.compile(r", *(?P<word>[^\W\d_][\w.\-]*)\s*$")
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

# What goes on after a whole number where that was the beginning of a length.
_REST_OF_LENGTH: Final = re.compile(
    r"""\.\d|\d+ ?[/⁄∕]|[¼½¾⅐-⅞]|['"′″’”]|[-–]? ?(?:in|inch|inches|ft|feet|foot|mm|cm|m|yd)\b""",
    re.I,
)
_NAMELESS: Final = "A wall begins with its name and a colon: N: 29 1/8 in, left=…, right=…"


def explain(error: UnexpectedInput, text: str, file: str, line: int) -> Diagnostic:
    """Return the diagnostic for a line that lark could not read; see ``known_slips`` first.

    ``text`` is the whole line; the diagnostic's columns are its.
    """
    stopped = getattr(error, "column", None) or 0
    known = known_slip(text, stopped - 1 if stopped > 0 else len(text.rstrip()), file, line)
    if known is not None:
        return known
    # From here the slip is not a known one. What follows goes from particular to general: the line
    # ends too soon, a word before the place is misspelled, a text is not closed, the line's first
    # word is unknown; and last, what was expected.
    at_end = isinstance(error, UnexpectedToken) and error.token.type == "$END"
    if at_end or not isinstance(error, UnexpectedToken | UnexpectedCharacters):
        lacking = _terminals(error, text)
        name = _LAST_PART.search(text.split("#")[0])
        if name is not None and lacking <= _LENGTH_TOKENS:
            # “door 32 in, enterance” is no wall that lacks its length: a word is misspelt.
            words = _expected_words(_accepted(text[: name.start("word")]))
            if nearest(name["word"], words) or name["word"].casefold() in line_words():
                return _no_wall(name["word"], name.start("word"), text, Span(file, line, 1, 1))
        end = len(text.split("#")[0].rstrip()) or 1
        return say("T103", Span(file, line, end + 1, end + 2), wanted=_expected_phrase(lacking))
    column = max(int(error.column), 1)
    found = _WORD_AT.match(text, column - 1)
    word = found.group() if found else text[column - 1 : column]
    span = Span(file, line, column, column + max(len(word), 1))
    terminals = _terminals(error, text)
    before = _previous(error)
    if before is not None and before.type == "NAME":
        slip = Span(file, line, before.column or 1, (before.column or 1) + len(before))
        first = not text[: slip.column - 1].strip()
        # A line that begins with an unknown word was read as a run's name without its colon.
        if first and "COLON" in terminals:
            remedy = did_you_mean(
                before, line_words(), "A run is written “N: 29 1/8 in, left=in-corner, right=butt”."
            )
            return say("T100", slip, word=str(before), remedy=remedy)
        # “lft=butt”: what stands before an equals sign is a side.
        if word == "=":
            remedy = did_you_mean(before, tuple(Side), "An end is “left=…” or “right=…”.")
            return say("T101", slip, word=str(before), wanted="“left” or “right”", remedy=remedy)
    # Behind an opening a wall may follow, so a wrong word there reads as the name of one, and
    # reading stops at what comes next.
    if before is not None and before.type == "NAME" and terminals <= _LENGTH_TOKENS and word != ":":
        return _no_wall(str(before), (before.column or 1) - 1, text, Span(file, line, 1, 1))
    if word in ('"', "“") and not any(mark in text[column:] for mark in '"”'):
        return say("T104", Span(file, line, column, len(text) + 1))
    if before is not None and before.type == "NAME" and word in ('"', "“"):
        slip = Span(file, line, before.column or 1, (before.column or 1) + len(before))
        remedy = did_you_mean(before, ("note",), "A text in quotes follows the word note.")
        return say("T101", slip, word=str(before), wanted="“note”", remedy=remedy)
    # Nothing before it: the line's first word is not one that a line begins with.
    if column == 1 or not text[: column - 1].strip():
        remedy = did_you_mean(word, line_words(), "See the list of lines in docs/language.md.")
        return say("T100", span, word=word, remedy=remedy)
    if before is not None:
        slip = Span(file, line, before.column or 1, (before.column or 1) + len(before))
        if before.type == "NAME" and found and nearest(before, part_words()) == "trim":
            # “trm base”: a misspelled word reads as a name, and lark stops at the next one.
            remedy = did_you_mean(before, ("trim",), "")
            return say("T101", slip, word=str(before), wanted="“trim”", remedy=remedy)
        first = not text[: slip.column - 1].strip()
        if first and before.type == "COUNT" and _REST_OF_LENGTH.match(text, column - 1):
            wanted = "the wall's name and a colon"
            return say("T101", slip, word=str(before), wanted=wanted, remedy=_NAMELESS)
    remedy = _remedy(word, text[column - 1 :], terminals)
    if not word.isprintable():
        word = f"U+{ord(word[0]):04X}"
    return say("T101", span, word=word, wanted=_expected_phrase(terminals), remedy=remedy)


def _no_wall(word: str, at: int, text: str, line: Span) -> Diagnostic:
    """Return the finding for a word (from ``at``) that reads as a wall's name without a length."""
    terminals = _accepted(text[:at]) - {"NAME", "OPENING", "BARE"}
    span = replace(line, column=at + 1, end=at + 1 + len(word))
    remedy = _remedy(word, text[at:], terminals)
    return say("T101", span, word=word, wanted=_expected_phrase(terminals), remedy=remedy)


def _remedy(word: str, rest: str, terminals: set[str]) -> str:
    """Return a remedy: the nearest expected word, or what could stand there.

    Two words that together make a known one (``in corner``) are joined.
    """
    expected = _expected_words(terminals)
    two = list(_WORD_AT.finditer(_LONG_DASH.sub(" ", rest)))[:2]
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
    return did_you_mean(word, expected, f"Write {_expected_phrase(terminals)} here.")


def _terminals(error: UnexpectedInput, text: str) -> set[str]:
    if isinstance(error, UnexpectedToken):
        return set(error.accepts or error.expected)
    if isinstance(error, UnexpectedCharacters):
        # The error lists every terminal that the lexer knows; ask the parser what the line could go
        # on with.
        return _accepted(text[: int(error.column) - 1])
    return set()


def _accepted(begun: str) -> set[str]:
    """Return the terminals that a line which begins so can go on with."""
    reader = parser().parse_interactive(begun)
    reader.exhaust_lexer()
    return set(reader.accepts())


def _previous(error: UnexpectedInput) -> Token | None:
    history = getattr(error, "token_history", None)
    return history[-1] if history else None
