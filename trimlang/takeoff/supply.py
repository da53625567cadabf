"""A line of the order that is not trim, and what is reckoned alike for several of them."""

from __future__ import annotations

from enum import StrEnum
from fractions import Fraction
from math import ceil
from typing import Final, TypeAlias

from trimlang.lengths.tape import Unit, decimal_text
from trimlang.lengths.units import VolumeUnit, far_unit, in_cubic_inches, in_inches
from trimlang.record import record
from trimlang.settings.setting_kinds import Packed
from trimlang.settings.table import Settings

Quantities: TypeAlias = tuple[tuple[str, Fraction], ...]

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
    facts: Quantities = ()
    called: str = ""

    @property
    def named(self) -> str:
        """What data files call it: its own name, or what it is."""
        # Only a block has a name of its own in the file; all else is called by what it is.
        return self.called or self.what

    @property
    def cost(self) -> Fraction:
        """What the line costs; 0 where the file gives no price."""
        return self.count * self.price


def by_fluid_ounce(
    what: Consumable,
    volume: Fraction,
    pack: Packed,
    *,
    detail: str,
    package: str,
    facts: Quantities,
) -> Supply:
    """Return the line for what fills or glues, of which ``volume`` stays in the wood (in³)."""
    need = volume * FILLER_LOST / in_cubic_inches(Fraction(1), VolumeUnit.FLUID_OUNCE)
    return Supply(
        what=what,
        detail=detail,
        need=need,
        need_unit="fl oz",
        count=ceil(need / pack.holds),
        package=f"{decimal_text(pack.holds, 1)} fl oz {package}",
        price=pack.price,
        size=pack.holds,
        size_unit="fl oz",
        facts=facts,
    )


def by_the_can(
    what: Consumable,
    area: Fraction,
    can: Packed,
    settings: Settings,
    *,
    coats: Fraction,
    said: str,
    of: str,
    facts: Quantities = (),
) -> Supply:
    """Return the line for what is brushed on an ``area`` (in²) in so many coats.

    ``said`` is the coats in words, ``of`` what the area is of.
    """
    # The spread is kept as area over volume, so the quotient is what stays on the wood.
    assert can.unit is not None  # noqa: S101  a can is sold by volume
    volume = area * coats / settings.paint_spread
    metric = settings.unit is Unit.MM
    measure = VolumeUnit.LITRE if metric else VolumeUnit.GALLON
    # Painted area is spoken of in square feet or metres, never in square inches.
    square = in_inches(Fraction(1), far_unit(settings.unit)) ** 2
    squares = f"{decimal_text(area / square, 1)} {'m²' if metric else 'sq ft'}"
    return Supply(
        what=what,
        detail=f"{said} on {squares} of {of}",
        need=volume / in_cubic_inches(Fraction(1), measure),
        need_unit=f"{measure}s",
        # Cans are sold whole, so the last one counts in full.
        count=ceil(volume / in_cubic_inches(can.holds, can.unit)),
        package=f"{decimal_text(can.holds, 2)} {can.unit} can",
        price=can.price,
        size=can.holds,
        size_unit=can.unit,
        facts=(*facts, ("area", area), ("volume", volume)),
    )
