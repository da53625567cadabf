"""Scribing to the floor, packing out, and nails that reach the plate."""

from fractions import Fraction

import pytest

import trimlang
from tests.jobs import BASE, CASE, CROWN, CROWN_STOCK, SHOE, SHOE_STOCK, TWELVE_FEET
from trimlang.joinery.fixings import Fixing, fixings

HEAD = f"""
{BASE}
{SHOE}
{TWELVE_FEET}
{SHOE_STOCK}
"""


def compiled(lines, head=HEAD):
    return trimlang.compile(head + lines)


def codes(result):
    return {one.code for one in result.diagnostics}


BASE_ROOM = 'room "R", trim base, open walk\n'
BOTH = 'room "R", trim base, shoe, open walk\n'
ALIKE = (
    "N: 40 in, left=butt, right=in-corner, floor gap 3/16 in\n"
    "E: 40 in, left=in-corner, right=butt, floor gap 1/8 in\n"
)


def test_a_floor_gap_becomes_a_scribe_line():
    result = compiled(BASE_ROOM + ALIKE)
    assert codes(result) == {"T214"}
    assert [piece.scribe for piece in result.pieces] == [Fraction(3, 16), Fraction(1, 8)]


def test_shoe_covers_the_gap():
    result = compiled(BOTH + ALIKE.replace("1/8 in", "0 in"))
    assert not result.diagnostics
    assert {piece.scribe for piece in result.pieces} == {Fraction(0)}


def test_neighbours_that_lose_unlike_amounts_are_warned():
    assert "T407" in codes(compiled(BASE_ROOM + ALIKE.replace("1/8 in", "0 in")))


def test_an_inside_corner_cut_short_tells_what_to_pack_out():
    result = compiled(BASE_ROOM + "N: 40 1/32 in, left=in-corner, right=butt")
    assert result.pieces[0].shim == Fraction(1, 32)
    assert compiled(BASE_ROOM + "N: 40 1/32 in, left=butt, right=butt").pieces[0].shim == 0


def test_the_nails_bite_worked_by_hand():
    # 2 in less 9/16 of trim and 1/2 of wallboard leaves 15/16; a plate of 1 1/2 in
    # below 1/4 in of flooring is met up to 1 1/4 in
    result = compiled("nails: floor 1/4 in\n" + HEAD + BOTH + ALIKE, "")
    assert fixings(result.job) == (Fixing("base", Fraction(5, 4), Fraction(15, 16), Fraction(16)),)


def test_nails_that_do_not_reach_are_warned():
    assert "T408" in codes(compiled("nails: 1 in long\n" + HEAD + BOTH + ALIKE, ""))
    assert "T409" in codes(compiled("nails: floor 2 in\n" + HEAD + BOTH + ALIKE, ""))


def test_a_trim_of_no_stated_thickness_has_no_bite_to_tell():
    head = f"trim base: 5 1/4 in tall\n{TWELVE_FEET}\n"
    result = compiled(BASE_ROOM + "N: 40 in, left=butt, right=butt", head)
    assert [fixing.bite for fixing in fixings(result.job)] == [None]
    assert "T408" not in codes(result)


def test_only_what_stands_on_the_floor_is_nailed_to_the_plate():
    head = HEAD + (f"{CROWN}\n{CROWN_STOCK}\n{CASE}\nstock case: 7 ft at 6.10\n")
    run = "N: 40 in, left=butt, right=butt\n"
    rooms = [f'room "R {trims}", trim {trims}, open walk\n{run}' for trims in ("crown", "shoe")]
    result = compiled("".join(rooms) + BOTH + run, head)
    assert result.ok, [one.message for one in result.diagnostics]
    assert [fixing.trim for fixing in fixings(result.job)] == ["base"]


def test_a_nail_that_ends_at_the_plates_face_does_not_hold():
    # 9/16 of trim and 1/2 of wallboard are 1 1/16
    for long, told in (("1 1/16 in", True), ("1 1/8 in", False)):
        result = compiled(f"nails: {long} long\n" + HEAD + BASE_ROOM + ALIKE, "")
        assert ("T408" in codes(result)) is told


def test_a_metric_job_tells_nails_in_millimetres():
    text = "unit mm\nnails: 20 mm long\n" + HEAD + BASE_ROOM + "N: 1 m, left=butt, right=butt"
    (said,) = [one.message for one in trimlang.compile(text).diagnostics if one.code == "T408"]
    # 14.2875 mm of trim and 12.5 mm of wallboard, less 20 mm
    assert "20 mm" in said
    assert "6.79 mm" in said


def test_only_what_stands_on_the_floor_is_scribed():
    head = HEAD + (
        f"{CROWN}\n{CROWN_STOCK}\ntrim rail: 3/4 in thick, 2 in tall\nstock rail: 12 ft at 9.00\n"
    )
    room = 'room "R", trim {}, open walk\nN: 40 in, left=butt, right=butt, floor gap 3/16 in\n'
    for trims, losses in (
        ("base", ["3/16"]), ("shoe", ["0"]), ("crown", ["0"]), ("base, rail", ["3/16", "0"])
    ):  # fmt: skip
        result = compiled(room.format(trims), head)
        assert [piece.scribe for piece in result.pieces] == [Fraction(one) for one in losses]


@pytest.mark.parametrize(("gap", "loss"), [("11/16", "0"), ("3/4", "3/4")])
def test_shoe_covers_a_gap_lower_than_itself(gap, loss):
    result = compiled(BOTH + f"N: 40 in, left=butt, right=butt, floor gap {gap} in\n")
    base, _ = result.pieces
    assert base.scribe == Fraction(loss)


def unlike(room, *runs, head=HEAD):
    """The lines of a room, counted from 1, whose wall loses visibly more or less than the last."""
    found = compiled(f"{room}\n" + "\n".join(runs), head).diagnostics
    said = [one for one in found if one.code == "T407"]
    return [one.span.line - head.count("\n") - 1 for one in said], [one.message for one in said]


def run(name, gap, left="in-corner", right="in-corner", more=""):
    return f"{name}: 40 in, left={left}, right={right}, floor gap {gap}{more}"


@pytest.mark.parametrize(("walk", "told"), [("", [1, 4]), (", open walk", [4])])
def test_the_last_wall_of_a_room_meets_the_first(walk, told):
    runs = [run(name, gap) for name, gap in zip("NESW", ["3/16 in"] * 3 + ["0 in"], strict=True)]
    lines, said = unlike(f'room "R", trim base{walk}', *runs)
    assert sorted(lines) == told
    assert all("3/16 in" in message for message in said)


def test_a_room_of_three_walls_goes_round():
    corners = {"left": "in-corner(60 deg)", "right": "in-corner(60 deg)"}
    runs = [
        run(name, gap, **corners) for name, gap in (("A", "1/4 in"), ("B", "1/4 in"), ("C", "0 in"))
    ]
    assert sorted(unlike('saw: reaches 60 deg\nroom "R", trim base', *runs)[0]) == [2, 4]


def test_two_walls_that_are_a_whole_room_meet_once():
    assert len(unlike('room "R", trim base', run("A", "1/4 in"), run("B", "0 in"))[0]) == 1


def test_what_lies_between_two_walls_does_not_hide_the_next_pair():
    room = 'room "R", trim base, open walk'
    pair = [run("C", "1/4 in"), run("D", "0 in", right="butt")]
    opening = [run("A", "1/4 in", right="butt"), "opening 30 in", run("B", "0 in", left="butt")]
    assert unlike(room, *opening, run("B2", "1/4 in"), *pair)[0] == [4, 6]
    bare = [run("A", "1/4 in"), run("B", "0 in", more=", no base")]
    assert unlike(room, *bare, *pair)[0] == [4]


def test_an_eighth_is_not_seen_and_more_is_told_as_the_difference():
    room = 'room "R", trim base, open walk'
    assert unlike(room, run("A", "1/2 in"), run("B", "3/8 in"))[0] == []
    lines, said = unlike(room, run("A", "1/2 in"), run("B", "1/8 in"))
    assert lines == [2]
    assert "3/8 in" in said[0]
    assert (
        "9.53 mm"
        in unlike(room, run("A", "1/2 in"), run("B", "1/8 in"), head="unit mm" + HEAD)[1][0]
    )


@pytest.mark.parametrize(("left", "told"), [("in-corner", [2]), ("open", []), ("return", [])])
def test_a_top_that_runs_on_into_none_is_not_compared(left, told):
    runs = [run("N", "1 in", "butt", left), run("E", "0 in", left, "butt")]
    lines, _ = unlike('room "R", trim base, open walk', *runs)
    assert lines == told


@pytest.mark.parametrize("free", ["open", "return"])
def test_a_top_that_ends_free_does_not_hide_the_next_pair(free):
    runs = [
        run("N", "1 in", "butt", free),
        run("E", "1 in", free),
        run("S", "0 in", right="butt"),
    ]
    assert unlike('room "R", trim base, open walk', *runs)[0] == [3]


def test_the_nails_that_are_named_are_long_enough() -> None:
    """1 in less 9/16 in of base and 1/2 in of board misses by 1/16 in; 1 1/2 in holds."""
    text = compiled("nails: 1 in long\n" + HEAD + BOTH + ALIKE, "")
    (said,) = [one for one in text.diagnostics if one.code == "T408"]
    assert said.remedy == "Take longer nails: nails: 1 1/2 in long"
    mended = compiled("nails: 1 1/2 in long\n" + HEAD + BOTH + ALIKE, "")
    assert "T408" not in codes(mended)


def test_where_thick_and_tall_were_swapped_no_nail_is_named() -> None:
    text = (
        f"trim base: 5 1/4 in thick, 9/16 in tall\n{TWELVE_FEET}\n"
        'room "R", trim base, open walk\n  N: 40 in, left=butt, right=butt\n'
    )
    assert [one.code for one in trimlang.compile(text).diagnostics] == ["T263"]
