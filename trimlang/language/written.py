"""What stands in a line as written: words, numbers, lengths, angles and prices, with their places.

Nothing here has a meaning yet: a ``Measure`` keeps the units that were written
(or none), and names are only words.  Giving them meaning is the survey's work.
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
