"""The columns of a survey's table, and how a text keeps from being taken for a formula."""

from __future__ import annotations

import re
from typing import Final

COLUMNS: Final = (
    "kind",
    "room",
    "wall",
    "length",
    "left",
    "right",
    "trims",
    "called",
    "note",
    "more",
    "line",
)
"""All columns, in the order in which they are written; any order is read."""

ALSO: Final = {"run": "wall", "trim": "trims"}
"""Other names that a heading may use."""

NEEDED: Final = ("room", "length")
KINDS: Final = ("run", "opening", "bare", "room", "line")

_FORMULA: Final = "=+-@\t\r"
_GUARDED: Final = re.compile(rf"'+[{re.escape(_FORMULA)}]")


def guarded(text: str) -> str:
    """Put an apostrophe before a text that a spreadsheet would take for a formula."""
    return f"'{text}" if text.startswith(tuple(_FORMULA)) or _GUARDED.match(text) else text


def unguarded(text: str) -> str:
    """Take that apostrophe away again."""
    return text[1:] if _GUARDED.match(text) else text


def is_formula(text: str) -> bool:
    """Tell whether a cell that should hold a measure or a name holds a formula."""
    return text.startswith(("=", "+", "@"))
