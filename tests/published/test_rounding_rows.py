"""Every row of the rounding rule, each in a job in which that row decides.

Which way each goes: common practice, no source, as docs/language.md tells it ("Rounding").  A
break of any row changes a number here.
"""

from fractions import Fraction

import pytest

from tests.every import every
from tests.jobs import CASE, walls
from trimlang.compiler import check_job
from trimlang.joint_row import WHY_ROUNDED

CASE_SOLD = f"{CASE}\nstock case: 8 ft at 6.10"
UP, NEAREST, DOWN = "up", "nearest", "down"

# lengths lie 3/64 in above a mark: up adds 1/64, the nearest is the same, down takes 3/64;
# and 1/64 above one, where up and the nearest part
ROWS = [
    ("out-corner", UP, "left=out-corner(90 deg), right=in-corner(90 deg)"),
    ("open", NEAREST, "left=open, right=in-corner(90 deg)"),
    ("return", NEAREST, "left=return, right=in-corner(90 deg)"),
    ("cope", DOWN, "left=butt, right=in-corner(90°) cope\n  Z: 5 ft, left=in-corner, right=butt"),
    ("splice", NEAREST, "left=butt, right=splice\n  Z: 50 in, left=splice, right=butt"),
    ("in-corner", DOWN, "left=in-corner(90 deg), right=butt"),
    ("butt", DOWN, "left=butt, right=butt"),
    ("rake", NEAREST, "left=butt, right=rake\n  Z: 5 ft, left=rake, right=plumb, rising right 30°"),
    ("level", NEAREST, "left=level, right=butt, rising right 45 deg"),
    ("plumb", DOWN, "left=plumb, right=plumb, rising right 45 deg"),
]  # fmt: skip


def rounded(exact: Fraction, way: str) -> Fraction:
    sixteenths = exact * 16
    below = sixteenths.numerator // sixteenths.denominator
    over = sixteenths - below
    up = over > 0 and (way == UP or (way == NEAREST and over >= Fraction(1, 2)))
    return Fraction(below + up, 16)


@every("over", ["1/64", "3/64"])
@every("row, way, ends", ROWS)
def test_a_row_of_the_rounding_rule(row: str, way: str, ends: str, over: str) -> None:
    settings = "saw: reaches 60 deg\ncorners: in-corner gap 1 in"
    result = check_job(walls(f"  A: 40 {over} in, {ends}", settings=settings))
    assert result.ok, [one.message for one in result.diagnostics]
    piece = next(one for one in result.pieces if one.run == "A")
    assert piece.rounding.row == row
    assert piece.length == rounded(piece.rounding.exact, way)


@pytest.mark.parametrize("over", ["1/64", "3/64"])
def test_the_row_of_casings(over: str) -> None:
    line = (
        "  A: 40 in, left=butt, right=butt\n" + f"  opening 32 {over} in, casing case, height 80 in"
    )
    pieces = check_job(walls(line, settings=CASE_SOLD)).pieces
    head = next(one for one in pieces if one.kind.value == "head")
    assert head.rounding.row == "head"
    # 32 and the over, two reveals of 3/16 and two widths of 2 1/4
    exact = 32 + Fraction(over) + Fraction(3, 8) + Fraction(9, 2)
    assert (head.rounding.exact, head.length) == (exact, rounded(exact, NEAREST))


def test_no_row_is_left_out() -> None:
    assert {row for row, _, _ in ROWS} | {"head"} == set(WHY_ROUNDED)
