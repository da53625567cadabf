"""Marks on sticks: each one is on the tape, and what lies between is never less than the saw takes.

Geometry: a blade of thickness k swung by m takes k ÷ cos m along the stick, and ends that lean
alike lie within each other by thickness × tan m.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from math import cos, radians, tan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.jobs import BASE, TWELVE_FEET
from trimlang.compiler import compile_job
from trimlang.planning.ask import ask
from trimlang.stock.planner import QUICK

JOINTS = ("butt", "in-corner(90 deg)", "out-corner(90 deg)", "in-corner(120 deg)")


@st.composite
def jobs(draw: st.DrawFn) -> str:
    unit = draw(st.sampled_from(["in", "mm"]))
    kerf = draw(st.sampled_from(["3/32 in", "1/8 in", "3.2 mm", "0 in"]))
    off = draw(st.sampled_from(["0 in", "5 mm", "1/4 in"]))
    lines = [
        f"  R{number}: {draw(st.integers(160, 900))}/16 in, "
        f"left={draw(st.sampled_from(JOINTS))}, right={draw(st.sampled_from(JOINTS))}\n"
        "  bare 3 in\n"
        for number in range(draw(st.integers(1, 6)))
    ]
    return (
        f"unit {unit}\n{BASE}\n"
        f"saw: kerf {kerf}, squares off {off}\nspare 0 %\n{TWELVE_FEET}\n"
        f'room "Den", trim base, open walk\n{"".join(lines)}'
    )


@given(jobs())
def test_every_mark_is_on_the_tape_and_no_piece_comes_short(text: str) -> None:
    result = compile_job(text, effort=QUICK)
    step = result.job.settings.tape_step
    assert step == (Fraction(5, 127) if result.job.settings.unit == "mm" else Fraction(1, 16))
    lengths = {piece.id: piece.length for piece in result.pieces}
    for plan in result.plans:
        question = ask(result.job, result.job.trim(plan.trim), result.pieces)
        for stick in plan.sticks:
            for place in stick.places:
                assert (place.start / step).denominator == (place.end / step).denominator == 1
                assert 0 <= place.end - place.start - lengths[place.piece] < step
            for one, other in pairwise(stick.places):
                right, left = question.ends[one.piece][1], question.ends[other.piece][0]
                steepest = max(right.exact, right.setting, left.exact, left.setting)
                sawn = float(result.job.settings.kerf) / cos(radians(steepest))
                alike = {right.lean, left.lean} in ({"left"}, {"right"})
                nested = min(right.inset, left.inset) if alike else 0
                assert float(other.start - one.end) >= sawn - float(nested) - 1e-9
            last = stick.places[-1].end
            assert last + stick.squared + stick.offcut <= stick.length
            assert (stick.offcut / step).denominator == 1


@pytest.mark.parametrize(
    ("kerf", "passes"),
    [("1/8 in", True), ("3/32 in", False)],
    ids=["a kerf on a mark", "a kerf between marks leaves 1/32 in on the next piece"],
)
def test_one_pass_makes_both_ends_where_it_leaves_nothing_to_shave(kerf: str, passes: bool) -> None:
    text = (
        f"{BASE}\nsaw: kerf {kerf}\nspare 0 %\n"
        f'{TWELVE_FEET}\nroom "Den", trim base, open walk\n'
        "  A: 40 in, left=butt, right=butt\n  bare 3 in\n  B: 40 in, left=butt, right=butt\n"
    )
    (stick,) = compile_job(text, effort=QUICK).plans[0].sticks
    one, other = stick.places
    assert other.start - one.end == Fraction(1, 8)
    assert other.shared is passes


def test_parallel_mitres_lie_within_each_other_to_the_next_mark() -> None:
    """1/8 × √2 − 9/16 = −0.3857 in; the next mark that leaves enough is −3/8 in."""
    text = (
        f"{BASE}\nsaw: kerf 1/8 in\nspare 0 %\n"
        f'{TWELVE_FEET}\nroom "Den", trim base, open walk\n'
        "  A: 50 in, left=butt, right=in-corner(90 deg)\n  bare 3 in\n"
        "  B: 40 in, left=out-corner(90 deg), right=butt, taken point\n"
    )
    (stick,) = compile_job(text, effort=QUICK).plans[0].sticks
    one, other = stick.places
    assert 0.125 / cos(radians(45)) - 0.5625 * tan(radians(45)) <= -0.375
    assert other.start - one.end == Fraction(-3, 8)
    assert other.shared


def test_what_fits_between_marks_only_is_told_to_find_no_stick() -> None:
    """2543 mm are 100.118 in: 50 + 3/32 + 50 in are less, but not in sixteenths."""
    text = (
        f"{BASE}\nsaw: kerf 3/32 in\nspare 0 %\n"
        'stock base: 2543 mm at 10 at most 1\nroom "Den", trim base, open walk\n'
        "  A: 50 in, left=butt, right=butt\n  bare 3 in\n  B: 50 in, left=butt, right=butt\n"
    )
    (told,) = compile_job(text, effort=QUICK).diagnostics
    assert told.code == "T501"
    assert told.message.endswith("1 piece of 4 ft 2 in finds no stick")
