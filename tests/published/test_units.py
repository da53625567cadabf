"""Units against published definitions, through pint.

Sources: NIST Special Publication 811 (2008), appendix B: 1 inch = 25.4 mm exactly.
NIST Handbook 44, appendix C: 1 US gallon = 231 cubic inches = 4 quarts = 128 fluid ounces.
"""

import re
from fractions import Fraction
from functools import cache

import pint
import pytest

from trimlang.lengths.units import (
    UnknownUnitError,
    factor_from_pint,
    in_cubic_inches,
    in_inches,
    registry,
)


@cache
def as_shipped() -> pint.UnitRegistry:
    """The registry that pint ships, not ours."""
    return pint.UnitRegistry(non_int_type=Fraction)


def test_an_inch_is_exactly_25_4_millimetres() -> None:
    inch = Fraction(1) * registry().inch
    assert inch.to("mm").magnitude == Fraction(254, 10)
    assert in_inches(Fraction(254, 10), "mm") == 1
    assert in_inches(Fraction(1), "m") * Fraction(254, 10) == 1000


def test_a_us_gallon_is_231_cubic_inches() -> None:
    gallon = Fraction(1) * registry().us_gallon
    assert gallon.to("inch**3").magnitude == 231
    assert in_cubic_inches(Fraction(101, 10), "fl_oz") == Fraction(101, 10) * Fraction(231, 128)


@pytest.mark.parametrize("unit", ["inch", "foot", "yard", "millimeter", "centimeter", "meter"])
def test_our_definitions_agree_with_the_registry_that_pint_ships(unit: str) -> None:
    theirs = as_shipped()
    expected = (Fraction(1) * theirs.parse_units(unit)).to("inch").magnitude
    assert factor_from_pint(unit, "inch") == expected
    assert in_inches(Fraction(1), unit) == expected


@pytest.mark.parametrize("unit", ["gallon", "quart", "fluid_ounce", "liter"])
def test_our_volumes_agree_with_the_registry_that_pint_ships(unit: str) -> None:
    theirs = as_shipped()
    expected = (Fraction(1) * theirs.parse_units(unit)).to("inch**3").magnitude
    ours = {"fluid_ounce": "fl_oz", "liter": "litre"}.get(unit, unit)
    assert factor_from_pint(ours, "inch**3") == expected
    assert in_cubic_inches(Fraction(1), ours) == expected


def test_a_unit_that_was_not_asked_for_ahead_is_asked_of_pint() -> None:
    assert in_inches(Fraction(2), "yd") == 72
    assert in_inches(Fraction(1), "dm") == Fraction(1000, 254)
    assert in_inches(Fraction(2), "yards") == 72


@pytest.mark.parametrize("unit", ["furlgs", "gallon", "parsec", "__class__", "in**2", "2", ""])
def test_what_is_no_unit_of_length_is_refused(unit: str) -> None:
    """Nor is a length that no carpenter reads, though pint ships it."""
    with pytest.raises(UnknownUnitError, match=f"^{re.escape(unit)}$"):
        in_inches(Fraction(1), unit)
