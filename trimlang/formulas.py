"""Keeps a spreadsheet from reading a text in a table as a formula.

A cell that begins as a formula does could run one on the machine of whoever opens the table.
"""

from __future__ import annotations

import re
from typing import Final

_STARTS: Final = r"\s*[=+\-@\uff1d\uff0b\uff0d\uff20\ufe66\ufe62\ufe63\ufe6b\u2212]|[\t\r\n]"
"""A sign as it is, of full width, small, or as printers set a minus: spreadsheets read all alike,
and some pass over blanks before one."""
_FORMULA: Final = re.compile(_STARTS)
_GUARDED: Final = re.compile(rf"'+(?:{_STARTS})")


def guarded(text: str) -> str:
    """Put an apostrophe before a text that a spreadsheet would read as a formula.

    A text that begins with such an apostrophe gets one more, so that ``unguarded`` gives back
    every text as it was.
    """
    return f"'{text}" if _FORMULA.match(text) or _GUARDED.match(text) else text


def unguarded(text: str) -> str:
    """Take away the apostrophe that ``guarded`` has put there."""
    return text[1:] if _GUARDED.match(text) else text


def is_formula(text: str) -> bool:
    """Tell whether a cell that should hold a length or a name holds a formula."""
    # Not a minus or a tab: before a length those are mistakes that the language itself reports.
    return text.startswith(tuple("=+@\uff1d\uff0b\uff20\ufe66\ufe62\ufe6b"))
