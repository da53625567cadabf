"""Retired words of the language: still read, with a warning that gives the new word."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final

from trimlang.diagnostics import Diagnostic, Span, say
from trimlang.record import record


@record
class Retired:
    """A word and its new word: deprecated ``since`` a version, and ``gone`` in a later one."""

    word: str
    new: str
    since: str
    gone: str


RETIRED: Final[tuple[Retired, ...]] = ()
"""Every retired word that is still read; DEVELOPERS.md says how one is added."""

QUOTED_OR_COMMENT: Final = r'(?:(?<![\d¼½¾⅐-⅞])"|“)[^"“”]*["”]|#.*'
"""The pattern of what in a line is not in the language's own words.

A mark right behind a number is of inches.
"""


def renewed(
    text: str, file: str, line: int, retired: Iterable[Retired] | None = None
) -> tuple[str, list[Diagnostic]]:
    """Return a line in present words, and a warning at each word that was replaced.

    Quoted texts and comments are left alone.  The warnings' columns are those of the line as
    written; the columns of other findings further right shift by the difference in length.
    """
    findings: list[Diagnostic] = []
    for word in RETIRED if retired is None else retired:
        # Looked for anew for each word, since the text before has changed places.
        aside = [one.span() for one in re.finditer(QUOTED_OR_COMMENT, text)]
        # Only a whole word: a name that contains it is left alone.
        pattern = re.compile(rf"(?<![\w.-]){re.escape(word.word)}(?![\w.-])", re.IGNORECASE)
        parts: list[str] = []
        last = 0
        for found in pattern.finditer(text):
            if any(start <= found.start() < end for start, end in aside):
                continue
            parts += [text[last : found.start()], word.new]
            last = found.end()
            span = Span(file, line, found.start() + 1, found.end() + 1)
            findings.append(
                say("T130", span, old=found[0], new=word.new, since=word.since, gone=word.gone)
            )
        text = "".join((*parts, text[last:]))
    return text, findings
