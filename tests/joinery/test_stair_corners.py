"""Climbing trim in corners, level returns, steps, notches and newels, against solids and sums."""

from __future__ import annotations

from fractions import Fraction
from math import cos, radians, sin, sqrt, tan

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.every import every
from tests.published.test_printed_tables import RAFTERS
from trimlang.compiler import Result, check_job, compile_job
from trimlang.diagnostics.source import Source
from trimlang.joinery.piece import Cut, Piece
from trimlang.joint_row import Edge
from trimlang.language.tidy_file import tidy
from trimlang.lengths.tape import length_text

THICK, TALL = 0.75, 11.25
TRIMS = """\
saw: reads to 0.01 deg, reaches 75 deg
trim skirt: 3/4 in thick, 11 1/4 in tall
trim base: 3/4 in thick, 5 1/4 in tall
stock skirt: 30 ft at 40
stock base: 30 ft at 20
"""


def stair(lines: str) -> Result:
    return check_job(f'{TRIMS}room "Stair" as S, trim skirt, open walk\n{lines}\n')


def pieces(lines: str) -> dict[str, Piece]:
    result = stair(lines)
    assert result.ok, [one.message for one in result.diagnostics]
    return {piece.id.removeprefix("S-"): piece for piece in result.pieces}


def end_points(cut: Cut, tall: float) -> np.ndarray:
    """Where the end's four corners lie inside its long point: back foot, back top, face foot, …"""
    mitre, bevel, face = radians(cut.exact), radians(cut.bevel), cut.through_edge is Edge.FACE
    if not cut.long_edge.is_across:  # level trim is cut standing
        mitre, bevel, face = 0.0, mitre, cut.long_edge is Edge.FACE
    found = []
    for out in (0.0, THICK):
        for up in (0.0, tall):
            down = tall - up if cut.long_edge is Edge.TOP else up
            inward = THICK - out if face else out
            found.append((down * tan(mitre) + inward * tan(bevel) / cos(mitre), up, out))
    return np.array(found)


def in_space(piece: Piece, side: str, tall: float, slope: float, heading: float) -> np.ndarray:
    """The corners of the end at the walls' corner, which is the origin.

    The piece's other end is square or plumb, and its lower back edge ends where the run does.  x
    runs along the first wall, y into the room, z up; ``heading`` turns the wall (degrees, to the
    right).
    """
    cuts = (piece.left, piece.right)
    cut, other = cuts if side == "left" else cuts[::-1]
    run, exact = float(piece.wall), float(piece.rounding.exact)
    # where the far end's lower back corner is inside its long point
    lower = float(other.inset) if other.long_edge is Edge.TOP else 0.0
    p, h = radians(slope), radians(heading)
    along = np.array([cos(p) * cos(h), cos(p) * sin(h), sin(p)])
    up = np.array([-sin(p) * cos(h), -sin(p) * sin(h), cos(p)])
    out = np.array([-sin(h), cos(h), 0.0])
    placed = []
    for inside, high, off in end_points(cut, tall):
        reach = exact - lower - inside - run  # past the corner, along the piece
        placed.append(along * (reach if side == "right" else -reach) + up * high + out * off)
    return np.array(placed)


SLOPES = [(36, 0), (0, 36), (36, 36), (-36, 36), (20, -36), (-30, -30)]


def said(slope: int) -> str:
    return f", rising {'right' if slope > 0 else 'left'} {abs(slope)} deg" if slope else ""


def run(label: str, ends: str, slope: int) -> str:
    ends = ends.replace("free", "plumb" if slope else "butt")
    return f"  {label}: 90 in, {ends}{said(slope)}"


@pytest.mark.parametrize("degrees", [60, 90, 94, 120, 150])
def test_in_a_corner_one_runs_to_the_wall_and_the_other_to_its_face(degrees: int) -> None:
    for first, second in SLOPES:
        got = pieces(
            run("A", f"left=free, right=in({degrees} deg)", first)
            + "\n"
            + run("B", "left=in, right=free", second)
        )
        turn = 180.0 - degrees
        one = in_space(got["A-skirt"], "right", TALL, first, 0.0)
        other = in_space(got["B-skirt"], "left", TALL, second, turn)
        # how far each point is from the other wall, out into the room
        h = radians(turn)
        from_b = one @ np.array([-sin(h), cos(h), 0.0])
        from_a = other @ np.array([0.0, 1.0, 0.0])
        tops = [TALL / cos(radians(slope)) for slope in (first, second)]
        through = from_b if tops[0] >= tops[1] - 1e-9 else from_a
        dies = from_a if through is from_b else from_b
        assert min(through) == pytest.approx(0, abs=1e-9)
        assert min(dies) == pytest.approx(THICK, abs=1e-9)
        # beyond 5° from square the whole end lies on its plane; up to that it is square
        flat = 1e-9 if abs(90 - degrees) > 5 else THICK * sin(radians(5))
        assert np.ptp(through) <= flat
        assert np.ptp(dies) <= flat
        # all of the end that dies lies on the face of the other piece, not above its top
        assert min(tops) <= TALL / cos(radians(first if through is from_b else second)) + 1e-9


@every("degrees", [60, 90, 94, 120, 150])
@every("slope", [36, -36, 12])
def test_round_an_outside_corner_mirror_images_close(degrees: int, slope: int) -> None:
    got = pieces(
        run("A", f"left=free, right=out({degrees} deg)", slope)
        + "\n"
        + run("B", "left=out, right=free", -slope)
    )
    one = in_space(got["A-skirt"], "right", TALL, slope, 0.0)
    other = in_space(got["B-skirt"], "left", TALL, -slope, degrees - 180.0)
    assert one == pytest.approx(other, abs=1e-9)
    # and the mitre is the plane that halves the corner
    half = radians((degrees - 180.0) / 2)
    assert one @ np.array([cos(half), sin(half), 0.0]) == pytest.approx(0, abs=1e-9)
    cut = got["A-skirt"].right
    assert (float(cut.exact), float(cut.bevel)) == (abs(slope), 90 - degrees / 2)


@pytest.mark.parametrize(("first", "second"), [(36, 36), (36, 0), (0, 36), (36, -30)])
def test_no_mitre_is_made_where_the_tops_would_part(first: int, second: int) -> None:
    lines = run("A", "left=free, right=out(90 deg)", first) + "\n"
    result = stair(lines + run("B", "left=out, right=free", second))
    told = [one for one in result.diagnostics if one.code == "T445"]
    assert told
    # drawn anew: each top at the corner's line, a thickness out from both walls
    tops = [TALL / cos(radians(slope)) for slope in (first, second)]
    at_face = [tops[0] + tan(radians(first)) * THICK, tops[1] - tan(radians(second)) * THICK]
    apart = max(abs(tops[0] - tops[1]), THICK * abs(tan(radians(first)) + tan(radians(second))))
    assert max(abs(at_face[0] - at_face[1]), abs(tops[0] - tops[1])) > 1 / 8
    assert length_text(Fraction(round(apart * 16), 16)) in told[0].message.replace("\u00a0", " ")


def test_a_level_return_is_a_level_run_that_meets_in_a_rake() -> None:
    short = pieces(
        "  A: 90 in, left=butt, right=in, rising right 36 deg, level left 8 in, level right 6 in\n"
        "  B: 40 in, left=in, right=butt"
    )
    long = pieces(
        "  A-left: 8 in, left=butt, right=rake\n"
        "  A: 90 in, left=rake, right=rake, rising right 36 deg\n"
        "  A-right: 6 in, left=rake, right=in\n"
        "  B: 40 in, left=in, right=butt"
    )
    assert [(name, one.length, one.left.exact, one.right.exact) for name, one in short.items()] == [
        (name, one.length, one.left.exact, one.right.exact) for name, one in long.items()
    ]


@every("rise", RAFTERS)
def test_level_and_upright_lengths_by_the_framing_square(rise: int) -> None:
    """The rafter table stamped on framing squares: length for a foot of run (see RAFTERS)."""
    slope = f"rising right {rise} in rise, 12 in run"
    level = pieces(f"  A: 10 ft, left=butt, right=butt, taken level, {slope}")["A-skirt"]
    upright = pieces(f"  A: {10 * rise} in, left=butt, right=butt, taken upright, {slope}")
    assert float(level.wall) == pytest.approx(10 * RAFTERS[rise][0], abs=0.06)
    assert upright["A-skirt"].length == level.length
    # rises and runs with a whole third side: 9 and 12 make 15, 5 and 12 make 13
    if rise in (5, 9):
        assert level.length == 10 * {5: 13, 9: 15}[rise]
    assert "taken level, 10 ft: along the slope" in level.all_notes


def test_steps_are_told_as_a_framing_square_steps_them_off() -> None:
    (piece,) = pieces(
        "  A: 126 1/2 in, left=plumb, right=plumb, rising right 7 3/4 in rise, 10 in run, open side"
    ).values()
    apart, left = sqrt(7.75**2 + 10**2), TALL - 7.75 * 10 / sqrt(7.75**2 + 10**2)
    assert (round(apart * 16), round(left * 16)) == (202, 82)
    assert "step off 9 of 7 3/4 in by 10 in, 12 5/8 in apart" in piece.all_notes
    assert "5 1/8 in stays below each" in piece.all_notes
    plain = pieces("  A: 9 ft, left=plumb, right=plumb, rising right 36 deg, wall side")
    assert plain["A-skirt"].all_notes == ""


def test_a_notch_is_told_where_it_is_marked() -> None:
    got = pieces("  A: 25 ft, left=plumb, right=plumb, rising right 3 in over 4 in, splice,"
                 " notch left 4 in by 6 in")  # fmt: skip
    # 4 in level are 5 in along a slope of 3 in 4
    assert "4 in level by 6 in up, 5 in along the bottom edge" in got["A-skirt-a"].all_notes
    assert "notch" not in got["A-skirt-b"].all_notes
    level = pieces("  A: 40 in, left=butt, right=butt, notch right 4 in by 6 in")["A-skirt"]
    assert "right end" in level.all_notes
    assert "4 in along the bottom edge" in level.all_notes


def test_a_cap_between_newels_ends_upright_where_it_climbs() -> None:
    result = compile_job(
        "trim cap: 2 1/4 in thick, 1 1/2 in tall\nstock cap: 16 ft at 40\n"
        'room "Balustrade" as B, trim cap, open walk\n'
        "  A: 42 in, left=butt\n  newel 3 1/2 in\n"
        "  B: 9 ft 4 in, rising right 7 1/2 in over 10 in\n  newel 3 1/2 in\n"
        "  C: 36 in, right=return\n"
    )
    assert not result.diagnostics
    ends = {one.run: (one.left.joint.word, one.right.joint.word) for one in result.pieces[:3]}
    assert ends == {"A": ("butt", "butt"), "B": ("plumb", "plumb"), "C": ("butt", "return")}
    # 7 1/2 over 10: the cap's 1 1/2 in runs 1 1/8 in along it at each plumb cut
    assert result.pieces[1].length == 112 + Fraction(9, 8)
    assert result.pieces[1].left.exact == result.pieces[1].right.exact


@given(st.sampled_from(SLOPES), st.integers(50, 160), st.booleans(), st.sampled_from(["in", "out"]))
def test_a_mirrored_stair_has_mirrored_pieces(slopes, degrees, base, joint) -> None:
    trim = ", trim base" if base else ""
    one = stair(
        run("A", f"left=free, right={joint}({degrees} deg)", slopes[0]) + trim + "\n"
        + run("B", f"left={joint}, right=free", slopes[1])
    )  # fmt: skip
    other = stair(
        run("B", f"left=free, right={joint}({degrees} deg)", -slopes[1]) + "\n"
        + run("A", f"left={joint}, right=free", -slopes[0]) + trim
    )  # fmt: skip
    assert one.ok == other.ok
    a, b = ({piece.run: piece for piece in result.pieces} for result in (one, other))
    even = not base and abs(slopes[0]) == abs(slopes[1]) and joint == "in"
    if even or not one.ok:
        return  # of two alike the one on the left runs through, which no mirror keeps
    for name in "AB":
        assert a[name].length == b[name].length
        assert a[name].left.bevel == b[name].right.bevel
        assert a[name].right.through_edge == b[name].left.through_edge


def test_other_units_and_tidy_lines_mean_the_same() -> None:
    inches = (
        'room "S" as S, trim skirt, open walk\n'
        "  A: 10 ft, taken   LEVEL, left=in, right=butt, rising right 7 3/4 in rise,10 in run,"
        " level left 8 in, notch right 3 1/2 in by 6 in, OPEN side\n"
    )
    metric = inches
    for one, mm in (("10 ft", "3048"), ("7 3/4 in", "196.85"), ("10 in", "254"), ("8 in", "203.2"),
                    ("3 1/2 in", "88.9"), ("6 in", "152.4")):  # fmt: skip
        metric = metric.replace(one, f"{mm} mm")
    tidied = tidy(Source("x", TRIMS + inches)).text
    results = [check_job(one) for one in (TRIMS + inches, TRIMS + metric, tidied)]
    assert results[0].ok
    assert results[0].pieces == results[1].pieces == results[2].pieces


@every(
    "lines, code",
    [
        ("  A: 40 in, left=butt, right=butt, taken upright", "T295"),
        ("  A: 40 in, left=butt, right=butt, open side", "T295"),
        ("  A: 40 in, left=plumb, right=plumb, rising right 36 deg, open side", "T296"),
        ("  A: 40 in, left=butt, right=return, rising right 36 deg", "T245"),
        ("  A: 9 ft, left=plumb, right=plumb, rising right 20 in over 20 in, open side", "T446"),
        ("  A: 40 in, left=butt, right=butt, notch left 3 in by 12 in", "T447"),
        ("  A: 40 in, left=butt, right=butt, notch left 50 in by 2 in", "T447"),
        ("  A: 40 in, left=butt, right=butt, notch left 3 in by 2 in, notch left 1 in by 1 in",
         "T209"),
        ("  A: 40 in, left=butt, right=butt, level left 8 in", "T244"),
    ],
)  # fmt: skip
def test_slips_are_told(lines: str, code: str) -> None:
    assert code in {one.code for one in stair(lines).diagnostics}
