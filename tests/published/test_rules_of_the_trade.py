"""Rules of the trade that the compiler follows: all common practice, no source.

The working of each number stands beside it.
"""

from collections.abc import Callable
from fractions import Fraction

import mpmath
import pytest

from tests.jobs import walls
from trimlang.compiler import check_job
from trimlang.joinery.piece import Lean, Piece
from trimlang.lengths.units import in_cubic_inches
from trimlang.survey.job import Trim
from trimlang.takeoff.supplies import nail_bite, nail_height

Pieces = Callable[..., dict[str, Piece]]


def test_29_5_32_between_two_inside_corners_goes_down(pieces: Pieces) -> None:
    piece = pieces("N: 29 5/32 in, left=in-corner, right=in-corner")["N"]
    assert piece.length == 29 + Fraction(1, 8)


def test_29_5_32_with_an_outside_corner_goes_up(pieces: Pieces) -> None:
    # over scraps, so that nothing is added: the rounding alone is seen
    piece = pieces("N: 29 5/32 in, left=in-corner, right=out-corner, taken point")["N"]
    assert piece.length == 29 + Fraction(3, 16)


def test_an_outside_corner_adds_thickness_times_tangent(pieces: Pieces) -> None:
    # θ written as 90: exactly 45°, tan 45° = 1, so 29 1/8 + 9/16 = 29 11/16
    piece = pieces("N: 29 1/8 in, left=in-corner, right=out-corner(90 deg)")["N"]
    assert piece.rounding.exact == 29 + Fraction(11, 16)
    assert piece.length == 29 + Fraction(11, 16)


def test_an_outside_corner_that_was_not_measured_is_cut_at_45_5(pieces: Pieces) -> None:
    # 9/16 × tan 45.5° = 0.5625 × 1.017607 = 0.572404; 29.125 + 0.572404 = 29.697404 → 29 3/4
    piece = pieces("N: 29 1/8 in, left=in-corner, right=out-corner")["N"]
    expected = 29.125 + 0.5625 * mpmath.tan(mpmath.radians(45.5))
    assert float(piece.rounding.exact) == pytest.approx(float(expected), abs=1e-12)
    assert piece.length == 29 + Fraction(3, 4)
    assert piece.right.exact == Fraction("45.5")
    assert piece.left.exact == Fraction("44.5")


def test_two_outside_corners_add_twice(pieces: Pieces) -> None:
    # a pier 12 in wide: 12 + 2 × 9/16 = 13 1/8
    piece = pieces("N: 12 in, left=out-corner(90 deg), right=out-corner(90 deg)")["N"]
    assert piece.length == 13 + Fraction(1, 8)
    assert piece.face == piece.length
    assert piece.back == 12


def test_an_inside_corner_adds_nothing_and_its_face_is_shorter(pieces: Pieces) -> None:
    piece = pieces("N: 40 in, left=in-corner(90 deg), right=in-corner(90 deg)")["N"]
    assert (piece.length, piece.back) == (40, 40)
    assert piece.face == 40 - 2 * Fraction(9, 16)


def test_over_scraps_nothing_is_added(pieces: Pieces) -> None:
    piece = pieces("N: 40 in, left=out-corner(taken point), right=out-corner(90 deg)")["N"]
    assert piece.length == 40 + Fraction(9, 16)


@pytest.mark.parametrize(
    ("ends", "length", "row"),
    [
        ("left=butt, right=butt", "40 1/16", "butt"),
        ("left=butt, right=open", "40 1/8", "open"),
        ("left=return, right=in-corner", "40 1/8", "return"),
        ("left=in-corner cope, right=butt", "40 1/16", "cope"),
    ],
)
def test_the_rounding_table(pieces: Pieces, ends: str, length: str, row: str) -> None:
    # 40 7/64 lies 3/64 above 40 1/16 and 1/64 below 40 1/8
    piece = pieces(f"N: 40 7/64 in, {ends}")["N"]
    assert piece.length == sum(Fraction(part) for part in length.split())
    assert piece.rounding.row == row


def test_a_file_sets_its_own_rounding(pieces: Pieces) -> None:
    run = "N: 40 7/64 in, left=butt, right=butt"
    assert pieces(run, settings="round butt up")["N"].length == 40 + Fraction(1, 8)
    assert pieces(run, settings="round to 1/32 in")["N"].length == 40 + Fraction(3, 32)
    coped = "N: 40 7/64 in, left=in-corner cope, right=butt"
    assert pieces(coped, settings="round cope up")["N"].length == 40 + Fraction(1, 8)
    sprung = pieces(coped, settings="round cope up by 1/16 in")["N"]
    assert 0 < sprung.rounding.by <= Fraction(1, 16)


def test_which_way_the_blade_leans(pieces: Pieces) -> None:
    """Face up, an inside corner's back edge is the long one, so the blade leans over the piece.

    At the left end that is to the right, at the right end to the left; an outside corner is the
    other way round.
    """
    inside = pieces("N: 40 in, left=in-corner, right=in-corner")["N"]
    outside = pieces("N: 40 in, left=out-corner, right=out-corner")["N"]
    assert (inside.left.lean, inside.right.lean) == (Lean.RIGHT, Lean.LEFT)
    assert (outside.left.lean, outside.right.lean) == (Lean.LEFT, Lean.RIGHT)
    square = pieces("N: 40 in, left=butt, right=open")["N"]
    assert (square.left.lean, square.right.lean) == (Lean.UPRIGHT, Lean.UPRIGHT)


def test_nails_meet_the_plate() -> None:
    # a 1 1/2 in plate under a 1/4 in floor shows 1 1/4 in of itself
    assert nail_height(Fraction(3, 2), Fraction(1, 4)) == Fraction(5, 4)
    trim = Trim("base", Fraction(9, 16), None, (), None, (), (), None)  # type: ignore[arg-type]
    assert nail_bite(Fraction(2), trim, Fraction(1, 2)) == Fraction(15, 16)


def test_a_tube_of_caulk_fills_a_bead() -> None:
    """10.1 fl oz × 231/128 in³ = 18.227 in³; a 3/16 in corner bead has 9/512 in² of section.

    18.227 / (9/512) = 1036.9 in = 86 ft a tube.
    """
    result = check_job(walls("N: 40 in, left=butt, right=butt"))
    from trimlang.takeoff.supplies import supplies

    caulk = next(line for line in supplies(result.job, result.pieces) if line.what == "caulk")
    feet = in_cubic_inches(Fraction(101, 10), "fl_oz") / Fraction(9, 512) / 12
    assert round(feet) == 86
    assert "86 ft a tube" in caulk.detail
