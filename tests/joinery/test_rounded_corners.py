"""Rounded outside corners: what the tickets say, laid round the corner, closes and touches it."""

from fractions import Fraction
from math import cos, radians, sin, tan

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.affinity import affine_transform
from shapely.geometry import Point, Polygon
from shapely.ops import unary_union

from tests import jobs
from tests.every import every
from tests.jobs import SHOE_STOCK
from trimlang.compiler import Result, check_job
from trimlang.joinery.piece import Piece

THICK = Fraction(9, 16)


def bay(corner: str, *, trims: str = "base", more: str = "") -> Result:
    return check_job(
        f"{jobs.TRIM}{more}saw: reads to 1/100 deg\nround to 1/128 in\n"
        f'room "Hall", trim {trims}, open walk\n'
        f"  N: 40 in, left=butt, right=out-corner({corner})\n  E: 50 in, right=butt\n"
    )


def pieces(result: Result) -> dict[str, Piece]:
    return {piece.id.removeprefix("HA-"): piece for piece in result.pieces}


def section(piece: Piece) -> Polygon:
    """Return a piece in plan, its back along the x axis from 0, its face towards -y."""
    back = float(piece.back)
    left = float(piece.left.inset) if piece.left.setting else 0.0
    right = float(piece.right.inset) if piece.right.setting else 0.0
    thick = float(THICK)
    return Polygon([(0, 0), (back, 0), (back + right, -thick), (-left, -thick)])


def laid(piece: Piece, degrees: float, x: float, y: float) -> Polygon:
    c, s = cos(radians(degrees)), sin(radians(degrees))
    return affine_transform(section(piece), [c, -s, s, c, x, y])


@every("corner", [90, 100, 120, 135, 70])
@every("radius", [0.75, 1.5])
def test_three_pieces_go_round_the_corner(corner: int, radius: float):
    """Shapely as the second opinion, the walls' faces drawn with their round.

    The walk goes along y = 0 to the corner at (0, 0) and turns away by 180° less the corner; the
    room, and so the trim, is on the side of -y.
    """
    got = pieces(bay(f"{corner} deg, bullnose {radius} in"))
    turn = radians(180 - corner)
    short = radius * tan(turn / 4) / cos(turn / 2)
    north = laid(got["N-base"], 0, -float(got["N-base"].back) - short, 0)
    half = 180 - corner
    mid = laid(got["N-base-right-bullnose"], half / 2, -short, 0)
    east_at = short * cos(turn), short * sin(turn)
    east = laid(got["E-base"], half, *east_at)
    together = unary_union([north, mid, east])
    # each touches the next along its whole joint, but for what the tape's step leaves
    touching = unary_union([one.buffer(1 / 64, join_style="mitre") for one in (north, mid, east)])
    assert touching.geom_type == "Polygon"
    assert not touching.interiors
    total = sum(one.area for one in (north, mid, east))
    assert together.area == pytest.approx(total, rel=5e-3)
    # the round lies behind the trim and touches the small piece in the middle of its back
    away = radius / cos(turn / 2)
    bisector = radians(90 + half / 2)
    centre = away * cos(bisector), away * sin(bisector)
    round_ = Point(centre).buffer(radius, quad_segs=256)
    assert round_.intersection(together).area < 1e-2
    assert round_.distance(mid) < 1e-2


def test_a_right_corner_has_mitres_of_half_the_half():
    got = pieces(bay("90 deg, bullnose 3/4 in"))
    assert got["N-base"].right.exact == got["E-base"].left.exact == Fraction(45, 2)
    corner = got["N-base-right-bullnose"]
    assert corner.mates == ("HA-N-base",)
    assert "HA-N-base-right-bullnose" in got["N-base"].mates
    # 2 × 3/4 × tan 22.5° at the back (from memory: tan 22.5° = √2 - 1)
    assert float(corner.back) == pytest.approx(1.5 * (2**0.5 - 1), abs=1e-2)
    assert "E-base-left-bullnose" not in got  # one corner, one piece


def test_what_stands_in_front_goes_round_further_out():
    shoe = f"{jobs.SHOE}\n{SHOE_STOCK}\n"
    got = pieces(bay("90 deg, bullnose 3/4 in", trims="base, shoe", more=shoe))
    back = got["N-shoe-right-bullnose"].back
    assert float(back) == pytest.approx(2 * (0.75 + 0.5625) * (2**0.5 - 1), abs=1e-2)


def test_a_wall_that_begins_at_a_rounded_corner_brings_its_piece():
    text = (
        f'{jobs.TRIM}room "Hall", trim base, open walk\n'
        "  N: 40 in, left=out-corner(bullnose 1 in), right=butt\n"
    )
    assert "N-base-left-bullnose" in pieces(check_job(text))


@given(st.integers(60, 150), st.integers(1, 48))
def test_a_run_is_never_longer_than_round_a_sharp_corner(corner, sixteenths):
    plain = pieces(bay(f"{corner} deg"))["N-base"].length
    round_ = pieces(bay(f"{corner} deg, bullnose {sixteenths}/16 in"))["N-base"].length
    assert round_ < plain


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("right=in-corner(bullnose 3/4 in)", "T290"),
        ("right=butt(bullnose 3/4 in)", "T290"),
    ],
)
def test_slips_are_told(text: str, code: str):
    found = check_job(
        f'{jobs.TRIM}room "Hall", trim base, open walk\n  N: 40 in, left=butt, {text}\n'
    )
    assert [one.code for one in found.diagnostics] == [code]


def test_a_corner_may_be_told_by_the_mitre_that_closes_it():
    text = (
        f'{jobs.TRIM}room "Hall", trim base, open walk\n'
        "  N: 40 in, left=in-corner(mitre 44 1/2 deg), right=out-corner(mitre 46 deg)\n"
    )
    (run,) = check_job(text).job.rooms[0].runs
    # a mitre is 90° less half the corner
    assert (run.left.corner, run.right.corner) == (91, 88)


def test_a_scarf_may_be_as_flat_as_fifteen_degrees():
    wall = "  N: 40 in, left=butt, right=butt"
    assert not check_job(jobs.walls(wall, settings="splices: angle 15 deg")).diagnostics
    low = check_job(jobs.walls(wall, settings="splices: angle 14 deg"))
    assert [one.code for one in low.diagnostics] == ["T233"]
