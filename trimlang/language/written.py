"""What a line holds as written: words, numbers, lengths, angles and prices, with places.

Nothing here has a meaning yet: a ``Measure`` keeps the units that were written, if any, and names
are only words.  The survey gives them meaning.
"""

from __future__ import annotations

from fractions import Fraction

from trimlang.diagnostics import Span
from trimlang.record import record


@record
class Word:
    """A name, a quoted text or a keyword."""

    text: str
    span: Span


@record
class Number:
    """A plain number.

    ``three_places`` says that it has three figures after its point: for those who put a point
    between thousands it is a thousand times as large.
    """

    value: Fraction
    span: Span
    three_places: bool = False


@record
class Measure:
    """A length as written, in (amount, unit) parts; the unit None means the file's own unit."""

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
