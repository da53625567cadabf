"""A job file's text, and its lines as people count them."""

from __future__ import annotations

import re
from typing import Final

from trimlang.record import record

MOST_LINES: Final = 250_000
"""More lines than any job has, all its files together."""

LINE_END: Final = re.compile(r"\r\n|\r|\n")


@record
class Source:
    """One file's name, as shown in messages, and its text."""

    name: str
    text: str

    def lines(self) -> list[str]:
        """Return the first ``MOST_LINES`` lines without their ends or a byte order mark."""
        return LINE_END.split(self.text.removeprefix("\ufeff"), maxsplit=MOST_LINES)[:MOST_LINES]

    def line_count(self) -> int:
        """Return how many lines the file has, however many they are."""
        text = self.text
        return 1 + text.count("\n") + text.count("\r") - text.count("\r\n")
