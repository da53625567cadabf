"""A sprung fit, worked by hand on a tape of sixteenths."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest

from trimlang.joinery.piece import Piece


@pytest.mark.parametrize(
    ("wall", "spring", "length"),
    [
        # 40 1/32 + 1/8 = 40 5/32, on the tape 40 1/8
        ("40 1/32", "1/8", Fraction(321, 8)),
        ("40", "1/8", Fraction(321, 8)),
        # a spring of less than a step: 40 1/64 + 1/32 = 40 3/64 lies below the next mark, and
        # 40 would be short
        ("40 1/64", "1/32", Fraction(641, 16)),
        # 40 is on a mark and fits; 40 3/64 + 1/32 = 40 5/64 reaches the next
        ("40", "1/32", Fraction(40)),
        ("40 3/64", "1/32", Fraction(641, 16)),
    ],
)
def test_a_coped_piece_is_sprung_by_at_most_what_the_file_says(
    wall: str, spring: str, length: Fraction, pieces: Callable[..., dict[str, Piece]]
) -> None:
    run = f"N: {wall} in, left=in-corner cope, right=butt"
    piece = pieces(run, settings=f"round cope up by {spring} in")["N"]
    assert piece.length == length
    assert piece.rounding.by == length - piece.rounding.exact >= 0


@pytest.mark.parametrize(
    ("left", "right", "row", "way"),
    [
        ("out-corner", "butt", "out-corner", "up"),
        ("in-corner", "butt", "in-corner", "down"),
        ("butt", "butt", "butt", "down"),
        ("open", "butt", "open", "nearest"),
        ("return", "in-corner", "return", "nearest"),
    ],
)
def test_a_piece_tells_what_decided_and_which_way(
    left: str, right: str, row: str, way: str, pieces: Callable[..., dict[str, Piece]]
) -> None:
    rounding = pieces(f"N: 40 1/32 in, left={left}, right={right}")["N"].rounding
    assert (rounding.row, rounding.direction) == (row, way)
