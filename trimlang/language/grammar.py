"""Loads the parser, from the tables that were made ahead if they are the present grammar's."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any, Final

from lark import Lark
from lark import __version__ as lark_version

from trimlang import made_ahead
from trimlang.resources import folder

_OPTIONS: Final[dict[str, Any]] = {
    # A line's first word decides its rule, so LALR with one word of lookahead is enough, and quick.
    # A wrong line stops at the exact word, which is what a message needs.
    "parser": "lalr",
    "start": "line",
    "propagate_positions": True,
    "maybe_placeholders": False,
}


def grammar_text() -> str:
    """Return the grammar file's text."""
    return (folder("grammar") / "trim.lark").read_text(encoding="utf-8")


def read_grammar(text: str) -> Lark:
    """Return the parser made from a grammar's text."""
    return Lark(text, **_OPTIONS)


@cache
def parser() -> Lark:
    """Return the parser for one line of a job file."""
    text = grammar_text()
    try:
        with (made_ahead.FOLDER / _tables_name(text)).open("rb") as tables:
            # The tables are for this very grammar, lark version and options: the file's name is
            # their digest.
            ready: Lark = Lark.load(tables)
            return ready
    except FileNotFoundError:
        return read_grammar(text)


def make_tables(into: Path) -> None:
    """Write the parser's tables into a folder, in lark's own format."""
    text = grammar_text()
    with (into / _tables_name(text)).open("wb") as tables:
        read_grammar(text).save(tables)


def _tables_name(text: str) -> str:
    return made_ahead.made_name("grammar", lark_version, repr(_OPTIONS), text)
