"""Walls that curve: arcs by printed tables, bent trim by its solids, kerfs, plan and closing."""

from __future__ import annotations

import re
from fractions import Fraction
from math import asin, cos, degrees, hypot, pi, radians, sin, tan

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LineString, Point, Polygon
from shapely.ops import unary_union

from tests import jobs
from tests.every import every
from trimlang.compiler import Result, check_job
from trimlang.diagnostics.source import Source
from trimlang.joinery.piece import Piece
from trimlang.language.tidy_file import tidy
from trimlang.sheets.content.floor_plan import floor_plan
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.quantities import Pen
from trimlang.survey.outline import outline
from trimlang.survey.verdict import Verdict

THICK = 0.5625
TRIMS = f"""\
saw: reads to 0.01 deg
round to 1/128 in
{jobs.BASE}
trim bend: 9/16 in thick, 5 1/4 in tall, flexible resin
{jobs.SHOE}
stock base: 99 ft at 40
stock bend: 99 ft at 90
stock shoe: 99 ft at 10
"""

SEGMENTS = {
    10: (0.17453, 0.00381, 0.17431), 30: (0.52360, 0.03407, 0.51764),
    45: (0.78540, 0.07612, 0.76537), 60: (1.04720, 0.13397, 1.00000),
    90: (1.57080, 0.29289, 1.41421), 120: (2.09440, 0.50000, 1.73205),
    150: (2.61799, 0.74118, 1.93185), 180: (3.14159, 1.00000, 2.00000),
}  # fmt: skip
"""Segments of a circle of radius 1 as engineers' handbooks print them: degrees, arc, rise, chord
(from memory)."""


def hall(lines: str, trims: str = "base") -> Result:
    return check_job(f'{TRIMS}room "Hall" as H, trim {trims}, open walk\n{lines}\n')


def pieces(lines: str, trims: str = "base") -> dict[str, Piece]:
    result = hall(lines, trims)
    assert result.ok, [one.message for one in result.diagnostics]
    return {piece.id.removeprefix("H-"): piece for piece in result.pieces}


@every("turn", SEGMENTS)
def test_arcs_by_the_table_of_segments(turn: int) -> None:
    arc, rise, chord = (100 * one for one in SEGMENTS[turn])
    ends = "left=butt, right=butt"
    ways = (
        f"100 in radius, {ends}, curves in {turn} deg",
        f"{chord:.3f} in, {ends}, curves in {min(rise, 99.999):.3f} in",
        f"{min(chord, 199.999):.3f} in, {ends}, curves in radius 100 in",
    )
    for way in ways:
        (run,) = hall(f"  A: {way}").job.rooms[0].runs
        # the table's five figures: half of the last one in the rise of a flat arc, or in the chord
        # of a half circle, moves the arc so far
        assert float(run.length) == pytest.approx(arc, abs=0.65)
        assert float(run.curve.chord) == pytest.approx(chord, abs=0.01)
    (exact,) = hall(f"  A: {ways[0]}").job.rooms[0].runs
    assert float(exact.length) == pytest.approx(arc, abs=6e-4)
    # the rise over the chord, by the numbers that the survey keeps
    middle = float(exact.curve.radius) * (1 - cos(radians(float(exact.curve.turn) / 2)))
    assert middle == pytest.approx(rise, abs=6e-4)


@pytest.mark.parametrize("way", ["in", "out"])
@pytest.mark.parametrize(("turn", "radius"), [(90, 48), (40, 96), (180, 24)])
def test_the_skin_that_is_left_lies_on_its_circle(way: str, turn: int, radius: int) -> None:
    """Bent, the piece is a ring: shapely measures the line along the middle of its skin."""
    line = f"  A: {radius} in radius, left=butt, right=butt, curves {way} {turn} deg"
    out = 1 if way == "out" else -1
    at = radius + out * (THICK - 1 / 16)
    steps = [radians(turn) * n / 4000 for n in range(4001)]
    skin = LineString([(at * cos(a), at * sin(a)) for a in steps])
    assert float(pieces(line)["A-base"].rounding.exact) == pytest.approx(skin.length, rel=1e-6)
    flexible = pieces(line, "bend")["A-bend"]
    middle = (radius + out * THICK / 2) * radians(turn)
    assert float(flexible.rounding.exact) == pytest.approx(middle, rel=1e-9)
    assert "no kerfs" in flexible.all_notes


@given(st.integers(12, 240), st.integers(5, 180), st.sampled_from(["in", "out"]))
def test_kerfs_close_enough_and_their_flats_lie_close_to_the_round(radius, turn, way) -> None:
    tape = TRIMS.replace("1/128", "1/16")
    wall = f"  A: {radius} in radius, left=butt, right=butt, curves {way} {turn} deg\n"
    result = check_job(f'{tape}room "Hall" as H, trim base, open walk\n{wall}')
    assert result.ok
    said = re.search(
        r"kerf its back (\d+) times, .* deep, ([\d /]+) in apart,"
        r" the first and the last ([\d /]+) in",
        result.pieces[0].all_notes,
    )
    assert said
    count = int(said[1])
    apart, first = (float(sum(map(Fraction, text.split()))) for text in said.groups()[1:])
    # a kerf of 1/8 in, 7/16 in deep, closes after 2 asin(1/7)
    assert count * degrees(2 * asin(1 / 7)) >= turn - 1e-9
    face = radius + (THICK if way == "out" else -THICK)
    # as a hand steps them off: what stays at the right end is what the left one has, but for a mark
    last = float(result.pieces[0].length) - first - (count - 1) * apart
    assert abs(last - first) <= 1 / 16
    assert apart / 4 - 1 / 16 <= first <= apart * 3 / 4 + 1 / 16
    # the trial that the trade makes: one kerf in a straight board, whose free end is lifted until
    # the kerf closes; how far it lifts at the radius from the kerf is how far apart they may be
    assert apart <= face * tan(2 * asin(1 / 7))
    half = apart / face / 2
    flat = LineString([(face * cos(half), -face * sin(half)), (face * cos(half), face * sin(half))])
    assert Point(face, 0).distance(flat) <= 1 / 64 + 1e-4


@every("way", ["in", "out"])
@every("turn, radius", [(30, 120), (90, 48), (180, 24)])
def test_no_fewer_kerfs_than_workshops_saw(way: str, turn: int, radius: int) -> None:
    """What the outer arc is longer than the inner one, divided by the blade.

    A rule that how-tos of the trade give in the open; the arcs are those of the skin's back and of
    the trim's own back.
    """
    line = f"  A: {radius} in radius, left=butt, right=butt, curves {way} {turn} deg"
    count = int(pieces(line)["A-base"].all_notes.split("kerf its back ")[1].split()[0])
    out = 1 if way == "out" else -1
    arcs = [(radius + out * far) * radians(turn) for far in (0.0, THICK - 1 / 8)]
    assert count >= abs(arcs[1] - arcs[0]) / (1 / 8)


def ring(radius: float, centre: tuple[float, float], turn: float, out: int) -> Polygon:
    """The trim round an arc that begins at angle 0; ``out`` 1 where it lies outside the circle."""
    angles = [radians(turn * n / 600) for n in range(601)]
    inner, outer = (
        [(centre[0] + far * cos(a), centre[1] + far * sin(a)) for a in angles]
        for far in (radius, radius + out * THICK)
    )
    return Polygon([*inner, *reversed(outer)])


@pytest.mark.parametrize("radius", [24, 48, 96])
def test_bent_trim_meets_straight_trim_at_a_corner(radius: int) -> None:
    """A wall along y = 0 ends at (0, 0); the next begins there, square, and curves to the left.

    The room is at y > 0 and left of the second wall.
    """
    got = pieces(
        "  A: 40 in, left=butt, right=in-corner(90 deg)\n"
        f"  B: {radius} in radius, left=in-corner, right=butt, curves in 60 deg"
    )
    straight = got["A-base"]
    back, face = float(straight.back) - 40, float(straight.face) - 40
    base = Polygon([(-40, 0), (back, 0), (face, THICK), (-40, THICK)])
    # mitred as at a straight wall, from the corner at 45°
    bent = ring(radius, (-radius, 0), 60, -1)
    mitred = bent.difference(Polygon([(0, 0), (-2, 2), (-2, -1), (0, -1)]))
    assert base.intersection(mitred).area < 1e-6
    # what the curve leaves open at the mitre's face: (t tan m)² ÷ 2 R at most
    near = unary_union([base, mitred.buffer(THICK**2 / radius)])
    assert near.geom_type == "Polygon"
    # the long point is at the back, in the corner
    at = radius - THICK + 1 / 16
    assert float(got["B-base"].rounding.exact) == pytest.approx(at * radians(60), rel=1e-9)


def test_what_stands_in_front_bends_round_a_smaller_circle() -> None:
    got = pieces("  A: 48 in radius, left=butt, right=butt, curves in 90 deg", "base, shoe")
    assert float(got["A-shoe"].rounding.exact) == pytest.approx(
        (48 - THICK - 0.5 + 1 / 16) * pi / 2, rel=1e-9
    )


def test_a_room_with_an_apse_closes_and_its_plan_draws_the_arc() -> None:
    # 10 ft wide, a round end that rises 30 in over it: 4 atan(1/2) = 106.26°
    corner = 90 + degrees(4 * asin(1 / 5**0.5)) / 2
    result = check_job(
        f'{TRIMS}room "Apse" as A, trim base\n'
        "  N: 10 ft, left=in-corner(90 deg), right=in-corner(90 deg)\n"
        f"  E: 8 ft, left=in-corner, right=in-corner({corner:.4f} deg)\n"
        "  S: 10 ft, left=in-corner, right=in-corner, curves in 30 in\n"
        f"  W: 8 ft, left=in-corner({corner:.4f} deg), right=in-corner\n"
    )
    assert result.ok, [one.message for one in result.diagnostics]
    assert result.closings[0].verdict is Verdict.CLOSES
    drawn = outline(result.job.rooms[0])
    assert float(drawn.turned) == pytest.approx(360, abs=1e-3)
    assert float(drawn.gap) < 0.001
    (plan,) = floor_plan(result, Pen(words_in("en"), "$"))
    arc = [one for one in plan.lines if one.look == "run"][2:-1]
    assert len(arc) == 22
    # all its ends lie on one circle, 75 in in radius, that rises 30 in over the chord
    points = [(float(one.x1), float(one.y1)) for one in arc]
    points.append((float(arc[-1].x2), float(arc[-1].y2)))
    (x1, y1), (x2, _) = points[0], points[-1]
    inch = abs(x2 - x1) / 120
    centre = ((x1 + x2) / 2, y1 + (30 - 75) * inch)
    away = [hypot(x - centre[0], y - centre[1]) for x, y in points]
    assert away == pytest.approx([75 * inch] * 23, abs=0.02)
    assert max(y for _, y in points) == pytest.approx(y1 + 30 * inch, abs=0.02)


def test_a_slip_is_looked_for_at_corners_and_not_where_a_curve_goes_straight_on() -> None:
    # an inside corner written as an outside one, beside a wall that curves on from a door
    result = check_job(
        f'{TRIMS}room "Apse" as A, trim base\n'
        "  N: 10 ft, left=in-corner, right=in-corner\n"
        "  E: 8 ft, left=in-corner, right=out-corner\n"
        "  S: 10 ft, left=out-corner, right=butt\n  door 32 in\n"
        "  T: 4 ft radius, left=butt, right=in-corner, curves in 90 deg\n"
    )
    assert "T311" in {one.code for one in result.diagnostics}


def test_other_units_mirrors_and_tidy_lines_mean_the_same() -> None:
    text = (
        'room "H" as H, trim base, open walk\n'
        "  A: 6 ft, left=in, right=butt, curves   OUT 9 in\n"
        "  B: 4 ft RADIUS, left=butt, right=out(80 deg), curves in 40 deg\n"
        "  C: 6 ft, left=out, right=butt, curves in radius 5 ft\n"
    )
    one = check_job(TRIMS + text)
    assert one.ok
    metric = text
    for inches, mm in (("6 ft", "1828.8"), ("9 in", "228.6"), ("4 ft", "1219.2"), ("5 ft", "1524")):
        metric = metric.replace(inches, f"{mm} mm")
    assert check_job(TRIMS + metric).pieces == one.pieces
    assert check_job(tidy(Source("x", TRIMS + text)).text).pieces == one.pieces
    mirrored = check_job(
        TRIMS + 'room "H" as H, trim base, open walk\n'
        "  C: 6 ft, left=butt, right=out(80 deg), curves in radius 5 ft\n"
        "  B: 4 ft radius, left=out, right=butt, curves in 40 deg\n"
        "  A: 6 ft, left=butt, right=in, curves out 9 in\n"
    )
    assert [p.length for p in one.pieces] == [p.length for p in reversed(mirrored.pieces)]


def test_kerfs_leave_what_the_file_says() -> None:
    line = "  A: 48 in radius, left=butt, right=butt, curves out 90 deg"
    result = check_job(f'{TRIMS}kerfs: leave 3/32 in\nroom "H", trim base, open walk\n{line}\n')
    (piece,) = result.pieces
    # 9/16 - 3/32 = 15/32 deep; the skin's middle is 48 + 9/16 - 3/64 from the centre
    assert "15/32 in deep" in piece.all_notes
    assert "3/32 in stays" in piece.all_notes
    assert float(piece.rounding.exact) == pytest.approx((48 + 0.5625 - 3 / 64) * pi / 2)
    thick = check_job(f'{TRIMS}kerfs: leave 5/8 in\nroom "H", trim base, open walk\n{line}\n')
    assert "T450" in {one.code for one in thick.diagnostics}
    assert Fraction(5, 8) == thick.job.rooms[0].settings.kerf_leaves


def test_each_part_of_a_spliced_bend_is_kerfed_by_its_own_length() -> None:
    line = "  A: 10 ft radius, left=butt, right=butt, curves in 90 deg, splice"
    whole = pieces(line.removesuffix(", splice"))["A-base"]
    parts = [one for name, one in pieces(line).items() if name.startswith("A-base-")]
    lap = THICK  # at 45° a scarf laps by the thickness
    assert float(sum(one.rounding.exact for one in parts)) == pytest.approx(
        float(whole.rounding.exact) + lap
    )
    counts = [int(one.all_notes.split("kerf its back ")[1].split()[0]) for one in (whole, *parts)]
    apart = float(whole.rounding.exact) / counts[0]
    # no more than half a space is over or lacks on the back of either, where the kerfs are
    assert all(
        abs(count * apart - one.back) <= apart / 2 + 1e-2
        for count, one in zip(counts[1:], parts, strict=True)
    )
    assert counts[0] <= sum(counts[1:]) <= counts[0] + 2
    # a kerf in the lap would cut it in two
    assert all("no kerf within 9/16 in of its scarf" in one.all_notes for one in parts)
    assert "of its scarf" not in whole.all_notes


@every(
    "lines, code",
    [
        ("  A: 40 in, left=butt, right=butt, curves in 90 deg", "T297"),
        ("  A: 40 in radius, left=butt, right=butt, curves in 9 in", "T297"),
        ("  A: 40 in radius, left=butt, right=butt", "T297"),
        ("  A: 40 in, left=butt, right=butt, curves in 21 in", "T298"),
        ("  A: 40 in, left=butt, right=butt, curves in radius 19 in", "T298"),
        ("  A: 40 in radius, left=butt, right=butt, curves in 190 deg", "T298"),
        ("  A: 40 in, left=butt, right=butt, curves in 9 in, rising right 30 deg", "T448"),
        ("  A: 1 in radius, left=butt, right=butt, curves in 90 deg", "T450"),
        ("  A: 1/2 in radius, left=butt, right=butt, curves in 90 deg", "T450"),
        ("  A: 40 in, left=butt, right=butt, curves in 9 in, curves in 9 in", "T209"),
    ],
)
def test_slips_are_told(lines: str, code: str) -> None:
    assert code in {one.code for one in hall(lines).diagnostics}
