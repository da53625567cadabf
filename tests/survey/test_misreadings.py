"""What a length may have been before a slip: the usual slips of tape and pencil, by hand."""

from __future__ import annotations

from fractions import Fraction

import pytest

import trimlang
from tests.jobs import TRIM
from trimlang.compiler import check_job
from trimlang.diagnostics.mending import mends
from trimlang.lengths.tape import MM, Unit
from trimlang.survey.misreadings import feet_without_inches, misreadings

# how much rarer than the commonest, in the closing's own measure
USUAL, RARER, RARE = 0, 2, 4
ANY = {
    ("12", "read a foot too short", USUAL),
    ("-12", "read a foot too long", USUAL),
    ("24", "read two feet too short", RARER),
    ("-24", "read two feet too long", RARER),
    ("1", "read an inch too short", USUAL),
    ("-1", "read an inch too long", USUAL),
}


@pytest.mark.parametrize(
    ("length", "meant"),
    [
        (  # 16 ft 4 1/4 in, of which 61 ft 4 1/4 in are 736 1/4
            "196 1/4",
            {
                ("916 1/4", "with two figures swapped", RARER),
                ("169 1/4", "with two figures swapped", RARER),
                ("736 1/4", "with two figures of the feet swapped", RARER),
                ("196 3/4", "with the fraction counted from the wrong mark", RARER),
                ("196 1/8", "with the fraction's lower figure misread", RARE),
                ("196 1/2", "with the fraction's lower figure misread", RARE),
                ("16 17/48", "written in feet for inches", USUAL),
                ("7 369/508", "written in millimetres", RARER),
                ("77 67/254", "written in centimetres", RARER),
            },
        ),
        (  # 4 ft 3 3/4 in; 3 ft 4 3/4 in are 40 3/4
            "51 3/4",
            {
                ("40 3/4", "with feet and inches swapped", RARER),
                ("15 3/4", "with two figures swapped", RARER),
                ("51 1/4", "with the fraction counted from the wrong mark", RARER),
                ("51 3/8", "with the fraction's lower figure misread", RARE),
                ("52 1/2", "with the fraction's lower figure misread", RARE),
                ("621", "written in inches for feet", USUAL),
                ("4 5/16", "written in feet for inches", USUAL),
                ("2 19/508", "written in millimetres", RARER),
                ("20 95/254", "written in centimetres", RARER),
            },
        ),
        (  # 161/2 for 16 1/2; half an inch is the same from either mark; 08 is no figure
            "80 1/2",
            {
                ("16 1/2", "with whole number and fraction run together", USUAL),
                ("102 1/2", "with feet and inches swapped", RARER),
                ("80 1/4", "with the fraction's lower figure misread", RARE),
                ("81", "with the fraction's lower figure misread", RARE),
                ("966", "written in inches for feet", USUAL),
                ("6 17/24", "written in feet for inches", USUAL),
                ("3 43/254", "written in millimetres", RARER),
                ("31 88/127", "written in centimetres", RARER),
            },
        ),
    ],
)
def test_a_length_in_inches(length: str, meant: set[tuple[str, str, int]]) -> None:
    inches = sum(map(Fraction, length.split()), Fraction(0))
    found = {(one.length, one.words, one.rare) for one in misreadings(inches, Unit.INCH)}
    assert found == {
        *((inches + Fraction(more), words, rare) for more, words, rare in ANY),
        *((sum(map(Fraction, size.split())), words, rare) for size, words, rare in meant),
    }


def test_a_length_that_a_slip_would_have_left_as_it_is() -> None:
    """5 1/2 in has no feet to swap; 13/3 is no 1 3/3 run together."""
    for inches, slip in (("11/2", "swapped"), ("13/3", "run together")):
        assert not [one for one in misreadings(Fraction(inches), Unit.INCH) if slip in one.words]


def test_feet_written_as_inches_lose_less_than_six_inches() -> None:
    """10 in for 10 ft and what a foot has less than half of, or more of a foot before it."""
    for right, told in ((126, True), (127, False), (114, True), (113, False)):
        found = feet_without_inches(Fraction(10), Fraction(right), Unit.INCH)
        assert (found is not None) is told
        assert not found or found.words == "written in inches for feet, without its inches"


@pytest.mark.parametrize("unit", ["mm", "cm"])
def test_a_wall_in_the_wrong_unit_is_named_with_the_unit(unit: str) -> None:
    text = f"""{TRIM}room "R", trim base
  N: 150 in, left=in-corner, right=in-corner
  E: 100 {unit}, left=in-corner, right=in-corner
  S: 150 1/16 in, left=in-corner, right=in-corner
  W: 100 1/16 in, left=in-corner, right=in-corner
  diagonal N-E 180 1/4 in
"""
    (told,) = (one for one in trimlang.check(text).diagnostics if one.code == "T310")
    said = f"run E written in {unit}, 100 in in place of 100 {unit}: 8 ft 4 in instead"
    assert told.remedy == f"Most likely: {said}."


def test_a_length_in_millimetres() -> None:
    found = {(one.length / MM, one.words, one.rare) for one in misreadings(1050 * MM, Unit.MM)}
    assert found == {
        (2050, "read a metre too short", USUAL),
        (50, "read a metre too long", USUAL),
        (1150, "read 100 mm too short", USUAL),
        (950, "read 100 mm too long", USUAL),
        (1060, "read 10 mm too short", USUAL),
        (1040, "read 10 mm too long", USUAL),
        (10500, "written in centimetres", RARER),
        (105, "written with a zero too many", RARER),
        (26670, "written in inches", RARER),
        (2667, "written in centimetres for inches", RARER),
        (52500 / Fraction(127), "written in inches for centimetres", RARER),
        (5250 / Fraction(127), "written in inches for millimetres", RARER),
        (1500, "with two figures swapped", RARER),
        (1005, "with two figures swapped", RARER),
    }


def test_each_length_is_offered_once_and_none_beyond_a_wall() -> None:
    """A foot too long would leave less than nothing of 5 in; 1 1/2 in may be 1 in and 2/2 too."""
    for inches in (Fraction(5), Fraction(3, 2), Fraction(1200), Fraction(12)):
        lengths = [one.length for one in misreadings(inches, Unit.INCH)]
        assert len(lengths) == len({*lengths, inches}) - 1
        assert all(0 < one <= 1200 for one in lengths)
    assert 1 in lengths, "12 in may be feet for an inch"


def test_a_corner_that_was_meant_keeps_its_angle() -> None:
    text = f"""{TRIM}room "R", trim base
N: 10 ft, left=in, right=in(135 deg)
C: 34 in, left=in, right=out(135 deg)
E: 8 ft, left=out, right=in(90 deg)
S: 12 ft, left=in, right=in(90 deg)
W: 10 ft, left=in, right=in(90 deg)
"""
    (found,) = check_job(text).diagnostics
    (mend,) = mends(found, text.split("\n")[2], text.split("\n"))
    assert {edit.text for edit in mend.edits} == {"in-corner(135 deg)"}


def test_the_corner_of_a_mitre_of_45_degrees_needs_no_angle() -> None:
    sides = "left=in, right=in"
    text = f"""{TRIM}room "R", trim base
N: 12 ft, {sides}(45 deg)
E: 10 ft, {sides}
S: 12 ft, {sides}
W: 10 ft, {sides}
"""
    (found,) = (one for one in check_job(text).diagnostics if one.code == "T311")
    (mend,) = mends(found, text.split("\n")[found.span.line - 1], text.split("\n"))
    assert {edit.text for edit in mend.edits} == {"in-corner"}


@pytest.mark.parametrize(
    ("sides", "corners", "likely"),
    [
        (  # a square with one corner cut off by a wall at 30°
            ("100 in", "40 in", "65 3/8 in", "120 in", "100 in"),
            (30, 150, 90, 90, 90),
            "the corner of run A and run B: 30° is the mitre; the corner is 120°",
        ),
        (  # a hexagon
            ("50 in",) * 6,
            (30, 30, 120, 120, 120, 120),
            "all corners under 75° are written as mitres",
        ),
    ],
)
def test_a_mitre_written_for_a_corner_is_named(
    sides: tuple[str, ...], corners: tuple[int, ...], likely: str
) -> None:
    lines = [
        f"{name}: {side}, left=in, right=in({corner} deg)\n"
        for name, side, corner in zip("ABCDEF", sides, corners, strict=False)
    ]
    text = f'{TRIM}room "R", trim base\n{"".join(lines)}'
    (told,) = (one.remedy for one in check_job(text).diagnostics if one.code == "T311")
    assert likely in told
