"""Each trim's own way round the room: what stops it, what it meets, how far it stands out.

Every number is worked by hand from the walls and the thicknesses (geometry).
"""

import math
from fractions import Fraction

import pytest

import trimlang
from tests import jobs
from trimlang.compiler import check_job
from trimlang.joinery.piece import Piece
from trimlang.joint_row import Edge, Fit
from trimlang.joints import Joint
from trimlang.sheets.content.mates import mates

TRIMS = """
trim thick: 3/4 in thick, 5 1/4 in tall
trim thin: 9/16 in thick, 3 1/4 in tall
trim shoe: 1/2 in thick, 3/4 in tall, in front of thin
trim frieze: 3/4 in thick, 3 in tall
trim crown: 11/16 in thick, 3 5/8 in wide, spring 38 deg, in front of frieze
trim cove: 11/16 in thick, 3 5/8 in wide, spring 38 deg
trim rail: 3/4 in thick, 2 1/2 in tall
stock thick: 16 ft at 9
stock thin: 16 ft at 9
stock shoe: 16 ft at 9
stock frieze: 16 ft at 9
stock crown: 16 ft at 9
stock cove: 16 ft at 9
stock rail: 16 ft at 9
"""


def cut(walls: str, room: str = "open walk", settings: str = "") -> dict[str, Piece]:
    result = check_job(f'{settings}\n{TRIMS}\nroom "R" as R, {room}\n{walls}')
    assert result.ok, [one.message for one in result.diagnostics]
    return {piece.id: piece for piece in result.pieces}


def codes(walls: str, room: str = "open walk") -> list[str]:
    found = check_job(f'{TRIMS}\nroom "R" as R, {room}\n{walls}').diagnostics
    return [one.code for one in found if one.code != "T214"]


@pytest.mark.parametrize(("one", "other"), [("thick", "thin"), ("thin", "thick")])
def test_of_two_unlike_bases_the_taller_runs_through_and_the_other_dies_into_it(
    one: str, other: str
) -> None:
    found = cut(
        f"  N: 60 in, trim {one}, left=butt, right=in-corner(90 deg)\n"
        f"  E: 50 in, trim {other}, left=in-corner(90 deg), right=butt"
    )
    wall = {"thick": Fraction(0), "thin": Fraction(3, 4)}
    assert found[f"R-N-{one}"].length == 60 - wall[one]
    assert found[f"R-E-{other}"].length == 50 - wall[other]
    # both are square, and say which does what
    assert found[f"R-N-{one}"].right.long_edge is found[f"R-E-{other}"].left.long_edge is Edge.BOTH
    texts = {name: str(piece.remarks[0]) for name, piece in found.items()}
    assert sorted(text.split()[0] for text in texts.values()) == ["dies", "runs"]


def test_a_cope_says_which_of_two_unlike_bases_dies() -> None:
    found = cut(
        "  N: 60 in, trim thick, left=butt, right=in-corner(90 deg) cope\n"
        "  E: 50 in, trim thin, left=in-corner(90 deg), right=butt"
    )
    assert found["R-N-thick"].length == 60 - Fraction(9, 16)
    assert found["R-E-thin"].length == 50


@pytest.mark.parametrize(
    ("north", "east", "lengths"),
    [
        # coped alone, the taller one ends at the other's face, which runs through
        (", thick right=cope", "", (60 - Fraction(9, 16), Fraction(50))),
        ("", ", thin left=cope", (Fraction(60), 50 - Fraction(3, 4))),
        # one that runs square into the corner is run through too
        ("", ", thin left=butt", (60 - Fraction(9, 16), Fraction(50))),
        (", thick right=butt", "", (Fraction(60), 50 - Fraction(3, 4))),
    ],
)
def test_what_one_of_two_unlike_bases_says_of_itself_holds_for_the_other(
    north: str, east: str, lengths: tuple[Fraction, Fraction]
) -> None:
    found = cut(
        f"  N: 60 in, trim thick, left=butt, right=in-corner(90 deg){north}\n"
        f"  E: 50 in, trim thin, left=in-corner, right=butt{east}"
    )
    assert (found["R-N-thick"].length, found["R-E-thin"].length) == lengths


def test_an_unlike_base_dies_into_a_face_that_is_not_square_to_it() -> None:
    found = cut(
        "  N: 60 in, trim thick, left=butt, right=in-corner(60 deg)\n"
        "  E: 50 in, trim thin, left=in-corner(60 deg), right=butt",
        settings="saw: reaches 60 deg",
    )
    # into a face 3/4 in off the other wall, at 60°: 3/4 ÷ sin 60° short at the back, and
    # bevelled by 30°, so that the back is the longer edge
    thin = found["R-E-thin"]
    assert float(thin.rounding.exact) == pytest.approx(50 - 0.866025)
    assert (thin.left.exact, thin.left.long_edge) == (30, Edge.BACK)
    assert float(thin.left.inset) == pytest.approx(0.5625 * 0.577350)


def test_a_thickness_that_is_not_known_is_asked_for() -> None:
    walls = (
        "  N: 60 in, trim bare-one, left=butt, right=in-corner(90 deg)\n"
        "  E: 50 in, trim thin, left=in-corner(90 deg), right=butt"
    )
    extra = "trim bare-one: 5 in tall\nstock bare-one: 16 ft at 9\n"
    found = check_job(f'{TRIMS}{extra}\nroom "R" as R, open walk\n{walls}').diagnostics
    assert "T211" in {one.code for one in found}


def test_a_mitre_of_unlike_trims_follows_both_thicknesses() -> None:
    walls = (
        "  N: 60 in, trim thick, left=butt, right=out-corner(90 deg)\n"
        "  E: 50 in, trim thin, left=out-corner(90 deg), right=butt"
    )
    found = cut(walls, settings="saw: reaches 60 deg")
    # at 90° each face reaches as far past the wall as the other is thick
    north, east = found["R-N-thick"], found["R-E-thin"]
    assert north.rounding.exact == 60 + Fraction(9, 16)
    assert east.rounding.exact == 50 + Fraction(3, 4)
    # tan m = 9/16 ÷ 3/4 and 3/4 ÷ 9/16: together they fill the corner
    assert float(north.right.exact) == pytest.approx(36.8699)
    assert float(north.right.exact + east.left.exact) == pytest.approx(90)
    assert "T413" in codes(walls)
    # said at either side, it is meant
    for plain, said in (("right=out-corner(90 deg", "right=out-corner(90 deg, mitre"),
                        ("left=out-corner(90 deg", "left=out-corner(mitre")):  # fmt: skip
        assert "T413" not in codes(walls.replace(plain, said))
        same = cut(walls.replace(plain, said), settings="saw: reaches 60 deg")
        assert same["R-N-thick"].right.exact == north.right.exact


@pytest.mark.parametrize(
    ("right", "left", "degrees"),
    [
        # the faces cross where each stands its own thickness off its wall, so each piece is
        # shorter there by the other's: tan m = 9/16 ÷ 3/4, and 3/4 ÷ 9/16
        ("in-corner(90 deg, mitre)", "in-corner", (36.869898, 53.130102)),
        ("in-corner(90 deg)", "in-corner(mitre)", (36.869898, 53.130102)),
        # 120°: (9/16 + 3/4 × cos 120°) ÷ sin 120° = 0.216506 over 3/4, and 0.541266 over 9/16
        ("in-corner(120 deg, mitre)", "in-corner", (16.102114, 43.897886)),
    ],
)
def test_unlike_trims_that_the_file_has_mitred_inside_are(
    right: str, left: str, degrees: tuple[float, float]
) -> None:
    low = "trim low: 9/16 in thick, 5 1/4 in tall\nstock low: 16 ft at 9"
    found = cut(
        f"  N: 60 in, trim thick, left=butt, right={right}\n"
        f"  E: 50 in, trim low, left={left}, right=butt",
        settings=f"saw: reaches 60 deg\n{low}",
    )
    north, east = found["R-N-thick"], found["R-E-low"]
    assert (north.length, east.length) == (60, 50)
    assert north.right.long_edge is east.left.long_edge is Edge.BACK
    assert (float(north.right.exact), float(east.left.exact)) == pytest.approx(degrees)
    if "90" in right:
        assert (north.right.inset, east.left.inset) == (Fraction(9, 16), Fraction(3, 4))


def test_what_a_taller_trim_has_above_the_other_cannot_be_mitred_inside() -> None:
    walls = (
        "  N: 60 in, trim thick, left=butt, right=in-corner(90 deg, mitre)\n"
        "  E: 50 in, trim thin, left=in-corner, right=butt"
    )
    assert codes(walls).count("T486") == 1
    assert "T486" not in codes(walls.replace(", mitre", ""))


def test_unlike_rails_in_one_corner_are_asked_about_until_the_file_says_whether_they_meet() -> None:
    walls = (
        "  N: 60 in, trim thick, rail, left=butt, right=in-corner(90 deg){said}\n"
        "  E: 50 in, trim thick, old, left=in-corner, right=butt"
    )
    old = "trim old: 1/2 in thick, 2 1/4 in tall\nstock old: 16 ft at 9"
    for said, count, length in (
        ("", 1, Fraction(60)),
        (", rail right=butt", 0, Fraction(60)),
        # it ends at the face of the old one, 1/2 in off the wall
        (", rail right=cope", 0, 60 - Fraction(1, 2)),
    ):
        job = f'{old}\n{TRIMS}\nroom "R" as R, open walk\n{walls.format(said=said)}'
        result = check_job(job)
        assert [one.code for one in result.diagnostics].count("T487") == count
        lengths = {piece.id: piece.length for piece in result.pieces}
        assert (lengths["R-N-rail"], lengths["R-E-old"]) == (length, 50)


def test_the_order_of_names_moves_no_trim_into_the_place_of_one_that_both_walls_have() -> None:
    found = cut(
        "  N: 60 in, trim rail, thick, left=butt, right=in-corner(90 deg)\n"
        "  E: 50 in, trim thick, left=in-corner, right=butt"
    )
    assert found["R-N-rail"].length == 60
    walls = (
        "  N: 60 in, trim {one}, left=butt, right=in-corner(90 deg)\n"
        "  E: 50 in, trim {other}, left=in-corner, right=butt"
    )
    # named after the rail, which both have, nobody can tell that the two stand on the floor
    assert "T487" in codes(walls.format(one="rail, thick", other="rail, thin"))
    assert codes(walls.format(one="rail, thick", other="thin")).count("T487") == 2
    # named first they do, and one dies into the other
    assert "T487" not in codes(walls.format(one="thick, rail", other="thin, rail"))
    assert cut(walls.format(one="thick, rail", other="thin, rail"))["R-E-thin"].length == (
        50 - Fraction(3, 4)
    )


def test_two_unlike_mitres_are_set_to_close_at_the_face_and_open_as_far_as_both_are_off() -> None:
    walls = (
        "  N: 60 in, trim thick, left=butt, right=out-corner(151 deg)\n"
        "  E: 50 in, trim half, left=out-corner, right=butt"
    )
    settings = "saw: reads to 2 deg, reaches 75 deg\ntrim half: 3/8 in thick, 3 1/4 in tall"
    found = cut(walls, settings=f"{settings}\nstock half: 16 ft at 9")
    north, east = found["R-N-thick"].right, found["R-E-half"].left
    # The walls turn by 29°. So flat a turn brings the thick trim's face short of its back: tan m is
    # (3/8 - 3/4 × cos 29°) ÷ (3/4 × sin 29°), and on the other side 29° - m.
    turn = math.radians(29)
    own = math.atan2(0.375 - 0.75 * math.cos(turn), 0.75 * math.sin(turn))
    assert math.radians(float(north.exact)) == pytest.approx(-own)
    assert math.radians(float(east.exact)) == pytest.approx(turn - own)
    # Longer at the face are the gentler one, where the back is the long edge, and the steeper one.
    assert (north.long_edge, north.setting) == (Edge.BACK, 36)
    assert (east.long_edge, east.setting) == (Edge.FACE, 68)
    # Both cuts turn about the edge where the faces touch, at the end of one line through the joint.
    line = 0.75 / math.cos(own)
    off = (float(north.exact) - 36) + (68 - float(east.exact))
    for end in (north, east):
        assert end.opens_at is Edge.BACK
        assert float(end.gap) == pytest.approx(line * math.radians(off), rel=0.03)


def test_crown_in_front_of_a_frieze_follows_its_face() -> None:
    found = cut(
        "  N: 60 in, left=butt, right=in-corner(90 deg)\n"
        "  E: 50 in, left=in-corner(90 deg), right=out-corner(90 deg)\n"
        "  S: 40 in, left=out-corner(90 deg), right=butt",
        "trim frieze, crown, open walk",
    )
    assert found["R-N-crown"].to_mark == Fraction(237, 4)
    assert found["R-E-crown"].to_mark == 50
    assert found["R-S-crown"].to_mark == Fraction(163, 4)


def test_crown_goes_on_over_a_door_into_its_corner() -> None:
    walls = (
        "  N: 60 in, left=butt, right=butt\n"
        '  opening 32 in, "door", right=in-corner(90 deg)\n'
        "  E: 50 in, left=in-corner, right=butt"
    )
    found = cut(walls, "trim thin, cove, open walk")
    assert found["R-N-thin"].length == 60
    crown = found["R-N-cove"]
    assert crown.to_mark == 92
    assert crown.right.joint is found["R-E-cove"].left.joint is Joint.IN_CORNER
    assert "goes on over door into the corner" in crown.all_notes
    # base meets nothing in that corner: square, to the wall
    assert (found["R-E-thin"].left.joint, found["R-E-thin"].length) == (Joint.BUTT, 50)
    mirrored = (
        "  E: 50 in, left=butt, right=in-corner\n"
        "  opening 32 in, left=in-corner(90 deg)\n"
        "  N: 60 in, left=butt, right=butt"
    )
    assert cut(mirrored, "trim thin, cove, open walk")["R-N-cove"].to_mark == 92


CLOSED = {
    # the list begins at the door: the wall's two parts stand at its ends
    "over the list's ends": (
        "  opening 32 in\n"
        "  N2: 60 in, left=butt, right=in-corner\n"
        "  E: 100 in, left=in-corner, right=in-corner\n"
        "  S: 120 in, left=in-corner, right=in-corner\n"
        "  W: 100 in, left=in-corner, right=in-corner\n"
        "  N1: 28 in, left=in-corner, right=butt\n",
        "R-N1-cove",
        120,
        "goes on over the opening to N2",
    ),
    "into a corner before the first line": (
        "  N: 88 in, left=butt, right=in-corner\n"
        "  E: 100 in, left=in-corner, right=in-corner\n"
        "  S: 120 in, left=in-corner, right=in-corner\n"
        "  W: 100 in, left=in-corner, right=in-corner\n"
        '  opening 32 in, "door", left=in-corner\n',
        "R-N-cove",
        120,
        "goes on over door into the corner",
    ),
    "over a wall that is all door": (
        "  N: 88 in, left=in-corner, right=in-corner\n"
        '  opening 40 in, "door", left=in-corner\n'
        "  opening 60 in, right=in-corner\n"
        "  S: 88 in, left=in-corner, right=in-corner\n"
        "  W: 100 in, left=in-corner, right=in-corner\n",
        "R-door-cove",
        100,
        "over the opening, from corner to corner",
    ),
}


@pytest.mark.parametrize("case", CLOSED)
def test_crown_goes_on_over_every_door_of_a_closed_room(case: str) -> None:
    walls, name, long, told = CLOSED[case]
    result = trimlang.compile(f'{TRIMS}\nroom "R" as R, trim thin, cove\n{walls}')
    assert result.ok
    crowns = {piece.id: piece for piece in result.pieces if piece.trim == "cove"}
    assert (crowns[name].to_mark, crowns[name].all_notes) == (long, told)
    # once round, without a break: each crown's end is mitred to the next one's, and says so
    assert {cut.joint for one in crowns.values() for cut in (one.left, one.right)} == {
        Joint.IN_CORNER
    }
    met = mates(result)
    at, seen = name, []
    while at not in seen:
        seen.append(at)
        at = met[at, "right"]
    assert at == name
    assert set(seen) == set(crowns)


def test_crown_over_a_door_that_is_a_wall_follows_what_its_neighbours_stand_on() -> None:
    found = cut(
        "  N: 88 in, left=butt, right=in-corner(90 deg)\n"
        "  opening 100 in, left=in-corner, right=in-corner(90 deg)\n"
        "  S: 88 in, left=in-corner, right=butt\n",
        "trim frieze, crown, open walk",
    )
    # 3/4 in of frieze at each end
    assert found["R-after-N-crown"].to_mark == 100 - Fraction(3, 2)


def test_crown_ends_at_a_door_that_is_a_wall_where_it_does_not_go_on_beyond() -> None:
    found = cut(
        "  N: 88 in, left=butt, right=in-corner(90 deg)\n"
        "  opening 100 in, left=in-corner, right=in-corner(90 deg)\n"
        "  S: 88 in, left=in-corner, right=butt, no cove\n",
        "trim thin, cove, open walk",
    )
    assert [name for name in found if "cove" in name] == ["R-N-cove"]
    assert found["R-N-cove"].right.joint is Joint.BUTT


def test_a_written_splice_laps_on_every_trim_of_its_run() -> None:
    found = cut(
        "  N: 60 in, left=butt, right=splice\n  E: 60 in, left=splice, right=butt",
        "trim thin, cove, open walk",
    )
    # the scarf of 45° laps by the trim's thickness
    assert found["R-N-thin"].length + found["R-E-thin"].length == 120 + Fraction(9, 16)
    assert found["R-N-cove"].to_mark + found["R-E-cove"].to_mark == 120 + Fraction(11, 16)
    assert found["R-N-cove"].mates == ("R-E-cove",)
    over = cut(
        "  A: 40 in, left=butt, right=butt\n  opening 32 in\n"
        "  N: 60 in, left=butt, right=splice\n  E: 60 in, left=splice, right=butt",
        "trim thin, cove, open walk",
    )
    assert (over["R-A-cove"].mates, over["R-E-cove"].mates) == (("R-E-cove",), ("R-A-cove",))


def test_shoe_stops_at_another_base_than_its_own() -> None:
    found = cut(
        "  N: 60 in, trim thin, shoe, left=butt, right=in-corner(90 deg)\n"
        "  E: 50 in, trim thick, shoe, left=in-corner(90 deg), right=butt\n"
    )
    assert found["R-N-shoe"].length == 60 - Fraction(3, 4)
    assert found["R-E-shoe"].length == 50 - Fraction(9, 16)
    alone = cut(
        "  N: 60 in, trim thin, shoe, left=butt, right=in-corner(90 deg)\n"
        "  E: 50 in, trim thick, left=in-corner(90 deg), right=butt\n"
    )
    assert alone["R-N-shoe"].length == 60 - Fraction(3, 4)


@pytest.mark.parametrize(
    ("of", "base", "rail"),
    [
        # the wall ends at 60 less what the scraps reached past it: 9/16 or 3/4
        ("thin", Fraction(60), Fraction(60) + Fraction(3, 16)),
        ("rail", Fraction(60) - Fraction(3, 16), Fraction(60)),
    ],
)
def test_scraps_of_one_trim_tell_where_the_wall_ends_for_all(
    of: str, base: Fraction, rail: Fraction
) -> None:
    corner = f"out-corner(90 deg, taken point of {of})"
    found = cut(f"  N: 60 in, left=butt, right={corner}", "trim thin, rail, open walk")
    assert (found["R-N-thin"].length, found["R-N-rail"].length) == (base, rail)
    for taken in (f"taken point of {of}, left=butt, right=out-corner(90 deg)",):
        again = cut(f"  N: 60 in, {taken}", "trim thin, rail, open walk")
        assert again["R-N-rail"].length == rail


def test_scraps_of_nobody_knows_which_trim_are_asked_about() -> None:
    line = "  N: 60 in, taken point, left=butt, right=out-corner(90 deg)"
    assert codes(line, "trim thin, rail, open walk") == ["T412"]
    assert codes(line, "trim thin, shoe, open walk") == []
    assert codes(line.replace("point", "point of thin"), "trim thin, rail, open walk") == []
    unknown = line.replace("point", "point of thyn")
    assert "T210" in codes(unknown, "trim thin, rail, open walk")


def test_the_mate_of_a_cope_stops_short_in_an_acute_corner() -> None:
    found = cut(
        "  N: 60 in, left=butt, right=in-corner(45 deg)\n"
        "  E: 50 in, left=in-corner(45 deg) cope, right=butt",
        "trim thick, open walk",
        settings="saw: reaches 70 deg",
    )
    # square, its face comes to the other wall 3/4 × cot 45° before its back would
    assert found["R-N-thick"].rounding.exact == 60 - Fraction(3, 4)
    assert found["R-E-thick"].rounding.exact == 50
    crown = cut(
        "  N: 60 in, left=butt, right=in-corner(45 deg)\n"
        "  E: 50 in, left=in-corner(45 deg) cope, right=butt",
        "trim cove, open walk",
        settings="saw: reaches 70 deg",
    )
    # crown stands out by 3 5/8 × sin 38° = 2.23177
    assert float(crown["R-N-cove"].rounding.exact) == pytest.approx(60 - 2.23177, abs=1e-5)


@pytest.mark.parametrize(
    ("degrees", "exact", "setting", "edge"),
    [
        (90, 40.0, 0, Edge.BOTH),
        (93, 40.0, 0, Edge.BOTH),
        # 9/16 × cot 87° before the back
        (87, 40 - 0.0294794, 0, Edge.BOTH),
        (70, 40.0, 20, Edge.BACK),
        # along a wall that leans away the face is the longer, by 9/16 × tan 20°
        (110, 40 + 0.2047333, 20, Edge.FACE),
    ],
)
def test_a_run_into_bare_wall_round_a_corner_ends_square_or_along_that_wall(
    degrees: int, exact: float, setting: int, edge: Edge
) -> None:
    found = cut(
        f"  N: 40 in, left=butt, right=in-corner\n  bare 6 ft, left=in-corner({degrees} deg)",
        "trim thin, open walk",
    )
    piece = found["R-N-thin"]
    assert piece.right.joint is Joint.BUTT
    assert float(piece.rounding.exact) == pytest.approx(exact, abs=1e-6)
    assert (piece.right.setting, piece.right.long_edge) == (setting, edge)


def test_two_unlike_crowns_cannot_meet() -> None:
    walls = (
        "  N: 60 in, trim frieze, crown, left=butt, right=in-corner\n"
        "  E: 50 in, trim cove, left=in-corner, right=butt"
    )
    assert "T411" in codes(walls)


def test_a_piece_that_is_hard_to_hold_is_not_coped_where_its_neighbour_can_be() -> None:
    found = cut(
        "  N: 60 in, left=butt, right=in-corner\n"
        "  E: 2 7/8 in, left=in-corner, right=out-corner\n"
        "  S: 50 in, left=out-corner, right=butt",
        "trim thin, open walk",
        settings="corners: in-corner cope",
    )
    assert (found["R-N-thin"].right.fit, found["R-E-thin"].left.fit) == (Fit.COPED, Fit.SQUARE)
    # the file still has its way
    said = cut(
        "  N: 60 in, left=butt, right=in-corner\n"
        "  E: 2 7/8 in, left=in-corner cope, right=out-corner\n"
        "  S: 50 in, left=out-corner, right=butt",
        "trim thin, open walk",
    )
    assert said["R-E-thin"].left.fit is Fit.COPED


@pytest.mark.parametrize("joint", ["in-corner", "out-corner"])
def test_crown_over_a_door_in_a_corner_meets_its_mate_there(joint: str) -> None:
    head = (
        f"{jobs.TRIM}{jobs.CROWN}\nstock crown: 16 ft at 31.00\n"
        'room "R", trim base, crown, open walk\n'
    )
    # The run ends square at the door, as its base does, and the corner is the door's.
    over = check_job(
        f"{head}  F: 60 in, left=butt, right=butt\n  door 30 in, right={joint}(90 deg)\n"
        "  G: 50 in, left=butt, right=butt\n"
    )
    plain = check_job(
        f"{head}  F: 90 in, left=butt, right={joint}(90 deg)\n  G: 50 in, right=butt\n"
    )
    over_it, without = ({one.id: one for one in result.pieces} for result in (over, plain))
    for name in ("R-F-crown", "R-G-crown"):
        one, other = over_it[name], without[name]
        assert (one.left, one.right, one.to_mark) == (other.left, other.right, other.to_mark)
    assert over_it["R-G-base"].left != without["R-G-base"].left


def test_a_scarf_laps_over_its_own_trim_only() -> None:
    walls = "  N: 60 in, left=butt, right=splice\n  N2: 60 in{no}, left=splice, right=butt"
    assert codes(walls.format(no=""), "trim thin, rail, open walk") == []
    assert codes(walls.format(no=", no rail"), "trim thin, rail, open walk") == ["T329"]
    assert codes(walls.format(no=", trim thick"), "trim thin, open walk") == ["T329"] * 2
    mended = walls.format(no=", no rail").replace("right=splice", "right=splice, rail butt")
    assert codes(mended, "trim thin, rail, open walk") == []
