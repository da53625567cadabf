"""The paper of elevations: their one scale, and where floor, ceiling and what hangs are drawn.

Nobody writes down how high a ceiling is.  What hangs below it is drawn above a break line, just
clear of what stands on the floor.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Final

from trimlang.joinery.piece_in_place import PieceInPlace, Upon
from trimlang.joinery.wall_faces import WallFace
from trimlang.lengths.tape import Unit
from trimlang.record import record
from trimlang.sheets.drawing.plan_scale import MM_PER_INCH, SCALES
from trimlang.sheets.drawing.polygons import Point
from trimlang.survey.straight_walls import Spot

# Millimetres on the paper, which lies on its side: Letter and A4 both have as much.
WIDE: Final = 252.0
TALL: Final = 132.0
MARGIN: Final = 5.0
ABOVE: Final = 6.0
"""What is left over the highest thing for its name (mm)."""
LEAST_SEEN: Final = 5
"""How much of an opening is seen at least of which nobody wrote how high it is (inches)."""
BREAK: Final = 15.0
"""What is left between what stands and what hangs, for two names and a break line (mm)."""


@record
class ElevationPaper:
    """Turns inches on a wall into millimetres on its drawing, y downwards.

    ``ceiling`` is how high the ceiling at the wall's left end is drawn, and ``broken_at`` where
    the break line is (inches); None where nothing hangs.  ``margin`` is free at both sides (mm).
    """

    factor: float
    margin: float
    left: float
    top: float
    wide: float
    tall: float
    ceiling: float | None
    broken_at: float | None

    def at(self, spot: Spot) -> Point:
        """Return the place on paper of a place on the wall."""
        return self.point(float(spot.x), float(spot.y))

    def point(self, x: float, y: float) -> Point:
        """Return the place on paper of inches along and up the wall."""
        return (x - self.left) * self.factor + self.margin, (self.top - y) * self.factor + ABOVE

    def of(self, piece: PieceInPlace, spot: Spot) -> Point:
        """Return the place on paper of a place on a piece, which may hang."""
        hung = self.ceiling if piece.upon is Upon.CEILING and self.ceiling is not None else 0.0
        return self.point(float(spot.x), float(spot.y) + hung)


def common_scale(faces: Sequence[WallFace], unit: Unit) -> int:
    """Return n of the largest usual scale 1 : n at which every wall fits on a page."""
    # One scale for all walls: a reader compares them, and a piece must not look longer on one page
    # than on another.
    for scale in SCALES[unit]:
        papers = [paper_of(face, scale) for face in faces]
        if all(one.wide <= WIDE and one.tall <= TALL for one in papers):
            return scale
    # Larger than any house: as small as it must be.
    scale = SCALES[unit][-1]
    while any(_too_large(paper_of(face, scale)) for face in faces):
        scale *= 2
    return scale


def _too_large(paper: ElevationPaper) -> bool:
    return paper.wide > WIDE or paper.tall > TALL


def paper_of(face: WallFace, scale: int, least: float = 0.0) -> ElevationPaper:
    """Return the paper for a wall at 1 : ``scale``, no less than ``least`` mm wide."""
    factor = MM_PER_INCH / scale
    standing = [spot for one in face.pieces if one.upon is not Upon.CEILING for spot in one.outline]
    hanging = [spot for one in face.pieces if one.upon is Upon.CEILING for spot in one.outline]
    blocks = [spot for pair in face.blocks for spot in pair]
    floors = face.wall.begins
    # An opening whose height nobody wrote may be of any height; the drawing leaves room for a hint
    # of it and claims no more.
    openings = [one.low + LEAST_SEEN if one.high is None else one.high for one in face.openings]
    heights = [spot.y for spot in (*standing, *blocks, *floors)] + openings
    high = float(max(heights, default=Fraction(0)))
    across = [float(spot.x) for spot in (*standing, *hanging, *blocks, *floors)]
    ceiling = broken = None
    top = high
    if hanging:
        lowest = float(min(spot.y for spot in hanging))
        # The lowest edge of what hangs comes to lie just above the break, whatever its height below
        # the ceiling; the true distance is not known.
        ceiling = high + BREAK / factor - lowest
        broken = high + BREAK / 2 / factor
        top = ceiling + float(max(spot.y for spot in hanging))
    left = min(across)
    drawn = (max(across) - left) * factor
    wide = max(drawn + 2 * MARGIN, least)
    return ElevationPaper(
        factor=factor,
        margin=(wide - drawn) / 2,
        left=left,
        top=top,
        wide=wide,
        tall=top * factor + ABOVE,
        ceiling=ceiling,
        broken_at=broken,
    )
