"""How trim ends by itself: tapers, returns round what is behind, shoe and rails at a casing."""

import re
from fractions import Fraction
from math import radians, tan

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.affinity import rotate, translate
from shapely.geometry import Polygon, box
from shapely.ops import unary_union

from tests import jobs
from tests.every import every
from tests.jobs import SIXTEEN_FEET
from trimlang.compiler import Result, check_job, compile_job
from trimlang.joinery.piece import Piece
from trimlang.joint_row import Edge

TRIMS = f"""\
{jobs.BASE}
{jobs.SHOE}
{jobs.CASE}
trim rail: 1 in thick, 2 1/2 in tall
trim thin: 1/2 in thick, 2 in tall
trim frieze: 3/4 in thick, 3 1/2 in tall
trim cornice: 11/16 in thick, 3 5/8 in wide, spring 38 deg, in front of frieze
{SIXTEEN_FEET}
stock shoe: 16 ft at 9.00
stock case: 16 ft at 12.00
stock rail: 16 ft at 19.00
stock thin: 16 ft at 8.00
trim deep: 1 1/4 in thick, 4 in tall
trim above: 11/16 in thick, 3 5/8 in wide, spring 38 deg, in front of deep
stock deep: 16 ft at 21.00
stock above: 16 ft at 30.00
stock frieze: 16 ft at 17.00
stock cornice: 16 ft at 31.00
"""


def beside_a_door(
    ends: str, *, trims: str = "base, shoe, rail", side: str = "right", settings: str = ""
) -> Result:
    other = "left" if side == "right" else "right"
    wall = f"  N: 100 in, {other}=open, {side}=butt{ends}\n"
    door = '  door 32 in, "den", casing case, height 80 in, stops all\n'
    lines = wall + door if side == "right" else door + wall
    return check_job(f'{TRIMS}{settings}\nroom "Study", trim {trims}, open walk\n{lines}')


def codes(result: Result) -> set[str]:
    return {one.code for one in result.diagnostics} - {"T214"}


def pieces(result: Result) -> dict[str, Piece]:
    return {piece.id.removeprefix("ST-"): piece for piece in result.pieces}


def in_plan(piece: Piece, behind: float, thick: float) -> Polygon:
    """Return a run in plan: the wall along y = 0, the piece from x = 0, its face towards -y."""
    back, face = float(piece.back), float(piece.face)
    long = float(piece.length)
    starts = {Edge.BACK: (0, long - face), Edge.FACE: (long - back, 0), Edge.BOTH: (0, 0)}
    at_back, at_face = starts[piece.left.long_edge]
    return Polygon(
        [(at_back, -behind), (at_back + back, -behind),
         (at_face + face, -behind - thick), (at_face, -behind - thick)]
    )  # fmt: skip


def test_a_shoe_returned_beside_a_casing_closes_at_the_face_of_the_base():
    got = pieces(beside_a_door(", shoe return, rail taper"))
    base, shoe, closing = got["N-base"], got["N-shoe"], got["N-shoe-right-return"]
    assert base.length == shoe.length == 100
    run = in_plan(shoe, 9 / 16, 0.5)
    deep = float(closing.length)
    # the return: its long edge outside, mitred at the shoe's face, square at the base's
    small = Polygon([(100, -9 / 16), (100, -9 / 16 - deep), (100 - deep, -9 / 16)])
    whole = unary_union([in_plan(base, 0, 9 / 16), run, small])
    assert whole.symmetric_difference(box(0, -9 / 16 - 0.5, 100, 0)).area < 1e-9
    assert run.area + small.area == pytest.approx(50)


def test_a_rail_dies_into_a_casing_with_what_stands_out_bevelled_off():
    rail = pieces(beside_a_door(", shoe return, rail taper"))["N-rail"]
    # 1 in less the casing's 11/16: a second cut, after the square one
    assert (rail.length, rail.right.exact) == (100, 0)
    assert "right: saw it square, then bevel 5/16 in off its front corner at 45°" in rail.all_notes
    left = pieces(beside_a_door(", shoe return, rail taper", side="left"))["N-rail"]
    assert "left: saw it square, then bevel 5/16 in" in left.all_notes


def test_a_taper_beside_a_casing_must_slip_in_as_a_butt_does():
    """A twentieth over the inch: a free end is rounded up to the nearest mark."""
    text = f'{TRIMS}room "Study", trim rail, open walk\n'
    door = '  door 32 in, "den", casing case, height 80 in\n'
    lengths = [
        check_job(f"{text}  N: 40.05 in, left=butt, right=taper{end}\n").pieces[0].length
        for end in ("", f"\n{door}".rstrip())
    ]
    assert lengths == [Fraction(641, 16), 40]


def test_a_shoe_may_taper_beside_a_casing_too():
    shoe = pieces(beside_a_door(", shoe taper, rail taper"))["N-shoe"]
    # base 9/16 and shoe 1/2 stand 1 1/16 out, the casing 11/16
    assert "bevel 3/8 in off its front corner" in shoe.all_notes


@pytest.mark.parametrize("angle", [15, 30, 45, 60])
def test_a_free_taper_slopes_from_the_face_to_the_wall(angle: int):
    text = f'{TRIMS}saw: reads to 1/8 deg, reaches 60 deg\nroom "Study", trim rail, open walk\n'
    result = check_job(f"{text}  N: 40 in, left=open, right=taper({angle} deg)\n")
    assert not codes(result)
    (rail,) = result.pieces
    # the wall's length at the back, less at the face by thickness × tan(angle)
    assert rail.length == rail.back == 40
    assert float(rail.back - rail.face) == pytest.approx(tan(radians(angle)))
    assert in_plan(rail, 0, 1).area == pytest.approx(40 - tan(radians(angle)) / 2)


@given(st.integers(10, 60), st.integers(16, 128))
def test_a_taper_at_the_left_is_that_at_the_right_in_a_mirror(angle, sixteenths):
    text = f'{TRIMS}room "Study", trim rail, open walk\n  N: {sixteenths}/16 in, '
    here, there = (
        check_job(f"{text}{one}=taper({angle} deg), {other}=open\n").pieces
        for one, other in (("left", "right"), ("right", "left"))
    )
    for one, other in zip(here, there, strict=True):
        assert (one.length, one.face) == (other.length, other.face)
        assert one.left.setting == other.right.setting
        assert {one.left.lean, other.right.lean} == {"left", "right"}


def test_crown_on_a_frieze_returns_round_it_where_that_ends_too():
    def closing(frieze: str) -> Piece:
        walls = f"  N: 100 in, left=open, right=return{frieze}\n"
        text = f'{TRIMS}room "Study", trim frieze, cornice, open walk\n{walls}'
        return pieces(check_job(text))["N-cornice-right-return"]

    returned, closed = closing(""), closing(", frieze butt")
    assert returned.wall_edge == Fraction(3, 4)
    # 3 5/8 in of crown at 38° stand out by 3 5/8 × sin 38° = 2.2318
    assert float(returned.face - returned.wall_edge) == pytest.approx(2.23177, abs=1e-4)
    assert closed.wall_edge is None
    assert closed.right.joint is returned.right.joint


@pytest.mark.parametrize(
    ("ends", "trims", "found"),
    [
        ("", "base, shoe, rail", {"T442"}),
        # the shoe stands out past a casing of 11/16 in by the base behind it
        ("", "base, shoe, thin", {"T442"}),
        (", shoe butt", "base, shoe", {"T442"}),
        (", shoe taper", "base, shoe", set()),
        ("", "base, thin", set()),
        # a frieze ends above the casing, whatever that is
        ("", "deep, above", set()),
        (", deep taper, above return", "deep, above", set()),
        (", thin taper", "base, thin", {"T443"}),
        (", rail return", "base, rail", set()),
        (", base taper", "base", {"T443"}),
    ],
)
def test_what_stands_out_past_a_casing_is_told(ends: str, trims: str, found: set[str]):
    assert codes(beside_a_door(ends, trims=trims)) == found


@every(
    "said, alone, notes, small",
    [
        ("taper", "", ("3/8", "5/16"), ()),
        ("return", "", (), ("N-shoe-right-return", "N-rail-right-return")),
        ("butt", "", (), ()),
        # what is said of one trim goes before what is said of all
        ("taper", ", shoe return", ("5/16",), ("N-shoe-right-return",)),
        ("taper", ", rail butt", ("3/8",), ()),
    ],
)
def test_one_line_says_how_all_that_stands_out_ends(said, alone, notes, small):
    result = beside_a_door(alone, settings=f"casings: proud ends {said}")
    assert not codes(result)
    got = pieces(result)
    assert {name for name, piece in got.items() if piece.kind.is_glued} == set(small)
    assert {got[f"N-{trim}"].length for trim in ("base", "shoe", "rail")} == {100}
    told = " ".join(piece.all_notes for piece in got.values())
    assert re.findall(r"bevel (\S+) in", told) == list(notes)
    # the base behind stands out no further than the casing, so nothing is said of it
    assert not got["N-base"].all_notes


def test_a_taper_of_no_angle_is_refused():
    text = (
        f'{TRIMS}room "Study", trim rail, open walk\n  N: 40 in, left=open, right=taper(80 deg)\n'
    )
    assert codes(check_job(text)) == {"T233"}


def test_tapered_pieces_are_planned_and_keep_their_length():
    result = compile_job(
        f'{TRIMS}room "Study", trim rail, open walk\n  N: 40 in, left=taper, right=taper(30 deg)\n'
    )
    (plan,) = result.plans
    (place,) = plan.sticks[0].places
    assert place.end - place.start == result.pieces[0].length


@every(
    "degrees, more, reach",
    (
        (90, "", 0.6875),
        (60, "", 0.6875),
        (120, "", 0.6875),
        # a plinth is thicker than the leg that stands on it
        (90, ", plinths plinth", 1.0),
    ),
)
def test_trim_stops_at_the_casing_of_a_door_in_the_corner(degrees, more, reach):
    """In plan, the door's wall along y = 0 up to the corner, where the next wall turns off."""
    turn = f"({degrees} deg)"

    def cornered(end, cased=f"casing case, height 80 in{more}"):
        return check_job(
            f"{TRIMS}block plinth: 3 in wide, 6 in tall, 1 in thick\n"
            'room "Study", trim base, shoe, rail, cornice, open walk\n'
            "  N: 60 in, left=open, right=butt\n"
            f'  door 32 in, "den", right=in-corner{turn}, {cased}\n'
            f"  E: 40 in, left={end}, right=open\n"
        )

    result = cornered(f"in-corner{turn}")
    assert "T326" not in codes(result)
    found, leg = pieces(result), box(-3, -reach, 0, 0)
    for name, behind, thick in (("base", 0.0, 9 / 16), ("shoe", 9 / 16, 1 / 2)):
        piece = found[f"E-{name}"]
        lying = translate(in_plan(piece, behind, thick), 40 - float(piece.length))
        # the wall's line turns right by what the corner lacks of a straight line
        there = rotate(lying, degrees - 180, origin=(0, 0))
        assert there.intersection(leg).area < 0.06, "a mark's rounding at most"
        assert there.distance(leg) < 0.06
    # a run that ends butt there may have been measured to the casing's face: that is asked
    asked = cornered("butt")
    assert "T326" in codes(asked)
    assert pieces(asked)["E-base"].length == found["E-base"].length
    # nothing is in the way without a casing, nor for base below a window; crown is above all
    bare = pieces(cornered("butt", "note “old casing”"))
    assert bare["E-base"].length == 40
    assert found["E-cornice"].to_mark == bare["E-cornice"].to_mark
    window = cornered("butt", "casing case, height 40 in, sill 30 in")
    assert pieces(window)["E-base"].length == 40


@pytest.mark.parametrize(
    ("ends", "shoe"),
    [
        # 9/16 in × tan of the taper from the end, where the base's face has come out to the shoe
        ("left=butt, right=taper", "39 7/16"),
        ("left=taper(30 deg), right=butt", "39 11/16"),
        ("left=butt, right=butt, shoe taper", "40"),
        # however it ends itself, it ends where the face that it stands on does
        ("left=butt, right=taper, shoe butt", "39 7/16"),
        ("left=butt, right=taper, shoe return", "39 7/16"),
        ("left=taper, shoe open, right=taper(30 deg), shoe butt", "39 1/8"),
    ],
)
def test_a_shoe_ends_where_the_base_behind_it_has_come_out(ends: str, shoe: str) -> None:
    text = f'{TRIMS}room "R" as R, trim base, shoe, open walk\n  A: 40 in, {ends}\n'
    lengths = {p.trim: p.length for p in check_job(text).pieces if not p.kind.is_glued}
    assert lengths == {"base": Fraction(40), "shoe": sum(map(Fraction, shoe.split()))}


@pytest.mark.parametrize(
    ("trims", "ends", "lengths"),
    [
        # 1 in of rail beside 11/16 in of casing slopes over 5/16 in, and so does what is on it
        ("rail, onrail", "right=butt, rail taper, onrail taper", (40, "39 11/16")),
        ("rail, onrail", "right=butt, rail taper, onrail butt", (40, "39 11/16")),
        # base is no thicker than the casing, so all of the taper is the bead's and the shoe's
        ("base, bead, onbead", "right=butt, bead taper, onbead taper", (40, 40, "39 7/8")),
    ],
)
def test_what_stands_on_a_taper_beside_a_casing_ends_at_its_slope(trims, ends, lengths) -> None:
    more = "".join(
        f"trim {name}: 1/4 in thick, 1 in tall, in front of {behind}\nstock {name}: 16 ft at 9\n"
        for name, behind in (("onrail", "rail"), ("bead", "base"), ("onbead", "bead"))
    )
    text = (
        f'{TRIMS}{more}room "R" as R, trim {trims}, open walk\n  A: 40 in, left=butt, {ends}\n'
        '  door 32 in, "den", casing case, height 80 in\n'
    )
    found = [p.length for p in check_job(text).pieces if p.id.startswith("R-A-")]
    assert found == [sum(map(Fraction, str(long).split())) for long in lengths]
