"""A piece of trim as it leaves the saw."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from trimlang.survey.job import Fit, Joint
from trimlang.survey.settings import Direction


class Lean(StrEnum):
    """Which way the blade leans, seen with the face up or towards you."""

    LEFT = "left"
    RIGHT = "right"
    UPRIGHT = "square"


class Kind(StrEnum):
    """A piece along a run, or the small one that closes a profile."""

    RUN = "run"
    RETURN = "return"


@dataclass(frozen=True, slots=True)
class Cut:
    """One end's cut.

    ``exact`` and ``setting`` are degrees from square: what the joint wants and
    what the saw can read.  ``inset`` is how far the short edge of the end lies
    inside the long point (inches); ``long_edge`` is ``back``, ``face`` or
    ``both``.  ``gap`` is what setting instead of exact leaves open at the face
    of the joint (inches).
    """

    joint: Joint
    fit: Fit
    exact: Fraction
    setting: Fraction
    lean: Lean
    long_edge: str
    inset: Fraction
    gap: Fraction
    assumed: bool
    corner_error: Fraction | None = None


@dataclass(frozen=True, slots=True)
class Rounding:
    """How the ticket's length came from the exact one.

    ``row`` is the row of the rounding table that decided; ``by`` is the ticket
    length less the exact one.
    """

    row: str
    direction: Direction
    exact: Fraction
    by: Fraction


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece: ``length`` is what the ticket says, long point to long point.

    ``wall`` is the length as surveyed; ``back`` and ``face`` the two edges of
    the piece as cut.  ``part`` counts the pieces of a spliced run from its left
    end, 1 of 1 where there is no splice.  Lengths in inches.
    """

    id: str
    kind: Kind
    room: str
    run: str
    trim: str
    length: Fraction
    wall: Fraction
    left: Cut
    right: Cut
    rounding: Rounding
    part: int = 1
    parts: int = 1
    over_scraps: bool = False
    note: str | None = None
    unit: str = "in"

    @property
    def back(self) -> Fraction:
        """Length of the edge against the wall."""
        return self.length - _inset(self.left, "face") - _inset(self.right, "face")

    @property
    def face(self) -> Fraction:
        """Length of the edge that is seen."""
        return self.length - _inset(self.left, "back") - _inset(self.right, "back")


def _inset(cut: Cut, long_edge: str) -> Fraction:
    return cut.inset if cut.long_edge == long_edge else Fraction(0)
