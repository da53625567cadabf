"""Casing sets, worked by hand."""

from fractions import Fraction

import pytest
from shapely.affinity import rotate
from shapely.geometry import box

import trimlang
from tests.every import every
from tests.jobs import BASE, CASE, TWELVE_FEET, WIDE_CASE
from trimlang.joinery.piece import MeasuredOn, PieceKind
from trimlang.joinery.pieces import joinery
from trimlang.lengths.tape import Unit
from trimlang.survey.outline import outline

HEAD = f"""
{BASE}
{CASE}
trim header: 3/4 in thick, 4 1/2 in wide
{TWELVE_FEET}
stock case: 7 ft at 6.10, 12 ft at 11.00
stock header: 8 ft at 9.00
"""
ROOM = """
room "R", trim base, open walk
  N: 40 in, left=butt, right=butt
"""


def casing(opening, settings=""):
    result = trimlang.compile(f"{settings}\n{HEAD}{ROOM}{opening}")
    assert result.ok, [one.message for one in result.diagnostics]
    return [piece for piece in result.pieces if piece.kind is not PieceKind.RUN], result


def test_a_mitred_set():
    pieces, _ = casing(
        'opening 32 in, "door to hall", casing case, height 80 in', "casings: off floor 1/4 in"
    )
    left, right, head = pieces
    # 80 + 3/16 reveal + 2 1/4 width − 1/4 off the floor = 82 3/16 to the long point
    assert left.length == right.length == Fraction(1315, 16)
    # the inner edge frames opening and reveal: 80 + 3/16 − 1/4 = 79 15/16
    assert left.short_points == right.short_points == Fraction(1279, 16)
    # 32 + 2 × 3/16 + 2 × 2 1/4 = 36 7/8 long, 32 3/8 short
    assert head.length == Fraction(295, 8)
    assert head.short_points == Fraction(259, 8)
    assert (left.kind, right.kind, head.kind) == (PieceKind.LEG, PieceKind.LEG, PieceKind.HEAD)
    assert {piece.measured_on for piece in pieces} == {MeasuredOn.OUTER}
    # laid with the outer edge away, the left leg's mitre is at its right end
    assert (left.left.exact, left.right.exact) == (0, 45)
    assert (right.left.exact, right.right.exact) == (45, 0)
    assert (head.left.exact, head.right.exact) == (45, 45)
    assert [piece.id for piece in pieces] == [
        "R-door-to-hall-case-left-leg", "R-door-to-hall-case-right-leg", "R-door-to-hall-case-head"
    ]  # fmt: skip
    assert left.all_notes == "left leg of “door to hall”, as you face it"


def test_a_butt_head_of_another_trim():
    pieces, _ = casing(
        "opening 32 in, casing case head header, height 80 in",
        "casings: reveal 1/4 in, overhang 1/2 in",
    )
    left, right, head = pieces
    assert left.length == right.length == Fraction(321, 4)
    # 32 + 2 × 1/4 + 2 × 2 1/4 + 2 × 1/2 = 38
    assert (head.length, head.trim) == (38, "header")
    assert all(piece.measured_on is MeasuredOn.EITHER for piece in pieces)


def test_a_butt_head_of_the_same_trim():
    pieces, _ = casing("opening 32 in, casing case, height 80 in", "casings: head butt")
    assert pieces[2].length == Fraction(295, 8)
    assert pieces[0].length == Fraction(1283, 16)


def test_the_walk_goes_past_casing_and_all():
    _, result = casing("opening 32 in, casing case, height 80 in")
    leg = outline(result.job.rooms[0]).legs[1]
    assert leg.end.x - leg.start.x == Fraction(295, 8)


@pytest.mark.parametrize(
    ("opening", "code"),
    [
        ("opening 32 in, casing case", "T240"),
        ("opening 32 in, casing cose, height 80 in", "T210"),
        ("opening 32 in, casing case, height 13 ft", "T410"),
    ],
)
def test_what_a_casing_lacks(opening, code):
    codes = {one.code for one in trimlang.compile(HEAD + ROOM + opening).diagnostics}
    assert code in codes


def test_casing_is_planned_and_nailed_with_the_rest():
    _, result = casing("opening 32 in, casing case, height 80 in")
    assert {plan.trim for plan in result.plans} == {"base", "case"}


def test_a_casings_rounding_is_set_like_any_other():
    opening = "opening 32 1/32 in, casing case, height 80 in"
    assert casing(opening)[0][2].length == Fraction(591, 16)
    assert casing(opening, "round head down")[0][2].length == Fraction(295, 8)


def test_a_casing_is_told_by_its_door_and_what_was_measured():
    (left, right, head), _ = casing('opening 32 in, "door to hall", casing case, height 80 in')
    assert (left.wall, right.wall, head.wall) == (80, 80, 32)
    assert {piece.run for piece in (left, right, head)} == {"door-to-hall"}
    assert head.all_notes == "head of “door to hall”"
    assert casing("opening 32 in, casing case, height 80 in")[0][2].all_notes == "head"


def test_a_leg_may_be_as_long_as_the_stick_and_no_longer():
    # 12 ft less 3/16 of reveal and 2 1/4 of width
    (left, *_), result = casing("opening 32 in, casing case, height 141 9/16 in")
    assert left.length == 144
    assert "T410" not in {one.code for one in result.diagnostics}
    text = HEAD + ROOM + "opening 32 in, casing case, height 141 5/8 in"
    assert [one.code for one in trimlang.compile(text).diagnostics if one.code == "T410"]


def test_a_metric_job_has_its_casing_in_millimetres():
    pieces, _ = casing("opening 800 mm, casing case, height 2 m", "unit mm")
    assert {piece.unit for piece in pieces} == {Unit.MM}
    text = f"unit mm\n{HEAD}{ROOM}opening 800 mm, casing case, height 4 m"
    said = [one.message for one in trimlang.compile(text).diagnostics if one.code == "T410"]
    # 4000 + 4.76 + 57.15 mm, to the millimetre; 12 ft are 3657.6 mm, so 3657 on the tape
    assert "4.062 m" in said[0]
    assert "3.657 m" in said[0]


def test_a_casing_of_no_known_height_has_no_pieces():
    result = trimlang.compile(HEAD + ROOM + "opening 32 in, casing case")
    assert "T240" in {one.code for one in result.diagnostics}
    assert {piece.kind for piece in joinery(result.job)[0]} == {PieceKind.RUN}


def test_a_height_for_all_cased_openings_is_said_once() -> None:
    head = (
        f"trim base: 9/16 in thick\n{WIDE_CASE}\nstock base: 12 ft at 1\nstock case: 12 ft at 1\n"
    )
    walls = (
        'room "R", trim base, open walk\n  N: 40 in, left=butt, right=butt\n'
        '  door 30 in, "a", casing case{}\n  N2: 40 in, left=butt, right=butt\n'
        '  door 30 in, "b", casing case, height 82 in\n  N3: 40 in, left=butt, right=butt\n'
    )
    said = trimlang.compile(head + walls.format(", height 80 in"))
    once = trimlang.compile(f"{head}casings: height 80 in\n{walls.format('')}")
    below = walls.format("").replace("\n", "\ncasings: height 80 in\n", 1)
    of_room = trimlang.compile(head + below)
    assert said.ok
    assert said.pieces == once.pieces == of_room.pieces
    assert [one.code for one in trimlang.compile(head + walls.format("")).diagnostics] == ["T240"]


@every(
    "degrees, ends, more, by",
    [
        (90, "", "", "11/16"),
        # the next wall leans back, so its casing's face reaches the other one's first
        (60, "", "", "1 1/4"),
        # a first leg that is bevelled to fit the next wall reaches that far along it
        (120, "", "", "13/16"),
        # the corner may be said at the second opening as well
        (90, "left", "", "11/16"),
        # a plinth of 3 in keeps each leg of 2 1/4 in 3/4 in from the corner
        (90, "", ", plinths plinth", None),
    ],
)
def test_of_two_casings_in_a_corner_one_gives_way(degrees, ends, more, by):
    """In plan the first door's wall lies along y = 0, and the room below it."""
    corner = f"in-corner({degrees} deg)"
    one, other = ("", f", left={corner}") if ends else (f", right={corner}", "")
    cased = f"casing case, height 80 in{more}"
    result = trimlang.compile(
        f"{HEAD}block plinth: 3 in wide, 6 in tall, 1 in thick\n"
        'room "R", trim base, open walk\n  N: 40 in, left=butt, right=butt\n'
        f'  door 32 in, "den", {cased}{one}\n  door 30 in, "bath", {cased}{other}\n'
        "  E: 40 in, left=butt, right=butt\n"
    )
    told = [found.message for found in result.diagnostics if found.code == "T330"]
    notes = {piece.id: piece.all_notes for piece in result.pieces}
    rips = [name for name, note in notes.items() if "rip " in note]
    assert (bool(told), rips) == ((True, ["R-bath-case-left-leg"]) if by else (False, []))
    if by is None:
        return
    assert f"rip {by} in off its outer edge" in notes["R-bath-case-left-leg"]
    assert f"saw {by} in off its left end" in notes["R-bath-case-head"]
    thick, off = 11 / 16, float(sum(map(Fraction, by.split())))
    first = box(-9 / 4, -thick, 0, 0)
    second = rotate(box(off, -thick, 9 / 4, 0), degrees - 180, origin=(0, 0))
    assert first.intersection(second).area < 1e-9
    # no gap is left but by the mark's rounding, and a first leg whose edge is not bevelled
    assert degrees > 90 or first.distance(second) < 1 / 16


def test_what_goes_past_a_casing_is_sawn_off_at_the_wall():
    pieces, _ = casing(
        'window 32 in, "yard", right=in-corner, casing case head header, height 40 in,'
        " stool case apron case, sill 30 in",
        "casings: head butt, overhang 1/2 in, horn 3/4 in",
    )
    notes = {piece.id: piece.all_notes for piece in pieces}
    assert notes["R-yard-header-head"].endswith("; in the corner saw 1/2 in off its right end")
    assert notes["R-yard-case-stool"].endswith("; in the corner saw 3/4 in off its right end")
    assert "corner" not in notes["R-yard-case-apron"] + notes["R-yard-case-right-leg"]
