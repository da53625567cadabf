"""Mends that need the whole file: a setting above the rooms, a free name, another line."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from typing import Final

from trimlang.diagnostics.closing_mends import as_it_closes, one_joint
from trimlang.diagnostics.diagnostic import Diagnostic, Span
from trimlang.diagnostics.leaving_out import TRIM_LINE, end_of_words
from trimlang.diagnostics.mend import Edit, Mend
from trimlang.diagnostics.on_both_walls import one_for_both_walls
from trimlang.diagnostics.setting_aside import TO_ASK, floor_aside
from trimlang.diagnostics.sizes_to_ask import (
    BLOCK_TALL,
    BLOCK_THICK,
    BLOCK_WIDE,
    CASING_WIDE,
    CROWN_WIDE,
    PRICED_STICK,
    TALL,
    THICK,
    is_metric,
    longer_stick,
    price_of,
    resized,
    with_usual,
)

_SETTING: Final = re.compile(
    r"\b(?P<topic>saw|corners|splices|nails|casings|kerfs): "
    r"(?P<said>[^;:()“”,]*(?:\d|\bends\b)[^;:()“”,]*?)(?=\.?(?:[;,)]|$))"
)
"""A setting in a remedy, as a job file says it: “…, or say how far: saw: reaches 60 deg”."""

_STICKS_IN_FEET: Final = ("8 ft", "12 ft", "16 ft")
_STICKS_IN_METRES: Final = ("2.4 m", "3.6 m", "4.8 m")
"""How long sticks of trim usually are (common practice, no source)."""

_PRICED: Final = re.compile(r"\s*(?:stock|on-hand)\b[^#]*\bat\s+\D?\d", re.IGNORECASE)
_ROOM: Final = re.compile(r"\s*(?:every\s+)?room\b", re.IGNORECASE)
_NUMBER: Final = re.compile(r"[\d./]+|\b(?:in|ft|mm|cm|m|deg)\b|[°'\"″′]", re.IGNORECASE)


def said_setting(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Say each setting that the remedy names, in place of what the file says of it.

    It goes into the topic's line above the rooms; where there is none, a line is written there.
    """
    # Settings stand above the first room; in a file without rooms its top is as good.
    rooms = next((at for at, line in enumerate(lines) if _ROOM.match(line)), 0)
    for found in _SETTING.finditer(finding.remedy):
        topic, said = found["topic"], found["said"].strip()
        place, text = _where(lines, topic, said, rooms, finding.span.file)
        yield Mend(f"Say “{topic}: {said}”", (Edit(place, text),))


def _where(lines: Sequence[str], topic: str, said: str, rooms: int, file: str) -> tuple[Span, str]:
    """Return the place for a setting, and the text to write there."""
    begins = re.compile(rf"\s*{topic}\s*:", re.IGNORECASE)
    own: Span | None = None
    for at, line in enumerate(lines):
        head = begins.match(line)
        if head is None:
            continue
        # What is added goes before a remark, or it would become a part of it.
        end = end_of_words(line)
        start = head.end()
        for part in line[head.end() : end - 1].split(","):
            # The same words but for their figures: this setting is there, and only its size is
            # changed.
            if _words_of(part) == _words_of(said):
                column = start + len(part) - len(part.lstrip()) + 1
                return Span(file, at + 1, column, column + len(part.strip())), said
            start += len(part) + 1
        # Only a line above the rooms holds for the whole job.
        if at < rooms and own is None:
            own = Span(file, at + 1, end, end)
    if own is not None:
        return own, f", {said}"
    return Span(file, rooms + 1, 1, 1), f"{topic}: {said}\n"


def _words_of(part: str) -> list[str]:
    return _NUMBER.sub(" ", part).casefold().split()


def bends(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Let trim bend round a curve: less left behind the kerfs, or trim that is flexible."""
    yield from said_setting(finding, lines)
    trim = dict(finding.facts)["trim"]
    for at, line in enumerate(lines):
        head = TRIM_LINE.match(line)
        if head is not None and head["name"] == trim:
            end = end_of_words(line)
            place = Span(finding.span.file, at + 1, end, end)
            yield Mend(f"Say that {trim} is flexible", (Edit(place, ", flexible"),))


def given_a_room(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Write a room's heading above a wall that stands in none."""
    # Any trim of the file will do: a heading without one would lead to the next finding.
    trim = next((found["name"] for found in map(TRIM_LINE.match, lines) if found is not None), None)
    heading = 'room "Room"' + (f", trim {trim}" if trim else "")
    place = Span(finding.span.file, finding.span.line, 1, 1)
    yield Mend(f"Write “{heading}” above it", (Edit(place, f"{heading}\n"),))


def with_a_room(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Write a room's heading at the end of the file, with its first trim."""
    trim = next((found["name"] for found in map(TRIM_LINE.match, lines) if found is not None), None)
    heading = 'room "Room"' + (f", trim {trim}" if trim else "") + ", ends in"
    last = len(lines)
    # A file that ends with a line end has an empty line behind it, which takes the heading.
    at, before = (1, "") if not lines[-1].strip() else (len(lines[-1]) + 1, "\n")
    place = Span(finding.span.file, last, at, at)
    yield Mend(f"Write “{heading}”", (Edit(place, f"{before}{heading}\n"),))


def ends_of_the_room(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Say in the room's heading what all of its joints are that nobody says."""
    above = range(finding.span.line - 1, 0, -1)
    heading = next((number for number in above if _ROOM.match(lines[number - 1])), None)
    if heading is not None and not re.search(r"\bends\b", lines[heading - 1], re.IGNORECASE):
        at = end_of_words(lines[heading - 1])
        place = Span(finding.span.file, heading, at, at)
        yield Mend("Say “ends in-corner” of the room", (Edit(place, ", ends in-corner"),))


def with_stock(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Write a line of stock below the trim's own, in one of the lengths that most yards have."""
    at = len(lines[finding.span.line - 1]) + 1
    # Where other sticks have prices this one needs one too.
    priced = any(_PRICED.match(line) for line in lines)
    near = next(filter(None, map(PRICED_STICK.search, lines)), None)
    for length in _STICKS_IN_METRES if is_metric(lines) else _STICKS_IN_FEET:
        said = f"stock {dict(finding.facts)['trim']}: {length}" + (
            f" at {price_of(length, near)}" if priced else ""
        )
        asks = f"  # {TO_ASK}: {length} at?" if priced else ""
        place = replace(finding.span, column=at, end=at)
        yield Mend(f"Write “{said}”", (Edit(place, f"\n{said}{asks}"),))


def block_in_a_line_of_its_own(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Take a block out of an end's brackets, and give it the line between two runs of a wall."""
    span = finding.span
    line = lines[span.line - 1]
    # The side said last before this place is the one whose brackets it stands in.
    sides = re.findall(r"\b(left|right)\s*=", line[: span.column - 1], re.IGNORECASE)
    named = re.match(r"block\s+([^\s,()]+)", line[span.column - 1 :], re.IGNORECASE)
    opens, closes = span.column - 2, span.end - 1
    if sides and named and line[opens] == "(" and line[closes : closes + 1] == ")":
        indent = line[: len(line) - len(line.lstrip())]
        # What is at a wall's right end stands below it, since the walk goes on there.
        below = sides[-1].casefold() == "right"
        at = len(line) + 1 if below else 1
        said = f"{indent}transition {named[1]}"
        own = Edit(replace(span, column=at, end=at), f"\n{said}" if below else f"{said}\n")
        out = Edit(replace(span, column=opens + 1, end=closes + 2), "")
        # The later place first, so that the earlier one is still right when it is changed.
        edits = (own, out) if below else (out, own)
        yield Mend(f"Write “transition {named[1]}” between the runs", edits)


def raised_gap(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Scribe the run that loses less by the larger gap too."""
    facts = dict(finding.facts)
    lesser, larger = facts["lesser"], f"floor gap {facts['larger']}"
    # A run of an included file cannot be mended from here.
    if not isinstance(lesser, Span) or lesser.file != finding.span.file:
        return
    line = lines[lesser.line - 1]
    own = re.search(r"\bfloor gap\s+[^,#]*[^,#\s]", line, re.IGNORECASE)
    if own is not None:
        place, text = replace(lesser, column=own.start() + 1, end=own.end() + 1), larger
    else:
        rest = re.match(r"[^,#]*", line[lesser.end - 1 :])
        at = lesser.end + len((rest[0] if rest else "").rstrip())
        place, text = replace(lesser, column=at, end=at), f", {larger}"
    yield Mend(f"Scribe both by {facts['larger']}", (Edit(place, text),))


def with_a_free_name(fact: str) -> Callable[[Diagnostic, Sequence[str]], Iterator[Mend]]:
    """Return what gives the second of two things of one name the next name that is free."""

    def offer(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
        span = finding.span
        text, line = "\n".join(lines).casefold(), lines[span.line - 1]
        name = str(dict(finding.facts)[fact])
        at = line.find(name, span.column - 1)
        # The file may write the name in other letters than the finding; then nothing is offered.
        if at < 0 or at >= span.end:
            return
        # “Bath” and “Bath 2” in quotes; a name becomes part of ids, where no blank stands
        quoted = line[:at].endswith(('"', "“"))
        plain, sign = name.rstrip("0123456789") if not quoted else name, " " if quoted else ""
        # A short name grows to N2; a longer one is easier to read as hall-2.
        if not quoted and len(plain) > 2:
            sign = "-"
        number = 2
        while re.search(
            rf"(?<![\w-]){re.escape(f'{plain}{sign}{number}'.casefold())}(?![\w-])", text
        ):
            number += 1
        place = replace(span, column=at + 1, end=at + 1 + len(name))
        free = f"{plain}{sign}{number}"
        yield Mend(f"Call it “{free}”", (Edit(place, free),))

    return offer


# Apart from the others: what works on a line alone can also be offered where only that line is
# known.
IN_OTHER_LINES: Final[dict[str, Callable[[Diagnostic, Sequence[str]], Iterator[Mend]]]] = {
    "T206": with_a_room,
    "T211": with_usual("trim", THICK),
    "T212": with_stock,
    "T213": with_a_free_name("trim"),
    "T220": given_a_room,
    "T221": with_a_free_name("room"),
    "T222": with_a_free_name("tag"),
    "T223": with_a_free_name("run"),
    "T239": with_usual("trim", CROWN_WIDE),
    "T241": with_usual("trim", CASING_WIDE),
    "T246": with_usual("trim", TALL),
    "T252": ends_of_the_room,
    "T282": with_a_free_name("piece"),
    "T291": with_a_free_name("name"),
    "T292": with_a_free_name("name"),
    "T293": with_usual("block", BLOCK_WIDE, BLOCK_TALL),
    "T301": one_joint,
    "T302": one_joint,
    "T310": as_it_closes,
    "T311": as_it_closes,
    "T316": as_it_closes,
    "T318": with_a_free_name("one"),
    "T319": with_a_free_name("other"),
    "T327": with_a_free_name("one"),
    "T328": with_a_free_name("one"),
    "T320": as_it_closes,
    "T324": as_it_closes,
    "T402": as_it_closes,
    "T403": said_setting,
    "T404": said_setting,
    "T405": said_setting,
    "T406": said_setting,
    "T407": raised_gap,
    "T408": said_setting,
    "T409": floor_aside,
    "T410": longer_stick,
    "T411": one_for_both_walls,
    "T414": said_setting,
    "T430": resized("block", "its", "wide", "tall"),
    "T433": said_setting,
    "T434": resized("block", "its", "{word}"),
    "T437": said_setting,
    "T446": resized("trim", "needs", "tall", "wide"),
    "T450": bends,
    "T473": said_setting,
    "T474": block_in_a_line_of_its_own,
    "T442": said_setting,
    "T475": with_usual("block", BLOCK_THICK),
    "T478": resized("block", "its", "{word}"),
    "T482": said_setting,
}
