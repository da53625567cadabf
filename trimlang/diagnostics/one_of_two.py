"""Mends of what is said twice that keep the second: the first of the two is left out."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from typing import Final

from trimlang.diagnostics.diagnostic import Diagnostic, Span
from trimlang.diagnostics.leaving_out import (
    end_of_words,
    without_block,
    without_fit,
    without_line,
    without_one_offer,
    without_part,
)
from trimlang.diagnostics.mend import Edit, Mend, marked

_LINE: Final = re.compile(r"line (\d+)$")
_NUMBER: Final = re.compile(r"\d[\d./ -]*|\b(?:in|ft|mm|cm|m|deg)\b|[°'\"″′]", re.IGNORECASE)
_ROOM: Final = re.compile(r"\s*room\b", re.IGNORECASE)


def _named(finding: Diagnostic, lines: Sequence[str]) -> Span | None:
    """Return the line that a finding names as the one that says it already."""
    found = _LINE.match(str(dict(finding.facts)["line"]))
    # in another file nothing is changed from here
    if found is None or not 0 < int(found[1]) <= len(lines):
        return None
    number = int(found[1])
    return Span(finding.span.file, number, 1, end_of_words(lines[number - 1]))


def without_named_line(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Delete the line that said it first."""
    there = _named(finding, lines)
    # of several settings in a line the others are kept
    is_part = "is_part" in dict(finding.facts)
    if there is not None and there.line != finding.span.line and not is_part:
        for mend in without_line(there, {}, lines[there.line - 1]):
            yield replace(mend, words=f"Delete line {there.line}")


def without_first_part(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Delete the part that said it first: in the line that is named, or else in the same one."""
    facts, span = dict(finding.facts), finding.span
    there = _named(finding, lines) if "line" in facts else span
    if there is None:
        return
    line = lines[there.line - 1]
    same = there.line == span.line
    said = _subject(_part(lines[span.line - 1], span.column))
    at = line.find(":") + 1
    for part in line[at : span.column - 1 if same else end_of_words(line) - 1].split(","):
        start = at + len(part) - len(part.lstrip())
        at += len(part) + 1
        if not part.strip() or _subject(part) != said:
            continue
        place = Span(span.file, there.line, start + 1, start + 1 + len(part.strip()))
        yield from (replace(one, words=f"Delete “{part.strip()}”") for one in _out(place, line))
        return


def _out(place: Span, line: str) -> Iterator[Mend]:
    """Delete a part with a comma; the line where it has no other."""
    if line[: place.column - 1].rstrip().endswith(","):
        yield from without_part(place, {}, line)
    elif behind := re.match(r"\s*,\s*", line[place.end - 1 :]):
        yield Mend("", (Edit(replace(place, end=place.end + behind.end()), ""),))
    else:
        yield from without_line(place, {}, line)


def _part(line: str, column: int) -> str:
    start = max(line.rfind(",", 0, column - 1), line.find(":")) + 1
    return line[start : end_of_words(line) - 1].split(",")[0]


def _subject(part: str) -> tuple[str, ...]:
    """Return what a part of a line is about: its words, or the side that it says."""
    side = re.match(r"\s*(left|right)\s*=", part, re.IGNORECASE)
    return (side[1].lower(),) if side else tuple(_NUMBER.sub(" ", part).casefold().split())


def without_first_price(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Delete the stick that was listed first at another price."""
    facts, there = dict(finding.facts), _named(finding, lines)
    if there is not None:
        line = lines[there.line - 1]
        stick = re.escape(str(facts["stick"]).removeprefix("a stick of "))
        found = re.search(rf"\b{stick}\s+at\s+\S?{re.escape(str(facts['other']))}\b", line)
        if found is not None:
            place = replace(there, column=found.start() + 1, end=found.end() + 1)
            for mend in without_one_offer(place, {}, line):
                yield replace(mend, words=f"Delete “{found[0]}”")


def without_first(words: str) -> Callable[[Diagnostic, Sequence[str]], Iterator[Mend]]:
    """Return what deletes some words (a pattern) in the line that said them first."""

    def offer(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
        there = _named(finding, lines)
        facts = {name: re.sub("[“”]", "", str(one)) for name, one in finding.facts}
        if there is not None:
            line = lines[there.line - 1]
            found = re.search(rf"\s*,?\s*\b{words.format(**facts)}", line, re.IGNORECASE)
            if found is not None:
                place = replace(there, column=found.start() + 1, end=found.end() + 1)
                yield Mend(f"Delete “{found[0].strip(', ')}”", (Edit(place, ""),))

    return offer


def without_first_entrance(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Let the opening above no longer be where one comes in."""
    for number in range(finding.span.line - 1, 0, -1):
        line = lines[number - 1]
        found = re.search(r"\s*,\s*entrance\b", line, re.IGNORECASE)
        if found is not None:
            place = Span(finding.span.file, number, found.start() + 1, found.end() + 1)
            yield Mend(f"Leave out “entrance” in line {number}", (Edit(place, ""),))
        if found is not None or _ROOM.match(line):
            return


def other_side(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Say of a run's other end what is said twice of one, where nothing is said of it."""
    span, line = finding.span, lines[finding.span.line - 1]
    side = {"left": "right", "right": "left"}[marked(span, line).lower()]
    if not re.search(rf"\b{side}\s*=", line, re.IGNORECASE):
        yield Mend(f"Write “{side}”", (Edit(span, side),))


def without_there(
    way: Callable[[Span, dict[str, object], str], Iterator[Mend]],
) -> Callable[[Diagnostic, Sequence[str]], Iterator[Mend]]:
    """Return what leaves something out at the corner's other side."""

    def offer(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
        there = dict(finding.facts).get("there")
        if isinstance(there, Span) and there.file == finding.span.file:
            for mend in way(there, {}, lines[there.line - 1]):
                yield replace(mend, words=f"{mend.words} at the corner's other side")

    return offer


without_other_cope = without_there(without_fit("cope"))
without_other_mitre = without_there(without_fit("mitre"))
without_other_block = without_there(without_block)
