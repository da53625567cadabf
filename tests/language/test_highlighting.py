"""The colours of editors know each word that the grammar knows."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from itertools import count
from pathlib import Path

from tests.conftest import EXAMPLES, ROOT
from trimlang.editor.word_meanings import MEANINGS, meaning
from trimlang.language import highlighting
from trimlang.language.grammar import grammar_text, parser, read_grammar
from trimlang.language.vocabulary import spellings

FILE = ROOT / "grammar" / highlighting.FILE
RULES = [
    (re.compile(rule["match"]), rule)
    for rule in json.loads(FILE.read_text(encoding="utf-8"))["patterns"]
]
WORDS = sorted({way for ways in spellings().values() for way in ways})


def colours(line: str) -> list[tuple[str, str]]:
    """Colour a line as editors do: the match that begins first, of these the first rule's."""
    found: list[tuple[str, str]] = []
    at = 0
    while at < len(line):
        matches = [
            (match.start(), number, match, rule)
            for number, (pattern, rule) in zip(count(), RULES, strict=False)
            if (match := pattern.search(line, at)) and match.end() > match.start()
        ]
        if not matches:
            break
        _, _, match, rule = min(matches, key=lambda one: one[:2])
        if "name" in rule:
            found.append((match.group(), rule["name"].removesuffix(".trim")))
        for group, scope in rule.get("captures", {}).items():
            found.append((match[int(group)], scope["name"].removesuffix(".trim")))
        at = match.end()
    return found


def test_it_is_made_from_the_grammar(same_in_git: Callable[[Path, str], None]) -> None:
    same_in_git(FILE, highlighting.text(read_grammar(grammar_text())))


def test_each_word_of_the_grammar_is_coloured() -> None:
    assert WORDS
    plain = [
        written
        for word in WORDS
        for written in (word, word.upper())
        if not dict(colours(f"  Q: 4, {written} "))
        .get(written, "")
        .startswith(("keyword.", "constant.language."))
    ]
    assert not plain


def test_each_word_of_the_grammar_has_a_meaning() -> None:
    dumb = [
        way for terminal, ways in spellings().items() for way in ways if not meaning(terminal, way)
    ]
    assert not dumb, "say in a line what each means"


def test_meanings_are_one_short_line_each() -> None:
    assert all(len(line) <= 100 and "\n" not in line for line in MEANINGS.values())


def test_the_spellings_are_those_that_the_grammar_reads() -> None:
    patterns = {one.name: str(one.pattern.value) for one in parser().terminals}
    for terminal, ways in spellings().items():
        for way in ways:
            assert re.fullmatch(patterns[terminal], way, re.IGNORECASE), (terminal, way)


def test_a_line_in_colour() -> None:
    line = '  E2: 29-1/8", left=in-corner(91.5 deg), no shoe, note "it\'s 5" # to do'
    assert [one for one in colours(line) if one[1] != "punctuation"] == [
        ("E2", "entity.name.tag"),
        ("29", "constant.numeric"),
        ("1/8", "constant.numeric"),
        ('"', "keyword.other.unit"),
        ("left", "keyword.other"),
        ("=", "keyword.operator"),
        ("in-corner", "constant.language.joint"),
        ("91.5", "constant.numeric"),
        ("deg", "keyword.other.unit"),
        ("no", "keyword.other"),
        ("shoe", "variable.other"),
        ("note", "keyword.other"),
        ('"it\'s 5"', "string.quoted.double"),
        ("# to do", "comment.line.number-sign"),
    ]
    assert colours('room "Hall" as HA, trim base')[:2] == [
        ("room", "keyword.control"),
        ('"Hall"', "entity.name.section"),
    ]
    assert colours("trim base: 1/2 in thick")[:2] == [
        ("trim", "keyword.control"),
        ("base", "entity.name.type"),
    ]


def test_the_examples_hold_nothing_wrong() -> None:
    for path in EXAMPLES.glob("*.trim"):
        for line in path.read_text(encoding="utf-8").splitlines():
            assert not [text for text, scope in colours(line) if scope.startswith("invalid")]
