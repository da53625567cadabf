"""Writes the table of settings into ``docs/language.md``; a test compares it with the rows.

Run ``python -m trimlang.settings.settings_reference docs/language.md`` after a change of a row.
"""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Final

from trimlang.settings.setting_kinds import Scope
from trimlang.settings.table import Settings

BEGINS: Final = "<!-- the settings, made from their table -->\n"
ENDS: Final = "<!-- here the table of settings ends -->\n"
_WHERE: Final = {Scope.JOB: "the job", Scope.ROOM: "job, room", Scope.RUN: "job, room, run"}


def settings_table() -> str:
    """Return the settings as a Markdown table, one row each, those of a room first."""
    lines = ["| setting | meaning | where nothing is said | said for |", "|" + " --- |" * 4]
    lines += [
        f"| `{row.words}` | {row.page} | {row.unsaid} | {_WHERE[row.scope]} |"
        for row in Settings.rows()
    ]
    return "\n".join(lines) + "\n"


def with_settings(text: str) -> str:
    """Return a page with the present table between its two marks.

    Raises:
        ValueError: the page lacks the marks.
    """
    # Everything outside the two marks is written by hand and stays.
    before, begins, rest = text.partition(BEGINS)
    _, ends, after = rest.partition(ENDS)
    if not begins or not ends:
        raise ValueError("the page has no place for the table of settings")
    return f"{before}{begins}\n{settings_table()}\n{ends}{after}"


if __name__ == "__main__":
    page = Path(sys.argv[1])
    page.write_text(with_settings(page.read_text(encoding="utf-8")), encoding="utf-8")
