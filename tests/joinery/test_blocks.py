"""Blocks, backbands and heads of several parts: their tickets, laid on the wall, fill it once."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Polygon, box
from shapely.ops import unary_union

from tests import jobs
from tests.every import every
from tests.jobs import CASE_STOCK, SIXTEEN_FEET
from trimlang.compiler import Result, check_job, compile_job
from trimlang.joinery.piece import Piece
from trimlang.sheets.content.room_list import room_lists
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.quantities import Pen

REVEAL, CASE, TALL, WIDE = 3 / 16, 3.5, 80.0, 32.0
TRIMS = f"""\
{jobs.BASE}
trim rail: 3/4 in thick, 2 1/2 in tall
trim case: 11/16 in thick, 3 1/2 in wide
trim band: 1 1/16 in thick, 1 1/4 in wide
trim fillet: 1 in thick, 1/2 in tall
trim frieze: 3/4 in thick, 5 1/2 in tall
trim bead: 3/8 in thick, 1/2 in tall, in front of frieze
trim crown: 11/16 in thick, 2 5/8 in wide, spring 38 deg, in front of frieze
{SIXTEEN_FEET}
stock rail: 16 ft at 19.00
{CASE_STOCK}
stock band: 16 ft at 9.90
stock fillet: 8 ft at 4.10
stock frieze: 8 ft at 9.90
stock bead: 8 ft at 2.20
stock crown: 8 ft at 11.70
block plinth: 4 in wide, 9 in tall, 1 1/8 in thick, pine, at 6.50
block rosette: 3 3/4 in wide, 3 5/8 in tall, at 4.20
head crosshead: fillet overhang 3/8 in returned, frieze, bead returned, crown returned
"""
UNUSED = {"T214", "T438"}


def job(said: str, *, settings: str = "", opening: str = "door") -> str:
    return (
        f'{TRIMS}casings: height 80 in{settings}\nroom "Hall", trim base, rail, open walk\n'
        "  N: 100 in, left=in-corner, right=butt\n"
        f'  {opening} 32 in, "den", {said}\n'
        "  N2: 60 in, left=butt, right=in-corner\n"
    )


def hall(said: str, *, settings: str = "", opening: str = "door") -> Result:
    result = check_job(job(said, settings=settings, opening=opening))
    assert {one.code for one in result.diagnostics} <= UNUSED
    return result


def pieces(result: Result) -> dict[str, Piece]:
    return {piece.id.removeprefix("HA-"): piece for piece in result.pieces}


def lengths(result: Result) -> dict[str, float]:
    return {name: float(piece.length) for name, piece in pieces(result).items()}


def filled(placed: list[Polygon], whole: Polygon, *, within: float = 1e-9) -> None:
    """Shapely as the second opinion: no gap, no overlap, and nothing outside."""
    together = unary_union(placed)
    assert sum(one.area for one in placed) == pytest.approx(together.area, abs=1e-9)
    assert together.symmetric_difference(whole).area < within


def test_plinths_corner_blocks_legs_and_head_fill_the_frame():
    got = lengths(hall("casing case, plinths plinth, corner blocks rosette"))
    leg, head = got["den-case-left-leg"], got["den-case-head"]
    # over: how far a block, whose middle is on the casing's, stands past it along and up
    over, up = (3.75 - CASE) / 2, (3.625 - CASE) / 2
    inner, top = -REVEAL, TALL + REVEAL
    left = [
        box(inner - 4, 0, inner, 9),  # the plinth, in line with the casing's inner edge
        box(inner - CASE, 9, inner, 9 + leg),
        box(inner - CASE - over, 9 + leg, inner + over, 9 + leg + 3.625),
    ]
    right = [box(WIDE - b, s, WIDE - a, t) for a, s, b, t in (one.bounds for one in left)]
    beam = box(inner + over, top, inner + over + head, top + CASE)
    # what the eye wants: blocks centred on where casing and head would cross, beam between them
    centre = left[2].centroid
    assert (centre.x, centre.y) == pytest.approx((inner - CASE / 2, top + CASE / 2))
    assert beam.bounds[2] == pytest.approx(right[2].bounds[0])
    assert 9 + leg == pytest.approx(top - up)
    filled([*left, *right, beam], unary_union([*left, *right, beam]))


def test_base_ends_at_the_plinth_and_a_rail_goes_on_to_the_casing():
    result = hall("casing case, plinths plinth")
    got = lengths(result)
    assert (got["N-base"], got["N2-base"]) == (100, 60)
    # half an inch: the plinth is that much wider than the leg above it
    assert (got["N-rail"], got["N2-rail"]) == (100.5, 60.5)
    (gap,) = (one for one in result.job.rooms[0].walk if hasattr(one, "along"))
    assert gap.along == Fraction(32) + 2 * (Fraction(3, 16) + 4)
    assert "its right end meets a block, “plinth”" in pieces(result)["N-base"].all_notes
    assert "block" not in pieces(result)["N-rail"].all_notes
    # without plinths both end at the casing
    plain = lengths(hall("casing case"))
    assert plain["N-rail"] == plain["N-base"] == 100


def test_a_plinth_shortens_the_leg_by_its_height_off_the_floor():
    plain = lengths(hall("casing case", settings=", off floor 1/4 in"))
    got = lengths(hall("casing case, plinths plinth", settings=", off floor 1/4 in"))
    assert plain["den-case-left-leg"] - got["den-case-left-leg"] == 9


@pytest.mark.parametrize("lap", [0.0, 0.25])
def test_a_backband_frames_the_casing(lap: float):
    got = pieces(hall("casing case, backband band", settings=f", lap {lap} in" if lap else ""))
    legs, head = (got[f"den-band-{part}"] for part in ("left-band", "head-band"))
    outer, tall = WIDE + 2 * (REVEAL + CASE), TALL + REVEAL + CASE

    def member(piece: Piece) -> Polygon:
        long = float(piece.length)
        return Polygon(
            [(0, 0), (long, 0), (long - float(piece.right.inset), -1.25),
             (float(piece.left.inset), -1.25)]
        )  # fmt: skip

    past = 1.25 - lap
    left = Polygon([(-past - y, x) for x, y in member(legs).exterior.coords])
    right = Polygon([(outer - x, y) for x, y in left.exterior.coords])
    top = Polygon([(x - past, tall + past + y) for x, y in member(head).exterior.coords])
    frame = box(-past, 0, outer + past, tall + past) - box(lap, 0, outer - lap, tall - lap)
    filled([left, right, top], frame)


def test_a_backband_takes_up_wall_and_makes_a_stool_longer():
    plain = hall("casing case, stool fillet", opening="window")
    banded = hall("casing case, stool fillet, backband band", opening="window")
    assert lengths(banded)["den-fillet-stool"] - lengths(plain)["den-fillet-stool"] == 2.5
    assert lengths(hall("casing case, plinths plinth"))["N-rail"] == 100.5
    # band and leg together are wider than this plinth, which base and rail then both end at
    wide = job("casing case, plinths plinth, backband band", settings=", lap 3/4 in")
    assert lengths(check_job(wide))["N-rail"] == 100


def test_a_head_of_parts_lies_over_the_legs_and_its_bead_goes_round_the_frieze():
    got = pieces(hall("casing case head crosshead"))
    outer = WIDE + 2 * (REVEAL + CASE)
    assert float(got["den-case-left-leg"].length) == TALL + REVEAL
    assert float(got["den-fillet-head-1"].length) == outer + 0.75
    frieze = float(got["den-frieze-head-2"].length)
    assert frieze == outer
    # in plan, the wall along y = 0: the frieze 3/4 in thick, a bead of 3/8 round it
    long, thick = float(got["den-bead-head-3"].length), 0.375
    back = float(got["den-bead-head-3"].back)
    start = (frieze - long) / 2
    face = Polygon([(start, -0.75 - thick), (start + long, -0.75 - thick),
                    (start + long - thick, -0.75), (start + thick, -0.75)])  # fmt: skip
    assert back == frieze
    placed = [box(0, -0.75, frieze, 0), face]
    for side, at in (("left", start), ("right", start + long)):
        piece = got[f"den-bead-head-3-{side}-return"]
        inwards = thick if side == "left" else -thick
        deep = float(piece.length)
        assert deep - float(piece.left.inset + piece.right.inset) == 0.75
        placed.append(Polygon([(at, 0), (at, -deep), (at + inwards, -0.75), (at + inwards, 0)]))
    filled(placed, box(start, -0.75 - thick, start + long, 0))


def test_crown_on_a_frieze_is_as_long_as_that_at_its_lower_edge_and_so_are_its_returns():
    got = pieces(hall("casing case head crosshead"))
    crown = got["den-crown-head-4"]
    assert crown.wall_edge == got["den-frieze-head-2"].length
    for side in ("left", "right"):
        returned = got[f"den-crown-head-4-{side}-return"]
        # the frieze's thickness at the lower edge; the crown stands out 2 5/8 × sin 38° = 1.616
        assert returned.wall_edge == Fraction(3, 4)
        assert float(returned.face - returned.wall_edge) == pytest.approx(1.61612, abs=1e-4)
    # 38° at a square corner: 31.62 and 33.86 are printed in many saw manuals (from memory)
    assert (round(float(crown.left.exact), 2), round(float(crown.left.bevel), 2)) == (31.62, 33.86)


def test_blocks_are_bought_by_the_piece():
    said = "casing case, plinths plinth, corner blocks rosette"
    bought = {one.named: one for one in compile_job(job(said)).supplies}
    assert (bought["plinth"].count, bought["plinth"].cost) == (2, 13)
    both = {one.named: one for one in compile_job(job(f"{said}, both faces")).supplies}
    assert (both["plinth"].count, both["rosette"].count) == (4, 4)
    frame = job("casing case, four sides, corner blocks rosette", opening="window")
    assert {one.named: one.count for one in compile_job(frame).supplies}["rosette"] == 4


def test_the_other_face_has_returns_of_its_own():
    got = pieces(hall("casing case head crosshead, both faces"))
    far = got["den-far-fillet-head-1"]
    assert far.mates == tuple(f"{far.id}-{side}-return" for side in ("left", "right"))
    assert got["den-far-fillet-head-1-left-return"].mates == (far.id,)


def test_the_checklist_says_where_blocks_go():
    (hall_list,) = room_lists(
        compile_job(job("casing case, plinths plinth")), Pen(words_in("en"), "$")
    )
    assert hall_list.tasks[0].pieces == ("2 × plinth (den)",)


@every(
    "said, code",
    [
        ("plinths plinth", "T283"),
        ("casing case, plinths plint", "T294"),
        ("casing case, corner blocks plinth", "T433"),
        ("casing case, four sides, plinths plinth", "T431"),
        ("casing case head fillet, corner blocks rosette", "T432"),
        ("casing case, backband band, corner blocks rosette", "T432"),
        ("casing case head crosshead, backband band", "T435"),
        ("casing frieze, plinths plinth", "T430"),
    ],
)
def test_slips_are_told(said: str, code: str):
    beside = {"T265", "T489", *UNUSED}  # four sides are not said of doors either
    assert {one.code for one in check_job(job(said)).diagnostics} - beside == {code}


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("block base: 3 in wide, 7 in tall", "T292"),
        ("block b: 3 in wide, at 6.50", "T293"),
        ("block b: 3 in wide, 7 in tall, 4 in wide", "T209"),
        ("head h: cornice", "T210"),
        ("head h: frieze, bead overhang 1 in", "T436"),
        ("head plinth: frieze", "T292"),
    ],
)
def test_slips_of_blocks_and_heads_are_told(line: str, code: str):
    assert {
        one.code for one in check_job(f"{line}\n{job('casing case')}").diagnostics
    } - UNUSED == {code}


@given(
    st.integers(18 * 16, 90 * 16),
    st.integers(40 * 16, 120 * 16),
    st.integers(56, 80),
    st.booleans(),
)
def test_whatever_the_opening_its_parts_sum_up_to_it(wide, tall, block, is_metric):
    """Plinth, leg and corner block up to the block's top; block, head and block across."""
    size = Fraction(block, 16)
    unit, one = ("mm", Fraction(254, 10)) if is_metric else ("in", Fraction(1))
    text = (
        f"{TRIMS}casings: reveal 3/4 in\n"
        f"block square: {float(size * one):.4f} {unit} wide, {float(size * one):.4f} {unit} tall\n"
        'room "Hall", trim base, open walk\n  N: 40 in, left=butt, right=butt\n'
        f"  door {wide}/16 in, casing case, height {tall}/16 in, plinths plinth,"
        " corner blocks square\n"
    )
    got = {piece.id.removeprefix("HA-door-case-"): piece for piece in check_job(text).pieces}
    reveal, case = Fraction(3, 4), Fraction(7, 2)
    up = 9 + got["left-leg"].rounding.exact + size
    across = got["head"].rounding.exact + 2 * size
    over = (size - case) / 2
    assert up == Fraction(tall, 16) + reveal + case + over
    assert across == Fraction(wide, 16) + 2 * (reveal + case + over)
