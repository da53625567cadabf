"""Stick layouts, saw sheet, floor plan and stock order against the plan itself."""

from __future__ import annotations

import csv
import re
from fractions import Fraction
from io import StringIO

import pytest

from tests.sheets.jobs import house, odd, small
from trimlang.sheets.counter import order
from trimlang.sheets.floor import floor_plan
from trimlang.sheets.mates import mates
from trimlang.sheets.order_csv import order_csv
from trimlang.sheets.pen import Pen
from trimlang.sheets.plan_paper import walls
from trimlang.sheets.saw import saw_sheet
from trimlang.sheets.sticks import WIDE, stick_layouts
from trimlang.sheets.words import words_in
from trimlang.survey.outline import outline

PEN = Pen(words_in("en"), "$")


def test_every_piece_is_on_one_stick() -> None:
    rows = [row.id for trim in stick_layouts(house(), PEN) for s in trim.sticks for row in s.rows]
    assert sorted(rows) == sorted(piece.id for piece in house().pieces)


def test_bars_stay_on_the_paper() -> None:
    for trim in stick_layouts(house(), PEN):
        for stick in trim.sticks:
            assert float(stick.wide) <= WIDE
            xs = [float(p.split(",")[0]) for block in stick.blocks for p in block.points.split()]
            assert min(xs) >= 0
            assert max(xs) <= float(stick.wide) + 0.01


def test_saw_sheet_makes_both_ends_of_every_piece_once() -> None:
    sheet = saw_sheet(house(), PEN)
    made = [
        end for g in sheet.groups for stroke in g.strokes for end in stroke.ends.split(", and ")
    ]
    wanted = [f"{side} end of {p.id}" for p in house().pieces for side in ("left", "right")]
    assert sorted(made) == sorted(wanted)
    assert int(sheet.changes) == len(sheet.groups) - 1
    assert len({(group.lay, group.setting) for group in sheet.groups}) == len(sheet.groups)
    assert "left end of BB-E-base" in sheet.copes


def test_saw_sheet_keeps_standing_flat_and_crown_apart() -> None:
    lays = [group.lay for group in saw_sheet(odd(), PEN).groups]
    assert lays[0] == ""
    assert [bool(lay) for lay in lays[1:]] == [True] * (len(lays) - 1)
    assert lays == sorted(lays, key=lambda lay: (lay.startswith("crown"), lay != "", lay))


def test_mates_go_both_ways() -> None:
    other = {"left": "right", "right": "left"}
    met = mates(house())
    assert met
    for (piece, side), mate in met.items():
        assert met[mate, other[side]] == piece


def test_the_walk_turns_right_on_paper() -> None:
    (room,) = small().job.rooms
    laid = walls(room, outline(room, small().job.trims))
    assert [wall.start for wall in laid[1:]] == [wall.end for wall in laid[:-1]]
    assert laid[0].end[1] == 0
    assert laid[1].end[1] < 0  # an outside corner turns left, which is up on the page
    assert laid[2].end[0] > laid[2].start[0]


def test_drawings_stay_on_the_paper() -> None:
    for plan in floor_plan(house(), PEN):
        for line in plan.lines:
            assert 0 <= float(line.x1) <= float(plan.wide)
            assert 0 <= float(line.y2) <= float(plan.tall)


def test_order_adds_up() -> None:
    said = order(house(), PEN)
    whole = house().cost + sum((supply.cost for supply in house().supplies), Fraction(0))
    assert said.total == PEN.money(whole)
    assert said.trim_cost == PEN.money(house().cost)


@pytest.mark.parametrize(
    ("amount", "text"),
    [
        (Fraction(1234567, 100), "$12,345.67"),
        (Fraction(-5), "-$5.00"),
        (Fraction(1, 3), "$0.33"),
    ],
)
def test_money(amount: Fraction, text: str) -> None:
    assert PEN.money(amount) == text


@pytest.mark.parametrize(
    ("inches", "text"),
    [
        (Fraction(233, 8), "29 1/8 in"),
        (Fraction(9, 16), "9/16 in"),
        (Fraction(0), "0 in"),
        (Fraction(-1, 8), "-1/8 in"),
        (Fraction(1, 3), "11/32 in"),
        (Fraction(5), "5 in"),
    ],
)
def test_lengths(inches: Fraction, text: str) -> None:
    assert PEN.length(inches) == text


def test_csv_of_the_order() -> None:
    rows = list(csv.DictReader(StringIO(order_csv(house()))))
    cost = sum(Fraction(row["cost"]) for row in rows if row["kind"] == "trim" and row["cost"])
    assert cost == house().cost
    assert {row["what"] for row in rows} == {"base", "shoe", "nails", "caulk", "filler", "paint"}
    assert sum(int(row["sticks"]) for row in rows if row["kind"] == "trim") >= sum(
        len(plan.sticks) for plan in house().plans
    )


def test_waste_by_kind_is_all_that_the_cut_sticks_lose() -> None:
    for plan in house().plans:
        lost = plan.lost
        length = sum(stick.length for stick in plan.sticks)
        assert lost.offcut + lost.scrap == sum(stick.offcut for stick in plan.sticks)
        kept = length - lost.kerf - lost.ends - lost.offcut - lost.scrap
        pieces = sum(piece.length for piece in house().pieces if piece.trim == plan.trim)
        # neighbours that share a mitre lie over each other: the pieces are longer than the wood
        assert kept <= pieces
        assert pieces - kept < len(plan.sticks) * 12


def test_order_says_what_the_fewest_sticks_would_cost() -> None:
    base, shoe = order(house(), PEN).trims
    plan = next(plan for plan in house().plans if plan.trim == "base")
    told = re.search(r"(\d+) instead of (\d+) .* for \$([\d.]+), \$([\d.]+) more", base.fewest)
    assert told
    fewer, bought, cost, more = (Fraction(figure) for figure in told.groups())
    assert fewer < bought == sum(line.sticks for line in plan.bought if not line.on_hand)
    assert cost - more == plan.cost
    assert shoe.fewest.startswith("this plan: ")
    saved, plain = (Fraction(sum_of) for sum_of in re.findall(r"\$([\d.]+)", base.saves))
    assert plain == plan.plain_cost == plan.cost + saved
    assert "scrap " in base.waste
