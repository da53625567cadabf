"""Finds the language's own words by looking them up, and all else by a pattern of its own.

Lark looks for what may stand at a place with one regular expression of all that may, and has to
compile one for each set of words that it meets: fifty for a house, a tenth of ``trimlang check``.
Most of what may stand somewhere are plain words, which need none; and the patterns of the others
are tried one after the other in lark's order, each compiled where it is first tried.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache
from typing import Any, Final

from lark import Token
from lark.exceptions import UnexpectedCharacters
from lark.lexer import BasicLexer, ContextualLexer, LexerState, TerminalDef, _create_unless
from lark.utils import TextSlice

_PLAIN: Final = r"\(?(?P<words>[a-z]+(\|[a-z]+)*)\)?\\b"
"""The pattern of a terminal that is a word, or one of several: ``set\\b``, ``(left|right)\\b``."""
_WORD: Final = re.compile(r"\w+")
_BLANKS: Final = re.compile("[ \\t]+")
_NOTHING: Final = "<END-OF-FILE>"
"""What lark says may stand where its regular expression allows nothing."""


@cache
def _matcher(terminal: TerminalDef) -> Callable[[str, int, int], re.Match[str] | None]:
    """Return what finds a terminal at a place; many are never asked for, and never compiled."""
    return re.compile(terminal.pattern.to_regexp()).match


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
        how = self.g_regex_flags, self.re, self.use_bytes
        self.terminals, self.callback = _create_unless(others, *how)

    def match(self, text: TextSlice[str], pos: int) -> tuple[str, str] | None:
        """Return the text and the terminal that stand at a place, None where none may."""
        found = _WORD.match(text.text, pos, text.end)
        if found and (name := self.words.get(found[0].lower())):
            return found[0], name
        for terminal in self.terminals:
            if found := _matcher(terminal)(text.text, pos, text.end):
                return found[0], terminal.name
        return None

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
    plain = re.fullmatch(_PLAIN, terminal.pattern.value)
    return plain["words"].split("|") if plain else []
