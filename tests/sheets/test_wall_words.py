"""What the plan's list says of walls that climb or curve, and of ceilings that slope."""

from tests.jobs import walls
from trimlang.compiler import check_job
from trimlang.sheets.content.floor_plan import floor_plan
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.quantities import Pen


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
        "climbs 36 7/8° to the left",
        "niche; curves away, radius 48 in",
        "curves into the room, radius 60 in",
        "ceiling rises 1/8° to the right",
        "",
    ]
