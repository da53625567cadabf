"""Two unlike trims round an outside corner: in plan, below and above the lower one's top."""

from fractions import Fraction
from math import cos, radians, sin

import pytest
from shapely.geometry import Polygon, box
from shapely.ops import unary_union

from tests.every import every
from tests.jobs import BASE, TWELVE_FEET
from trimlang.compiler import Result, check_job
from trimlang.joinery.piece import Cut, Piece


def pieces(corner: float, one: str, other: str) -> dict[str, Piece]:
    result = check_job(
        f"trim low: {one} in thick, 5 1/4 in tall\ntrim high: {other} in thick, 7 1/4 in tall\n"
        "stock low: 12 ft at 17.40\nstock high: 12 ft at 27.40\nsaw: reaches 70 deg\n"
        'room "Den", trim high, open walk\n'
        f"  N: 40 in, left=butt, right=out-corner({corner} deg)\n"
        "  E: 50 in, trim low, right=butt\n"
    )
    assert {one.code for one in result.diagnostics} <= {"T413", "T405"}
    return {piece.id.removeprefix("DE-"): piece for piece in result.pieces}


@every("corner", [60, 90, 100, 135])
@every("one, other", [("9/16", "3/4"), ("3/4", "9/16"), ("5/8", "5/8")])
def test_mitred_below_and_returned_above_nothing_gapes(corner: float, one: str, other: str):
    got = pieces(corner, one, other)
    high, low, closing = got["N-high"], got["E-low"], got["N-high-right-return"]
    thick = {"low": inches(one), "high": inches(other)}
    # wall N along y = 0, its corner at the origin; wall E leaves it through the wall at the corner
    along = (-cos(radians(corner)), -sin(radians(corner)))
    out = (sin(radians(corner)), -cos(radians(corner)))

    def on_e(far: float, off: float) -> tuple[float, float]:
        return (along[0] * far + out[0] * off, along[1] * far + out[1] * off)

    past = {name: float(piece.rounding.exact) for name, piece in (("high", high), ("low", low))}
    face = past["high"] - 40 if high.right.long_edge == "face" else -float(high.right.inset)
    mate = past["low"] - 50 if low.left.long_edge == "face" else -float(low.left.inset)
    below = [
        Polygon([(-40, 0), (-40, thick["high"]), (face, thick["high"]), (0, 0)]),
        Polygon([(0, 0), on_e(-mate, thick["low"]), on_e(50, thick["low"]), on_e(50, 0)]),
    ]
    # the two faces end in one point: that is the mitre
    assert on_e(-mate, thick["low"]) == pytest.approx((face, thick["high"]), abs=1e-9)
    assert below[0].intersection(below[1]).area < 1e-9
    # above, as the ticket says, and the return as its own ticket says
    (said,) = (dict(remark.values) for remark in high.remarks if "back" in dict(remark.values))
    assert str(said["step"]) == "2 in"
    top = face - inches(str(said["back"]).removesuffix(" in"))
    deep, mitred = float(closing.length), float(closing.left.inset)
    assert (deep, mitred) == (thick["high"], thick["high"])
    sawn = Polygon([(-40, 0), (-40, deep), (top, deep), (top - deep, 0)])
    turned = Polygon([(top, deep), (top, deep - float(closing.length)), (top - mitred, 0)])
    assert sawn.intersection(turned).area < 1e-9
    whole = box(-40, 0, top, deep)
    assert unary_union([sawn, turned]).symmetric_difference(whole).area < 1e-9
    # flush with the next wall to a sixteenth, and nothing of it hangs over
    assert top == pytest.approx(min(0, face), abs=1 / 32)
    assert turned.difference(below[0].buffer(1 / 32)).area < 1e-9


RAILS = (
    f"{BASE}\n{TWELVE_FEET}\n"
    "trim rail: {thick} in thick, 2 1/2 in tall\nstock rail: 12 ft at 18.40\n"
    "trim old: {thin} in thick, {tall} in tall\nstock old: 12 ft at 27.40\n"
    'saw: reaches 75 deg\nroom "Den", open walk\n'
    "  N: 40 in, trim base, rail, left=butt, right={corner}{one}\n"
    "  E: 50 in, trim base, old, left={joint}, right=butt{other}\n"
)


def rails(corner: str, one: str, other: str, **sizes: str) -> Result:
    facts = {"thick": "3/4", "thin": "1/2", "tall": "2 1/2"} | sizes
    joint = corner.partition("(")[0]
    return check_job(RAILS.format(corner=corner, joint=joint, one=one, other=other, **facts))


@every("corner", [60, 90, 100, 135, 150])
@every("one, other", [("1/2", "3/4"), ("3/4", "1/2"), ("5/8", "5/8")])
def test_unlike_rails_that_the_file_mitres_meet_in_one_line(corner: float, one: str, other: str):
    """Above one base: whichever of the two runs says it, and both in plan as wood."""
    for said, answered in ((", rail right=mitre", ""), ("", ", old left=mitre")):
        facts = {"thick": one, "thin": other}
        result = rails(f"out-corner({corner} deg)", said, answered, **facts)
        assert {found.code for found in result.diagnostics} <= {"T405"}
        got = {piece.id.removeprefix("DE-"): piece for piece in result.pieces}
        rail, old = got["N-rail"], got["E-old"]
        turn = radians(180 - corner)
        along, out = (cos(turn), -sin(turn)), (sin(turn), cos(turn))
        face = past(rail.rounding.exact, 40, rail.right)
        mate = past(old.rounding.exact, 50, old.left)
        deep, thick = inches(one), inches(other)
        shapes = [
            Polygon([(-40, 0), (-40, deep), (face, deep), (0, 0)]),
            Polygon([(0, 0)] + [
                (along[0] * far + out[0] * off, along[1] * far + out[1] * off)
                for far, off in ((-mate, thick), (50, thick), (50, 0))
            ]),
        ]  # fmt: skip
        assert shapes[0].intersection(shapes[1]).area < 1e-9
        # No gap either: from the walls' corner to one point at both faces.
        assert shapes[1].exterior.coords[1] == pytest.approx((face, deep), abs=1e-9)


def past(length: Fraction, wall: int, cut: Cut) -> float:
    """Return how far past the wall's end a piece's face reaches (inches)."""
    return float(length) - wall if cut.long_edge == "face" else -float(cut.inset)


@every(
    "corner, tall, one, other, told",
    [
        ("out-corner", "2 1/2", "", "", ["T322"]),
        ("in-corner", "2 1/2", "", "", ["T487"]),
        ("out-corner", "2 1/4", ", rail right=mitre", "", ["T321"]),
        ("in-corner", "2 1/4", ", rail right=mitre", "", ["T486"]),
        ("out-corner", "2 1/4", ", rail right=return", ", old left=return", []),
        # nothing meets the one that turns the corner
        ("out-corner", "2 1/2", ", rail right=return", "", ["T323"]),
        ("in-corner", "2 1/2", ", rail right=cope", ", old left=cope", ["T305"]),
    ],
)
def test_unlike_rails_are_asked_about_where_only_the_wall_tells(corner, tall, one, other, told):
    found = rails(f"{corner}(90 deg)", one, other, tall=tall).diagnostics
    assert [finding.code for finding in found] == told


def inches(text: str) -> float:
    return float(sum(map(Fraction, text.split())))


def test_the_mirror_image_says_the_same_of_its_other_end():
    got = check_job(
        "trim low: 9/16 in thick, 5 1/4 in tall\ntrim high: 3/4 in thick, 7 1/4 in tall\n"
        "stock low: 12 ft at 17.40\nstock high: 12 ft at 27.40\nsaw: reaches 70 deg\n"
        'room "Den", trim high, open walk\n'
        "  E: 50 in, trim low, left=butt, right=out-corner(90 deg)\n  N: 19 ft, right=butt\n"
    ).pieces
    found = {piece.id: piece for piece in got}
    # it is spliced: the end with the step is on its first part, and the return is glued there
    assert found["DE-N-high-left-return"].mates == ("DE-N-high-a",)
    assert "left: saw its top 2 in back 9/16 in along the face" in found["DE-N-high-a"].all_notes
    assert "saw its top" not in found["DE-N-high-b"].all_notes
    assert "clamp it and saw what is below" in found["DE-N-high-left-return"].all_notes


@every("one, other", [("high", "low"), ("low", "high")])
def test_in_a_coped_room_the_taller_of_two_unlike_trims_runs_through(one: str, other: str):
    """Whichever wall comes first: above the lower one's face it would stop short of the wall."""
    walls = (
        "trim low: 9/16 in thick, 5 1/4 in tall\ntrim high: 3/4 in thick, 7 1/4 in tall\n"
        "stock low: 12 ft at 17.40\nstock high: 12 ft at 27.40\n{settings}\n"
        'room "Den", open walk\n  N: 60 in, trim {one}, left=butt, right=in-corner(90 deg){said}\n'
        "  E: 60 in, trim {other}, left=in-corner, right=butt\n"
    )
    cope = "corners: in-corner cope"
    result = check_job(walls.format(settings=cope, one=one, other=other, said=""))
    assert not result.diagnostics
    lengths = {piece.trim: piece.length for piece in result.pieces}
    assert lengths == {"high": 60, "low": 60 - Fraction(3, 4)}
    # the file's own word holds, and is told
    said = check_job(walls.format(settings="", one="high", other="low", said=" cope"))
    assert [found.code for found in said.diagnostics] == ["T325"]


def test_alike_tops_need_no_return():
    got = check_job(
        "trim low: 9/16 in thick, 5 1/4 in tall\ntrim high: 3/4 in thick, 5 1/4 in tall\n"
        "stock low: 12 ft at 17.40\nstock high: 12 ft at 27.40\nsaw: reaches 70 deg\n"
        'room "Den", trim high, open walk\n'
        "  N: 40 in, left=butt, right=out-corner(90 deg)\n  E: 50 in, trim low, right=butt\n"
    ).pieces
    assert [piece.id for piece in got] == ["DE-N-high", "DE-E-low"]


def test_a_return_of_the_taller_top_that_comes_to_nothing_is_told():
    result = check_job(
        "trim low: 9/16 in thick, 5 1/4 in tall\ntrim high: 0.000001 in thick, 7 1/4 in tall\n"
        "stock low: 12 ft at 17.40\nstock high: 12 ft at 27.40\n"
        'room "Den", trim high, open walk\n'
        "  N: 40 in, left=butt, right=out-corner\n  E: 50 in, trim low, right=butt\n"
    )
    (told,) = (one for one in result.diagnostics if one.code == "T122")
    assert "nothing of the small piece at the right end of run N" in told.message
