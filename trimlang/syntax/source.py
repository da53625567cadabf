"""A job file's text, and its lines as people count them."""

from __future__ import annotations

import re
from dataclasses import dataclass

_LINE_END = re.compile(r"\r\n|\r|\n")


@dataclass(frozen=True, slots=True)
class Source:
    """One file's name, as shown in messages, and its text."""

    name: str
    text: str

    def lines(self) -> list[str]:
        """Return the lines without their ends; a byte order mark is dropped."""
        return _LINE_END.split(self.text.removeprefix("\ufeff"))
