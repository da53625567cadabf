"""Prices as a yard gives them: a stick, a pack, a foot or a metre."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.jobs import BASE
from trimlang.compiler import check_job

HEAD = f"{BASE}\n"
ROOM = 'room "R", trim base, ends in, open walk\nN 40 in, left=butt, right=butt\n'


def sold(stock: str) -> list[tuple[Fraction, Fraction, int]]:
    result = check_job(f"{HEAD}stock base: {stock}\n{ROOM}")
    assert not result.diagnostics
    return [(one.length / 12, one.price, one.pack) for one in result.job.trims[0].offers]


@pytest.mark.parametrize(
    ("short", "long"),
    [
        ("8 ft, 12 ft at 1.45 a foot", "8 ft at 11.60, 12 ft at 17.40"),
        ("8 ft, 12 ft at 1.45 per ft", "8 ft at 11.60, 12 ft at 17.40"),
        ("pack of 10 12 ft at 1.20 a foot", "pack of 10 12 ft at 144"),
        ("3 m at 4.05 a metre", "3 m at 12.15"),
        ("90 in at 1.45 a foot", "90 in at 10.88"),
        ("8 ft at 9.00, 12 ft, 16 ft at 1.45 a foot", "8 ft at 9, 12 ft at 17.40, 16 ft at 23.20"),
        ("8 ft at most 4, 12 ft at 1 a foot", "8 ft at 8 at most 4, 12 ft at 12"),
    ],
)
def test_a_price_a_foot_or_a_metre(short: str, long: str) -> None:
    assert sold(short) == sold(long)


@pytest.mark.parametrize("stock", ["8 ft, 12 ft at 17.40", "8 ft", "12 ft at 1.45 a foot, 8 ft"])
def test_a_price_for_one_length_says_nothing_of_another(stock: str) -> None:
    found = check_job(f"{HEAD}stock base: {stock}\n{ROOM}").diagnostics
    assert [one.code for one in found] == ["T254"]
