"""Mitres against geometry that anyone can look up.

Sources: the interior angle of a regular n-gon is 180° × (n - 2) / n (Euclid, Elements I.32,
corollary),
so a frame of n sides is cut at 180° / n; tangents against mpmath; the 45.5°/44.5°
allowance and the check values are common practice, no source.
"""

from fractions import Fraction

import mpmath
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.every import every
from trimlang.lengths.angles import degrees_text, mitre_of_corner, saw_reading, tangent


@every("sides", range(3, 25))
def test_a_regular_frame_is_cut_at_180_over_n(sides: int) -> None:
    interior = Fraction(180 * (sides - 2), sides)
    assert mitre_of_corner(interior) == Fraction(180, sides)


@pytest.mark.parametrize(
    ("corner", "mitre"), [(90, "45"), (135, "22.5"), (91, "44.5"), (89, "45.5"), (60, "60")]
)
def test_check_values(corner: int, mitre: str) -> None:
    assert mitre_of_corner(Fraction(corner)) == Fraction(mitre)


@given(st.fractions(min_value=-89, max_value=89, max_denominator=1000))
def test_the_tangent_agrees_with_mpmath(degrees: Fraction) -> None:
    with mpmath.workdps(50):
        expected = mpmath.tan(mpmath.mpf(degrees.numerator) / degrees.denominator * mpmath.pi / 180)
        ours = mpmath.mpf(tangent(degrees).numerator) / tangent(degrees).denominator
        assert abs(ours - expected) < mpmath.mpf(10) ** -29


def test_the_tangent_of_45_is_one_exactly() -> None:
    assert tangent(Fraction(45)) == 1
    assert tangent(Fraction(0)) == 0


@pytest.mark.parametrize("degrees", [90, -90, 135])
def test_no_tangent_at_a_right_angle(degrees: int) -> None:
    with pytest.raises(ValueError, match="no tangent"):
        tangent(Fraction(degrees))


def test_a_saw_shows_the_nearest_mark_of_its_scale() -> None:
    assert saw_reading(Fraction("44.3"), Fraction(1, 2)) == Fraction("44.5")
    assert saw_reading(Fraction("44.2"), Fraction(1, 2)) == 44
    assert saw_reading(Fraction("31.62"), Fraction(1, 10)) == Fraction("31.6")


def test_angles_are_written_to_a_hundredth() -> None:
    assert degrees_text(Fraction("45.5")) == "45.5°"
    assert degrees_text(Fraction(316228, 10000)) == "31.62°"
    assert degrees_text(Fraction(90)) == "90°"
