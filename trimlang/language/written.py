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

    ``places`` is how many figures it has after its point.  With three of them it is a thousand
    times as large for those who put a point between thousands.  ``off_tape`` is its fraction, as
    written, where no tape has such a mark.
    """

    value: Fraction
    span: Span
    places: int = 0
    off_tape: Word | None = None


@record
class Measure:
    """A length as written, in (amount, unit) parts; the unit None means the file's own unit.

    ``places`` is how many figures its number has after the point, 0 where it has several numbers.
    """

    parts: tuple[tuple[Fraction, str | None], ...]
    span: Span
    places: int = 0


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
