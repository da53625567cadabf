"""What could be so and hardly is, is asked about; what is usual is not."""

import pytest

import trimlang
from tests.jobs import BASE, TWELVE_FEET

TRIM = f"{BASE}\n"
STOCK = f"{TWELVE_FEET}\n"
ROOM = 'room "R", trim base, open walk\n'
RUN = "  N: 40 in, left=butt, right=butt\n"


def asked(text):
    return {one.code for one in trimlang.compile(text).diagnostics}


@pytest.mark.parametrize(
    ("long", "code"),
    [("4.2 ft", "T260"), ("4.11 ft", "T260"), ("4.5 ft", None), ("4.25 ft", None),
     ("4 ft 2 in", None), ("4.2 in", None), ("4.371 ft", None)],
)  # fmt: skip
def test_tenths_of_a_foot(long, code):
    found = asked(TRIM + STOCK + ROOM + f"  N: {long}, left=butt, right=butt\n")
    assert found == ({code} if code else set())


def test_ten_inches_are_asked_about_as_they_were_written():
    text = TRIM + STOCK + ROOM + "  N: 4.10 ft, left=butt, right=butt\n"
    (question,) = trimlang.compile(text).diagnostics
    assert "4.10 ft" in question.message
    assert "4 ft 10 in" in question.message


def test_tenths_of_a_foot_are_read_as_inches():
    (one,) = trimlang.compile(
        TRIM + STOCK + ROOM + "  N: 4.2 ft, left=butt, right=butt\n"
    ).diagnostics
    assert "was 4 ft 2 in meant?" in one.message


@pytest.mark.parametrize(
    ("stock", "code"),
    [("12 in at 17.40, 16 ft at 20", "T261"), ("48 in at 9", None), ("8 ft at 12", None)],
)
def test_a_stick_of_twelve_inches(stock, code):
    assert (
        (code in asked(TRIM + f"stock base: {stock}\n" + ROOM + RUN))
        if code
        else not asked(TRIM + f"stock base: {stock}\n" + ROOM + RUN)
    )


@pytest.mark.parametrize(
    ("name", "section", "code"),
    [("crown", "11/16 in thick, 3 5/8 in wide", "T262"),
     ("crown", "11/16 in thick, 3 5/8 in wide, spring 38 deg", None),
     ("cover", "11/16 in thick, 3 5/8 in wide", None),
     ("base", "5 1/4 in thick, 9/16 in tall", "T263"),
     ("shoe", "3/4 in thick, 1/2 in tall", None)],
)  # fmt: skip
def test_sections(name, section, code):
    found = asked(
        f"trim {name}: {section}\nstock {name}: 12 ft at 20\n" + ROOM.replace("base", name) + RUN
    )
    # cuts of a trim so thick open wide, which is told as well
    assert found == ({code} if code else set())


def test_a_stick_shorter_than_every_run_that_may_not_be_pieced():
    stock = "stock base: 3 ft at 4.10, 12 ft at 17.40\n"
    assert asked(TRIM + stock + ROOM + RUN.replace("butt\n", "butt, no splice\n")) == {"T264"}
    assert asked(TRIM + stock + ROOM + RUN) == set()


def test_a_height_without_a_casing():
    assert asked(TRIM + STOCK + ROOM + RUN + "  opening 32 in, height 80 in\n") == {"T265"}


def test_two_entrances():
    doors = "  opening 32 in, entrance\n  E: 40 in, left=butt, right=butt\n  opening 30 in"
    assert asked(TRIM + STOCK + ROOM + RUN + doors + "\n") == set()
    assert asked(TRIM + STOCK + ROOM + RUN + doors + ", entrance\n") == {"T266"}


SIDES = "left=in-corner, right=in-corner"


def listed(*walls):
    lines = [f"  {name}: {feet} ft, {SIDES}" for name, feet in walls]
    return TRIM + STOCK + 'room "R", trim base\n' + "\n".join(lines) + "\n"


@pytest.mark.parametrize(
    ("names", "code"),
    [("NESW", None), ("ESWN", None), ("NWSE", "T315"), ("SENW", "T315"), ("ABCD", None)],
)
def test_walls_named_by_the_compass_turn_right(names, code):
    walls = zip(names, (12, 10, 12, 10), strict=True)
    assert asked(listed(*walls)) == ({code} if code else set())


def test_a_diagonal_tells_a_room_that_was_walked_turning_left():
    """An L whose walls are told apart: listed the wrong way, its diagonal belongs elsewhere."""
    ell = [("A", 144), ("B", 60), ("C", 36), ("D", 48), ("E", 180), ("F", 108)]
    ends = {"A": "in in", "B": "in out", "C": "out in", "D": "in in", "E": "in in", "F": "in in"}

    def job(order, diagonal):
        lines = []
        for name, long in order:
            left, right = ends[name].split()
            if order is not ell:
                left, right = right, left
            lines.append(f"  {name}: {long} in, left={left}-corner, right={right}-corner")
        head = TRIM + STOCK + 'room "R", trim base\n'
        return head + "\n".join([*lines, f"  diagonal {diagonal}"]) + "\n"

    # by hand: from the left end of A (0, 0) to the right end of D (180, -108)
    right = job(ell, "A-D 209 15/16 in")
    assert asked(right) == set()
    left = trimlang.compile(job(list(reversed(ell)), "A-D 209 15/16 in"))
    told = next(one for one in left.diagnostics if one.code in ("T310", "T316"))
    assert "turning left" in told.remedy
