"""A length as an instrument or a person in a hurry writes it, as a job file writes it."""

from __future__ import annotations

import re
from fractions import Fraction
from types import MappingProxyType
from typing import Final

from trimlang.diagnostics import has_errors
from trimlang.language.parse import read_line
from trimlang.language.tree import RunLine
from trimlang.lengths.tape import Unit
from trimlang.lengths.units import LengthUnit, in_inches
from trimlang.survey.measures import LONGEST_WALL, Findings, length

UNITS: Final = MappingProxyType(
    {
        word: unit
        for unit, words in {
            LengthUnit.METRE: "m metre metres meter meters",
            LengthUnit.CM: "cm centimetre centimetres centimeter centimeters",
            LengthUnit.MM: "mm millimetre millimetres millimeter millimeters",
            LengthUnit.FOOT: "ft foot feet ' ′",
            LengthUnit.INCH: "in inch inches \" ″ ''",
            LengthUnit.YARD: "yd yard yards",
        }.items()
        for word in words.split()
    }
)
"""What a unit may be called, and how a job file writes it."""

_COMMA: Final = re.compile(r"^(?P<whole>\d+),(?P<part>\d+)\s*(?P<unit>[^\W\d_]*)$")
_WORD: Final = re.compile(r"[^\W\d_]{2,}")


_SHORTEST: Final = Fraction(1)
"""Inches: a comma that would make a wall shorter than this is no decimal one."""


def length_of(text: str, unit: LengthUnit | None, *, comma_is_decimal: bool) -> str | None:
    """Return a length as a job file writes it, None where the text is none, or no wall's.

    ``unit`` is that of a number without one, None for a bare number.  A comma is a decimal one
    where cells are parted otherwise, or where as thousands no wall would be so long.
    """
    written = " ".join(text.split())
    with_comma = _COMMA.match(written)
    if with_comma is not None:
        whole, part = with_comma["whole"], with_comma["part"]
        own = UNITS.get(with_comma["unit"].casefold(), unit)
        decimal = f"{whole}.{part}"
        if len(part) == 3 and not comma_is_decimal:
            ways = [
                one for one in (whole + part, decimal) if _is_a_wall(one, own or LengthUnit.INCH)
            ]
            if len(ways) != 1:
                return None  # thousands or a decimal comma: only the writer knows
            decimal = ways[0]
        written = f"{decimal} {with_comma['unit']}".strip()
    written = _WORD.sub(lambda word: UNITS.get(word[0].casefold(), word[0]), written)
    if unit and re.fullmatch(r"[\d./ ⁄]+", written):
        written = f"{written} {unit}"
    # The language itself decides what a length is, so that a list accepts neither more nor less
    # than a job file.
    statement, problems = read_line(f"X: {written}", "x", 1)
    if not isinstance(statement, RunLine) or (problems and has_errors(problems)):
        return None
    if statement.facts:
        return None
    findings = Findings()
    # “2.740 mm” asks which point it is, which a list's reader cannot answer
    return written if length(statement.length, Unit.INCH, findings, what="a wall") else None


def _is_a_wall(number: str, unit: LengthUnit) -> bool:
    return _SHORTEST <= in_inches(Fraction(number), unit) <= LONGEST_WALL
