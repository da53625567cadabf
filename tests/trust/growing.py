"""Grows job files that are nearly right: lines from the grammar, slips in good files.

Everything comes from the random numbers handed in, so that a seed says it all.
"""

from __future__ import annotations

import re
from functools import cache
from random import Random
from typing import Final

from lark import Lark
from lark.grammar import NonTerminal

from tests.conftest import EXAMPLES
from tests.jobs import BASE
from tests.test_language_reference import BLOCKS, whole
from trimlang.diagnostics.code_pages import PAGES
from trimlang.language.grammar import grammar_text, read_grammar

DEEPEST: Final = 12
LARGEST: Final = 600

_SAMPLES: Final[dict[str, tuple[str, ...]]] = {
    "COUNT": ("0", "1", "2", "7", "12", "40", "96", "144", "1000", "999999999", "0007", "٣"),
    "DECIMAL": (".5", "17.40", "0.0", "29.125", "999999.999", "0.000001"),
    "FRACTION": ("1/2", "9/16", "0/8", "3/0", "5/12", "17/16", "1⁄8", "1 /999"),
    "VULGAR": ("½", "⅛", "⅓", "⅒"),
    "DATE": ("2026-04-18", "0000-99-99"),
    "NAME": ("base", "shoe", "case", "N", "E", "crown", "in", "mm", "å", "b\u0430se", "ﬁr"),
    "WORDS": ("mdf", "pine", "primed", "white oak", "thick"),
    "STRING": ('"Study"', '""', '"Hall"', "“Bay”", '"<b>&"', '"\u202e"', '"{x}"', '"%s\x1b[2J"'),
    "MONEY": ("$", "€"),
    "JOINT": (
        "in-corner",
        "out-corner",
        "butt",
        "return",
        "splice",
        "open",
        "rake",
        "plumb",
        "level",
    ),
    "SIDE": ("left", "right"),
    "TAKEN_AT": ("wall", "point"),
    "DIRECTION": ("up", "down", "nearest"),
    "FOOT": ("ft", "'", "feet"),
    "INCH": ('"', "inches", "″"),
    "IN": ("in",),
    "METRIC": ("mm", "cm", "m"),
    "OTHER_UNIT": ("yd", "furlong"),
    "DEG": ("deg", "°"),
    "MITRE": ("mitre",),
    "A": ("a", "per"),
    "LITRE": ("litre",),
    "FL_OZ": ("fl oz",),
    "COATS": ("coats",),
    "SQFT": ("sqft",),
    "SQM": ("sqm",),
    "OPEN_WALK": ("open walk",),
    "ON_HAND": ("on-hand",),
}
_SIGNS: Final = "\x00\t\"'“”#:=,()%-°½٣\u202e\u200bа\x1b\x85\u2028\ufeff𝟙🪚0123456789\r\n"


@cache
def _grammar() -> Lark:
    return read_grammar(grammar_text())


@cache
def _rules() -> dict[str, list[list[object]]]:
    rules: dict[str, list[list[object]]] = {}
    for rule in _grammar().rules:
        rules.setdefault(str(rule.origin.name), []).append(list(rule.expansion))
    return rules


@cache
def _fixed() -> dict[str, str]:
    """What the grammar spells out, such as commas and plain words."""
    spelled = {}
    for terminal in _grammar().terminals:
        plain = terminal.pattern.value.replace("\\b", "")
        if terminal.name not in _SAMPLES and plain.isascii():
            spelled[str(terminal.name)] = plain.replace("\\", "")
    return spelled


def grammar_line(random: Random) -> str:
    """Return a line that the grammar allows, whatever it means."""
    words: list[str] = []

    def walk(name: str, depth: int) -> None:
        choices = _rules()[name]
        expansion = min(choices, key=len) if depth > DEEPEST else random.choice(choices)
        for symbol in expansion:
            spelling = str(getattr(symbol, "name", symbol))
            if isinstance(symbol, NonTerminal):
                walk(spelling, depth + 1)
            else:
                words.append(random.choice(_SAMPLES.get(spelling, (_fixed().get(spelling, "?"),))))

    walk("line", 0)
    return " ".join(words)


@cache
def good_files() -> tuple[str, ...]:
    """Small jobs: the shipped ones and those of the language's reference."""
    shipped = [path.read_text(encoding="utf-8") for path in sorted(EXAMPLES.glob("*.trim"))]
    blocks = [whole(kind, block) for kind, block in BLOCKS]
    return tuple(text for text in (*shipped, *blocks, _ROOM) if len(text) < LARGEST)


@cache
def bad_files() -> tuple[str, ...]:
    """The job of each diagnostic's page, which has the one mistake that the page is about."""
    return tuple(page.example for page in PAGES.values() if 0 < len(page.example) < 400)


def any_file(random: Random) -> str:
    """Return a good file, or one with a mistake of meaning."""
    return random.choice(good_files() if random.random() < 0.8 else bad_files())


_ROOM: Final = f"""\
{BASE}
stock base: 12 ft at 17.40, 16 ft at 24.10
room "Study", trim base, open walk
N: 40 in, left=butt, right=out-corner
E: 50 in, left=out-corner, right=butt
"""


def slipped(text: str, random: Random) -> str:
    """Return a job file with one to four slips in it."""
    for _ in range(random.choice((1, 1, 1, 2, 4))):
        text = random.choice(_SLIPS)(text, random)
    return text


def _in_a_line(text: str, random: Random) -> str:
    place = random.randint(0, len(text))
    end = min(len(text), place + random.choice((0, 1, 1, 3)))
    return text[:place] + random.choice(_SIGNS) * random.choice((1, 1, 1, 40)) + text[end:]


def _of_a_word(text: str, random: Random) -> str:
    lines = text.split("\n")
    at = random.randrange(len(lines))
    words = lines[at].split(" ")
    kind = random.choice(tuple(_SAMPLES))
    words[random.randrange(len(words))] = random.choice(_SAMPLES[kind])
    lines[at] = " ".join(words)
    return "\n".join(lines)


def _of_a_line(text: str, random: Random) -> str:
    lines = text.split("\n")
    at, other = random.randrange(len(lines)), random.randrange(len(lines))
    turn = random.randrange(5)
    if turn == 0:
        lines.insert(at, grammar_line(random))
    elif turn == 1:
        lines.insert(at, lines[other])
    elif turn == 2:
        del lines[at]
    elif turn == 3:
        lines[at], lines[other] = lines[other], lines[at]
    else:
        borrowed = random.choice(random.choice(good_files()).split("\n"))
        lines.insert(at, borrowed)
    return "\n".join(lines)


def _of_a_part(text: str, random: Random) -> str:
    """Add a part of another line after a comma."""
    lines = text.split("\n")
    at = random.randrange(len(lines))
    part = random.choice(grammar_line(random).split(","))
    lines[at] = f"{lines[at]}, {part}"
    return "\n".join(lines)


def _of_a_number(text: str, random: Random) -> str:
    """Put another number in a number's place: most such jobs can still be cut."""
    numbers = list(_NUMBER.finditer(text))
    if not numbers:
        return text
    place = random.choice(numbers)
    kind = random.choice(("COUNT", "COUNT", "DECIMAL", "FRACTION"))
    return text[: place.start()] + random.choice(_SAMPLES[kind]) + text[place.end() :]


_NUMBER: Final = re.compile(r"[0-9.]+")
_SLIPS: Final = (
    _in_a_line,
    _of_a_word,
    _of_a_line,
    _of_a_part,
    _of_a_number,
    _of_a_number,
    _of_a_number,
)
