"""The arrows of a floor plan: where the walk begins, and the entrance."""

from __future__ import annotations

from math import cos, radians, sin

from trimlang.sheets.drawing.plan_scale import DrawnWall, fixed, inward
from trimlang.sheets.drawing.polygons import Point


def walk_arrow(wall: DrawnWall, one: Point) -> str:
    """Return a slim arrow head inside the first wall, the way the walls are walked."""
    way = inward(wall)
    along = (cos(radians(wall.heading)), sin(radians(wall.heading)))
    x, y = one[0] + along[0] * 3 + way[0] * 2.6, one[1] + along[1] * 3 + way[1] * 2.6
    points = [
        (x + along[0] * 6, y + along[1] * 6),
        (x + way[0] * 0.9, y + way[1] * 0.9),
        (x - way[0] * 0.9, y - way[1] * 0.9),
    ]
    return " ".join(f"{fixed(px)},{fixed(py)}" for px, py in points)


def entrance_arrow(wall: DrawnWall, one: Point, other: Point) -> str:
    """Return a solid arrow head, as a polygon, that points into the room at its entrance."""
    way = inward(wall)
    along = (cos(radians(wall.heading)), sin(radians(wall.heading)))
    x, y = (one[0] + other[0]) / 2, (one[1] + other[1]) / 2
    tip = (x + way[0] * 0.5, y + way[1] * 0.5)
    foot = (x - way[0] * 3.5, y - way[1] * 3.5)
    points = [
        tip,
        (foot[0] + along[0] * 1.8, foot[1] + along[1] * 1.8),
        (foot[0] - along[0] * 1.8, foot[1] - along[1] * 1.8),
    ]
    return " ".join(f"{fixed(px)},{fixed(py)}" for px, py in points)


def middle_of(points: str) -> Point:
    """Return the middle of a polygon that is written as ``x,y x,y``."""
    pairs = [point.split(",") for point in points.split()]
    return (
        sum(float(x) for x, _ in pairs) / len(pairs),
        sum(float(y) for _, y in pairs) / len(pairs),
    )
