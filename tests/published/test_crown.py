"""Crown's settings, against planes turned in space and against printed saw manuals.

The derivation here shares no formula with trimlang: it sets up the two walls,
takes the plane between them, turns the trim with numpy until its back lies on
the saw's table, and reads mitre and bevel off the turned plane's normal.
"""

from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

import trimlang
from tests.jobs import CROWN, TWELVE_FEET
from trimlang.compiler import check_job
from trimlang.joinery.at_the_saw import at_saw, nested, saw_for
from trimlang.joinery.crown import drop, flat_bevel, flat_mitre, projection
from trimlang.language.end_facts import Side

JOB = f"""
{CROWN}
stock crown: 12 ft at 21.00
room "R", trim crown, open walk
"""
CORNERS = range(60, 171, 5)
SPRINGS = (38, 45)


def about_x(degrees):
    turn = np.radians(degrees)
    return np.array([[1, 0, 0], [0, np.cos(turn), -np.sin(turn)], [0, np.sin(turn), np.cos(turn)]])


def waste_normal(corner, side, inside):
    """The unit normal of the joint's plane, towards the waste, as one faces the wall.

    x runs to the right along the wall, y into the wall, z up; the trim stands on
    the near side of the wall (y < 0).
    """
    out = 1.0 if side == "right" else -1.0
    along = np.array([out, 0.0, 0.0])
    turn = np.radians(180 - corner)
    # the next wall leaves towards the room at an inside corner, away at an outside one
    towards = -1.0 if inside else 1.0
    next_wall = np.array([out * np.cos(turn), towards * np.sin(turn), 0.0])
    normal = along + next_wall
    return normal / np.linalg.norm(normal)


def lying_flat(normal, spring, ceiling_to_fence):
    """Turn a normal with the trim, until it lies face up with one edge at the fence."""
    # the width points from the wall edge up and out to the ceiling edge
    s = np.radians(spring)
    width = np.array([0, -np.sin(s), np.cos(s)])
    lay = about_x(-(90 + spring))
    turned_width = lay @ width
    assert np.allclose(turned_width, [0, 1, 0])
    normal = lay @ normal
    if not ceiling_to_fence:
        normal = np.diag([-1.0, -1.0, 1.0]) @ normal
    return normal


def read_off(normal):
    """Mitre (degrees, its swing) and bevel (degrees, which way the blade leans)."""
    x, y, z = normal if normal[0] > 0 else -normal
    mitre = np.degrees(np.arctan2(abs(y), x))
    # the blade's line runs along (-y, x): its far end to the left is a swing to the right
    swing = "right" if y > 0 else "left"
    bevel = np.degrees(np.arcsin(abs(z)))
    leans = "left" if z > 0 else "right"
    return mitre, swing, bevel, leans


def one_end(corner, side, inside, spring=38):
    """One crown end at a corner, as it is cut, as it lies flat and as it lies nested."""
    ends = {"left": "butt", "right": "butt", side: f"{'in' if inside else 'out'}-corner"}
    ends[side] += f"({corner} deg)"
    text = JOB.replace("38", str(spring)).replace("trim crown:", "saw: reaches 75 deg\ntrim crown:")
    line = f"N: 60 in, left={ends['left']}, right={ends['right']}"
    result = check_job(text + line)
    (piece,) = result.pieces
    cut = getattr(piece, side)
    saw = saw_for(result.job.trim("crown"), result.job.settings)
    return cut, at_saw(cut, Side(side), saw), nested(cut, Side(side))


@pytest.mark.parametrize("spring", SPRINGS)
@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize("inside", [True, False])
def test_lying_flat_agrees_with_turned_planes(spring, side, inside):
    for corner in CORNERS:
        cut, at, _ = one_end(corner, side, inside, spring)
        normal = waste_normal(corner, side, inside)
        flat = lying_flat(normal, spring, at.pose.fence == "ceiling edge")
        mitre, swing, bevel, leans = read_off(flat)
        assert float(cut.exact) == pytest.approx(mitre, abs=1e-9)
        assert float(cut.bevel) == pytest.approx(bevel, abs=1e-9)
        assert (swing, leans) == (at.swing, at.tilt)
        assert leans == "left"
        assert at.piece == ("left" if flat[0] > 0 else "right")


@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize("inside", [True, False])
def test_nested_upside_down_agrees_with_turned_planes(side, inside):
    for corner in CORNERS:
        cut, _, at = one_end(corner, side, inside)
        # upside down, its wall edge still against the fence: half a turn about y
        normal = np.diag([-1.0, 1.0, -1.0]) @ waste_normal(corner, side, inside)
        mitre, swing, bevel, _ = read_off(normal)
        assert float(cut.crown.nested) == pytest.approx(mitre, abs=1e-9)
        assert bevel == pytest.approx(0, abs=1e-9)
        assert swing == at.swing
        assert at.piece == ("left" if normal[0] > 0 else "right")


@pytest.mark.parametrize(("spring", "mitre", "bevel"), [(38, 31.62, 33.86), (45, 35.26, 30.00)])
def test_values_printed_in_saw_manuals_from_memory(spring, mitre, bevel):
    assert float(flat_mitre(Fraction(spring), Fraction(45))) == pytest.approx(mitre, abs=0.005)
    assert float(flat_bevel(Fraction(spring), Fraction(45))) == pytest.approx(bevel, abs=0.005)


@pytest.mark.parametrize(
    ("side", "inside", "fence", "swing", "keep"),
    [
        ("right", True, "ceiling edge", "right", "left"),
        ("left", True, "wall edge", "left", "left"),
        ("right", False, "wall edge", "left", "right"),
        ("left", False, "ceiling edge", "right", "right"),
    ],
)
def test_the_four_ends_as_saw_manuals_list_them_from_memory(side, inside, fence, swing, keep):
    _, at, _ = one_end(90, side, inside)
    assert (at.pose.fence, at.swing, at.piece) == (fence, swing, keep)


def test_the_section_closes_a_right_triangle():
    width, spring = Fraction(29, 8), Fraction(38)
    across = projection(width, spring) ** 2 + drop(width, spring) ** 2
    assert float(across) == pytest.approx(float(width**2), abs=1e-12)


def test_the_number_is_along_the_wall_edge_and_the_stick_is_longer():
    result = trimlang.compile(
        JOB + "N: 60 in, left=in-corner(90 deg), right=out-corner(90 deg)\n"
        "E: 30 in, left=out-corner(90 deg), right=return"
    )
    assert not result.diagnostics
    first, second, closing = result.pieces
    # the ceiling edge stands out 3 5/8 × sin 38° = 2.2318 in and is that much longer
    assert first.wall_edge == first.back == first.to_mark == 60
    assert first.measured_on == "wall edge"
    assert first.length == Fraction(62) + Fraction(1, 4)
    # at the inside corner the ceiling edge falls short by as much
    assert float(first.face) == pytest.approx(60, abs=1e-9)
    assert float(first.right.bevel) == pytest.approx(33.86, abs=0.005)
    assert first.right.bevel_setting == 34
    assert float(second.face) == pytest.approx(30 + 2 * 2.2318, abs=1e-3)
    assert closing.length == Fraction(36, 16)


def test_crown_taken_over_scraps():
    result = trimlang.compile(
        JOB + "N: 62 1/4 in, left=butt, right=out-corner(90 deg, taken point)"
    )
    # 62.25 − 2.2318 = 60.0182, up to the next sixteenth
    assert result.pieces[0].wall_edge == Fraction(961, 16)


def test_spliced_crown_conserves_the_wall():
    result = trimlang.compile(JOB + "N: 25 ft, left=out-corner(90 deg), right=out-corner(90 deg)")
    assert not result.diagnostics
    lap = Fraction(11, 16)
    parts = result.pieces
    assert sum(part.wall_edge for part in parts) - lap * (len(parts) - 1) == 300
    assert all(part.length <= 144 for part in parts)


def test_crown_goes_on_over_an_opening():
    result = trimlang.compile(
        JOB.replace("trim crown, open walk", "trim crown, base, open walk")
        + f"trim base: 9/16 in thick\n{TWELVE_FEET}\n"
        + 'S1: 60 in, left=in-corner(90 deg), right=butt\nopening 36 in, "door"\n'
        + "S2: 40 in, left=butt, right=in-corner(90 deg)"
    )
    assert not result.diagnostics
    assert [(piece.id, piece.length) for piece in result.pieces] == [
        ("R-S1-crown", 136),
        ("R-S1-base", 60),
        ("R-S2-base", 40),
    ]
    assert result.pieces[0].all_notes == "goes on over door to S2"


@given(st.integers(30, 170))
def test_at_its_limits_crown_is_plain_trim(corner):
    """Nearly flat on the wall only the bevel is left, nearly flat on the ceiling only the mitre."""
    standing, hair = 90 - Fraction(corner, 2), Fraction(1, 10**9)
    assert float(flat_mitre(hair, standing)) == pytest.approx(0, abs=1e-6)
    assert float(flat_bevel(hair, standing)) == pytest.approx(float(standing), abs=1e-6)
    assert float(flat_mitre(90 - hair, standing)) == pytest.approx(float(standing), abs=1e-6)
    assert float(flat_bevel(90 - hair, standing)) == pytest.approx(0, abs=1e-6)


def test_crown_does_not_climb():
    text = JOB + "N: 60 in, left=butt, right=plumb, rising right 36 deg"
    assert "T247" in {one.code for one in trimlang.compile(text).diagnostics}
