"""What the site log says: an entry for each piece or purchase, in the order of the lines.

Lengths are exact inches, money exact.  ``span`` is the part of the line that says it.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TypeAlias

from trimlang.diagnostics import Span
from trimlang.record import record


@record
class From:
    """The stick that a piece was cut from: its name, its length when whole, or both."""

    stick: str | None
    length: Fraction | None
    span: Span


def _says_all(source: From | None, length: Fraction | None) -> bool:
    whole = source is not None and source.stick is not None and source.length is not None
    return whole and length is not None


@record
class CutPiece:
    """A piece was cut; what the line leaves out is as in the plan in force."""

    piece: str
    length: Fraction | None
    source: From | None
    span: Span

    @property
    def pinned(self) -> bool:
        """Whether the line says everything, so that no later change can alter its meaning."""
        return _says_all(self.source, self.length)


@record
class Spoiled:
    """A piece was spoiled, after it was cut or while cutting it; ``rests`` can still be used."""

    piece: str
    rests: tuple[Fraction, ...]
    length: Fraction | None
    source: From | None
    span: Span

    @property
    def pinned(self) -> bool:
        """Whether the line says everything about the piece and the stick it came from."""
        return _says_all(self.source, self.length)


@record
class Shortened:
    """A cut piece was sawn shorter, to ``length``."""

    piece: str
    length: Fraction
    span: Span


@record
class Fitted:
    """A piece was fitted on the wall."""

    piece: str
    span: Span


@record
class BoughtSticks:
    """Sticks came from the yard: ``price`` is what all of them cost together.

    ``priced`` says whether the line gives the price itself.
    """

    trim: str
    count: int
    length: Fraction
    price: Fraction
    priced: bool
    span: Span


@record
class Counted:
    """The rack was counted: ``sticks`` are all of the trim's, as (length, count)."""

    trim: str
    sticks: tuple[tuple[Fraction, int], ...]
    span: Span


Entry: TypeAlias = CutPiece | Spoiled | Shortened | Fitted | BoughtSticks | Counted
