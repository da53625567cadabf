"""Makes up lines of every statement that the grammar has, written as badly as it allows."""

from __future__ import annotations

import re
import re._constants as sre
from collections import defaultdict
from collections.abc import Iterable
from re._parser import parse as sre_parse
from typing import Any

from hypothesis import strategies as st
from lark.grammar import NonTerminal

from trimlang.language.grammar import parser

RULES = defaultdict(list)
for _rule in parser().rules:
    RULES[_rule.origin.name].append(list(_rule.expansion))
STATEMENTS = sorted({expansion[0].name for expansion in RULES["statement"]})
PATTERNS = {terminal.name: terminal.pattern for terminal in parser().terminals}
NAMES = st.sampled_from(["N", "E2", "base", "shoe", "Éire", "S.1", "a-b", "über-W", "wall"])
FREE = {
    "NAME": NAMES,
    "WORDS": st.sampled_from(["mdf", "Mdf  primed", "red\toak"]),
    "STRING": st.sampled_from(['"a # b"', "“über, x”", '""', '"  two  blanks "']),
    "COUNT": st.integers(0, 20).map(str),
    "DECIMAL": st.sampled_from(["0.5", ".25", "17.40"]),
    "FRACTION": st.sampled_from(["1/8", "5 /16", "3⁄4", "7∕ 8", "1/3"]),
    "VULGAR": st.sampled_from("½⅛⅓"),
    "PIECE_ID": st.sampled_from(["ST-N-base", "S3", "ST-E2-shoe-a"]),
    "DATE": st.just("2026-04-18"),
    "MONEY": st.sampled_from("$€"),
    "INCH": st.sampled_from(['"', "″", "inches", "INCH", "''"]),
    "FOOT": st.sampled_from(["'", "ft", "Feet", "′", "foot"]),
    "DEG": st.sampled_from(["°", "deg", "DEGREES"]),
    "OTHER_UNIT": st.just("yd"),
}
CLOSE = re.compile(r"[\W_]")


def _spellings(parts: Iterable[tuple[Any, Any]]) -> list[str]:
    """Return texts that a simple pattern takes: each branch, with and without what may be left."""
    texts = [""]
    for kind, value in parts:
        if kind is sre.LITERAL:
            ends = [chr(value)]
        elif kind is sre.IN:
            ends = [chr(one) for what, one in value if what is sre.LITERAL]
        elif kind is sre.BRANCH:
            ends = [text for branch in value[1] for text in _spellings(branch)]
        elif kind is sre.SUBPATTERN:
            ends = _spellings(value[-1])
        elif kind in (sre.MAX_REPEAT, sre.MIN_REPEAT):
            once = _spellings(value[2])
            ends = once if value[0] else ["", *once]
        else:  # where words end, and what may not follow
            continue
        texts = [text + end for text in texts for end in ends]
    return texts


def _word(name: str) -> st.SearchStrategy[str]:
    if name in FREE:
        return FREE[name]
    pattern = PATTERNS[name]
    texts = [pattern.value] if pattern.type == "str" else _spellings(sre_parse(pattern.value))
    return st.sampled_from([case(text) for case in (str, str.upper, str.title) for text in texts])


WORD = {terminal: _word(terminal) for terminal in PATTERNS}


# long enough: what repeats itself ends with its shortest way
SHORTEST = {name: min(options, key=len) for name, options in RULES.items()}
WAYS = {name: st.sampled_from(options) for name, options in RULES.items() if len(options) > 1}
KINDS = st.sampled_from(STATEMENTS)


def _expand(draw: st.DrawFn, name: str, depth: int) -> list[str]:
    way = draw(WAYS[name]) if depth <= 8 and name in WAYS else SHORTEST[name]
    words: list[str] = []
    for symbol in way:
        if isinstance(symbol, NonTerminal):
            words += _expand(draw, symbol.name, depth + 1)
        else:
            words.append(draw(WORD[symbol.name]))
    return words


BLANKS = st.sampled_from([" ", "  ", "\t", "\u00a0 "])


@st.composite
def statements(draw: st.DrawFn, rule: str | None = None) -> str:
    """One statement, of ``rule`` where it is named, with blanks of all kinds between its words."""
    text = ""
    for word in _expand(draw, rule or draw(KINDS), 0):
        apart = text and not CLOSE.match(word) and not CLOSE.match(text[-1])
        # a name goes on over a dash
        apart = apart or bool(re.search(r"\w$", text) and re.match(r"[-–‐‑.]", word))
        text += draw(BLANKS) if apart or draw(st.booleans()) else ""
        text += word
    return text


COMMENTS = st.sampled_from(["# plain", "#", "#no blank", '# with "quotes", and # more  ', "#\ttab"])


@st.composite
def files(draw: st.DrawFn) -> str:
    """A whole file: statements, remarks, blank lines and lines that cannot be read."""
    lines = []
    for _ in range(draw(st.integers(0, 12))):
        kind = draw(st.integers(0, 9))
        line = draw(st.sampled_from(["", "", "  ", "\t"]))
        if kind < 7:
            line += draw(statements("run" if kind < 2 else None))
        if kind == 7:
            line += draw(st.sampled_from(["rom x", "N: 29 1/8 in, left=", "room", ": , #", "\f"]))
        if kind == 8 or draw(st.integers(0, 3)) == 0:
            line += draw(BLANKS) + draw(COMMENTS)
        lines.append(line)
    return draw(st.sampled_from(["\n", "\r\n", "\r"])).join(lines)
