"""Units of length and volume, exact.

Inside the compiler a length is a ``fractions.Fraction`` in inches.  pint works out the factors,
with Fraction magnitudes, from the definitions below.  Loading pint takes longer than all the
rest of ``trimlang check``, so it is asked for the factors of all units defined here when trimlang
is built (``trimlang.made_ahead``), and for any other word when that is met.

Source of the definitions: NIST Special Publication 811 and NIST Handbook 44,
appendix C (1 in = 25.4 mm exactly; 1 US gallon = 231 cubic inches).
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import suppress
from enum import StrEnum
from fractions import Fraction
from functools import cache
from importlib.util import find_spec
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from trimlang import made_ahead
from trimlang.lengths.tape import Unit

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

_LENGTH: Final = "inch"
_VOLUME: Final = "inch**3"


class LengthUnit(StrEnum):
    """A unit that people measure walls in; a file may name any other that pint knows."""

    INCH = "in"
    FOOT = "ft"
    YARD = "yd"
    MM = "mm"
    CM = "cm"
    METRE = "m"


class VolumeUnit(StrEnum):
    """A unit that paint and what fills joints are sold by."""

    GALLON = "gallon"
    QUART = "quart"
    FLUID_OUNCE = "fl_oz"
    LITRE = "litre"

    @classmethod
    def _missing_(cls, value: object) -> VolumeUnit | None:
        # as it is spelled where rooms are measured in inches
        return cls.LITRE if value == "liter" else None


class UnknownUnitError(ValueError):
    """The word names no unit of the kind that is wanted."""


def far_unit(unit: Unit) -> LengthUnit:
    """Return what long stretches are measured in by those who measure walls in a unit."""
    # Long stretches in millimetres or inches are figures that nobody pictures.
    return LengthUnit.METRE if unit is Unit.MM else LengthUnit.FOOT


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
        UnknownUnitError: pint knows no such unit, or it is of another dimension.
    """
    import pint

    units = registry()
    try:
        # A Fraction as magnitude keeps pint's arithmetic exact.
        quantity = (Fraction(1) * units.parse_units(unit)).to(base)
    # A word that is no unit makes pint raise one error or another, by how it is spelled.
    except (pint.errors.PintError, AttributeError, ValueError) as error:
        raise UnknownUnitError(unit) from error
    return Fraction(quantity.magnitude)


def in_inches(amount: Fraction, unit: str) -> Fraction:
    """Return ``amount`` of ``unit`` (``in``, ``ft``, ``mm``, …) in inches, exactly.

    Raises:
        UnknownUnitError: ``unit`` names no unit of length.
    """
    return amount * _factor(unit, _LENGTH)


def in_cubic_inches(amount: Fraction, unit: VolumeUnit) -> Fraction:
    """Return ``amount`` of a unit of volume in cubic inches."""
    return amount * _factor(unit, _VOLUME)


def make_factors(into: Path) -> None:
    """Write the factors of all units defined above into a folder: lines like ``inch mm 5/127``."""
    lines = []
    for unit in _words():
        for base in (_LENGTH, _VOLUME):
            # Each word is a length or a volume; asked for the other it has no factor.
            with suppress(UnknownUnitError):
                lines.append(f"{base} {unit} {factor_from_pint(unit, base)}\n")
    (into / _factors_name()).write_text("".join(lines), encoding="utf-8")


@cache
def _factor(unit: str, base: str) -> Fraction:
    ready = _made_ahead().get((base, unit))
    return factor_from_pint(unit, base) if ready is None else Fraction(ready)


@cache
def _made_ahead() -> dict[tuple[str, str], str]:
    """Return the factors that were made ahead, by base and unit; empty where out of date."""
    try:
        text = (made_ahead.FOLDER / _factors_name()).read_text(encoding="utf-8")
    # A missing file is no fault: pint is asked then, and the answer is the same but slower.
    except FileNotFoundError:
        return {}
    lines = (line.split() for line in text.splitlines())
    return {(base, unit): factor for base, unit, factor in lines}


def _factors_name() -> str:
    # The version and the definitions are in the name, so that a file of other ones is never read.
    return made_ahead.made_name("units", _pint_version(), *DEFINITIONS)


def _pint_version() -> str:
    """Return which pint is installed, without loading it or a reader of its metadata.

    The folder that its installer wrote beside it has the version in its name.
    """
    found = find_spec("pint")
    # Without pint's place its version is unknown; the name then fits no file made before.
    if found is None or found.origin is None:
        return ""
    # importlib.metadata would take longer to load than reading the name of one folder; and a Path
    # for each of them, longer than listing them.
    beside = os.listdir(Path(found.origin).parent.parent)  # noqa: PTH208
    return " ".join(sorted(one for one in beside if one.lower().startswith("pint-")))


def _words() -> Iterator[str]:
    """Yield every name of every unit defined above."""
    for definition in DEFINITIONS:
        name, _, *others = definition.split(" = ")
        yield from (name, *others)
