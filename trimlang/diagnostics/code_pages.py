"""The page of each diagnostic: its wording, why it matters, and a file that triggers it.

One table, in parts by subject, so that every message can be read and tested in one place.
``docs/diagnostics.md`` is made from it.
"""

from __future__ import annotations

from types import MappingProxyType
from typing import Final

from trimlang.diagnostics.block_pages import BLOCK_PAGES
from trimlang.diagnostics.ceiling_pages import CEILING_PAGES
from trimlang.diagnostics.closing_pages import CLOSING_PAGES
from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.cutting_pages import CUTTING_PAGES
from trimlang.diagnostics.file_pages import FILE_PAGES
from trimlang.diagnostics.joint_pages import JOINT_PAGES
from trimlang.diagnostics.log_pages import LOG_PAGES
from trimlang.diagnostics.measure_pages import MEASURE_PAGES
from trimlang.diagnostics.odd_word_pages import ODD_WORD_PAGES
from trimlang.diagnostics.own_end_pages import OWN_END_PAGES
from trimlang.diagnostics.question_pages import QUESTION_PAGES
from trimlang.diagnostics.room_pages import ROOM_PAGES
from trimlang.diagnostics.stair_pages import STAIR_PAGES
from trimlang.diagnostics.stock_pages import STOCK_PAGES
from trimlang.diagnostics.survey_pages import SURVEY_PAGES
from trimlang.diagnostics.syntax_pages import SYNTAX_PAGES
from trimlang.diagnostics.transition_pages import TRANSITION_PAGES

_PARTS: Final = (
    SYNTAX_PAGES,
    SURVEY_PAGES,
    OWN_END_PAGES,
    ODD_WORD_PAGES,
    MEASURE_PAGES,
    QUESTION_PAGES,
    JOINT_PAGES,
    CLOSING_PAGES,
    CUTTING_PAGES,
    STOCK_PAGES,
    FILE_PAGES,
    LOG_PAGES,
    ROOM_PAGES,
    BLOCK_PAGES,
    TRANSITION_PAGES,
    STAIR_PAGES,
    CEILING_PAGES,
)

PAGES: Final = MappingProxyType({page.code: page for pages in _PARTS for page in pages})


def page_text(page: Page) -> str:
    """Return a page as plain text, as ``trimlang explain`` prints it."""
    parts = [f"{page.code}  {page.title}  ({page.severity})", "", page.why]
    if page.example:
        parts += ["", f"{_kind(page)} that brings it up:", ""]
        parts += [f"    {line}" for line in page.example.splitlines()]
    return "\n".join(parts) + "\n"


def _kind(page: Page) -> str:
    return "A survey in CSV" if page.family.is_of_tables else "A job file"
