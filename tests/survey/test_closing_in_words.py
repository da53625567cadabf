"""What the closing says of a room, word by word, and what it weighs it by."""

import re
from fractions import Fraction

import pytest

import trimlang
from tests.jobs import BASE, SIXTEEN_FEET
from trimlang.lengths.tape import MM, Unit
from trimlang.survey.verdict import Closing, Unchecked, Verdict

SIDES = "left=in-corner, right=in-corner"


def checked(*walls, room="", unit="in"):
    head = f'unit {unit}\n{BASE}\n{SIXTEEN_FEET}\nroom "R", trim base{room}\n'
    return trimlang.check(head + "\n".join(walls))


def rectangle(*sizes):
    return [f"{name}: {size}, {SIDES}" for name, size in zip("NESW", sizes, strict=True)]


def closing(result):
    (one,) = result.closings
    return one


def told(result, code):
    (found,) = (one for one in result.diagnostics if one.code == code)
    return found.message, found.remedy


def test_a_metric_room_is_tells_what_is_short_in_millimetres():
    one = closing(checked(*rectangle("3600 mm", "3000 mm", "3612 mm", "3000 mm"), unit="mm"))
    assert one.text == (
        "closes within 12 mm (12 mm to the left of its start, facing run N);"
        " 56 mm is what this survey can tell;"
        " diagonals E-S and N-E would let it tell 16 mm"
    )


def test_a_room_that_does_not_close_tells_what_would_settle_it():
    result = checked(*rectangle("3600 mm", "3000 mm", "3900 mm", "3000 mm"), unit="mm")
    assert closing(result).text == (
        "ends 300 mm from its start (300 mm to the left of its start, facing run N);"
        " 47 mm is what this survey can tell; diagonal N-E would tell which"
    )
    assert [[text for _, text in slip.meant] for slip in closing(result).slips] == [
        ["3.9 m"], ["3.6 m"]]  # fmt: skip
    message, remedy = told(result, "T310")
    assert message == (
        "room “R” does not close: its walls end 300 mm from where they began"
        " (300 mm to the left of its start, facing run N)"
    )
    assert remedy == (
        "Several slips explain it equally well: run N is 300 mm too short; or run S is"
        " 300 mm too long. Diagonal N-E would tell which."
    )


def test_a_survey_can_tell_less_than_the_gap_that_it_tells():
    read = [line.replace("corner", "corner(90 deg)", 1) for line in rectangle(144, 120, 145, 120)]
    one = closing(checked(*read))
    assert one.text.startswith("ends 1 in from its start (")
    assert "; 15/16 in is what this survey can tell; " in one.text


def test_angles_that_are_all_alike_are_at_no_other_corner():
    read = [line.replace("corner", "corner(90 deg)", 1) for line in rectangle(300, 240, 302, 240)]
    remedy = told(checked(*read), "T310")[1]
    assert remedy.startswith("Several slips explain it equally well: run N read an inch too short")
    assert "angles" not in remedy


@pytest.mark.parametrize(("unit", "step"), [("in", Fraction(1, 16)), ("mm", MM)])
def test_what_is_not_checked_says_why_and_no_more(unit, step):
    one = closing(checked(f"N: 36 {unit}, {SIDES}", room=", open walk", unit=unit))
    why = Unchecked.OPEN_WALK
    assert one == Closing("R", Verdict.NOT_CHECKED, Unit(unit), step, why=why)
    assert one.text == "not checked: an open walk"


def test_corners_that_do_not_go_round_are_no_distance():
    result = checked(
        *rectangle("9 ft", "8 ft", "9 ft", "8 ft"), f"X: 7 ft, {SIDES}", f"Y: 6 ft, {SIDES}"
    )
    assert closing(result) == Closing("R", Verdict.TURNS_WRONG, Unit.INCH, Fraction(1, 16))
    assert closing(result).text == "the corners do not go round"
    assert told(result, "T311") == (
        "the corners of room “R” turn 540° in all, and once round is 360°",
        "None of the usual single slips explains it: measure the room again, or mark it"
        " “open walk” if it is not to be closed.",
    )


@pytest.mark.parametrize(
    ("within", "verdict", "said"),
    [
        (
            "1 in",
            Verdict.CLOSES,
            "closes within 1 in (1 in to the left of its start, facing run N)",
        ),
        ("15/16 in", Verdict.GAPES, "ends 1 in from its start (1 in to the left of its start,"),
    ],
)
def test_what_the_file_allows_is_allowed_to_the_last_sixteenth(within, verdict, said):
    walls = rectangle("144 in", "120 in", "145 in", "120 in")
    one = closing(checked(f"closes within {within}", *walls))
    assert one.verdict is verdict
    assert one.allowed_by_file
    assert one.text.startswith(said)
    assert f"the file allows {within}" in one.text


def test_a_gap_is_held_against_what_the_survey_tells_in_its_own_direction():
    """A long narrow room: along it errors of length count, across it the corners' lever."""
    wide = rectangle("480 in", "96 in", "480 in", "96 in")
    across, along = list(wide), list(wide)
    across[1], along[0] = f"E: 120 in, {SIDES}", f"N: 504 in, {SIDES}"
    one, other = (closing(checked(*walls)) for walls in (across, along))
    assert one.verdict is other.verdict is Verdict.GAPES
    assert one.tolerance > 3 * other.tolerance


def test_diagonals_that_contradict_walls_that_close_are_told():
    walls = rectangle("144 in", "120 in", "144 in", "120 in")
    result = checked(*walls, "diagonal N-E 190 in")
    one = closing(result)
    assert one.verdict is Verdict.CLASHES
    assert one.text.startswith("the diagonals contradict the walls; closes; ")
    # √(144² + 120²) = 187.446
    assert told(result, "T316") == (
        "walls and diagonals of room “R” contradict each other;"
        " least fits diagonal N-E by 2 9/16 in",
        "Several slips explain it equally well: diagonal N-E is 2 9/16 in too long; or the corners"
        " are not square: 91.6° between run N and run E, 88.4° between run E and run S, 91.6°"
        " between run S and run W, 88.4° between run W and run N. Measure these again.",
    )


def test_corners_that_contradict_diagonals_are_told_in_degrees():
    """Read as leaning by 3°, while both diagonals are those of square corners."""
    read = [
        f"{name}: {size} in, left=in-corner, right=in-corner({angle} deg)"
        for name, size, angle in zip("NESW", (144, 120, 144, 120), (93, 87, 93, 87), strict=True)
    ]
    across = [f"diagonal {name} 187 7/16 in" for name in ("N-E", "E-S")]
    message, _ = told(checked(*read, *across), "T316")
    assert re.search(r"; least fits the corner of run . and run . by 3\.8°$", message)


def test_feet_written_as_inches_are_the_slip_where_their_inches_were_left_off():
    _, remedy = told(checked(*rectangle("124 in", "96 in", "10 in", "96 in")), "T310")
    assert remedy == (
        "Several slips explain it equally well: run N written in feet for inches: 10 5/16 in"
        " instead; or run S written in inches for feet, without its inches: 10 ft 4 in instead."
        " Diagonal E-S would tell which."
    )


def test_the_corner_that_the_others_leave_is_written_to_a_hundredth_of_a_degree():
    one = closing(
        checked(
            "N: 10 ft, left=in-corner, right=in-corner(135.121 deg)",
            "NE: 28 1/4 in, left=in-corner, right=butt",
            "E: 8 ft, left=butt, right=in-corner",
            f"S: 11 ft 8 in, {SIDES}",
            f"W: 9 ft 8 in, {SIDES}",
        )
    )
    assert [text for _, text in one.slips[0].meant] == ["in-corner(134.88 deg)"] * 2


def test_a_room_that_leans_is_given_its_angles_in_place_of_a_contradiction():
    """144 × 120 leaning by 1°: the diagonals are √(144² + 120² ± 2 × 144 × 120 × sin 1°)."""
    walls = rectangle("144 in", "120 in", "144 in", "120 in")
    across = ["diagonal N-E 189 1/16 in", "diagonal E-S 185 13/16 in"]
    one = closing(result := checked(*walls, *across))
    assert one.verdict is Verdict.CROOKED
    message, remedy = told(result, "T324")
    angles = re.findall(r"([0-9.]+)° between run (.) and run (.)", message)
    assert [(first, other) for _, first, other in angles] == [*zip("NESW", "ESWN", strict=True)]
    assert [float(angle) for angle, *_ in angles] == pytest.approx([91, 89, 91, 89], abs=0.1)
    assert remedy.startswith("Write in-corner(implied) at one of them to have all cut so")
    read = [wall.replace("right=in-corner", f"right=in-corner({angle} deg)")
            for wall, (angle, *_) in zip(walls, angles, strict=True)]  # fmt: skip
    as_read = closing(checked(*read, *across))
    assert as_read.verdict is Verdict.CLOSES
    # one word has them all cut so
    one_word = checked(walls[0].replace("right=in-corner", "right=in-corner(implied)"),
                       *walls[1:], *across)  # fmt: skip
    assert closing(one_word).verdict is Verdict.CLOSES
    # worked out, the angles are no measurements, and the survey can tell less
    assert closing(one_word).tolerance > as_read.tolerance
    settings = [float(piece.right.setting) for piece in one_word.pieces]
    assert settings == pytest.approx([44.5, 45.5, 44.5, 45.5])
    # of one diagonal alone nobody can tell whether it or the corners are wrong
    message, remedy = told(checked(*walls, across[0]), "T316")
    assert "diagonal N-E is 1 5/8 in too long; or the corners are not square" in remedy


def test_of_several_slips_that_diagonals_show_each_is_told():
    # from the start of W0 to W3 there are 93 1/8 in; walked left round, 134 in would be near
    walls = [
        "W0: 144 in, left=in-corner, right=in-corner",
        "W1: 60 in, left=in-corner, right=in-corner",
        "W2: 120 in, left=in-corner, right=out-corner",
        "W3: 30 in, left=out-corner, right=in-corner",
        "W4: 24 in, left=in-corner, right=in-corner",
        "W5: 90 in, left=in-corner, right=in-corner",
    ]
    result = checked(*walls, "diagonal W0-W3 134 in")
    assert closing(result).verdict is Verdict.CLASHES
    assert told(result, "T316") == (
        "walls and diagonals of room “R” contradict each other;"
        " least fits diagonal W0-W3 by 3 ft 4 7/8 in",
        "Several slips explain it equally well: diagonal W0-W3 is 3 ft 4 7/8 in too long;"
        " or the walls were listed turning left: list them the other way round."
        " Measure these again.",
    )


def test_a_diagonal_more_is_named_where_those_there_cannot_say_which_wall_is_wrong():
    """An L with E 3 in too long: each diagonal that is there runs past C and E, or past neither."""
    walls = [
        f"A: 396 in, {SIDES}",
        f"B: 240 in, {SIDES}",
        "C: 48 in, left=in-corner, right=out-corner",
        "D: 24 in, left=out-corner, right=in-corner",
        f"E: 351 in, {SIDES}",
        f"F: 264 in, {SIDES}",
    ]
    # by Pythagoras, with E 348 in: √(396² + 24²), √(396² + 264²) and √(396² + 240²)
    across = ["C-E 396 3/4 in", "B-E 475 15/16 in", "A-B 463 1/16 in"]
    _, remedy = told(checked(*walls, *(f"diagonal {one}" for one in across)), "T316")
    slips, which = remedy.removeprefix("Several slips explain it equally well: ").split(". ")
    assert sorted(slips.split("; or ")) == ["run C is 3 in too long", "run E is 3 in too long"]
    assert which == "Diagonal D-E would tell which."


# A room whose corners are within 1/2 degree of square, its walls read to 1/8 in. (invented)
BARELY_OPEN = [
    "W0: 51 15/16 in, left=in-corner, right=out-corner(89.90 deg)",
    "W1: 30 1/16 in, left=out-corner, right=in-corner(90.01 deg)",
    "W2: 55 11/16 in, left=in-corner, right=in-corner(89.37 deg)",
    "W3: 29 15/16 in, left=in-corner, right=out-corner(90.19 deg)",
    "W4: 65 11/16 in, left=out-corner, right=in-corner(89.58 deg)",
    "W5: 136 3/4 in, left=in-corner, right=in-corner(90.32 deg)",
    "W6: 171 15/16 in, left=in-corner, right=in-corner(90.42 deg)",
    "W7: 135 5/16 in, left=in-corner, right=in-corner(90.50 deg)",
]


def test_diagonals_speak_for_walls_that_alone_are_barely_open():
    across = [
        "diagonal W0-W3 107 7/16 in",
        "diagonal W1-W4 121 1/16 in",
        "diagonal W2-W5 205 3/8 in",
        "diagonal W3-W6 197 13/16 in",
    ]
    alone = closing(checked(*BARELY_OPEN))
    assert alone.verdict is Verdict.GAPES
    assert alone.tolerance < alone.gap, "it can tell what it tells"
    one = closing(checked(*BARELY_OPEN, *across))
    assert one.verdict is Verdict.CLOSES
    assert one.tolerance >= one.gap


def test_walls_taken_over_scraps_close_by_what_they_are():
    """Two long points of 9/16 in each, as inches of wall they would not close."""
    out = "out-corner(90 deg, taken point)"
    result = checked(
        "corners: doubt 1/16 deg",
        f"N: 41 9/16 in, left=in-corner, right={out}",
        f"A: 20 9/16 in, left={out}, right=in-corner",
        f"B: 60 in, {SIDES}",
        f"E: 80 in, {SIDES}",
        f"S: 101 in, {SIDES}",
        f"W: 60 in, {SIDES}",
    )
    assert closing(result).gap == 0


ODD = [
    f"A: 200 in, {SIDES}",
    f"B: 150 in, {SIDES}",
    "C: 80 in, left=in-corner, right=out-corner",
    "D: 30 in, left=out-corner, right=in-corner",
    f"E: 120 in, {SIDES}",
    f"F: 180 in, {SIDES}",
]


def test_what_diagonals_more_would_tell_is_what_the_survey_then_tells():
    # from corner to corner of the L: √(200² + 150²), √(200² + 180²), √(120² + 180²), √(80² + 150²)
    across = {"A-B": "250", "B-E": "269 1/16", "A-D": "216 5/16", "B-C": "170"}
    asked = [*ODD, "diagonal A-B 250 in"]
    for walls, could, more in (
        (asked, "2 7/16", "diagonals B-E, A-D and B-C"),
        (ODD, "3 1/8", "diagonals B-E, A-D, A-B and B-C"),
    ):
        assert closing(checked(*walls)).text == (
            f"closes; {could} in is what this survey can tell; {more} would let it tell 11/16 in"
        )
        lines = [f"diagonal {one} {long} in" for one, long in across.items() if one in more]
        one = closing(checked(*walls, *lines))
        assert one.text.startswith("closes; 11/16 in is what this survey can tell")


# Doors stand in all its corners, so that no wall has an end that a diagonal could be named by.
DOORS_IN_CORNERS = [
    line
    for name in "NESW"
    for line in (
        "opening 32 in, left=in-corner",
        f"{name}: 80 in, left=butt, right=butt",
        "opening 32 in, right=in-corner",
    )
]


def test_what_all_corners_would_tell_is_what_the_survey_then_tells():
    asked = closing(checked(*DOORS_IN_CORNERS))
    assert asked.text == (
        "closes; 2 5/16 in is what this survey can tell;"
        " measuring all its corners would let it tell 1 1/4 in"
    )
    read = [line.replace("corner", "corner(90 deg)") for line in DOORS_IN_CORNERS]
    assert closing(checked(*read)).text.startswith("closes; 1 1/4 in is what this survey can tell")


def test_what_two_diagonals_together_would_tell_is_what_the_survey_then_tells():
    """All corners were read, and no single measurement more does much; two diagonals do."""
    read = [line.replace("corner", "corner(90 deg)", 1) for line in rectangle(210, 180, 210, 180)]
    asked = closing(checked(*read))
    assert asked.text == (
        "closes; 1 11/16 in is what this survey can tell;"
        " diagonals N-E and E-S would let it tell 5/8 in"
    )
    # √(210² + 180²) = 276.59
    across = ["diagonal N-E 276 9/16 in", "diagonal E-S 276 9/16 in"]
    one = closing(checked(*read, *across))
    assert "; 5/8 in is what this survey can tell" in one.text


def test_one_diagonal_that_is_enough_is_named_alone():
    read = [line.replace("corner", "corner(90 deg)", 1) for line in rectangle(90, 180, 90, 180)]
    assert closing(checked("corners: doubt 1/8 deg", *read)).text == (
        "closes; 13/16 in is what this survey can tell; diagonal N-E would let it tell 11/16 in"
    )


def test_what_one_corner_more_would_tell_is_what_the_survey_then_tells():
    """All corners but two were read: one of these settles the other as well."""
    read = [line.replace("corner", "corner(90 deg)") for line in DOORS_IN_CORNERS]
    walls = [DOORS_IN_CORNERS[0], *read[1:9], *DOORS_IN_CORNERS[9:]]
    walls[8] = DOORS_IN_CORNERS[8]
    asked = closing(checked("corners: doubt 5 deg", *walls))
    said, then = asked.settles.split(" would let it tell ")
    assert said == "the corner of the opening in line 17 and the opening in line 6"
    walls[8], walls[9] = read[8], read[9]
    one = closing(checked("corners: doubt 5 deg", *walls))
    assert one.text.split("; ")[1] == f"{then} is what this survey can tell"


def test_a_diagonal_along_one_wall_is_none_whichever_way_it_is_named():
    """N stands in two parts, with a door between; from E's beginning round to W's end lies N."""
    walls = ["N1: 60 in, left=in-corner, right=butt", 'opening 24 in, "hall"',
             "N2: 60 in, left=butt, right=in-corner", *rectangle(0, 120, 144, 120)[1:]]  # fmt: skip
    for name, code in (("N1-N2", "T314"), ("E-W", "T314"), ("N1-E", None), ("W-N2", None)):
        # √(144² + 120²) = 187.446
        result = checked(*walls, f"diagonal {name} 187 7/16 in", unit="in")
        assert [one.code for one in result.diagnostics] == ([code] if code else []), name
    message, _ = told(checked(*walls, "diagonal N1-N2 144 in"), "T314")
    assert "runs along one wall" in message


def test_a_miss_of_less_than_half_a_mark_one_way_is_not_told():
    one = closing(checked(*rectangle("144 in", "120 in", "145 in", "120.025 in")))
    assert one.where == "1 in to the left of its start, facing run N"


@pytest.mark.parametrize("off", [Fraction(3, 4), Fraction(-3, 4)])
def test_a_diagonal_that_is_off_is_meant_to_be_what_the_walls_leave(off):
    # √(144² + 120²) = 187.446
    read = 187 + Fraction(7, 16) - off
    result = checked(
        "corners: doubt 1/16 deg",
        *rectangle("144 in", "120 in", "144 in", "120 in"),
        f"diagonal N-E {float(read)} in",
    )
    (slip,) = (one for one in closing(result).slips if one.words.startswith("diagonal"))
    assert [text for _, text in slip.meant] == ["15 ft 7 7/16 in"]


def test_a_wall_may_be_told_to_have_been_an_inch():
    """A step of 200 in beside a wall of 240 in, where both together are 241 in."""
    walls = [f"N: 240 in, {SIDES}", "E1: 60 in, left=in-corner, right=out-corner",
             "E2: 200 in, left=out-corner, right=in-corner", f"E3: 48 in, {SIDES}",
             f"S: 241 in, {SIDES}", f"W: 108 in, {SIDES}"]  # fmt: skip
    assert "run E2 is 16 ft 7 in too long" in told(checked(*walls), "T310")[1]


def test_two_sides_that_contradict_each_other_are_settled_in_one_finding():
    """The face of a breast written with its ends the wrong way round."""
    walls = [
        "A: 40 in, left=in-corner, right=out-corner",
        "B: 20 in, left=in-corner, right=out-corner",
        f"C: 60 in, {SIDES}",
        f"D: 80 in, {SIDES}",
        f"E: 100 in, {SIDES}",
        f"F: 60 in, {SIDES}",
    ]
    result = checked(*walls)
    one = closing(result)
    assert (one.room, one.verdict, one.unit, one.step) == (
        "R", Verdict.TURNS_WRONG, Unit.INCH, Fraction(1, 16)
    )  # fmt: skip
    assert [slip.words for slip in one.slips] == ["left and right of run B are swapped"]
    message, _ = told(result, "T312")
    assert "run A ends with out-corner, but run B begins with in-corner; run B ends with" in message
    # that one finding stands for those at the two joints
    assert [found.code for found in result.diagnostics] == ["T312"]
