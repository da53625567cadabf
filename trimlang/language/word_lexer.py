"""Finds the language's own words by looking them up, and all else by a pattern of its own.

Lark looks for what may stand at a place with one regular expression of all that may, and has to
compile one for each set of words that it meets: fifty for a house, a tenth of ``trimlang check``.
Most of what may stand somewhere are plain words, which need none; and the patterns of the others
are tried one after the other, so that each is compiled once for all places.
"""

from __future__ import annotations

import re
from typing import Any, Final

from lark import Token
from lark.exceptions import UnexpectedCharacters
from lark.lexer import BasicLexer, ContextualLexer, LexerState, Scanner, TerminalDef, _create_unless
from lark.utils import TextSlice

_PLAIN: Final = re.compile(r"\(?(?P<words>[a-z]+(\|[a-z]+)*)\)?\\b")
"""The pattern of a terminal that is a word, or one of several: ``set\\b``, ``(left|right)\\b``."""
_WORD: Final = re.compile(r"\w+")
_BLANKS: Final = re.compile("[ \\t]+")
_NOTHING: Final = "<END-OF-FILE>"
"""What lark says may stand where its regular expression allows nothing."""


class _OneByOne(Scanner):
    """Lark's scanner with a regular expression for each terminal, tried in lark's order."""

    def __init__(self, *conf: Any) -> None:
        Scanner.__init__(self, *conf)

    def _build_mres(self, terminals: list[TerminalDef], max_size: int) -> list[re.Pattern[str]]:
        patterns: list[re.Pattern[str]] = Scanner._build_mres(self, terminals, min(max_size, 1))
        return patterns


class WordLexer(BasicLexer):
    """Lark's lexer for the places where the same may stand, with a table of its plain words.

    ``terminals`` are then the others, which are found by their regular expressions.
    """

    def __init__(self, *conf: Any) -> None:
        super().__init__(*conf)
        plain = {one.name: said for one in self.terminals if (said := _words_of(one))}
        # What is tried before the words may match the same text (the joint “open”): lark decides.
        first = max((one.priority for one in self.terminals), default=0)
        if any(first > one.priority for one in self.terminals if one.name in plain):
            plain = {}
        self.words = {word: name for name in reversed(plain) for word in plain[name]}
        others = [one for one in self.terminals if one.name not in plain]
        # Lark asks this each time that a scanner is made, and compiles every pattern for it; asked
        # here, it is answered in the parser that is made ahead.
        self.terminals, self.callback = _create_unless(others, *self._how())

    def _how(self) -> tuple[int, Any, bool]:
        return self.g_regex_flags, self.re, self.use_bytes

    def _build_scanner(self) -> Scanner:
        return _OneByOne(self.terminals, *self._how())

    def match(self, text: TextSlice[str], pos: int) -> tuple[str, str] | None:
        """Return the text and the terminal that stand at a place, None where none may."""
        others = self.scanner  # lark makes it, and more that it needs, when it is asked for
        found = _WORD.match(text.text, pos, text.end)
        name = self.words.get(found[0].lower()) if found else None
        return (found[0], name) if found and name else others.match(text, pos)

    def next_token(self, lex_state: LexerState, parser_state: Any = None) -> Token:
        """Return the next token, as lark does; the words too are told where nothing matches."""
        # Lark would try all that may stand there on each blank first, and no word begins with one.
        at, text = lex_state.line_ctr, lex_state.text
        if found := _BLANKS.match(text.text, at.char_pos, text.end):
            at.feed(found[0], test_newline=False)
        try:
            return super().next_token(lex_state, parser_state)
        except UnexpectedCharacters as stop:
            if self.words:
                stop.allowed = stop.allowed - {_NOTHING} | set(self.words.values())
            raise


class LineLexer(ContextualLexer):
    """Lark's lexer that knows what may stand at each place, with tables of plain words."""

    BasicLexer = WordLexer


def _words_of(terminal: TerminalDef) -> list[str]:
    plain = _PLAIN.fullmatch(terminal.pattern.value)
    return plain["words"].split("|") if plain else []
