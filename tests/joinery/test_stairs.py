"""Raking runs: half the pitch, plumb and level ends, against lines drawn with numpy."""

from fractions import Fraction

import numpy as np
import pytest

import trimlang
from tests.every import every
from tests.jobs import BASE, SIXTEEN_FEET
from trimlang.joinery.piece import MeasuredOn
from trimlang.survey.outline import outline

HEAD = f"""
saw: reaches 60 deg
{BASE}
{SIXTEEN_FEET}
room "Stair", trim base, open walk
"""
TALL = 5.25


def pieces(lines):
    result = trimlang.compile(HEAD + lines)
    assert result.ok, [one.message for one in result.diagnostics]
    return result.pieces, result


def crossing(point, along, other_point, other_along):
    """Where two lines meet."""
    steps = np.linalg.solve(np.column_stack([along, -other_along]), other_point - point)
    return point + steps[0] * along


@pytest.mark.parametrize("pitch", [0.6, 28, 36, 42])
def test_level_rake_level_against_drawn_lines(pitch):
    (foot, rake, head), _ = pieces(
        f"A: 48 in, left=butt, right=rake\n"
        f"B: 120 in, left=rake, right=rake, rising right {pitch} deg\n"
        f"C: 60 in, left=rake, right=butt"
    )
    slope = np.radians(pitch)
    level, up = np.array([1.0, 0.0]), np.array([np.cos(slope), np.sin(slope)])
    lower = [np.array([0.0, 0.0]), np.array([48.0, 0.0])]
    lower.append(lower[1] + 120 * up)
    lower.append(lower[2] + 60 * level)
    raised = np.array([0.0, TALL])
    square = TALL * np.array([-np.sin(slope), np.cos(slope)])
    first = crossing(raised, level, lower[1] + square, up)
    second = crossing(lower[2] + raised, level, lower[1] + square, up)
    # along each board: the furthest point at either end
    assert float(foot.rounding.exact) == pytest.approx(max(48, first[0]))
    low, high = min(0, (first - lower[1]) @ up), max(120, (second - lower[1]) @ up)
    assert float(rake.rounding.exact) == pytest.approx(high - low)
    start = min(0, (second - lower[2])[0])
    assert float(head.rounding.exact) == pytest.approx(60 - start)
    assert foot.right.exact == rake.left.exact == rake.right.exact == Fraction(str(pitch)) / 2
    # the mitre line leans half the pitch from square
    mitre = np.degrees(np.arctan2(abs(first[0] - 48), TALL))
    assert float(foot.right.exact) == pytest.approx(mitre)


def test_half_the_pitch_worked_by_hand():
    (foot, rake, head), _ = pieces(
        "A: 48 in, left=butt, right=rake\n"
        "B: 120 in, left=rake, right=rake, rising right 36 deg\n"
        "C: 60 in, left=rake, right=butt"
    )
    # 5 1/4 × tan 18° = 1.7058: at the foot the lower edges are the long ones,
    # at the head the upper edges
    assert (foot.right.long_edge, rake.left.long_edge) == ("bottom", "bottom")
    assert (rake.right.long_edge, head.left.long_edge) == ("top", "top")
    assert foot.length == 48
    assert rake.length == Fraction(1947, 16)
    assert head.length == Fraction(987, 16)
    assert (foot.measured_on, rake.measured_on, head.measured_on) == (
        MeasuredOn.BOTTOM, MeasuredOn.POINTS, MeasuredOn.TOP
    )  # fmt: skip
    assert foot.right.lies_flat
    assert foot.right.lean is not rake.left.lean


def test_a_rise_shorter_than_its_mitres_is_one_slanting_piece():
    (_, rake, _), _ = pieces(
        "A: 48 in, left=butt, right=rake\n"
        "B: 1 in, left=rake, right=rake, rising right 36 deg\n"
        "C: 60 in, left=rake, right=butt"
    )
    # both mitres of 18° run one way, 5 1/4 × tan 18° = 1.7058, so that both edges are 1 in
    assert float(rake.rounding.exact) == pytest.approx(2.7058, abs=1e-4)
    assert float(rake.rounding.exact - rake.left.inset) == pytest.approx(1)
    assert rake.short_points < 0


@pytest.mark.parametrize(("along", "there"), [("2 in", False), ("2 1/4 in", True)])
def test_cuts_that_cross_before_the_upper_edge_leave_no_piece(along, there):
    # plumb at the foot, 36°, leans in by 5 1/4 × tan 36° = 3.8143 at the top; the mitre of 18° at
    # the head gives back 1.7058: the upper edge is 2.1085 in shorter than the lower one
    lines = (
        f"B: {along}, left=plumb, right=rake, rising right 36 deg\nC: 60 in, left=rake, right=butt"
    )
    result = trimlang.compile(HEAD + lines)
    assert ("T402" in {one.code for one in result.diagnostics}) is not there
    assert ("B" in {piece.run for piece in result.pieces}) is there


def test_a_falling_stair_mirrors_a_rising_one():
    rising, _ = pieces("A: 48 in, left=butt, right=rake\n"
                       "B: 120 in, left=rake, right=plumb, rising right 36 deg")  # fmt: skip
    falling, _ = pieces("B: 120 in, left=plumb, right=rake, rising left 36 deg\n"
                        "A: 48 in, left=rake, right=butt")  # fmt: skip
    for one, other in zip(rising, reversed(falling), strict=True):
        assert one.length == other.length
        assert (one.left.exact, one.left.long_edge) == (other.right.exact, other.right.long_edge)
        assert (one.right.exact, one.right.long_edge) == (other.left.exact, other.left.long_edge)


def test_plumb_and_level_ends_by_rise_and_run():
    (rake,), _ = pieces("B: 100 in, left=level, right=plumb, rising right 7 1/2 in over 10 in")
    # tan = 3/4: plumb 36.87° takes 5 1/4 × 3/4 = 3 15/16, level 53.13° takes 5 1/4 × 4/3 = 7
    assert float(rake.right.exact) == pytest.approx(36.8699, abs=1e-4)
    assert float(rake.left.exact) == pytest.approx(53.1301, abs=1e-4)
    assert (rake.left.long_edge, rake.right.long_edge) == ("top", "top")
    assert rake.length == 100 + 7 + Fraction(63, 16)


def test_the_plan_shows_a_stair_by_its_run():
    _, result = pieces("B: 100 in, left=plumb, right=plumb, rising right 3 in over 4 in")
    leg = outline(result.job.rooms[0]).legs[0]
    assert float(leg.end.x) == pytest.approx(80)


@pytest.mark.parametrize(
    ("lines", "code"),
    [
        ("A: 40 in, left=plumb, right=butt", "T243"),
        ("A: 40 in, left=butt, right=rake\nB: 40 in, left=rake, right=butt", "T244"),
        ("A: 40 in, left=return, right=butt, rising right 30 deg", "T245"),
        ("A: 40 in, left=butt, right=butt, rising right 70 deg", "T233"),
        ("A: 40 in, left=butt, right=rake\nB: 40 in, left=butt, right=butt", "T301"),
    ],
)
def test_stairs_that_cannot_be(lines, code):
    assert code in {one.code for one in trimlang.compile(HEAD + lines).diagnostics}


@every("pitch", [0.6, 36])
@every("rising", ["right", "left"])
@every("joint", ["plumb", "level"])
@every("side", ["left", "right"])
def test_the_long_edge_of_plumb_and_level_ends_against_drawn_lines(side, joint, rising, pitch):
    """A plumb or level line across the board meets the upper edge further right or left."""
    head = HEAD.replace("60 deg", "75 deg").replace("16 ft", "99 ft")
    ends = {"left": "butt", "right": "butt", side: joint}
    run = f"B: 600 in, left={ends['left']}, right={ends['right']}, rising {rising} {pitch} deg"
    result = trimlang.compile(head + run)
    assert result.ok, [one.message for one in result.diagnostics]
    slope = np.radians(pitch if rising == "right" else -pitch)
    along, across = [np.cos(slope), np.sin(slope)], [-np.sin(slope), np.cos(slope)]
    line = np.array([0.0, 1.0]) if joint == "plumb" else np.array([1.0, 0.0])
    upper_is_further_right = (line @ along) * (line @ across) > 0
    cut = getattr(result.pieces[0], side)
    assert cut.long_edge == ("top" if upper_is_further_right == (side == "right") else "bottom")
