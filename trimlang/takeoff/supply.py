"""A line of the order that is not trim, and what is counted alike of several of them."""

from __future__ import annotations

from enum import StrEnum
from fractions import Fraction
from typing import Final

from trimlang.record import record

HOLE: Final = Fraction(1, 8) ** 3
"""What the hole over a set nail takes of filler or putty, in³."""
FILLER_LOST: Final = Fraction(2)
"""How many times as much filler, putty or glue is used as stays in the wood."""


class Consumable(StrEnum):
    """What is bought besides trim; a sheet has its own words for each."""

    NAILS = "nails"
    CAULK = "caulk"
    FILLER = "filler"
    PAINT = "paint"
    BLOCK = "block"
    PUTTY = "putty"
    GLUE = "glue"
    PRIMER = "primer"
    BLADE = "saw blade"


@record
class Supply:
    """A line of the order that is not trim.

    ``need`` is the exact quantity in ``need_unit``; ``count`` packages of ``package`` cover it, at
    ``price`` each.  ``size`` and ``size_unit`` are what one package holds.  ``facts`` are the
    quantities in ``detail``, in inches or plain numbers, for a sheet that words them itself.
    ``called`` is the name that the file gives a block.
    """

    what: Consumable
    detail: str
    need: Fraction
    need_unit: str
    count: int
    package: str
    price: Fraction
    size: Fraction = Fraction(1)
    size_unit: str = ""
    facts: tuple[tuple[str, Fraction], ...] = ()
    called: str = ""

    @property
    def named(self) -> str:
        """What data files call it: its own name, or what it is."""
        return self.called or self.what

    @property
    def cost(self) -> Fraction:
        """What the line costs; 0 where the file gives no price."""
        return self.count * self.price
