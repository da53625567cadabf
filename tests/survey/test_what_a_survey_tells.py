"""What a room's closing says: the survey's own tolerance, diagonals and implied corners."""

import json
from fractions import Fraction
from math import hypot

import pytest

import trimlang
from tests.jobs import BASE, CASE, SIXTEEN_FEET
from trimlang.sheets.export.plan_json import plan_json
from trimlang.survey.verdict import Verdict

HEAD = f"""
{BASE}
{SIXTEEN_FEET}
"""
SIDES = "left=in-corner, right=in-corner"


def room(*lines, north="144 in", east="120 in", south="144 in", west="120 in", head=HEAD):
    walls = [
        f"{name}: {size}, {SIDES}"
        for name, size in zip("NESW", (north, east, south, west), strict=True)
    ]
    return trimlang.compile("\n".join([head, 'room "R", trim base', *walls, *lines]))


def codes(result):
    return {one.code for one in result.diagnostics}


def closing(result):
    (one,) = result.closings
    return one


def test_a_room_that_closes_says_what_its_survey_can_tell():
    one = closing(room(south="144 1/2 in"))
    assert one.verdict is Verdict.CLOSES
    assert one.text.startswith(
        "closes within 1/2 in (1/2 in to the left of its start, facing run N)"
    )
    assert "is what this survey can tell" in one.text


def test_truer_corners_tell_more():
    """Each corner nobody measured counts with its lever arm: 144 in at 1/8° is 5/16 in."""
    loose, true = room(), room("corners: doubt 1/8 deg")
    assert closing(true).tolerance < closing(loose).tolerance / 2
    # an inch is beyond what corners true to an eighth explain, and within what half a degree does
    assert "T310" not in codes(room(south="145 in"))
    assert "T310" in codes(room("corners: doubt 1/8 deg", south="145 in"))


def test_what_the_file_allows_goes_before_what_the_survey_tells():
    result = room("closes within 1 1/2 in", "corners: doubt 1/8 deg", south="145 in")
    assert "T310" not in codes(result)
    assert closing(result).text.endswith("the file allows 1 1/2 in")


def test_the_closing_changes_no_verdict_on_the_job():
    assert room(south="13 ft").ok


@pytest.mark.parametrize(("south", "named"), [("13 ft", "run S read a foot too long")])
def test_a_diagonal_settles_which_of_two_opposite_walls_is_wrong(south, named):
    # by Pythagoras: 144 and 120 have a diagonal of 187.446 in, so it is the south wall
    across = Fraction(round(hypot(144, 120) * 16), 16)
    both = [f"diagonal {name} {float(across)} in" for name in ("N-E", "E-S")]
    result = room(both[0], south=south)
    assert "one" not in {slip.words for slip in closing(result).slips}
    assert closing(result).slips[0].words.startswith(named)
    told = next(one for one in result.diagnostics if one.code in ("T310", "T316"))
    assert named in told.remedy


def test_a_diagonal_that_fits_no_wall_is_named():
    result = room("diagonal N-E 16 ft 7 7/16 in", "diagonal E-S 15 ft 7 7/16 in")
    assert codes(result) == {"T316"}
    one = closing(result)
    assert one.verdict is Verdict.CLASHES
    assert "diagonal N-E" in one.slips[0].words
    worst = max(one.residuals, key=lambda residual: residual.sure)
    assert worst.of in ("diagonal N-E", "diagonal E-S")


@pytest.mark.parametrize(
    ("read", "words"), [("183 7/16", "4 in too short"), ("191 7/16", "4 in too long")]
)
def test_what_a_diagonal_was_meant_to_be_is_offered(read, words):
    one = closing(room("diagonal N-E 187 7/16 in", f"diagonal E-S {read} in"))
    (slip,) = (slip for slip in one.slips if slip.words.startswith("diagonal E-S"))
    assert words in slip.words
    ((_, meant),) = slip.meant
    assert meant == "15 ft 7 7/16 in"


def test_corrections_make_all_measurements_agree():
    """The adjusted rectangle closes: what N and S differ by is taken up by walls and corners."""
    result = room("corners: doubt 1/8 deg", "diagonal N-E 187 7/16 in", south="144 1/4 in")
    off = {one.of: float(one.off) for one in closing(result).residuals}
    assert off["run N"] > 0 > off["run S"]
    assert abs(off["run N"]) < 0.25
    assert {"run E", "diagonal N-E", "the corner of run N and run E"} <= off.keys()


@pytest.mark.parametrize(
    ("line", "why"),
    [
        ("diagonal N-N 12 ft", "along one wall"),
        ("diagonal N-Q 12 ft", "no two walls"),
        (
            "diagonal E-N 12 ft",
            "listed turning left?",
        ),
    ],
)
def test_a_diagonal_that_joins_no_two_corners_is_refused(line, why):
    (one,) = (one for one in room(line).diagnostics if one.code == "T314")
    assert why in one.message


def test_a_wall_may_still_be_called_diagonal():
    text = HEAD + 'room "R", trim base, open walk\nDiagonal: 40 in, left=butt, right=butt\n'
    (run,) = trimlang.compile(text).job.rooms[0].runs
    assert run.label == "Diagonal"


THREE = [
    f"N: 12 ft, {SIDES}(93 deg)",
    f"E: 10 ft, {SIDES}(93 deg)",
    f"S: 12 ft, {SIDES}(93 deg)",
]


def test_the_angle_that_three_corners_leave_is_offered():
    text = "\n".join([HEAD, 'room "R", trim base', *THREE, f"W: 10 ft, {SIDES}"])
    (one,) = (one for one in trimlang.compile(text).diagnostics if one.code == "T313")
    assert "leave 81° for the corner of run W and run N" in one.message
    assert "in-corner(implied)" in one.remedy


def test_one_word_accepts_it():
    text = "\n".join([HEAD, 'room "R", trim base', *THREE, f"W: 10 ft, {SIDES}(implied)"])
    result = trimlang.compile(text)
    assert "T313" not in codes(result)
    last, first = result.job.rooms[0].walk[-1], result.job.rooms[0].walk[0]
    # 4 × 90 - 3 × 93
    assert last.right.corner == first.left.corner == 81
    piece = next(piece for piece in result.pieces if piece.run == "N")
    assert piece.left.setting == Fraction(99, 2)


def test_nothing_is_implied_where_the_walls_do_not_go_round():
    text = HEAD + 'room "R", trim base, open walk\nN: 40 in, left=butt, right=in-corner(implied)\n'
    text += "E: 40 in, left=in-corner, right=butt\n"
    assert "T317" in codes(trimlang.compile(text))


def test_a_slip_at_a_cased_opening_names_the_width_that_was_written():
    head = HEAD + f"{CASE}\nstock case: 7 ft at 9.10\n"
    walls = [
        f"N: 150 in, {SIDES}",
        f"E: 120 in, {SIDES}",
        "S: 50 in, left=in-corner, right=butt",
        'opening 44 in, "door", casing case, height 80 in',
        "S2: 39 1/8 in, left=butt, right=in-corner",
        f"W: 120 in, {SIDES}",
    ]
    said = closing(trimlang.compile("\n".join([head, 'room "R", trim base', *walls])))
    # 56 in were written 44: a foot too short, whatever wall the casing takes up beside it
    told = [slip.words for slip in said.slips]
    assert "“door” read a foot too short: 4 ft 8 in instead" in told


BAY = [
    "W0: 36 in, left=in-corner, right=out-corner(135 deg)",
    "W1: 36 in, left=out-corner, right=in-corner(135 deg)",
    "W2: 36 in, left=in-corner, right=in-corner(135 deg)",
    "W3: 36 in, left=in-corner, right=out-corner(135 deg)",
    "W4: 36 in, left=out-corner, right=in-corner",
    "W5: 120 in, left=in-corner, right=in-corner",
    "W6: 158 7/8 in, left=in-corner, right=in-corner",
    "W7: 120 in, left=in-corner, right=in-corner",
]


def named(result):
    (slip,) = closing(result).slips
    return slip.words


def test_a_sound_bay_closes():
    whole = trimlang.compile("\n".join([HEAD, 'room "R", trim base', *BAY]))
    assert closing(whole).verdict is Verdict.CLOSES


@pytest.mark.parametrize(
    ("left_out", "between"), [(0, "run W7 and run W1"), (4, "run W3 and run W5")]
)
def test_a_wall_of_a_bay_skipped_with_its_angle_is_named(left_out, between):
    walls = [wall for at, wall in enumerate(BAY) if at != left_out]
    result = trimlang.compile("\n".join([HEAD, 'room "R", trim base', *walls]))
    # what the other corners leave of the whole turn is the angle that was skipped
    assert named(result) == f"a wall skipped between {between}, about 3 ft long"


def test_a_face_skipped_between_corners_that_were_all_measured_is_named():
    walls = [
        "A: 26 5/8 in, left=in-corner, right=in-corner(89.78 deg)",
        "B: 13 3/16 in, left=in-corner, right=out-corner(89.39 deg)",
        # the face, 55 3/16 in long, with an outside corner of 90.38° at its right
        "C: 13 5/16 in, left=out-corner, right=in-corner(89.74 deg)",
        "D: 50 1/8 in, left=in-corner, right=in-corner(90.01 deg)",
        "E: 123 1/4 in, left=in-corner, right=in-corner(90.12 deg)",
        "F: 131 7/16 in, left=in-corner, right=in-corner(90.2 deg)",
        "G: 122 1/2 in, left=in-corner, right=in-corner(90.29 deg)",
    ]
    result = trimlang.compile("\n".join([HEAD, 'room "R", trim base', *walls]))
    assert named(result).startswith("a wall skipped between run B and run C, about 4 ft 7 in")


def test_no_wall_is_made_up_with_a_corner_like_no_other():
    # a foot too long: a wall of a foot with corners of 180° would close it as well
    words = [slip.words for slip in closing(room(north="156 in")).slips]
    assert not [one for one in words if "skipped" in one]


def test_a_reading_is_no_worse_than_what_corners_are_said_to_be():
    """135° read to half a degree, in a house true to an eighth, is 135° to an eighth."""
    true = trimlang.compile(
        "\n".join([HEAD, 'room "R", trim base', "corners: doubt 1/8 deg", *BAY])
    )
    truer = trimlang.compile(
        "\n".join([HEAD, 'room "R", trim base', "corners: doubt 1/16 deg", *BAY])
    )
    assert closing(truer).tolerance < closing(true).tolerance


def test_every_residual_of_a_room_is_in_its_plan():
    """Four walls, four corners and two diagonals, each with what is added for all to agree."""
    across = ["diagonal N-E 187 7/16 in", "diagonal E-S 187 7/16 in"]
    plan = json.loads(plan_json(room(*across)))
    (one,) = plan["closings"]
    assert (one["room"], one["verdict"]) == ("R", "closes")
    assert [told["of"] for told in one["residuals"]] == [
        *(f"run {name}" for name in "NESW"),
        *(
            f"the corner of run {this} and run {that}"
            for this, that in zip("NESW", "ESWN", strict=True)
        ),
        "diagonal N-E",
        "diagonal E-S",
    ]
    # √(144² + 120²) = 187.446, a hundredth more than was read at both
    assert all(abs(told["correction"]) < 0.01 for told in one["residuals"])
