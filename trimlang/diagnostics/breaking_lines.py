"""The mend of a line that is too long: it is broken where one line can be two."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterator
from typing import Final

from trimlang.diagnostics.diagnostic import Span
from trimlang.diagnostics.leaving_out import end_of_words
from trimlang.diagnostics.mend import Edit, Facts, Mend

_WIDE: Final = 100
"""Columns that a broken line takes at most, where it can be broken so often."""

_LISTS: Final = re.compile(r"\s*(?:stock|on-hand)\s+[^:,#]+:\s*", re.IGNORECASE)
"""What begins a line that may as well be several: each begins so, and has some of the list."""

_WALL: Final = re.compile(r"[A-Za-z]{1,2}\d*\s*:?\s+\d")
"""A wall in a list of walls: a short name and a length."""

_PARTS: Final = re.compile(r'(?:[^,"“”()]|["“][^"“”]*["”]|\([^()]*\))+')
"""What stands between two commas, none of them in quotes or brackets."""


def broken(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Break a list of walls or sticks at its commas, and set a long remark in lines above it."""
    end = end_of_words(line)
    said, note = line[: end - 1], line[end - 1 :].strip().removeprefix("#").strip()
    indent = line[: len(line) - len(line.lstrip())]
    lines = textwrap.wrap(
        note, _WIDE, initial_indent=f"{indent}# ", subsequent_indent=f"{indent}# "
    )
    if said.strip():
        lines += _parted(said, indent)
    if lines and max(map(len, lines)) <= int(facts["most"]):
        place = Span(span.file, span.line, 1, len(line) + 1)
        yield Mend("Break the line", (Edit(place, "\n".join(lines)),), sure=True)


def _parted(said: str, indent: str) -> list[str]:
    head = _LISTS.match(said)
    begin = head[0] if head is not None else indent
    parts = [one.strip() for one in _PARTS.findall(said[len(begin) :]) if one.strip()]
    lines = [begin + parts[0]]
    for part in parts[1:]:
        breaks = head is not None or _WALL.match(part)
        if breaks and len(lines[-1]) + len(part) > _WIDE:
            lines.append(begin + part)
        else:
            lines[-1] += f", {part}"
    return lines
