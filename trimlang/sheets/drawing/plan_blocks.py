"""Draws blocks on a floor plan: at openings, in corners, and in a wall between two trims."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import cos, dist, radians, sin
from typing import Final

from trimlang.language.facts import Side
from trimlang.lengths.tape import NOTHING
from trimlang.sheets.drawing.plan_scale import DrawnLine, DrawnWall, Paper, inward, line
from trimlang.survey.job import Gap

_PLINTH: Final = ("block", 0.9)
_CORNER: Final = ("block-over", 2.2)
_ENDS_TRIM: Final = ("block-wall", 0.9)
"""How a block's line looks, and how far into the room it is drawn (mm), clear of its wall's."""


def corner_lines(paper: Paper, wall: DrawnWall) -> Iterator[DrawnLine]:
    """Yield a line for the part of a wall that is covered by a block in a corner at either end."""
    stretch, long = wall.stretch, dist(wall.start, wall.end)
    for side in Side:
        end = side.of(stretch.left, stretch.right)
        if end is not None and end.block is not None:
            covered = float(end.block.takes_up(outside=end.joint.is_outside))
            at = side.of((0.0, covered), (long - covered, long))
            look, off = _ENDS_TRIM
            yield line(look, *(_beside(paper, wall, one, off) for one in at))


def block_lines(
    paper: Paper, wall: DrawnWall, gap: Gap, casing: Fraction, reveal: Fraction
) -> Iterator[DrawnLine]:
    """Yield a thick line for each block at an opening, and for one that is the gap, to scale.

    ``casing`` is how wide its legs are, ``reveal`` how far they stand back (inches).
    """
    # Where the casing's inner edge is, from either end of what opening and casing take up.
    # What opening and casing take up is alike at both jambs, so the half of what is over lies at
    # each.
    inner = (gap.along - gap.width) / 2 - reveal
    spans: list[tuple[tuple[str, float], Fraction, Fraction]] = []
    if gap.trimmings.plinth is not None:
        spans.append((_PLINTH, inner - gap.trimmings.plinth.wide, inner))
    if gap.trimmings.corner_block is not None:
        # A corner block stands over the middle of the casing, however much wider it is.
        half, middle = gap.trimmings.corner_block.wide / 2, inner - casing / 2
        spans.append((_CORNER, middle - half, middle + half))
    if gap.trimmings.transition is not None:
        look, off = _ENDS_TRIM
        yield line(look, *(_beside(paper, wall, float(at), off) for at in (NOTHING, gap.along)))
    for (look, off), first, last in spans:
        for one, other in ((first, last), (gap.along - last, gap.along - first)):
            yield line(look, *(_beside(paper, wall, float(at), off) for at in (one, other)))


def _beside(paper: Paper, wall: DrawnWall, at: float, off: float) -> tuple[float, float]:
    """Return the place on paper ``at`` inches along a wall and ``off`` millimetres inside it."""
    along, way = (cos(radians(wall.heading)), sin(radians(wall.heading))), inward(wall)
    x, y = paper.at((wall.start[0] + along[0] * at, wall.start[1] + along[1] * at))
    return x + way[0] * off, y + way[1] * off
