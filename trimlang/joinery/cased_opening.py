"""An opening whose casing is cut, and what its parts are called."""

from __future__ import annotations

from enum import Enum
from fractions import Fraction
from typing import Final

from trimlang.joinery.piece import Cut, Piece, PieceKind
from trimlang.joinery.remarks import Remark
from trimlang.joinery.rounding import round_length
from trimlang.joint_row import RoundedAs
from trimlang.language.end_facts import Side
from trimlang.marking import N_
from trimlang.record import record
from trimlang.survey.job import Gap, Job, Room, Trim
from trimlang.survey.on_walls import Foot

_FAR: Final = N_("on the other side of the wall")


class CasingPart(Enum):
    """A part of what surrounds an opening: its kind, and what it is called with and without it."""

    LEFT_LEG = (
        PieceKind.LEG,
        N_("left leg of “{opening}”, as you face it"),
        N_("left leg, as you face it"),
        Side.LEFT,
    )
    RIGHT_LEG = (
        PieceKind.LEG,
        N_("right leg of “{opening}”, as you face it"),
        N_("right leg, as you face it"),
        Side.RIGHT,
    )
    HEAD = (PieceKind.HEAD, N_("head of “{opening}”"), N_("head"))
    BOTTOM = (PieceKind.HEAD, N_("bottom of “{opening}”"), N_("bottom of the frame"))
    STOOL = (PieceKind.STOOL, N_("stool of “{opening}”"), N_("stool"))
    APRON = (PieceKind.APRON, N_("apron of “{opening}”"), N_("apron"))
    LEFT_JAMB = (
        PieceKind.JAMB,
        N_("left jamb strip of “{opening}”"),
        N_("left jamb strip"),
        Side.LEFT,
    )
    RIGHT_JAMB = (
        PieceKind.JAMB,
        N_("right jamb strip of “{opening}”"),
        N_("right jamb strip"),
        Side.RIGHT,
    )
    HEAD_JAMB = (PieceKind.JAMB, N_("head jamb strip of “{opening}”"), N_("head jamb strip"))
    BOTTOM_JAMB = (
        PieceKind.JAMB,
        N_("bottom jamb strip of “{opening}”"),
        N_("bottom jamb strip"),
    )
    LEFT_BAND = (
        PieceKind.LEG,
        N_("left backband of “{opening}”, as you face it"),
        N_("left backband, as you face it"),
        Side.LEFT,
    )
    RIGHT_BAND = (
        PieceKind.LEG,
        N_("right backband of “{opening}”, as you face it"),
        N_("right backband, as you face it"),
        Side.RIGHT,
    )
    HEAD_BAND = (PieceKind.HEAD, N_("backband over “{opening}”"), N_("backband over the head"))
    BOTTOM_BAND = (
        PieceKind.HEAD,
        N_("backband below “{opening}”"),
        N_("backband below the frame"),
    )

    def __init__(
        self, kind: PieceKind, of_named: str, nameless: str, side: Side | None = None
    ) -> None:
        # What lies level over or under an opening belongs to no side.
        self.side = side
        self.kind = kind
        self.of_named = of_named
        self.nameless = nameless

    @property
    def in_an_id(self) -> str:
        """What it is called in a piece's id."""
        # Ids are typed in the log, so they have small letters and hyphens.
        return self.name.lower().replace("_", "-")


OPENING_PARTS: Final = tuple(part.in_an_id for part in CasingPart)
"""What the parts round an opening are called in the ids of their pieces."""


@record
class CasedOpening:
    """An opening with its room and with what its pieces go by; ``tall`` is its clear height.

    ``far`` tells that it is the casing on the other side of the wall, where left is left again.
    """

    job: Job
    room: Room
    gap: Gap
    door: str
    tall: Fraction
    far: bool = False

    def piece(
        self,
        part: CasingPart,
        trim: Trim,
        exact: Fraction,
        clear: Fraction,
        cuts: tuple[Cut, Cut],
        *more: Remark,
        number: int | None = None,
    ) -> Piece:
        """Return a piece of ``exact`` inches; ``number`` tells parts of one kind apart."""
        # Legs, stools and strips are rounded as heads are: casing is not squeezed between walls.
        length, rounding = round_length(exact, RoundedAs.HEAD, self.room.settings)
        called = self.gap.called
        # An opening that nobody named has a wording of its own: empty quotes look like a mistake.
        remark = Remark(part.of_named, (("opening", called),)) if called else Remark(part.nameless)
        return Piece(
            id=self.id_of(part, trim.name, number),
            kind=part.kind,
            at=part.side,
            foot=self._foot,
            room=self.room.name,
            run=self.door,
            trim=trim.name,
            length=length,
            wall=clear,
            left=cuts[0],
            right=cuts[1],
            rounding=rounding,
            unit=self.room.settings.unit,
            # Left is left again as one faces the far side, so the ticket has to say which side it
            # is.
            remarks=(remark, *more, *([Remark(_FAR)] if self.far else [])),
        )

    @property
    def _foot(self) -> Foot:
        """What the casing's legs stand on, for they begin where the clear opening does."""
        if self.gap.trimmings.stool is not None:
            return Foot.STOOL
        return Foot.FLOOR if self.gap.sill is None else Foot.SILL

    def id_of(self, part: CasingPart, trim: str, number: int | None = None) -> str:
        """Return the id of the piece that is this part of it, of the trim of that name."""
        # The opening's own name stands in the id, so that a door added elsewhere renames nothing.
        numbered = "" if number is None else f"-{number}"
        side = "-far" if self.far else ""
        return f"{self.room.tag}-{self.door}{side}-{trim}-{part.in_an_id}{numbered}"
