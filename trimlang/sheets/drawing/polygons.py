"""Rooms as polygons: which lie over each other, and where a floor is widest."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from math import hypot
from typing import Final

GRID: Final = 12
"""How finely a room is searched for the middle of its floor."""
Point = tuple[float, float]
Shape = tuple[Point, ...]


def overlap(one: Shape, other: Shape) -> bool:
    """Whether two rooms lie over each other."""
    if any(
        max(p[axis] for p in one) <= min(p[axis] for p in other)
        or max(p[axis] for p in other) <= min(p[axis] for p in one)
        for axis in (0, 1)
    ):
        return False
    if any(inside(point, other) for point in _sample(one)):
        return True
    if any(inside(point, one) for point in _sample(other)):
        return True
    return any(cross(*a, *b) for a in sides(one) for b in sides(other))


def boxes_overlap(one: Shape, other: Shape) -> bool:
    """Whether two rectangles, turned or not, lie over each other; to touch is not to overlap.

    Where a line can be laid between two convex shapes, one along a side of theirs will do.
    """
    return not any(_apart(one, other, *side) for shape in (one, other) for side in sides(shape))


def _apart(one: Shape, other: Shape, a: Point, b: Point) -> bool:
    """Whether two shapes lie on either side of a line in the direction from ``a`` to ``b``."""
    across, down = a[1] - b[1], b[0] - a[0]
    ones = [across * x + down * y for x, y in one]
    others = [across * x + down * y for x, y in other]
    return max(ones) <= min(others) or max(others) <= min(ones)


def _sample(shape: Shape) -> Iterator[Point]:
    """A room's corners, the middles of its sides, and the middle of its floor."""
    yield from shape
    yield from (middle(a, b) for a, b in sides(shape))
    yield roomiest(shape)


def sides(shape: Shape) -> list[tuple[Point, Point]]:
    """A shape's sides, round to the first corner again."""
    return list(zip(shape, (*shape[1:], shape[0]), strict=True))


def inside(point: Point, shape: Shape) -> bool:
    """Whether a point lies in a shape."""
    x, y = point
    found = False
    for (ax, ay), (bx, by) in sides(shape):
        if (ay > y) != (by > y) and x < ax + (bx - ax) * (y - ay) / (by - ay):
            found = not found
    return found


def cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Whether two lines cross, ends apart."""

    def side(p: Point, q: Point, r: Point) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return side(a, b, c) * side(a, b, d) < 0 and side(c, d, a) * side(c, d, b) < 0


def reach(point: Point, shape: Shape) -> float:
    """How far it is from a place on the floor to the nearest wall on the left or right."""
    x, y = point
    return min(
        (
            abs(ax + (bx - ax) * (y - ay) / (by - ay) - x)
            for (ax, ay), (bx, by) in sides(shape)
            if (ay > y) != (by > y)
        ),
        default=0.0,
    )


@lru_cache(maxsize=256)
def roomiest(shape: Shape) -> Point:
    """The place on the floor furthest from every wall."""
    left, top = min(x for x, _ in shape), min(y for _, y in shape)
    wide, tall = max(x for x, _ in shape) - left, max(y for _, y in shape) - top
    places = [
        (left + wide * (column + 0.5) / GRID, top + tall * (row + 0.5) / GRID)
        for row in range(GRID)
        for column in range(GRID)
    ]
    free = [
        (round(min(distance(place, *side) for side in sides(shape)), 6), -number)
        for number, place in enumerate(places)
        if inside(place, shape)
    ]
    if not free:
        return middle(shape[0], shape[len(shape) // 2])
    return places[-max(free)[1]]


def distance(point: Point, a: Point, b: Point) -> float:
    """How far a point is from a line between two others."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    size = dx * dx + dy * dy
    along = ((point[0] - a[0]) * dx + (point[1] - a[1]) * dy) / size if size else 0.0
    along = min(max(along, 0.0), 1.0)
    return far(point, (a[0] + along * dx, a[1] + along * dy))


def far(a: Point, b: Point) -> float:
    """How far two points are apart."""
    return hypot(a[0] - b[0], a[1] - b[1])


def middle(a: Point, b: Point) -> Point:
    """The point half way."""
    return ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
