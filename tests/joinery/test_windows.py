"""What surrounds a window: its members laid on the wall by their tickets cover what they should."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Polygon, box
from shapely.ops import unary_union

from tests import jobs
from tests.jobs import SIXTEEN_FEET
from trimlang.compiler import Result, check_job, compile_job
from trimlang.joinery.piece import Piece, PieceKind
from trimlang.language.facts import Side
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.phrases import end_name

CASE = Fraction(9, 4)
REVEAL = Fraction(3, 16)
"""The default of ``casings: reveal``."""

HORN = Fraction(3, 4)
"""The default of ``casings: horn``."""

TRIMS = f"""\
{jobs.BASE}
{jobs.CASE}
trim shelf: 3/4 in thick, 5 1/2 in wide
trim strip: 3/4 in thick, 1 in tall
{SIXTEEN_FEET}
stock case: 16 ft at 12.10
stock shelf: 16 ft at 20.10
stock strip: 16 ft at 3.10
"""


def window(said: str, *, settings: str = "", wide: str = "36 in", tall: str = "54 in") -> Result:
    text = (
        f'{TRIMS}{settings}\nroom "Study", trim base, open walk\n'
        "  N: 40 in, left=in-corner, right=butt\n"
        f'  window {wide} "north", casing case, height {tall}, {said}\n'
        "  N2: 40 in, left=butt, right=in-corner\n"
    )
    return check_job(text)


def parts(result: Result) -> dict[str, Piece]:
    found = {}
    for piece in result.pieces:
        if piece.run == "north":
            found[piece.id.removeprefix("ST-north-")] = piece
    return found


def member(piece: Piece, wide: Fraction) -> Polygon:
    """Return a member lying with its outer edge down, as its ticket says: a trapezium."""
    long = float(piece.length)
    left, right = float(piece.left.inset), float(piece.right.inset)
    return Polygon([(0, 0), (long, 0), (long - right, float(wide)), (left, float(wide))])


def turned(shape: Polygon, quarter_turns: int, x: float, y: float) -> Polygon:
    """Return a shape turned about its origin, counterclockwise, and moved to (x, y)."""
    points = list(shape.exterior.coords)
    for _ in range(quarter_turns):
        points = [(-b, a) for a, b in points]
    return Polygon([(a + x, b + y) for a, b in points])


def test_four_sides_lie_round_the_opening_without_gap_or_overlap():
    """Shapely as the second opinion: the frame less its window is the casing, once."""
    got = parts(window("four sides"))
    wide, tall = 36.0, 54.0
    r, c = float(REVEAL), float(CASE)
    out = r + c
    placed = [
        turned(member(got["case-bottom"], CASE), 0, -out, -out),
        turned(member(got["case-right-leg"], CASE), 1, wide + out, -out),
        turned(member(got["case-head"], CASE), 2, wide + out, tall + out),
        turned(member(got["case-left-leg"], CASE), 3, -out, tall + out),
    ]
    frame = box(-out, -out, wide + out, tall + out) - box(-r, -r, wide + r, tall + r)
    # a ticket is rounded to the sixteenth
    assert unary_union(placed).symmetric_difference(frame).area < 0.2
    assert sum(one.area for one in placed) == pytest.approx(frame.area, abs=0.2)


def test_legs_stand_on_a_stool_whose_horns_pass_them_and_the_apron_ends_below_them():
    got = parts(window("stool shelf apron case"))
    legs = got["case-left-leg"], got["case-right-leg"]
    assert {leg.length for leg in legs} == {54 + REVEAL + CASE}  # no gap: they stand on the stool
    outside = 36 + 2 * (REVEAL + CASE)
    assert got["case-head"].length == outside
    assert got["shelf-stool"].length == outside + 2 * HORN
    assert got["case-apron"].length == outside
    # the long points of an apron's ends are at its face, and returns of its thickness close them
    apron = got["case-apron"]
    assert (apron.left.setting, apron.right.setting) == (45, 45)
    assert apron.face == outside
    for side in ("left", "right"):
        closing = got[f"case-apron-{side}-return"]
        assert closing.kind is PieceKind.RETURN
        assert closing.length == Fraction(11, 16)
        assert closing.id in apron.mates


@pytest.mark.parametrize(
    ("said", "foot"),
    [("stool shelf apron case", "stool"), ("sill 24 in", "sill"), ("jambs strip", "floor")],
)
def test_a_leg_says_what_its_foot_stands_on(said: str, foot: str):
    leg = parts(window(said))["case-left-leg"]
    ends = [end_name(leg, side, words_in("en")) for side in Side]
    assert ends == [foot, "casing corner"]


def test_a_stool_says_how_far_it_is_notched():
    (stool,) = (one for one in parts(window("stool shelf")).values() if one.kind.value == "stool")
    # from its end to the clear opening: horn, casing, reveal
    assert "3 3/16 in along it" in stool.all_notes
    assert stool.length == 36 + 2 * Fraction(51, 16)


def test_a_butt_head_and_bottom_lie_across_the_legs():
    got = parts(window("four sides", settings="casings: head butt, overhang 1/2 in"))
    assert got["case-left-leg"].length == 54 + 2 * REVEAL
    assert got["case-head"].length == got["case-bottom"].length == 36 + 2 * (REVEAL + CASE) + 1


def test_jamb_strips_stand_round_the_clear_opening():
    got = parts(window("jambs strip"))
    assert got["strip-left-jamb"].length == got["strip-right-jamb"].length == 54
    assert got["strip-head-jamb"].length == 36 + 2 * Fraction(3, 4)
    assert "strip-bottom-jamb" not in got
    assert "strip-bottom-jamb" in parts(window("jambs strip, four sides"))


def test_jamb_strips_need_no_casing():
    text = (
        f'{TRIMS}room "Study", trim base, open walk\n  N: 40 in, left=butt, right=butt\n'
        "  door 32 in, jambs strip, height 80 in\n"
    )
    result = compile_job(text)
    assert [one.code for one in result.diagnostics] == ["T214", "T214"]  # case and shelf
    assert sum(piece.kind is PieceKind.JAMB for piece in result.pieces) == 3


def test_both_faces_get_the_same_casing_and_names_of_their_own():
    got = parts(window("both faces"))
    for part in ("left-leg", "right-leg", "head"):
        assert got[f"far-case-{part}"].length == got[f"case-{part}"].length
        assert "other side" in got[f"far-case-{part}"].all_notes


@pytest.mark.parametrize(
    ("said", "code"),
    [
        ("window 36 in, four sides", "T283"),
        ("window 36 in, stool shelf", "T283"),
        ("window 36 in, casing case, height 54 in, stool shelf, four sides", "T284"),
        ("window 36 in, jambs strip", "T285"),
        ("window 36 in, casing case, height 54 in, stool shlef", "T210"),
    ],
)
def test_slips_are_told(said: str, code: str):
    text = f'{TRIMS}room "Study", trim base, open walk\n  N: 40 in, left=butt, right=butt\n'
    found = {one.code for one in check_job(f"{text}  {said}\n").diagnostics} - {"T214"}
    assert found == {code}


@given(st.integers(12 * 16, 90 * 16), st.integers(12 * 16, 90 * 16))
def test_a_frame_fits_whatever_the_opening(wide, tall):
    got = parts(window("four sides", wide=f"{wide}/16 in", tall=f"{tall}/16 in"))
    inner = got["case-head"].length - 2 * CASE, got["case-left-leg"].length - 2 * CASE
    assert inner == (Fraction(wide, 16) + 2 * REVEAL, Fraction(tall, 16) + 2 * REVEAL)


def test_base_runs_below_a_window_whose_sill_is_told_and_a_rail_stops_at_it():
    rail = "trim rail: 3/4 in thick, 2 1/2 in tall\nstock rail: 16 ft at 12.00\n"
    shoe = f"{jobs.SHOE}\nstock shoe: 16 ft at 8.00\n"
    text = (
        f'{TRIMS}{rail}{shoe}room "Study", trim base, shoe, rail, open walk, ends in\n'
        "  N: 40 in\n  window 36 in, casing case, height 54 in, sill SILL\n  N2: 40 in\n"
    )

    def lengths(sill: str) -> dict[str, Fraction]:
        result = check_job(text.replace("SILL", sill))
        assert {one.code for one in result.diagnostics} <= {"T214"}
        return {piece.id: piece.length for piece in result.pieces if piece.kind is PieceKind.RUN}

    across = 36 + 2 * (REVEAL + CASE)
    low = lengths("30 in")
    assert low["ST-N-base"] == 80 + across
    assert low["ST-N-shoe"] == low["ST-N-base"] - 2 * Fraction(9, 16)  # in front of base
    assert low["ST-N-rail"] == low["ST-N2-rail"] == 40
    assert "ST-N2-base" not in low
    # base that is taller than the sill is high ends at it
    assert lengths("5 in")["ST-N2-base"] == 40
