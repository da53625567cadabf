"""Loads the parser: from ready-made tables where they match the grammar.

Reading the grammar takes lark longer than all the rest of ``trimlang check``,
so its tables are kept as a module (``python -m trimlang.syntax.grammar`` writes
it; a test holds it against the grammar).
"""

from __future__ import annotations

from functools import cache
from pathlib import Path
from pprint import pformat
from typing import Any

from lark import Lark
from lark.grammar import Rule
from lark.lexer import TerminalDef

from trimlang.resources import folder


def grammar_text() -> str:
    """Return the grammar file's text."""
    return (folder("grammar") / "trim.lark").read_text(encoding="utf-8")


def read_grammar(text: str) -> Lark:
    """Make the parser from the grammar's text."""
    return Lark(
        text, parser="lalr", start="line", propagate_positions=True, maybe_placeholders=False
    )


@cache
def parser() -> Lark:
    """Return the parser for one line."""
    from trimlang.syntax import tables

    return Lark._load_from_dict(tables.DATA, tables.MEMO)  # noqa: SLF001


def tables_text() -> str:
    """Return the source of ``trimlang/syntax/tables.py`` for the grammar as it stands."""
    data: Any
    memo: Any
    data, memo = read_grammar(grammar_text()).memo_serialize([TerminalDef, Rule])
    return (
        '"""Lark\'s tables for grammar/trim.lark: made by trimlang.syntax.grammar, not by hand."""\n\n'
        "from typing import Any, Final\n\n"
        f"DATA: Final[dict[str, Any]] = {pformat(data, width=100, compact=True)}\n\n"
        f"MEMO: Final[dict[int, Any]] = {pformat(memo, width=100, compact=True)}\n"
    )


if __name__ == "__main__":
    Path(__file__).with_name("tables.py").write_text(tables_text(), encoding="utf-8")
