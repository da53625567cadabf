"""A row of the table of known slips: how a slip is written, and what was meant."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from typing import Final, TypeAlias

from trimlang.diagnostics import Diagnostic, Span, say
from trimlang.diagnostics.named_codes import MISPLACED
from trimlang.diagnostics.suggestion import Suggestion
from trimlang.language.retired import QUOTED_OR_COMMENT
from trimlang.record import record

Found: TypeAlias = re.Match[str]
Instead: TypeAlias = Callable[[Found], str | tuple[str, ...] | None]
Example: TypeAlias = tuple[str, str | tuple[str, ...] | None]
"""A line with the slip, and what was meant: one text, one of several, or what nobody can tell."""

WRITTEN_LENGTH: Final = r"\d[\d./ ⁄∕]*(?:[¼½¾⅐-⅞])?(?: ?(?:ft|feet|in|mm|cm|m)\b\.?| ?['\"′″’”]+)?"
"""The pattern of a length as people write it."""

WHOLE_LENGTH: Final = rf"(?:{WRITTEN_LENGTH}(?: *\d[\d/ ]*(?: ?in\b| ?[\"″])?)?)"
"""The same with the inches behind its feet."""

BEHIND_A_LENGTH: Final = (
    r"(?:(?<=[\d¼½¾⅐-⅞'\"″])|(?<=\dft)|(?<=\d ft)|(?<=\din)|(?<=\d in)|(?<=mm)"
    r"|(?<=cm)|(?<=\dm)|(?<=\d m))"
)
"""What stands before is a length, or the end of one."""

AT_A_SIDE: Final = r"(?:left|right)\s*=\s*"
"""A side, before the joint that it has."""

FRACTION: Final = r"\d+ ?[/⁄∕] ?\d+"
"""A fraction with any of its bars."""

END_OF_PART: Final = r"(?=\s*(?:,|#|$))"
"""Where a part of a line ends, to look for behind a pattern."""

GAP: Final = r"(?:door|window|opening|stair|bare|cabinets|radiator|newel|beam)"
"""The words of openings and bare walls."""

JOINT_WORD: Final = (
    r"(?:in-corner|out-corner|(?:in|out|inside|outside) corner|inside|outside|in|out|butt|return"
    r"|open|taper|plumb|rake|level)"
)
"""The words of ends, longer ones first."""

ANY_NAME: Final = r"[^\W\d_][\w\-]*"
"""A name: letters, figures and dashes, and a letter first."""

WALL_NAME: Final = (
    r"(?:(?!(?:in|inch|inches|ft|feet|foot|yd|mm|cm|m|deg|by|over|and|kerf|spring|rise|door|window"
    r"|opening|stair|bare|cabinets|radiator|newel|beam)\b)[^\W\d_][\w\-]*)"
)
"""The name of a wall, none of the words that stand between lengths."""


_NO_WALLS_LINE: Final = re.compile(
    r"\s*(?:trim|stock|on-hand|cut|spoiled|shortened|fitted|bought|returned|rack|room)\b",
    re.IGNORECASE,
)
"""How lines begin in which “in left” is what is left, and a name parts no walls."""


@record
class KnownSlip:
    """One slip: how it is written, what is wrong, and what to write instead.

    The pattern's group ``slip``, if it has one, is what is marked and replaced; a group ``rest``
    behind it is replaced as well.  ``instead`` gives the text to write, or several where only the
    writer knows which, or None where it is another slip after all; without it only a person can
    mend the line.  ``remedy`` is the message's remedy, with the texts in place of ``{}``.  Rows
    ``of_walls`` are not looked for in lines of the yard's and of the log.
    """

    examples: tuple[Example, ...]
    written: re.Pattern[str]
    wanted: str
    remedy: str
    instead: Instead | None
    code: str = MISPLACED
    of_walls: bool = False

    def finding(self, text: str, at: int, file: str, line: int) -> Diagnostic | None:
        """Return the finding where reading stopped at ``at`` (from 0), None for another slip."""
        if self.of_walls and _NO_WALLS_LINE.match(text):
            return None
        for found in self._outside_quotes(text):
            start, end = found.span("slip" if "slip" in found.re.groupindex else 0)
            # The parser may read a blank and one more word before it notices the slip.
            if not found.start() <= at <= max(found.end(), end) + 1:
                continue
            remedy: str = self.remedy
            ways: tuple[str, ...] = ()
            if self.instead is not None:
                better = self.instead(found)
                if better is None:
                    continue
                ways = (better,) if isinstance(better, str) else better
                covers = found.end("rest") - start if "rest" in found.re.groupindex else None
                texts = [way.strip(" ,") for way in ways]
                if self.remedy.count("{}") != len(ways):
                    texts = [" or ".join(texts)]
                told = self.remedy.format(*texts)
                remedy = Suggestion(told, *ways, covers=covers)
            span = Span(file, line, start + 1, max(end, start + 1) + 1)
            if not self.wanted:
                # Such a code has a page of its own, which says everything but what to write.
                return say(self.code, span, better=ways[0])
            word = text[start:end].strip() or text[start:end]
            return say(self.code, span, word=word, wanted=self.wanted, remedy=remedy)
        return None

    def _outside_quotes(self, text: str) -> Iterator[Found]:
        quoted = [one.span() for one in re.finditer(QUOTED_OR_COMMENT, text)]
        for found in self.written.finditer(text):
            # What is in quotes or behind # is the writer's own, and may look like any slip.
            if not any(start < found.start() < end for start, end in quoted):
                yield found


def parted_from(found: Found) -> str:
    """Return the comma that a line lacks before what is written in the slip's place."""
    before = found.string[: found.start("slip")].rstrip()
    return "" if before.endswith((",", ":")) or not before else ", "


def slip(
    *examples: Example,
    written: str,
    wanted: str,
    remedy: str,
    instead: Instead | None,
    code: str = MISPLACED,
) -> KnownSlip:
    """Return a row; its examples are what is written and what was meant, if that can be told."""
    return KnownSlip(
        examples=examples,
        written=re.compile(written, re.IGNORECASE),
        wanted=wanted,
        remedy=remedy,
        instead=instead,
        code=code,
    )
