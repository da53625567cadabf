"""Wall, back, face and long point, worked by hand; where the tape was held."""

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

import trimlang
from tests.jobs import BASE, SIXTEEN_FEET
from trimlang.joinery.piece import MeasuredOn
from trimlang.joint_row import Edge

HEAD = f"""
{BASE}
{SIXTEEN_FEET}
"""


def piece(line, head="", room='room "R", trim base, open walk'):
    result = trimlang.compile(f"{head}\n{HEAD}\n{room}\n{line}")
    assert result.ok, [one.message for one in result.diagnostics]
    return result.pieces[0]


def test_between_two_inside_corners_the_back_is_the_wall():
    one = piece("N: 40 in, left=in-corner(90 deg), right=in-corner(90 deg)")
    assert (one.wall, one.back, one.length) == (40, 40, 40)
    # each mitre takes 9/16 × tan 45° off the face: 40 − 2 × 9/16 = 38 7/8
    assert one.face == Fraction(311, 8)
    assert one.measured_on is MeasuredOn.BACK


def test_between_two_outside_corners_the_face_is_longer():
    one = piece("N: 40 in, left=out-corner(90 deg), right=out-corner(90 deg)")
    # 40 + 2 × 9/16 × tan 45° = 41 1/8
    assert one.length == one.face == Fraction(329, 8)
    assert one.back == one.wall == 40
    assert one.measured_on is MeasuredOn.FACE


def test_in_and_out_measure_from_long_point_to_long_point():
    one = piece("N: 40 in, left=in-corner(90 deg), right=out-corner(90 deg)")
    assert one.length == Fraction(649, 16)
    assert one.measured_on is MeasuredOn.POINTS
    assert one.back == 40
    assert one.face == 40


def test_square_ends_measure_on_either_edge():
    assert piece("N: 40 in, left=butt, right=butt").measured_on is MeasuredOn.EITHER


@pytest.mark.parametrize(
    ("head", "room", "line"),
    [
        ("taken point", 'room "R", trim base, open walk', "N: 40 in"),
        ("", 'room "R", trim base, open walk, taken point', "N: 40 in"),
        ("", 'room "R", trim base, open walk\ntaken point', "N: 40 in"),
        ("", 'room "R", trim base, open walk', "N: 40 in, taken point"),
        ("taken wall", 'room "R", trim base, open walk, taken wall', "N: 40 in, taken point"),
    ],
)
def test_taken_over_scraps_is_said_for_file_room_or_run(head, room, line):
    one = piece(f"{line}, left=butt, right=out-corner(90 deg)", head, room)
    assert one.length == 40
    assert one.over_scraps


def test_taken_over_scraps_is_said_for_one_end():
    one = piece("N: 40 in, left=out-corner(90 deg, taken point), right=out-corner(90 deg)")
    assert one.length == Fraction(649, 16)
    assert one.over_scraps
    back = piece("N: 40 in, taken point, left=out-corner(90 deg, taken wall), right=butt")
    assert back.length == Fraction(649, 16)


def test_a_coarse_saw_leaves_a_gap_that_is_warned():
    text = HEAD + 'room "R", trim base, open walk\nN: 40 in, left=in-corner(94 deg), right=butt'
    assert not trimlang.compile(text).diagnostics
    coarse = trimlang.compile("saw: reads to 5 deg\ncorners: in-corner gap 1/32 in\n" + text)
    # 2 × 9/16 × (tan 45° − tan 43°) × cos 43° = 1.125 × 0.067485 × 0.73135 = 0.0555 in
    assert [one.code for one in coarse.diagnostics] == ["T405"]
    assert float(coarse.pieces[0].left.gap) == pytest.approx(0.0555, abs=1e-4)
    allowed = "saw: reads to 5 deg\ncorners: in-corner gap 1/8 in\n" + text
    assert not trimlang.compile(allowed).diagnostics


def test_a_gap_that_is_hidden_at_the_back_is_not_warned():
    text = HEAD + 'room "R", trim base, open walk\nN: 40 in, left=in-corner(86 deg), right=butt'
    # wanted 47°, set 45°: the faces touch first, and the corner is open behind them
    coarse = trimlang.compile("saw: reads to 5 deg\ncorners: in-corner gap 1/32 in\n" + text)
    assert not coarse.diagnostics
    assert coarse.pieces[0].left.opens_at is Edge.BACK


@given(st.integers(16, 2800))
def test_inches_to_millimetres_and_back_is_exact(sixteenths):
    # a sixteenth is 1.5875 mm, which a decimal writes exactly
    inches = Fraction(sixteenths, 16)
    mm = Decimal(sixteenths) * Decimal("1.5875")
    in_inches = piece(f"N: {float(inches)} in, left=butt, right=butt")
    in_mm = piece(f"N: {mm:f} mm, left=butt, right=butt")
    assert in_inches.wall == in_mm.wall == inches
    assert in_inches.length == in_mm.length


def test_a_roughly_measured_corner_leaves_the_joint_in_doubt():
    by_tape = piece("N: 40 in, left=out-corner(corner by 36 in, 36 in, diagonal 51 in), right=butt")
    by_angle = piece("N: 40 in, left=out-corner(90 deg), right=butt")
    # 0.14° in the corner, 0.07° in each mitre: 1.125 × 2 × 0.00123 × cos 45° = 0.0020 in
    assert float(by_tape.left.doubt) == pytest.approx(0.0020, abs=2e-4)
    assert by_angle.left.doubt == 0
