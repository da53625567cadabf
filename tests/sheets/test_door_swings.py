"""A door's leaf stands where the job says: at which jamb, on which side of the wall."""

from __future__ import annotations

import re
from io import StringIO
from math import dist

import pytest

from tests.jobs import WIDE_CASE
from tests.sheets.jobs import compiled
from trimlang.sheets.content.floor_plan import floor_plan
from trimlang.sheets.content.overview import house
from trimlang.sheets.export.dxf import floor_plan_dxf
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.quantities import Pen

ROOM = (
    f"\n{WIDE_CASE}\n"
    + """\
trim base: 1/2 in thick, 4 in tall
stock base: 12 ft at 17
stock case: 8 ft at 9
casings: reveal 1/4 in
room "Study", trim base
  N: 100 in, left=in-corner(90 deg), right=in-corner(90 deg)
  E: 90 in, left=in-corner(90 deg), right=in-corner(90 deg)
  S: 30 in, left=in-corner(90 deg), right=butt
  door 32 in "to hall"{said}
  S2: {rest} in, left=butt, right=in-corner(90 deg)
  W: 90 in, left=in-corner(90 deg), right=in-corner(90 deg)
"""
)


@pytest.mark.parametrize(
    ("said", "hinge", "tip"),
    [
        # the door in the south wall is faced looking down the page: its left is the page's right
        ("hinged left", 70, -32),
        ("hinged left, swings in", 70, -32),
        ("hinged right, swings in", 38, -32),
        ("hinged left, swings out", 70, 32),
        # a casing of 2 1/2 in behind a reveal of 1/4 in moves the clear width along the wall
        ("hinged right, swings out, casing case, height 80 in", 35.25, 32),
    ],
)
def test_a_leaf_hangs_where_it_is_said(said: str, hinge: float, tip: float) -> None:
    cased = "casing" in said
    job = compiled(ROOM.format(said=f", {said}", rest="32 1/2" if cased else "38"))
    assert job.ok
    (plan,) = floor_plan(job, Pen(words_in("en"), "$"))
    (leaf,) = plan.leaves
    numbers = [float(one) for one in re.findall(r"-?[\d.]+", leaf)]
    (hx, hy, ox, oy), (shut, shut_y) = numbers[:4], numbers[-2:]
    # the room is 100 in wide: its corners on paper give the scale
    walls = [(float(one.x1), float(one.y1)) for one in plan.lines if one.look == "run"]
    left, right = min(x for x, _ in walls), max(x for x, _ in walls)
    inch = (right - left) / 100
    assert (hx - left) / inch == pytest.approx(hinge, abs=0.1)
    assert (oy - hy) / inch == pytest.approx(tip, abs=0.1)
    assert ox == pytest.approx(hx, abs=0.02)
    assert (shut - hx) / inch == pytest.approx(-32 if "left" in said else 32, abs=0.1)
    assert shut_y == pytest.approx(hy, abs=0.02)
    assert 0 < oy < float(plan.tall)


def test_a_door_without_hinges_has_no_leaf() -> None:
    (plan,) = floor_plan(compiled(ROOM.format(said="", rest="38")), Pen(words_in("en"), "$"))
    assert plan.leaves == ()


HALL = """
room "Hall", trim base
  N: 70 in, left=in-corner(90 deg), right=butt
  door 32 in "to study"
  N2: 30 in, left=butt, right=in-corner(90 deg)
  E: 90 in, left=in-corner(90 deg), right=in-corner(90 deg)
  S: 132 in, left=in-corner(90 deg), right=in-corner(90 deg)
  W: 90 in, left=in-corner(90 deg), right=in-corner(90 deg)
"""


def test_the_overview_and_the_drawing_program_have_the_leaf_too() -> None:
    ezdxf = pytest.importorskip("ezdxf")
    said = ', "to hall"'
    text = ROOM.replace(' "to hall"', said).format(said=", hinged left, swings out", rest="38")
    job = compiled(text + HALL)
    (group,) = house(job, Pen(words_in("en"), "$")).groups
    (leaf,) = group.leaves
    numbers = [float(one) for one in re.findall(r"-?[\d.]+", leaf)]
    # out of the study is into the hall, below it on the page
    assert numbers[3] > numbers[1]
    assert numbers[3] < float(group.tall)
    space = ezdxf.read(StringIO(floor_plan_dxf(job).decode("utf-8"))).modelspace()
    (line,) = space.query('LINE[layer=="DOORS"]')
    (arc,) = space.query('ARC[layer=="DOORS"]')
    hinge, opened = line.dxf.start, line.dxf.end
    assert dist(hinge, opened) == pytest.approx(32)
    assert arc.dxf.radius == pytest.approx(32)
    assert dist(arc.dxf.center, hinge) == pytest.approx(0, abs=1e-6)
    # the arc is a quarter turn between the open leaf and the shut one, which lies along the wall
    assert (arc.dxf.end_angle - arc.dxf.start_angle) % 360 == pytest.approx(90)
    ends = (arc.start_point, arc.end_point)
    nearest = min(dist(end, opened) for end in ends)
    assert nearest == pytest.approx(0, abs=1e-6)
    shut = max(ends, key=lambda end: dist(end, opened))
    assert shut.y == pytest.approx(hinge.y, abs=1e-6)
