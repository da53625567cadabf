"""Makes the TextMate grammar that editors colour job files with, from the lark grammar.

A test compares ``grammar/trim.tmLanguage.json`` with what is made here, so that no word can be
forgotten.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Sequence
from typing import Any, Final

from lark import Lark
from lark.grammar import NonTerminal, Rule, Symbol, Terminal

from trimlang.language.vocabulary import branches, is_word

FILE: Final = "trim.tmLanguage.json"

UNITS: Final = ("FOOT", "INCH", "IN", "METRIC", "DEG")
_JOINTS: Final = ("JOINT", "BETWEEN")
_NUMBERS: Final = ("DATE", "FRACTION", "VULGAR", "DECIMAL", "COUNT")
_BEFORE: Final = r"(?<![\w.\-])"
_AFTER: Final = r"(?!-)"


def highlighting(lark: Lark) -> dict[str, Any]:
    """Return the TextMate grammar for a lark grammar, as plain data."""
    patterns = {one.name: _uncounted(str(one.pattern.value)) for one in lark.terminals}
    words = [name for name, pattern in patterns.items() if _is_spelled(pattern)]
    starts = _line_starts(lark.rules)
    # “trim base:” and its like: the name after the word gets a colour of its own.
    named = [start for start in starts if _begins(lark.rules, start, "NAME", "COLON")]
    phrases = [one for one in words if "[ \t]+" in patterns[one] and one not in _JOINTS]
    others = [one for one in words if one not in (*UNITS, *_JOINTS, *phrases)]
    # “room "Den"” and its like.
    headings = [start for start in starts if _begins(lark.rules, start, "STRING")]
    name, string = patterns["NAME"], patterns["STRING"]
    number = "|".join(patterns[one] for one in _NUMBERS)
    marks = [mark for unit in ("FOOT", "INCH", "DEG") for mark in _marks(patterns[unit])]
    # A word of the language after one that takes a name is still that word (“trim base” but “head
    # butt”).
    not_a_word = f"(?!{_any(patterns, words)})"
    followed = "|".join(patterns[one] for one in _before_names(lark.rules, words))
    # An editor takes the first pattern that matches at a place, so the more particular ones come
    # first: comments, beginnings of lines, numbers with units, and bare names last.
    return {
        "name": "trim",
        "scopeName": "source.trim",
        "fileTypes": ["trim"],
        "patterns": [
            _match("comment.line.number-sign", patterns["COMMENT"]),
            {
                "match": rf"^\s*({_fold(patterns, named)})\s+({name})\s*(:)",
                "captures": _captures("keyword.control", "entity.name.type", "punctuation"),
            },
            {
                "match": rf"^\s*({_fold(patterns, headings)})\s+({string})",
                "captures": _captures("keyword.control", "entity.name.section"),
            },
            _match("keyword.control", rf"^\s*{_fold(patterns, starts)}{_AFTER}"),
            {
                "match": rf"^\s*({name}|[0-9]+)\s*(:)",
                "captures": _captures("entity.name.tag", "punctuation"),
            },
            {
                "match": rf"({number})\s*({'|'.join(sorted(marks, key=len, reverse=True))})",
                "captures": _captures("constant.numeric", "keyword.other.unit"),
            },
            _match("string.quoted.double", string),
            _match("invalid.illegal.unclosed", r'["“][^"“”\n]*$'),
            _match("keyword.other", _any(patterns, phrases)),
            {
                "match": rf"{_BEFORE}((?i:{followed}))\s+{not_a_word}({name})",
                "captures": _captures("keyword.other", "variable.other"),
            },
            _match("keyword.other.unit", rf"(?<=[0-9]){_fold(patterns, UNITS)}{_AFTER}"),
            # An “in” by itself is nearly always the unit, not the short word for an inside corner.
            _match("keyword.other.unit", _any(patterns, UNITS)),
            _match("constant.language.joint", _any(patterns, _JOINTS)),
            _match("keyword.other", _any(patterns, others)),
            _match("constant.numeric", rf"(?<![^\W\d])(?:{number})"),
            _match("keyword.other.currency", patterns["MONEY"]),
            _match("keyword.operator", "[=%]"),
            _match("punctuation", "[,:()]"),
            _match("variable.other", name),
        ],
    }


def text(lark: Lark) -> str:
    """Return the text of the JSON file that editors read."""
    return json.dumps(highlighting(lark), ensure_ascii=False, indent=2) + "\n"


def _match(scope: str, pattern: str) -> dict[str, str]:
    return {"name": f"{scope}.trim", "match": pattern}


def _captures(*scopes: str) -> dict[str, dict[str, str]]:
    return {str(at): {"name": f"{scope}.trim"} for at, scope in enumerate(scopes, start=1)}


def _uncounted(pattern: str) -> str:
    """Return a pattern whose groups do not capture, as captures are counted."""
    return re.sub(r"\((?!\?)", "(?:", pattern)


def _is_spelled(pattern: str) -> bool:
    return is_word(pattern.removeprefix("(?:"))


def _fold(patterns: dict[str, str], names: Sequence[str]) -> str:
    """Return a pattern for one of the words, in capital or small letters."""
    return f"(?i:{'|'.join(patterns[name] for name in names)})"


def _any(patterns: dict[str, str], names: Sequence[str]) -> str:
    """Return a pattern for one of the words, standing by itself."""
    spelled = (
        branch for name in names for branch in branches(patterns[name]) if _is_spelled(branch)
    )
    return rf"{_BEFORE}(?i:{'|'.join(spelled)}){_AFTER}"


def _marks(pattern: str) -> Iterator[str]:
    """Yield the signs that a unit may be written with, such as ′ and °."""
    yield from (one for one in branches(pattern) if not _is_spelled(one))


def _expansions(rules: list[Rule], origin: str) -> Iterator[Sequence[Symbol]]:
    yield from (rule.expansion for rule in rules if rule.origin.name == origin)


def _line_starts(rules: list[Rule]) -> tuple[str, ...]:
    """Return the words that a line may begin with, in the order of the grammar."""
    found: dict[str, None] = {}
    # From the grammar's own rules, so that a new kind of line is coloured without a change here.
    for statement, *_ in _expansions(rules, "statement"):
        for expansion in _expansions(rules, statement.name):
            if expansion and isinstance(expansion[0], Terminal):
                found[expansion[0].name] = None
    return tuple(found)


def _begins(rules: list[Rule], *names: str) -> bool:
    """Tell whether some rule begins with these words."""
    return any([one.name for one in rule.expansion[: len(names)]] == [*names] for rule in rules)


def _before_names(rules: list[Rule], words: list[str]) -> tuple[str, ...]:
    """Return the words that may stand before a name."""
    found: dict[str, None] = {}
    for rule in rules:
        for one, other in zip(rule.expansion, rule.expansion[1:], strict=False):
            if isinstance(one, NonTerminal) or other.name != "NAME":
                continue
            if one.name in words:
                found[one.name] = None
    return tuple(found)
