"""Writes quantities as the sheets show them: lengths on a tape, angles, money."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.lengths.angles import EIGHTHS, in_eighths, scale_text
from trimlang.lengths.tape import (
    MM,
    SIXTEENTH,
    Shown,
    Unit,
    decimal_text,
    is_tape_fraction,
    marks_of_tape,
    mixed_parts,
    steps_nearest,
)
from trimlang.marking import N_
from trimlang.record import record
from trimlang.sheets.wording.catalogue import Words
from trimlang.sheets.wording.length_for_cost import LENGTH_FOR_COST

FINEST_INCH: Final = SIXTEENTH
"""What a length that is on no inch tape is shown to on an inch sheet."""


@record
class Reading:
    """A length in the parts that a page sets in different sizes: ``29``, ``1/8``, ``in``.

    A length in feet has them with its whole inches: ``12 ft 2``, ``1/4``, ``in``.
    """

    whole: str
    fraction: str
    unit: str
    gap: str = " "

    def __str__(self) -> str:
        return self.gap.join(part for part in (self.whole, self.fraction, self.unit) if part)


@record
class Pen:
    """Writes in one language, one unit and one currency.

    ``show`` is the unit asked for on the sheets, ``own`` the
    job file's own, which holds where nothing is asked; ``feet`` are counted where that was
    asked.  ``tape`` is the distance of two marks on the job's tape, in inches, and ``scale`` of
    two on the saw's scale, in degrees.
    ``gap`` stands within a number and before its unit: on a page a space that does not break.
    ``by_length`` tells that no stick has a price, and that what a plan costs is a length.
    """

    words: Words
    currency: str
    own: Unit = Unit.INCH
    show: Unit | None = None
    tape: Fraction = SIXTEENTH
    by_length: bool = False
    scale: Fraction = Fraction(1, 2)
    gap: str = " "
    feet: bool = False

    @property
    def unit(self) -> Unit:
        """The unit of what is written."""
        return self.show or self.own

    def of(self, own: Unit) -> Pen:
        """Return a pen for a piece that was measured in ``own``."""
        return self if own == self.own else replace(self, own=own)

    def reading(self, inches: Fraction) -> Reading:
        """Return a length as the tape shows it."""
        if self.unit is Unit.MM:
            return Reading(self.decimal(inches / MM, 1), "", Unit.MM, self.gap)
        # A metric length on an inch sheet falls between the marks; it is shown to the nearest one
        # rather than as a fraction that no tape has.
        if not is_tape_fraction(inches):
            inches = steps_nearest(inches, FINEST_INCH)
        sign, whole, rest = mixed_parts(inches)
        if self.feet and int(whole or 0) >= 12:
            return self._in_feet(sign, int(whole), rest)
        if not whole:
            return Reading("", f"{sign}{rest}", Unit.INCH, self.gap)
        return Reading(f"{sign}{whole}", rest, Unit.INCH, self.gap)

    def _in_feet(self, sign: str, inches: int, fraction: str) -> Reading:
        """Return whole inches and a fraction with the feet counted: ``12 ft 2 1/4 in``, ``12 ft``.

        Feet alone are in the unit's place, so that a page sets them as it sets inches.
        """
        feet, left = divmod(inches, 12)
        if not left and not fraction:
            return Reading(f"{sign}{feet}", "", Shown.FEET, self.gap)
        parts = [f"{sign}{feet}", Shown.FEET.value, *([str(left)] if left else [])]
        return Reading(self.gap.join(parts), fraction, Unit.INCH, self.gap)

    def length(self, inches: Fraction) -> str:
        """Write a length as it was given: ``29 1/8 in``, ``740 mm``, ``23/32 in``."""
        return str(self.reading(inches))

    def mark(self, inches: Fraction) -> Reading:
        """Return the mark of the tape that a length is nearest to: what a hand measures."""
        return self.reading(steps_nearest(inches, marks_of_tape(self.unit, self.tape)))

    def small(self, inches: Fraction) -> str:
        """Write a small gap as a tape shows it: ``1/16 in``, ``under 1 mm``."""
        step = MM if self.unit is Unit.MM else SIXTEENTH
        size = abs(inches)
        if size < step:
            return self.words("under {step}", step=str(self.reading(step)))
        return str(self.reading(steps_nearest(size, step)))

    def noted(self, inches: Fraction) -> str:
        """Write a length that a note tells as a mark of the tape, or as less than the first one."""
        near = self.mark(inches)
        return str(near) if near.whole != "0" or not inches else self.small(inches)

    def thickness(self, inches: Fraction) -> str:
        """Write what is packed out, to the nearest mark of the tape.

        Empty where that is nothing: less than half a mark is closed with caulk.
        """
        near = self.mark(inches)
        # Nothing is a whole 0; a fraction of an inch by itself has no whole part.
        return str(near) if near.whole != "0" else ""

    def stick(self, inches: Fraction) -> str:
        """Write a stick's length as it is sold, on whatever sheet: ``12 ft``, ``3.6 m``."""
        in_mm, in_inches = (inches / MM).denominator == 1, is_tape_fraction(inches)
        # A stick has the name that the yard gives it: 3.6 m is sold as 3.6 m on an inch job too,
        # since it is no whole number of sixteenths; 10 ft are 3048 mm besides.
        if in_mm and (self.own is Unit.MM or not in_inches):
            return f"{self.decimal(inches / MM / 1000, 3)}{self.gap}m"
        feet, rest = divmod(inches, 12)
        if not feet or not is_tape_fraction(rest):
            return self.length(inches)
        whole = f"{feet}{self.gap}ft"
        return f"{whole}{self.gap}{replace(self, show=Unit.INCH).length(rest)}" if rest else whole

    def sticks(self, lengths: Sequence[Fraction]) -> str:
        """Count sticks by their length: ``2 of 12 ft, 1 of 16 ft``."""
        return ", ".join(
            self.words("{n} of {length}", n=lengths.count(length), length=self.stick(length))
            for length in sorted(set(lengths))
        )

    def offcut(self, inches: Fraction) -> str:
        """Write an offcut's length: ``38 in``, ``10 ft`` where sticks are sold so long."""
        sold_so = not inches % 12 or not inches % (100 * MM)
        return self.stick(inches) if sold_so else str(self.mark(inches))

    def run_of(self, inches: Fraction) -> str:
        """Write a total of lengths: ``214.6 ft``, ``65.4 m``."""
        if self.unit is Unit.MM:
            return f"{self.decimal(inches / MM / 1000, 1)}{self.gap}m"
        return f"{self.decimal(inches / 12, 1)}{self.gap}ft"

    def angle(self, degrees: Fraction) -> str:
        """Write an angle as the saw's scale shows it: ``44 1/2°``, in metric jobs ``44.5°``."""
        return self.words.figures(scale_text(degrees, self.scale, self.unit, self.gap))

    def worked_out_angle(self, degrees: Fraction) -> str:
        """Write an angle that nobody read off a scale: ``90 3/4°`` for 90.76, at least an eighth.

        In metric jobs to a hundredth, as their scales are written.
        """
        if not in_eighths(self.scale, self.unit):
            return self.angle(degrees)
        eighth = Fraction(1, EIGHTHS)
        return self.angle(max(steps_nearest(degrees, eighth), eighth))

    def turn(self, degrees: Fraction) -> str:
        """Write how far to turn past a mark: ``1/4° more``, ``under 1/8° less``, ``0.12° more``.

        Empty where that is nothing.
        """
        if not degrees:
            return ""
        size, least = abs(degrees), Fraction(1, EIGHTHS)
        if not in_eighths(self.scale, self.unit):
            far = self.angle(size)
        elif size < least:
            far = self.words("under {step}", step=self.angle(least))
        else:
            far = self.angle(steps_nearest(size, least))
        more = N_("{angle} more") if degrees > 0 else N_("{angle} less")
        return self.words(more, angle=far)

    def cost(self, amount: Fraction) -> str:
        """Write what a plan of sticks costs: money, or ``64 ft`` where no stick has a price."""
        return self.stick(amount) if self.by_length else self.money(amount)

    def of_cost(self, text: str, **facts: object) -> str:
        """Say something of what a plan costs; of its length where no stick has a price."""
        return self.words(LENGTH_FOR_COST[text] if self.by_length else text, **facts)

    def money(self, amount: Fraction) -> str:
        """Write a sum of money: ``$17.40``."""
        # Rounded without the sign, so that a saving is rounded as an expense of the same size is.
        coins = steps_nearest(abs(amount), Fraction(1, 100))
        whole, cents = divmod(int(coins * 100), 100)
        sign = "-" if amount < 0 else ""
        gap = self.gap if len(self.currency) > 1 else ""
        return f"{sign}{self.currency}{gap}" + self.words.figures(f"{whole:,}.{cents:02d}")

    def decimal(self, value: Fraction, places: int) -> str:
        """Write a number to at most so many places."""
        return self.words.figures(decimal_text(value, places))
