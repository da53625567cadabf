"""Keeps a spreadsheet from taking a text in a table for a formula, and takes it for none."""

from __future__ import annotations

import re
from typing import Final

_STARTS: Final = "=+-@\t\r\uff1d\uff0b\uff0d\uff20"
"""The last four are full-width signs, which a spreadsheet reads as the narrow ones."""
_GUARDED: Final = re.compile(rf"'+[{re.escape(_STARTS)}]")


def guarded(text: str) -> str:
    """Put an apostrophe before a text that a spreadsheet would take for a formula.

    One that has such an apostrophe gets another, so that ``unguarded`` gives every text back.
    """
    return f"'{text}" if text.startswith(tuple(_STARTS)) or _GUARDED.match(text) else text


def unguarded(text: str) -> str:
    """Take that apostrophe away again."""
    return text[1:] if _GUARDED.match(text) else text


def is_formula(text: str) -> bool:
    """Tell whether a cell that should hold a measure or a name holds a formula."""
    # a minus or a tab before a measure is a mistake that the language tells of
    return text.startswith(("=", "+", "@", "\uff1d", "\uff0b", "\uff20"))
