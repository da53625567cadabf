"""The lines of an elevation: pieces, openings and blocks, the floor with its steps, the ceiling.

Pieces are white inside, so that what lies before another hides it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import pairwise
from typing import Final

from trimlang.joinery.openings_in_place import OpeningInPlace
from trimlang.joinery.piece import PieceKind
from trimlang.joinery.piece_in_place import PieceInPlace, Upon
from trimlang.joinery.runs_in_place import ceiling_above
from trimlang.joinery.wall_faces import WallFace
from trimlang.language.facts import Side
from trimlang.language.tree import GapKind
from trimlang.lengths.angles import cosine
from trimlang.record import record
from trimlang.sheets.drawing.elevation_paper import ElevationPaper
from trimlang.sheets.drawing.plan_scale import DrawnLine, fixed, line
from trimlang.sheets.drawing.polygons import Point
from trimlang.survey.job import Job, Run, Stretch
from trimlang.survey.over_openings import beyond
from trimlang.survey.straight_walls import Spot

LEAST_RISE: Final = 4
"""Inches; a pitch told with a lower rise is a ramp's (common practice, no source)."""
LEAST_COVER: Final = 0.5
"""Inches of a skirt above the noses of its steps; with less the trim stands on them."""
ZIGZAG: Final = ((-2.4, 0.0), (-0.8, -1.8), (0.8, 1.8), (2.4, 0.0))
"""The middle of a break line (mm)."""
MOST_BARE: Final = 40.0
"""Inches that bare wall is drawn up from the floor: a newel, cabinets, a radiator."""
Stroke = tuple[Point, ...]


@record
class Layer:
    """Lines of one look, as the ``d`` of a path (mm)."""

    look: str
    path: str


@record
class ElevationLines:
    """The layers of a drawing from behind to before, and the strokes that names keep off."""

    layers: tuple[Layer, ...]
    strokes: tuple[DrawnLine, ...]


def elevation_lines(job: Job, face: WallFace, paper: ElevationPaper) -> ElevationLines:
    """Return the lines of a wall."""
    # What is drawn later covers what is below it, as paint does: the wall's edges and openings come
    # first, then the pieces from the wall outwards, and last the lines that nothing may hide.
    drawn: list[tuple[str, list[Stroke]]] = [
        ("edge", list(_edges(face, paper))),
        ("opening", [_clear(one, paper) for one in face.openings if one.high is not None]),
        ("unmeasured", [side for one in face.openings for side in _open_sides(one, face, paper)]),
    ]
    # A shoe stands before its base and a backband before its casing. All pieces of one depth are
    # outlined before their seams, so that no neighbour's white covers a seam.
    depths = {one.piece.id: _depth(job, one) for one in face.pieces}
    for depth in sorted(set(depths.values())):
        pieces = [one for one in face.pieces if depths[one.piece.id] == depth]
        outlines = [_closed(paper.of(one, spot) for spot in one.outline) for one in pieces]
        seams = [tuple(paper.of(one, at) for at in seam) for one in pieces for seam in one.seams]
        drawn += [("piece", outlines), ("seam", seams)]
    drawn += [
        ("piece", [_block(paper, *pair) for pair in face.blocks]),
        ("steps", list(_steps(job, face, paper))),
        ("floor", list(_floor(job, face, paper))),
        ("ceiling", list(_ceiling(face, paper))),
        ("break", list(_broken(face, paper))),
    ]
    visible = [(look, strokes) for look, strokes in drawn if strokes]
    return ElevationLines(
        layers=tuple(Layer(look=look, path=path_of(strokes)) for look, strokes in visible),
        strokes=tuple(
            line(look, *pair) for look, found in visible for one in found for pair in pairwise(one)
        ),
    )


def path_of(strokes: Iterable[Stroke]) -> str:
    """Return strokes as the ``d`` of one path; those that end where they began are closed."""
    parts: list[str] = []
    for stroke in strokes:
        # Closed by SVG itself and not by a last line, so that the first corner is a true corner
        # too.
        shut = len(stroke) > 2 and stroke[0] == stroke[-1]
        points = stroke[:-1] if shut else stroke
        parts.append("M" + "L".join(f"{fixed(x)} {fixed(y)}" for x, y in points) + "Z" * shut)
    return "".join(parts)


def _closed(points: Iterable[Point]) -> Stroke:
    found = tuple(points)
    return (*found, found[0])


def _depth(job: Job, one: PieceInPlace) -> int:
    """Return how many layers of trim a piece lies before; strips in a jamb are behind all."""
    # They line the opening within the wall, so a casing that overlaps their edge hides it.
    if one.piece.kind is PieceKind.JAMB:
        return -1
    depth, trim = 0, job.trim(one.piece.trim)
    while trim.in_front_of is not None:
        depth, trim = depth + 1, job.trim(trim.in_front_of)
    return depth


def _edges(face: WallFace, paper: ElevationPaper) -> Iterator[Stroke]:
    """Yield the upright edges of a wall, where it ends at a corner; broken where all is broken."""
    begins = face.wall.begins
    for side, floor in ((Side.LEFT, begins[0]), (Side.RIGHT, begins[-1])):
        if not _ends_at_a_corner(face, side):
            continue
        x, high = float(floor.x), float(paper.top)
        if paper.broken_at is None or paper.ceiling is None:
            yield paper.at(floor), paper.point(x, high)
            continue
        # Millimetres on paper turned into inches on the wall: the gap looks alike at every scale.
        gap = 1.2 / paper.factor
        yield paper.at(floor), paper.point(x, paper.broken_at - gap)
        place = side.of(face.wall.places[0], None)
        risen = ceiling_above(face.room, face.wall, place)
        yield paper.point(x, paper.broken_at + gap), paper.point(x, paper.ceiling + float(risen))


def _ends_at_a_corner(face: WallFace, side: Side) -> bool:
    """Tell whether a wall's last stretch on a side, or the one round the corner, says so."""
    room, last = face.room, side.of(face.wall.places[0], face.wall.places[-1])
    beside = next(beyond(room, last, side.step), None)
    # A corner is often written at one of its two walls only, and it is a corner for both.
    ends = [side.of(room.walk[last].left, room.walk[last].right)]
    if beside is not None:
        ends.append(side.of(room.walk[beside].right, room.walk[beside].left))
    return any(end is not None and end.joint.is_corner for end in ends)


def _clear(opening: OpeningInPlace, paper: ElevationPaper) -> Stroke:
    """Return the clear opening as a rectangle."""
    assert opening.high is not None  # noqa: S101  only such are asked for
    low = Spot(x=opening.left, y=opening.low)
    return _block(paper, low, Spot(x=opening.right, y=opening.high))


def _block(paper: ElevationPaper, low: Spot, high: Spot) -> Stroke:
    corners = ((low.x, low.y), (high.x, low.y), (high.x, high.y), (low.x, high.y))
    return _closed(paper.at(Spot(x=x, y=y)) for x, y in corners)


def span_of(opening: OpeningInPlace, face: WallFace, paper: ElevationPaper) -> tuple[float, float]:
    """Return from where to where an opening is drawn upwards (inches).

    Where nobody wrote how high it is, that is up to the break; a beam's is down to that.
    """
    low = float(opening.low)
    if opening.high is not None:
        return low, float(opening.high)
    # A block in the wall is as high as its own line says.
    if opening.blocks:
        return low, float(opening.blocks[0][1].y)
    if paper.broken_at is not None and paper.ceiling is not None and _is_beam(opening, face):
        risen = ceiling_above(face.room, face.wall, opening.place)
        # A beam hangs from the ceiling, so what is sure of it is above the break line.
        return paper.broken_at, paper.ceiling + float(risen)
    top = paper.top if paper.broken_at is None else paper.broken_at
    # A radiator or a cabinet drawn up to the ceiling would look like a door.
    return low, min(top, low + MOST_BARE) if opening.gap.kind is GapKind.BARE else top


def _open_sides(opening: OpeningInPlace, face: WallFace, paper: ElevationPaper) -> Iterator[Stroke]:
    """Yield the sides of what nobody wrote the height of."""
    if opening.high is None and not opening.blocks:
        low, high = span_of(opening, face, paper)
        for x in (float(opening.left), float(opening.right)):
            yield paper.point(x, low), paper.point(x, high)


def _is_beam(opening: OpeningInPlace, face: WallFace) -> bool:
    """Tell a beam: trim on the floor goes on below it, and what hangs does not."""

    def over(upon: Upon) -> bool:
        return any(
            one.upon is upon and one.outline[0].x < opening.middle < one.outline[1].x
            for one in face.runs
        )

    # Below a beam the base goes on and the crown must go round or stop; a door stops the base, and
    # a window has a sill.
    return opening.gap.sill is None and over(Upon.FLOOR) and not over(Upon.CEILING)


def _floor(job: Job, face: WallFace, paper: ElevationPaper) -> Iterator[Stroke]:
    """Yield the line of the floor, but for what a cap lies on."""
    stroke: list[Point] = []
    for place, begin, end in zip(
        face.wall.places, face.wall.begins, face.wall.begins[1:], strict=False
    ):
        if _carries_a_cap(job, face.room.walk[place]):
            yield from [tuple(stroke)] if stroke else []
            stroke = []
        else:
            stroke = [*(stroke or [paper.at(begin)]), paper.at(end)]
    yield from [tuple(stroke)] if stroke else []


def _carries_a_cap(job: Job, stretch: Stretch) -> bool:
    """Tell whether a run's trim lies on its broad side: a balustrade's cap, no skirt."""
    # No setting says what a cap is: a moulding that lies flat is deeper than it is high.
    if not isinstance(stretch, Run) or not stretch.trims:
        return False
    trim = job.trim(stretch.trims[0])
    return trim.spring is None and (trim.thickness or 0) > (trim.height or 0) > 0


def _steps(job: Job, face: WallFace, paper: ElevationPaper) -> Iterator[Stroke]:
    """Yield the treads and risers along what climbs, as far as the file tells them.

    A skirt reaches down to their inner corners; lower trim stands on their noses.  What is sawn
    to the steps shows them itself.
    """
    begins = face.wall.begins
    for place, begin, end in zip(face.wall.places, begins, begins[1:], strict=False):
        stretch = face.room.walk[place]
        if not _has_steps(stretch) or _carries_a_cap(job, stretch):
            continue
        assert isinstance(stretch, Run)  # noqa: S101  _has_steps says so
        steps = stretch.stair.steps
        assert steps is not None  # noqa: S101
        # Steps are drawn from the lower end, where the first riser stands, whichever way the wall
        # is walked.
        low, high = (begin, end) if stretch.slope > 0 else (end, begin)
        way = 1 if stretch.slope > 0 else -1
        covered = steps.rise * cosine(stretch.slope) + LEAST_COVER
        tall = max((job.trim(name).height or 0 for name in stretch.trims), default=0)
        x, y = low.x, low.y
        points = [Spot(x=x, y=y)]
        # What is left over at the top is less than a whole tread, and is not drawn as one.
        while (high.x - x) * way >= steps.run:
            if tall >= covered:
                points.append(Spot(x=x, y=y + steps.rise))
            x, y = x + way * steps.run, y + steps.rise
            points.append(Spot(x=x, y=y if tall >= covered else y - steps.rise))
            if tall < covered:
                points.append(Spot(x=x, y=y))
        yield tuple(paper.at(spot) for spot in points)


def _has_steps(stretch: Stretch) -> bool:
    if not isinstance(stretch, Run) or stretch.stair.steps is None or stretch.stair.open_side:
        return False
    return stretch.stair.steps.rise >= LEAST_RISE


def _ceiling(face: WallFace, paper: ElevationPaper) -> Iterator[Stroke]:
    if paper.ceiling is None:
        return
    places: tuple[int | None, ...] = (*face.wall.places, None)
    yield tuple(
        paper.point(
            float(begin.x), paper.ceiling + float(ceiling_above(face.room, face.wall, place))
        )
        for place, begin in zip(places, face.wall.begins, strict=True)
    )


def _broken(face: WallFace, paper: ElevationPaper) -> Iterator[Stroke]:
    """Yield the break line between what stands on the floor and what hangs below the ceiling."""
    if paper.broken_at is None:
        return
    (left, y), (right, _) = (paper.point(x, paper.broken_at) for x in (0, float(face.wall.long)))
    middle = (left + right) / 2
    yield (
        (left, y),
        *((middle + x, y + down) for x, down in ZIGZAG if right - left > 8),
        (right, y),
    )
