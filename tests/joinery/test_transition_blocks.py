"""Blocks in corners and in walls: trim, laid out in plan by its tickets, ends at them."""

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Polygon, box
from shapely.ops import unary_union

from tests import jobs
from tests.every import every
from trimlang.compiler import Result, check_job, compile_job
from trimlang.diagnostics.source import Source
from trimlang.sheets.content.floor_plan import floor_plan
from trimlang.sheets.content.room_list import room_lists
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.quantities import Pen
from trimlang.tables.from_csv import from_csv
from trimlang.tables.room_writer import WallForm
from trimlang.tables.to_csv import to_csv
from trimlang.tables.wall_forms import in_form

TRIMS = f"""\
{jobs.TRIM}{jobs.SHOE}
trim tall: 3/4 in thick, 7 1/4 in tall
trim rail: 3/4 in thick, 2 1/2 in tall
{jobs.CROWN}
stock shoe: 16 ft at 7.10
stock tall: 16 ft at 33.00
stock rail: 16 ft at 19.00
stock crown: 16 ft at 31.00
block foot: 1 5/8 in wide, 8 in tall, 1 5/8 in thick, pine, at 6.50
block post: 2 1/2 in wide, 8 in tall, 1 3/8 in thick, at 8.50
"""


def den(walls: str, trims: str = "base, shoe") -> Result:
    result = check_job(f'{TRIMS}room "Den", trim {trims}, open walk\n{walls}')
    assert {one.code for one in result.diagnostics} <= {"T214", "T438"}
    return result


def lengths(result: Result) -> dict[str, float]:
    return {piece.id.removeprefix("DE-"): float(piece.length) for piece in result.pieces}


def notes(result: Result) -> dict[str, str]:
    return {piece.id.removeprefix("DE-"): piece.all_notes for piece in result.pieces}


def test_unlike_trims_and_the_block_between_them_fill_the_wall():
    got = den(
        "  N: 40 in, left=butt, right=butt\n  transition foot\n"
        "  N2: 50 in, left=butt, right=butt, trim tall, shoe\n"
    )
    long = lengths(got)
    assert (long["N-base"], long["N2-tall"]) == (long["N-shoe"], long["N2-shoe"]) == (40, 50)
    room = got.job.rooms[0]
    assert sum(one.along if hasattr(one, "along") else one.length for one in room.walk) == 91.625
    assert notes(got)["N-base"] == "its right end meets a block, “foot”"
    assert notes(got)["N2-shoe"] == "its left end meets a block, “foot”"


def test_what_is_not_stopped_goes_on_past_a_block_in_the_wall():
    walls = (
        "  N: 40 in, left=butt, right=butt\n  transition foot{said}\n"
        "  N2: 50 in, left=butt, right=butt\n"
    )
    assert lengths(den(walls.format(said=""), "base, rail"))["N-rail"] == 91.625
    rail = lengths(den(walls.format(said=", stops rail"), "base, rail"))
    assert (rail["N-base"], rail["N-rail"], rail["N2-rail"]) == (91.625, 40, 50)


@pytest.mark.parametrize("order", [("base", "tall"), ("tall", "base"), ("base", "base")])
def test_in_an_inside_corner_two_trims_the_block_and_the_walls_leave_no_gap(order):
    one, other = order
    got = den(
        f"  N: 40 in, left=butt, right=in-corner(block foot), trim {one}, shoe\n"
        f"  E: 50 in, right=butt, trim {other}, shoe\n"
    )
    long = lengths(got)
    thick = {"base": 0.5625, "tall": 0.75}
    # in plan, the corner at 0, 0: wall N along y = 0 to the left, wall E along x = 0 downwards
    laid = [
        box(-40, -thick[one], -40 + long[f"N-{one}"], 0),
        box(-thick[other], -50, 0, -50 + long[f"E-{other}"]),
        box(-1.625, -1.625, 0, 0),
    ]
    together = unary_union(laid)
    assert together.area == pytest.approx(sum(each.area for each in laid))
    assert isinstance(together, Polygon)
    walls = unary_union([box(-40, 0, 1, 1), box(0, -50, 1, 1)])
    assert together.boundary.intersection(walls.boundary).length == pytest.approx(90)
    assert long["N-shoe"] == long[f"N-{one}"] == 40 - 1.625


def test_round_an_outside_corner_the_block_covers_both_walls_behind_its_thickness():
    got = den(
        "  N: 40 in, left=butt, right=out-corner(block post), trim tall, rail\n"
        "  E: 50 in, right=butt, trim base, rail\n"
    )
    long = lengths(got)
    # wall N along y = 0 to the left of the corner, wall E along x = 0 upwards; the room is outside
    laid = [
        box(-40, -0.75, -40 + long["N-tall"], 0),
        box(0, 50 - long["E-base"], 0.5625, 50),
        box(1.375 - 2.5, -1.375, 1.375, 2.5 - 1.375) - box(-9, 0, 0, 9),
    ]
    together = unary_union(laid)
    assert together.area == pytest.approx(sum(each.area for each in laid))
    assert isinstance(together, Polygon)
    # a rail above goes round the corner as ever
    assert long["N-rail"] == pytest.approx(40 + 0.75, abs=1 / 16)
    # the tallest of all faces is the block's
    assert not {one.code for one in got.diagnostics} & {"T413", "T478"}


def test_crown_ends_at_a_block_that_stops_it():
    walls = "  N: 80 in, left=butt, right=in-corner(block {said})\n  E: 90 in, right=butt\n"
    fits = "block corbel: 3 1/2 in wide, 4 in tall, at 9.00\n"
    text = f'{TRIMS}{fits}room "Den", trim base, crown, open walk\n'
    got = check_job(text + walls.format(said="corbel stops crown"))
    assert {one.code for one in got.diagnostics} <= {"T214", "T438"}
    long = {piece.id: piece for piece in got.pieces}
    assert long["DE-N-crown"].wall_edge == 80 - Fraction(7, 2)
    assert long["DE-N-base"].right.joint.is_corner
    assert long["DE-N-crown"].right.exact == 0


def test_a_blocks_wall_is_measured_to_the_corner_whatever_the_room_takes():
    said = "  N: 40 in, left=butt, right=out-corner(block post)\n  E: 50 in, right=butt\n"
    assert lengths(den(said, "base, taken point")) == lengths(den(said, "base"))


def test_blocks_are_bought_listed_and_drawn_once_each():
    text = (
        f'{TRIMS}room "Den", trim base, ends in\n'
        "  N: 80 in, right=in-corner(block foot)\n  E: 60 in\n"
        "  S: 39 in\n  transition foot\n  S2: 39 3/8 in\n  W: 60 in, right=in-corner(block foot)\n"
    )
    result = compile_job(text)
    assert {one.named: one.count for one in result.supplies}["foot"] == 3
    pen = Pen(words_in("en"), "$")
    (room,) = room_lists(result, pen)
    assert room.tasks[0].pieces == ("1 × foot (N/E)", "1 × foot (foot)", "1 × foot (W/N)")
    plan = floor_plan(result, pen)
    drawn = [one for one in plan[0].lines if one.look == "block-wall"]
    assert len(drawn) == 5  # two walls a corner, and the one in the wall


@every(
    "walls, codes",
    [
        ("  N: 40 in, left=butt(block foot), right=butt\n", {"T474"}),
        ("  N: 40 in, left=butt, right=in-corner(block foo)\n  E: 9 in, right=butt\n", {"T294"}),
        ("  N: 40 in, left=butt, right=butt\n  transition foo\n", {"T294"}),
        ("  N: 40 in, left=butt, right=out-corner(block thin)\n  E: 9 in, right=butt\n", {"T475"}),
        ("  N: 40 in, right=in-corner(45 deg, block foot)\n", {"T225"}),
        (
            "  N: 40 in, left=butt, right=in-corner(45 deg)\n"
            "  E: 30 in, left=in-corner(block foot), right=butt\n",
            {"T477"},
        ),
        (
            "  N: 40 in, left=butt, right=in-corner(block foot)\n"
            "  E: 30 in, left=in-corner(block post), right=butt\n",
            {"T476"},
        ),
        ("  N: 40 in, left=butt, right=butt\n  transition thin\n", {"T478"}),
        ("  N: 40 in, left=butt, right=in-corner(block foot stops bas)\n  E: 9 in, right=butt\n",
         {"T210"}),
    ],
)  # fmt: skip
def test_slips_are_told(walls: str, codes: set[str]):
    thin = "block thin: 2 in wide, 5 in tall\n"
    found = check_job(f'{TRIMS}{thin}room "Den", trim base, open walk\n{walls}').diagnostics
    assert {one.code for one in found} - {"T214", "T438"} >= codes


@given(st.integers(20 * 16, 190 * 16), st.integers(8, 60), st.booleans())
def test_a_wall_its_trim_and_its_blocks_always_sum_up(long: int, wide: int, outside: bool):
    """In a mirror image the lengths are the same, and every sixteenth of the wall is covered."""
    joint = "out-corner" if outside else "in-corner"
    block = f"block b: {wide}/16 in wide, 9 in tall, {wide - 4}/16 in thick\n"
    covered = Fraction(4 if outside else wide, 16)
    for here, there in (("left", "right"), ("right", "left")):
        walls = [
            f"  N: {long}/16 in, {here}=butt, {there}={joint}(block b)\n",
            f"  E: {long}/16 in, {here}={joint}, {there}=butt\n",
        ]
        text = TRIMS + block + 'room "Den", trim base, open walk\n'
        text += "".join(walls if there == "right" else reversed(walls))
        got = check_job(text).pieces
        assert [piece.length + covered for piece in got] == [Fraction(long, 16)] * 2


def test_blocks_stay_in_every_form_of_the_walls_and_through_a_table():
    text = (
        f'{TRIMS}room "Den", trim base, shoe, ends in\n'
        "  N: 80 in, right=in-corner(block foot)\n  E: 60 in\n"
        "  S: 39 in\n  transition foot\n  S2: 39 3/8 in, trim tall, shoe\n"
        "  W: 60 in, right=in-corner\n"
    )
    source, wanted = Source("x", text), lengths(check_job(text))
    for form in WallForm:
        assert lengths(check_job(in_form(source, None, form))) == wanted
    table, problems = to_csv(source)
    assert not problems
    assert lengths(check_job(from_csv(table.encode(), Path("walls.csv")).text)) == wanted


def test_crown_with_a_return_of_its_own_does_not_meet_a_block_of_the_floor():
    got = den(
        "  N: 40 in, left=butt, right=butt, trim base, crown, crown right=return\n"
        "  transition foot\n  E: 50 in, right=butt, trim tall\n"
    )
    notes = {piece.id: piece.all_notes for piece in got.pieces}
    assert "meets a block" not in notes["DE-N-crown"]
    assert "meets a block" in notes["DE-N-base"]
    assert "T478" not in {one.code for one in got.diagnostics}
