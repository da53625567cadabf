"""Boxes on a wall: frames of four mitred sides, rectangles or along a stair parallelograms.

Each side is measured along its outer edge, from long point to long point, and lies on the saw face
up with that edge away from you: so the left side's top is its right end, and the bottom lies the
other way round.  Between sides that make the angle θ each is cut at 90° - θ/2 across its face.
Along a stair that climbs by s the sides stand plumb, and the corners are 90° - s and 90° + s in
turn (geometry: the angles of a parallelogram).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from enum import Enum
from fractions import Fraction
from typing import Final

from trimlang.joinery.faces import face_cut
from trimlang.joinery.limits import check_reach_of_part
from trimlang.joinery.piece import Cut, Piece, PieceKind
from trimlang.joinery.remarks import Remark, SaidLength
from trimlang.joinery.rounding import round_length
from trimlang.joint_row import RoundedAs
from trimlang.joints_by_role import BOX_CORNER
from trimlang.language.box_facts import BoxPlace
from trimlang.language.facts import Side
from trimlang.lengths.angles import RIGHT
from trimlang.lengths.tape import NOTHING
from trimlang.marking import N_
from trimlang.survey.job import Job, Room
from trimlang.survey.measures import Findings
from trimlang.survey.on_walls import WallBoxes

_AT: Final = {
    BoxPlace.ON: N_("the box begins {at} from the left end of {run}"),
    BoxPlace.ALONG: N_("the box begins {at} from the left end of {run}"),
    BoxPlace.UNDER: N_("the box begins {at} from the casing's left edge"),
    BoxPlace.OVER: N_("the box begins {at} from the casing's left edge"),
}


class BoxSide(Enum):
    """A side of a box: what it is called on a wall and at an opening, and which corners are sharp.

    Left and right are as it is cut; sharp is where the wall climbs to the right.
    """

    TOP = (
        N_("top of box {n} of {all} on {run}"),
        N_("top of box {n} of {all}, {run}"),
        False,
        True,
    )
    BOTTOM = (
        N_("bottom of box {n} of {all} on {run}"),
        N_("bottom of box {n} of {all}, {run}"),
        False,
        True,
    )
    LEFT = (
        N_("left side of box {n} of {all} on {run}"),
        N_("left side of box {n} of {all}, {run}"),
        True,
        False,
    )
    RIGHT = (
        N_("right side of box {n} of {all} on {run}"),
        N_("right side of box {n} of {all}, {run}"),
        True,
        False,
    )

    def __init__(
        self, on_a_wall: str, at_opening: str, left_is_sharp: bool, right_is_sharp: bool
    ) -> None:
        self.on_a_wall = on_a_wall
        self.at_opening = at_opening
        self.is_sharp = {Side.LEFT: left_is_sharp, Side.RIGHT: right_is_sharp}

    def text(self, place: BoxPlace) -> str:
        """What it is called there."""
        return self.at_opening if place in (BoxPlace.UNDER, BoxPlace.OVER) else self.on_a_wall

    def id_in(self, boxes: str, number: int) -> str:
        """Return the id of this side of a box, where those of its set begin with ``boxes``."""
        return f"{boxes}-{number}-{self.name.lower()}"

    @property
    def lies_along(self) -> bool:
        """Whether it lies along the wall, and does not stand."""
        return self in (BoxSide.TOP, BoxSide.BOTTOM)


def box_pieces(job: Job, room: Room, findings: Findings) -> Iterator[Piece]:
    """Yield the four sides of each box of a room, set by set and box by box from the left."""
    for boxes in room.boxes:
        # All boxes of a set are alike, so the sides of one stand for those of all.
        sides = {side: _side(job, room, boxes, side) for side in BoxSide}
        # Two mitres that cross leave no inner edge; a frame with one such side cannot be closed.
        if any(whole.vanishes for whole in sides.values()):
            findings.say("T122", boxes.span, part="a box's side", trim=boxes.trim)
            continue
        # Both mitres of a frame are found on each of its sides, so one side tells of all.
        part = f"frame of boxes on {boxes.run}"
        check_reach_of_part(sides[BoxSide.TOP], part, boxes.span, room.settings, findings)
        # Margins and boxes take turns from the left end; the last margin has no box behind it.
        at = NOTHING
        for number, margin in enumerate(boxes.margins[:-1], start=1):
            at += margin
            for side, whole in sides.items():
                yield _numbered(whole, boxes, side, number, at)
            at += boxes.wide


def _side(job: Job, room: Room, boxes: WallBoxes, side: BoxSide) -> Piece:
    settings = room.settings
    exact = boxes.wide if side.lies_along else boxes.tall
    # A box lies free on the wall, so no wall decides which way its sides are rounded.
    length, rounding = round_length(exact, RoundedAs.HEAD, settings)
    left, right = (_corner(job, room, boxes, side, end) for end in Side)
    return Piece(
        id=boxes.id_in(room.tag),
        kind=PieceKind.FRAME,
        room=room.name,
        run=boxes.run,
        trim=boxes.trim,
        length=length,
        wall=exact,
        left=left,
        right=right,
        rounding=rounding,
        note=boxes.note,
        unit=settings.unit,
    )


def _corner(job: Job, room: Room, boxes: WallBoxes, side: BoxSide, end: Side) -> Cut:
    # A corner of 90° - s or 90° + s; each side is mitred at 90° less half of it, (90° ± s) / 2.
    lean = boxes.slope if side.is_sharp[end] else -boxes.slope
    # The mitre runs across the face, which for a trim that stands on a wall is its height.
    across = job.trim(boxes.trim).height or NOTHING
    mitre = (RIGHT + lean) / 2
    return face_cut(BOX_CORNER, end, mitre, across, BOX_CORNER.row.long_point, room.settings)


def _numbered(piece: Piece, boxes: WallBoxes, side: BoxSide, number: int, at: Fraction) -> Piece:
    values = (("n", str(number)), ("all", str(boxes.count)), ("run", boxes.called))
    begins = (("at", SaidLength(at, piece.unit)), ("run", boxes.called))
    return replace(
        piece,
        id=side.id_in(piece.id, number),
        remarks=(Remark(side.text(boxes.place), values), Remark(_AT[boxes.place], begins)),
    )
