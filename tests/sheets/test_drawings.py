"""Stick layouts, saw sheet, floor plan and stock order against the plan itself."""

from __future__ import annotations

import csv
import re
from dataclasses import replace
from fractions import Fraction
from io import StringIO
from itertools import combinations, pairwise
from math import cos, hypot, radians, sin
from pathlib import Path

import pytest

from tests.jobs import BASE, TWELVE_FOR_TEN
from tests.sheets.jobs import compiled, house, odd, small
from trimlang.compiler import Result
from trimlang.lengths.tape import Unit
from trimlang.sheets.content.floor_plan import floor_plan
from trimlang.sheets.content.mates import mates
from trimlang.sheets.content.order_reasons import TrimReasons, order_reasons
from trimlang.sheets.content.proofs import cost_proofs
from trimlang.sheets.content.saw_sheet import saw_sheet
from trimlang.sheets.content.stick_layouts import WIDE, stick_layouts
from trimlang.sheets.content.stock_order import order
from trimlang.sheets.drawing.lettering import SIZES, Wanted, letter
from trimlang.sheets.drawing.plan_scale import walls
from trimlang.sheets.drawing.typeface import run
from trimlang.sheets.export.order_csv import order_csv
from trimlang.sheets.export.plan_json import least_words
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.quantities import Pen
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
        end.partition(", piece ")[0]
        for g in sheet.groups
        for stroke in g.strokes
        for end in stroke.ends.split(", and ")
    ]
    wanted = [f"{side} end of {p.id}" for p in house().pieces for side in ("left", "right")]
    assert sorted(made) == sorted(wanted)
    assert int(sheet.changes) == len(sheet.groups) - 1
    # a setting follows itself nowhere: it is visited again only after another
    kinds = [(group.lay, group.setting) for group in sheet.groups]
    assert all(one != after for one, after in pairwise(kinds))
    # W2 is 6 11/16 in, hard to hold: the cope of its corner falls on N
    assert "left end of BB-N-base" in sheet.copes


def test_saw_sheet_keeps_standing_flat_and_crown_apart() -> None:
    lays = [group.lay for group in saw_sheet(odd(), PEN).groups]
    assert lays[0] == ""
    assert [bool(lay) for lay in lays[1:]] == [True] * (len(lays) - 1)
    order = ["", "standing", "top edge", "outer edge", "wall edge", "ceiling edge"]
    where = [next(at for at in reversed(range(6)) if order[at] in lay) for lay in lays]
    assert [at > 3 for at in where] == sorted(at > 3 for at in where)
    assert [at for at in where if at < 4] == sorted(at for at in where if at < 4)


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
        (Fraction(1, 3), "5/16 in"),
        (Fraction(5), "5 in"),
    ],
)
def test_lengths(inches: Fraction, text: str) -> None:
    assert PEN.length(inches) == text


def test_csv_of_the_order() -> None:
    rows = list(csv.DictReader(StringIO(order_csv(house()))))
    cost = sum(Fraction(row["cost"]) for row in rows if row["kind"] == "trim" and row["cost"])
    assert cost == house().cost
    trims = {plan.trim for plan in house().plans}
    assert {row["what"] for row in rows} == {*trims, "nails", "caulk", "filler", "paint"}
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


def told(reasons: TrimReasons) -> dict[str, str]:
    return dict(reasons.terms)


def left_open() -> Result:
    """The house as if less were known of other places for its joints."""
    first, second, *others = house().plans
    open_yet = (replace(plan, anywhere=plan.cost - 2) for plan in (first, second))
    return replace(house(), plans=(*open_yet, *others))


def test_order_says_what_joints_elsewhere_could_save() -> None:
    base, plan = order_reasons(left_open(), PEN).trims[0], left_open().plans[0]
    saves = re.search(r"as shown: .* is not known: \$([\d.]+) at most", told(base)["price"])
    assert saves
    assert 0 < Fraction(saves[1]) < plan.cost


def test_all_trims_together_claim_no_more_than_each() -> None:
    said = order_reasons(left_open(), PEN)
    known = r"known: \$([\d.]+) at most"
    saves = [re.search(known, told(one)["price"]) for one in said.trims]
    open_yet = sum(Fraction(found[1]) for found in saves if found)
    together = re.search(known, said.together)
    assert together
    assert Fraction(together[1]) == open_yet > 0
    assert Fraction(said.bound[1:]) == house().cost - open_yet
    assert "no plan of these pieces costs less" in least_words(left_open())
    assert "wherever the long walls are pieced together" in cost_proofs(small(), PEN).together


def test_the_shares_of_the_wood_are_all_of_it() -> None:
    for plan, reasons in zip(house().plans, order_reasons(house(), PEN).trims, strict=True):
        shares = [Fraction(one.percent.removesuffix(" %")) for one in reasons.shares]
        assert abs(sum(shares) - 100) < Fraction(len(shares), 10)
        lengths = {one.what: one.length for one in reasons.shares}
        assert lengths["sticks left whole"] == PEN.run_of(sum(plan.whole_sticks))


def test_order_says_what_the_fewest_sticks_would_cost() -> None:
    base, shoe, *_ = map(told, order_reasons(house(), PEN).trims)
    fewest = "as few sticks as can be"
    plan = next(plan for plan in house().plans if plan.trim == "base")
    found = re.search(r"(\d+) instead of (\d+) .* cost \$([\d.]+), \$([\d.]+) more", base[fewest])
    assert found
    fewer, bought, cost, more = (Fraction(figure) for figure in found.groups())
    assert fewer < bought == sum(line.sticks for line in plan.bought if not line.on_hand)
    assert cost - more == plan.cost
    assert shoe[fewest].startswith("This order: ")
    sums = re.findall(r"\$([\d.]+)", base["the usual way instead"])
    plain, saved = (Fraction(sum_of) for sum_of in sums)
    assert plain == plan.plain_cost == plan.cost + saved


def test_order_tells_a_trim_as_a_yard_sells_it() -> None:
    base, shoe, crown, case = order(house(), PEN).trims
    assert (base.section, base.species, base.finish) == (
        "9/16 in thick, 5 1/4 in tall",
        "mdf",
        "primed",
    )
    assert (shoe.species, shoe.finish) == ("pine", "")
    assert crown.section == "11/16 in thick, 3 5/8 in wide, spring 38°"
    assert case.section.endswith("2 1/4 in wide")


def test_goods_are_what_the_lines_of_the_order_come_to() -> None:
    said = order(house(), PEN)
    lines = [line for trim in said.trims for line in trim.lines] + list(said.supplies)
    assert PEN.money(sum((Fraction(line.cost[1:]) for line in lines), Fraction(0))) == said.goods
    each = [(Fraction(line.count) * Fraction(line.each[1:]), line.cost) for line in lines]
    assert [PEN.money(cost) for cost, _ in each] == [cost for _, cost in each]


ALCOVE = f"""\
job "Alcove"
{BASE}
{TWELVE_FOR_TEN}
room "Room with alcove" as RA, trim base
  N1: 8 ft, left=in-corner, right=out-corner
  N2: 3 1/2 in, left=out-corner, right=in-corner
  N3: 3 1/2 in, left=in-corner, right=in-corner
  N4: 3 1/2 in, left=in-corner, right=out-corner
  N5: 8 ft, left=out-corner, right=in-corner
  E: 12 ft, left=in-corner, right=in-corner
  S1: 7 ft 3 1/2 in, left=in-corner, right=in-corner
  S2: 3 1/2 in, left=in-corner, right=out-corner
  S3: 3 1/2 in, left=out-corner, right=out-corner
  S4: 3 1/2 in, left=out-corner, right=in-corner cope
  S5: 8 ft 8 1/2 in, left=in-corner, right=in-corner
  W: 12 ft, left=in-corner, right=in-corner
"""
BAY = Path(__file__).resolve().parents[2] / "examples" / "bay.trim"


@pytest.mark.parametrize("job", [ALCOVE, BAY.read_text("utf-8")], ids=["alcove", "bay"])
def test_names_on_the_plan_lie_on_nothing(job: str) -> None:
    shapely = pytest.importorskip("shapely")
    result = compiled(job)
    (plan,) = floor_plan(result, PEN)
    (room,) = result.job.rooms
    said = {label.text for label in plan.labels if label.look == "run"}
    for wall in room.runs:  # with its length where both fit along the wall
        assert {wall.label, f"{wall.label} {PEN.length(wall.length)}"} & said
    boxes = []
    for label in plan.labels:
        size = SIZES[label.look]
        wide = run(label.text, size)
        x, y = float(label.x), float(label.y)
        box = shapely.box(x - wide / 2, y - 0.7 * size, x + wide / 2, y)
        boxes.append(shapely.affinity.rotate(box, float(label.turn), origin=(x, y)))
    paper = shapely.box(0, 0, float(plan.wide), float(plan.tall))
    for box in boxes:
        assert paper.contains(box)
        for line in plan.lines:
            stroke = shapely.LineString(
                [(float(line.x1), float(line.y1)), (float(line.x2), float(line.y2))]
            )
            assert not box.intersects(stroke)
    for one, other in combinations(boxes, 2):
        assert not one.intersects(other)


@pytest.mark.parametrize("heading", [0.0, 90.0])
def test_names_in_one_line_do_not_run_together(heading: float) -> None:
    """Two openings side by side, as long as their names: read as one they name none."""
    x, y = cos(radians(heading)), sin(radians(heading))
    size = SIZES["gap"]
    texts = ("porthole", "radiator")
    long = max(run(text, size) for text in texts) + 1
    ends = [(50 + at * long * x, 50 + at * long * y) for at in (-1, 0, 1)]
    wanted = [
        Wanted("gap", text, one, other, off=(y, -x), heading=heading)
        for text, (one, other) in zip(texts, pairwise(ends), strict=True)
    ]
    one, other = letter(wanted, (), (), (100, 100)).labels
    apart = hypot(float(one.x) - float(other.x), float(one.y) - float(other.y))
    beside = abs((float(one.x) - float(other.x)) * y - (float(one.y) - float(other.y)) * x)
    spaces = apart - sum(run(text, size) for text in texts) / 2
    assert beside > size or spaces > 2 * run(" ", size) > 0


def test_the_plan_tells_coped_ends_from_mitred() -> None:
    (plan,) = floor_plan(compiled(ALCOVE), PEN)
    rows = {row.label: row for row in plan.rows}
    assert rows["S4"].right == "inside corner, coped"
    assert rows["S5"].left == "inside corner, square in"
    assert rows["N3"].left == "inside corner"


def test_filler_worked_by_hand() -> None:
    """Two walls of 40 in, a nail at 0, 16, 32 and 40 in, two high: 16 holes of 1/512 in³.

    One outside corner, 5 1/4 + 9/16 in of seam at 1/256 in².  Twice 16/512 + 93/4096 in³
    is 221/2048 in³; a US fluid ounce is 231/128 in³.
    """
    job = f"""\
{BASE}
{TWELVE_FOR_TEN}
filler: tub 1/4 fl oz at 6.00
room "R", trim base, open walk
  N: 38 in, left=butt, right=out-corner
  E: 38 in, left=out-corner, right=butt
"""
    filler = next(one for one in compiled(job).supplies if one.what == "filler")
    assert dict(filler.facts) == {"holes": 16, "seams": 1}
    assert filler.need == Fraction(221, 2048) / Fraction(231, 128)
    assert (filler.count, filler.cost) == (1, 6)
    (line,) = [one for one in order(compiled(job), PEN).supplies if "filler" in one.what]
    assert (line.count, line.what, line.cost) == ("1", "filler, 0.25 fl oz tub", "$6.00")


def test_a_metric_job_buys_metric_nails_and_paint() -> None:
    metric = compiled(
        "unit mm\ntrim base: 14 thick, 95 tall, Oak, zebrano\nstock base: 2400 at 6\n"
        'room "R", trim base, open walk\n  N: 1000, left=butt, right=butt\n'
    )
    said = order(metric, Pen(words_in("es"), "€", Unit.MM))
    needs = dict(order_reasons(metric, Pen(words_in("es"), "€", Unit.MM)).supplies)
    assert "calibre 18 y 50 mm, cada 400 mm" in needs["clavos"]
    assert [one.what for one in said.supplies][-1] == "pintura, lata de 1 litro"
    assert said.trims[0].species == "roble, zebrano"


def test_a_line_from_a_wall_to_its_name_is_short() -> None:
    """A name stands outside its own wall before a line to it runs through the room."""
    led = {
        (plan.name, one.x1, one.y1): hypot(
            float(one.x2) - float(one.x1), float(one.y2) - float(one.y1)
        )
        for plan in floor_plan(house(), PEN)
        for one in plan.lines
        if one.look == "leader"
    }
    assert len(led) > 5
    # Millimetres on paper; the kitchen has two names beside a wall of four inches.
    assert sorted(led.values())[-2] < 10
    assert max(led.values()) < 20
