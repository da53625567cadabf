"""What is said of one end of a wall: its joint, how its corner was measured and cut."""

from __future__ import annotations

from enum import StrEnum
from typing import TypeAlias, TypeVar

from trimlang.diagnostics import Span
from trimlang.language.written import Angle, Measure, Word
from trimlang.record import record
from trimlang.settings.setting_kinds import TakenAt

_End = TypeVar("_End")


class Side(StrEnum):
    """An end of a wall, as one faces it."""

    LEFT = "left"
    RIGHT = "right"

    @property
    def other(self) -> Side:
        """The other end."""
        return Side.RIGHT if self is Side.LEFT else Side.LEFT

    @property
    def step(self) -> int:
        """How the walk goes on past this end: 1 to the next wall, -1 to the one before."""
        # A room is walked with the wall in front of one, so the next wall is at the right.
        return 1 if self is Side.RIGHT else -1

    def of(self, left: _End, right: _End) -> _End:
        """Return the one of two that is at this end.

        >>> Side.RIGHT.of("butt", "return")
        'return'
        """
        return left if self is Side.LEFT else right


@record
class Diagonal:
    """``corner by 36 in, 36 in, diagonal 51 1/4 in``: both legs, and across."""

    one: Measure
    other: Measure
    across: Measure


@record
class MitreThere:
    """``mitre 44 1/2 deg``: the saw's setting that closed the corner on scraps."""

    angle: Angle


@record
class OutOfPlumb:
    """``91 deg at floor, 90 deg at top``: the corner at the floor and at the trim's top."""

    floor: Angle
    top: Angle


@record
class WrittenCorner:
    """How a corner was measured: ``91 deg``, by a diagonal, or by the mitre that closes it.

    One out of plumb is measured twice.
    """

    size: Angle | Diagonal | MitreThere | OutOfPlumb
    span: Span


@record
class Bullnose:
    """``bullnose 3/4 in``: the corner is rounded with this radius; ``two-piece`` before it."""

    radius: Measure
    two_pieces: bool
    span: Span


@record
class CopedHere:
    """``cope``: this side of the corner is coped."""

    span: Span


@record
class MitredHere:
    """``mitre``: this corner is mitred, and that is meant."""

    span: Span


@record
class WrittenTaken:
    """``taken point``, ``taken point of base``: where the tape lay, over which trim's scraps."""

    at: TakenAt
    span: Span
    of: Word | None = None


@record
class Implied:
    """``implied``: the corner is what the others of its room, or diagonals, leave for it."""

    span: Span


@record
class BlockHere:
    """``block foot``: a block fills the corner; ``stops crown`` names the trims that end at it."""

    block: Word
    trims: tuple[Word, ...]
    span: Span


EndFact: TypeAlias = (
    WrittenCorner | Bullnose | Implied | CopedHere | MitredHere | WrittenTaken | BlockHere
)


@record
class WrittenEnd:
    """One end of a run: the joint and what was said in its brackets."""

    joint: Word
    facts: tuple[EndFact, ...]
    span: Span


@record
class AtEnd:
    """``left=in-corner``; ``word`` is where the side stands.

    A corner said between two walls (``W 16, out, W2 60``) is at the right of the first; its
    ``word`` is where the corner itself stands.
    """

    side: Side
    end: WrittenEnd
    word: Span
    span: Span

    @property
    def between(self) -> bool:
        """Whether it is said without a side, between two walls."""
        # With a side, its word stands before the joint; without one, both are the joint itself.
        return self.word == self.end.joint.span


@record
class TrimEnd:
    """``shoe return``, ``crown right=return``: how one trim of a run ends, unlike the others.

    ``side`` is None where it is that of the end before it in the line.
    """

    trim: Word
    side: Side | None
    end: WrittenEnd
    span: Span
