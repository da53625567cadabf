"""What a corner's end says beside its mitre: taken for granted or measured, and how well."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import mpmath
import pytest

from tests.jobs import walls
from trimlang.compiler import check_job
from trimlang.joinery.piece import Piece

Pieces = Callable[..., dict[str, Piece]]


def test_only_a_corner_that_nobody_measured_is_assumed(pieces: Pieces) -> None:
    assumed = pieces("N: 40 in, left=in-corner, right=out-corner")["N"]
    assert (assumed.left.assumed, assumed.right.assumed) == (True, True)
    measured = pieces("N: 40 in, left=in-corner(90 deg), right=out-corner(90 deg)")["N"]
    assert (measured.left.assumed, measured.right.assumed) == (False, False)
    others = pieces("N: 40 in, left=butt, right=return")["N"]
    assert (others.left.assumed, others.right.assumed) == (False, False)


def test_what_a_rough_diagonal_leaves_in_doubt_is_counted_from_the_sharper_corner() -> None:
    # 6 in along both walls: a sixteenth in the diagonal of 8 1/2 in is about 0.85° of corner
    line = "N: 40 in, left=out-corner(corner by 6 in, 6 in, diagonal 8 1/2 in), right=butt"
    (piece,) = check_job(walls(line, settings="corners: out-corner gap 1 in")).pieces
    cut = piece.left
    assert cut.corner_error is not None
    wide, exact = cut.exact + cut.corner_error / 2, cut.exact
    tangents = [mpmath.tan(mpmath.radians(float(angle))) for angle in (wide, exact)]
    # twice the thickness, since both pieces open; half is the sine of half the corner
    half = mpmath.cos(mpmath.radians(float(exact)))
    assert float(cut.doubt) == pytest.approx(
        float(2 * 0.5625 * (tangents[0] - tangents[1]) * half), 1e-9
    )


def test_a_surveyed_splice_grows_by_its_lap(pieces: Pieces) -> None:
    found = pieces(
        "N: 40 in, left=butt, right=splice\n  E: 40 in, left=splice, right=butt",
        settings="splices: angle 30 deg",
    )
    # 9/16 × tan 30° = 0.324760, in the left piece alone
    assert float(found["N"].rounding.exact) == pytest.approx(40.324760, abs=1e-6)
    assert found["E"].rounding.exact == Fraction(40)


def test_a_gap_and_what_is_in_doubt_count_together() -> None:
    line = "N: 40 in, left=in-corner(corner by 36 in, 36 in, diagonal 51 in), right=butt"
    (piece,) = check_job(walls(line, settings="corners: in-corner gap 1 in")).pieces
    both = float(piece.left.gap + piece.left.doubt)
    assert piece.left.gap > 0 < piece.left.doubt
    for limit, codes in ((both - 0.0005, ["T405"]), (both + 0.0005, [])):
        settings = f"corners: in-corner gap {limit:.5f} in"
        told = [one.code for one in check_job(walls(line, settings=settings)).diagnostics]
        assert [code for code in told if code == "T405"] == codes


@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize(("degrees", "code"), [(60, "T404"), (94, "T405")])
def test_a_cut_that_the_saw_cannot_make_is_told_by_its_side(
    side: str, degrees: int, code: str
) -> None:
    ends = {"left": "butt", "right": "butt", side: f"in-corner({degrees} deg)"}
    line = f"N: 40 in, left={ends['left']}, right={ends['right']}"
    found = check_job(
        walls(line, settings="saw: reads to 5 deg\ncorners: in-corner gap 1/32 in")
    ).diagnostics
    (said,) = [one.message for one in found if one.code == code]
    assert f"the {side} end of run N" in said


def test_a_corner_that_closes_keeps_the_tightest_limit() -> None:
    line = "N: 40 in, left=out-corner(90 deg), right=in-corner(90 deg)"
    settings = "corners: out-corner gap 0 in, in-corner gap 0 in"
    assert not check_job(walls(line, settings=settings)).diagnostics


def test_a_gap_is_told_with_what_is_in_doubt() -> None:
    line = "N: 40 in, left=in-corner(corner by 6 in, 6 in, diagonal 8 1/2 in), right=butt"
    result = check_job(walls(line, settings="corners: in-corner gap 0 in"))
    (piece,) = result.pieces
    (said,) = [one.message for one in result.diagnostics if one.code == "T405"]
    both = float(piece.left.gap + piece.left.doubt)
    assert piece.left.doubt > Fraction(1, 100)
    assert f"{round(both * 64)}/64 in ({round(both * 25.4, 1):g} mm)" in said


def test_what_comes_to_nothing_is_no_piece() -> None:
    # a thirty-second between butts is nothing on a tape of sixteenths
    result = check_job(walls("N: 1/32 in, left=butt, right=butt"))
    assert "T402" in {one.code for one in result.diagnostics}
    assert not result.pieces


def test_a_step_in_the_wall_may_be_smaller_than_the_trim_is_thick(pieces: Pieces) -> None:
    step = pieces(
        """\
  A: 40 in, left=butt, right=in-corner(90 deg)
  Y: 1/4 in, left=in-corner(90 deg), right=out-corner(90 deg)
  Z: 30 in, left=out-corner(90 deg), right=butt"""
    )["Y"]
    # both cuts run alike, so each edge is as long as the step
    assert step.length == Fraction(1, 4) + Fraction(9, 16)
    assert step.back == step.face == Fraction(1, 4)
    assert step.short_points < 0


def test_a_step_smaller_than_its_mate_is_thick_has_no_coped_piece() -> None:
    # A runs square into the corner, 9/16 in of it before a wall of 1/4 in
    step = """\
  A: 40 in, left=butt, right=in-corner(90 deg)
  Y: 1/4 in, left=in-corner(90 deg) cope, right=out-corner(90 deg)
  Z: 30 in, left=out-corner(90 deg), right=butt"""
    result = check_job(walls(step))
    assert [one.code for one in result.diagnostics] == ["T402"]
    assert {piece.run for piece in result.pieces} == {"A", "Z"}
    assert check_job(walls(step.replace("1/4 in", "5/8 in"))).ok


@pytest.mark.parametrize(("number", "there"), [("1/2 in", False), ("5/8 in", True)])
def test_scraps_may_reach_past_the_whole_of_a_step(number: str, there: bool) -> None:
    # the scrap passes the corner by 9/16 in: a number of 1/2 in leaves no wall behind it, though
    # the face, 9/16 × tan 30° = 0.3248 in shorter than the number, would be there
    step = f"Y: {number}, left=in-corner(120 deg), right=out-corner(90 deg, taken point)"
    result = check_job(walls(step))
    assert [piece.run for piece in result.pieces] == ["Y"] * there
    assert ("T402" in {one.code for one in result.diagnostics}) is not there


def test_a_niche_narrower_than_its_two_mitres_has_no_piece() -> None:
    niche = "N: 1 in, left=in-corner, right=in-corner"
    assert "T402" in {one.code for one in check_job(walls(niche)).diagnostics}


def test_mitres_may_meet_in_a_point(pieces: Pieces) -> None:
    # two of 9/16 × tan 45° are 1 1/8 in: a wedge, as a return is
    wedge = pieces("N: 1 1/8 in, left=in-corner(90 deg), right=in-corner(90 deg)")["N"]
    assert (wedge.length, wedge.back, wedge.face) == (Fraction(9, 8), Fraction(9, 8), 0)


@pytest.mark.parametrize(
    ("ends", "unit", "wider"),
    [
        # 2 × 9/16 × (tan 45° − tan 42.55°) × cos 42.55° = 0.0680 in = 1.73 mm
        ("left=butt, right=in-corner(94.9 deg)", "in", "in-corner gap 1/8 in"),
        ("left=butt, right=in-corner(94.9 deg)", "mm", "in-corner gap 2 mm"),
    ],
)
def test_the_wider_gap_is_named_as_one_reads_a_tape(ends: str, unit: str, wider: str) -> None:
    settings = f"unit {unit}\nsaw: reads to 5 deg"
    (said,) = check_job(walls(f"N: 40 in, {ends}", settings=settings)).diagnostics
    assert said.code == "T405"
    assert str(said.remedy).endswith(f"or allow a wider gap: corners: {wider}")


@pytest.mark.parametrize(
    ("ends", "settings"),
    [
        ("left=in-corner(94.9 deg), right=butt", "saw: reads to 5 deg"),
        ("left=in-corner(94.9 deg), right=butt", "unit mm\nsaw: reads to 5 deg"),
        ("left=butt, right=rake", "saw: reads to 5 deg"),
    ],
)
def test_the_wider_gap_that_is_named_is_wide_enough(ends: str, settings: str) -> None:
    line = f"N: 1000 mm, {ends}"
    if "rake" in ends:
        line += "\n  R: 60 in, left=rake, right=plumb, rising right 35 deg"
    said = check_job(walls(line, settings=settings)).diagnostics
    remedies = {str(one.remedy).partition("wider gap: ")[2] for one in said if one.code == "T405"}
    assert remedies
    assert not check_job(walls(line, settings="\n".join([settings, *remedies]))).diagnostics


def test_a_number_that_lies_on_a_mark_stays_on_it() -> None:
    # cos of this corner is -16/65, so the tangent of its mitre 7/9: 39 9/16 + 7/16 is 40 exactly,
    # and the thirtieth decimal of the tangent must not push it to the next mark
    corner = "out-corner(corner by 13 in, 40 in, diagonal 45 in)"
    (piece,) = check_job(walls(f"N: 39 9/16 in, left={corner}, right=butt")).pieces
    assert piece.length == piece.rounding.exact == 40
    assert piece.rounding.by == 0
