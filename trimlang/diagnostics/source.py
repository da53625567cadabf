"""A file's text, and its lines as editors count them."""

from __future__ import annotations

import re
from typing import Final

from trimlang.record import record

MOST_LINES: Final = 250_000
"""Lines at most, in all files of a job together: more than any real job has."""

LINE_END: Final = re.compile(r"\r\n|\r|\n")


@record
class Source:
    """A file's name, as messages show it, and its text."""

    name: str
    text: str

    def lines(self) -> list[str]:
        """Return the first ``MOST_LINES`` lines without their ends or a byte order mark."""
        # The split is bounded, so that a file of millions of line ends takes no more memory.
        return LINE_END.split(self.text.removeprefix("\ufeff"), maxsplit=MOST_LINES)[:MOST_LINES]

    def line_count(self) -> int:
        """Return how many lines the file has, also above ``MOST_LINES``."""
        text = self.text
        return 1 + text.count("\n") + text.count("\r") - text.count("\r\n")
