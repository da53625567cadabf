"""What walls get besides running trim, and what was measured across a room."""

from __future__ import annotations

from enum import StrEnum
from fractions import Fraction

from trimlang.diagnostics import Span
from trimlang.language.box_facts import BoxPlace
from trimlang.language.end_facts import Side
from trimlang.marking import N_
from trimlang.record import record


@record
class CasingBlock:
    """A block that is bought by the piece: a plinth below a casing's leg, a rosette at its corner.

    ``price`` is for one, 0 where the file gives none.  Sizes in inches.
    """

    name: str
    wide: Fraction
    tall: Fraction
    thickness: Fraction | None
    material: tuple[str, ...]
    price: Fraction
    span: Span


@record
class BlockInCorner:
    """A block that fills a corner; trims end at it square, those of the floor or the ones said.

    In an inside corner it is square, ``wide`` along both walls.  Round an outside one both its
    faces are ``wide``, and it stands out by its thickness.  Lengths in inches.
    """

    block: CasingBlock
    stops: tuple[str, ...] | None

    def takes_up(self, *, outside: bool) -> Fraction:
        """Return how much of either wall it covers."""
        # Round an outside corner a face is measured over the block, and its thickness lies past the
        # end of the wall.
        behind = self.block.thickness or Fraction(0)
        return self.block.wide - behind if outside else self.block.wide

    def stands_out(self, *, outside: bool) -> Fraction:
        """Return how far it stands out from either wall."""
        # In an inside corner the block is square, so it stands out as far as it is wide.
        return (self.block.thickness or Fraction(0)) if outside else self.block.wide


@record
class HeadMember:
    """A part of a head: how far it goes past the legs (inches), whether its ends are returned.

    ``behind`` is the trim below it in the head that it stands in front of; it then goes as far as
    that one, and its returns go round its ends.
    """

    trim: str
    overhang: Fraction
    returned: bool
    behind: str | None


class Foot(StrEnum):
    """What the lower end of a leg of casing stands on; a plinth stands on the floor itself."""

    FLOOR = N_("floor")
    STOOL = N_("stool")
    SILL = N_("sill")


@record
class Trimmings:
    """What an opening gets besides the legs and the head of its casing, by the trims' names.

    ``stool`` is the board under a window and ``apron`` what covers the wall below it; ``jambs``
    are strips that bring the jamb out to the wall's face.  ``four_sides`` tells that the
    casing goes on below, ``both_faces`` that the wall's other side is cased alike.  ``plinth`` is
    the block below each leg, ``corner_block`` the one where legs and head would be mitred,
    ``backband`` the trim round the casing's outer edge.  ``head`` are the parts of a head of
    several, from below.  ``transition`` is the block that a wall's stretch is, between two trims.
    """

    stool: str | None = None
    apron: str | None = None
    jambs: str | None = None
    four_sides: bool = False
    both_faces: bool = False
    plinth: CasingBlock | None = None
    corner_block: CasingBlock | None = None
    backband: str | None = None
    head: tuple[HeadMember, ...] = ()
    transition: CasingBlock | None = None

    @property
    def trims(self) -> tuple[str, ...]:
        """The trims that are named."""
        named = (self.stool, self.apron, self.jambs, self.backband)
        parts = (member.trim for member in self.head)
        # A trim may be named twice, as a jamb and in the head: each is a piece of its own.
        return (*(name for name in named if name is not None), *parts)

    @property
    def blocks(self) -> tuple[tuple[CasingBlock, int], ...]:
        """The blocks of the opening, and how many there are of each."""
        # A leg at each side of the opening, and corners below it only where the casing goes on
        # there.
        faces = 2 if self.both_faces else 1
        corners = 4 if self.four_sides else 2
        counts = (
            (self.plinth, 2 * faces),
            (self.corner_block, corners * faces),
            (self.transition, 1),
        )
        return tuple((block, count) for block, count in counts if block is not None)


@record
class DoorSwing:
    """How a door opens: ``hinge`` is the side of its hinges, as one faces it from inside."""

    hinge: Side
    outwards: bool = False


@record
class WallName:
    """What people call a wall, or the place at an opening: a text with named gaps, and their words.

    They are kept apart, so that the text can be translated.
    """

    text: str
    words: tuple[tuple[str, str], ...]

    def __str__(self) -> str:
        return self.text.format(**dict(self.words))


@record
class WallBoxes:
    """Frames on a wall: ``count`` boxes, all ``wide`` and ``tall``, with wall between them.

    run: the run's label; for boxes below or above an opening, what that goes by in ids.
    called: what people call the wall.
    place: what they are on: a run, a wall of several, or the wall below or above an opening.
    label: what the set is called in a piece's id; empty for a run's only set.
    wall: how long the wall is that they fill.
    margins: the wall before, between and behind them, one more than there are boxes.
    slope: of a run that climbs, in degrees, more than 0 where it rises to the right; widths and
        margins are then along it, and the boxes' sides stand plumb.

    Lengths are in inches; widths and margins together are the wall.
    """

    run: str
    called: WallName
    place: BoxPlace
    label: str
    wall: Fraction
    count: int
    wide: Fraction
    tall: Fraction
    margins: tuple[Fraction, ...]
    trim: str
    slope: Fraction
    note: str | None
    span: Span

    def id_in(self, tag: str) -> str:
        """Return what the ids of all its pieces begin with, in the room with this tag."""
        # A run with one set of boxes needs no label, and its ids stay short.
        name = f"{self.run}-{self.label}" if self.label else self.run
        return f"{tag}-{name}-{self.trim}"


@record
class RoomDiagonal:
    """A measurement across a room from corner to corner (inches).

    It runs from the left end of the stretch ``begin`` of ``Room.walk`` to the right end of the
    stretch ``end``; ``name`` is its name in the file.
    """

    name: str
    begin: int
    end: int
    length: Fraction
    span: Span
