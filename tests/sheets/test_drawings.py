"""Stick layouts, saw sheet, floor plan and stock order against the plan itself."""

from __future__ import annotations

import csv
from fractions import Fraction
from io import StringIO

import pytest

from tests.sheets.jobs import compiled, house, small
from trimlang.sheets.counter import order
from trimlang.sheets.floor import floor_plan
from trimlang.sheets.mates import mates
from trimlang.sheets.order_csv import order_csv
from trimlang.sheets.pen import Pen
from trimlang.sheets.saw import saw_sheet
from trimlang.sheets.sticks import WIDE, stick_layouts
from trimlang.sheets.walls import misclosure, walls
from trimlang.sheets.words import words_in

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
    assert len({group.setting for group in sheet.groups}) == len(sheet.groups)
    assert "left end of BB-E-base" in sheet.copes


def test_mates_go_both_ways() -> None:
    other = {"left": "right", "right": "left"}
    met = mates(house())
    assert met
    for (piece, side), mate in met.items():
        assert met[mate, other[side]] == piece


@pytest.mark.parametrize(("corner", "sides"), [(90, 4), (120, 6), (135, 8), (108, 5)])
def test_a_regular_room_closes(corner: int, sides: int) -> None:
    runs = "\n".join(
        f"  w{n}: 60 in, left=in-corner({corner} deg), right=in-corner({corner} deg)"
        for n in range(sides)
    )
    job = compiled(
        f'trim b: 1/2 in thick\nstock b: 12 ft at 9\nroom "Ring" as RI, trim b\n{runs}\n'
    ).job
    laid = walls(job.rooms[0])
    assert misclosure(laid) == pytest.approx(0, abs=1e-9)
    assert all(wall.turn == 180 - corner for wall in laid)


def test_an_outside_corner_turns_left() -> None:
    (room,) = small().job.rooms
    laid = walls(room)
    assert laid[0].turn == pytest.approx(-88.7)
    assert laid[1].turn == 90


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
    assert {row["what"] for row in rows} == {"base", "shoe", "nails", "caulk", "paint"}
    assert sum(int(row["sticks"]) for row in rows if row["kind"] == "trim") >= sum(
        len(plan.sticks) for plan in house().plans
    )
