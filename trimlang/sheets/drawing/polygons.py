"""Rooms as polygons: which overlap, and where a floor is widest."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import lru_cache
from math import hypot
from typing import Final

GRID: Final = 12
"""The middle of a floor is sought among this many times this many points."""
Point = tuple[float, float]
Shape = tuple[Point, ...]


def overlap(one: Shape, other: Shape) -> bool:
    """Return whether two rooms overlap."""
    if _beside_or_above(one, other):
        return False
    if any(inside(point, other) for point in _sample(one)):
        return True
    if any(inside(point, one) for point in _sample(other)):
        return True
    return any(cross(*a, *b) for a in sides(one) for b in sides(other))


class TakenPlaces:
    """Rectangles, turned or not, on which no other may lie."""

    def __init__(self, shapes: Iterable[Shape]) -> None:
        # With how far each reaches: most are far apart, and that is seen without their corners.
        self._shapes = [(*_reaches(shape), shape) for shape in shapes]

    def take(self, shape: Shape) -> None:
        """Add a rectangle."""
        self._shapes.append((*_reaches(shape), shape))

    def leave_free(self, box: Shape) -> bool:
        """Return whether a rectangle overlaps none of them; touching does not count.

        If any line separates two convex shapes, one parallel to a side of theirs does too.
        """
        left, top, right, bottom = _reaches(box)
        near = [
            other
            for its_left, its_top, its_right, its_bottom, other in self._shapes
            if its_left < right and left < its_right and its_top < bottom and top < its_bottom
        ]
        # The other two sides of a rectangle are parallel to the first two.
        own = sides(box)[:2] if near else []
        return all(
            any(_apart(box, other, *side) for side in (*own, *sides(other)[:2])) for other in near
        )


def _reaches(shape: Shape) -> tuple[float, float, float, float]:
    """Return how far a shape reaches: left, top, right, bottom."""
    across, down = zip(*shape, strict=True)
    return min(across), min(down), max(across), max(down)


def _beside_or_above(one: Shape, other: Shape) -> bool:
    """Return whether an upright or a level line separates two shapes."""
    left, top, right, bottom = _reaches(one)
    its_left, its_top, its_right, its_bottom = _reaches(other)
    return right <= its_left or its_right <= left or bottom <= its_top or its_bottom <= top


def _apart(one: Shape, other: Shape, a: Point, b: Point) -> bool:
    """Return whether a line parallel to ``a`` to ``b`` separates two shapes."""
    across, down = a[1] - b[1], b[0] - a[0]
    ones = [across * x + down * y for x, y in one]
    others = [across * x + down * y for x, y in other]
    return max(ones) <= min(others) or max(others) <= min(ones)


def _sample(shape: Shape) -> Iterator[Point]:
    """Yield a room's corners, the middles of its sides, and the middle of its floor."""
    yield from shape
    yield from (middle(a, b) for a, b in sides(shape))
    yield roomiest(shape)


def sides(shape: Shape) -> list[tuple[Point, Point]]:
    """Return a shape's sides, back to the first corner."""
    return list(zip(shape, (*shape[1:], shape[0]), strict=True))


def inside(point: Point, shape: Shape) -> bool:
    """Return whether a point lies in a shape."""
    # A ray to the right from inside crosses the sides an odd number of times.
    (x, y), (ax, ay) = point, shape[-1]
    found = False
    for bx, by in shape:
        if (ay > y) != (by > y) and x < ax + (bx - ax) * (y - ay) / (by - ay):
            found = not found
        ax, ay = bx, by
    return found


def cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Return whether two segments cross; touching with an end does not count."""

    # The sign says on which side of the line from p to q the point r lies.
    def side(p: Point, q: Point, r: Point) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return side(a, b, c) * side(a, b, d) < 0 and side(c, d, a) * side(c, d, b) < 0


def reach(point: Point, shape: Shape) -> float:
    """Return how far the nearest wall is to the left or right of a place on the floor."""
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
    """Return the place on the floor that is furthest from every wall, among the grid's points."""
    left, top = min(x for x, _ in shape), min(y for _, y in shape)
    wide, tall = max(x for x, _ in shape) - left, max(y for _, y in shape) - top
    places = [
        (left + wide * (column + 0.5) / GRID, top + tall * (row + 0.5) / GRID)
        for row in range(GRID)
        for column in range(GRID)
    ]
    walls, best, widest = sides(shape), middle(shape[0], shape[len(shape) // 2]), -1.0
    for place in places:
        # One that is as near to some wall is no better; most are, and few walls show it.
        if inside(place, shape) and not any(distance(place, *wall) <= widest for wall in walls):
            nearest = round(min(distance(place, *wall) for wall in walls), 6)
            if nearest > widest:
                best, widest = place, nearest
    return best


def distance(point: Point, a: Point, b: Point) -> float:
    """Return how far a point is from the segment between two others."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    size = dx * dx + dy * dy
    along = ((point[0] - a[0]) * dx + (point[1] - a[1]) * dy) / size if size else 0.0
    # Beyond an end of the segment that end is nearest.
    along = min(max(along, 0.0), 1.0)
    return far(point, (a[0] + along * dx, a[1] + along * dy))


def far(a: Point, b: Point) -> float:
    """Return how far apart two points are."""
    return hypot(a[0] - b[0], a[1] - b[1])


def middle(a: Point, b: Point) -> Point:
    """Return the point half way between two others."""
    return ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
