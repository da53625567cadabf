"""Openings that two rooms share, seen from both sides of the wall."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

import trimlang
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


def found(between, first=SECOND, second=FIRST):
    job = TRIM + NORTH_ROOM.format(24, 40, 38)
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


@pytest.mark.parametrize("between", [36, 45])
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
