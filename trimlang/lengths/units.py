"""Units of length and volume, exact.

A length inside the compiler is a ``fractions.Fraction`` of an inch.  The
factors come from pint, with Fraction magnitudes, out of the definitions below;
the everyday ones are kept as a table, because loading pint costs more than all
the rest of ``trimlang check`` (``tests/published/test_units.py`` holds the table
against pint, and pint against the published definitions).  A unit that the
table lacks is asked of pint.

Source of the definitions: NIST Special Publication 811 and NIST Handbook 44,
appendix C (1 in = 25.4 mm exactly; 1 US gallon = 231 cubic inches).
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from typing import TYPE_CHECKING, Any, Final

if TYPE_CHECKING:
    from pint import UnitRegistry

DEFINITIONS: Final = (
    "inch = [length] = in",
    "foot = 12 * inch = ft = feet",
    "yard = 3 * foot = yd",
    "millimetre = 5 / 127 * inch = mm = millimeter",
    "centimetre = 10 * millimetre = cm = centimeter",
    "decimetre = 100 * millimetre = dm = decimeter",
    "metre = 1000 * millimetre = m = meter",
    "us_gallon = 231 * inch ** 3 = gallon",
    "quart = us_gallon / 4",
    "us_fluid_ounce = us_gallon / 128 = fl_oz",
    "litre = 1000000 * millimetre ** 3 = liter",
)

INCHES_PER: Final[dict[str, Fraction]] = {
    "in": Fraction(1),
    "ft": Fraction(12),
    "mm": Fraction(5, 127),
    "cm": Fraction(50, 127),
    "m": Fraction(5000, 127),
}

CUBIC_INCHES_PER: Final[dict[str, Fraction]] = {
    "gallon": Fraction(231),
    "quart": Fraction(231, 4),
    "fl_oz": Fraction(231, 128),
    "litre": Fraction(10**6) * Fraction(5, 127) ** 3,
}


class UnknownUnitError(ValueError):
    """The word names no unit of length."""


@cache
def registry() -> UnitRegistry[Any]:
    """Return pint's registry of the units that a trim job uses, exact throughout."""
    from pint import UnitRegistry

    units: UnitRegistry[Any] = UnitRegistry(None, non_int_type=Fraction)
    for definition in DEFINITIONS:
        units.define(definition)
    return units


@cache
def factor_from_pint(unit: str, base: str) -> Fraction:
    """Return how many ``base`` one ``unit`` is, as pint works it out.

    Raises:
        UnknownUnitError: pint knows no such unit, or none of that dimension.
    """
    import pint

    units = registry()
    try:
        quantity = (Fraction(1) * units.parse_units(unit)).to(base)
    except (pint.errors.PintError, AttributeError, ValueError) as error:
        raise UnknownUnitError(unit) from error
    return Fraction(quantity.magnitude)


def in_inches(amount: Fraction, unit: str) -> Fraction:
    """Return ``amount`` of ``unit`` (``in``, ``ft``, ``mm``, …) in inches, exactly.

    Raises:
        UnknownUnitError: ``unit`` names no unit of length.
    """
    factor = INCHES_PER.get(unit)
    if factor is None:
        factor = factor_from_pint(unit, "inch")
    return amount * factor


def in_cubic_inches(amount: Fraction, unit: str) -> Fraction:
    """Return ``amount`` of a ``gallon``, ``quart``, ``fl_oz`` or ``litre`` in cubic inches."""
    return amount * CUBIC_INCHES_PER[unit]
