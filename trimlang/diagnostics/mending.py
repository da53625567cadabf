"""Turns a finding whose remedy needs no judgement into edits of the file.

A mend is made from the finding's own facts and the line that it marks.  Where two remedies are
equally good both are offered; where only the tape or the user can tell, none is.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from fractions import Fraction
from typing import Any, Final

from trimlang.diagnostics.diagnostic import Diagnostic, Span
from trimlang.diagnostics.near_words import nearest
from trimlang.diagnostics.suggestion import Suggestion
from trimlang.lengths.tape import SIXTEENTH, Unit, mixed_number, steps_nearest
from trimlang.letters import STEERING
from trimlang.record import record

Facts = Mapping[str, Any]
# A line up to its comment: a "#" within quotation marks begins none.
_COMMENT: Final = re.compile(r'(?:[^#"“”]|["“][^"“”]*["”])*')
# The whole inches before a fraction: the 29 of "29 1/8".
_WHOLE_BEFORE: Final = re.compile(r"(?<![\w/.])(\d+)[ -]?$")
# The usual ends first, as an editor lists them.
_JOINTS_OFFERED: Final = ("in-corner", "butt", "out-corner", "open")
# A number that still reads both ways, thousands or three decimal places, mends nothing.
_THREE_PLACES: Final = re.compile(r"\.\d{3} ")
_SIDES: Final = ("left", "right")
_UNITS: Final = ("in", "inch", "ft", "feet", "mm", "cm", "m")


@record
class Edit:
    """Writes ``text`` in place of ``span``; an empty span inserts."""

    span: Span
    text: str


@record
class Mend:
    """One way to mend a finding, in words and as edits.

    ``sure`` says that it is the only way and likely what was meant: an editor may prefer it.
    """

    words: str
    edits: tuple[Edit, ...]
    sure: bool = False


def mends(finding: Diagnostic, line: str) -> tuple[Mend, ...]:
    """Return the ways to mend ``finding``; ``line`` is the text of the line that it marks."""
    facts = dict(finding.facts)
    remedy = facts.get("remedy")
    if isinstance(remedy, Suggestion):
        return (_suggested(finding.span, remedy, line),)
    made = _MENDS.get(finding.code)
    return tuple(made(finding.span, facts, line)) if made is not None else ()


def _suggested(span: Span, remedy: Suggestion, line: str) -> Mend:
    if remedy.covers is not None:
        span = replace(span, end=span.column + remedy.covers)
    if remedy.instead.startswith(","):
        # A comma follows a word without a blank, so it goes before the blank that is there.
        bare = line[: span.column - 1].rstrip()
        return Mend(
            "Put a comma", (Edit(replace(span, column=len(bare) + 1), remedy.instead),), True
        )
    return _write(span, remedy.instead, sure=True)


def _write(span: Span, text: str, *, sure: bool = False) -> Mend:
    return Mend(f"Write “{text}”", (Edit(span, text),), sure)


def _delete(span: Span, words: str, *, sure: bool = False) -> Mend:
    return Mend(words, (Edit(span, ""),), sure)


def _marked(span: Span, line: str) -> str:
    return line[span.column - 1 : span.end - 1]


def _nearest_fraction(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    instead = str(facts["instead"])
    if instead:
        yield _write(span, instead)
    above, below = re.split("[/⁄∕]", str(facts["written"]))
    # The tape's mark nearest to the fraction that was written, with the whole inches before it,
    # since rounding up may add one.
    value = steps_nearest(Fraction(int(above), int(below)), SIXTEENTH)
    whole = _WHOLE_BEFORE.search(line[: span.column - 1])
    if whole:
        value += int(whole[1])
        span = replace(span, column=whole.start() + 1)
    yield _write(span, mixed_number(value), sure=not instead)


def _instead(name: str) -> Callable[[Span, Facts, str], Iterator[Mend]]:
    def write(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
        if facts.get(name):
            yield _write(span, str(facts[name]))

    return write


def _which_point(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Offer the number as thousands, and with so few decimals that no thousands can be meant."""
    minus = "-" if _marked(span, line).startswith("-") else ""
    ways = (str(facts["thousands"]), str(facts["point"]))
    yield from (_write(span, minus + way) for way in ways if not _THREE_PLACES.search(way))


def _close_quotes(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    end = len(line.rstrip()) + 1
    closing = "”" if _marked(span, line).startswith("“") else '"'
    yield Mend("Close the quotes", (Edit(Span(span.file, span.line, end, end), closing),), True)


def _without_marks(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    clean = "".join(sign for sign in _marked(span, line) if sign not in STEERING)
    yield Mend("Delete the hidden marks", (Edit(span, clean),), True)


def _known_unit(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    unit = str(facts["unit"])
    match = nearest(unit, _UNITS)
    # The unit stands behind its number, so the last place where it occurs is the right one.
    at = _marked(span, line).lower().rfind(unit)
    if match is not None and at >= 0:
        start = span.column + at
        yield _write(replace(span, column=start, end=start + len(unit)), match, sure=True)


def _no_minus(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    at = _marked(span, line).find("-")
    if at >= 0:
        start = span.column + at
        yield _delete(replace(span, column=start, end=start + 1), "Leave the minus out", sure=True)


def _drop_part(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Delete the part between two commas, with the comma before it."""
    before = line.rfind(",", 0, span.column - 1)
    if before < 0:
        return
    # Commas within brackets belong to the part; a comment or a closing bracket ends it.
    after, depth = before + 1, 0
    while after < len(line) and (depth > 0 or line[after] not in ",#)"):
        depth += (line[after] == "(") - (line[after] == ")")
        after += 1
    end = before + 1 + len(line[before + 1 : after].rstrip())
    yield _delete(Span(span.file, span.line, before + 1, end + 1), "Delete this one")


def _drop_line(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    said = _COMMENT.match(line)
    end = len((said[0] if said else line).rstrip()) + 1
    start = len(line) - len(line.lstrip()) + 1
    yield _delete(Span(span.file, span.line, start, end), "Delete this line")


def _drop_setting(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    # A setting may be one of several in its line, or the only one: then the line goes.
    yield from list(_drop_part(span, facts, line)) or _drop_line(span, facts, line)


def _say_trim(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    yield _write(span, f"trim {facts['trim']}", sure=True)


def _add_end(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    place = Span(span.file, span.line, facts["at"], facts["at"])
    for joint in _JOINTS_OFFERED:
        yield Mend(f"Add {facts['side']}={joint}", (Edit(place, f", {facts['side']}={joint}"),))


def _no_brackets(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Delete the marked words, with their brackets where these hold nothing else."""
    opens, closes = span.column - 2, span.end - 1
    marked = _marked(span, line)
    if line[opens : opens + 1] == "(" and line[closes : closes + 1] == ")":
        whole = replace(span, column=opens + 1, end=closes + 2)
        yield _delete(whole, f"Delete “({marked})”", sure=True)
    elif line[opens : opens + 1] == " ":
        yield _delete(replace(span, column=opens + 1), f"Delete “{marked}”", sure=True)


def _other_corner(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    start = line.lower().rfind("in-corner", 0, span.column - 1)
    if start >= 0:
        yield _write(replace(span, column=start + 1), f"out-corner({facts['wall']}", sure=True)


def _two_units(span: Span, _facts: Facts, _line: str) -> Iterator[Mend]:
    yield from (_write(span, unit) for unit in Unit)


def _agree(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    """Offer to make either side of a joint like the other: only the wall tells which is right."""
    here, there = str(facts["left"]), facts["there"]
    first = replace(span, end=span.column + len(here))
    yield Mend(f"Begin {facts['other']} with {facts['right']}", (Edit(first, str(facts["right"])),))
    if isinstance(there, Span):
        second = replace(there, end=there.column + len(str(facts["right"])))
        yield Mend(f"End {facts['one']} with {here}", (Edit(second, here),))


def _butt(span: Span, _facts: Facts, _line: str) -> Iterator[Mend]:
    yield _write(span, "butt", sure=True)


def _either_side(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    yield from (_write(span, f"{facts['trim']} {side}={facts['joint']}") for side in _SIDES)


def _per_what(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    place = Span(span.file, span.line, facts["at"], facts["at"])
    for unit in ("a foot", "a metre"):
        yield Mend(f"Add {unit}", (Edit(place, f" {unit}"),))


def _no_cope(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    # "in-corner(cope)", "in-corner, cope", "(cope, 91 deg)", "in-corner cope": with the comma or
    # blank that would be left over.
    found = re.search(
        r"\s*\(\s*cope\s*\)|,\s*cope\b|\bcope\s*,\s*|\s+cope\b", _marked(span, line), re.I
    )
    if found:
        start = span.column + found.start()
        end = span.column + found.end()
        yield _delete(replace(span, column=start, end=end), "Leave this side uncoped")


_MENDS: Final[dict[str, Callable[[Span, Facts, str], Iterator[Mend]]]] = {
    "T104": _close_quotes,
    "T112": _nearest_fraction,
    "T113": _instead("instead"),
    "T114": _instead("better"),
    "T115": _without_marks,
    "T201": _known_unit,
    "T203": _instead("instead"),
    "T204": _no_minus,
    "T205": _no_minus,
    "T207": _drop_setting,
    "T209": _drop_part,
    "T216": _say_trim,
    "T225": _add_end,
    "T252": _add_end,
    "T226": _drop_part,
    "T255": _drop_part,
    "T256": _either_side,
    "T257": _butt,
    "T258": _per_what,
    "T227": _no_brackets,
    "T229": _no_brackets,
    "T231": _two_units,
    "T236": _other_corner,
    "T251": _which_point,
    "T301": _agree,
    "T302": _agree,
    "T304": _butt,
    "T305": _no_cope,
    "T607": _drop_line,
}
