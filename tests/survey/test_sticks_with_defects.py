"""Sticks in the shop with knots and splits: the plan lays pieces beside them."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.jobs import BASE, TWELVE_FEET
from trimlang.compiler import check_job, compile_job
from trimlang.diagnostics import Span
from trimlang.language.stick_facts import DefectKind
from trimlang.sheets.export.plan_json import plan_json
from trimlang.sheets.render.pages import render_sheets
from trimlang.stock.problem import Status
from trimlang.survey.sticks import Defect, FlawedStick, sound_parts

ROOM = 'room "R", trim base, open walk\n'
HERE = Span("x", 1, 1, 2)


def job(on_hand: str, walls: str, *, settings: str = "spare 0 %\n") -> str:
    return f"{BASE}\n{TWELVE_FEET}\non-hand base: {on_hand}\n{settings}{ROOM}{walls}"


def parts_of(on_hand: str) -> list[tuple[Fraction, Fraction]]:
    found = check_job(job(on_hand, "  N: 40 in, left=butt, right=butt\n"))
    assert not found.diagnostics
    rests = found.job.trims[0].rests
    assert all(one.part and one.length == one.part.end - one.part.start for one in rests)
    return [(one.part.start, one.part.end) for one in rests if one.part]


@pytest.mark.parametrize(
    ("on_hand", "parts"),
    [
        ("12 ft, knot 3 ft 2 in to 3 ft 4 in", [(0, 38), (40, 144)]),
        ("12 ft, knot 8 ft 8 in to 8 ft 10 in from the right end", [(0, 38), (40, 144)]),
        ("12 ft, split 0 in to 6 in from right, wane 0 in to 2 in", [(2, 138)]),
        ("100 in, dent 30 in to 50 in, stain 40 in to 60 in", [(0, 30), (60, 100)]),
        # A hair check: the blade, 1/8 in, takes more than that.
        ("100 in, check 50 in to 50 1/16 in", [(0, 50), (Fraction(401, 8), 100)]),
        ("2540 mm, KNOT 1270 mm to 1295.4 mm", [(0, 50), (51, 100)]),
    ],
)
def test_what_a_defect_leaves(on_hand: str, parts: list[tuple[Fraction, Fraction]]) -> None:
    assert parts_of(on_hand) == parts


places = st.tuples(st.integers(0, 960), st.integers(1, 200)).map(
    lambda at: Defect(DefectKind.KNOT, Fraction(at[0], 8), Fraction(min(at[0] + at[1], 960), 8))
)


@given(st.lists(places.filter(lambda one: one.start < one.end), max_size=4), st.integers(0, 3))
def test_no_part_has_a_defect_in_it_and_the_blade_passes_between_any_two(
    defects: list[Defect], eighths: int
) -> None:
    kerf = Fraction(eighths, 8)
    stick = FlawedStick(Fraction(120), tuple(defects), HERE)
    parts = sound_parts(stick, kerf)
    for part in parts:
        assert 0 <= part.start < part.end <= 120
        assert all(one.end <= part.start or part.end <= one.start for one in defects)
    for one, other in pairwise(parts):
        assert other.start - one.end >= kerf
    # Nothing more is lost than the defects, and the kerf where one is thinner than that.
    kept = sum(part.end - part.start for part in parts)
    assert kept >= 120 - sum(max(one.end - one.start, kerf) for one in defects)
    # Turned end for end, a stick without thin defects leaves the same parts.
    if all(one.end - one.start >= kerf for one in defects):
        turned = tuple(Defect(one.kind, 120 - one.end, 120 - one.start) for one in defects)
        mirrored = sound_parts(FlawedStick(Fraction(120), turned, HERE), kerf)
        assert [(120 - one.end, 120 - one.start) for one in reversed(mirrored)] == [
            (one.start, one.end) for one in parts
        ]


def test_pieces_are_laid_beside_the_knot_and_the_plan_is_proven() -> None:
    # 38 in and 104 in: one wall fits each part; across the knot both would fit one after another.
    walls = "  N: 90 in, left=butt, right=butt\n  E: 37 in, left=butt, right=butt\n"
    result = compile_job(job("12 ft, knot 38 in to 40 in", walls))
    (plan,) = result.plans
    assert (plan.cost, plan.status) == (0, Status.PROVEN)
    laid = {
        place.piece: (stick.part.start + place.start, stick.part.start + place.end)
        for stick in plan.sticks
        if stick.part
        for place in stick.places
    }
    assert laid == {"R-N-base": (40, 130), "R-E-base": (0, 37)}


def test_a_wall_that_only_fits_across_the_knot_is_bought() -> None:
    result = compile_job(job("12 ft, knot 70 in to 72 in", "  N: 100 in, left=butt, right=butt\n"))
    (plan,) = result.plans
    assert plan.cost == Fraction("17.40")
    assert not any(stick.on_hand for stick in plan.sticks)


def test_a_price_is_shared_by_the_parts() -> None:
    found = check_job(job("12 ft at 5.00, knot 44 in to 45 in", "  N: 40 in\n"))
    prices = [one.price for one in found.job.trims[0].rests]
    assert sum(prices) == 5
    assert prices == [Fraction("1.53"), Fraction("3.47")]  # 44 and 99 of 143 in


def test_the_sheets_say_what_to_cut_out() -> None:
    text = job("12 ft, knot 38 in to 40 in", "  N: 90 in, left=butt, right=butt\n")
    pages = render_sheets(compile_job(text))
    page = next(text for name, text in pages.items() if "stick-layouts" in name)
    assert "cut out knot 38 in to 40 in; this is 40 in to 144 in" in page.replace("\u00a0", " ")
    assert plan_json(compile_job(text))
