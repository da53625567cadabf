"""What is said of boxes on a wall: their size, and the wall between them."""

from __future__ import annotations

from trimlang.diagnostics import Span
from trimlang.language.written import Measure
from trimlang.record import record


@record
class BoxesTall:
    """``24 in tall``: how tall each box of a wall is."""

    length: Measure
    span: Span


@record
class BoxesWide:
    """``14 in wide``: how wide each box of a wall is."""

    length: Measure
    span: Span


@record
class BoxesMargin:
    """``margin 3 1/2 in``: the wall before, between and behind the boxes."""

    length: Measure
    span: Span
