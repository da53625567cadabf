"""What can be said of a joint: the facts that a row holds, and the values that they take.

The rows themselves stand in ``trimlang.joints``.
"""

from __future__ import annotations

from dataclasses import KW_ONLY
from enum import Enum, StrEnum, auto
from types import MappingProxyType
from typing import Final

from trimlang.lengths.tape import Direction
from trimlang.marking import N_
from trimlang.record import record


class Edge(StrEnum):
    """Where an end is longest: an edge of the piece, or both alike."""

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
    """How an inside corner's end is fitted."""

    MITRED = "mitred"
    COPED = "coped"
    SQUARE = "square"


class Corner(Enum):
    """On which side of the wall faces a corner is measured: in the room, or in the wall."""

    INSIDE = auto()
    OUTSIDE = auto()


class Mitre(Enum):
    """What a joint's mitre follows from."""

    NONE = auto()
    """Square."""
    HALF_THE_CORNER = auto()
    """90° less half the corner."""
    A_RETURN = auto()
    """45°: the return stands square to the wall."""
    THE_SCARF = auto()
    """As the file says scarfs are cut."""
    HALF_THE_BEND = auto()
    """Across the face, half of what the pitch changes by."""
    THE_PITCH = auto()
    """Across the face: a plumb line on a slope."""
    OFF_THE_PITCH = auto()
    """Across the face: a level line on a slope, 90° less the pitch."""
    A_FRAME = auto()
    """Across the face, 45°: two members of one casing."""


class Mark(StrEnum):
    """What stands for an end on the floor plan."""

    DOT = "in"
    SQUARE = "out"
    RING = "free"


@record
class RoundingRow:
    """One row of the rounding rule; of a piece's two ends the earlier row decides."""

    row: str
    way: Direction
    because: str


ROUNDING_ROWS: Final = tuple(
    RoundingRow(row=row, way=way, because=because)
    for row, way, because in (
        (
            "out-corner",
            Direction.UP,
            N_("an outside corner: a long piece can be shaved, a short one cannot be mended"),
        ),
        ("open", Direction.NEAREST, N_("a free end")),
        ("return", Direction.NEAREST, N_("a return")),
        ("cope", Direction.DOWN, N_("a coped end")),
        ("rake", Direction.NEAREST, N_("a rake")),
        ("level", Direction.NEAREST, N_("a level cut")),
        ("head", Direction.NEAREST, N_("a casing")),
        ("splice", Direction.NEAREST, N_("a scarf")),
        ("in-corner", Direction.DOWN, N_("between walls: must slip in")),
        ("butt", Direction.DOWN, N_("between stops: must slip in")),
        ("plumb", Direction.DOWN, N_("a plumb cut")),
    )
)
"""The rounding rule, the deciding end first (common practice, no source)."""

WHY_ROUNDED: Final = MappingProxyType({one.row: one.because for one in ROUNDING_ROWS})


@record
class JointRow:
    """What is to be known of one joint.

    ``word`` stands in job files and in plan.json, ``name`` and ``meaning`` on sheets and
    in editors; ``page`` is the heading of docs/language.md that tells of it.
    ``long_point`` is the edge at which the end is longest where that is always the same.
    ``rounds`` names a row of the rounding rule, ``coped`` the one of a coped end.
    The rest is false where a row does not say it.
    """

    _: KW_ONLY
    word: str
    name: str
    meaning: str
    page: str
    mitre: Mitre
    rounds: str
    coped: str | None = None
    corner: Corner | None = None
    long_point: Edge = Edge.BOTH
    mark: Mark | None = None
    written: bool = True
    """A job file may say it."""
    goes_on: bool = False
    """The same trim goes on past it along the same line of wall."""
    laps: bool = False
    """One of its two pieces lies over the other."""
    stops: bool = False
    """Something that is no trim stands in the way."""
    stands_alone: bool = False
    """No neighbour's top is seen to run on from it."""
    returns: bool = False
    """A small piece turns the profile back to the wall."""
    on_level: bool = False
    """Only trim that runs level can be cut so: the sections would not match."""
    on_slope: bool = False
    """Only trim that climbs can be cut so."""
    on_loose_piece: bool = False
    """A piece that stands on no wall can be cut so."""
    needs_thickness: bool = False
    """Its length hangs on the trim's thickness."""
    needs_height: bool = False
    """Its length hangs on the trim's height."""
    filled: bool = False
    """The seam at its face is filled."""
    gap_shows: str | None = None
    """Whose limit holds for the gap that the saw's step leaves: a corner's word."""
