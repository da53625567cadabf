"""Boxes that lie over each other, held against shapely."""

from __future__ import annotations

from math import cos, radians, sin

from hypothesis import assume, given
from hypothesis import strategies as st
from shapely.geometry import Polygon

from trimlang.sheets.drawing.polygons import Shape, TakenPlaces

places = st.integers(-20, 20)
sizes = st.integers(1, 25)


def overlap(one: Shape, other: Shape) -> bool:
    return not TakenPlaces([one]).leave_free(other)


@st.composite
def boxes(draw: st.DrawFn) -> Shape:
    x, y, wide, tall = draw(places), draw(places), draw(sizes), draw(sizes)
    turn = radians(draw(st.sampled_from((0, 30, 45, 90, 117))))
    return tuple(
        (x + dx * cos(turn) - dy * sin(turn), y + dx * sin(turn) + dy * cos(turn))
        for dx, dy in ((0, 0), (wide, 0), (wide, tall), (0, tall))
    )


@given(boxes(), boxes())
def test_boxes_overlap_as_shapely_finds(one: Shape, other: Shape) -> None:
    shared = Polygon(one).intersection(Polygon(other)).area
    assume(not 0 < shared < 1e-6)
    apart = Polygon(one).distance(Polygon(other))
    assume(shared or apart == 0 or apart > 1e-6)
    assume(shared or apart or not _touch_askew(one, other))
    assert overlap(one, other) == (shared > 0)
    assert overlap(other, one) == (shared > 0)


def _touch_askew(one: Shape, other: Shape) -> bool:
    """Turned corners are not whole numbers: whether such boxes touch is a matter of rounding."""
    return any(x != int(x) or y != int(y) for x, y in (*one, *other))


def test_boxes_that_touch_do_not_overlap() -> None:
    left: Shape = ((0, 0), (4, 0), (4, 3), (0, 3))
    right: Shape = ((4, 0), (9, 0), (9, 3), (4, 3))
    assert not overlap(left, right)
    assert overlap(left, tuple((x - 0.25, y) for x, y in right))
