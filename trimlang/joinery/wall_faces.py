"""Every wall of a room with all that is nailed to it, where it is, as one sees it from the room.

A job file does not say how high a ceiling is, nor how high a rail and boxes are.  What hangs below
the ceiling is counted from that; rails and boxes are put where they usually are, and named.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.joinery.boxes import BoxSide
from trimlang.joinery.on_the_wall import floor_trim
from trimlang.joinery.openings_in_place import (
    USUAL_HEAD,
    OpeningInPlace,
    openings_in_place,
)
from trimlang.joinery.piece import Piece
from trimlang.joinery.piece_in_place import (
    UPRIGHT_LEFT,
    UPRIGHT_RIGHT,
    UPSIDE_DOWN,
    PieceInPlace,
    Upon,
    placed,
    seen_height,
)
from trimlang.joinery.runs_in_place import run_pieces_in_place
from trimlang.language.box_facts import BoxPlace
from trimlang.language.facts import Side
from trimlang.lengths.angles import cosine, sine
from trimlang.lengths.tape import NOTHING
from trimlang.record import record
from trimlang.survey.job import Job, Room, Run, Stretch
from trimlang.survey.on_walls import WallBoxes
from trimlang.survey.openings import in_an_id
from trimlang.survey.straight_walls import Spot, StraightWall, straight_walls

USUAL_RAIL: Final = Fraction(32)
"""Inches from the floor to a rail's lower edge (common practice, no source)."""
MOST_MARGIN: Final = Fraction(4)
"""Inches; boxes begin no further above what is below them (common practice, no source)."""


@record
class BoxesInPlace:
    """A set of boxes on its wall: where each one's lower left corner is, and its sides."""

    boxes: WallBoxes
    corners: tuple[Spot, ...]
    pieces: tuple[PieceInPlace, ...]


@record
class WallFace:
    """A wall of a room: its runs' pieces, its openings, its boxes, the blocks in its corners.

    Blocks are rectangles, by their lower left and upper right corner.  Inches.
    """

    room: Room
    wall: StraightWall
    runs: tuple[PieceInPlace, ...]
    openings: tuple[OpeningInPlace, ...]
    boxes: tuple[BoxesInPlace, ...]
    in_corners: tuple[tuple[Spot, Spot], ...] = ()

    @property
    def blocks(self) -> tuple[tuple[Spot, Spot], ...]:
        """All blocks on it: in its corners, at its openings, and those between two trims."""
        at_openings = (block for opening in self.openings for block in opening.blocks)
        return (*self.in_corners, *at_openings)

    @property
    def pieces(self) -> tuple[PieceInPlace, ...]:
        """All pieces on it, what lies over others last."""
        round_openings = (one for opening in self.openings for one in opening.pieces)
        in_boxes = (one for boxes in self.boxes for one in boxes.pieces)
        return (*self.runs, *round_openings, *in_boxes)

    @property
    def labels(self) -> tuple[str, ...]:
        """The labels of its runs, from the left."""
        stretches = (self.room.walk[place] for place in self.wall.places)
        return tuple(one.label for one in stretches if isinstance(one, Run))


def wall_faces(
    job: Job, room: Room, pieces: Mapping[str, Piece], shown: Callable[[Stretch], bool]
) -> tuple[WallFace, ...]:
    """Return the walls of a room, in the order of its walk, that have boxes or a stretch ``shown``.

    ``pieces`` are the job's, by id.
    """

    def is_shown(wall: StraightWall) -> bool:
        return any(shown(room.walk[place]) for place in wall.places)

    walls = straight_walls(room, job.trims)
    # On which wall boxes hang is not known before its openings are.
    if not room.boxes:
        walls = tuple(filter(is_shown, walls))
    runs = list(run_pieces_in_place(job, room, walls, pieces))
    floor = max(
        (seen_height(trim) for run in room.runs if (trim := floor_trim(job, run)) is not None),
        default=NOTHING,
    )
    # Rails are at one height round a room, or they would miss each other in its corners.
    rail = _rail_height(room, floor)
    found: list[WallFace] = []
    for wall in walls:
        own = [one for face, one in runs if face is wall]
        openings = tuple(openings_in_place(job, room, wall, pieces))
        on_it = [_lifted(one, rail) if one.upon is Upon.NOTHING_MEASURED else one for one in own]
        over = [one for one in on_it if one.upon is Upon.NOTHING_MEASURED]
        # A set above the rail begins over the rail's top edge, not over its middle.
        above = rail + max((one.across for one in over), default=NOTHING)
        boxes = tuple(_boxes_on(job, room, wall, openings, pieces, (floor, above)))
        if not boxes and not is_shown(wall):
            continue
        found.append(
            WallFace(
                room=room,
                wall=wall,
                runs=tuple(on_it),
                openings=openings,
                boxes=boxes,
                in_corners=tuple(_blocks_in_corners(job, room, wall)),
            )
        )
    return tuple(found)


def _blocks_in_corners(job: Job, room: Room, wall: StraightWall) -> Iterator[tuple[Spot, Spot]]:
    """Yield the blocks at a wall's two ends that stand on its floor.

    Nobody wrote how high one is that hangs.
    """
    for side in Side:
        stretch = room.walk[side.of(wall.places[0], wall.places[-1])]
        end = side.of(stretch.left, stretch.right)
        if end is None or end.block is None:
            continue
        if any(job.trim(name).hangs for name in end.block.stops or ()):
            continue
        outside, at = end.joint.is_outside, side.of(wall.begins[0], wall.begins[-1])
        # Round an outside corner its thickness lies past the wall's end.
        covered = end.block.takes_up(outside=outside)
        past = end.block.block.wide - covered
        left, right = side.of((-past, covered), (-covered, past))
        yield (
            Spot(x=at.x + left, y=at.y),
            Spot(x=at.x + right, y=at.y + end.block.block.tall),
        )


def _margin(boxes: WallBoxes) -> Fraction:
    return min(*boxes.margins, MOST_MARGIN)


def _rail_height(room: Room, floor: Fraction) -> Fraction:
    """Return how high a room's rails are drawn: over the lowest boxes of every wall."""
    # The first set on a wall is the lowest; one above it does not move the rail.
    lowest: dict[str, WallBoxes] = {}
    for boxes in room.boxes:
        if boxes.place in (BoxPlace.ON, BoxPlace.ALONG):
            lowest.setdefault(boxes.run, boxes)
    # One margin below the boxes and one above, as between the boxes.
    tops = [floor + boxes.tall + 2 * _margin(boxes) for boxes in lowest.values()]
    return max(tops, default=USUAL_RAIL)


def _lifted(one: PieceInPlace, by: Fraction) -> PieceInPlace:
    def up(spot: Spot) -> Spot:
        return Spot(x=spot.x, y=spot.y + by)

    return replace(
        one,
        outline=tuple(map(up, one.outline)),
        seams=tuple((up(a), up(b)) for a, b in one.seams),
        edge=(up(one.edge[0]), up(one.edge[1])),
    )


def _boxes_on(
    job: Job,
    room: Room,
    wall: StraightWall,
    openings: Sequence[OpeningInPlace],
    pieces: Mapping[str, Piece],
    heights: tuple[Fraction, Fraction],
) -> Iterator[BoxesInPlace]:
    """Yield the boxes of a wall; ``heights`` are those of the floor's trim and of a rail's top."""
    lowest, above = heights
    tops: dict[str, Fraction] = {}
    for boxes in room.boxes:
        # A set hangs on one wall alone, and this may be another.
        begins = _begins(boxes, room, wall, openings)
        if begins is None:
            continue
        begin, opening = begins
        margin = _margin(boxes)
        # Along a stair a trim is taller upright than across its face.
        floor = lowest / cosine(boxes.slope) if boxes.slope else lowest
        if boxes.place is BoxPlace.UNDER and opening is not None:
            # In the middle of what is left below the window.
            under, _ = _reach(opening)
            low = max((floor + under - boxes.tall) / 2, floor)
        elif boxes.place is BoxPlace.OVER and opening is not None:
            _, over = _reach(opening)
            low = over - begin.y + margin
        elif boxes.run in tops:
            # A further set on the same wall goes above the one before, and above the rail.
            low = max(tops[boxes.run], above) + margin
        else:
            low = floor + margin
        tops[boxes.run] = low + boxes.tall
        yield _laid_out(job, room, boxes, Spot(x=begin.x, y=begin.y + low), pieces)


def _reach(opening: OpeningInPlace) -> tuple[Fraction, Fraction]:
    """Return how low and how high an opening reaches with its casing, if it has one (inches)."""
    heights = [spot.y for one in opening.pieces for spot in one.outline]
    if not heights:
        return opening.low, opening.high or USUAL_HEAD
    return min(heights), max(heights)


def _begins(
    boxes: WallBoxes, room: Room, wall: StraightWall, openings: Sequence[OpeningInPlace]
) -> tuple[Spot, OpeningInPlace | None] | None:
    """Return where a set's wall begins, and the opening that it is at; None on another wall."""
    if boxes.place in (BoxPlace.ON, BoxPlace.ALONG):
        for place in wall.places:
            stretch = room.walk[place]
            if isinstance(stretch, Run) and stretch.label == boxes.run:
                return wall.begin_of(place), None
        return None
    for opening in openings:
        called = opening.gap.called
        # Boxes at an opening go by its name and the place that they have there.
        if called and boxes.run == f"{in_an_id(called)}-{boxes.place.name.lower()}":
            return opening.begins, opening
    return None


def _laid_out(
    job: Job, room: Room, boxes: WallBoxes, begin: Spot, pieces: Mapping[str, Piece]
) -> BoxesInPlace:
    trim, slope = job.trim(boxes.trim), boxes.slope
    along, up = cosine(slope), sine(slope)
    across = Spot(x=boxes.wide * along, y=boxes.wide * up)
    corners: list[Spot] = []
    sides: list[PieceInPlace] = []
    at = NOTHING
    for number, margin in enumerate(boxes.margins[:-1], start=1):
        at += margin
        low = Spot(x=begin.x + at * along, y=begin.y + at * up)
        corners.append(low)
        right = Spot(x=low.x + across.x, y=low.y + across.y)
        top = Spot(x=low.x, y=low.y + boxes.tall)
        # Each lies with its outer edge up as it is sawn, and is turned to where it hangs.
        for side, corner, turn in (
            (BoxSide.TOP, top, slope),
            (BoxSide.BOTTOM, right, slope + UPSIDE_DOWN),
            (BoxSide.LEFT, low, UPRIGHT_LEFT),
            (BoxSide.RIGHT, Spot(x=right.x, y=right.y + boxes.tall), UPRIGHT_RIGHT),
        ):
            piece = pieces.get(side.id_in(boxes.id_in(room.tag), number))
            # A side that could not be cut was reported before, and is left out of the picture.
            if piece is not None:
                sides.append(placed(piece, trim, corner, turn=turn, by_outer=True))
        at += boxes.wide
    return BoxesInPlace(boxes=boxes, corners=tuple(corners), pieces=tuple(sides))
