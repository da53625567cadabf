"""Every angle near the ends of its range gives pieces or diagnostics, never a failure."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from tests.jobs import walls
from trimlang.compiler import check_job
from trimlang.lengths.angles import saw_reading

ENDS = (0, 45, 90, 135, 180, 270, 360)
near = st.builds(
    lambda end, off, places: f"{max(end + Decimal(off).scaleb(-places), Decimal(0)):f}",
    st.sampled_from(ENDS),
    st.integers(-30, 30),
    st.integers(0, 6),
)
steps = st.sampled_from(["0.001", "0.1", "1/4", "1/2", "1", "2", "4.9", "5"])
WAYS = (
    "N: 40 in, left=level, right=plumb, rising right {} deg",
    "N: 40 in, left=plumb, right=level, rising left {} deg",
    "N: 40 in, left=in-corner({} deg), right=butt",
    "N: 40 in, left=butt, right=out-corner({} deg)",
    "N: 40 in, left=butt, right=rake, rising right {} deg\n  E: 40 in, left=rake, right=butt",
    "N: 40 in, left=plumb, right=in-corner({} deg), rising right 36 deg",
    "N: 4 ft radius, left=butt, right=butt, curves in {} deg",
)
CROWN = (
    "trim crown: 11/16 in thick, 3 5/8 in wide, spring {} deg\nstock crown: 12 ft at 21.00\n"
    'room "A", trim crown, open walk\n  N: 90 in, left=in-corner({} deg), right=out-corner({} deg)'
)
ATTIC = (
    "trim crown: 11/16 in thick, 3 5/8 in wide, spring {} deg\nstock crown: 12 ft at 21.00\n"
    'room "A", trim crown, open walk\n  N: 90 in, left=butt, right=in-corner({} deg)\n'
    "  E: 90 in, left=in-corner, right=butt, ceiling rising right {} deg"
)


@given(st.sampled_from(WAYS), near, steps)
@example(WAYS[0], "0.2", "1/2")
@example(WAYS[0], "0.4", "1")
@example(WAYS[1], "0.000001", "0.001")
def test_a_wall_at_any_angle_is_read_or_told_of(way: str, angle: str, step: str) -> None:
    settings = f"\nsaw: reads to {step} deg"
    result = check_job(walls(f"  {way.format(angle)}", settings=settings))
    assert result.diagnostics or result.pieces


@pytest.mark.parametrize("thick", ["1199 in", "1/64 in"])
def test_unlike_trims_of_any_thickness_are_read_or_told_of(thick: str) -> None:
    """Of two so unlike thicknesses one mitre runs all but along its piece."""
    result = check_job(
        f"trim old: {thick} thick, 7 1/4 in tall\nstock old: 12 ft at 17.40\n"
        + walls(
            "  N: 40 in, left=butt, right=in-corner(mitre)\n"
            "  E: 31 in, right=out-corner(90 deg, mitre)\n  S: 30 in, trim old, right=butt"
        )
    )
    assert {one.code for one in result.diagnostics} & {"T404", "T224"}


@given(st.sampled_from([CROWN, ATTIC]), st.tuples(near, near, near), steps)
def test_crown_at_any_angle_is_read_or_told_of(
    job: str, angles: tuple[str, str, str], step: str
) -> None:
    result = check_job(f"saw: reads to {step} deg\n{job.format(*angles)}\n")
    assert result.diagnostics or result.pieces


@pytest.mark.parametrize("step", [Fraction(1, 1000), Fraction(1, 2), Fraction(7, 3), Fraction(5)])
def test_a_saw_reading_never_lies_along_the_piece(step: Fraction) -> None:
    for tenths in range(890, 900):
        for steeper in (False, True):
            setting = saw_reading(Fraction(tenths, 10), step, steeper=steeper)
            assert setting < 90
            assert setting % step == 0
