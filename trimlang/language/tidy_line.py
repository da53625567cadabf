"""Writes one line in canonical words and spacing, from the grammar's own tokens.

Nothing here knows about statements: a token's name in the grammar decides how it is spelled and
spaced, so a new statement of the grammar is formatted like all others.  Words that the grammar
reads in any case are written in small letters; lengths are written as ``29 1/8 in`` wherever the
grammar has a length.
"""

from __future__ import annotations

import unicodedata
from fractions import Fraction
from functools import cache
from typing import Final

from lark import Token, Tree
from lark.exceptions import UnexpectedInput

from trimlang.language.grammar import parser
from trimlang.language.meaning import same_meaning
from trimlang.language.parse import LONGEST_LINE
from trimlang.language.to_tree import LineBuilder
from trimlang.language.tree import SettingLine, Statement
from trimlang.lengths.tape import is_tape_fraction
from trimlang.record import record

_SPELT: Final = {"INCH": "in", "FOOT": "ft", "DEG": "deg"}
_CLOSE_BEFORE: Final = frozenset({"COMMA", "COLON", "EQUAL", "LPAR", "RPAR"})
_LISTED: Final = frozenset({"walls", "opening", "bare", "beam"})
"""Rules of lines in which several walls may stand."""
_CLOSE_AFTER: Final = frozenset({"EQUAL", "LPAR", "MONEY"})


@record
class TidyLine:
    """A line: the grammar's rule for it, its words in canonical spelling, its comment.

    ``rule`` is None where the line says nothing (then ``words`` is empty) or could not be read
    (then ``left`` is true, and the line stays as it is).  ``label`` is how many characters of
    ``words`` are a run's label with its colon.  ``for_room`` marks a setting that a room may have.
    """

    raw: str
    rule: str | None = None
    words: str = ""
    comment: str = ""
    label: int = 0
    left: bool = False
    for_room: bool = False

    @property
    def indented(self) -> bool:
        """Whether it was written away from the margin."""
        return self.raw[:1].isspace()


def read_line(raw: str) -> TidyLine:
    """Return a line of a job file in canonical form."""
    if not raw or raw.isspace():
        return TidyLine("")
    # Reading would take long, and `trimlang check` refuses such a line anyway.
    if len(raw) > LONGEST_LINE:
        return TidyLine(raw, left=True)
    read = _read(raw)
    if read is None:
        return TidyLine(raw, left=True)
    tokens, tree = read
    rest = raw[tokens[-1].end_pos :] if tokens else raw
    comment = rest.strip(" \t\u00a0\u2009\u202f")
    if not tokens:
        return TidyLine(raw, comment=comment)
    words, label = _written(tokens, tree)
    # The tidy words are read back, and must mean what the line meant.
    said, again = _statement(tree), _read(words)
    if again is None or not same_meaning(said, _statement(again[1])):
        # This has never been seen, but what a line says matters more than how it looks: leave it.
        return TidyLine(raw, left=True)
    (statement,) = tree.children
    rule = str(statement.data) if isinstance(statement, Tree) else None
    for_room = isinstance(said, SettingLine) and all(fact.for_room for fact in said.facts)
    return TidyLine(
        raw=raw,
        rule=rule,
        words=words,
        comment=comment,
        label=label if rule == "run" else 0,
        for_room=for_room,
    )


def _read(text: str) -> tuple[list[Token], Tree[Token]] | None:
    """Return the tokens of a line and its tree, None where it cannot be read."""
    try:
        reader = parser().parse_interactive(text)
        tokens = list(reader.iter_parse())
        return tokens, reader.feed_eof(tokens[-1] if tokens else None)
    except UnexpectedInput:
        return None


def _statement(tree: Tree[Token]) -> Statement | None:
    statement: Statement | None = LineBuilder("", 1).transform(tree)
    return statement


def _written(tokens: list[Token], tree: Tree[Token]) -> tuple[str, int]:
    """Return the line's words, and how many characters of them its first colon ends."""
    signs, joiners, inches = _in_lengths(tokens, tree)
    # A comma before an opening's name: behind a bare number its quotation mark would be an inch
    # mark.
    names = {part.meta.start_pos for part in tree.find_data("called")}
    text, label, earlier, before = "", 0, "", ""
    close = True
    # The name of boxes stands behind their run's, before the colon, and takes no comma.
    named = bool(tokens) and tokens[0].type == "BOXES"
    for token in tokens:
        if token.start_pos in joiners:
            continue
        # A transition has no width, so its name stands right behind its block's.
        after_block = (earlier, before) == ("TRANSITION", "NAME")
        if token.start_pos in names and not (named or after_block or text.endswith(",")):
            text += ","
        if not close and token.type not in _CLOSE_BEFORE:
            text += " "
        # a price is “a foot”, as one says it
        text += "foot" if token.type == "FOOT" and before == "A" else _spelt(token)
        if token.start_pos in inches:
            text += " in"
        if token.type == "COLON" and not label:
            label = len(text)
        close = token.type in _CLOSE_AFTER or token.start_pos in signs
        earlier, before = before, token.type
    return text, label


def _in_lengths(tokens: list[Token], tree: Tree[Token]) -> tuple[set[int], set[int], set[int]]:
    """Return where lengths have minus signs, dashes between parts, and numbers without ``in``."""
    signs: set[int] = set()
    spans: list[tuple[int, int]] = []
    inches: set[int] = set()
    statement = tree.children[0]
    listed = isinstance(statement, Tree) and statement.data in _LISTED
    for part in tree.iter_subtrees():
        if part.meta.empty:
            continue
        start, end = part.meta.start_pos, part.meta.end_pos
        # A minus belongs to its number and stands close to it; a dash between feet and inches is a
        # joiner and goes.
        if part.data == "sign":
            signs.add(start)
        elif part.data in ("mixed", "feet_and_inches"):
            spans.append((start, end))
            last = next(token for token in reversed(tokens) if token.end_pos == end)
            # “9ft6”: inches without a unit get theirs, but where walls are listed one behind the
            # other, as on a pad.
            if part.data == "feet_and_inches" and last.type not in ("INCH", "IN") and not listed:
                inches.add(last.start_pos or 0)
    joiners = {
        token.start_pos or 0
        for token in tokens
        if token.type in ("MINUS", "_DASH")
        and token.start_pos not in signs
        and any(start < (token.start_pos or 0) < end for start, end in spans)
    }
    return signs, joiners, inches


def _spelt(token: Token) -> str:
    """Return a token in canonical spelling, by its name in the grammar."""
    kind, text = token.type, str(token)
    if kind in _SPELT:
        return _SPELT[kind]
    if kind == "STRING":
        return f'"{text[1:-1]}"'
    if kind == "FRACTION":
        above, below = text.replace("⁄", "/").replace("∕", "/").split("/")
        return f"{above.strip()}/{below.strip()}"
    if kind == "VULGAR":
        value = Fraction(unicodedata.numeric(text)).limit_denominator(16)
        # Thirds and fifths stay as one character: as 1/3 they would bring up a warning.
        return str(value) if is_tape_fraction(value) else text
    if kind == "DECIMAL":
        return f"0{text}" if text.startswith(".") else text
    if kind in ("WORDS", "GAP_NAME"):
        return " ".join(text.split())
    if kind in any_case():
        return " ".join(text.lower().split())
    return text


@cache
def any_case() -> frozenset[str]:
    """Return the names of the terminals that the grammar reads in any case."""
    return frozenset(one.name for one in parser().terminals if "i" in one.pattern.flags)
