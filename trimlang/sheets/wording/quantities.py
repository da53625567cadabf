"""Writes quantities as the sheets show them: lengths on a tape, angles, money."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.lengths.tape import (
    MM,
    SIXTEENTH,
    decimal_text,
    is_tape_fraction,
    mixed_number,
    mixed_parts,
    steps_nearest,
)
from trimlang.record import record
from trimlang.sheets.wording.catalogue import Words

FINEST_INCH: Final = SIXTEENTH
"""What a length that is on no inch tape is shown to on an inch sheet."""

EIGHTHS: Final = 8
"""A saw's scale finer than quarters of a degree is read in eighths (common practice, no source)."""


@record
class Reading:
    """A length in the parts that a page sets in different sizes: ``29``, ``1/8``, ``in``."""

    whole: str
    fraction: str
    unit: str

    def __str__(self) -> str:
        return " ".join(part for part in (self.whole, self.fraction, self.unit) if part)


@record
class Pen:
    """Writes in one language, one unit and one currency.

    ``show`` is the unit asked for on the sheets (``in`` or ``mm``), ``own`` the
    job file's own, which holds where nothing is asked.  ``tape`` is the distance of two
    marks on the job's tape, in inches.  ``by_length`` tells that no stick has a price, and that
    what a plan costs is a length.
    """

    words: Words
    currency: str
    own: str = "in"
    show: str | None = None
    tape: Fraction = SIXTEENTH
    by_length: bool = False

    @property
    def unit(self) -> str:
        """The unit of what is written."""
        return self.show or self.own

    def of(self, own: str) -> Pen:
        """Return a pen for a piece that was measured in ``own``."""
        return self if own == self.own else replace(self, own=own)

    def reading(self, inches: Fraction) -> Reading:
        """Return a length as the tape shows it."""
        if self.unit == "mm":
            return Reading(decimal_text(inches / MM, 1), "", "mm")
        if not is_tape_fraction(inches):
            inches = steps_nearest(inches, FINEST_INCH)
        sign, whole, rest = mixed_parts(inches)
        if not whole:
            return Reading("", f"{sign}{rest}", "in")
        return Reading(f"{sign}{whole}", rest, "in")

    def length(self, inches: Fraction) -> str:
        """Write a length as it was given: ``29 1/8 in``, ``740 mm``, ``23/32 in``."""
        return str(self.reading(inches))

    def mark(self, inches: Fraction) -> Reading:
        """Return the mark of the tape that a length is nearest to: what a hand measures."""
        usual = MM if self.unit == "mm" else SIXTEENTH
        step = self.tape if (usual / self.tape).denominator == 1 else usual
        return self.reading(steps_nearest(inches, step))

    def small(self, inches: Fraction) -> str:
        """Write a small gap as a tape shows it: ``1/16 in``, ``under 1 mm``."""
        step = MM if self.unit == "mm" else SIXTEENTH
        size = abs(inches)
        if size < step:
            return self.words("under {step}", step=str(self.reading(step)))
        return str(self.reading(steps_nearest(size, step)))

    def thickness(self, inches: Fraction) -> str:
        """Write what is packed out, to the nearest mark of the tape.

        Empty where that is nothing: less than half a mark is closed with caulk.
        """
        near = self.mark(inches)
        return str(near) if near.whole != "0" else ""

    def stick(self, inches: Fraction) -> str:
        """Write a stick's length as it is sold: ``12 ft``, ``3.6 m``."""
        if self.unit == "mm":
            return f"{decimal_text(inches / MM / 1000, 3)} m"
        feet, rest = divmod(inches, 12)
        if not feet or not is_tape_fraction(rest):
            return self.length(inches)
        return f"{feet} ft {self.length(rest)}" if rest else f"{feet} ft"

    def run_of(self, inches: Fraction) -> str:
        """Write a total of lengths: ``214.6 ft``, ``65.4 m``."""
        if self.unit == "mm":
            return f"{decimal_text(inches / MM / 1000, 1)} m"
        return f"{decimal_text(inches / 12, 1)} ft"

    def angle(self, degrees: Fraction) -> str:
        """Write an angle as a saw's scale shows it: ``44.5°``, ``31 1/8°``."""
        if degrees.denominator == EIGHTHS:
            return f"{mixed_number(degrees)}°"
        return f"{decimal_text(degrees, 2)}°"

    def cost(self, amount: Fraction) -> str:
        """Write what a plan of sticks costs: money, or ``64 ft`` where no stick has a price."""
        return self.stick(amount) if self.by_length else self.money(amount)

    def money(self, amount: Fraction) -> str:
        """Write a sum of money: ``$17.40``."""
        coins = steps_nearest(abs(amount), Fraction(1, 100))
        whole, cents = divmod(int(coins * 100), 100)
        sign = "-" if amount < 0 else ""
        gap = " " if len(self.currency) > 1 else ""
        return f"{sign}{self.currency}{gap}{whole:,}.{cents:02d}"
