"""Boxes on a wall: margins and widths fill it, and the four sides of each close."""

from fractions import Fraction
from math import cos, radians, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.affinity import affine_transform
from shapely.geometry import Polygon
from shapely.ops import unary_union

from tests import jobs
from tests.every import every
from trimlang.compiler import Result, check_job, compile_job
from trimlang.joinery.piece import Piece, PieceKind
from trimlang.sheets.content.floor_plan import floor_plan
from trimlang.sheets.wording.catalogue import NO_BREAK, words_in
from trimlang.sheets.wording.phrases import all_notes
from trimlang.sheets.wording.quantities import Pen
from trimlang.survey.box_layout import lay_out

TRIMS = f"""\
{jobs.BASE}
{jobs.TWELVE_FEET}
trim panel: 5/8 in thick, 1 1/4 in wide
stock panel: 16 ft at 9.40
"""
ACROSS = 1.25


def job(lines: str) -> str:
    return f'{TRIMS}room "Hall", trim base, open walk\n{lines}\n'


def wall(boxes: str) -> Result:
    return check_job(job(f"  N: 10 ft, left=butt, right=butt\n  {boxes}"))


def sides(result: Result) -> dict[str, Piece]:
    return {
        piece.id.removeprefix("HA-"): piece
        for piece in result.pieces
        if piece.kind is PieceKind.FRAME
    }


def test_from_a_margin_the_width_follows_and_fills_the_wall():
    result = wall("boxes N: 3, 24 in tall, margin 3 1/2 in, trim panel")
    (boxes,) = result.job.rooms[0].boxes
    # (120 - 4 × 3 1/2) ÷ 3 = 35 1/3, on the tape 35 5/16; the sixteenth that is over goes to an end
    assert boxes.wide == Fraction(565, 16)
    assert boxes.margins == (Fraction(7, 2), *[Fraction(7, 2)] * 2, Fraction(57, 16))
    assert sum(boxes.margins) + 3 * boxes.wide == 120
    got = sides(result)
    assert len(got) == 12
    assert got["N-panel-2-top"].length == got["N-panel-2-bottom"].length == boxes.wide
    assert got["N-panel-2-left"].length == 24
    assert {one.left.setting for one in got.values()} == {45}
    # the second box begins behind two margins and a box
    assert "42 5/16 in from the left end of N" in got["N-panel-2-top"].all_notes


def test_from_a_width_the_margins_follow():
    (boxes,) = wall('boxes N "upper": 4, 14 in tall, 24 in wide, trim panel').job.rooms[0].boxes
    # (120 - 4 × 24) ÷ 5 = 4 4/5, on the tape 4 3/4; what is over goes to both ends
    assert boxes.margins == (Fraction(39, 8), *[Fraction(19, 4)] * 3, Fraction(39, 8))
    assert sum(boxes.margins) == 24


@given(
    st.integers(20 * 16, 300 * 16),
    st.integers(1, 8),
    st.integers(8, 200),
    st.booleans(),
)
def test_the_wall_is_the_sum_or_nothing_fits(wall_long, count, size, is_margin):
    step = Fraction(1, 16)
    length, given_size = Fraction(wall_long, 16), Fraction(size, 16)
    wide, margin = (None, given_size) if is_margin else (given_size, None)
    laid = lay_out(length, count, wide=wide, margin=margin, step=step)
    if laid is None:
        return
    box, margins = laid
    assert count * box + sum(margins) == length
    assert len(margins) == count + 1
    assert all(one > 0 and one % step == 0 for one in (box, *margins))
    assert margins[-1] - margins[0] in (0, step)  # the middle of the wall stays the middle
    assert abs(margins[0] - margins[len(margins) // 2]) <= step * (count + 1)


def outer(piece: Piece) -> Polygon:
    """Return a side lying as its ticket says: its outer edge away from you, left end at left."""
    long = float(piece.length)
    return Polygon(
        [(0, 0), (long, 0), (long - float(piece.right.inset), -ACROSS),
         (float(piece.left.inset), -ACROSS)]
    )  # fmt: skip


def hung(piece: Piece, degrees: float, x: float, y: float) -> Polygon:
    """Return a side turned as it hangs, with its left point at (x, y)."""
    c, s = cos(radians(degrees)), sin(radians(degrees))
    return affine_transform(outer(piece), [c, -s, s, c, x, y])


@pytest.mark.parametrize(
    ("rising", "slope"), [("", 0.0), (", rising right 36 deg", 36.0), (", rising left 30 deg", -30)]
)
def test_the_four_sides_close_to_a_frame(rising: str, slope: float):
    """Shapely as the second opinion: no overlap, no gap, and the hole is a parallelogram too."""
    ends = "left=plumb, right=plumb" if rising else "left=butt, right=butt"
    result = check_job(
        job(f"  N: 10 ft, {ends}{rising}\n  boxes N: 2, 24 in tall, margin 4 in, trim panel\n")
    )
    got = sides(result)
    wide, tall = float(got["N-panel-1-top"].length), 24.0
    along, up = cos(radians(slope)), sin(radians(slope))
    placed = [
        hung(got["N-panel-1-top"], slope, 0, tall),
        hung(got["N-panel-1-bottom"], slope + 180, wide * along, wide * up),
        hung(got["N-panel-1-left"], 90, 0, 0),
        hung(got["N-panel-1-right"], 270, wide * along, wide * up + tall),
    ]
    whole = Polygon(
        [(0, 0), (wide * along, wide * up), (wide * along, wide * up + tall), (0, tall)]
    )
    together = unary_union(placed)
    assert sum(one.area for one in placed) == pytest.approx(together.area, abs=1e-6)
    assert together.difference(whole).area < 1e-6
    (hole,) = together.interiors
    # each side is as wide as its trim, so the hole is that much smaller across
    assert Polygon(hole).area == pytest.approx(
        (wide - 2 * ACROSS / along) * (tall - 2 * ACROSS / along) * along, rel=1e-6
    )
    settings = {float(one.left.exact) for one in got.values()}
    assert settings == {45 + slope / 2, 45 - slope / 2}


def test_all_of_a_wall_with_boxes_is_planned():
    result = compile_job(
        job(
            "  N: 10 ft, left=butt, right=butt\n"
            '  boxes N "lower": 3, 24 in tall, margin 3 1/2 in, trim panel\n'
            '  boxes N "upper": 3, 40 in tall, margin 3 1/2 in, trim panel\n'
        )
    )
    assert not result.diagnostics
    (plan,) = (one for one in result.plans if one.trim == "panel")
    laid = [place.piece for stick in plan.sticks for place in stick.places]
    assert sorted(laid) == sorted(f"HA-{name}" for name in sides(result))
    assert len(laid) == 24


@every(
    "boxes, code",
    [
        ("boxes E: 3, 24 in tall, margin 3 in, trim panel", "T286"),
        ("boxes N: 3, margin 3 in, trim panel", "T287"),
        ("boxes N: 3, 24 in tall, margin 3 in, 20 in wide, trim panel", "T287"),
        ("boxes N: 3, 24 in tall, margin 30 in, trim panel", "T288"),
        ("boxes N: 60, 24 in tall, 2 in wide, trim panel", "T288"),
        ("boxes N: 3, 24 in tall, margin 3 in", "T280"),
        ("boxes N: 3, 2 in tall, margin 3 in, trim panel", "T122"),
        ('boxes under "garden": 1, 9 in tall, margin 3 in, trim panel', "T286"),
        ("boxes N to E: 3, 24 in tall, margin 3 in, trim panel", "T286"),
    ],
)
def test_slips_are_told(boxes: str, code: str):
    assert {one.code for one in wall(boxes).diagnostics} - {"T214"} == {code}


WINDOW = """\
  W: 30 in, left=butt, right=in-corner
  N: 40 in, left=in-corner, right=butt
  window 36 in, "garden", {sill}stops nothing
  N2: 50 in, left=butt, right=butt
"""


def beside_window(boxes: str, *, sill: str = "sill 30 in, ") -> Result:
    return check_job(job(f"{WINDOW.format(sill=sill)}  {boxes}"))


def test_boxes_go_on_along_a_wall_past_its_window():
    result = beside_window("boxes N to N2: 5, 20 in tall, margin 3 in, trim panel")
    assert not result.diagnostics
    (boxes,) = result.job.rooms[0].boxes
    assert boxes.wall == 126
    # (126 - 6 × 3) ÷ 5 = 21 3/5, on the tape 21 9/16; 3/16 is over and goes to both ends
    assert boxes.wide == Fraction(345, 16)
    assert boxes.margins == (Fraction(49, 16), *[3] * 4, Fraction(50, 16))
    assert "from the left end of N to N2" in sides(result)["N-panel-5-top"].all_notes


def test_boxes_under_and_over_a_window_are_laid_out_on_its_width():
    result = beside_window(
        'boxes under "garden": 1, 20 in tall, margin 4 in, trim panel\n'
        '  boxes over "garden" "high": 2, 9 in tall, margin 4 in, trim panel'
    )
    assert not result.diagnostics
    under, over = result.job.rooms[0].boxes
    assert (under.wall, under.wide, over.wide) == (36, 28, 12)
    got = sides(result)
    assert got["garden-under-panel-1-top"].length == 28
    assert "garden-over-high-panel-2-left" in got


@pytest.mark.parametrize(
    ("boxes", "sill", "code"),
    [
        ("boxes N to N2: 5, 20 in tall, margin 3 in, trim panel", "", "T439"),
        ('boxes under "garden": 1, 20 in tall, margin 3 in, trim panel', "", "T439"),
        ('boxes under "garden": 1, 31 in tall, margin 3 in, trim panel', "sill 30 in, ", "T440"),
        ("boxes N to N2: 5, 31 in tall, margin 3 in, trim panel", "sill 30 in, ", "T440"),
        ("boxes W to N2: 5, 20 in tall, margin 3 in, trim panel", "sill 30 in, ", "T441"),
        ("boxes N2 to N: 5, 20 in tall, margin 3 in, trim panel", "sill 30 in, ", "T441"),
    ],
)
def test_slips_at_openings_are_told(boxes: str, sill: str, code: str):
    assert {one.code for one in beside_window(boxes, sill=sill).diagnostics} == {code}


def test_boxes_on_a_wall_that_curves_are_refused():
    lines = (
        "  N: 60 in, left=butt, right=butt, curves in 9 in\n"
        "  boxes N: 2, 20 in tall, margin 3 in, trim panel\n"
    )
    (found,) = check_job(job(lines)).diagnostics
    assert found.code == "T496"


def test_tall_boxes_beside_a_window_are_fine_where_none_lies_on_it():
    # 10 + 50 + 10 + 50 + 10: the middle margin is the window
    lines = (
        "  N: 60 in, left=butt, right=butt\n  window 10 in, sill 30 in, stops nothing\n"
        "  N2: 60 in, left=butt, right=butt\n"
        "  boxes N to N2: 2, 60 in tall, WIDE in wide, trim panel\n"
    )
    assert not check_job(job(lines.replace("WIDE", "50"))).diagnostics
    (found,) = check_job(job(lines.replace("WIDE", "53"))).diagnostics
    assert found.code == "T440"


def test_every_set_that_comes_to_nothing_is_told():
    result = wall("boxes N: 3, 2 in tall, margin 3 in, trim panel\n"
                  '  boxes N "b": 3, 2 in tall, margin 3 in, trim panel')  # fmt: skip
    assert [one.code for one in result.diagnostics] == ["T122", "T122"]


@pytest.mark.parametrize(
    ("language", "window", "wall"),
    [
        ("en", "over “garden” “high”", "N to N2"),
        ("de", "über „garden“ „high“", "N bis N2"),
        ("es", "sobre «garden» «high»", "N a N2"),
    ],
)
def test_where_boxes_are_is_said_in_the_sheets_language(language: str, window: str, wall: str):
    result = beside_window(
        'boxes over "garden" "high": 1, 9 in tall, margin 4 in, trim panel\n'
        "  boxes N to N2: 5, 20 in tall, margin 3 in, trim panel"
    )
    pen = Pen(words_in(language), "$")
    (plan,) = floor_plan(result, pen)
    over, along = (said.replace(NO_BREAK, " ") for said in plan.sums)
    assert window in over
    assert wall in along
    got = sides(result)
    assert window.rpartition(" ")[0] in all_notes(got["garden-over-high-panel-1-top"], pen)
    assert wall in all_notes(got["N-panel-5-top"], pen)


def test_the_floor_plan_proves_that_boxes_fill_their_wall():
    result = wall("boxes N: 3, 24 in tall, margin 3 1/2 in, trim panel")
    (plan,) = floor_plan(result, Pen(words_in("en"), "$"))
    (said,) = plan.sums
    plain = said.replace(NO_BREAK, " ")
    assert "3 1/2 in + 3 × 35 5/16 in + 2 × 3 1/2 in + 3 9/16 in = 120 in" in plain
    assert Fraction(7, 2) + 3 * Fraction(565, 16) + 2 * Fraction(7, 2) + Fraction(57, 16) == 120
