"""What is said once for every room, for all openings of a room, or between two walls."""

from __future__ import annotations

import pytest

from tests.jobs import CASE, CASE_STOCK, TRIM
from trimlang.compiler import check_job
from trimlang.language.meaning import same_meaning

CASED = f"{TRIM}{CASE}\n{CASE_STOCK}\n"
DEN = """\
room "Den"{said}, ends in, open walk
  N 10 ft, E 8 ft, S 10 ft
  W 4 ft, door 30{first}, W2 18, door 34{second}, W3 14
"""


def den(said: str = "", first: str = "", second: str = "", *, above: str = "") -> str:
    """Return a job of one room; ``said`` stands in its heading, ``above`` above it."""
    return CASED + above + DEN.format(said=said, first=first, second=second)


def codes(text: str) -> list[str]:
    return [one.code for one in check_job(text).diagnostics]


def walk(text: str) -> object:
    return check_job(text).job.rooms[0].walk


SAID = den(
    ", trim base",
    ", casing case, height 80",
    ", casing case, height 80",
)


@pytest.mark.parametrize(
    ("said", "above"),
    [
        ("", "every room: trim base, casing case\n"),
        (", casing case", "every room: trim base\n"),
        (", trim base, casing case", ""),
        (", trim base", "every room: trim case, casing case\n"),
    ],
)
def test_what_is_said_once_is_said_of_each(said: str, above: str) -> None:
    text = den(said, ", height 80", ", height 80", above=above)
    assert not codes(text)
    assert same_meaning(walk(text), walk(SAID))


def test_how_walls_end_is_said_once_for_every_room() -> None:
    walls = "  N 10 ft, E 8 ft, S 10 ft, W 8 ft\n"
    every = f'{TRIM}every room: trim base, ends in\nroom "Den"\n{walls}'
    each = f'{TRIM}room "Den", trim base, ends in\n{walls}'
    assert not codes(every)
    assert same_meaning(walk(every), walk(each))


def test_an_opening_without_casing_says_so() -> None:
    text = den(", trim base, casing case", ", height 80", ", no casing")
    first, second = (one for one in check_job(text).job.rooms[0].walk if hasattr(one, "casing"))
    assert (first.casing, second.casing) == ("case", None)
    assert codes(text.replace("no casing", "no casing, casing case, height 80")) == ["T209"]


def test_a_slip_in_what_is_said_once_is_told_once() -> None:
    two = den(above="every room: trim bse\n") + DEN.format(said="", first="", second="").replace(
        "Den", "Hall"
    )
    assert codes(two).count("T210") == 1
    assert codes(den(above="every room: trim base\nevery room: trim case\n")).count("T207") == 1


def test_a_trim_may_be_called_casing() -> None:
    text = den(", trim base, casing").replace("case:", "casing:")
    assert "T101" not in codes(text)
    runs = check_job(text).job.rooms[0].runs
    assert {one.trims for one in runs} == {("base", "casing")}
    without = text.replace("N 10 ft,", "N 10 ft, no casing,")
    assert check_job(without).job.rooms[0].runs[0].trims == ("base",)


@pytest.mark.parametrize(
    ("between", "at_sides"),
    [
        (
            "N 40, left=butt, out(91), E 20, in corner, S 30, right=butt",
            "N 40, left=butt, right=out(91 deg), E 20, right=in, S 30, right=butt",
        ),
        (
            "N 40, left=butt, in, cabinets 24, out, bare 30, in, S 20, right=butt",
            "N 40, left=butt, cabinets 24, left=in, right=out, bare 30, left=out, right=in, S 20,"
            " right=butt",
        ),
        (
            "A 40, left=butt, rake, B 9 ft, right=plumb, rising right 36 deg",
            "A 40, left=butt, right=rake, B 9 ft, right=plumb, rising right 36 deg",
        ),
    ],
)
def test_a_corner_stands_between_its_walls(between: str, at_sides: str) -> None:
    room = f'{TRIM}room "R", trim base, open walk\n  '
    assert not codes(room + between)
    assert same_meaning(walk(room + between), walk(room + at_sides))


@pytest.mark.parametrize(
    ("line", "called"),
    [
        ("door to hall 32 in", "door to hall"),
        ("Door to  Hall 32", "door to Hall"),
        ("opening closet 32, stops all", "closet"),
        ('opening "D3, east" 32', "D3, east"),
        ("bare N2 32", "N2"),
        ("newel post 3 1/2 in", "newel post"),
        ("cabinets 6 ft", "cabinets"),
    ],
)
def test_a_name_may_stand_before_the_width(line: str, called: str) -> None:
    room = f'{TRIM}room "R", trim base, open walk\n'
    behind = f"  {line}\n  E 30, right=butt"
    for written in (f"  N 40, left=butt, {line}, E 30, right=butt", behind):
        assert not codes(room + written)
        (gap,) = (one for one in walk(room + written) if hasattr(one, "called"))
        assert gap.called == called
