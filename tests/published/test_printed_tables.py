"""Tables that are printed for carpenters, against what a job's tickets say.

Sources: charts of compound settings by pitch and number of sides, as two makers of mitre saws
print them in their manuals (read there; each is told to be right to 0.005°); compound settings
for a saw bench as workshop handbooks print them (from memory); the rafter tables stamped on
framing squares (common rafters as a how-to in the open gives them, hips and degrees from
memory); the Architectural Woodwork Standards, 1st edition, 2009, installation rules on gaps.
None shares a formula with trimlang: each is also worked out anew from points in space.
"""

from __future__ import annotations

from fractions import Fraction

import numpy as np
import pytest

from tests.every import every
from tests.jobs import BASE
from trimlang.compiler import check_job
from trimlang.joinery.piece import Piece
from trimlang.joint_row import Edge

# pitch of the side: four, five, six and eight sides, each mitre and bevel
COMPOUND = {
    5: [(44.89, 3.53), (35.90, 2.94), (29.91, 2.50), (22.42, 1.91)],
    10: [(44.56, 7.05), (35.58, 5.86), (29.62, 4.98), (22.19, 3.81)],
    15: [(44.01, 10.55), (35.06, 8.75), (29.15, 7.44), (21.81, 5.68)],
    20: [(43.22, 14.00), (34.32, 11.60), (28.48, 9.85), (21.27, 7.52)],
    25: [(42.19, 17.39), (33.36, 14.38), (27.62, 12.20), (20.58, 9.31)],
    30: [(40.89, 20.70), (32.18, 17.09), (26.57, 14.48), (19.73, 11.03)],
    35: [(39.32, 23.93), (30.76, 19.70), (25.31, 16.67), (18.74, 12.68)],
    40: [(37.45, 27.03), (29.10, 22.20), (23.86, 18.75), (17.60, 14.24)],
    45: [(35.26, 30.00), (27.19, 24.56), (22.21, 20.70), (16.32, 15.70)],
    50: [(32.73, 32.80), (25.03, 26.76), (20.36, 22.52), (14.91, 17.05)],
}
SIDES = (4, 5, 6, 8)

# slope of the side from upright: blade and gauge, four and eight sides, to about a quarter degree
HOPPER = {
    5: [(44.75, 85.0), (22.25, 88.0)],
    10: [(44.25, 80.25), (22.0, 86.0)],
    15: [(43.25, 75.5), (21.5, 84.0)],
    20: [(41.75, 71.25), (21.0, 82.0)],
    25: [(40.0, 67.0), (20.25, 80.0)],
    30: [(37.75, 63.5), (19.25, 78.25)],
    35: [(35.25, 60.25), (18.25, 76.75)],
    40: [(32.5, 57.25), (17.0, 75.0)],
    45: [(30.0, 54.75), (15.75, 73.75)],
    50: [(27.0, 52.5), (14.25, 72.5)],
    55: [(24.0, 50.75), (12.5, 71.25)],
    60: [(21.0, 49.0), (11.0, 70.25)],
}

# wall angle: mitre and bevel of crown that springs 38° from the wall; at 90° as many saw manuals
# print them, the others from memory
BY_WALL_ANGLE = {
    67: (42.93, 41.08), 70: (41.32, 40.20), 75: (38.74, 38.69), 80: (36.27, 37.13),
    85: (33.90, 35.52), 89: (32.07, 34.20), 90: (31.62, 33.86), 91: (31.17, 33.53),
    95: (29.43, 32.17), 100: (27.32, 30.43), 135: (14.31, 17.55),
}  # fmt: skip

# inches of rise to the foot: length of a common rafter and of a hip for a foot of run, degrees
RAFTERS = {
    2: (12.17, 17.09, 9.46), 3: (12.37, 17.23, 14.04), 4: (12.65, 17.44, 18.43),
    5: (13.00, 17.69, 22.62), 6: (13.42, 18.00, 26.57), 7: (13.89, 18.36, 30.26),
    8: (14.42, 18.76, 33.69), 9: (15.00, 19.21, 36.87), 10: (15.62, 19.70, 39.81),
    11: (16.28, 20.22, 42.51), 12: (16.97, 20.78, 45.00),
}  # fmt: skip


def crown_end(
    spring: float, corner: float, joint: str = "in-corner", width: str = "3 5/8"
) -> Piece:
    result = check_job(
        "saw: reads to 1/100 deg, reaches 75 deg\n"
        f"trim crown: 11/16 in thick, {width} in wide, spring {round(spring, 4)} deg\n"
        'stock crown: 16 ft at 9\nroom "R", trim crown, open walk\n'
        f"N: 60 in, left={joint}({corner} deg), right=butt"
    )
    assert result.ok, [one.message for one in result.diagnostics]
    return result.pieces[0]


def settings_from_points(spring: float, corner: float) -> tuple[float, float]:
    """Mitre and bevel of a sloping side, from the corner's points in space (degrees).

    The side's lower edge runs along x; its joint with the next side rises along the plane that
    halves the corner.  Unrolled flat, that line's angle to the width is the mitre; the plane's to
    the face, from square, is the bevel.
    """
    slope, half = np.radians(spring), np.radians(corner / 2)
    up = np.array([0.0, np.sin(slope), np.cos(slope)])  # across the side, out from the wall
    face = np.cross([1.0, 0.0, 0.0], up)
    plane = np.cross([np.cos(half), np.sin(half), 0.0], [0.0, 0.0, 1.0])
    joint = np.cross(face, plane)
    joint = joint / np.linalg.norm(joint)
    mitre = np.degrees(np.arctan2(abs(joint[0]), abs(joint @ up)))
    bevel = np.degrees(np.arcsin(abs(face @ plane) / np.linalg.norm(face)))
    return float(mitre), float(bevel)


@every("pitch", COMPOUND)
def test_compound_settings_by_pitch_and_sides(pitch: int) -> None:
    for sides, (mitre, bevel) in zip(SIDES, COMPOUND[pitch], strict=True):
        corner = 180 - 360 / sides
        cut = crown_end(90 - pitch, corner).left
        assert float(cut.exact) == pytest.approx(mitre, abs=0.0051)
        assert float(cut.bevel) == pytest.approx(bevel, abs=0.0051)
        assert settings_from_points(90 - pitch, corner) == pytest.approx(
            (float(cut.exact), float(cut.bevel)), abs=1e-9
        )


@every("slope", HOPPER)
def test_hopper_settings_of_a_saw_bench(slope: int) -> None:
    for sides, (blade, gauge) in zip((4, 8), HOPPER[slope], strict=True):
        cut = crown_end(slope, 180 - 360 / sides, "out-corner").left
        assert float(cut.bevel) == pytest.approx(blade, abs=0.3)
        assert 90 - float(cut.exact) == pytest.approx(gauge, abs=0.3)


@every("joint", ["in-corner", "out-corner"])
@every("corner", BY_WALL_ANGLE)
def test_crown_settings_by_wall_angle(corner: int, joint: str) -> None:
    cut = crown_end(38, corner, joint).left
    assert (float(cut.exact), float(cut.bevel)) == pytest.approx(BY_WALL_ANGLE[corner], abs=0.0051)


@every("rise", RAFTERS)
def test_the_framing_squares_rafters_as_crown(rise: int) -> None:
    """A hip between two roofs is crown's outside corner, an inside one a valley.

    Crown as wide as a common rafter is long on a foot of run stands out a foot; its cut is as
    long as the hip.
    """
    common, hip, degrees = RAFTERS[rise]
    piece = crown_end(90 - degrees, 90, "out-corner", f"{common}")
    inset = float(piece.left.inset)
    assert inset == pytest.approx(12, abs=0.01)
    assert np.hypot(inset, common) == pytest.approx(hip, abs=0.011)
    assert np.tan(np.radians(float(piece.left.exact))) == pytest.approx(12 / common, abs=0.001)


@every("rise", RAFTERS)
def test_the_framing_squares_pitches_on_a_stair(rise: int) -> None:
    common, _, degrees = RAFTERS[rise]
    result = check_job(
        f"saw: reaches 60 deg\n{BASE}\nstock base: 16 ft at 9\n"
        'room "R", trim base, open walk\n'
        "A: 40 in, left=butt, right=rake\n"
        f"B: 60 in, left=rake, right=plumb, rising right {rise} in over 12 in"
    )
    assert result.ok, [one.message for one in result.diagnostics]
    level, raking = result.pieces
    # a plumb cut is the pitch from square, and sets the top back by the rise on each foot
    assert float(raking.right.exact) == pytest.approx(degrees, abs=0.0051)
    assert float(raking.right.inset) == pytest.approx(5.25 * rise / 12, abs=1e-9)
    # half the bend at the foot: tan of half an angle is rise over run and slope together
    assert float(level.right.exact) == pytest.approx(degrees / 2, abs=0.0051)
    assert float(level.right.inset) == pytest.approx(5.25 * rise / (12 + common), abs=0.003)


@pytest.mark.parametrize("rise", [4, 9, 12])
def test_studs_on_a_stair_are_a_rafters_length_apart(rise: int) -> None:
    common, _, _ = RAFTERS[rise]
    result = check_job(
        f"splices: studs every 16 in\n{BASE}\nstock base: 8 ft at 9\n"
        'room "R", trim base, open walk\n'
        f"A: 150 in, left=butt, right=butt, rising right {rise} in over 12 in, first stud 10 in"
    )
    assert result.ok, [one.message for one in result.diagnostics]
    first = result.pieces[0]
    # its joint's middle lies on a stud, each 16/12 of a rafter's foot further on
    middle = float(first.length) - 9 / 32
    studs = (middle - 10) / (16 / 12 * common)
    assert studs == pytest.approx(round(studs), abs=0.01)


# grade and surface: the widest gap between wood and wood, as installed (inches)
GAPS = {"premium, flat": 0.012, "premium, shaped": 0.025}


@pytest.mark.parametrize("limit", GAPS.values(), ids=GAPS)
@pytest.mark.parametrize("joint", ["in-corner", "out-corner"])
def test_a_gap_is_warned_of_where_the_standard_draws_the_line(joint: str, limit: float) -> None:
    """The faces' corners of two pieces that touch at their backs, turned off the right mitre."""
    thick, step = 0.75, 2.0
    for corner in np.arange(80, 100, 0.25):
        right = 90 - corner / 2
        marks = np.array([np.floor(right / step), np.ceil(right / step)]) * step
        if abs(right / step % 1 - 0.5) < 1e-9:
            continue  # either mark is as near
        # outside the steeper mark is set, which closes at the face
        mark = marks[np.argmin(abs(marks - right))] if joint == "in-corner" else marks[1]
        line = np.radians(right)
        face = np.array([-thick * np.tan(np.radians(mark)), -thick])
        # off the line that halves the corner, to either side
        off = 2 * (face @ np.array([np.cos(line), -np.sin(line)]))
        opens = max(-off, 0.0) if joint == "in-corner" else 0.0
        result = check_job(
            f"saw: reads to {step:.0f} deg, reaches 60 deg\n"
            f"corners: {joint} gap {limit} in\n"
            "trim base: 3/4 in thick, 5 1/4 in tall\nstock base: 16 ft at 9\n"
            f'room "R", trim base, open walk\nN: 60 in, left={joint}({corner} deg), right=butt'
        )
        (cut,) = (piece.left for piece in result.pieces)
        assert float(cut.gap) == pytest.approx(abs(off), abs=1e-9)
        assert float(cut.setting) == mark
        assert mark == right or (cut.opens_at is Edge.FACE) == (opens > 0)
        warned = "T405" in {one.code for one in result.diagnostics}
        assert warned == (opens > limit)


def test_the_limits_that_hold_unsaid_are_coarser_than_the_standards() -> None:
    # 1/32 in outside, 1/16 in inside: paint and caulk (common practice, no source); a file that
    # works to a standard says so
    settings = check_job('room "R", open walk\n').job.settings
    assert (settings.gap_out, settings.gap_in) == (Fraction(1, 32), Fraction(1, 16))
    assert min(settings.gap_out, settings.gap_in) > max(map(Fraction, GAPS.values()))
