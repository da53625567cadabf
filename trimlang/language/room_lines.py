"""The lines of a room that state no stretch of its walk: loose pieces, and boxes on a wall."""

from __future__ import annotations

from trimlang.diagnostics import Span
from trimlang.language.box_facts import BoxWall
from trimlang.language.facts import WallFact
from trimlang.language.written import Measure, Number, Word
from trimlang.record import record


@record
class LoosePieceLine:
    """``piece "closet cleat", 4 of 22 1/2 in, trim pine, square``: it stands on no wall."""

    name: Word
    count: Number | None
    length: Measure
    facts: tuple[WallFact, ...]
    span: Span


@record
class BoxesLine:
    """``boxes N "upper": 3, 24 in tall, margin 3 1/2 in``: frames on a wall, all alike."""

    wall: BoxWall
    name: Word | None
    count: Number
    facts: tuple[WallFact, ...]
    span: Span
