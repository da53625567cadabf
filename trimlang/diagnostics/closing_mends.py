"""Mends of a survey: the wall, corner or diagonal that was misread, the side of a joint."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

from trimlang.diagnostics.diagnostic import Diagnostic, Span
from trimlang.diagnostics.mend import Edit, Facts, Mend, marked

_LONG: Final = re.compile(
    r"""\d[\d./⁄∕ \-]*[¼½¾⅐-⅞]?(?: *(?:ft|feet|foot|in|inch|inches|mm|cm|m)\b\.?| *['"″′])?"""
    r"""(?:[ -]*\d[\d./⁄∕ ]*[¼½¾⅐-⅞]?(?: *(?:in|inch|inches)\b\.?| *["″])?)?"""
)
_JOINT: Final = re.compile(r"[a-z]+(?:[ -]corner)?", re.IGNORECASE)
"""The joint's own word or words, with which every written end begins."""
_CORNER: Final = re.compile(
    r"(?:in|out|inside|outside)(?:[ -]corner)?(?: ?\([\d./ ]+(?: ?deg| ?°)?\))?$|(?:butt|open)$",
    re.IGNORECASE,
)
"""A plain end, or a corner with its angle at most: of anything else too much would be lost."""


def as_it_closes(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Write what each slip that would explain the survey says was meant; only the wall can tell."""
    facts: Facts = dict(finding.facts)
    for words, mended in facts["slips"]:
        edits = [_edit(place, text, lines) for place, text in mended]
        # A wall of an included file cannot be mended from here, nor half of a slip.
        if edits and all(edits) and all(at.file == finding.span.file for at, _ in mended):
            # The later place first, so that the earlier one is still right when it is changed.
            found = sorted(filter(None, edits), key=lambda one: one.span.column, reverse=True)
            yield Mend(f"Mend this: {words}", tuple(found))


def one_joint(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Offer to make either side of a joint like the other: only the wall tells which is right."""
    facts: Facts = dict(finding.facts)
    for place, words, joint in (
        (facts["here"], f"Begin {facts['other']} with {facts['right']}", facts["right"]),
        (facts["there"], f"End {facts['one']} with {facts['left']}", facts["left"]),
    ):
        if not isinstance(place, Span) or place.file != finding.span.file:
            continue
        said = _JOINT.match(marked(place, lines[place.line - 1]))
        if said is not None:
            end = place.column + said.end()
            yield Mend(words, (Edit(replace(place, end=end), str(joint)),))


def measured_to_the_wall(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Add to a wall what stands in its corner, where the tape ended at that."""
    facts: Facts = dict(finding.facts)
    line = lines[finding.span.line - 1]
    label = re.search(rf"(?<![\w-]){re.escape(str(facts['run']))}\s*:?\s+(?=\d)", line)
    if label is None:
        return
    column = label.start() + 1
    longer = _with_length(
        replace(finding.span, column=column, end=column + 1), str(facts["whole"]), line
    )
    if longer is not None:
        corner = Edit(finding.span, "in-corner")
        edits = sorted((longer, corner), key=lambda one: one.span.column, reverse=True)
        yield Mend(f"Take {facts['run']} as {facts['whole']}, up to the wall", tuple(edits))


def _edit(place: Span, text: str, lines: Sequence[str]) -> Edit | None:
    line = lines[place.line - 1]
    if text[0].isdigit():
        return _with_length(place, text, line)
    if text.startswith(("left=", "right=")):
        # behind the wall's length, or behind all that is said of an opening, which is marked whole
        rest = re.match(r"[^,#]*", line[place.end - 1 :])
        at = place.end + len((rest[0] if rest is not None else "").rstrip())
        return Edit(Span(place.file, place.line, at, at), f", {text}")
    said = marked(place, line).rstrip()
    if not _CORNER.match(said):
        return None
    return Edit(Span(place.file, place.line, place.column, place.column + len(said)), text)


def _with_length(place: Span, text: str, line: str) -> Edit | None:
    """Write another length behind the name of a wall, of an opening or of a diagonal."""
    # An opening is marked whole, a wall by its name, which may have figures of its own.
    named = re.match(r"[^\W\d_][\w.\-]*(?: [^\W\d_][\w\-]*)*\s*:?\s*", line[place.column - 1 :])
    start = place.column - 1 + (named.end() if named else 0)
    found = _LONG.match(line, start)
    if found is None:
        return None
    size = len(found[0].rstrip())
    return Edit(Span(place.file, place.line, start + 1, start + 1 + size), text)
