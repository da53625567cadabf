"""Mends that change both walls of a corner or a joint: what trim each has, and how it ends."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from typing import Final

from trimlang.diagnostics.diagnostic import Diagnostic, Span
from trimlang.diagnostics.leaving_out import end_of_words
from trimlang.diagnostics.mend import Edit, Mend

_BLOCK: Final = re.compile(r"\s*block\s+(?P<name>[^\s:]+)\s*:", re.IGNORECASE)


def _wall(label: str, near: int, lines: Sequence[str]) -> tuple[int, re.Match[str]] | None:
    """Return the line of a wall (from 1) and its name and length in it, the nearest to a line.

    Another room may have a wall of the same name.
    """
    named = re.compile(rf"\s*{re.escape(label)}\s*:[^,#]*[^,#\s]", re.IGNORECASE)
    for at in sorted(range(len(lines)), key=lambda at: abs(at - near + 1)):
        head = named.match(lines[at])
        if head is not None:
            return at + 1, head
    return None


def one_for_both_walls(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Give the two walls of a corner one or the other of their two trims."""
    facts = dict(finding.facts)
    trims = (str(facts["trim"]), str(facts["other"]))
    for trim, label, instead in ((trims[0], "there", trims[1]), (trims[1], "run", trims[0])):
        found = _wall(str(facts[label]), finding.span.line, lines)
        if found is None:
            continue
        number, head = found
        line = lines[number - 1]
        own = re.search(rf"(?:\btrim|,)\s+(?P<it>{re.escape(instead)})\b(?!\s*[=:])", line)
        start, end = own.span("it") if own is not None else (head.end(), head.end())
        text = trim if own is not None else f", trim {trim}"
        edits = [Edit(Span(finding.span.file, number, start + 1, end + 1), text)]
        # how the other trim ended there alone is said of no trim any more
        for alone in re.finditer(rf",\s*{re.escape(instead)}\s+(?:left|right)\s*=[^,#]*", line):
            behind = end_of_words(line) if alone.end() >= end_of_words(line) else alone.end() + 1
            place = Span(finding.span.file, number, alone.start() + 1, behind)
            edits.insert(0, Edit(place, ""))
        yield Mend(f"Give both walls {trim}", tuple(edits))


def begun_there(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Say at the next wall, on its left, how the two meet."""
    other = str(dict(finding.facts)["other"])
    found = _wall(other, finding.span.line, lines)
    if found is not None:
        number, _ = found
        at = end_of_words(lines[number - 1])
        edit = Edit(Span(finding.span.file, number, at, at), ", left=in-corner")
        yield Mend(f"Begin {other} with in-corner", (edit,))


def without_its_own_trim(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Let the one of two walls that has a trim of its own take what its room has."""
    facts = dict(finding.facts)
    for label in (str(facts["run"]), str(facts["other"])):
        found = _wall(label, finding.span.line, lines)
        own = re.search(r",\s*trim [^,#]*[^,#\s]", lines[found[0] - 1]) if found else None
        if found and own:
            place = Span(finding.span.file, found[0], own.start() + 1, own.end() + 1)
            words = own[0].lstrip(", ")
            yield Mend(f"Leave out “{words}” at {label}", (Edit(place, ""),))


def returned_on_both(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """End both trims of an outside corner in returns, each on its own wall."""
    yield from _ended(finding, lines, "return", "End both in returns")


def ended_alone(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """End each of two crowns by itself: in an inside corner a return would run into the wall."""
    span = finding.span
    said = lines[span.line - 1][span.column - 1 : span.end - 1]
    joint = "return" if said.lower().startswith("out") else "butt"
    yield from _ended(finding, lines, joint, f"End each in a {joint}")


def _ended(finding: Diagnostic, lines: Sequence[str], joint: str, words: str) -> Iterator[Mend]:
    facts = dict(finding.facts)
    edits: list[Edit] = []
    for trim, label, side in (
        (facts["trim"], facts["run"], "right"),
        (facts["other"], facts["there"], "left"),
    ):
        found = _wall(str(label), finding.span.line, lines)
        if found is None:
            return
        line = lines[found[0] - 1]
        own = re.search(rf"\b{re.escape(str(trim))}\s+{side}\s*=\s*[^,#]*[^,#\s]", line)
        start, end = own.span() if own is not None else (end_of_words(line) - 1,) * 2
        said = f"{trim} {side}={joint}"
        place = Span(finding.span.file, found[0], start + 1, end + 1)
        edits.append(Edit(place, said if own is not None else f", {said}"))
    yield Mend(words, tuple(edits))


def block_in_the_corner(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Put a block of the file into the corner, between two trims that do not meet."""
    facts, span = dict(finding.facts), finding.span
    named = next(filter(None, map(_BLOCK.match, lines)), None)
    line = lines[span.line - 1]
    corner = re.compile(r"\b(?:left|right)\s*=\s*(?:in|out)\S*?(?P<at>\(|(?=[,\s]|$))")
    found = [one for one in corner.finditer(line) if one.end() - 1 <= span.end] or None
    if named is None or found is None:
        return
    at = found[-1].end()
    said = f"block {named['name']}" + (f" stops {facts['stops']}" if "stops" in facts else "")
    text = f"{said}, " if found[-1]["at"] == "(" else f"({said})"
    yield Mend(f"Put a {said} there", (Edit(replace(span, column=at + 1, end=at + 1), text),))


def given_there(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Give the next wall the trim that ends at it without a mate."""
    facts = dict(finding.facts)
    trim, found = facts["trim"], _wall(str(facts["there"]), finding.span.line, lines)
    if found is None:
        return
    number, head = found
    line = lines[number - 1]
    left_out = re.search(rf",\s*no\s+{re.escape(str(trim))}\b", line, re.IGNORECASE)
    own = re.search(r"\btrim\s+[^,#]*[^,#\s]", line, re.IGNORECASE)
    if left_out is not None:
        start, end, text = left_out.start(), left_out.end(), ""
    elif own is not None:
        start, end, text = own.end(), own.end(), f", {trim}"
    else:
        start, end, text = head.end(), head.end(), f", trim {trim}"
    place = Span(finding.span.file, number, start + 1, end + 1)
    yield Mend(f"Give {facts['there']} {trim}", (Edit(place, text),))


def plumb_and_butt(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """End what climbs plumb and what is level in a butt, where no trim goes on past a rake."""
    facts = dict(finding.facts)
    edits: list[Edit] = []
    for label, side in ((facts["run"], "right"), (facts["other"], "left")):
        found = _wall(str(label), finding.span.line, lines)
        line = "" if found is None else lines[found[0] - 1]
        said = re.search(rf"\b{side}\s*=\s*(?P<joint>rake)\b", line, re.IGNORECASE)
        if found is None or said is None:
            return
        joint = "plumb" if re.search(r"\brising\b", line, re.IGNORECASE) else "butt"
        start, end = said.span("joint")
        edits.append(Edit(Span(finding.span.file, found[0], start + 1, end + 1), joint))
    yield Mend("End what climbs plumb and the level one in a butt", tuple(edits))


def corner_at_the_opening(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Say the corner at the opening or bare wall that turns it, and stop the run square."""
    facts, here = dict(finding.facts), finding.span
    there = facts["there"]
    if not isinstance(there, Span) or there.file != here.file or there.line == here.line:
        return
    line, wall = lines[here.line - 1], lines[there.line - 1]
    said = line[here.column - 1 : here.end - 1]
    at = end_of_words(wall)
    own = Edit(Span(here.file, there.line, at, at), f", {facts['side']}={said}")
    yield Mend(f"Say “{said}” of {facts['gap']}", (own, Edit(here, "butt")))


def turned_level(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Turn both corners of a wall level, on the walls that climb beside it."""
    edits: list[Edit] = []
    for step, side in ((1, "left"), (-1, "right")):
        number = finding.span.line + step
        line = lines[number - 1] if 0 < number <= len(lines) else ""
        if re.search(r"\bceiling\s+rising\b", line, re.IGNORECASE):
            at = end_of_words(line)
            edits.append(Edit(Span(finding.span.file, number, at, at), f", transition {side}"))
    if edits:
        yield Mend("Turn the corners level on the walls that climb", tuple(edits))


def both_ends(joint: str) -> Callable[[Diagnostic, Sequence[str]], Iterator[Mend]]:
    """Return what writes another joint at both runs that meet in one."""

    def offer(finding: Diagnostic, _lines: Sequence[str]) -> Iterator[Mend]:
        here, there = finding.span, dict(finding.facts).get("there")
        edits = [Edit(here, joint)]
        if isinstance(there, Span) and there.file == here.file:
            edits.append(Edit(there, joint))
            edits.sort(key=lambda one: (one.span.line, one.span.column), reverse=True)
        yield Mend(f"Write “{joint}”", tuple(edits))

    return offer
