"""The room on a ticket: its type sizes and the widths of its columns.

Lengths are millimetres on paper; type is in points at full scale, 9 pt to the em.
The widths must agree with ``templates/sheets.css``: text is measured here and set there.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Final

from trimlang.record import record

POINT: Final = 25.4 / 72
EM: Final = 9.0
BORDER: Final = 0.2


class Format(StrEnum):
    """How a ticket is laid out: a card (two in a row), a wide ticket, or a low strip."""

    CARD = "card"
    WIDE = "wide"
    STRIP = "strip"


@record
class TypeSizes:
    """Sizes in points at full scale; of a pair, text may shrink from the first to the second."""

    name: tuple[float, float]
    room: tuple[float, float]
    length: tuple[float, float]
    setting: tuple[float, float]
    joint: float
    small: float


LEAST: Final = 8.25
"""Points of the smallest type: its capitals, 0.75 em high, are then 2.18 mm, which at 1.5 m is
five minutes of arc, the height of the letters that sight 20/20 reads (ISO 8596: an optotype
with a gap of one minute is five minutes tall)."""

LARGE: Final = TypeSizes(
    name=(13, LEAST), room=(10, 8.5), length=(34, 22), setting=(15, 10.5), joint=10, small=LEAST
)
LOW: Final = TypeSizes(
    name=(10, LEAST), room=(10, 8.5), length=(24, 14), setting=(13, 9), joint=8.5, small=LEAST
)
BESIDE: Final = TypeSizes(
    name=(13, 9), room=(10, 9), length=(34, 22), setting=(15, 10.5), joint=10, small=9
)
"""A wide ticket is set at 0.92 of full scale: its least type is larger by as much."""
PADDING: Final = {Format.CARD: (2.6, 1.6), Format.WIDE: (2.6, 1.6), Format.STRIP: (1.6, 0.6)}
CODE_WIDE: Final = {Format.CARD: 19.1, Format.WIDE: 19.1, Format.STRIP: 13.1}
FRACTION: Final = 0.79
UNIT: Final = 0.45
"""The fraction's and the unit's size beside the length's."""

# the columns of a strip, in ems, as the stylesheet has them
NAME_WIDE: Final = 13.2
CUT_WIDE: Final = 7.9
FACTS_FROM: Final = 38.3
TAB_WIDE: Final = 2.6


@record
class TicketRoom:
    """The room (mm) on a ticket of one kind.

    ``across`` and ``down`` are its sides; ``limit`` is how tall it may get above the fold.
    ``scale`` is that of the type, ``code`` whether a QR code takes room, ``flag`` whether the
    ticket is taller than its trim.
    """

    kind: Format
    across: float
    down: float
    limit: float
    scale: float
    code: bool
    flag: bool = False

    def type(self) -> TypeSizes:
        """Return the type sizes."""
        return {Format.STRIP: LOW, Format.WIDE: BESIDE}.get(self.kind, LARGE)

    def points(self, size: float) -> float:
        """Return a size in points at full scale as millimetres on this ticket."""
        return size * self.scale * POINT

    def within(self) -> float:
        """Return the width inside border and padding (mm)."""
        return self.across - 2 * (PADDING[self.kind][0] * self.scale + BORDER)

    def about(self) -> float:
        """Return how much of the height border and padding take (mm)."""
        return 2 * (PADDING[self.kind][1] * self.scale + BORDER)

    def main(self) -> float:
        """Return the width of the part that is read at the saw (mm)."""
        return self.within() * (0.52 if self.kind is Format.WIDE else 1.0)

    def facts(self) -> float:
        """Return the width of the small print (mm)."""
        if self.kind is Format.WIDE:
            return self.within() * 0.46
        if self.kind is Format.CARD:
            return self.within()
        taken = FACTS_FROM + (TAB_WIDE if self.flag else 0) + (4.6 if self.code else 0)
        return self.within() - self.points(EM) * taken

    def name(self) -> float:
        """Return the width for id, room and length (mm)."""
        if self.kind is Format.STRIP:
            return self.points(EM) * NAME_WIDE
        taken = (CODE_WIDE[self.kind] + 2) * self.scale if self.code else 0
        return self.main() - taken

    def cut(self) -> float:
        """Return the width of the text below an end (mm)."""
        if self.kind is Format.STRIP:
            return self.points(EM) * CUT_WIDE
        return self.main() / 2 - self.points(EM) * 0.45
