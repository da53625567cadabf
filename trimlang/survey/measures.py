"""Gives measures their unit, and checks that they can be true."""

from __future__ import annotations

from collections.abc import Container
from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.diagnostics import Diagnostic, Span, say
from trimlang.language.tree import Measure, Price
from trimlang.lengths.tape import decimal_text, feet_text, length_text
from trimlang.lengths.units import UnknownUnitError, in_inches

LONGEST_WALL: Final = Fraction(1200)
"""A hundred feet: no room has such a wall; inches were probably typed as feet."""


class Findings:
    """Collects diagnostics while a pass goes through the tree."""

    def __init__(self) -> None:
        self.found: list[Diagnostic] = []

    def say(self, code: str, span: Span, **facts: object) -> None:
        """Add the diagnostic ``code`` at ``span``."""
        self.found.append(say(code, span, **facts))

    def drop(self, code: str, spans: Container[Span]) -> None:
        """Take back what one code says at ``spans``, where a later finding says it better."""
        self.found = [one for one in self.found if one.code != code or one.span not in spans]


def inches(measure: Measure, unit: str, findings: Findings) -> Fraction | None:
    """Return the length in inches, bare numbers in ``unit``; None where no unit fits."""
    total = Fraction(0)
    for amount, written in measure.parts:
        try:
            total += in_inches(amount, written or unit)
        except UnknownUnitError:
            findings.say("T201", measure.span, unit=written)
            return None
    return total


def length(
    measure: Measure, unit: str, findings: Findings, *, what: str, fine: bool = False
) -> Fraction | None:
    """Return a length that is more than nothing and less than absurd.

    ``fine`` tells that it may be given to thousandths of a millimetre, as a trim's section is.
    """
    value = inches(measure, unit, findings)
    if value is None:
        return None
    if not fine and measure.three_places and (measure.parts[0][1] or unit) == "mm":
        _ask_which_point(measure, findings)
        return None
    if value <= 0:
        findings.say("T202", measure.span, what=what)
        return None
    if value > LONGEST_WALL:
        guess, instead = "", ""
        if any((written or unit) == "ft" for _, written in measure.parts):
            as_inches = replace(measure, parts=tuple((n, "in") for n, _ in measure.parts))
            total = inches(as_inches, "in", findings) or value
            instead = length_text(total)
            guess = f"If inches were meant, write {instead}. "
        elif in_millimetres := _as_millimetres(measure):
            instead = length_text(in_millimetres, "mm")
            guess = f"If millimetres were meant, write {instead}. "
            if unit == "in":
                guess += "“unit mm” above the rooms says so of all that has no unit. "
        facts = {"what": what, "long": feet_text(value), "guess": guess, "instead": instead}
        findings.say("T203", measure.span, **facts)
        return None
    return value


def _ask_which_point(measure: Measure, findings: Findings) -> None:
    """Ask about 2.740 mm: a tape shows no thousandths, and many write 2740 so."""
    amount = abs(measure.parts[0][0])
    point, thousands = (f"{decimal_text(one, 3)} mm" for one in (amount, amount * 1000))
    findings.say("T251", measure.span, point=point, thousands=thousands)


def _as_millimetres(measure: Measure) -> Fraction | None:
    """What a single number would be in millimetres; None where it has a small unit or two parts."""
    (amount, written), *more = measure.parts
    value = in_inches(amount, "mm")
    return value if not more and written in (None, "cm", "m") and value <= LONGEST_WALL else None


def not_negative(measure: Measure, unit: str, findings: Findings, *, what: str) -> Fraction | None:
    """Return a length of nothing or more."""
    value = inches(measure, unit, findings)
    if value is not None and value < 0:
        findings.say("T204", measure.span, what=what)
        return None
    return value


def money(price: Price | None, findings: Findings) -> Fraction | None:
    """Return a price's amount, nothing where none is written, None where it is negative."""
    if price is None:
        return Fraction(0)
    if price.amount < 0:
        findings.say("T205", price.span)
        return None
    return price.amount
