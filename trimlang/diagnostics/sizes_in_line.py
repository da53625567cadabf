"""Mends that write a size which the finding's own line lacks, or another than it says."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from trimlang.diagnostics.adding import add
from trimlang.diagnostics.diagnostic import Span
from trimlang.diagnostics.mend import Edit, Facts, Mend, marked, write

_FIRST_LENGTH: Final = re.compile(r"\s*[^\s:#\"“]+\s*:\s*(?P<long>\d[^,#]*[^,#\s]|\d)")
_RADIUS: Final = re.compile(r"\s+radius\b", re.IGNORECASE)
_CURVES: Final = re.compile(r"\bcurves\s+(?P<way>in|out)\s+(?P<by>[^,#]*[^,#\s])", re.IGNORECASE)


def as_a_radius(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Say that a curved wall's number is its radius, or no longer say so beside a chord's rise."""
    found, curves = _FIRST_LENGTH.match(line), _CURVES.search(line)
    if found is None or curves is None:
        return
    radius = _RADIUS.search(found["long"])
    if radius is not None:
        start = found.start("long") + radius.start() + 1
        place = replace(span, column=start, end=start + len(radius[0]))
        yield Mend("Take its number as the chord", (Edit(place, ""),))
    else:
        unit = f" {facts['unit']}" if found["long"][-1].isdigit() else ""
        place = replace(span, column=found.end("long") + 1, end=found.end("long") + 1)
        yield Mend("Take its number as the radius", (Edit(place, f"{unit} radius"),))


def as_a_chord(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Say a curved wall's radius in the place of its angle, as its chord and the angle imply it."""
    curves = _CURVES.search(line)
    if facts["across"] and curves is not None:
        place = replace(span, column=curves.start("by") + 1, end=curves.end("by") + 1)
        said = f"radius {facts['across']}"
        yield Mend(f"Take its number as the chord: {said}", (Edit(place, said),))


def a_quarter(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Say that a wall with a radius and no angle is a quarter round, as most are."""
    if _CURVES.search(line) is None:
        for way in ("in", "out"):
            yield from add(f"curves {way} 90 deg")(span, {}, line)


def as_its_width(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    """Take the only length that an opening says for how wide it is."""
    yield Mend("Take its length for its width", (Edit(span, str(facts["kind"])),))


def box_sizes(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Give boxes a height, and one of a margin and a width, whichever lack or are too many."""
    lacks = [] if re.search(r"\btall\b", line) else ["24 in tall"]
    margin = re.search(r",\s*margin\s+[^,#]*[^,#\s]", line)
    wide = re.search(r",\s*\d[^,#]*\bwide\b", line)
    if margin is None and wide is None:
        lacks.append("margin 3 1/2 in")
    if lacks:
        yield from add(", ".join(lacks))(span, {}, line)
    elif margin is not None and wide is not None:
        for found in (margin, wide):
            place = replace(span, column=found.start() + 1, end=found.end() + 1)
            yield Mend(f"Leave out “{found[0].strip(', ')}”", (Edit(place, ""),))


def boxed_deeper(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Box a beam as deep as the crown that meets it hangs down."""
    found = re.search(r"(?P<long>\d[^,#]*[^,#\s])\s+deep\b", marked(span, line), re.IGNORECASE)
    if found is not None:
        start = span.column + found.start("long")
        place = replace(span, column=start, end=start + len(found["long"]))
        yield write(place, str(facts["deeper"]))
