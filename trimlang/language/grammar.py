"""Loads the parser: from ready-made tables where they match the grammar.

Reading the grammar takes lark longer than all the rest of ``trimlang check``,
so its tables are kept as data (``python -m trimlang.language.grammar`` writes
it; a test holds it against the grammar).
"""

from __future__ import annotations

import json
from functools import cache
from pathlib import Path
from typing import Any, Final

from lark import Lark
from lark import __version__ as lark_version
from lark.grammar import Rule
from lark.lexer import TerminalDef

TABLES: Final = Path(__file__).with_name("tables.json")


def grammar_text() -> str:
    """Return the grammar file's text."""
    from trimlang.resources import folder

    return (folder("grammar") / "trim.lark").read_text(encoding="utf-8")


def read_grammar(text: str) -> Lark:
    """Make the parser from the grammar's text."""
    return Lark(
        text, parser="lalr", start="line", propagate_positions=True, maybe_placeholders=False
    )


@cache
def parser() -> Lark:
    """Return the parser for one line."""
    tables = json.loads(TABLES.read_text(encoding="utf-8"), object_pairs_hook=_numbered)
    if tables["lark"] != lark_version:
        # another lark may lay its tables out otherwise: slower to start, never wrong
        return read_grammar(grammar_text())
    ready: Lark = Lark._load_from_dict(tables["data"], tables["memo"])
    return ready


def _numbered(pairs: list[tuple[str, Any]]) -> dict[Any, Any]:
    """Give back the numbers that JSON turned into the names of an object."""
    return {int(key) if key.isdigit() else key: value for key, value in pairs}


def tables_text() -> str:
    """Return the text of ``trimlang/language/tables.json`` for the grammar as it stands."""
    data, memo = read_grammar(grammar_text()).memo_serialize([TerminalDef, Rule])
    tables = {"lark": lark_version, "grammar": grammar_text(), "data": data, "memo": memo}
    return json.dumps(tables, ensure_ascii=True, sort_keys=True) + "\n"


def tables_are_current() -> bool:
    """Tell whether the tables were made from the grammar as it stands, by this lark."""
    if not TABLES.exists():
        return False
    try:
        tables = json.loads(TABLES.read_text(encoding="utf-8"))
    except ValueError:
        return False
    return bool(tables.get("grammar") == grammar_text() and tables.get("lark") == lark_version)


if __name__ == "__main__" and not tables_are_current():
    # lark numbers its tables differently each time, so they are not made anew for nothing
    TABLES.write_text(tables_text(), encoding="utf-8")
