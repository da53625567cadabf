"""A joint is said once, and walls written short mean what the long form means."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.every import every
from tests.jobs import TRIM
from trimlang.compiler import check_job
from trimlang.language.meaning import same_meaning
from trimlang.language.vocabulary import SHORT_JOINTS

LONG = """\
room "Den", trim base
  N: 10 ft 2 1/4 in, left=in-corner, right=in-corner
  E: 8 ft 7 9/16 in, left=in-corner, right=in-corner
  S: 10 ft 2 1/4 in, left=in-corner, right=in-corner
  W: 4 ft 2 in, left=in-corner, right=butt
  opening 32 in, "to hall"
  W2: 21 9/16 in, left=butt, right=in-corner
"""


def codes(text: str) -> list[str]:
    return [one.code for one in check_job(TRIM + text).diagnostics]


def walk_of(text: str) -> object:
    result = check_job(TRIM + text)
    assert not result.diagnostics, [one.message for one in result.diagnostics]
    return result.job.rooms[0].walk


@pytest.mark.parametrize(
    "short",
    [
        'room "Den", trim base, ends in\n'
        "N 10' 2 1/4, E 8' 7 9/16, S 10' 2 1/4, W 4' 2, door 32, \"to hall\", W2 21 9/16\n",
        'ends in\nroom "Den", trim base\nN: 10 ft 2 1/4\nE: 8 ft 7 9/16\nS: 10 ft 2 1/4\nW: 50\n'
        'door 32 in "to hall"\nW2: 21 9/16\n',
        "room \"Den\", trim base\nends inside corner\nN 10' 2 1/4\nE 8' 7 9/16, S 10' 2 1/4\n"
        'W 4\' 2, opening 32 in "to hall", W2 21 9/16\n',
        "room \"Den\", trim base\nN 10' 2 1/4, left=in, right=ic, E 8' 7 9/16\n"
        "S: 10 ft 2 1/4 in, left=inside, right=in corner\nW 4' 2\n"
        'opening 32, "to hall"\nW2 21 9/16\n',
    ],
)
def test_the_short_form_means_what_the_long_one_does(short: str) -> None:
    assert same_meaning(walk_of(short), walk_of(LONG))


@given(st.lists(st.booleans(), min_size=4, max_size=4))
def test_either_wall_says_the_joint(at_right: list[bool]) -> None:
    """Each corner is said at one of its two walls, whichever that is."""
    ends: list[list[str]] = [[], [], [], []]
    for corner, right in enumerate(at_right):
        wall, side = (corner, "right") if right else ((corner + 1) % 4, "left")
        ends[wall].append(f"{side}=in-corner")
    sizes = ("10 ft", "8 ft", "10 ft", "8 ft")
    lines = [
        ", ".join([f"{name}: {size}", *said])
        for name, size, said in zip("NESW", sizes, ends, strict=True)
    ]
    whole = "".join(
        f"{n}: {s}, left=in-corner, right=in-corner\n" for n, s in zip("NESW", sizes, strict=True)
    )
    room = 'room "R", trim base\n'
    assert same_meaning(walk_of(room + "\n".join(lines)), walk_of(room + whole))


def test_an_angle_and_a_cope_may_stand_at_the_one_side_that_is_said() -> None:
    room = 'room "R", trim base, open walk\n'
    short = walk_of(room + "N 40 in, left=butt, right=in(91 deg) cope, E 30 in, right=butt")
    long = walk_of(
        room
        + "N: 40 in, left=butt, right=in-corner(91 deg) cope\nE: 30 in, left=in-corner, right=butt"
    )
    assert same_meaning(short, long)


@every("short, joint", SHORT_JOINTS.items())
def test_short_words_for_corners(short: str, joint: str) -> None:
    room = 'room "R", trim base, open walk\n'
    long = room + f"N: 40 in, left=butt, right={joint}\nE: 30 in, left={joint}, right=butt"
    assert same_meaning(
        walk_of(room + f"N: 40 in, left=butt, right={short}\nE: 30 in, right=butt"), walk_of(long)
    )


def test_an_unsaid_joint_is_told_once() -> None:
    four = 'room "R", trim base\nN: 10 ft\nE: 8 ft\nS: 10 ft\nW: 8 ft\n'
    assert codes(four) == ["T252"] * 4
    found = check_job(TRIM + four).diagnostics[0]
    assert "how run N meets run E" in found.message
    assert "right=in-corner" in found.remedy
    assert "left=… at E" in found.remedy
    assert "ends in-corner" in found.remedy


def test_where_both_say_it_they_must_agree() -> None:
    room = 'room "R", trim base, ends in, open walk\n'
    assert codes(room + "N 40 in, left=butt, right=out, E 30 in, left=in, right=butt") == ["T301"]


def test_what_has_no_other_side_is_not_taken_over() -> None:
    room = 'room "R", trim base, open walk\n'
    assert codes(room + "N: 40 in, left=butt, right=return\nE: 30 in, right=butt") == ["T225"]
    assert codes(room + "N: 40 in, right=butt") == ["T225"]


def test_a_neighbour_that_could_not_be_read_may_say_it() -> None:
    room = 'room "R", trim base, open walk\n'
    assert codes(room + "N: 40 in, left=butt, rigth=in\nE: 30 in, right=butt") == ["T101"]
    assert codes(room + "N: 40 i n, left=butt\nE: 30 in, right=butt") == ["T101"]


@pytest.mark.parametrize(
    ("written", "kind", "called"),
    [
        ("door 32 in", "opening", "door"), ('door 32 in "to hall"', "opening", "to hall"),
        ('window 3 ft, "big one"', "opening", "big one"), ("stair 36 in", "opening", "stair"),
        ("cabinets 6 ft", "bare", "cabinets"), ("RADIATOR 40 in", "bare", "radiator"),
        ("bare 6 ft", "bare", None),
    ],
)  # fmt: skip
def test_openings_by_their_names(written: str, kind: str, called: str | None) -> None:
    room = f'room "R", trim base, open walk\nN: 40 in, left=butt\n{written}\nE: 30 in, right=butt'
    gap = check_job(TRIM + room).job.rooms[0].walk[1]
    assert (gap.kind, gap.called) == (kind, called)  # type: ignore[union-attr]
    assert codes(room) == []


def test_a_run_may_still_be_named_after_a_door() -> None:
    room = 'room "R", trim base, open walk\nwindow: 40 in, left=butt, right=butt'
    assert check_job(TRIM + room).job.rooms[0].runs[0].label == "window"


@pytest.mark.parametrize(
    ("line", "meant"),
    [
        ("opning 32 in", "opening"),
        ("N 40 in, dor 32 in", "door"),
        ("kerf 3/32", "saw: kerf"),
        ("height 3 ft", "casings: height"),
        ("spring 3 ft", ""),
    ],
)
def test_a_slip_is_no_wall(line: str, meant: str) -> None:
    room = f'room "R", trim base, ends in, open walk\n{line}\nE: 30 in, right=butt\n'
    (found,) = [one for one in check_job(TRIM + room).diagnostics if one.code == "T100"]
    said = f"Did you mean “{meant}”?" if meant else "It is a word of other lines."
    assert said in found.remedy


def test_what_is_said_of_another_wall_is_told() -> None:
    room = 'room "R", trim base, ends in, open walk\n'
    assert codes(room + "N 40 in, entrance, door 32 in, E 30 in") == ["T123"]
    assert codes(room + "N 40 in, door 32 in, no splice, E 30 in") == ["T123"]


def test_a_list_of_trims_is_begun_once_whatever_it_names() -> None:
    shoe = "trim shoe: 1/2 in thick, 3/4 in tall\n"
    walls = 'room "Den", base, shoe, open walk\nN: 40 in, left=butt, right=butt\n'
    found = check_job(f"{TRIM}{shoe}{walls}")
    told = [(one.code, one.remedy) for one in found.diagnostics if one.code == "T216"]
    assert told == [("T216", "Write “trim base”.")]
    assert found.job.rooms[0].runs[0].trims == ("base", "shoe")
