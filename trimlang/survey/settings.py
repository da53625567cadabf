"""The settings of a job and of a room: one value each, the nearer line winning."""

from __future__ import annotations

from dataclasses import field
from enum import StrEnum
from fractions import Fraction
from types import MappingProxyType
from typing import Final

from trimlang.record import record


class Direction(StrEnum):
    """Which way a length goes to the next mark on the tape."""

    UP = "up"
    DOWN = "down"
    NEAREST = "nearest"


ROUNDING: Final = MappingProxyType(
    {
        "out-corner": (Direction.UP, Fraction(0)),
        "open": (Direction.NEAREST, Fraction(0)),
        "return": (Direction.NEAREST, Fraction(0)),
        "cope": (Direction.DOWN, Fraction(0)),
        "rake": (Direction.NEAREST, Fraction(0)),
        "level": (Direction.NEAREST, Fraction(0)),
        "head": (Direction.NEAREST, Fraction(0)),
        "splice": (Direction.NEAREST, Fraction(0)),
        "in-corner": (Direction.DOWN, Fraction(0)),
        "butt": (Direction.DOWN, Fraction(0)),
        "plumb": (Direction.DOWN, Fraction(0)),
    }
)
"""The rounding rule, the deciding end first: a run takes the first row that either end has.

The second value raises the length before it is rounded down (a sprung fit).
All rows: common practice, no source.
"""

ASSUMED_OUT_CORNER: Final = Fraction(91, 2)
"""45.5°: drywall builds up on the corner bead (common practice, no source)."""

ASSUMED_IN_CORNER: Final = Fraction(89, 2)
"""44.5°: drywall compound builds up in the corner (common practice, no source)."""


@record
class Settings:
    """What holds where nothing nearer says otherwise.

    Lengths in inches, angles in degrees, the defaults common practice without
    a source unless noted.
    """

    unit: str = "in"
    taken: str = "wall"
    step: Fraction | None = None
    rounding: tuple[tuple[str, tuple[Direction, Fraction]], ...] = tuple(ROUNDING.items())
    mitre_out: Fraction = ASSUMED_OUT_CORNER
    mitre_in: Fraction = ASSUMED_IN_CORNER
    gap_out: Fraction = Fraction(1, 32)
    gap_in: Fraction = Fraction(1, 16)
    cope: bool = False
    may_splice: bool = True
    splice_angle: Fraction = Fraction(45)
    splice_least: Fraction = Fraction(24)
    stud_spacing: Fraction = Fraction(16)
    reveal: Fraction = Fraction(3, 16)
    casing_floor: Fraction = Fraction(0)
    head_butt: bool = False
    head_overhang: Fraction = Fraction(0)
    closes_within: Fraction = Fraction(3, 2)
    kerf: Fraction = Fraction(1, 8)
    saw_step: Fraction = Fraction(1, 2)
    squares_off: Fraction = Fraction(0)
    saw_reach: Fraction = Fraction(50)
    spare: Fraction = Fraction(10)
    spare_covers: bool = False
    nail_every: Fraction = Fraction(16)
    nail_long: Fraction = Fraction(2)
    nail_plate: Fraction = Fraction(3, 2)
    nail_floor: Fraction = Fraction(0)
    nail_wallboard: Fraction = Fraction(1, 2)
    nail_box: tuple[Fraction, Fraction] | None = None
    caulk_bead: Fraction = Fraction(3, 16)
    caulk_tube: tuple[Fraction, Fraction] = (Fraction(101, 10), Fraction(0))
    caulk_waste: Fraction = Fraction(10)
    filler_tub: tuple[Fraction, Fraction] = (Fraction(8), Fraction(0))
    paint_coats: Fraction = Fraction(2)
    paint_spread: Fraction = Fraction(350 * 144, 231)
    paint_can: tuple[Fraction, str, Fraction] = (Fraction(1), "quart", Fraction(0))
    stated: frozenset[str] = field(default=frozenset())

    @property
    def rounding_step(self) -> Fraction:
        """A sixteenth of an inch, a millimetre in metric files, or what the file says."""
        if self.step is not None:
            return self.step
        return Fraction(5, 127) if self.unit == "mm" else Fraction(1, 16)

    @property
    def spare_percent(self) -> Fraction:
        """What is bought besides, in percent of all pieces.

        Where the spare covers any one piece, only what the file says comes on top.
        """
        return Fraction(0) if self.spare_covers and "spare" not in self.stated else self.spare

    @property
    def rule(self) -> dict[str, tuple[Direction, Fraction]]:
        """The rounding table as it holds here, the deciding row first."""
        return dict(self.rounding)
