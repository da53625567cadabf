"""Blocks that a casing stands on or meets at, and heads of several parts."""

from __future__ import annotations

from trimlang.diagnostics import Span
from trimlang.language.written import Measure, Price, Word
from trimlang.record import record


@record
class BlockWide:
    """``3 in wide``: a block's size along the wall."""

    length: Measure
    span: Span


@record
class BlockTall:
    """``7 in tall``: a block's height."""

    length: Measure
    span: Span


@record
class BlockPrice:
    """``at 6.50``: what one block costs."""

    price: Price
    span: Span


@record
class Plinthed:
    """``plinths plinth``: the blocks on the floor that a casing's legs stand on."""

    block: Word
    span: Span


@record
class CornerBlocked:
    """``corner blocks rosette``: blocks in the place of a casing's mitres."""

    block: Word
    span: Span


@record
class Backbanded:
    """``backband band``: a trim round the casing's outer edge."""

    trim: Word
    span: Span


@record
class WrittenMember:
    """A part of a head: ``fillet overhang 3/8 in returned``."""

    trim: Word
    overhang: Measure | None
    returned: bool
    span: Span
