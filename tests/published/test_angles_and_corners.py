"""Sines, tangents and corners by a diagonal, against mpmath and numpy."""

from fractions import Fraction

import mpmath
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

import trimlang
from tests.jobs import BASE, TWELVE_FEET
from trimlang.lengths.angles import arc_cosine, arc_sine, arc_tangent, cosine, sine
from trimlang.survey.ends import corner_by_diagonal, diagonal_error

mpmath.mp.dps = 50
CLOSE = Fraction(1, 10**28)
JOB = f"""
{BASE}
{TWELVE_FEET}
room "Study", trim base, open walk
"""


def as_mp(value: Fraction):
    return mpmath.mpf(value.numerator) / value.denominator


@given(st.fractions(-720, 720, max_denominator=1000))
def test_sine_and_cosine_agree_with_mpmath(degrees):
    radians = as_mp(degrees) * mpmath.pi / 180
    assert abs(as_mp(sine(degrees)) - mpmath.sin(radians)) < as_mp(CLOSE)
    assert abs(as_mp(cosine(degrees)) - mpmath.cos(radians)) < as_mp(CLOSE)


@given(st.fractions(-1, 1, max_denominator=1000))
def test_inverse_functions_agree_with_mpmath(ratio):
    for ours, theirs in (
        (arc_sine(ratio), mpmath.asin(as_mp(ratio))),
        (arc_cosine(ratio), mpmath.acos(as_mp(ratio))),
        (arc_tangent(ratio * 50), mpmath.atan(as_mp(ratio * 50))),
    ):
        assert abs(as_mp(ours) - mpmath.degrees(theirs)) < as_mp(CLOSE)


@given(st.integers(100, 800), st.integers(100, 800), st.integers(30, 179))
def test_law_of_cosines_agrees_with_the_angle_between_two_vectors(one, other, degrees):
    first = np.array([one / 16, 0.0])
    second = other / 16 * np.array([np.cos(np.radians(degrees)), np.sin(np.radians(degrees))])
    diagonal = Fraction(float(np.linalg.norm(first - second)))
    corner = corner_by_diagonal(Fraction(one, 16), Fraction(other, 16), diagonal)
    assert corner is not None
    assert float(corner) == pytest.approx(degrees, abs=1e-5)


def test_three_four_five_is_square():
    assert corner_by_diagonal(Fraction(36), Fraction(48), Fraction(60)) == 90


def test_a_sixteenth_over_three_feet_is_a_seventh_of_a_degree():
    # dθ = d·δ / (a·b·sin θ) = 50.912 × 0.0625 / 1296 = 0.002455 rad = 0.1407°
    error = diagonal_error(Fraction(36), Fraction(36), Fraction(50912, 1000))
    assert float(error) == pytest.approx(0.1407, abs=2e-4)


def ends(line):
    result = trimlang.compile(JOB + line)
    assert result.job.rooms[0].runs, [finding.message for finding in result.diagnostics]
    return result, result.job.rooms[0].runs[0].left


def test_a_corner_by_its_diagonal_in_a_job():
    result, end = ends(
        " N: 40 in, left=out-corner(corner by 36 in, 36 in, diagonal 51 1/4 in), right=butt"
    )
    # cos θ = (2·36² − 51.25²) / (2·36²) = −0.013334 → θ = 90.7640°
    assert float(end.corner) == pytest.approx(90.7640, abs=1e-3)
    assert float(end.corner_error) == pytest.approx(0.1415, abs=1e-3)
    assert float(result.pieces[0].left.exact) == pytest.approx(90 - 90.7640 / 2, abs=1e-3)
    assert result.pieces[0].left.corner_error == end.corner_error


def test_an_outside_corner_may_be_measured_through_the_room():
    assert ends(" N: 40 in, left=out-corner(225 deg), right=butt")[1].corner == 135


@pytest.mark.parametrize(("degrees", "code"), [(29, "T228"), (331, "T228"), (180, "T228")])
def test_corners_that_cannot_be(degrees, code):
    text = JOB + f" N: 40 in, left=out-corner({degrees} deg), right=butt"
    assert code in {finding.code for finding in trimlang.compile(text).diagnostics}


def test_a_sharp_corner_is_beyond_a_common_saw_unless_the_file_says_more():
    line = " N: 40 in, left=in-corner(60 deg), right=butt"
    assert {f.code for f in trimlang.compile(JOB + line).diagnostics} == {"T404"}
    assert not trimlang.compile("saw: reaches 60 deg\n" + JOB + line).diagnostics


@pytest.mark.parametrize("inverse", [arc_sine, arc_cosine])
@pytest.mark.parametrize("ratio", [Fraction(3, 2), Fraction(-3, 2)])
def test_no_angle_has_a_sine_or_cosine_beyond_one(inverse, ratio):
    with pytest.raises(ValueError, match=f"no angle has the cosine {ratio}"):
        inverse(ratio)


def test_inverse_functions_at_their_ends():
    assert [arc_cosine(Fraction(ratio)) for ratio in (1, 0, -1)] == [0, 90, 180]
    assert [arc_sine(Fraction(ratio)) for ratio in (1, 0, -1)] == [90, 0, -90]
