"""What the plan's list says of walls that climb or curve, and of ceilings that slope."""

from tests.jobs import CASE, walls
from trimlang.compiler import check_job
from trimlang.sheets.content.floor_plan import floor_plan
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.quantities import Pen

PANEL = "trim panel: 5/8 in thick, 1 1/4 in wide"


def test_the_list_says_what_the_plan_does_not_show():
    result = check_job(
        walls(
            "  A: 40 in, left=butt, right=butt, rising left 3 in over 4 in\n"
            '  B: 4 ft radius, left=butt, right=butt, curves in 90 deg, note "niche"\n'
            "  C: 40 in, left=butt, right=butt, curves out radius 5 ft\n"
            "  D: 40 in, left=butt, right=butt, ceiling rising right 0.01 deg\n"
            "  E: 40 in, left=butt, right=butt"
        )
    )
    (plan,) = floor_plan(result, Pen(words_in("en"), "$"))
    # 3 in over 4 in is 36.87°
    assert [row.note.replace("\xa0", " ") for row in plan.rows] == [
        "climbs 36 7/8° to the left; length along the slope",
        "niche; curves away, radius 48 in",
        "curves into the room, radius 60 in",
        "ceiling rises 1/8° to the right",
        "",
    ]


def test_a_corner_that_was_worked_out_is_told_as_a_saw_shows_angles():
    result = check_job(
        walls(
            "  A: 60 in, left=out-corner(91.3 deg), "
            "right=in-corner(corner by 36 in, 36 in, diagonal 51 1/4 in)\n"
            "  B: 60 in, left=in-corner, right=butt"
        )
    )
    (plan,) = floor_plan(result, Pen(words_in("en"), "$"))
    # twice the arc sine of 51 1/4 in half of 72 in is 90.76°
    assert plan.rows[0].right == "inside corner 90 3/4°"
    assert plan.rows[0].left == "outside corner 91.3°"  # as it was read


def test_boxes_over_and_under_an_opening_fill_its_casing_and_no_wall():
    result = check_job(
        f"{PANEL}\n{CASE}\nstock case: 14 ft at 14.90\nstock panel: 8 ft at 5.00\n"
        + walls(
            "  A: 40 in, left=butt, right=butt\n"
            '  window 36 in, "garden", casing case, height 50 in, sill 34 in\n'
            "  B: 40 in, left=butt, right=butt\n"
            '  boxes under "garden": 1, 12 in tall, margin 4 in, trim panel\n'
            "  boxes A: 1, 20 in tall, margin 4 in, trim panel"
        )
    )
    (plan,) = floor_plan(result, Pen(words_in("en"), "$"))
    ends = [said.replace("\xa0", " ").rpartition(" = ")[2] for said in plan.sums]
    assert sorted(ends) == ["40 7/8 in, as wide as the casing.", "40 in, the whole wall."]
