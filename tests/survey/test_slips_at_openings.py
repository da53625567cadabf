"""Which slip is named where an opening, a butt or a mitre stands for what was measured."""

from __future__ import annotations

import pytest

import trimlang
from tests.jobs import BASE, CASE, SIXTEEN_FEET
from trimlang.diagnostics import Diagnostic

SIDES = "left=in-corner, right=in-corner"


CASING = f"{CASE}\nstock case: 14 ft at 14.90\n"


def found(*walls: str, head: str = "") -> dict[str, Diagnostic]:
    head = f'{BASE}\n{SIXTEEN_FEET}\n{head}room "R", trim base\n'
    return {one.code: one for one in trimlang.check(head + "\n".join(walls)).diagnostics}


def test_a_corner_that_the_opening_behind_it_does_not_say() -> None:
    told = found(
        f"N: 144 in, {SIDES}",
        "E: 120 in, left=in-corner, right=butt",
        'opening 30 in, "to hall"',
        "S: 114 in, left=butt, right=in-corner",
        f"W: 120 in, {SIDES}",
    )["T311"]
    assert told.remedy == (
        "Most likely: the corner of run E and “to hall” is not written: left=in-corner on"
        " “to hall”."
    )


def test_an_opening_forgotten_behind_one_that_was_written() -> None:
    told = found(
        'opening 30 in, "hall", left=in-corner',
        "N: 114 in, left=butt, right=in-corner",
        f"E: 120 in, {SIDES}",
        "S1: 60 in, left=in-corner, right=butt",
        "S2: 52 in, left=butt, right=in-corner",
        "W: 120 in, left=in-corner, right=butt",
    )["T310"]
    assert "an opening forgotten after run S1, about 2 ft 8 in wide" in told.remedy


CASED = "casing case, height 80 in"


@pytest.mark.parametrize(("door", "window"), [("32 in", "36 in"), ("32 in", "31 1/8 in")])
def test_openings_that_were_measured_over_their_casing(door: str, window: str) -> None:
    told = found(
        f"N: 144 in, {SIDES}",
        f"E: 120 in, {SIDES}",
        "S: 52 in, left=in-corner, right=butt",
        f'opening {door}, "hall", {CASED}',
        "S2: 60 in, left=butt, right=in-corner",
        "W: 42 in, left=in-corner, right=butt",
        f'opening {window}, "garden", {CASED}',
        "W2: 42 in, left=butt, right=in-corner",
        head=CASING,
    )["T310"]
    # a leg of 2 1/4 in and a reveal of 3/16 in at each side: 4 7/8 in
    both = window == "36 in"
    names = "“hall” and “garden”" if both else "“hall”"
    assert f": the casing of {names} counted twice" in told.remedy
    assert told.remedy.startswith("Most likely") == both


@pytest.mark.parametrize(("wide", "meant"), [(21, "9 in"), (20, "")])
def test_the_narrowest_opening_that_a_foot_too_long_may_leave(wide: int, meant: str) -> None:
    told = found(
        f"N: 144 in, {SIDES}",
        f"E: 120 in, {SIDES}",
        "S: 60 in, left=in-corner, right=butt",
        f'opening {wide} in, "slot"',
        f"S2: {96 - wide} in, left=butt, right=in-corner",
        f"W: 120 in, {SIDES}",
    )["T310"]
    assert ("“slot” read a foot too long" in told.remedy) is bool(meant)
    assert meant in told.remedy


def over_casing(leg: str, *sizes: int) -> str:
    names = ("S", "hall", "S2", "garden", "S3")
    walls = [
        f'opening {size} in, "{name}", {CASED}'
        if name.islower()
        else f"{name}: {size} in, left={'in-corner' if name == 'S' else 'butt'},"
        f" right={'in-corner' if name == 'S3' else 'butt'}"
        for name, size in zip(names, sizes, strict=True)
    ]
    head = CASING.replace("2 1/4 in wide", f"{leg} in wide")
    ends = (f"N: 240 in, {SIDES}", f"E: 120 in, {SIDES}", f"W: 120 in, {SIDES}")
    return found(*ends[:2], *walls, ends[2], head=head)["T310"].remedy


def test_one_of_several_casings_counted_twice_is_rarer_than_a_foot_misread() -> None:
    """A leg of 5 13/16 in and a reveal of 3/16 in at each side are a foot."""
    told = over_casing("5 13/16", 52, 24, 68, 36, 48)
    assert "“hall” read a foot too long: 1 ft instead" in told
    assert "counted twice" not in told


def test_both_casings_counted_twice_are_as_likely_as_a_foot_misread() -> None:
    """With both, two feet are too many, which is rarer than a foot."""
    told = over_casing("5 13/16", 52, 24, 68, 36, 60)
    both = "the casing of “hall” and “garden” counted twice"
    assert told.startswith(f"Several slips explain it equally well: {both}")


def test_of_two_runs_that_stop_against_each_other_a_corner_is_asked_about() -> None:
    walls = (f"E: 120 in, {SIDES}", "S: 144 in, left=in-corner, right=butt",
             "W: 120 in, left=butt, right=in-corner")  # fmt: skip
    assert set(found(f"N: 144 in, {SIDES}", *walls)) == {"T320"}
    assert set(found("N: 144 in, left=in-corner, right=out-corner", *walls)) == {"T301"}


def test_the_side_of_a_late_corner_that_is_wrong() -> None:
    told = found(
        f"N: 144 in, {SIDES}",
        f"E: 120 in, {SIDES}",
        "S: 144 in, left=in-corner, right=out-corner",
        f"W: 120 in, {SIDES}",
    )
    assert set(told) == {"T312"}
    assert "the right end of run S is wrong" in told["T312"].message


def test_corners_all_written_as_mitres_that_are_not_square() -> None:
    """Of a corner of 100 degrees the mitre is 40, of one of 80 it is 50."""
    told = found(
        "N: 144 in, left=in-corner(50 deg), right=in-corner(40 deg)",
        "E: 120 in, left=in-corner, right=in-corner(50 deg)",
        "S: 144 in, left=in-corner, right=in-corner(40 deg)",
        f"W: 120 in, {SIDES}",
    )["T311"]
    assert told.remedy == (
        "Most likely: all corners under 75° are written as mitres: at 45° the corner is 90°."
    )


def test_a_wall_far_too_short_is_told_to_the_mark_though_diagonals_turn_with_it() -> None:
    told = found(
        f"N: 84 in, {SIDES}", f"E: 120 in, {SIDES}", f"S: 144 in, {SIDES}", f"W: 120 in, {SIDES}",
        "diagonal N-E 187 7/16 in", "diagonal E-S 187 7/16 in",
    )["T310"]  # fmt: skip
    assert told.remedy == "Most likely: run N is 5 ft too short."


TRAPEZOID = ("N: 100 in, left=in-corner, right=in-corner{}",
             "E: 103 15/16 in, left=in-corner, right=in-corner{}",
             "S: 151 15/16 in, left=in-corner, right=in-corner{}",
             "W: 90 in, left=in-corner, right=in-corner{}")  # fmt: skip


def trapezoid(*angles: str) -> str:
    return found(*map(str.format, TRAPEZOID, angles))["T310"].remedy


def test_an_angle_that_is_written_one_corner_on() -> None:
    """True is 120° between N and E, 60° between E and S, and 90° at both ends of W."""
    corners = [f"the corner of run {one} and run {other}" for one, other in ("NE", "ES", "SW")]
    one_late = trapezoid("(120 deg)", "", "(60 deg)", "")
    assert f"60° is of {corners[1]}, not of {corners[2]}" in one_late
    one_early = trapezoid("(60 deg)", "", "", "(120 deg)")
    assert "all angles are written one corner too early" in one_early
    all_late = trapezoid("", "(120 deg)", "(60 deg)", "")
    assert "all angles are written one corner too late" in all_late


def test_a_bay_read_from_the_other_side_at_every_corner() -> None:
    told = found(
        "N1: 36 in, left=in-corner, right=out-corner(45 deg)",
        "N2: 40 in, left=out-corner, right=in-corner(45 deg)",
        "N3: 40 in, left=in-corner, right=in-corner(45 deg)",
        "N4: 40 in, left=in-corner, right=out-corner(45 deg)",
        "N5: 35 7/16 in, left=out-corner, right=in-corner",
        f"E: 120 in, {SIDES}",
        f"S: 168 in, {SIDES}",
        f"W: 120 in, {SIDES}",
    )["T310"]
    best = "Most likely: all corners under 75° were read from the other side: 45° is 135°."
    assert best in told.remedy


def test_no_opening_is_guessed_that_nobody_cases() -> None:
    """30 in written for 30 mm would close the room, but that is no opening."""
    told = found(
        "N: 60 in, left=in-corner, right=butt",
        'opening 30 in, "hall"',
        "N2: 30 in, left=butt, right=in-corner",
        f"E: 120 in, {SIDES}",
        "S: 91 3/16 in, left=in-corner, right=in-corner",
        f"W: 120 in, {SIDES}",
    )["T310"]
    assert "run N2 written in millimetres: 1 3/16 in instead" in told.remedy
    assert "“hall” written in" not in told.remedy


def test_a_breast_written_all_inside_is_told_with_a_length_misread_besides() -> None:
    told = found(
        *(f"{name}: {size} in, {SIDES}" for name, size in
          (("N", 30), ("B1", 15), ("B2", 40), ("B3", 15), ("N2", 30), ("E", 120), ("S", 112),
           ("W", 120))),
    )["T311"]  # fmt: skip
    both = (
        "the corner of run N and run B1 and the corner of run B3 and run N2 both written in-corner"
        " for out-corner; and besides run S read a foot too long: 8 ft 4 in instead"
    )
    assert both in told.remedy
