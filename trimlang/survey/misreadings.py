"""What a length may have been before one of the usual slips of the tape or the pencil."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from trimlang.lengths.tape import MM, Unit, is_tape_fraction, mixed_number
from trimlang.record import record
from trimlang.survey.measures import LONGEST_WALL

FOOT: Final = Fraction(12)
_COMMON, _RARER, _RARE = 0.0, 2.0, 4.0
"""Added to a slip's score in chi-squared, so that a commoner slip that fits as well is believed
first (common practice, no source: a foot and an inch are misread most)."""


@record
class Misreading:
    """A length that may have been meant (inches), the slip in words, and how rare it is."""

    length: Fraction
    words: str
    rare: float


def misreadings(length: Fraction, unit: Unit) -> Iterator[Misreading]:
    """Yield what a length may have been before a usual slip; each length only once."""
    seen = {length}
    ways = _metric(length) if unit is Unit.MM else _feet_and_inches(length)
    for one in ways:
        # Several slips can lead to one length; the first, which is the commonest, speaks for it.
        if 0 < one.length <= LONGEST_WALL and one.length not in seen:
            seen.add(one.length)
            yield one


def feet_without_inches(length: Fraction, right: Fraction, unit: Unit) -> Misreading | None:
    """Return the slip of writing 10 in for 10 ft 4 in, where a length of so many feet fits best."""
    if unit is Unit.MM or length.denominator > 1 or abs(right - length * FOOT) > FOOT / 2:
        return None
    return Misreading(right, "written in inches for feet, without its inches", _RARER)


def _metric(length: Fraction) -> Iterator[Misreading]:
    for size, name in ((1000, "a metre"), (100, "100 mm"), (10, "10 mm")):
        yield Misreading(length + size * MM, f"read {name} too short", _COMMON)
        yield Misreading(length - size * MM, f"read {name} too long", _COMMON)
    yield Misreading(length * 10, "written in centimetres", _RARER)
    yield Misreading(length / 10, "written with a zero too many", _RARER)
    yield Misreading(length / MM, "written in inches", _RARER)
    yield Misreading(length * 10 * MM, "written in inches for centimetres", _RARER)
    yield Misreading(length / (10 * MM), "written in centimetres for inches", _RARER)
    yield Misreading(length * MM, "written in inches for millimetres", _RARER)
    for right in _digits_swapped(int(length / MM)):
        yield Misreading(right * MM, "with two figures swapped", _RARER)


def _feet_and_inches(length: Fraction) -> Iterator[Misreading]:
    for feet_off, name, rare in ((1, "a foot", _COMMON), (2, "two feet", _RARER)):
        yield Misreading(length + feet_off * FOOT, f"read {name} too short", rare)
        yield Misreading(length - feet_off * FOOT, f"read {name} too long", rare)
    yield Misreading(length + 1, "read an inch too short", _COMMON)
    yield Misreading(length - 1, "read an inch too long", _COMMON)
    yield Misreading(length * FOOT, "written in inches for feet", _COMMON)
    yield Misreading(length / FOOT, "written in feet for inches", _COMMON)
    whole, part = divmod(length, 1)
    feet, inches = divmod(whole, int(FOOT))
    # 12 ft 3 in cannot come from swapped feet and inches: nobody writes 3 ft 12 in.
    if 0 < feet < FOOT:
        yield Misreading(inches * FOOT + feet + part, "with feet and inches swapped", _RARER)
    for right in _digits_swapped(int(whole)):
        yield Misreading(right + part, "with two figures swapped", _RARER)
    for right in _digits_swapped(int(feet)):
        yield Misreading(
            right * FOOT + inches + part, "with two figures of the feet swapped", _RARER
        )
    if part:
        # "161/2" may be 16 1/2 with its blank lost.
        if (split := _run_together(length)) is not None:
            yield Misreading(split, "with whole number and fraction run together", _COMMON)
        yield Misreading(whole + 1 - part, "with the fraction counted from the wrong mark", _RARER)
        yield Misreading(whole + part / 2, "with the fraction's lower figure misread", _RARE)
        yield Misreading(whole + part * 2, "with the fraction's lower figure misread", _RARE)
    yield Misreading(length * MM, "written in millimetres", _RARER)
    yield Misreading(length * 10 * MM, "written in centimetres", _RARER)
    # A length on no mark of an inch tape that is a round number of mm or cm was written in these.
    if not is_tape_fraction(length):
        for size, unit in ((MM, "mm"), (10 * MM, "cm")):
            number = length / size
            if is_tape_fraction(number):
                words = f"written in {unit}, {mixed_number(number)} in in place of"
                yield Misreading(number, f"{words} {mixed_number(number)} {unit}", _COMMON)


def _run_together(length: Fraction) -> Fraction | None:
    """Return 16 1/2 for 161/2, where whole number and fraction ran together; None elsewhere."""
    above, below = str(length.numerator), length.denominator
    for at in range(1, len(above)):
        if int(above[at:]) < below and above[at] != "0":
            return int(above[:at]) + Fraction(int(above[at:]), below)
    return None


def _digits_swapped(whole: int) -> Iterator[int]:
    digits = str(whole)
    for at in range(len(digits) - 1):
        swapped = digits[:at] + digits[at + 1] + digits[at] + digits[at + 2 :]
        # Nobody writes a length with a zero in front.
        if swapped[0] != "0":
            yield int(swapped)
