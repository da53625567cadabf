"""The nodes of a parsed job file: plain values, each with its place in the text.

Nothing here has a meaning yet: a ``Measure`` keeps the units that were written
(or none), names are only words.  Giving them meaning is the survey's work.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Final, TypeAlias

from trimlang.diagnostics import Span
from trimlang.record import record


@record
class Word:
    """A name, a quoted text or a keyword."""

    text: str
    span: Span


@record
class Number:
    """A plain number, with the fraction as it was written where there was one.

    ``three_places`` tells that it has three figures after its point: who writes so between
    thousands means a number a thousand times as large.
    """

    value: Fraction
    span: Span
    three_places: bool = False


@record
class Measure:
    """A length as written: (amount, unit) parts; the unit None means the file's own."""

    parts: tuple[tuple[Fraction, str | None], ...]
    span: Span
    three_places: bool = False


@record
class Angle:
    """An angle in degrees."""

    degrees: Fraction
    span: Span


@record
class Price:
    """An amount of money, with the currency sign if one was written."""

    amount: Fraction
    sign: str | None
    span: Span


FactValue: TypeAlias = "Word | Number | Measure | Angle | Price | End | None"


@record
class Fact:
    """One thing stated in a line: its kind (the grammar's rule) and its values."""

    kind: str
    values: tuple[FactValue, ...]
    span: Span


@record
class End:
    """One end of a run: the joint and what was said in its brackets."""

    joint: Word
    facts: tuple[Fact, ...]
    span: Span


@record
class Heading:
    """``job``, ``surveyed``, ``unit``, ``currency``: a line that says one word."""

    kind: str
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
    facts: tuple[Fact, ...]
    span: Span


@record
class Offer:
    """One way to buy sticks: ``pack of 10 12 ft at 158.00``."""

    length: Measure
    price: Price
    pack: Number | None
    at_most: Number | None
    span: Span


@record
class StockLine:
    """``stock base: …``."""

    name: Word
    offers: tuple[Offer, ...]
    span: Span


@record
class Rest:
    """Offcuts in the shop: ``2 of 61 1/2 in``."""

    count: Number | None
    length: Measure
    price: Price | None
    span: Span


@record
class OnHandLine:
    """``on-hand base: …``."""

    name: Word
    rests: tuple[Rest, ...]
    span: Span


@record
class SettingLine:
    """Any line of settings: its topic and the facts in it."""

    topic: str
    facts: tuple[Fact, ...]
    span: Span


@record
class RoomLine:
    """``room "Study" as ST, trim base, shoe``."""

    name: Word
    tag: Word | None
    facts: tuple[Fact, ...]
    span: Span


@record
class RunLine:
    """``N: 29 1/8 in, left=in-corner, right=out-corner``."""

    label: Word
    length: Measure
    facts: tuple[Fact, ...]
    span: Span


@record
class GapLine:
    """``opening 32 in, …`` or ``bare 6 ft, …``: wall with no trim on it."""

    kind: str
    width: Measure
    facts: tuple[Fact, ...]
    span: Span


@record
class FromStick:
    """``from base-1 of 12 ft``: the stick's name, how long it was, or only the one of them."""

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

    kind: str
    pieces: tuple[Sawn, ...]
    span: Span


@record
class Purchase:
    """Part of a ``bought`` line: ``2 base 12 ft at 17.40``; the price is for one, or for a pack."""

    count: Number | None
    pack: Number | None
    trim: Word
    length: Measure
    price: Price | None
    span: Span


@record
class BoughtLine:
    """``bought 2 base 12 ft at 17.40, …``."""

    purchases: tuple[Purchase, ...]
    span: Span


@record
class RackLine:
    """``rack base: …``: all the sticks of a trim that there are, counted."""

    name: Word
    rests: tuple[Rest, ...]
    span: Span


LOG_LINES: Final = (LogLine, BoughtLine, RackLine)
"""What a site log is made of."""


@record
class Unreadable:
    """A line that could not be read: its first two words, so that no more is made of it."""

    words: tuple[str, ...]
    span: Span


Statement: TypeAlias = (
    Heading
    | Include
    | TrimLine
    | StockLine
    | OnHandLine
    | SettingLine
    | RoomLine
    | RunLine
    | GapLine
    | LogLine
    | BoughtLine
    | RackLine
    | Unreadable
)
