"""Where a wall is pieced together, worked by hand: lap 9/16 in, a tape of sixteenths."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from tests.every import every
from trimlang.joinery.splice_lengths import Studs, lapping_side, least_piece, split
from trimlang.lengths.tape import steps_up
from trimlang.settings.table import Settings
from trimlang.survey.outline import Leg, Point

LAP = Fraction(9, 16)
SETTINGS = Settings()
"""No piece under 24 in."""


def inches(text: str) -> Fraction:
    return sum((Fraction(part) for part in text.split()), Fraction(0))


def cut(exact: str, longest: str, *, force: bool = False, first_stud: str = "") -> list[Fraction]:
    studs = Studs(inches(first_stud), Fraction(16)) if first_stud else None
    found = split(inches(exact), inches(longest), LAP, SETTINGS, force=force, studs=studs)
    return list(found or ())


@pytest.mark.parametrize(
    ("exact", "longest", "pieces"),
    [
        # the last may be rounded up by a step, so it is a step shorter than the stick at most
        ("383 3/8", "192", ["192", "191 15/16"]),
        ("383 7/16", "192", ["192", "168 9/16", "24"]),
        # 47 7/16 and a lap are twice 24 in
        ("47 7/16", "30", ["24", "24"]),
        ("47 3/8", "30", []),
        ("40", "30", []),
        ("400", "20", []),
    ],
)
def test_full_sticks_come_first(exact: str, longest: str, pieces: list[str]) -> None:
    assert cut(exact, longest) == [inches(piece) for piece in pieces]


@pytest.mark.parametrize(
    ("exact", "pieces"),
    [
        ("120", ["60 1/4", "60 5/16"]),
        # as long as a stick that may still be rounded up
        ("191 15/16", ["96 1/4", "96 1/4"]),
        ("47 7/16", ["24", "24"]),
        ("47 3/8", []),
    ],
)
def test_a_splice_that_was_asked_for_is_in_the_middle(exact: str, pieces: list[str]) -> None:
    assert cut(exact, "192", force=True) == [inches(piece) for piece in pieces]


@pytest.mark.parametrize(
    ("exact", "pieces"),
    [
        # studs at 7 1/2, 23 1/2, … 55 1/2, 71 1/2: the middle at 60 is nearest 55 1/2,
        # and the left piece ends half a lap past it, at 55 25/32
        ("120", ["55 3/4", "64 13/16"]),
        # the middle at 64 is nearest 71 1/2: 71 25/32
        ("128", ["71 3/4", "56 13/16"]),
    ],
)
def test_in_the_middle_means_the_stud_nearest_it(exact: str, pieces: list[str]) -> None:
    found = cut(exact, "192", force=True, first_stud="7 1/2")
    assert found == [inches(piece) for piece in pieces]


@pytest.mark.parametrize(
    ("first_stud", "left"),
    [
        # studs at … 127, 143: half a lap past 143 is 143 9/32, within the stick of 144
        ("15", "143 1/4"),
        # … 127 3/4, 143 3/4: half a lap past that is 144 1/32, so the one before
        ("15 3/4", "128"),
    ],
)
def test_a_full_stick_ends_on_the_last_stud_that_it_reaches(first_stud: str, left: str) -> None:
    assert cut("192", "144", first_stud=first_stud)[0] == inches(left)


def test_no_piece_is_as_short_as_its_lap() -> None:
    settings, lap = SETTINGS.having(Settings.splice_least, Fraction(1, 2)), Fraction(1)
    assert least_piece(lap, settings) == Fraction(17, 16)
    found = split(Fraction(10), Fraction(10), lap, settings, force=False)
    assert found is not None
    assert min(found) > lap
    assert sum(found) == 11
    assert split(Fraction(1), Fraction(10), lap, settings, force=True) is None
    assert split(Fraction(10), Fraction(1), lap, settings, force=False) is None


@every("sixteenths", range(3000, 6200, 37))
def test_no_stick_is_too_short_for_what_is_cut_from_it(sixteenths: int) -> None:
    found = split(
        Fraction(sixteenths, 16) + Fraction(1, 64), Fraction(192), LAP, SETTINGS, force=False
    )
    assert found is not None
    assert all(length >= 24 and steps_up(length, Fraction(1, 16)) <= 192 for length in found)


@pytest.mark.parametrize(("at", "side"), [(60, "right"), (70, "left"), (80, "left")])
def test_the_piece_nearer_the_entrance_laps_over(at: int, side: str) -> None:
    # the wall runs from (10, 50) along y; the entrance is 70 in along it
    wall = Leg(
        0,
        "N",
        Point(Fraction(10), Fraction(50)),
        Point(Fraction(10), Fraction(150)),
        Fraction(0),
    )
    entrance = Point(Fraction(40), Fraction(120))
    assert lapping_side(wall, entrance, Fraction(at)) == side
    # along x instead
    turned = Leg(
        0,
        "N",
        Point(Fraction(50), Fraction(10)),
        Point(Fraction(150), Fraction(10)),
        Fraction(0),
    )
    assert lapping_side(turned, Point(Fraction(120), Fraction(40)), Fraction(at)) == side


def test_where_nothing_is_known_the_left_piece_laps_over() -> None:
    here = Point(Fraction(10), Fraction(50))
    wall = Leg(0, "N", here, Point(Fraction(10), Fraction(150)), Fraction(0))
    assert lapping_side(wall, None, Fraction(60)) == "left"
    assert lapping_side(None, here, Fraction(60)) == "left"
    assert lapping_side(replace(wall, end=here), here, Fraction(0)) == "left"
