"""What trimlang itself says of a piece, its sizes kept as sizes until a sheet is printed."""

from __future__ import annotations

from fractions import Fraction

from trimlang.language.end_facts import Side
from trimlang.lengths.angles import TENTH, degrees_text
from trimlang.lengths.tape import Unit, feet_text, length_text, steps_nearest
from trimlang.record import record
from trimlang.survey.on_walls import WallName


@record
class SaidLength:
    """A length (inches) that a remark says: on a sheet in the sheet's unit, as its tape shows it.

    Everywhere else it is written in ``unit``, the job's own, ``in_feet`` in feet and inches or
    metres.

    >>> str(SaidLength(Fraction(63), in_feet=True))
    '5 ft 3 in'
    """

    inches: Fraction
    unit: Unit = Unit.INCH
    in_feet: bool = False

    def __str__(self) -> str:
        return (feet_text if self.in_feet else length_text)(self.inches, self.unit)


@record
class SaidAngle:
    """An angle (degrees) that a remark says: on a sheet as the saw's scale shows it."""

    degrees: Fraction

    def __str__(self) -> str:
        return degrees_text(self.degrees)


Value = str | WallName | SaidLength | SaidAngle
"""What may fill a gap in a remark."""


def pitch_of(slope: Fraction) -> SaidAngle:
    """Return how steep something is, whichever way it climbs, to the tenth that is measured."""
    return SaidAngle(steps_nearest(abs(slope), TENTH))


@record
class Remark:
    """What trimlang itself says of a piece: a text with named gaps, and what fills them.

    Text and values are kept apart, so that the text can be translated.  ``at`` is the end that it
    is about, None where it is about the whole piece.
    """

    text: str
    values: tuple[tuple[str, Value], ...] = ()
    at: Side | None = None

    def __str__(self) -> str:
        return self.text.format(**dict(self.values))
