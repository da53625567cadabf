"""Splices, returns, and trims that stand in front of others."""

import math
from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tests.jobs import SHOE, SHOE_STOCK, walls
from trimlang.compiler import Result, check_job
from trimlang.joinery.piece import Piece, PieceKind
from trimlang.joint_row import Edge, Fit
from trimlang.joints import Joint

Pieces = Callable[..., dict[str, Piece]]
LAP = Fraction(9, 16)
INNER = ["in-corner", "out-corner", "butt", "return", "open"]


def test_a_long_wall_is_spliced(pieces: Pieces) -> None:
    parts = pieces("N: 40 ft, left=in-corner, right=butt")
    assert list(parts) == ["N-a", "N-b", "N-c"]
    assert all(24 <= piece.length <= 192 for piece in parts.values())
    assert sum(piece.length for piece in parts.values()) == 480 + 2 * LAP
    assert [piece.right.setting for piece in parts.values()] == [45, 45, 0]
    assert parts["N-a"].right.lean == parts["N-b"].left.lean


@given(
    st.integers(400, 19_000),
    st.sampled_from(INNER),
    st.sampled_from(INNER),
    st.sampled_from([0, 30, 45]),
)
def test_splicing_conserves_length(sixteenths: int, left: str, right: str, angle: int) -> None:
    settings = f"splices: angle {angle} deg" if angle else ""
    run = f"N: {sixteenths}/16 in, left={left}, right={right}"
    result = check_job(walls(run, settings=settings))
    assert result.ok
    parts = [piece for piece in result.pieces if piece.kind is PieceKind.RUN]
    laps = sum((piece.right.inset for piece in parts[:-1]), Fraction(0))
    step = Fraction(1, 16)
    whole = check_job(walls(run, settings="stock base: 100 ft at 1")).pieces[0]
    assert abs(sum(piece.length for piece in parts) - laps - whole.rounding.exact) < step
    assert all(piece.length <= 192 for piece in parts)
    assert len(parts) == 1 or all(piece.length >= 24 - step for piece in parts)


def test_a_splice_can_be_asked_for_and_forbidden(pieces: Pieces) -> None:
    assert list(pieces("N: 11 ft, left=butt, right=butt, splice")) == ["N-a", "N-b"]
    result = check_job(walls("N: 17 ft, left=butt, right=butt, no splice"))
    assert [one.code for one in result.diagnostics] == ["T401"]
    allowed = check_job(walls("N: 17 ft, left=butt, right=butt", settings="splices: never"))
    assert [one.code for one in allowed.diagnostics] == ["T401"]


def test_a_return_is_a_piece_of_its_own(pieces: Pieces) -> None:
    both = pieces("N: 40 in, left=return, right=return")
    assert list(both) == ["N", "N-left-return", "N-right-return"]
    assert both["N"].length == both["N"].face == 40
    assert both["N"].back == 40 - 2 * LAP
    end = both["N-right-return"]
    assert (end.kind, end.length, end.back) == (PieceKind.RETURN, LAP, 0)
    assert (end.left.setting, end.right.setting) == (45, 0)
    assert (end.wall, end.part, end.parts) == (LAP, 1, 1)
    assert (end.rounding.row, end.rounding.exact, end.rounding.by) == ("return", LAP, 0)
    assert end.left.long_edge == both["N"].right.long_edge == "face"


SHOE_SOLD = f"{SHOE}\n{SHOE_STOCK}\n"


def shoe(ends: str) -> Piece:
    result: Result = check_job(walls(f"N: 40 in, {ends}, trim shoe", settings=SHOE_SOLD))
    assert result.ok, result.diagnostics
    return result.pieces[0]


@pytest.mark.parametrize(
    ("ends", "length"),
    [
        # base is 9/16 thick, shoe 1/2; all corners 90°, so each tangent is 1
        ("left=in-corner(90 deg), right=in-corner(90 deg)", 40 - 2 * Fraction(9, 16)),
        ("left=out-corner(90 deg), right=butt", 40 + Fraction(9, 16) + Fraction(1, 2)),
        ("left=in-corner(90 deg), right=out-corner(90 deg)", 40 + Fraction(1, 2)),
        ("left=butt, right=butt", Fraction(40)),
        # over scraps of base, its thickness is in the number, the shoe's own is not
        ("left=out-corner(90 deg), right=butt, taken point", 40 + Fraction(1, 2)),
    ],
)
def test_shoe_stands_in_front_of_base(ends: str, length: Fraction) -> None:
    assert shoe(ends).length == length


@given(st.integers(16, 2000), st.sampled_from(INNER), st.sampled_from(INNER), st.integers(60, 170))
def test_mirroring_a_run_swaps_left_and_right_and_nothing_else(
    sixteenths: int, left: str, right: str, angle: int
) -> None:
    def end(joint: str) -> str:
        return f"{joint}({angle} deg)" if "corner" in joint else joint

    def cut(one: str, other: str) -> Piece:
        lines = f"N: {sixteenths}/16 in, left={end(one)}, right={end(other)}"
        result = check_job(walls(lines, settings="stock base: 100 ft at 1"))
        assume(result.pieces)  # too short for such ends
        return result.pieces[0]

    here, there = cut(left, right), cut(right, left)
    assert (here.length, here.back, here.face) == (there.length, there.back, there.face)
    assert (here.left.exact, here.left.long_edge) == (there.right.exact, there.right.long_edge)
    opposite = {"left": "right", "right": "left", "square": "square"}
    assert opposite[here.left.lean] == there.right.lean


@given(st.integers(60, 170), st.sampled_from(["in-corner", "out-corner"]))
def test_both_sides_of_a_joint_close_the_corner(angle: int, joint: str) -> None:
    lines = f"N: 40 in, left=butt, right={joint}({angle} deg)\nE: 50 in, left={joint}, right=butt"
    one, other = check_job(walls(lines)).pieces
    assert one.right.exact == other.left.exact
    # a mitre is counted from square: two of them turn the trim by 180° less the corner
    assert one.right.exact + other.left.exact == 180 - angle
    assert abs(one.right.setting - one.right.exact) <= Fraction(1, 4)


def test_joint_gap_is_what_the_saws_step_leaves(pieces: Pieces) -> None:
    exact = pieces("N: 40 in, left=butt, right=out-corner(90 deg)")["N"]
    assert exact.right.gap == 0
    coarse = pieces(
        "N: 40 in, left=butt, right=out-corner(89.3 deg)", settings="saw: reads to 1 deg"
    )["N"]
    # wanted 45.35°, set to the steeper mark: 2 × 9/16 × (tan 46° − tan 45.35°) × cos 45.35°
    assert coarse.right.setting == 46
    assert float(coarse.right.gap) == pytest.approx(0.01838, abs=1e-4)
    # which closes at the face, where it is seen
    assert coarse.right.opens_at is Edge.BACK


BOTH = "trim base: 3/4 in thick, 5 1/4 in tall\nstock base: 12 ft at 9\n" + SHOE_SOLD


def met(wall: str, other: str, *, room: str = "trim base, shoe") -> dict[str, Piece]:
    """Two walls that meet in an inside corner, of 90° where it says nothing else."""
    text = f'{BOTH}room "R" as R, {room}, open walk\n  W: 60 in, {wall}\n  C: 24 in, {other}\n'
    result = check_job(text)
    assert result.ok, result.diagnostics
    return {piece.id: piece for piece in result.pieces}


def test_a_trim_that_ends_in_an_inside_corner_runs_square_into_it() -> None:
    # a mitre there would leave the face short of the wall by the trim's thickness
    made = met("left=butt, right=in-corner(90 deg)", "left=in-corner, right=butt, no base")
    base, shoe, turned = made["R-W-base"], made["R-W-shoe"], made["R-C-shoe"]
    assert (base.right.joint, base.right.setting, base.length) == (Joint.BUTT, 0, 60)
    assert base.back == base.face == 60
    # on C the shoe stands on the wall itself, and on W off it by 3/4 in of base
    assert shoe.right.joint is turned.left.joint is Joint.IN_CORNER
    assert (shoe.length, turned.length) == (60, 24 - Fraction(3, 4))


def test_either_end_may_be_without_a_mate() -> None:
    made = met("left=butt, right=in-corner(90 deg), no base", "left=in-corner(90 deg), right=butt")
    base, shoe, before = made["R-C-base"], made["R-C-shoe"], made["R-W-shoe"]
    assert (base.left.joint, base.length, base.face) == (Joint.BUTT, 24, 24)
    assert (shoe.length, before.length) == (24, 60 - Fraction(3, 4))
    made = met("left=butt, right=in-corner, no shoe", "left=in-corner, right=butt")
    assert made["R-C-shoe"].length == 24 - Fraction(3, 4)


def test_shoe_that_ends_in_a_corner_stops_at_the_base_round_it() -> None:
    made = met("left=butt, right=in-corner", "left=in-corner cope, right=butt, no shoe")
    shoe, base = made["R-W-shoe"], made["R-W-base"]
    assert (shoe.right.joint, shoe.length) == (Joint.BUTT, 60 - Fraction(3, 4))
    # the two of base are one corner still, coped as the file says
    assert (base.right.fit, made["R-C-base"].left.fit) == (Fit.SQUARE, Fit.COPED)
    crooked = met("left=butt, right=in-corner(120 deg)", "left=in-corner, right=butt, no shoe")
    end = crooked["R-W-shoe"].right
    assert (end.joint, end.setting, end.long_edge) == (Joint.BUTT, 30, Edge.FACE)


def test_shoe_alone_stands_before_base_that_is_there_already() -> None:
    ends = ("left=butt, right=in-corner(90 deg)", "left=in-corner(90 deg), right=butt")
    made = met(*ends, room="trim shoe")
    assert [made[f"R-{wall}-shoe"].length for wall in "WC"] == [59.25, 23.25]


def test_shoe_round_an_outside_corner_whose_other_wall_has_no_base() -> None:
    # the shoe of C stands on its wall; that of W, off its own by the base, comes 3/4 in further
    # than it would: W's back line is met at the wall's corner, C's 3/4 in beyond
    made = met("left=butt, right=out-corner(90 deg)", "left=out-corner, right=butt, no base")
    assert made["R-W-shoe"].length == 60 + Fraction(1, 2)
    assert made["R-C-shoe"].length == 24 + Fraction(3, 4) + Fraction(1, 2)
    bay = met("left=butt, right=out-corner(120 deg)", "left=out-corner, right=butt, no base")
    # lines 3/4 in and 0 in off walls at 120° meet 3/4 · cos 120° / sin 120° from the corner
    off = float(bay["R-W-shoe"].rounding.exact) - 60 - 0.5 * math.tan(math.radians(30))
    assert off == pytest.approx(0.75 * math.cos(math.radians(120)) / math.sin(math.radians(120)))
