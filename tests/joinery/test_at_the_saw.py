"""The saw as it is: what cannot stand lies flat, and what is too wide for it is told."""

from __future__ import annotations

import pytest

from trimlang.compiler import Result, check_job
from trimlang.joinery.at_the_saw import AtSaw, Lay, both_ends, saw_for

TRIMS = """
trim skirt: 3/4 in thick, 9 1/4 in tall
trim crown: 11/16 in thick, 7 1/4 in wide, spring 38 deg
stock skirt: 12 ft at 31
stock crown: 12 ft at 31
"""
WALLS = """
room "R" as R, trim {trim}, open walk
  N: 60 in, left=in-corner(90 deg), right=out-corner(90 deg)
"""


def job(saw: str, trim: str = "skirt") -> Result:
    return check_job(f"saw: {saw}\n{TRIMS}{WALLS.format(trim=trim)}")


def ends(result: Result) -> tuple[AtSaw, AtSaw]:
    (piece,) = result.pieces
    return both_ends(piece, saw_for(result.job.trim(piece.trim), result.job.settings))


def codes(result: Result) -> list[str]:
    return [one.code for one in result.diagnostics if one.code != "T214"]


def test_a_skirt_stands_where_nothing_is_said_of_the_saw() -> None:
    left, right = ends(job("kerf 1/8 in"))
    assert (left.way, right.way) == (Lay.STANDING, Lay.STANDING)
    assert (left.mitre, left.bevel) == (45, 0)


@pytest.mark.parametrize(
    ("bevels", "fences", "tilts"),
    [
        # an inside left end leans the blade right with its top at the fence, and an outside right
        ("left", ("bottom edge", "bottom edge"), ("left", "left")),
        ("right", ("top edge", "top edge"), ("right", "right")),
        ("both", ("top edge", "top edge"), ("right", "right")),
    ],
)
def test_a_skirt_too_tall_to_stand_lies_flat_as_the_blade_can_lean(
    bevels: str, fences: tuple[str, str], tilts: tuple[str, str]
) -> None:
    result = job(f"stands 5 1/2 in, bevels {bevels}")
    left, right = ends(result)
    assert (left.way, right.way) == (Lay.FLAT, Lay.FLAT)
    assert (left.mitre, left.bevel, right.bevel) == (0, 45, 45)
    assert (left.pose.fence, right.pose.fence) == fences
    assert (left.tilt, right.tilt) == tilts
    assert codes(result) == []


def test_a_skirt_wider_than_the_saw_is_told_once() -> None:
    result = job("stands 5 1/2 in, crosscuts 8 in")
    assert codes(result) == ["T414"]
    assert "9 1/4 in" in result.diagnostics[0].message
    assert codes(job("stands 5 1/2 in, crosscuts 9 1/4 in")) == []
    assert codes(job("stands 9 1/4 in, crosscuts 8 in")) == []


def test_a_crown_too_wide_to_lie_may_be_nested() -> None:
    # flat the cut is 7 1/4 ÷ cos 31 5/8° = 8.51 in; nested it stands 7 1/4 × cos 38° = 5.71 in tall
    # and reaches 7 1/4 × sin 38° ÷ cos 45° = 6.31 in over the table
    assert codes(job("crosscuts 8 in, stands 6 in", "crown")) == []
    assert codes(job("crosscuts 8 in, stands 5 1/2 in", "crown")) == ["T414"]
    assert codes(job("crosscuts 6 in, stands 6 in", "crown")) == ["T414"]
