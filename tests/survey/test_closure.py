"""A room's walk comes back to its start, or the likeliest slip is named."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LineString, Polygon

import trimlang
from tests.every import every
from tests.jobs import BASE, SIXTEEN_FEET
from trimlang.survey.diagonals import in_view
from trimlang.survey.outline import outline

HEAD = f"""
{BASE}
{SIXTEEN_FEET}
room "R", trim base
"""
L_SHAPED = [
    "N: 12 ft, left=in-corner, right=in-corner",
    "E1: 5 ft, left=in-corner, right=out-corner",
    "E2: 3 ft, left=out-corner, right=in-corner",
    "E3: 4 ft, left=in-corner, right=in-corner",
    "S: 15 ft, left=in-corner, right=in-corner",
    "W: 9 ft, left=in-corner, right=in-corner",
]
BAY = [  # a bay of 135°: three sides of 40 in stand out of a wall of 14 ft
    "N1: 36 in, left=in-corner, right=out-corner(135 deg)",
    "N2: 40 in, left=out-corner(135 deg), right=in-corner(135 deg)",
    "N3: 40 in, left=in-corner(135 deg), right=in-corner(135 deg)",
    "N4: 40 in, left=in-corner(135 deg), right=out-corner(135 deg)",
    "N5: 35 7/16 in, left=out-corner(135 deg), right=in-corner",
    "E: 10 ft, left=in-corner, right=in-corner",
    "S1: 132 in, left=in-corner, right=butt",
    "opening 36 in",
    "W: 10 ft, left=in-corner, right=in-corner",
]


def compiled(lines, head=HEAD):
    return trimlang.compile(head + "\n".join(lines))


def findings(lines, head=HEAD):
    return {one.code: one for one in compiled(lines, head).diagnostics}


def points(lines):
    drawn = outline(compiled(lines).job.rooms[0])
    return drawn, [(float(leg.start.x), float(leg.start.y)) for leg in drawn.legs]


def test_the_l_shaped_room_by_hand():
    # east 144, south 60, east 36, south 48, west 180, north 108: back at 0, 0
    drawn, places = points(L_SHAPED)
    assert places == [(0, 0), (144, 0), (144, -60), (180, -60), (180, -108), (0, -108)]
    assert drawn.misclosure.x == drawn.misclosure.y == 0
    assert drawn.turned == 360
    assert not findings(L_SHAPED)


def test_the_walk_is_a_closed_ring_for_a_geometry_library():
    drawn, places = points(L_SHAPED)
    ends = [(float(leg.end.x), float(leg.end.y)) for leg in drawn.legs]
    ring = LineString([places[0], *ends])
    assert ring.is_closed
    assert ring.is_simple
    polygon = Polygon(places)
    assert polygon.is_valid
    # by hand: 144 × 60 + 180 × 48 = 17280 square inches; perimeter 576 in
    assert polygon.area == 17280
    assert polygon.length == 576
    assert not polygon.exterior.is_ccw


def test_a_bay_closes():
    # N must be 36 + 2 × 40 cos 45° + 40 + 35.4375 = 168.006 in
    lines = [*BAY[:-1]]
    lines[-1] = "opening 36 in, right=in-corner"
    lines.append("W: 10 ft, left=butt, right=in-corner")
    found = findings(lines)
    assert not found, [one.message for one in found.values()]


@given(st.integers(60, 200), st.integers(60, 200), st.integers(12, 48), st.integers(12, 48))
def test_any_l_shaped_room_closes_and_its_area_is_what_shapely_says(wide, deep, out, down):
    lines = [
        f"N: {wide} in, left=in-corner, right=in-corner",
        f"E1: {deep} in, left=in-corner, right=out-corner",
        f"E2: {out} in, left=out-corner, right=in-corner",
        f"E3: {down} in, left=in-corner, right=in-corner",
        f"S: {wide + out} in, left=in-corner, right=in-corner",
        f"W: {deep + down} in, left=in-corner, right=in-corner",
    ]
    drawn, places = points(lines)
    assert drawn.gap == 0
    assert Polygon(places).area == wide * (deep + down) + out * down


def changed(lines, old, new):
    text = "\n".join(lines)
    assert old in text
    return text.replace(old, new, 1).splitlines()


def test_a_foot_misread_is_named_with_all_walls_that_it_may_be_on():
    found = findings(changed(L_SHAPED, "S: 15 ft", "S: 14 ft"))["T310"]
    assert "1 ft from where they began" in found.message
    assert "to the right of its start, facing run N" in found.message
    assert "equally well" in found.remedy
    assert "run S read a foot too short: 15 ft" in found.remedy
    assert "run N read a foot too long: 11 ft" in found.remedy


def test_a_foot_on_the_only_slanting_wall_is_named_alone():
    lines = [
        "N: 10 ft, left=in-corner, right=in-corner(135 deg)",
        "NE: 28 1/4 in, left=in-corner(135 deg), right=in-corner(135 deg)",
        "E: 8 ft, left=in-corner(135 deg), right=in-corner",
        "S: 11 ft 8 in, left=in-corner, right=in-corner",
        "W: 9 ft 8 in, left=in-corner, right=in-corner",
    ]
    assert not findings(lines)
    found = findings(changed(lines, "28 1/4 in", "40 1/4 in"))["T310"]
    assert found.remedy.startswith("Most likely: run NE read a foot too long: 2 ft 4 1/4 in")


def test_an_inch_is_found_where_the_file_asks_for_it():
    lines = changed(L_SHAPED, "E2: 3 ft", "E2: 37 in")
    assert not findings(lines)
    assert "an inch too long" in findings(["closes within 1/2 in", *lines])["T310"].remedy


def test_figures_that_changed_places():
    # 97 for 79: eighteen inches too much, which no foot or inch explains
    lines = ["closes within 1/2 in", *changed(L_SHAPED, "E1: 5 ft", "E1: 97 in")]
    lines = changed(lines, "W: 9 ft", "W: 127 in")
    assert "E1 with two figures swapped: 6 ft 7 in" in findings(lines)["T310"].remedy


def test_a_fraction_counted_from_the_wrong_mark():
    lines = ["closes within 1/4 in", *changed(L_SHAPED, "E1: 5 ft", "E1: 60 1/8 in")]
    lines = changed(lines, "W: 9 ft", "W: 108 7/8 in")
    remedy = findings(lines)["T310"].remedy
    # both explain 3/4 in, and so would an inch: the tape cannot tell which slip it was
    assert remedy.startswith("Several slips explain it equally well: run E1 read")
    assert "run W read" in remedy


def test_swapped_ends_of_one_run_are_found_by_walking():
    lines = changed(
        L_SHAPED,
        "E2: 3 ft, left=out-corner, right=in-corner",
        "E2: 3 ft, left=in-corner, right=out-corner",
    )
    found = findings(lines)
    # one slip, one finding: the two joints that it breaks are not reported as well
    assert "T301" not in found
    assert found["T312"].message.endswith("room “R” closes if left and right of run E2 are swapped")


def test_both_neighbours_swapped_too():
    lines = changed(L_SHAPED, "right=out-corner\nE2: 3 ft, left=out-corner, right=in-corner\n"
                    "E3: 4 ft, left=in-corner",
                    "right=in-corner\nE2: 3 ft, left=in-corner, right=out-corner\n"
                    "E3: 4 ft, left=out-corner")  # fmt: skip
    assert "left and right of run E2 are swapped" in findings(lines)["T310"].remedy


def test_an_inside_corner_written_for_an_outside_one():
    lines = changed(
        L_SHAPED, "right=out-corner\nE2: 3 ft, left=out-corner",
        "right=in-corner\nE2: 3 ft, left=in-corner",
    )  # fmt: skip
    found = findings(lines)["T311"]
    assert "turn 540°" in found.message
    assert "the corner of run E1 and run E2 written in-corner for out-corner" in found.remedy


def test_a_skipped_wall():
    lines = [line for line in L_SHAPED if not line.startswith("S:")]
    found = findings(lines)["T311"]
    assert found.remedy == "Most likely: a wall skipped between run E3 and run W, about 15 ft long."


def test_a_skipped_wall_of_a_step_between_corners_that_are_both_written_inside():
    lines = [line for line in L_SHAPED if not line.startswith("E2:")]
    lines = changed(lines, "E1: 5 ft, left=in-corner, right=out-corner",
                    "E1: 5 ft, left=in-corner, right=in-corner")  # fmt: skip
    found = findings(lines)["T311"]
    assert "a wall skipped between run E1 and run E3, about 3 ft long" in found.remedy


def test_a_forgotten_opening():
    lines = changed(
        L_SHAPED,
        "S: 15 ft, left=in-corner, right=in-corner",
        "S1: 5 ft, left=in-corner, right=butt\nS2: 7 ft 4 in, left=butt, right=in-corner",
    )
    remedy = findings(lines)["T310"].remedy
    assert "an opening forgotten after run S1, about 2 ft 8 in wide" in remedy


DOOR_IN_THE_CORNER = [
    "N: 12 ft, left=in-corner, right=in-corner",
    "E: 8 ft, left=in-corner, right=in-corner",
    "S: 9 ft, left=in-corner, right=butt",
    'door 36 in "to hall"',
    "W: 8 ft, left=butt, right=in-corner",
]


def test_a_corner_beside_a_door_that_nobody_wrote():
    found = findings(DOOR_IN_THE_CORNER)["T311"]
    assert "turn 270°" in found.message
    corner = "the corner of “to hall” and run W is not written: right=in-corner on “to hall”"
    assert found.remedy == f"Most likely: {corner}."
    mended = changed(DOOR_IN_THE_CORNER, '"to hall"', '"to hall", right=in-corner')
    assert not findings(mended)


def test_that_corner_and_a_length_misread_as_well():
    lines = changed(DOOR_IN_THE_CORNER, "W: 8 ft", "W: 7 ft")
    remedy = findings(lines)["T311"].remedy
    assert "right=in-corner on “to hall”; and besides" in remedy
    assert "run W read a foot too short: 8 ft instead" in remedy
    assert "run E read a foot too long: 7 ft instead" in remedy


def test_no_single_slip():
    lines = changed(changed(L_SHAPED, "W: 9 ft", "W: 70 3/8 in"), "N: 12 ft", "N: 88 3/16 in")
    assert findings(lines)["T310"].remedy.startswith("None of the usual single slips explains it")


def unsaid(lines):
    return changed(lines, "right=out-corner\nE2: 3 ft, left=out-corner",
                   "right=butt\nE2: 3 ft, left=butt")  # fmt: skip


def test_two_runs_that_stop_where_a_corner_is_are_asked_about():
    result = compiled(unsaid(L_SHAPED))
    (told,) = result.diagnostics
    assert (told.code, told.severity) == ("T320", "warning")
    assert "turn 450° in all" in told.message
    assert told.message.endswith("whether there is one between run E1 and run E2")
    best = "Most likely: the unwritten out-corner between run E1 and run E2. "
    assert told.remedy.startswith(best)
    (closing,) = result.closings
    # meant in the place of either butt
    assert [text for _, text in closing.slips[0].meant] == ["out-corner", "out-corner"]
    assert closing.text == (
        "not checked: the corners that are written do not go once round,"
        " and others may not be written"
    )


def test_a_room_written_all_butt_is_read_as_the_shape_that_closes():
    lines = [re.sub("(in|out)-corner", "butt", line) for line in L_SHAPED]
    remedy = findings(lines)["T320"].remedy
    assert "the unwritten out-corner between run E1 and run E2." in remedy
    assert "in-corner between run N and run E1, between run E2 and run E3," in remedy


def test_an_unwritten_corner_may_be_what_the_measured_ones_leave():
    walls = [
        "N: 10 ft, left=in-corner, right=in-corner(135 deg)",
        "NE: 28 1/4 in, left=in-corner, right=butt",
        "E: 8 ft, left=butt, right=in-corner",
        "S: 11 ft 8 in, left=in-corner, right=in-corner",
        "W: 9 ft 8 in, left=in-corner, right=in-corner",
    ]
    found = findings(walls)["T320"].remedy
    assert found.startswith("Most likely: the unwritten in-corner(135°) between run NE and run E.")


@every(
    "angle, slant, rest, named",
    [(105, "62 1/8", "83 15/16", True), (104, "61 13/16", "85 1/16", False)],
)
def test_the_least_turn_that_is_taken_for_a_corner(angle, slant, rest, named):
    """60 in and the slant go 120 in west, and the slant goes north by what W is short of E."""
    walls = [
        "N: 120 in, left=in-corner, right=in-corner",
        "E: 100 in, left=in-corner, right=in-corner",
        "A: 60 in, left=in-corner, right=butt",
        f"B: {slant} in, left=butt, right=in-corner({angle} deg)",
        f"W: {rest} in, left=in-corner, right=in-corner",
    ]
    told = "the unwritten in-corner(165°) between run A and run B" in findings(walls)["T310"].remedy
    assert told is named


def test_bare_wall_that_hides_a_corner_is_asked_about():
    lines = changed(DOOR_IN_THE_CORNER, "door 36 in", "bare 36 in")
    found = findings(lines)["T320"]
    assert "between run S and “to hall”, or between “to hall” and run W" in found.message
    assert "right=in-corner on “to hall”" in found.remedy
    # said once, and not again as a corner with an angle of its own
    assert "unwritten" not in found.remedy
    assert not findings(changed(lines, '"to hall"', '"to hall", right=in-corner'))


@pytest.mark.parametrize(
    ("lines", "why"),
    [
        (["N: 10 ft, left=butt, right=butt"], "fewer than three walls and openings"),
        (changed(L_SHAPED, "S: 15 ft,", "S: 15 fft,"), "could not be read"),
        (
            changed(
                changed(L_SHAPED, "N: 12 ft, left=in", "N: 12 ft, left=out"), "W: 9 ft", "W: 7 ft"
            ),
            "contradict each other",
        ),
    ],
)
def test_each_room_that_is_not_checked_says_why(lines, why):
    assert why in compiled(lines).closings[0].text


def test_open_walks_are_allowed():
    head = re.sub(r'room "R".*', 'room "R", trim base, open walk', HEAD)
    assert not findings(L_SHAPED[:4], head)
    assert outline(compiled(L_SHAPED[:4], head).job.rooms[0]).misclosure is None


def test_walls_taken_over_scraps_are_walked_without_them():
    lines = changed(L_SHAPED, "E1: 5 ft,", "E1: 60 9/16 in, taken point,")
    result = compiled(lines)
    drawn = outline(result.job.rooms[0], result.job.trims)
    # the scrap adds 9/16 × tan 45.5° = 0.5724, of which the tape shows 9/16
    assert abs(float(drawn.gap) - 0.0099) < 1e-3


def test_a_metric_room():
    head = (
        'unit mm\ntrim base: 14 thick, 134 tall\nstock base: 4200 at 17.40\nroom "R", trim base\n'
    )
    lines = [
        "N: 3640, left=in-corner, right=in-corner",
        "E: 2460, left=in-corner, right=in-corner",
        "S: 3640, left=in-corner, right=in-corner",
        "W: 2640, left=in-corner, right=in-corner",
    ]
    found = findings(lines, head)["T310"]
    assert "180 mm from where they began" in found.message
    assert "run E with two figures swapped: 2.64 m instead" in found.remedy
    assert "run W with two figures swapped: 2.46 m instead" in found.remedy


def test_a_wall_that_cannot_be_read_is_not_called_a_gap_as_well():
    found = findings(changed(L_SHAPED, "S: 15 ft,", "S: 15 fft,"))
    assert "T310" not in found
    assert "T311" not in found
    assert any(one.severity == "error" for one in found.values())


def test_a_stair_beside_a_wall_that_cannot_be_read():
    lines = [
        "A: 15 fft, left=butt, right=rake",
        "B: 90 in, left=rake, right=plumb, rising right 30 deg",
    ]
    head = HEAD.replace('"R", trim base', '"R", trim base, open walk')
    assert "T244" not in findings(lines, head)


def test_an_unwritten_outside_corner_may_have_an_angle_of_its_own():
    walls = [
        "N: 120 in, left=in-corner, right=in-corner",
        "E: 60 in, left=in-corner, right=in-corner(135 deg)",
        "A: 40 in, left=in-corner, right=butt",
        "B: 50 in, left=butt, right=in-corner",
        "S: 91 11/16 in, left=in-corner, right=in-corner",
        "W: 138 1/4 in, left=in-corner, right=in-corner",
    ]
    found = findings(walls)["T320"].remedy
    assert found.startswith("Most likely: the unwritten out-corner(135°) between run A and run B.")


def test_a_wall_skipped_before_the_corner_that_was_read_for_both():
    """The wall X goes 60 in south from P; at its end the room turns by 45° only."""
    walls = [
        "P: 120 in, left=in-corner, right=in-corner(135 deg)",
        "Q: 40 in, left=in-corner(135 deg), right=in-corner(135 deg)",
        "S: 91 11/16 in, left=in-corner(135 deg), right=in-corner",
        "W: 88 1/4 in, left=in-corner, right=in-corner",
    ]
    remedy = findings(walls)["T311"].remedy
    assert "a wall skipped between run P and run Q, about 5 ft long" in remedy


def test_of_many_unwritten_corners_all_inside_is_tried():
    walls = [
        "N: 100 in, left=butt, right=butt",
        *(
            line
            for step in (1, 2, 3)
            for line in (
                f"E{step}: 30 in, left={'butt' if step == 1 else 'out-corner'}, right=butt",
                f"A{step}: 20 in, left=butt, right=out-corner",
            )
        ),
        "E4: 30 in, left=out-corner, right=butt",
        "S: 40 in, left=butt, right=butt",
        "W: 120 in, left=butt, right=butt",
    ]
    found = findings(walls)["T320"].remedy
    assert found.startswith("Most likely: the unwritten in-corner between run N and run E1,")


def test_a_diagonal_is_in_view_where_its_line_lies_in_the_room():
    """A room with a breast and a niche, walked to the right; beside a geometry library."""
    corners = [0, 40, 40 - 20j, 90 - 20j, 90, 150, 150 - 60j, 170 - 60j, 170 - 90j, 150 - 90j,
               150 - 140j, -140j]  # fmt: skip
    floor = Polygon([(complex(one).real, complex(one).imag) for one in corners]).buffer(-0.01)
    seen = 0
    for start, one in enumerate(corners):
        for end in range(start + 2, len(corners) - (start == 0)):
            other = corners[end]
            tape = [(one + (other - one) * part) for part in (0.002, 0.998)]
            inside = floor.contains(LineString([(at.real, at.imag) for at in tape]))
            assert in_view(corners, start, end) is inside, (start, end)
            seen += inside
    assert 10 < seen < 50
