"""Keeps a spreadsheet from reading a text in a table as a formula.

A cell that begins as a formula does could run one on the machine of whoever opens the table.
"""

from __future__ import annotations

import re
from typing import Final

_STARTS: Final = "=+-@\t\r\uff1d\uff0b\uff0d\uff20"
"""The last four are full-width signs, which a spreadsheet reads like the usual ones."""
_GUARDED: Final = re.compile(rf"'+[{re.escape(_STARTS)}]")


def guarded(text: str) -> str:
    """Put an apostrophe before a text that a spreadsheet would read as a formula.

    A text that begins with such an apostrophe gets one more, so that ``unguarded`` gives back
    every text as it was.
    """
    return f"'{text}" if text.startswith(tuple(_STARTS)) or _GUARDED.match(text) else text


def unguarded(text: str) -> str:
    """Take away the apostrophe that ``guarded`` has put there."""
    return text[1:] if _GUARDED.match(text) else text


def is_formula(text: str) -> bool:
    """Tell whether a cell that should hold a length or a name holds a formula."""
    # Not a minus or a tab: before a length those are mistakes that the language itself reports.
    return text.startswith(("=", "+", "@", "\uff1d", "\uff0b", "\uff20"))
