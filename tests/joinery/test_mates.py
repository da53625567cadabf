"""Trims that meet none of their kind in a corner, and what their neighbours are taken to be."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest

from tests.every import every
from tests.jobs import CROWN, SHOE, TRIM
from trimlang.compiler import check_job
from trimlang.joinery.piece import Piece
from trimlang.joint_row import Fit
from trimlang.joints import Joint

HEAD = f"""\
trim base: 3/4 in thick, 5 1/4 in tall
{SHOE}
{CROWN}
stock base: 12 ft at 9
stock shoe: 12 ft at 9
stock crown: 12 ft at 9
"""


def room(trims: str, *lines: str, head: str = "") -> dict[str, Piece]:
    """The pieces of an open walk, by run and trim."""
    text = f'{HEAD}{head}\nroom "R", trim {trims}, open walk\n' + "\n".join(lines)
    result = check_job(text)
    assert result.ok, result.diagnostics
    return {piece.id.removeprefix("R-"): piece for piece in result.pieces}


@every(
    "degrees, setting",
    [
        # further off it is bevelled along the face that it ends at
        ("84.9", 5),
        ("85", 0),
        ("95", 0),
        ("95.1", 5),
    ],
)
@every("side", ["left", "right"])
def test_a_square_end_closes_a_corner_up_to_five_degrees_off(
    side: str, degrees: str, setting: int
) -> None:
    with_shoe, without = ("W", "C") if side == "right" else ("C", "W")
    ends = {
        "W": f"W: 60 in, left=butt, right=in-corner({degrees} deg)",
        "C": f"C: 60 in, left=in-corner({degrees} deg), right=butt",
    }
    ends[without] += ", no shoe"
    made = room("base, shoe", ends["W"], ends["C"])
    end = getattr(made[f"{with_shoe}-shoe"], side)
    assert (end.joint, end.setting) == (Joint.BUTT, setting)
    # base has its mate whatever the corner
    assert getattr(made[f"{with_shoe}-base"], side).joint is Joint.IN_CORNER


@pytest.mark.parametrize("cope", ["", " cope"])
@pytest.mark.parametrize("side", ["left", "right"])
def test_an_end_without_a_mate_is_cut_as_any_butt(side: str, cope: str) -> None:
    at = {"left": "butt", "right": "butt"}
    plain = room("base, shoe", f"N: 60 in, left={at['left']}, right={at['right']}")["N-shoe"]
    beside = "left" if side == "right" else "right"
    lines = [
        f"N: 60 in, {', '.join(f'{k}={v}' for k, v in (at | {side: f'in-corner{cope}'}).items())}",
        f"E: 60 in, {', '.join(f'{k}={v}' for k, v in (at | {beside: 'in-corner'}).items())}, "
        "no shoe",
    ]
    alone = room("base, shoe", *(lines if side == "right" else lines[::-1]))["N-shoe"]
    assert getattr(alone, side) == getattr(plain, side)
    assert getattr(alone, side).fit is Fit.MITRED
    # round it stands the base of the next wall, 3/4 in thick
    assert alone.length == 60 - Fraction(3, 4)


@pytest.mark.parametrize(("more", "joint"), [("", Joint.IN_CORNER), (", no crown", Joint.BUTT)])
def test_crown_that_goes_on_over_openings_looks_for_its_mate_beyond_them(
    more: str, joint: Joint
) -> None:
    made = room(
        "base, crown",
        "A: 40 in, left=butt, right=butt",
        "opening 32 in",
        "B: 20 in, left=butt, right=butt",
        "opening 30 in",
        "C: 10 in, left=butt, right=in-corner(90 deg)",
        f"D: 50 in, left=in-corner, right=butt{more}",
    )
    over = made["A-crown"]
    # 40 + 32 + 20 + 30 + 10
    assert over.wall_edge == 132
    assert over.right.joint is joint
    # mitred 45° it ends 3 5/8 × sin 38° = 2.2318 in sooner at the ceiling edge; square it does not
    sooner = 3.625 * math.sin(math.radians(38)) if joint is Joint.IN_CORNER else 0
    assert float(132 - over.face) == pytest.approx(sooner, abs=1e-6)


def test_what_lies_past_the_ends_of_an_open_walk_is_not_known() -> None:
    # the room goes on there: the shoe is mitred as the file says, whatever its other end lacks
    lines = [
        "A: 60 in, left=in-corner(90 deg), right=in-corner(90 deg)",
        "B: 60 in, left=in-corner, right=in-corner(90 deg)",
    ]
    first = room("base, shoe", lines[0] + ", no shoe", lines[1])["B-shoe"]
    assert (first.left.joint, first.right.joint) == (Joint.BUTT, Joint.IN_CORNER)
    # on both sides stands base, 3/4 in thick
    assert first.length == 60 - 2 * Fraction(3, 4)
    last = room("base, shoe", lines[0], lines[1] + ", no shoe")["A-shoe"]
    assert (last.left.joint, last.right.joint) == (Joint.IN_CORNER, Joint.BUTT)
    assert last.length == 60 - 2 * Fraction(3, 4)


def test_the_last_wall_of_a_closed_room_has_the_first_beside_it() -> None:
    walls = [f"{name}: 60 in, left=in-corner(90 deg), right=in-corner(90 deg)" for name in "NESW"]
    walls[0] += ", no shoe"
    text = f'{HEAD}room "R", trim base, shoe\n' + "\n".join(walls)
    made = {piece.id: piece for piece in check_job(text).pieces}
    joints = {
        name: (made[f"R-{name}-shoe"].left.joint, made[f"R-{name}-shoe"].right.joint)
        for name in "ESW"
    }
    mitred = Joint.IN_CORNER
    assert joints == {"E": (Joint.BUTT, mitred), "S": (mitred, mitred), "W": (mitred, Joint.BUTT)}


def test_a_wall_without_base_carries_shoe_on_itself() -> None:
    # the shoe of W stands 3/4 in off its wall, before base, and C's on its wall: at 120° they
    # meet where those two lines cross
    made = room(
        "base, shoe",
        "W: 60 in, left=butt, right=out-corner(120 deg)",
        "C: 24 in, left=out-corner, right=butt, no base",
    )
    own = 0.5 * math.tan(math.radians(30))
    # C's line is its wall; W's lies 3/4 in outside W: from the corner 0.75 / sin 120° = 0.866025
    assert float(made["C-shoe"].rounding.exact) == pytest.approx(24 + 0.866025 + own, abs=1e-6)
    # W's end, along W: 0.75 · cos 120° / sin 120° = −0.433013
    assert float(made["W-shoe"].rounding.exact) == pytest.approx(60 - 0.433013 + own, abs=1e-6)
    inside = room(
        "base, shoe",
        "W: 60 in, left=butt, right=in-corner(120 deg)",
        "C: 24 in, left=in-corner, right=butt, no base",
    )
    # inside, the same two lines meet before C's end: by 0.866025
    assert float(inside["C-shoe"].rounding.exact) == pytest.approx(24 - 0.866025, abs=1e-6)
    assert float(inside["W-shoe"].rounding.exact) == pytest.approx(60 + 0.433013, abs=1e-6)


def test_shoe_over_scraps_of_base_whose_other_wall_has_no_base() -> None:
    ends = ("left=butt, right=out-corner(90 deg, taken point)", "left=out-corner, right=butt")
    both = room("base, shoe", f"W: 60 in, {ends[0]}", f"C: 24 in, {ends[1]}")
    # the tape ran to the base's long point; shoe goes on by its own 1/2 in
    assert (both["W-base"].length, both["W-shoe"].length) == (60, Fraction(121, 2))
    one = room("base, shoe", f"W: 60 in, {ends[0]}", f"C: 24 in, {ends[1]}, no base")
    # the scrap of base passed the corner by 3/4 in, so W is 59 1/4 in long; C's shoe lies
    # on its wall, and W's meets it at the corner and turns 1/2 in outside it
    assert (one["W-base"].length, one["W-shoe"].length) == (60, Fraction(239, 4))
    ends = ("left=butt, right=out-corner(90 deg)", "left=out-corner(taken point), right=butt")
    own = room("base, shoe", f"W: 60 in, {ends[0]}", f"C: 24 in, {ends[1]}, no base")
    # C's scraps were of its shoe
    assert own["C-shoe"].length == 24


def test_no_trim_stands_before_one_of_no_stated_thickness() -> None:
    text = TRIM.replace("9/16 in thick, ", "") + (
        f"{SHOE}\nstock shoe: 8 ft at 5\n"
        'room "R", trim base, shoe, open walk\nN: 40 in, left=butt, right=butt\n'
    )
    result = check_job(text)
    assert [one.code for one in result.diagnostics] == ["T211"]
    assert not result.pieces
