"""Splices: on studs, far from corners, lapping away from the entrance, mates named."""

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

import trimlang
from tests.every import every
from tests.jobs import BASE, CROWN, SHOE, SHOE_STOCK, TWELVE_FEET
from trimlang.compiler import check_job
from trimlang.joinery.pieces import at_places, joinery
from trimlang.joinery.splice_lengths import Studs, split
from trimlang.settings.table import Settings

HEAD = f"""
{BASE}
{TWELVE_FEET}
room "R", trim base
"""


def pieces(run, room='room "R", trim base, open walk'):
    result = trimlang.compile(HEAD.replace('room "R", trim base', room) + run)
    assert result.ok, [one.message for one in result.diagnostics]
    return [piece for piece in result.pieces if piece.run == "N"], result


@given(
    st.fractions(145, 1000, max_denominator=16),
    st.fractions(96, 192, max_denominator=2),
    st.fractions(0, 16, max_denominator=8),
    st.booleans(),
)
def test_a_splice_conserves_length(exact, longest, first, on_studs):
    settings, lap = Settings(), Fraction(9, 16)
    studs = Studs(first, Fraction(16)) if on_studs else None
    cut = split(exact, longest, lap, settings, force=True, studs=studs)
    if cut is None:
        assert on_studs or exact < 2 * settings.splice_least
        return
    # each joint takes one lap from the sum
    assert sum(cut) - (len(cut) - 1) * lap == exact
    assert all(settings.splice_least <= length <= longest for length in cut)
    if on_studs:
        end = Fraction(0)
        for length in cut[:-1]:
            end += length - lap
            off = (end + lap / 2 - first) % 16
            assert min(off, 16 - off) < settings.rounding_step * len(cut)


def test_the_joint_lies_on_a_stud_worked_by_hand():
    # 16 ft of wall, 12 ft sticks, first stud 7 1/2 in, every 16 in, lap 9/16.
    # A full stick ends at 144; the last stud that a joint can be over is
    # 7 1/2 + 8 × 16 = 135 1/2, so the left piece ends half a lap past it:
    # 135 1/2 + 9/32 = 135 25/32, on the tape 135 3/4.
    found, _ = pieces("N: 16 ft, left=butt, right=butt, first stud 7 1/2 in")
    assert [piece.length for piece in found] == [Fraction(543, 4), Fraction(909, 16)]
    assert sum(piece.length for piece in found) == 192 + Fraction(9, 16)


def test_each_piece_names_its_mates():
    found, _ = pieces("N: 30 ft, left=butt, right=return")
    ids = [piece.id for piece in found]
    assert ids == ["R-N-base-a", "R-N-base-b", "R-N-base-c", "R-N-base-right-return"]
    assert [piece.mates for piece in found] == [
        ("R-N-base-b",),
        ("R-N-base-a", "R-N-base-c"),
        ("R-N-base-right-return", "R-N-base-b"),
        ("R-N-base-c",),
    ]


def test_runs_that_the_file_splices_are_mates_too():
    _, result = pieces("N: 10 ft, left=butt, right=splice\nN2: 8 ft, left=splice, right=butt")
    assert [piece.mates for piece in result.pieces] == [("R-N2-base",), ("R-N-base",)]


def test_the_two_cuts_of_a_scarf_are_parallel_whichever_side_laps():
    for entrance in ("", "opening 36 in, entrance, right=in-corner\n"):
        found, _ = pieces(
            entrance + "N: 30 ft, left=butt, right=butt\n", 'room "R", trim base, open walk'
        )
        for one, other in pairwise(found):
            assert one.right.exact == other.left.exact == 45
            assert one.right.lean is other.left.lean
            assert {one.right.long_edge, other.left.long_edge} == {"face", "back"}


def test_the_lap_faces_away_from_the_entrance():
    # the entrance is straight across from the left end of N: the left pieces lap over
    left = "W: 84 in, left=butt, right=in-corner\n"
    from_left, _ = pieces(
        "opening 36 in, entrance\n" + left + "N: 30 ft, left=in-corner, right=butt"
    )  # fmt: skip
    assert [piece.right.long_edge for piece in from_left[:-1]] == ["face", "face"]
    from_right, _ = pieces(
        "N: 30 ft, left=butt, right=in-corner\nE: 84 in, left=in-corner, right=butt\n"
        "opening 36 in, entrance"
    )
    assert [piece.right.long_edge for piece in from_right[:-1]] == ["back", "back"]
    assert [piece.left.long_edge for piece in from_right[1:]] == ["face", "face"]


def test_studs_that_do_not_fit_are_reported():
    _, result = pieces("N: 16 ft, left=butt, right=butt, first stud 3 in\n")
    assert not result.diagnostics
    result = trimlang.compile(
        "splices: studs every 160 in\ntrim base: 9/16 in thick\nstock base: 12 ft at 1\n"
        'room "R", trim base, open walk\nN: 16 ft, left=butt, right=butt, first stud 3 in'
    )
    assert [one.code for one in result.diagnostics] == ["T406"]
    assert len(result.pieces) == 2


@pytest.mark.parametrize(("taken", "laps"), [("point", "face"), ("wall", "back")])
def test_the_entrance_is_seen_from_where_the_walls_are(taken, laps):
    """Scraps in the number of a wall between a scarf and the entrance do not move the entrance.

    The entrance is 15 in left of B, whose number is 129 in: over scraps its wall is 9/16 × tan
    45.5° = 0.572 in less.  N runs back along B from its right end, and its scarf is 143.72 in
    along: 0.29 in past the entrance, or 0.28 in short of it.
    """
    found, _ = pieces(
        f"opening 30 in, entrance\nB: 129 in, left=butt, right=out-corner, taken {taken}\n"
        "C: 60 in, left=out-corner, right=out-corner\nN: 16 ft, left=out-corner, right=butt\n"
    )
    assert found[0].right.long_edge == laps


def test_rooms_spliced_elsewhere_are_what_a_whole_new_join_gives():
    room = 'room "{}", trim base, open walk\nN: {} ft, left=butt, right=butt\n'
    text = HEAD.replace('room "R", trim base\n', "") + room.format("A", 16) + room.format("B", 17)
    job = trimlang.compile(text).job
    whole, spliced_runs, _ = joinery(job)
    places = {"A-N-base": (Fraction(100), Fraction(192) + Fraction(9, 16) - 100)}
    anew = joinery(job, places)[0]
    assert at_places(job, whole, spliced_runs, places) == anew
    assert anew[0].length == 100
    assert anew[2:] == whole[2:]


def test_a_wall_as_long_as_the_stick_takes_one_piece():
    found, _ = pieces("N: 12 ft, left=butt, right=butt")
    assert [piece.length for piece in found] == [144]
    assert len(pieces("N: 144 1/16 in, left=butt, right=butt")[0]) == 2


def test_a_return_closes_the_piece_beside_it():
    found, _ = pieces("N: 30 ft, left=return, right=return")
    left, right = found[3:]
    assert [piece.id for piece in (left, right)] == [
        "R-N-base-left-return", "R-N-base-right-return"
    ]  # fmt: skip
    assert (left.mates, right.mates) == (("R-N-base-a",), ("R-N-base-c",))
    assert left.all_notes == "closes the left end of R-N-base-a; glue, do not nail"
    assert right.all_notes == "closes the right end of R-N-base-c; glue, do not nail"


def test_a_spliced_wall_whose_last_piece_comes_to_nothing_has_no_pieces():
    # a level cut on a slope of 0.6° takes 5 1/4 × tan 89.4° = 501 in of a board
    text = (
        HEAD.replace("12 ft", "99 ft").replace("trim base\n", "trim base, open walk\n")
        + "N: 900 in, left=butt, right=level, rising left 0.6 deg"
    )
    result = trimlang.compile(text)
    assert "run N is too short for base between its ends" in {
        one.message for one in result.diagnostics if one.code == "T402"
    }
    assert not result.pieces


@pytest.mark.parametrize("side", ["left", "right"])
def test_a_return_of_trim_too_thin_for_the_tape_is_told(side):
    ends = {"left": "butt", "right": "butt", side: "return"}
    run = f"N: 40 in, left={ends['left']}, right={ends['right']}"
    head = HEAD.replace("9/16 in thick", "0.001 in thick").replace("base\n", "base, open walk\n")
    (said,) = [one for one in trimlang.compile(head + run).diagnostics if one.code == "T122"]
    assert f"base leaves nothing of the return at the {side} end of run N" in said.message
    assert said.span.line == (head + run).count("\n") + 1


@pytest.mark.parametrize(
    ("past", "edges"), [(Fraction(1, 2), ("back", "face")), (-Fraction(1, 2), ("face", "back"))]
)
def test_the_two_sides_of_a_surveyed_splice_lap_alike(past, edges):
    """The entrance lies half an inch to the right or left of the joint, on the wall across."""
    op = Fraction(32)
    right = 216 - (120 + past) - op / 2
    _, result = pieces(
        "N: 120 in, left=in-corner, right=splice\nN2: 96 in, left=splice, right=in-corner\n"
        "E: 120 in, left=in-corner, right=in-corner\n"
        f"S: {float(right)} in, left=in-corner, right=butt\nopening 32 in, entrance\n"
        f"S2: {float(216 - right - op)} in, left=butt, right=in-corner\n"
        "W: 120 in, left=in-corner, right=in-corner",
        'room "R", trim base',
    )
    one, other = result.pieces[:2]
    assert (one.right.long_edge, other.left.long_edge) == edges


@pytest.mark.parametrize(
    ("entrance", "edges"),
    [
        # the joints' middles lie 143 23/32 in (a stick less half a lap) and 287 5/32 in along
        ("143.7", ["face", "face"]),
        ("143.74", ["back", "face"]),
        ("287.14", ["back", "face"]),
        ("287.18", ["back", "back"]),
    ],
)
def test_each_joint_is_seen_from_the_entrance_across(entrance, edges):
    middle = Fraction(entrance)
    found, _ = pieces(
        "N: 30 ft, left=in-corner, right=in-corner\nE: 120 in, left=in-corner, right=in-corner\n"
        f"S: {float(360 - middle - 16)} in, left=in-corner, right=butt\nopening 32 in, entrance\n"
        f"S2: {float(middle - 16)} in, left=butt, right=in-corner\n"
        "W: 120 in, left=in-corner, right=in-corner",
        'room "R", trim base',
    )
    assert [piece.right.long_edge for piece in found[:-1]] == edges


def test_only_the_last_of_the_pieces_is_rounded():
    found, _ = pieces("N: 360 1/32 in, left=butt, right=butt")
    *firsts, last = [piece.rounding for piece in found]
    for rounding in firsts:
        assert (rounding.row, rounding.exact, rounding.by) == ("splice", 144, 0)
    # 360 1/32 and two laps of 9/16, less two sticks: 73 5/32, between butts rounded down
    assert (last.row, last.exact, last.by) == ("butt", Fraction(2341, 32), -Fraction(1, 32))


@pytest.mark.parametrize(("stick", "count"), [("47 in", 26), ("46 in", 27)])
def test_pieces_have_letters_as_long_as_there_are_any(stick, count):
    text = HEAD.replace("12 ft", stick).replace("base\n", "base, open walk\n")
    found = trimlang.compile(text + "N: 100 ft, left=butt, right=butt").pieces
    names = [piece.id.removeprefix("R-N-base-") for piece in found]
    letters = list("abcdefghijklmnopqrstuvwxyz")
    assert names == (letters if count == 26 else [str(number) for number in range(1, 28)])


SHOE_SOLD = f"{SHOE}\n{SHOE_STOCK}\n"


def test_walls_that_are_not_joined_have_no_mates():
    room = 'room "R", trim base, shoe, open walk'
    _, result = pieces(
        "N: 40 in, left=butt, right=in-corner\nE: 40 in, left=in-corner, right=butt",
        SHOE_SOLD + room,
    )
    assert [piece.mates for piece in result.pieces] == [()] * 4


def test_a_trim_that_ends_at_a_surveyed_splice_has_no_mate_there():
    room = 'room "R", trim base, shoe, open walk'
    _, result = pieces(
        "N: 40 in, left=butt, right=splice, shoe butt\nN2: 40 in, left=splice, right=butt, no shoe",
        SHOE_SOLD + room,
    )
    mates = {piece.id: piece.mates for piece in result.pieces}
    assert mates == {
        "R-N-base": ("R-N2-base",), "R-N-shoe": (), "R-N2-base": ("R-N-base",)
    }  # fmt: skip


def test_without_stock_a_wall_is_one_piece():
    text = HEAD.replace(f"{TWELVE_FEET}\n", "").replace("base\n", "base, open walk\n")
    job = check_job(text + "N: 30 ft, left=butt, right=butt").job
    assert [piece.length for piece in joinery(job)[0]] == [360]


CROWN_SOLD = f"{CROWN}\nstock crown: 16 ft at 28.80\n"


def over_openings(first="", last="", crown=CROWN_SOLD):
    return check_job(
        crown + 'room "R", trim crown, open walk\n'
        f"N: 50 in, left=butt, right=butt{first}\nopening 30 in, \"door\"\nopening 10 in\n"
        f"N2: 50 in, left=butt, right=butt{last}\n"
    )  # fmt: skip


def test_crown_over_openings_names_them_and_takes_both_walls_wishes():
    (whole,) = over_openings(', note "a pipe"').pieces
    assert whole.length == 140
    assert whole.all_notes == "a pipe; goes on over the opening to N2"
    for wish in ((", splice", ""), ("", ", splice"), (", splice", ", splice")):
        assert len(over_openings(*wish).pieces) == 2
    assert len(over_openings().pieces) == 1


def test_crown_over_openings_is_spliced_only_where_both_walls_allow_it():
    wide = CROWN_SOLD.replace("16 ft", "10 ft")
    for wish, told in ((("", ""), False), ((", no splice", ""), True), (("", ", no splice"), True)):
        result = over_openings(*wish, crown=wide)
        assert ("T401" in {one.code for one in result.diagnostics}) is told


def test_a_wall_that_may_not_be_spliced_is_told_in_its_own_unit():
    text = "unit mm\n" + HEAD.replace("base\n", "base, open walk\n")
    result = trimlang.compile(text + "N: 5200 mm, left=butt, right=butt, no splice")
    (said,) = [one.message for one in result.diagnostics if one.code == "T401"]
    # 12 ft are 3657.6 mm, so 3657 on the tape
    assert said == "run N needs 5.2 m of base, and the longest stick gives 3.657 m"


def test_a_splice_needs_the_trims_thickness():
    text = HEAD.replace("9/16 in thick, ", "").replace("base\n", "base, open walk\n")
    result = trimlang.compile(text + "N: 14 ft, left=butt, right=butt")
    (said,) = [one for one in result.diagnostics if one.code == "T211"]
    assert said.message == (
        "the splice of run N needs the thickness of trim “base”, and the file gives none"
    )
    assert said.span.line == text.count("\n") + 1


def free(run, settings=""):
    """Whether the planner may put the joints of a run elsewhere."""
    text = settings + "\n" + HEAD.replace("base\n", "base, open walk\n") + run
    (splice,) = joinery(check_job(text).job)[1]
    return splice.free


@pytest.mark.parametrize(
    ("run", "may_move"),
    [
        ("N: 16 ft, left=butt, right=butt", True),
        # on studs, it may not
        ("N: 16 ft, left=butt, right=butt, first stud 7 1/2 in", False),
        # a wall that one stick would reach, but for a step, is parted in its middle
        ("N: 10 ft, left=butt, right=butt, splice", False),
        ("N: 143 15/16 in, left=butt, right=butt, splice", False),
        ("N: 144 in, left=butt, right=butt, splice", True),
        ("N: 16 ft, left=butt, right=butt, splice", True),
    ],
)
def test_joints_may_move_where_nothing_says_their_place(run, may_move):
    assert free(run) is may_move


@pytest.mark.parametrize(("least", "may_move"), [("1 1/8 in", False), ("1 3/16 in", True)])
def test_joints_stay_where_a_mitre_and_a_lap_are_as_long_as_the_least_piece(least, may_move):
    # 9/16 of mitre at a square corner and 9/16 of lap
    run = "N: 16 ft, left=in-corner(90 deg), right=butt"
    assert free(run, f"splices: least {least}") is may_move


@every("sixteenths", range(2900, 5200, 61))
def test_no_stick_of_crown_is_too_short_for_the_ceiling_edge(sixteenths):
    text = (
        CROWN_SOLD.replace("16 ft", "12 ft") + 'room "R", trim crown, open walk\n'
        f"N: {sixteenths}/16 in, left=out-corner, right=out-corner"
    )
    result = check_job(text)
    assert len(result.pieces) > 1
    assert max(piece.length for piece in result.pieces) <= 144


@pytest.mark.parametrize(
    ("stock", "run", "why", "remedy"),
    [
        # 47 7/16 and a lap of 9/16 are two pieces of 24
        ("12 ft", "N: 47 3/8 in, left=butt, right=butt, splice",
         "the wall is too short for two pieces of 24 in and their lap",
         "Take splice off the run, as one stick of base reaches, or allow shorter pieces"),
        ("47 3/8 in", "N: 47 3/8 in, left=butt, right=butt, splice",
         "the wall is too short for two pieces of 24 in and their lap",
         "Take splice off the run, as one stick of base reaches, or allow shorter pieces"),
        ("40 in", "N: 47 3/8 in, left=butt, right=butt",
         "the wall is longer than a stick of base, and too short for two pieces of 24 in and"
         " their lap", "List longer stock, or allow shorter pieces"),
        ("24 in", "N: 47 7/16 in, left=butt, right=butt",
         "the sticks of base are too short for pieces of 24 in and more",
         "List longer stock, or allow shorter pieces"),
        ("24 in", "N: 60 in, left=butt, right=butt",
         "the sticks of base are too short for pieces of 24 in and more",
         "List longer stock, or allow shorter pieces"),
    ],
)  # fmt: skip
def test_what_is_too_short_to_be_spliced_is_told(stock, run, why, remedy):
    text = HEAD.replace("12 ft", stock).replace("base\n", "base, open walk\n")
    (said,) = [one for one in trimlang.compile(text + run).diagnostics if one.code == "T403"]
    assert said.message == f"run N cannot be spliced: {why}"
    begun, _, setting = said.remedy.removesuffix(").").partition(" (")
    assert begun == remedy
    after = trimlang.compile(f"{setting}\n{text}{run}").diagnostics
    assert "T403" not in {one.code for one in after}


def test_a_metric_job_tells_the_least_piece_in_millimetres():
    text = "unit mm\n" + HEAD.replace("base\n", "base, open walk\n")
    found = trimlang.compile(text + "N: 1100 mm, left=butt, right=butt, splice").diagnostics
    (said,) = [one.message for one in found if one.code == "T403"]
    assert "two pieces of 609.6 mm" in said


def test_a_runs_note_stays_with_the_run():
    found, _ = pieces('N: 40 in, left=return, right=butt, note "mind the pipe"')
    run, closing = found
    assert run.all_notes == "mind the pipe"
    assert closing.all_notes == "closes the left end of R-N-base; glue, do not nail"


def test_crown_over_two_openings_that_have_names_tells_both():
    text = (
        CROWN_SOLD + 'room "R", trim crown, open walk\nN: 50 in, left=butt, right=butt\n'
        'opening 30 in, "door"\nopening 10 in, "hatch"\nN2: 50 in, left=butt, right=butt\n'
    )
    (whole,) = check_job(text).pieces
    assert whole.all_notes == "goes on over door, hatch to N2"


def test_a_splice_that_was_asked_for_lies_on_the_stud_nearest_the_middle():
    # studs at 7 1/2 and every 16: 55 1/2 is nearest 60, and the left piece ends 9/32 past it
    found, _ = pieces("N: 10 ft, left=butt, right=butt, splice, first stud 7 1/2 in")
    assert [piece.length for piece in found] == [Fraction(223, 4), Fraction(1037, 16)]


def test_a_lap_of_more_than_half_a_stick_is_told_and_not_cut_into_a_thousand_pieces():
    thick = HEAD.replace("9/16 in thick", "80 in thick") + "N: 60 ft, left=butt, right=butt, splice"
    (said,) = [one for one in check_job(thick).diagnostics if one.code == "T403"]
    # a scarf at 45° is as long as the trim is thick: 6 ft 8 in of 12 ft
    assert said.message.endswith("its laps would be longer than half a stick of base")


def test_studs_are_counted_from_the_wall_and_not_from_the_trims_long_point():
    # an outside corner of 90° puts the long point 9/16 before the wall: the stud at 135 1/2 is
    # 136 1/16 along the trim, and the left piece ends 9/32 past it, on the tape 136 5/16
    found, _ = pieces("N: 16 ft, left=out-corner(90 deg), right=butt, first stud 7 1/2 in")
    assert found[0].length == Fraction(2181, 16)
    # an inside corner's long point is at the wall
    found, _ = pieces("N: 16 ft, left=in-corner(90 deg), right=butt, first stud 7 1/2 in")
    assert found[0].length == Fraction(543, 4)


def test_studs_along_a_stair_begin_behind_a_level_end():
    # 7 1/2 over 10: along the stair studs are 16 ÷ 4/5 = 20 apart, and the level end's long
    # point is 5 1/4 × 4/3 = 7 before the tape's; 10 + 7 + 6 × 20 = 137, and 9/32 past it
    room = 'saw: reaches 60 deg\nroom "R", trim base, open walk'
    found, _ = pieces(
        "N: 200 in, left=level, right=butt, rising right 7 1/2 in over 10 in, first stud 10 in",
        room,
    )
    assert found[0].length == Fraction(549, 4)


def test_studs_behind_crown_are_counted_along_its_wall_edge():
    # the wall edge begins at the corner itself: 135 1/2 and half a lap of 11/16, on the tape
    text = (
        CROWN_SOLD.replace("16 ft", "12 ft") + 'room "R", trim crown, open walk\n'
        "N: 16 ft, left=out-corner(90 deg), right=butt, first stud 7 1/2 in"
    )
    assert check_job(text).pieces[0].to_mark == Fraction(2173, 16)
