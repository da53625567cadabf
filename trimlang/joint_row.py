"""What a joint's row can say: the facts, and the values that they can have.

The rows themselves are in ``trimlang.joints``.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import KW_ONLY
from enum import Enum, StrEnum, auto
from fractions import Fraction
from types import MappingProxyType
from typing import Final, Protocol

from trimlang.lengths.tape import NOTHING, Direction
from trimlang.marking import N_
from trimlang.record import record


class Edge(StrEnum):
    """The edge of a piece at which an end is longest, or both where they are equal."""

    BACK = "back"
    FACE = "face"
    TOP = "top"
    BOTTOM = "bottom"
    OUTER = "outer"
    BOTH = "both"

    @property
    def is_across(self) -> bool:
        """Whether the cut runs across the face, so that the piece lies flat on the saw."""
        return self in (Edge.TOP, Edge.BOTTOM, Edge.OUTER)

    @property
    def is_far(self) -> bool:
        """Whether the edge lies at the fence when the piece is cut."""
        return self in (Edge.BACK, Edge.TOP, Edge.OUTER)


class Fit(StrEnum):
    """How an end is fitted into an inside corner."""

    MITRED = "mitred"
    COPED = "coped"
    SQUARE = "square"


class Corner(Enum):
    """The side on which a corner's angle is measured: through the room, or through the wall."""

    INSIDE = auto()
    OUTSIDE = auto()

    @property
    def other(self) -> Corner:
        """The corner that turns the other way."""
        return Corner.OUTSIDE if self is Corner.INSIDE else Corner.INSIDE


class EndAngles(Protocol):
    """The angles at an end that its mitre can follow from (degrees)."""

    @property
    def half_corner(self) -> Fraction:
        """90° less half the corner: both pieces share its turn, so that their profiles meet."""

    @property
    def written(self) -> Fraction | None:
        """What the file gives with the joint."""

    @property
    def bend(self) -> Fraction:
        """By how much the trim's pitch changes there, more than 0 where it turns upwards."""

    @property
    def pitch(self) -> Fraction:
        """How the run climbs, less than 0 where it goes down."""

    @property
    def scarf(self) -> Fraction:
        """At what angle the file has scarfs cut."""


def square(_: EndAngles) -> Fraction:
    """Return the mitre of an end that is cut square."""
    return NOTHING


class Mark(StrEnum):
    """The mark for an end on the floor plan."""

    DOT = "in"
    SQUARE = "out"
    RING = "free"


# The words are part of the language and of plan.json, and stay as they are.
class RoundedAs(StrEnum):
    """The rows of the rounding rule, by the words that ``round …`` lines and plan.json have."""

    OUT_CORNER = "out-corner"
    OPEN = "open"
    RETURN = "return"
    COPE = "cope"
    RAKE = "rake"
    LEVEL = "level"
    HEAD = "head"
    SPLICE = "splice"
    IN_CORNER = "in-corner"
    BUTT = "butt"
    PLUMB = "plumb"


@record
class RoundingRow:
    """One row of the rounding rule; of the rows of a piece's two ends, the earlier decides."""

    row: RoundedAs
    way: Direction
    because: str


ROUNDING_ROWS: Final = tuple(
    RoundingRow(row=row, way=way, because=because)
    for row, way, because in (
        (
            RoundedAs.OUT_CORNER,
            Direction.UP,
            N_("an outside corner: a long piece can be shaved, a short one cannot be mended"),
        ),
        (RoundedAs.OPEN, Direction.NEAREST, N_("a free end")),
        (RoundedAs.RETURN, Direction.NEAREST, N_("a return")),
        (RoundedAs.COPE, Direction.DOWN, N_("a coped end")),
        (RoundedAs.RAKE, Direction.NEAREST, N_("a rake")),
        (RoundedAs.LEVEL, Direction.NEAREST, N_("a level cut")),
        (RoundedAs.HEAD, Direction.NEAREST, N_("a casing")),
        (RoundedAs.SPLICE, Direction.NEAREST, N_("a scarf")),
        (RoundedAs.IN_CORNER, Direction.DOWN, N_("between walls: must slip in")),
        (RoundedAs.BUTT, Direction.DOWN, N_("between stops: must slip in")),
        (RoundedAs.PLUMB, Direction.DOWN, N_("a plumb cut")),
    )
)
"""The rounding rule, in the order in which its rows decide (common practice, no source)."""

WHY_ROUNDED: Final = MappingProxyType({one.row: one.because for one in ROUNDING_ROWS})


@record
class JointRow:
    """All that is known of one joint.

    ``word`` is what job files and plan.json say, ``name`` and ``meaning`` what sheets and editors
    show; ``page`` is the heading of docs/language.md that describes it.  ``mitre`` works out the
    mitre of an end that a job file writes, in degrees from square.  ``long_point`` is the edge at
    which the end is longest, where that is always the same.  ``rounds`` names the row of the
    rounding rule, ``coped`` that for a coped end.  Everything else is false where a row does not
    say it.
    """

    _: KW_ONLY
    word: str
    name: str
    meaning: str
    page: str
    rounds: RoundedAs
    # From here on what most rows do not say.
    shorts: tuple[str, ...] = ()
    """Other words for it in a job file, the usual one first."""
    coped: RoundedAs | None = None
    corner: Corner | None = None
    mitre: Callable[[EndAngles], Fraction] = square
    across: bool = False
    """Whether it is cut across the face of a trim that lies flat on the saw."""
    upright: bool = False
    """Whether the cut stands upright, whatever the trim climbs by."""
    tapers: bool = False
    """Whether it slopes back to the wall, by an angle that the file may give."""
    bends: bool = False
    """Whether the trim's pitch changes there."""
    long_point: Edge = Edge.BOTH
    mark: Mark | None = None
    written: bool = True
    """Whether a job file may say it."""
    goes_on: bool = False
    """Whether the same trim goes on past it along the same line of wall."""
    laps: bool = False
    """Whether one of its two pieces lies over the other."""
    stops: bool = False
    """Whether something that is not trim stands in the way."""
    stands_alone: bool = False
    """Whether no neighbour's top edge continues from it in sight."""
    returns: bool = False
    """Whether a small piece turns the profile back to the wall."""
    on_level: bool = False
    """Whether only level trim can have it: on a slope the sections would not match."""
    on_slope: bool = False
    """Whether only trim that climbs can have it."""
    on_loose_piece: bool = False
    """Whether a loose piece, which stands on no wall, can have it."""
    ends_alone: bool = False
    """One trim of a wall can end so while the others go on."""
    needs_thickness: bool = False
    """Whether the length depends on the trim's thickness."""
    needs_height: bool = False
    """Whether the length depends on the trim's height."""
    filled: bool = False
    """Whether the seam at its face is filled."""
    gap_shows: Corner | None = None
    """The corner whose limit holds for the gap that the saw's step leaves, if any."""
