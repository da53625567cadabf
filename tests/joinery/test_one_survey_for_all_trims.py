"""One survey for all trims of a room: what stops one of them, and ends of its own.

Every number is worked by hand from the walls and the thicknesses (geometry).
"""

from fractions import Fraction

import pytest

from tests.every import every
from tests.jobs import BASE, CROWN, SHOE, TRIM
from trimlang.compiler import Result, check_job
from trimlang.diagnostics.mending import mends
from trimlang.joinery.piece import PieceKind
from trimlang.joints import Joint

TRIMS = f"""\
{BASE}
{SHOE}
trim rail: 3/4 in thick, 2 1/2 in tall
{CROWN}
stock base: 16 ft at 24
stock shoe: 16 ft at 6
stock rail: 16 ft at 9
stock crown: 16 ft at 30
"""
ROOM = 'room "R" as R, trim base, shoe, rail, crown, open walk\n'


def checked(walls: str) -> Result:
    return check_job(TRIMS + ROOM + walls)


def lengths(walls: str) -> dict[str, Fraction]:
    result = checked(walls)
    assert not result.diagnostics, [one.message for one in result.diagnostics]
    return {piece.id: piece.length for piece in result.pieces if piece.kind is PieceKind.RUN}


def test_a_window_stops_the_rail_and_base_goes_on_below_it() -> None:
    found = lengths(
        "  N: 40 in, left=butt, right=butt\n  window 36 in, stops rail\n"
        "  N2: 30 in, left=butt, right=butt"
    )
    assert found == {
        "R-N-base": 106,
        "R-N-shoe": 106,
        "R-N-rail": 40,
        "R-N2-rail": 30,
        "R-N-crown": 106,
    }


def test_cabinets_stop_base_and_shoe_and_not_the_crown_above_them_into_the_corner() -> None:
    found = lengths(
        "  N: 40 in, left=butt, right=butt\n"
        "  cabinets 60 in, right=in-corner(90 deg), stops base and shoe\n"
        "  E: 50 in, left=in-corner(90 deg), right=butt"
    )
    assert (found["R-N-base"], found["R-N-shoe"]) == (40, 40)
    assert (found["R-N-rail"], found["R-N-crown"]) == (100, 100)
    # nothing of base stands on the cabinets' wall: it ends at the wall itself
    assert (found["R-E-base"], found["R-E-rail"]) == (50, 50)


def test_an_opening_up_to_the_ceiling_stops_the_crown_too() -> None:
    walls = (
        "  N: 40 in, left=butt, right=butt\n  opening 60 in{}\n  N2: 30 in, left=butt, right=butt"
    )
    assert lengths(walls.format(""))["R-N-crown"] == 130
    found = lengths(walls.format(", stops all"))
    assert (found["R-N-crown"], found["R-N2-crown"]) == (40, 30)


def test_an_opening_that_stops_nothing_is_one_piece_of_everything() -> None:
    found = lengths(
        "  N: 40 in, left=butt, right=butt\n  opening 20 in, stops nothing\n"
        "  N2: 30 in, left=butt, right=butt"
    )
    assert set(found.values()) == {90}
    assert len(found) == 4


def test_what_stops_returns_and_what_goes_on_does_not() -> None:
    """A rail that returns beside the window leaves the base to go on below it."""
    found = lengths(
        "  N: 40 in, left=butt, right=return\n  window 36 in, stops rail\n"
        "  N2: 30 in, left=return, right=butt"
    )
    assert (found["R-N-base"], found["R-N-rail"], found["R-N2-rail"]) == (106, 40, 30)


def test_shoe_returns_where_base_butts_against_the_casing() -> None:
    result = checked("  N: 40 in, left=butt, right=butt, shoe return, crown right=return")
    returns = {piece.id for piece in result.pieces if piece.kind is PieceKind.RETURN}
    assert returns == {"R-N-shoe-right-return", "R-N-crown-right-return"}
    ends = {piece.trim: piece.right.joint for piece in result.pieces if piece.kind is PieceKind.RUN}
    assert ends["base"] is ends["rail"] is Joint.BUTT
    assert ends["shoe"] is ends["crown"] is Joint.RETURN


def test_crown_with_an_end_of_its_own_does_not_go_on_over_the_door() -> None:
    walls = (
        "  N: 40 in, left=butt, right=butt{}\n  door 30 in\n  N2: 20 in, left=butt, right=butt{}"
    )
    assert lengths(walls.format("", ""))["R-N-crown"] == 90
    pieces = checked(walls.format(", crown return", ", crown left=return")).pieces
    found = {piece.id: piece.wall for piece in pieces}
    assert (found["R-N-crown"], found["R-N2-crown"]) == (40, 20)


def test_shoe_that_butts_in_a_corner_leaves_its_neighbour_square_too() -> None:
    corner = "left=in-corner(90 deg)"
    walls = f"  N: 40 in, left=butt, right=in-corner{{}}\n  E: 30 in, {corner}, right=butt"
    mitred, square = lengths(walls.format("")), lengths(walls.format(", shoe butt"))
    # mitred they meet behind: each is short by the base in front of which it stands
    assert (mitred["R-N-shoe"], mitred["R-E-shoe"]) == (Fraction(631, 16), Fraction(471, 16))
    assert (square["R-N-shoe"], square["R-E-shoe"]) == (Fraction(631, 16), Fraction(471, 16))
    pieces = {piece.id: piece for piece in checked(walls.format(", shoe butt")).pieces}
    assert pieces["R-N-shoe"].right.joint is pieces["R-E-shoe"].left.joint is Joint.BUTT
    assert pieces["R-N-base"].right.joint is Joint.IN_CORNER


@pytest.mark.parametrize(
    ("settings", "first", "second", "fits"),
    [
        ("", "shoe cope", "", ("mitred", "coped", "mitred", "square")),
        ("", "", "shoe left=cope", ("mitred", "square", "mitred", "coped")),
        ("corners: in-corner cope\n", "shoe mitre", "", ("square", "mitred", "coped", "mitred")),
    ],
)
def test_shoe_is_fitted_into_a_corner_otherwise_than_base(
    settings: str, first: str, second: str, fits: tuple[str, ...]
) -> None:
    walls = (
        f"  N 40, left=butt, in(90){first and ', '}{first}\n"
        f"  E 30, right=butt{second and ', '}{second}"
    )
    result = check_job(f'{TRIMS}{settings}room "R", trim base, shoe, open walk\n{walls}\n')
    assert not [one for one in result.diagnostics if one.code != "T214"]
    found = {piece.id: piece for piece in result.pieces}
    north = (found["R-N-base"].right.fit, found["R-N-shoe"].right.fit)
    east = (found["R-E-base"].left.fit, found["R-E-shoe"].left.fit)
    assert (*north, *east) == fits
    # However it is fitted, shoe stands on the face of base (9/16 in) of the other wall.
    assert (found["R-N-shoe"].length, found["R-E-shoe"].length) == (
        40 - Fraction(9, 16),
        30 - Fraction(9, 16),
    )


@every(
    "walls, code",
    [
        ("  N 40, left=butt, in, shoe cope\n  E 30, right=butt, shoe left=cope", "T305"),
        ("  N 40, left=butt, in, shoe in(91)\n  E 30, right=butt", "T257"),
        ("  N 40, left=butt, right=butt, shoe plumb", "T257"),
        ("  N: 40 in, left=butt, right=butt, sho return", "T210"),
        ("  N: 40 in, left=butt, right=butt, no shoe, shoe return", "T255"),
        ("  N: 40 in, shoe return, left=butt, right=butt", "T256"),
        ("  N: 40 in, left=butt, right=butt, shoe in-corner", "T257"),
        ("  N: 40 in, left=butt, right=butt, shoe return, shoe right=open", "T226"),
        (
            "  N: 40 in, left=butt, right=in\n  E: 40 in, right=butt, shoe left=return",
            "T257",
        ),
        ("  N: 40 in, left=butt\n  cabinets 6 ft, stops bas\n  E: 30 in, right=butt", "T210"),
    ],
)
def test_what_one_trim_cannot_do_is_said(walls: str, code: str) -> None:
    found = [one.code for one in checked(walls).diagnostics]
    assert [one for one in found if one != "T214"] == [code]


@pytest.mark.parametrize(
    ("line", "ways"),
    [
        (
            "  N: 40 in, left=butt, right=butt, no shoe, shoe return",
            ["  N: 40 in, left=butt, right=butt, no shoe"],
        ),
        (
            "  N: 40 in, shoe return, left=butt, right=butt",
            [
                "  N: 40 in, shoe left=return, left=butt, right=butt",
                "  N: 40 in, shoe right=return, left=butt, right=butt",
            ],
        ),
        (
            "  N: 40 in, left=butt, right=butt, shoe in-corner",
            [
                f"  N: 40 in, left=butt, right=butt, shoe right={end}"
                for end in ("butt", "return", "taper", "open")
            ],
        ),
        # at its wall's other end it can be what it is said to be, which is named first
        (
            "  N: 40 in, left=butt, right=in, shoe return\n  E: 30 in, right=butt",
            [
                f"  N: 40 in, left=butt, right=in, shoe {end}\n  E: 30 in, right=butt"
                for end in ("left=return", "right=cope", "right=mitre", "right=butt")
            ],
        ),
        (
            "  N: 40 in, left=butt, right=in\n  E: 30 in, right=butt, shoe cope",
            [
                f"  N: 40 in, left=butt, right=in\n  E: 30 in, right=butt, shoe {end}"
                for end in ("left=cope", "right=butt", "right=return", "right=taper", "right=open")
            ],
        ),
    ],
)
def test_each_remedy_mends_its_line(line: str, ways: list[str]) -> None:
    (found,) = [one for one in checked(line).diagnostics if one.code != "T214"]
    at = found.span.line - 1 - f"{TRIMS}{ROOM}".count("\n")
    made = []
    for mend in mends(found, line.split("\n")[at]):
        (edit,), walls = mend.edits, line.split("\n")
        walls[at] = walls[at][: edit.span.column - 1] + edit.text + walls[at][edit.span.end - 1 :]
        made.append("\n".join(walls))
    assert made == ways
    assert all(checked(one).ok for one in ways)


def test_crown_goes_on_over_cabinets_from_corner_to_corner() -> None:
    found = lengths(
        "  N: 40 in, left=butt, right=in\n"
        "  cabinets 72 in, left=in, right=in, stops base and shoe\n  S: 30 in, right=butt"
    )
    assert {name for name in found if "cabinets" in name} == {"R-cabinets-rail", "R-cabinets-crown"}
    assert found["R-cabinets-rail"] == 72


def test_a_return_beside_what_stops_nothing_is_made() -> None:
    text = (
        f'{TRIM}room "R", trim base, open walk\n'
        "  C: 40 in, left=butt, right=return\n  bare 40 in, stops nothing\n"
        "  D: 20 in, left=butt, right=butt"
    )
    made = {piece.id: piece.length for piece in check_job(text).pieces}
    assert {name.rpartition("-")[2] for name in made} == {"base", "return"}
    assert sorted(made.values()) == [Fraction(9, 16), 20, 40]
