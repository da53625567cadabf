"""Corners out of plumb, rounded corners in two pieces, and trim whose pattern goes one way."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests import jobs
from tests.jobs import CROWN_STOCK
from trimlang.compiler import Result, check_job, compile_job
from trimlang.joinery.odd_corners import hollow_behind, opens_at_ends
from trimlang.joinery.piece import Piece
from trimlang.lengths.tape import length_text
from trimlang.sheets.render.pages import render_sheets


def walls(*lines: str, trim: str = jobs.BASE, settings: str = "") -> Result:
    text = "\n".join(f"  {line}" for line in lines)
    room = f'room "Den", trim base, open walk\n{text}\n'
    return check_job(f"{trim}\n{jobs.TWELVE_FEET}\n{settings}\n{room}")


def corner(inside: str) -> Result:
    return walls(f"N: 40 in, left=butt, right={inside}", "E: 50 in, right=butt")


def test_a_corner_out_of_plumb_is_set_for_mid_height() -> None:
    result = corner("in-corner(91 deg at floor, 90 deg at top)")
    assert not result.diagnostics
    one, other = result.pieces
    # Half of 180° less 90 1/2°.
    assert one.right.exact == other.left.exact == Fraction(179, 4) - Fraction(0)
    same = corner("in-corner(90.5 deg)")
    assert [piece.length for piece in same.pieces] == [piece.length for piece in result.pieces]


def gap_between(mitre: float, corner: float, thickness: float) -> float:
    """Lay both pieces' mitred ends in plan by coordinates; return how far they stand open.

    Each piece is cut at ``mitre`` and pushed along its wall until it touches its mirror image on
    the line that halves the corner; the gap is across that line, at whichever edge it is open.
    """
    half = math.radians(corner / 2)
    across = []
    for out in (0.0, thickness):
        # A point of the cut on the wall's line: further from the corner by out * tan(mitre).
        x = out * math.tan(math.radians(mitre))
        # Its distance from the line that halves the corner, which leaves the wall at `half`.
        across.append(x * math.sin(half) - out * math.cos(half))
    return 2 * (max(across) - min(across))


@given(
    st.integers(80, 135).filter(lambda one: one != 90),
    st.integers(-5, 5),
    st.integers(4, 16),
)
def test_what_stays_open_is_what_the_pieces_laid_in_plan_leave(
    floor: int, twist: int, sixteenths: int
) -> None:
    top, thick = floor - twist, sixteenths / 16
    mid = (floor + top) / 2
    mitre = 90 - mid / 2
    laid = max(gap_between(mitre, at, thick) for at in (floor, top))
    told = opens_at_ends(Fraction(sixteenths, 16), Fraction(floor + top, 2), Fraction(twist))
    assert float(told) == pytest.approx(laid, abs=1e-3 * thick)


@pytest.mark.parametrize(
    ("end", "where"),
    [
        # Set for 90 1/2°: at the floor the corner is wider, and the mitre too steep for it.
        ("in-corner(91 deg at floor, 90 deg at top)", "floor"),
        ("in-corner(90 deg at floor, 91 deg at top)", "top"),
        ("out-corner(91 deg at floor, 90 deg at top)", "top"),
        ("out-corner(90 deg at floor, 91 deg at top)", "floor"),
    ],
)
def test_the_ticket_says_where_it_opens(end: str, where: str) -> None:
    one, other = corner(end).pieces
    said = "right corner out of plumb by 1°: set for mid height; it may open 1/64 in at the face"
    assert f"{said}, at the {where}" in one.all_notes
    assert f"at the {where}" in other.all_notes


def test_mirrors_and_either_side_say_the_same() -> None:
    said = corner("in-corner(91 deg at floor, 90 deg at top)")
    other = walls(
        "N: 40 in, left=butt, right=in-corner",
        "E: 50 in, left=in-corner(91 deg at floor, 90 deg at top), right=butt",
    )
    assert [one.all_notes for one in said.pieces] == [one.all_notes for one in other.pieces]
    mirrored = walls(
        "E: 50 in, left=butt, right=in-corner(91 deg at floor, 90 deg at top)",
        "N: 40 in, right=butt",
    )
    assert {one.length for one in mirrored.pieces} == {one.length for one in said.pieces}


def test_a_cope_needs_no_word() -> None:
    lines = ("N: 40 in, left=butt, right=in-corner(91 deg at floor, 90 deg at top) cope",)
    assert not any("plumb" in one.all_notes for one in walls(*lines, "E: 50 in, right=butt").pieces)


WITH_CROWN = f"""{jobs.BASE}
{jobs.TWELVE_FEET}
trim frieze: 3/4 in thick, 3 1/2 in tall
trim rail: 3/4 in thick, 2 1/2 in tall
trim crown: 11/16 in thick, 4 in wide, spring 30 deg, in front of frieze
stock frieze: 12 ft at 12.00
stock rail: 12 ft at 15.60
{CROWN_STOCK}
room "Den", trim base, rail, frieze, crown, open walk
  N: 40 in, left=butt, right=END
  E: 50 in, right=butt
"""


@pytest.mark.parametrize("joint", ["in-corner", "out-corner"])
def test_crown_is_set_for_the_angle_at_the_ceiling_and_base_for_the_floor(joint: str) -> None:
    def pieces(end: str) -> dict[str, Piece]:
        result = check_job(WITH_CROWN.replace("END", end))
        assert result.ok
        return {one.id: one for one in result.pieces}

    twisted = pieces(f"{joint}(93 deg at floor, 90 deg at top)")
    # Each trim is cut as in a plain corner of the angle that the walls have where it hangs; that
    # those close face on face is shown with solids.
    for names, degrees in (("frieze crown", "90"), ("base", "93"), ("rail", "91.5")):
        plain = pieces(f"{joint}({degrees} deg)")
        for piece in (f"DE-{wall}-{name}" for wall in "NE" for name in names.split()):
            cuts = [(one.left, one.right) for one in (twisted[piece], plain[piece])]
            assert cuts[0] == cuts[1], piece
            assert twisted[piece].rounding.exact == plain[piece].rounding.exact, piece
    said = "right corner out of plumb by 3°: set for the angle at the"
    assert f"{said} ceiling" in twisted["DE-N-crown"].all_notes
    assert f"{said} ceiling" in twisted["DE-N-frieze"].all_notes
    assert f"{said} floor" in twisted["DE-N-base"].all_notes
    # Set for 90°, laid in a corner of 93°: the crown stands out 4 × sin 30° = 2 in.
    opens = gap_between(45.0, 93.0, 2.0)
    told = math.ceil(opens * 64) / 64
    assert f"it would open {length_text(Fraction(told))}" in twisted["DE-N-crown"].all_notes


def test_at_its_wall_edge_crown_so_set_opens_less_than_paper_is_thick() -> None:
    # Between a floor and a ceiling 8 ft apart the angle changes by 3°; the crown's wall edge hangs
    # 4 × cos 30° below the ceiling, where its back is at the wall and its face hardly stands out.
    lower = 4 * math.cos(math.radians(30)) / 96
    assert gap_between(45.0, 90 + 3 * lower, 11 / 16) < 0.003


@pytest.mark.parametrize(
    ("end", "codes"),
    [
        ("in-corner(91 deg at floor, 80 deg at top)", ["T472"]),
        ("butt(91 deg at floor, 90 deg at top)", ["T227"]),
        ("in-corner(two-piece bullnose 3/4 in)", ["T290"]),
    ],
)
def test_slips(end: str, codes: list[str]) -> None:
    assert [one.code for one in corner(end).diagnostics] == codes


def test_a_wide_gap_is_warned_of() -> None:
    result = walls(
        "N: 40 in, left=butt, right=in-corner(93 deg at floor, 88 deg at top)",
        "E: 50 in, right=butt",
        settings="corners: in-corner gap 1/64 in",
    )
    assert "T473" in {one.code for one in result.diagnostics}


def test_a_rounded_corner_in_two_pieces_is_a_plain_mitre_with_a_hollow() -> None:
    result = corner("out-corner(90 deg, two-piece bullnose 3/4 in)")
    assert not result.diagnostics
    plain = corner("out-corner(90 deg)")
    assert [one.length for one in result.pieces] == [one.length for one in plain.pieces]
    # The round lies R (√2 - 1) behind the corner: 0.311 in, up to the next 64th.
    assert float(hollow_behind(Fraction(3, 4), Fraction(90))) == pytest.approx(0.75 * (2**0.5 - 1))
    assert "mitred in two: 5/16 in hollow behind" in result.pieces[0].all_notes
    assert len(corner("out-corner(90 deg, bullnose 3/4 in)").pieces) == 3
    # and at a corner that nobody measured, which is mitred for 89°
    assumed = corner("out-corner(two-piece bullnose 3/4 in)").pieces
    assert all("mitred in two: 21/64 in hollow behind" in one.all_notes for one in assumed)


def test_one_way_trim_is_said_on_the_sticks() -> None:
    trim = f"{jobs.BASE}, one way, oak"
    wall = 'room "Den", trim base, open walk\n  N: 40 in, left=butt, right=butt\n'
    text = f"{trim}\n{jobs.TWELVE_FEET}\n{wall}"
    result = compile_job(text)
    assert not result.diagnostics
    assert result.job.trims[0].material == ("oak",)
    assert "turn no piece end for end" in render_sheets(result)["stick-layouts"]
    assert (
        "turn no piece"
        not in render_sheets(compile_job(text.replace(", one way", "")))["stick-layouts"]
    )


def test_its_casing_is_warned_of_and_its_mirrored_mitres_are_two_cuts() -> None:
    cased = (
        "N: 40 in, left=butt, right=butt",
        'opening 30 in, "bath", casing base, height 80 in',
        "E: 40 in, left=butt, right=butt",
    )
    assert [one.code for one in walls(*cased, trim=f"{jobs.BASE}, one way").diagnostics] == ["T471"]
    assert not walls(*cased).diagnostics
    # A left and a right outside corner of the same length are no one kind of part.
    result = walls(
        "N: 40 in, left=butt, right=out-corner(90 deg)",
        "E: 40 in, left=out-corner, right=butt",
        trim=f"{jobs.BASE}, one way",
    )
    one, other = result.pieces
    assert one.length == other.length
    assert (one.left, one.right) != (other.left, other.right)


def test_the_step_between_unlike_trims_round_a_corner_is_told() -> None:
    tall = "trim tall: 3/4 in thick, 7 1/4 in tall\nstock tall: 12 ft at 21.00"
    result = walls(
        "N: 40 in, left=butt, right=out-corner(90 deg)",
        "E: 50 in, trim tall, left=out-corner, right=butt",
        trim=f"{jobs.BASE}\n{tall}",
    )
    one, other, _ = result.pieces
    assert "stands 2 in lower than the tall on E" in one.all_notes
    assert "stands 2 in higher than the base on N" in other.all_notes
    # Their mitres follow both thicknesses: 9/16 and 3/4 in, together a right angle.
    assert float(one.right.exact) == pytest.approx(math.degrees(math.atan(0.75 / 0.5625)), abs=1e-6)
    assert one.right.exact + other.left.exact == pytest.approx(90, abs=1e-6)
