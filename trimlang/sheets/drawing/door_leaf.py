"""Draws how a door opens on a floor plan: its leaf at a right angle, and the arc of its swing."""

from __future__ import annotations

from itertools import pairwise
from math import cos, pi, radians, sin

from trimlang.record import record
from trimlang.sheets.drawing.plan_scale import DrawnLine, DrawnWall, Paper, fixed, inward, line
from trimlang.sheets.drawing.polygons import Point
from trimlang.survey.job import Gap
from trimlang.survey.on_walls import DoorSwing


@record
class DoorLeaf:
    """A leaf and its arc as the ``d`` of one path (mm), and the lines that names keep off."""

    path: str
    strokes: tuple[DrawnLine, ...]


@record
class Door:
    """A door in its place (inches): its hinges, where it shuts against, and which way it opens."""

    hinge: Point
    shut: Point
    way: Point

    @classmethod
    def of(cls, wall: DrawnWall) -> Door | None:
        """Return the door in a stretch of wall; None without a side that it is hinged on."""
        stretch = wall.stretch
        if not isinstance(stretch, Gap) or stretch.swing is None:
            return None
        return cls.hung(wall, stretch, stretch.swing)

    @classmethod
    def hung(cls, wall: DrawnWall, gap: Gap, swing: DoorSwing) -> Door:
        """Return the door of an opening; ``wall`` is the opening in its place."""
        # Walls are walked to the right as one faces them: the left jamb is where one begins.
        along = (cos(radians(wall.heading)), sin(radians(wall.heading)))
        wide = float(gap.width)
        # A casing takes up wall beside the clear width, which is what the leaf closes.
        beside = (float(gap.taken_up or gap.width) - wide) / 2
        left = (wall.start[0] + along[0] * beside, wall.start[1] + along[1] * beside)
        right = (left[0] + along[0] * wide, left[1] + along[1] * wide)
        (x, y), out = inward(wall), -wide if swing.outwards else wide
        return cls(swing.hinge.of(left, right), swing.hinge.of(right, left), (x * out, y * out))

    def opened(self, part: float) -> Point:
        """Return where the leaf's free edge is: 0 shut, 1 at a right angle to the wall."""
        turn = part * pi / 2
        (hx, hy), (sx, sy) = self.hinge, self.shut
        return (
            hx + (sx - hx) * cos(turn) + self.way[0] * sin(turn),
            hy + (sy - hy) * cos(turn) + self.way[1] * sin(turn),
        )

    def drawn(self, paper: Paper) -> DoorLeaf:
        """Return the leaf, open at a right angle, and its arc on paper."""
        # The arc itself is drawn as one curve; these points stand for it where names look for room.
        hinge, points = paper.at(self.hinge), [paper.at(self.opened(n / 3)) for n in range(4)]
        (hx, hy), (ox, oy), (sx, sy) = hinge, points[-1], points[0]
        leaf, jamb = (ox - hx, oy - hy), (sx - hx, sy - hy)
        # With y downwards an arc sweeps on where from leaf to jamb one turns right.
        sweep = int(leaf[0] * jamb[1] > leaf[1] * jamb[0])
        size = fixed((jamb[0] ** 2 + jamb[1] ** 2) ** 0.5)
        return DoorLeaf(
            f"M{fixed(hx)} {fixed(hy)}L{fixed(ox)} {fixed(oy)}"
            f"A{size} {size} 0 0 {sweep} {fixed(sx)} {fixed(sy)}",
            (
                line("leaf", hinge, points[-1]),
                *(line("leaf", *pair) for pair in pairwise(points)),
            ),
        )
