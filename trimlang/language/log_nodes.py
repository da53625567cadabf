"""The nodes of the site log's lines, but for the rack's: what was done, to which pieces."""

from __future__ import annotations

from enum import StrEnum

from trimlang.diagnostics import Span
from trimlang.language.written import Measure, Number, Price, Word
from trimlang.record import record


class Deed(StrEnum):
    """What was done to pieces, by the site log."""

    CUT = "cut"
    SPOILED = "spoiled"
    SHORTENED = "shortened"
    FITTED = "fitted"


@record
class FromStick:
    """``from base-1 of 12 ft``: the stick's name, how long it was, or only one of the two."""

    stick: Word | None
    length: Measure | None
    span: Span


@record
class Sawn:
    """A piece in the site log: its length as sawn or shortened, the usable rests, the stick."""

    piece: Word
    length: Measure | None
    rests: tuple[Measure, ...]
    source: FromStick | None
    span: Span


@record
class LogLine:
    """``cut``, ``spoiled``, ``shortened``, ``fitted``: what was done to pieces."""

    kind: Deed
    pieces: tuple[Sawn, ...]
    span: Span


@record
class WrittenPurchase:
    """Part of a ``bought`` line: ``2 base 12 ft at 17.40``; the price is for a stick or a pack."""

    count: Number | None
    pack: Number | None
    trim: Word
    length: Measure
    price: Price | None
    span: Span


@record
class BoughtLine:
    """``bought 2 base 12 ft at 17.40, …``."""

    purchases: tuple[WrittenPurchase, ...]
    span: Span
