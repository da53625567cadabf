"""Mends that leave something out of a line: a part, a word, brackets, a sign, or the whole line."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Final

from trimlang.diagnostics.diagnostic import Span
from trimlang.diagnostics.mend import Edit, Facts, Mend, delete, marked
from trimlang.letters import STEERING

# A line up to its comment: a "#" within quotation marks begins none.
TRIM_LINE: Final = re.compile(r"\s*trim\s+(?P<name>[^\s:]+)\s*:(?P<said>.*)", re.IGNORECASE)
"""The line of a trim: its name, and what is said of it."""

_COMMENT: Final = re.compile(r'(?:[^#"“”]|["“][^"“”]*["”])*')


def end_of_words(line: str) -> int:
    """Return the column behind a line's last word, before its remark."""
    said = _COMMENT.match(line)
    return len((said[0] if said else line).rstrip()) + 1


def without_marks(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Leave out the marks that turn text round."""
    clean = "".join(sign for sign in marked(span, line) if sign not in STEERING)
    yield Mend("Delete the hidden marks", (Edit(span, clean),), True)


def without_minus(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Leave out the minus."""
    at = marked(span, line).find("-")
    if at >= 0:
        start = span.column + at
        # “door-32”: the dash parts the name from its number, as a blank will.
        apart = "" if line[start - 2 : start - 1] in (" ", "\t", "(", ",", ":") else " "
        minus = replace(span, column=start, end=start + 1)
        yield Mend("Leave the minus out", (Edit(minus, apart),), True)


def without_part(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Delete the part between two commas, with the comma before it."""
    # The comma before it goes too, or the line would have two in a row.
    before = line.rfind(",", 0, span.column - 1)
    if before < 0:
        return
    # Commas within brackets belong to the part; a comment or a closing bracket ends it.
    after, depth = before + 1, 0
    while after < len(line) and (depth > 0 or line[after] not in ",#)"):
        depth += (line[after] == "(") - (line[after] == ")")
        after += 1
    end = before + 1 + len(line[before + 1 : after].rstrip())
    yield delete(Span(span.file, span.line, before + 1, end + 1), "Delete this one")


def without_needless(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Delete a part that is so anyway, or is said elsewhere."""
    if facts.get("needless"):
        yield from without_part(span, facts, line)


def without_line(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Delete the whole line, but not a remark behind it."""
    end = end_of_words(line)
    start = len(line) - len(line.lstrip()) + 1
    yield delete(Span(span.file, span.line, start, end), "Delete this line")


def without_setting(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Delete one setting of a line, or the line where it has no other."""
    # A setting may be one of several in its line, or the only one: then the line goes.
    yield from list(without_part(span, facts, line)) or without_line(span, facts, line)


def without_marked(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Delete the marked words with the blank before them."""
    bare = len(line[: span.column - 1].rstrip()) + 1
    yield delete(replace(span, column=bare), f"Leave “{marked(span, line)}” out")


def without_brackets(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Delete the marked words, with their brackets where these hold nothing else."""
    opens, closes = span.column - 2, span.end - 1
    words = marked(span, line)
    if line[opens : opens + 1] == "(" and line[closes : closes + 1] == ")":
        whole = replace(span, column=opens + 1, end=closes + 2)
        yield delete(whole, f"Delete “({words})”", sure=True)
    elif line[opens : opens + 1] == " ":
        yield delete(replace(span, column=opens + 1), f"Delete “{words}”", sure=True)


def without_fit(word: str) -> Callable[[Span, Facts, str], Iterator[Mend]]:
    """Return what leaves out how this side of a corner is fitted (``cope``, ``mitre``)."""
    # "in-corner(cope)", "in-corner, cope", "(cope, 91 deg)", "in-corner cope": with the comma or
    # blank that would be left over. "mitre 44 deg" is an angle.
    alone = rf"{word}\b(?!\s*\d)"
    pattern = re.compile(
        rf"\s*\(\s*{alone}\s*\)|,\s*{alone}|\b{alone}\s*,\s*|\s+{alone}", re.IGNORECASE
    )

    def leave_out(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
        found = pattern.search(marked(span, line))
        if found:
            start = span.column + found.start()
            end = span.column + found.end()
            yield delete(replace(span, column=start, end=end), f"Leave “{word}” out")

    return leave_out


def without_words(words: str) -> Callable[[Span, Facts, str], Iterator[Mend]]:
    """Return what leaves some words (a pattern) out of the line, with the comma before them."""
    pattern = re.compile(rf",\s*(?P<words>{words})(?=\s*(,|#|$))", re.IGNORECASE)

    def leave_out(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
        # The finding marks the wall or the room and not these words, so they are looked for in the
        # whole line.
        found = pattern.search(line)
        if found is not None:
            whole = replace(span, column=found.start() + 1, end=found.end() + 1)
            yield delete(whole, f"Leave out “{found['words']}”")

    return leave_out


def without_bracket(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Leave out what stands in brackets behind a joint."""
    at = marked(span, line).find("(")
    if at > 0:
        yield delete(replace(span, column=span.column + at), "Leave out what is in brackets")


def without_hidden(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Leave out a sign that cannot be seen; it is told by its number."""
    sign = chr(int(str(facts["which"]).removeprefix("U+"), 16))
    clean = marked(span, line).replace(sign, "")
    yield Mend("Delete the hidden sign", (Edit(span, clean),), True)


def words_before(words: str) -> Callable[[Span, Facts, str], Iterator[Mend]]:
    """Return what leaves out the marked length with the words before it."""

    def leave_out(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
        found = re.search(rf"\s*\b{words}\s*$", line[: span.column - 1], re.IGNORECASE)
        if found is not None:
            whole = replace(span, column=found.start() + 1)
            yield delete(whole, f"Leave out “{marked(whole, line).strip()}”", sure=True)

    return leave_out


def without_limits(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Leave out how many sticks the yard has at most, of each length in the line."""
    places = list(re.finditer(r"\s+at\s+most\s+\d+", line, re.IGNORECASE))
    edits = tuple(
        Edit(replace(span, column=found.start() + 1, end=found.end() + 1), "")
        for found in reversed(places)
    )
    if edits:
        yield Mend("Leave “at most” out", edits)


_DEFECT: Final = re.compile(
    r"\s*,\s*(?:knot|split|check|wane|dent|stain|defect)\b[^,#]*", re.IGNORECASE
)


def without_one_offer(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Delete one stick of a list, with its defects; the line where it has no other."""
    before = re.search(r"(?P<sign>[:,])\s*(?:\d+\s+of\s+)?$", line[: span.column - 1])
    end = span.end - 1
    while more := _DEFECT.match(line, end):
        end = more.end()
    rest = re.match(r"\s*[^,#]*", line[end:])
    end += len(rest[0].rstrip()) if rest is not None else 0
    if before is None:
        return
    if before["sign"] == ",":
        yield delete(replace(span, column=before.start() + 1, end=end + 1), "Delete this stick")
    elif behind := re.match(r"\s*,\s*", line[end:]):
        start = before.end() - len(before[0][1:].lstrip()) + 1
        yield delete(replace(span, column=start, end=end + behind.end() + 1), "Delete this stick")
    else:
        yield from without_line(span, facts, line)


def without_bad_stick(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Delete a stick of no length where its line has others."""
    if re.match(r"\s*(?:stock|on-hand)\b[^#]*,", line, re.IGNORECASE):
        yield from without_one_offer(span, facts, line)


def without_block(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Leave the block out of a corner's brackets."""
    said = marked(span, line)
    found = re.search(r",?\s*\bblock\s+[^\s,()]+(?:\s+stops\s+[^,()]*)?", said, re.IGNORECASE)
    if found is not None:
        rest = (said[: found.start()] + said[found.end() :]).replace("(, ", "(").replace("()", "")
        yield Mend("Leave the block out", (Edit(span, rest),))


def without_in_all(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Let a least order be of one trim alone."""
    found = re.search(r"\s+in\s+all\b", marked(span, line), re.IGNORECASE)
    if found is not None:
        start, end = span.column + found.start(), span.column + found.end()
        yield delete(replace(span, column=start, end=end), "Leave “in all” out")
