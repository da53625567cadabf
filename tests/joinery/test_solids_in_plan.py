"""Cut the wood, carry it to the wall, and see that it neither overlaps nor stands apart.

Each piece is a polygon in plan, made from what its ticket says before it is rounded: its length,
where its long points are and how far its short edges lie inside them.  Nothing here knows how
trimlang came to those.
"""

import math

import pytest

from tests.every import every
from trimlang.compiler import check_job
from trimlang.joinery.piece import Cut, Piece
from trimlang.joint_row import Edge

shapely = pytest.importorskip("shapely")

THICK = {"tall": 0.75, "low": 0.5625, "shoe": 0.5}
TRIMS = """
saw: reaches 75 deg
corners: in-corner gap 2 in, out-corner gap 2 in
trim tall: 3/4 in thick, 5 1/4 in tall
trim low: 9/16 in thick, 3 1/4 in tall
trim shoe: 1/2 in thick, 3/4 in tall, in front of low
stock tall: 16 ft at 9
stock low: 16 ft at 9
stock shoe: 16 ft at 9
"""
WALL = 60.0


def pieces(joint: str, degrees: int, one: str, other: str, cope: str) -> dict[str, Piece]:
    result = check_job(
        f'{TRIMS}\nroom "R" as R, open walk\n'
        f"  N: 60 in, trim {one}, left=butt, right={joint}({degrees} deg)\n"
        f"  E: 60 in, trim {other}, left={joint}{cope}, right=butt\n"
    )
    assert result.ok, [one.message for one in result.diagnostics]
    return {piece.id: piece for piece in result.pieces}


def corner_ends(piece: Piece, cut: Cut) -> tuple[float, float]:
    """Where the back and the face end, from the piece's square end (inches)."""
    long, inset = float(piece.rounding.exact), float(cut.inset)
    back = long - inset if cut.long_edge is Edge.FACE else long
    face = long - inset if cut.long_edge is Edge.BACK else long
    return back, face


def at_the_corner(joint: str, degrees: int, before: tuple, after: tuple) -> list:
    """Return both pieces' polygons, from (piece, off the wall, thickness) of each.

    The first wall runs along x and ends at (60, 0); the room lies below it.
    """
    turn = math.radians(180 - degrees) * (1 if joint == "in-corner" else -1)
    made = []
    for number, (piece, off, thick) in enumerate((before, after)):
        cut = piece.left if number else piece.right
        back, face = corner_ends(piece, cut)
        if number:
            # measured from the far end of the second wall back to the corner
            outline = [
                (WALL - back, off),
                (WALL, off),
                (WALL, off + thick),
                (WALL - face, off + thick),
            ]
            along, start = (math.cos(turn), -math.sin(turn)), (WALL, 0.0)
        else:
            outline = [(0.0, off), (back, off), (face, off + thick), (0.0, off + thick)]
            along, start = (1.0, 0.0), (0.0, 0.0)
        into = (along[1], -along[0])
        made.append(
            shapely.Polygon(
                (start[0] + x * along[0] + y * into[0], start[1] + x * along[1] + y * into[1])
                for x, y in outline
            )
        )
    return made


def meet(made: list, caulk: float = 0.0) -> None:
    one, other = made
    assert one.is_valid
    assert other.is_valid
    assert one.intersection(other).area < 1e-9, "they overlap"
    assert one.distance(other) < 1e-9 + caulk, "they stand apart"


@every("degrees", [40, 60, 87, 90, 94, 120, 150])
@every("joint", ["in-corner", "out-corner"])
@every("one, other", [("tall", "tall"), ("tall", "low"), ("low", "tall")])
def test_two_bases_close_at_a_corner(joint: str, degrees: int, one: str, other: str) -> None:
    found = pieces(joint, degrees, one, other, "")
    made = at_the_corner(
        joint,
        degrees,
        (found[f"R-N-{one}"], 0.0, THICK[one]),
        (found[f"R-E-{other}"], 0.0, THICK[other]),
    )
    # up to 5° from square ends are square, and caulk closes what that leaves at the wall
    dies = joint == "in-corner" and one != other
    square = abs(90 - degrees) <= 5
    meet(made, THICK["tall"] * math.sin(math.radians(abs(90 - degrees))) if dies and square else 0)
    # a mitre closes along all of its line, from the backs to the faces
    if joint == "out-corner" or one == other:
        line = made[0].intersection(made[1].buffer(1e-7))
        assert line.area / 1e-7 > 0.99 * min(THICK[one], THICK[other])


@every("degrees", [60, 90, 94, 120])
@every("joint", ["in-corner", "out-corner"])
@every("one, other", [("low", "low"), ("low", "tall"), ("tall", "low")])
def test_shoe_closes_in_front_of_whatever_base_stands_there(
    joint: str, degrees: int, one: str, other: str
) -> None:
    found = pieces(joint, degrees, f"{one}, shoe", f"{other}, shoe", "")
    shoes = at_the_corner(
        joint,
        degrees,
        (found["R-N-shoe"], THICK[one], THICK["shoe"]),
        (found["R-E-shoe"], THICK[other], THICK["shoe"]),
    )
    meet(shoes)
    bases = at_the_corner(
        joint,
        degrees,
        (found[f"R-N-{one}"], 0.0, THICK[one]),
        (found[f"R-E-{other}"], 0.0, THICK[other]),
    )
    for shoe in shoes:
        for base in bases:
            assert shoe.intersection(base).area < 1e-6, "shoe runs into base"


@pytest.mark.parametrize("degrees", [45, 60, 80, 90])
def test_what_runs_square_behind_a_cope_stays_clear_of_the_other_wall(degrees: int) -> None:
    found = pieces("in-corner", degrees, "tall", "tall", " cope")
    (square, _) = at_the_corner(
        "in-corner",
        degrees,
        (found["R-N-tall"], 0.0, THICK["tall"]),
        (found["R-E-tall"], 0.0, THICK["tall"]),
    )
    turn = math.radians(180 - degrees)
    far = (WALL + 100 * math.cos(turn), -100 * math.sin(turn))
    other_wall = shapely.LineString([(WALL, 0.0), far])
    assert square.distance(other_wall) < 1e-9
    assert square.intersection(other_wall).length < 1e-9 or degrees == 90
