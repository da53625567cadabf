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


LEAST: Final = 8.25
"""Points of the smallest type: its capitals, 0.75 em high, are then 2.18 mm, which at 1.5 m is
five minutes of arc, the height of the letters that sight 20/20 reads (ISO 8596: an optotype
with a gap of one minute is five minutes tall).  All small print is set in it."""
SMALL_LINE: Final = LEAST * 1.2 * POINT
"""A line of small print (mm)."""


@record
class Design:
    """How one kind of ticket sets out what all have.

    That is: id, room, length, code, the drawing with a cut at each of its ends, small print.
    ``padding`` is aside and above (mm at full scale); ``at_saw`` and ``for_text`` are the shares of
    the width for the drawing with the cuts, and for the rest.
    """

    type: TypeSizes
    padding: tuple[float, float]
    at_saw: float
    for_text: float


DESIGNS: Final = {
    # one under the other
    Format.CARD: Design(
        type=TypeSizes(
            name=(13, LEAST), room=(10, 8.5), length=(34, 22), setting=(15, 9), joint=10
        ),
        padding=(2.6, 1.6),
        at_saw=1.0,
        for_text=1.0,
    ),
    # texts at the left, what is done at the saw at the right
    Format.WIDE: Design(
        type=TypeSizes(
            name=(13, LEAST), room=(10, 8.5), length=(40, 22), setting=(20, 9), joint=12
        ),
        padding=(2.6, 1.6),
        at_saw=0.5,
        for_text=0.475,
    ),
    # all in one line; the columns are in ems, see below
    Format.STRIP: Design(
        type=TypeSizes(
            name=(10, LEAST), room=(10, 8.5), length=(24, 14), setting=(13, 9), joint=8.5
        ),
        padding=(1.6, 0.6),
        at_saw=1.0,
        for_text=1.0,
    ),
}
CODE_WIDE: Final = 13.1
"""A code's side (mm at full scale): its dots are 0.3 mm, which a phone reads a hand away."""
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

    @property
    def design(self) -> Design:
        """What all tickets of this kind have in common."""
        return DESIGNS[self.kind]

    def points(self, size: float) -> float:
        """Return a size in points at full scale as millimetres on this ticket."""
        # Never below the smallest type that can be read at arm's length.
        return max(size * self.scale, LEAST) * POINT

    def ems(self, count: float) -> float:
        """Return so many ems of this ticket's type as millimetres."""
        return count * EM * self.scale * POINT

    def within(self) -> float:
        """Return the width inside border and padding (mm)."""
        return self.across - 2 * (self.design.padding[0] * self.scale + BORDER)

    def about(self) -> float:
        """Return how much of the height border and padding take (mm)."""
        return 2 * (self.design.padding[1] * self.scale + BORDER)

    def at_saw(self) -> float:
        """Return the width of the drawing and of both cuts together (mm)."""
        return self.within() * self.design.at_saw

    def facts(self) -> float:
        """Return the width of the small print (mm)."""
        if self.kind is not Format.STRIP:
            return self.within() * self.design.for_text
        # The tab and the code stand in the strip's one line, so the small print gives way.
        taken = FACTS_FROM + (TAB_WIDE if self.flag else 0) + (4.6 if self.code else 0)
        return self.within() - self.ems(taken)

    def name(self) -> float:
        """Return the width for id, room and length (mm)."""
        if self.kind is Format.STRIP:
            return self.ems(NAME_WIDE)
        # On a card the code stands beside the name, with a little room between.
        taken = (CODE_WIDE + 2) * self.scale if self.code else 0
        return self.within() * self.design.for_text - taken

    def cut(self) -> float:
        """Return the width of the text below an end (mm)."""
        if self.kind is Format.STRIP:
            return self.ems(CUT_WIDE)
        return self.at_saw() / 2 - self.ems(0.45)
