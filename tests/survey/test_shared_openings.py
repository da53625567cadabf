"""Openings that two rooms share, seen from both sides of the wall."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

import trimlang
from tests.every import every
from tests.jobs import TRIM

NORTH_ROOM = """
room "Study", trim base
  N: 14 ft, left=in-corner, right=in-corner
  E: 10 ft, left=in-corner, right=in-corner
  S1: {0} in, left=in-corner, right=butt
  opening 36 in "D1"
  S2: {1} in, left=butt, right=butt
  opening 30 in "D2"
  S3: {2} in, left=butt, right=in-corner
  W: 10 ft, left=in-corner, right=in-corner
"""
SOUTH_ROOM = """
room "Behind", trim base, open walk
  a: 20 in, left=butt, right=butt
  opening {first}
  b: {between} in, left=butt, right=butt
  opening {second}
  c: 20 in, left=butt, right=butt
"""
FIRST, SECOND = '36 in "D1"', '30 in "d2"'


def found(between, first=SECOND, second=FIRST, unit="in"):
    job = f"unit {unit}\n" + TRIM + NORTH_ROOM.format(24, 40, 38)
    job += SOUTH_ROOM.format(first=first, second=second, between=between)
    return {one.code: one for one in trimlang.compile(job).diagnostics}


def test_seen_from_the_other_side_openings_change_places():
    assert not found(40)


def test_the_same_order_from_both_sides_is_one_room_listed_turning_left():
    (one,) = found(40, first=FIRST, second=SECOND).values()
    assert one.code == "T318"
    assert one.message == (
        "“D1” is to the left of “D2” in room “Study” and in “Behind”:"
        " seen from the other side they change places"
    )


def test_a_distance_that_differs_is_told_in_both_rooms():
    (one,) = found(52).values()
    assert one.code == "T319"
    # 40 in and half of both openings
    assert "6 ft 1 in apart" in one.message
    assert "7 ft 1 in" in one.message
    (one,) = found(52, unit="mm").values()
    assert "1.854 m apart" in one.message
    assert "2.159 m" in one.message


@pytest.mark.parametrize("between", [34, 36, 45, 46])
def test_what_walls_may_be_off_is_no_contradiction(between):
    assert not found(between)


def test_openings_in_walls_at_a_right_angle_say_nothing():
    job = TRIM + SOUTH_ROOM.format(first=SECOND, second=FIRST, between=40)
    job += """
room "Corner", trim base, open walk
  a: 20 in, left=butt, right=butt
  opening 36 in "D1", right=in-corner
  b: 20 in, left=in-corner, right=butt
  opening 30 in "D2"
  c: 20 in, left=butt, right=butt
"""
    assert not trimlang.compile(job).diagnostics


@given(st.integers(10, 60), st.integers(10, 60), st.booleans())
def test_a_true_pair_of_rooms_is_never_contradicted(left, between, mirrored):
    right = 168 - 66 - left - between
    if right < 6:
        return
    job = TRIM + NORTH_ROOM.format(left, between, right)
    names = (FIRST, SECOND) if mirrored else (SECOND, FIRST)
    job += SOUTH_ROOM.format(first=names[0], second=names[1], between=between)
    codes = {one.code for one in trimlang.compile(job).diagnostics}
    assert ("T318" in codes) is mirrored
    assert "T319" not in codes


def test_names_that_every_bedroom_has_are_not_compared():
    job = TRIM
    for room, between in (("East", 40), ("West", 60)):
        job += f'\nroom "{room}", trim base, open walk\n  a: 20 in, left=butt, right=butt\n'
        job += f'  opening 30 in "closet"\n  b: {between} in, left=butt, right=butt\n'
        job += '  door 32 in "to hall"\n  c: 20 in, left=butt, right=butt\n'
    assert not trimlang.compile(job).diagnostics


WRAPPED = """
room "Study", trim base
  N: 144 in, left=in-corner, right=in-corner
  E: 96 in, left=in-corner, right=in-corner
  S1: 24 in, left=in-corner, right=butt
  opening 36 in "D1"
  S2: 36 in, left=butt, right=out-corner
  P1: 36 in, left=out-corner, right=butt
  opening 36 in "D2"
  P2: 24 in, left=butt, right=in-corner
  Q: 48 in, left=in-corner, right=in-corner
  W: 192 in, left=in-corner, right=in-corner
"""
IN_THE_NOTCH = [
    "  a: {0} in, left=in-corner, right=butt",
    '  opening 36 in "{1}"',
    "  b: {2} in, left=butt, right=in-corner",
    "  c: {3} in, left=in-corner, right=butt",
    '  opening 36 in "{4}"',
    "  d: {5} in, left=butt, right=in-corner",
    "  e: 96 in, left=in-corner, right=in-corner",
    "  f: 96 in, left=in-corner, right=in-corner",
]


@pytest.mark.parametrize(
    ("sizes", "wrong"),
    [((24, "D2", 36, 36, "D1", 24), False), ((24, "D1", 36, 36, "D2", 24), True)],
)
def test_two_walls_turn_the_same_way_from_both_sides(sizes, wrong):
    """The room in the notch has, from its left, the door in P and then the one in S."""
    job = TRIM + WRAPPED + '\nroom "Notch", trim base\n' + "\n".join(IN_THE_NOTCH).format(*sizes)
    told = trimlang.compile(job).diagnostics
    assert [one.code for one in told] == (["T327"] if wrong else [])
    if wrong:
        assert told[0].message.startswith("from “D1” to “D2” room “Study” turns left, and “Notch”")


@every(
    "angle, code",
    [(135, "T327"), (136, None), (45, "T327"), (44, None), (175, "T318"), (174, None)],
)
def test_which_walls_go_round_and_which_run_alongside(angle, code):
    """One room turns right from the first door to the second, and the other as much left."""
    job = TRIM
    for room, corner in (("Here", "in-corner"), ("There", "out-corner")):
        job += f'\nroom "{room}", trim base, open walk\n  a: 90 in, left=butt, right=butt\n'
        job += f'  opening 36 in "D1", right={corner}({angle} deg)\n'
        job += '  opening 36 in "D2"\n  b: 90 in, left=butt, right=butt\n'
    told = {one.code for one in trimlang.check(job).diagnostics}
    assert told & {"T318", "T327"} == ({code} if code else set())


ONE_DOOR = """
room "{name}", trim base
  N1: {left} in, left=in-corner, right=butt
  opening 36 in "D7"
  N2: {right} in, left=butt, right=in-corner
  E: {deep} in, left=in-corner, right=in-corner
  S: {long} in, left=in-corner, right=in-corner
  W: {deep} in, left=in-corner, right=in-corner
"""


@given(st.integers(6, 100), st.integers(6, 100), st.integers(7, 40))
def test_a_single_door_is_as_far_from_the_other_corner_on_the_other_side(left, right, longer):
    def told(one, other):
        rooms = [
            ONE_DOOR.format(name=name, left=one, right=other, deep=96, long=36 + one + other)
            for name, one, other in (("Study", left, right), ("Behind", one, other))
        ]
        # the other room's list begins with the wall behind the door's
        blank, head, *door, east, south, west, _ = rooms[1].split("\n")
        rooms[1] = "\n".join([blank, head, east, south, west, *door, ""])
        return [one.code for one in trimlang.check(TRIM + "".join(rooms)).diagnostics]

    assert told(right, left) == []
    assert told(left, right) == (["T328"] if abs(left - right) > 12 else [])
    # a wall of another length is not the same from corner to corner
    assert told(left, right + longer) == []
    # six inches more may be the tape's and the walls' own
    assert told(left, right + 6) == (["T328"] if abs(left - right - 6) > 12 else [])
    assert told(left + 6, right) == (["T328"] if abs(left - right) > 12 else [])


def test_a_wall_in_which_the_list_begins_says_nothing_of_a_single_door():
    job = TRIM
    for name in ("Study", "Behind"):
        room = ONE_DOOR.format(name=name, left=20, right=60, deep=96, long=116)
        blank, head, begins, *rest = room.rstrip().split("\n")
        job += "\n".join([blank, head, *rest, begins, ""])
    assert trimlang.check(job).diagnostics == ()


def test_the_first_room_may_be_the_one_that_turns_right():
    notch = '\nroom "Notch", trim base\n' + "\n".join(IN_THE_NOTCH)
    (told,) = trimlang.compile(
        TRIM + notch.format(24, "D1", 36, 36, "D2", 24) + WRAPPED
    ).diagnostics
    assert told.message.startswith(
        "from “D1” to “D2” room “Notch” turns right, and “Study” turns left"
    )


@pytest.mark.parametrize("wrong", [False, True])
def test_doors_in_a_side_wall_are_as_far_apart_as_in_another_room_s_first(wrong):
    job = (
        TRIM
        + f"""
room "Side", trim base
  N: 120 in, left=in-corner, right=in-corner
  E1: 30 in, left=in-corner, right=butt
  opening 36 in "D1"
  E2: 40 in, left=butt, right=butt
  opening 30 in "D2"
  E3: 20 in, left=butt, right=in-corner
  S: 120 in, left=in-corner, right=in-corner
  W: 156 in, left=in-corner, right=in-corner
{SOUTH_ROOM.format(first=FIRST if wrong else SECOND, second=SECOND if wrong else FIRST, between=40)}
"""
    )
    told = [one for one in trimlang.compile(job).diagnostics if one.code != "T310"]
    assert [one.code for one in told] == (["T318"] if wrong else [])
    if wrong:
        assert "“D1” is to the left of “D2”" in told[0].message


def test_the_order_is_said_from_the_first_door_on_the_schedule():
    north = (
        NORTH_ROOM.format(24, 40, 38).replace("D1", "D9").replace("D2", "D1").replace("D9", "D2")
    )
    south = SOUTH_ROOM.format(first='30 in "D2"', second='36 in "D1"', between=40)
    (told,) = trimlang.compile(TRIM + north + south).diagnostics
    assert told.message.startswith("“D1” is to the right of “D2” in room “Study” and in “Behind”")


def test_a_wall_that_ends_in_an_outside_corner_says_nothing_of_a_single_door():
    whole = ONE_DOOR.format(name="Study", left=20, right=60, deep=96, long=116)
    part = ONE_DOOR.format(name="Behind", left=20, right=60, deep=96, long=116)
    part = part.replace(
        "  E: 96 in, left=in-corner",
        "  P: 10 in, left=out-corner, right=in-corner\n  E: 96 in, left=in-corner",
    ).replace("left=butt, right=in-corner", "left=butt, right=out-corner")
    for rooms in (whole + part, part + whole):
        assert "T328" not in {one.code for one in trimlang.check(TRIM + rooms).diagnostics}
