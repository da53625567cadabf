"""Crown below ceilings that slope, as solids: its points in space come from its ticket's angles."""

from __future__ import annotations

import re
from math import atan, cos, degrees, hypot, radians, sin, tan

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests import jobs
from tests.every import every
from trimlang.compiler import Result, check_job
from trimlang.diagnostics.source import Source
from trimlang.joinery.piece import Cut, Piece
from trimlang.joint_row import Edge
from trimlang.language.tidy_file import tidy

WIDE, THICK = 3.625, 0.6875
UP = np.array([0.0, 0.0, 1.0])


def attic(lines: str, spring: int = 38) -> Result:
    return check_job(
        f"saw: reads to 0.001 deg, reaches 75 deg\n{jobs.CROWN.replace('38', str(spring))}\n"
        f"stock crown: 99 ft at 90\n{jobs.TRIM}\n"
        f'room "Attic" as A, trim crown, open walk\n{lines}\n'
    )


def pieces(lines: str, spring: int = 38) -> dict[str, Piece]:
    result = attic(lines, spring)
    assert result.ok, [one.message for one in result.diagnostics]
    return {piece.run: piece for piece in result.pieces}


def said(slope: float) -> str:
    return f", ceiling rising {'right' if slope > 0 else 'left'} {abs(slope)} deg" if slope else ""


class Wall:
    """A wall's edge with the ceiling, in space: the room lies to its right, the corner is at 0."""

    def __init__(self, heading: float, slope: float) -> None:
        h, q = radians(heading), radians(slope)
        # x along the first wall, y into its room, z up: headings turn from x to y
        self.edge = np.array([cos(q) * cos(h), cos(q) * sin(h), sin(q)])
        self.out = np.array([-sin(h), cos(h), 0.0])


def ceiling_of(one: Wall, other: Wall) -> np.ndarray:
    square = np.cross(one.edge, other.edge)
    return square / np.linalg.norm(square) * np.sign(square[2])


def hung(wall: Wall, ceiling: np.ndarray, spring: float) -> tuple[np.ndarray, np.ndarray]:
    """Across the face, from wall edge to ceiling edge, and out of the face: at its own spring."""
    s = radians(spring)
    into = np.cross(ceiling, wall.edge)  # in the ceiling, square to its edge, into the room
    return sin(s) * into + cos(s) * ceiling, cos(s) * into - sin(s) * ceiling


def corner_points(
    wall: Wall, cut: Cut, ceiling: np.ndarray, spring: float, side: str
) -> np.ndarray:
    """The end's four corners: the wall edge's back in the corner, the others by mitre and bevel."""
    across, out = hung(wall, ceiling, spring)
    begins = -UP * WIDE * cos(radians(spring)) / ceiling[2]
    along = wall.edge if side == "right" else -wall.edge
    return begins + end_shape(cut, along, across, out)


def end_shape(cut: Cut, along: np.ndarray, across: np.ndarray, out: np.ndarray) -> np.ndarray:
    mitre, bevel = radians(cut.exact), radians(cut.bevel)
    way = {Edge.FACE: 1, Edge.BACK: -1, Edge.BOTH: 0}
    through = way[cut.long_edge if cut.through_edge is Edge.BOTH else cut.through_edge]
    return np.array(
        [
            along * (way[cut.long_edge] * tan(mitre) * u + through * tan(bevel) / cos(mitre) * v)
            + across * u
            + out * v
            for u in (0.0, WIDE)
            for v in (0.0, THICK)
        ]
    )


CASES = [(90, 20, 0), (90, 0, 20), (90, -20, 0), (120, 15, 0), (75, 12, -9), (90, 18, 18),
         (135, -10, 12)]  # fmt: skip


@every("joint", ["in-corner", "out-corner"])
@every("angle, first, second", CASES)
@every("spring", [38, 45])
def test_two_crowns_close_below_any_ceiling(joint, angle, first, second, spring) -> None:
    got = pieces(
        f"  A: 90 in, left=butt, right={joint}({angle} deg){said(first)}\n"
        f"  B: 80 in, left={joint}, right=butt{said(second)}",
        spring,
    )
    turn = 180 - angle if joint == "in-corner" else angle - 180
    one, other = Wall(0, first), Wall(turn, second)
    ceiling = ceiling_of(one, other)
    a = corner_points(one, got["A"].right, ceiling, spring, "right")
    b = corner_points(other, got["B"].left, ceiling, spring, "left")
    # the same four points: the profiles meet along all of the joint
    assert a == pytest.approx(b, abs=1e-9)
    for wall, points in ((one, a), (other, b)):
        assert points[0] @ wall.out == pytest.approx(0, abs=1e-9)  # the wall edge is on the wall
        assert points[2] @ ceiling == pytest.approx(0, abs=1e-9)  # the ceiling edge on the ceiling
    # how each hangs, as its ticket says
    for wall, piece in ((one, got["A"]), (other, got["B"])):
        across, _ = hung(wall, ceiling, spring)
        rising = np.cross(wall.edge, wall.out)
        rising *= np.sign(rising[2])
        hang = degrees(atan((across @ wall.out) / (across @ rising)))
        told = re.search(r"hangs ([\d.]+)° from the wall", piece.all_notes)
        assert float(told[1]) if told else spring == pytest.approx(hang, abs=0.051)
        assert (told is None) == (abs(hang - spring) < 0.05)


BEAD_THICK, BEAD_TALL = 0.25, 0.5


@every("joint", ["in-corner", "out-corner"])
@every("angle, first, second", CASES)
@every("frieze", [False, True])
def test_a_bead_follows_its_crown_below_any_ceiling(joint, angle, first, second, frieze) -> None:
    """The crowns' ceiling edges meet in one point, where the beads' backs meet on the ceiling."""
    behind = 0.75 if frieze else 0.0
    board = "trim board: 3/4 in thick, 3 in tall\nstock board: 99 ft at 90\n" if frieze else ""
    crown = f"{jobs.CROWN}, in front of board" if frieze else jobs.CROWN
    result = check_job(
        f"saw: reads to 0.001 deg, reaches 75 deg\n{board}{crown}\nstock crown: 99 ft at 90\n"
        "trim bead: 1/4 in thick, 1/2 in tall, in front of crown\nstock bead: 99 ft at 90\n"
        f'room "Attic" as A, trim {"board, " if frieze else ""}crown, bead, open walk\n'
        f"  A: 90 in, left=butt, right={joint}({angle} deg){said(first)}\n"
        f"  B: 80 in, left={joint}, right=butt{said(second)}\n"
    )
    assert result.ok, [one.message for one in result.diagnostics]
    got = {piece.id: piece for piece in result.pieces}
    turn = 180 - angle if joint == "in-corner" else angle - 180
    one, other = Wall(0, first), Wall(turn, second)
    ceiling = ceiling_of(one, other)
    # where the planes of both walls' frieze faces meet is where the crowns' wall edges do
    square = np.array([one.out[:2], other.out[:2]])
    faces = np.append(np.linalg.solve(square, [behind, behind]), 0.0)
    faces -= UP * (faces @ ceiling) / ceiling[2]  # on the ceiling
    met = faces + corner_points(one, got["A-A-crown"].right, ceiling, 38, "right")[2]
    ends = []
    for wall, name, side, far in ((one, "A-A-bead", "right", 90), (other, "A-B-bead", "left", 80)):
        piece, along = got[name], wall.edge if side == "right" else -wall.edge
        here, there = (piece.right, piece.left) if side == "right" else (piece.left, piece.right)
        into = np.cross(ceiling, wall.edge)
        way = {Edge.FACE: 1, Edge.BACK: -1}[here.long_edge]
        shape = [
            along * way * tan(radians(here.exact)) * out + into * out - ceiling * down
            for out in (0.0, BEAD_THICK)
            for down in (0.0, BEAD_TALL)
        ]
        ends.append(np.array(shape))
        # the upright cut at the other end, told by its ticket, reaches so far past the upper back
        past = tan(radians(there.exact)) * BEAD_TALL if there.long_edge is Edge.BOTTOM else 0.0
        past += float(there.through) if there.through_edge is Edge.FACE else 0.0
        past += tan(radians(here.exact)) * BEAD_THICK if way > 0 else 0.0
        level = np.array([along[0], along[1], 0.0]) / hypot(along[0], along[1])
        back = (met @ level + far) / (along @ level)
        assert float(piece.rounding.exact) - past == pytest.approx(back, abs=1e-9)
        # that cut is upright: its four corners lie in one upright plane across the wall
        steep = {Edge.BOTTOM: 1, Edge.TOP: -1, Edge.BOTH: 0}[there.long_edge]
        tilt = {Edge.FACE: 1, Edge.BACK: -1, Edge.BOTH: 0}[there.through_edge]
        off = -along * tan(radians(there.exact)) * BEAD_TALL * steep - ceiling * BEAD_TALL
        assert off @ level == pytest.approx(0, abs=1e-9)
        off = -along * float(there.through) * tilt + into * BEAD_THICK
        assert off @ level == pytest.approx(0, abs=1e-9)
    assert ends[0] == pytest.approx(ends[1], abs=1e-9)


@pytest.mark.parametrize(("first", "second"), [(20, 0), (0, 20), (12, 12)])
def test_ends_that_stop_are_upright(first, second) -> None:
    got = pieces(
        f"  A: 90 in, left=butt, right=in-corner(90 deg){said(first)}\n"
        f"  B: 80 in, left=in-corner, right=butt{said(second)}"
    )
    one, other = Wall(0, first), Wall(90, second)
    ceiling = ceiling_of(one, other)
    for wall, piece, side, along in ((one, got["A"], "left", -one.edge),
                                     (other, got["B"], "right", other.edge)):  # fmt: skip
        across, out = hung(wall, ceiling, 38)
        cut = piece.left if side == "left" else piece.right
        points = end_shape(cut, along, across, out)
        # all four in the plane that is upright and square to the wall
        level = wall.edge * np.array([1.0, 1.0, 0.0])
        assert points @ (level / np.linalg.norm(level)) == pytest.approx(0, abs=1e-9)
        # from end to end along the wall edge, which runs as the ceiling does
        slope = first if side == "left" else second
        wide = 90 if side == "left" else 80
        assert float(piece.rounding.exact) == pytest.approx(wide / cos(radians(slope)), rel=1e-9)
        # and the stick gives what reaches furthest past the wall edge's end
        further = max(0.0, *(points @ along))
        assert float(piece.length - piece.to_mark) >= further - 1e-9
        assert float(piece.length - piece.to_mark) < further + THICK


def test_a_shed_roof_turns_with_the_settings_of_a_level_room() -> None:
    # manuals print 31.62 and 33.86 for spring 38 at a square corner
    got = pieces(
        "  N: 10 ft, left=in-corner(90 deg), right=in-corner(90 deg)\n"
        "  E: 8 ft, left=in-corner, right=in-corner(90 deg), ceiling rising right 4 in over 12 in\n"
        "  S: 10 ft, left=in-corner, right=in-corner(90 deg)\n"
        "  W: 8 ft, left=in-corner, right=in-corner(90 deg), ceiling rising left 4 in over 12 in"
    )
    for piece in (got["N"], got["E"], got["S"]):
        for cut in (piece.left, piece.right):
            assert (float(cut.exact), float(cut.bevel)) == pytest.approx((31.62, 33.86), abs=0.005)
    # 4 in 12 is 18.43° on a framing square, and 12.65 for a foot of run
    assert "hangs 19.6° from the wall" in got["N"].all_notes
    assert "hangs 56.4° from the wall" in got["S"].all_notes
    assert float(got["E"].to_mark) == pytest.approx(8 * 12.65, abs=0.1)


def test_at_a_ridge_both_are_cut_at_half_the_bend() -> None:
    got = pieces(
        "  A: 90 in, left=butt, right=rake, ceiling rising right 20 deg\n"
        "  B: 80 in, left=rake, right=butt, ceiling rising left 20 deg"
    )
    made = []
    for piece, side, slope in (("A", "right", 20), ("B", "left", -20)):
        wall, across_wall = Wall(0, slope), np.array([0.0, 1.0, 0.0])
        ceiling = np.cross(wall.edge, across_wall)
        across, out = hung(wall, ceiling, 38)
        along = wall.edge if side == "right" else -wall.edge
        begins = -UP * WIDE * cos(radians(38)) / ceiling[2]
        made.append(begins + end_shape(getattr(got[piece], side), along, across, out))
    assert made[0] == pytest.approx(made[1], abs=1e-9)
    assert made[0][:, 0] == pytest.approx(0, abs=1e-9)  # in the upright plane of the ridge


def test_beside_a_coped_corner_the_mate_runs_to_the_wall() -> None:
    got = pieces(
        "  A: 90 in, left=butt, right=in-corner(90 deg), ceiling rising right 20 deg\n"
        "  B: 80 in, left=in-corner(cope), right=butt"
    )
    one, other = Wall(0, 20), Wall(90, 0)
    points = corner_points(one, got["A"].right, ceiling_of(one, other), 38, "right")
    assert points @ other.out == pytest.approx(0, abs=1e-9)


def test_a_ceiling_out_of_level_says_what_a_scribe_takes() -> None:
    for slope in ("1 %", "1 in over 100 in"):
        piece = pieces(f"  A: 150 in, left=butt, right=butt, ceiling rising right {slope}")["A"]
        assert "rises 0.6° to the right" in piece.all_notes
        assert "scribe up to 1 1/2 in off its ceiling edge" in piece.all_notes
        # 150 in that rise 1 1/2 in are 150.0075 in along it
        assert float(piece.rounding.exact) == pytest.approx(hypot(150, 1.5), rel=1e-9)
    steep = pieces("  A: 150 in, left=butt, right=butt, ceiling rising right 8 deg")["A"]
    assert "scribe" not in steep.all_notes


def test_a_beam_stops_crown_and_nothing_else_or_turns_it() -> None:
    lines = (
        "  A: 90 in, trim base, crown, left=butt, right=butt\n"
        "  beam 6 in, 8 in deep{}\n"
        "  B: 80 in, trim base, crown, left=butt, right=butt"
    )
    stopped = attic(lines.format(""))
    assert stopped.ok
    lengths = {piece.id: piece.to_mark for piece in stopped.pieces}
    assert lengths == {"A-A-base": 176, "A-A-crown": 90, "A-B-crown": 80}
    turned = attic(lines.format(', "tie", turns crown'))
    assert turned.ok
    cut = next(one for one in turned.pieces if one.id == "A-A-crown").right
    assert (float(cut.exact), float(cut.bevel)) == pytest.approx((31.62, 33.86), abs=0.005)
    assert cut.long_edge is Edge.BACK
    low = attic(lines.format("").replace("8 in deep", "2 in deep"))
    # 3 5/8 × cos 38° = 2.857: 7/8 in lower than the beam
    (told,) = [one.message for one in low.diagnostics if one.code == "T453"]
    assert "7/8" in told


def test_what_a_beam_turns_stands_before_what_it_turns_too() -> None:
    """The crown along a beam's side stands on its frieze there, or on the beam; a bead follows."""
    lines = (
        "  A: 90 in, left=butt, right=butt\n"
        "  beam 6 in, 8 in deep, turns {}\n"
        "  B: 80 in, left=butt, right=butt\n"
    )
    above = (
        "trim board: 3/4 in thick, 3 in tall\ntrim bead: 1/4 in thick, 1/2 in tall, in front of"
        f" crown\n{jobs.CROWN}, in front of board\nassembly cornice: board, crown, bead\n"
    )
    stock = "".join(f"stock {one}: 99 ft at 90\n" for one in ("board", "crown", "bead"))
    room = 'room "Attic" as A, trim cornice, open walk\n'
    out = 3.625 * sin(radians(38))
    for turned, frieze, board in (("crown", 0.0, "butt"), ("cornice", 0.75, "in-corner")):
        result = check_job(above + stock + room + lines.format(turned))
        assert result.ok, [one.message for one in result.diagnostics]
        got = {piece.id: piece for piece in result.pieces}
        assert got["A-A-board"].right.joint.value == board
        assert float(got["A-A-crown"].rounding.exact) == pytest.approx(90 - frieze)
        assert float(got["A-A-bead"].rounding.exact) == pytest.approx(90 - frieze - out)


@given(st.sampled_from(CASES), st.sampled_from(["in-corner", "out-corner"]))
def test_a_mirrored_attic_has_mirrored_pieces(case, joint) -> None:
    angle, first, second = case
    one = attic(
        f"  A: 90 in, left=butt, right={joint}({angle} deg){said(first)}\n"
        f"  B: 80 in, left={joint}, right=butt{said(second)}"
    )
    other = attic(
        f"  B: 80 in, left=butt, right={joint}({angle} deg){said(-second)}\n"
        f"  A: 90 in, left={joint}, right=butt{said(-first)}"
    )
    a, b = ({piece.run: piece for piece in result.pieces} for result in (one, other))
    assert one.ok == other.ok
    for name in a:
        assert a[name].to_mark == b[name].to_mark
        for left, right in ((a[name].left, b[name].right), (a[name].right, b[name].left)):
            assert (left.exact, left.bevel, left.long_edge) == (
                right.exact, right.bevel, right.long_edge
            )  # fmt: skip


@given(
    st.sampled_from([1, 7, 18.43, 30, -12, -26.5]),
    st.sampled_from([38, 45]),
    st.integers(30, 90),
    st.sampled_from(["butt", "in-corner(90 deg)", "out-corner(90 deg)"]),
    st.sampled_from(["butt", "in-corner(90 deg)"]),
)
def test_a_joint_below_a_slope_loses_nothing(slope, spring, at, first, last) -> None:
    """Crown divided by a scarf is as long as in one piece and the lap more, with the same ends."""
    around = "  Z: 60 in, left=butt, right={}\n{}\n  S: 60 in, left={}, right=butt"

    def made(run: str) -> dict[str, Piece]:
        return pieces(around.format(first, run, last), spring)

    whole = made(f"  A: 120 in, left={first}, right={last}{said(slope)}")
    parts = made(
        f"  A: {at} in, left={first}, right=splice{said(slope)}\n"
        f"  B: {120 - at} in, left=splice, right={last}{said(slope)}"
    )
    lap = THICK * tan(radians(45))
    together = float(parts["A"].rounding.exact + parts["B"].rounding.exact)
    assert together - lap == pytest.approx(float(whole["A"].rounding.exact), abs=1e-9)
    assert (parts["A"].left, parts["B"].right) == (whole["A"].left, whole["A"].right)
    # both ends of the scarf are one cut: parallel, the one that runs out in front over the other
    one, other = parts["A"].right, parts["B"].left
    assert (one.exact, one.bevel) == (other.exact, other.bevel)
    assert {one.long_edge, other.long_edge} == {Edge.FACE, Edge.BACK}
    # what meets its ends is as it was
    assert all(parts[name].rounding.exact == whole[name].rounding.exact for name in "ZS")


def test_other_units_and_tidy_lines_mean_the_same() -> None:
    text = (
        f'{jobs.CROWN}\nstock crown: 99 ft at 90\nroom "A" as A, trim crown, open walk\n'
        "  A: 90 in, left=in, right=butt, Ceiling   rising RIGHT 4 in over 12 in\n"
        "  beam 6 in, 8 in DEEP, turns crown\n"
        "  B: 80 in, left=butt, right=butt, ceiling rising left 1.5 %\n"
    )
    metric = text
    for inches, mm in (("90 in", "2286"), ("4 in", "101.6"), ("12 in", "304.8"), ("80 in", "2032")):
        metric = metric.replace(inches, f"{mm} mm")
    results = [check_job(one) for one in (text, metric, tidy(Source("x", text)).text)]
    assert results[0].ok
    assert results[0].pieces == results[1].pieces == results[2].pieces


@pytest.mark.parametrize(
    ("lines", "code"),
    [
        ("  A: 90 in, left=butt, right=in, ceiling rising right 20 deg\n"
         "  B: 80 in, left=in, right=in\n"
         "  C: 90 in, left=in, right=butt, ceiling rising right 20 deg", "T451"),
        # of the two walls that climb with a ceiling, one says nothing of it and would be cut level
        ("  A: 90 in, left=butt, right=in\n  B: 80 in, left=in, right=in\n"
         "  C: 90 in, left=in, right=butt, ceiling rising right 20 deg", "T451"),
        ("  A: 90 in, left=butt, right=in, ceiling rising left 40 deg\n"
         "  B: 80 in, left=in, right=butt", "T452"),
        ("  A: 90 in, left=butt, right=return, ceiling rising right 20 deg", "T455"),
        ("  A: 90 in, left=butt, right=butt, ceiling rising right 70 deg", "T233"),
        ("  A: 90 in, left=butt, right=butt\n  beam 6 in, turns base\n"
         "  B: 80 in, left=butt, right=butt", "T454"),
        ("  A: 90 in, left=butt, right=butt\n  door 32 in, turns crown\n"
         "  B: 80 in, left=butt, right=butt", "T456"),
        ("  A: 90 in, left=butt, right=butt\n  beam 6 in, turns wood\n"
         "  B: 80 in, left=butt, right=butt", "T210"),
    ],
)  # fmt: skip
def test_slips_are_told(lines: str, code: str) -> None:
    assert code in {one.code for one in attic(lines).diagnostics}
