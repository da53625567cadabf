"""The nodes of a parsed job file: plain values, each with its place in the text.

Words, numbers and lengths as written are in ``written``; what a line says besides its name and
length is in ``facts``.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Final, TypeAlias

from trimlang.diagnostics import Span
from trimlang.language.facts import (
    AssemblyMember,
    BlockFact,
    Stated,
    StockFact,
    TrimFact,
    WallFact,
    WrittenMember,
)

# Imported under their own names: a pass finds all nodes here, whichever module holds them.
from trimlang.language.facts import WrittenEnd as WrittenEnd
from trimlang.language.log_nodes import BoughtLine as BoughtLine
from trimlang.language.log_nodes import Deed as Deed
from trimlang.language.log_nodes import FromStick as FromStick
from trimlang.language.log_nodes import LogLine as LogLine
from trimlang.language.log_nodes import Sawn as Sawn
from trimlang.language.log_nodes import WrittenPurchase as WrittenPurchase
from trimlang.language.room_lines import BoxesLine as BoxesLine
from trimlang.language.room_lines import LoosePieceLine as LoosePieceLine
from trimlang.language.stick_facts import WrittenBatch, WrittenDefect
from trimlang.language.written import Angle as Angle
from trimlang.language.written import Measure as Measure
from trimlang.language.written import Number as Number
from trimlang.language.written import Price as Price
from trimlang.language.written import Word as Word
from trimlang.lengths.units import LengthUnit
from trimlang.record import record


class Topic(StrEnum):
    """What a heading line says about the job."""

    JOB = "job"
    SURVEYED = "surveyed"
    CURRENCY = "currency"


class GapKind(StrEnum):
    """Wall without trim, or the place of a wall that could not be read."""

    OPENING = "opening"
    BARE = "bare"
    LOST = "lost"


@record
class Heading:
    """``job``, ``surveyed``, ``currency``: a line that says one word."""

    topic: Topic
    word: Word
    span: Span


@record
class Include:
    """``include "other.trim"``."""

    path: Word
    span: Span


@record
class TrimLine:
    """``trim base: …``."""

    name: Word
    facts: tuple[TrimFact, ...]
    span: Span


@record
class AssemblyLine:
    """``assembly cornice: frieze, crown in front of frieze``: one name for several trims."""

    name: Word
    members: tuple[AssemblyMember, ...]
    span: Span

    @property
    def trims(self) -> tuple[Word, ...]:
        """The names of its trims."""
        return tuple(one.trim for one in self.members)


@record
class BlockLine:
    """``block plinth: 3 in wide, 7 in tall, at 6.50``: what is bought by the piece."""

    name: Word
    facts: tuple[BlockFact, ...]
    span: Span


@record
class HeadLine:
    """``head crosshead: fillet, frieze, cap``: a casing's head of several parts, from below."""

    name: Word
    members: tuple[WrittenMember, ...]
    span: Span


@record
class Per:
    """``a foot`` or ``a metre`` behind a price: the unit that it buys."""

    unit: LengthUnit
    span: Span


@record
class WrittenOffer:
    """One way to buy sticks: ``pack of 10 12 ft at 158.00``, ``any length to 16 ft``.

    ``any_length`` tells that the yard cuts all lengths up to this one, from the ``shortest``,
    ``step`` how finely.
    """

    length: Measure
    price: Price | None
    pack: Number | None
    at_most: Number | None
    span: Span
    per: Per | None = None
    batch: WrittenBatch | None = None
    any_length: bool = False
    step: Measure | None = None
    shortest: Measure | None = None


@record
class StockLine:
    """``stock base: …``."""

    name: Word
    offers: tuple[WrittenOffer, ...]
    span: Span
    facts: tuple[StockFact, ...] = ()


@record
class WrittenRest:
    """Offcuts in the shop: ``2 of 61 1/2 in``, and the defects of one offcut."""

    count: Number | None
    length: Measure
    price: Price | None
    span: Span
    defects: tuple[WrittenDefect, ...] = ()
    batch: WrittenBatch | None = None


@record
class OnHandLine:
    """``on-hand base: …``."""

    name: Word
    rests: tuple[WrittenRest, ...]
    span: Span


@record
class SettingLine:
    """Any line of settings: ``saw: kerf 3/32 in, reads to 1/2 deg``."""

    facts: tuple[Stated, ...]
    span: Span


@record
class EveryRoomLine:
    """``every room: trim base, shoe``: for each room that does not say its own."""

    facts: tuple[WallFact, ...]
    span: Span


@record
class RoomLine:
    """``room "Study" as ST, trim base, shoe``."""

    name: Word
    tag: Word | None
    facts: tuple[WallFact, ...]
    span: Span


@record
class RunLine:
    """``N: 29 1/8 in, left=in-corner, right=out-corner``."""

    label: Word
    length: Measure
    facts: tuple[WallFact, ...]
    span: Span


@record
class GapLine:
    """``opening 32 in, …`` or ``bare 6 ft, …``: wall with no trim on it.

    Of ``transition foot`` the width is the block, which is as wide as its own line says.
    """

    kind: GapKind
    width: Measure | Word
    facts: tuple[WallFact, ...]
    span: Span


@record
class DiagonalLine:
    """``diagonal N-E 14 ft 2 1/2 in``: across a room, from N's left end to E's right end."""

    walls: Word
    length: Measure
    span: Span


@record
class WallsLine:
    """``N 10 ft 2 1/4, E 8 ft 7 9/16, door 32 in "to hall"``: several walls in one line.

    ``lost`` says that a part of the line, which may be a wall, could not be read.
    """

    stretches: tuple[RunLine | GapLine, ...]
    span: Span
    lost: bool = False


@record
class RackLine:
    """``rack base: …``: all the sticks of a trim that there are, counted."""

    name: Word
    rests: tuple[WrittenRest, ...]
    span: Span


LOG_LINES: Final = (LogLine, BoughtLine, RackLine)
"""The statements that a site log may hold."""


@record
class Unreadable:
    """A line that could not be read, with its first two words to guess what it was about."""

    words: tuple[str, ...]
    span: Span


Statement: TypeAlias = (
    Heading
    | Include
    | TrimLine
    | AssemblyLine
    | BlockLine
    | HeadLine
    | StockLine
    | OnHandLine
    | SettingLine
    | EveryRoomLine
    | RoomLine
    | RunLine
    | GapLine
    | DiagonalLine
    | WallsLine
    | LoosePieceLine
    | BoxesLine
    | LogLine
    | BoughtLine
    | RackLine
    | Unreadable
)
