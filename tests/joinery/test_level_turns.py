"""Crown that climbs with its ceiling and turns a corner level: the pieces as solids, by tickets."""

from math import cos, radians, tan

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests import jobs
from tests.every import every
from tests.joinery.test_sloped_ceilings import (
    UP,
    WIDE,
    Wall,
    attic,
    ceiling_of,
    end_shape,
    hung,
    pieces,
    said,
)
from trimlang.compiler import check_job
from trimlang.joinery.piece import Piece


def turned(corner: float, slope: float, spring: int = 38) -> dict[str, Piece]:
    result = attic(
        f"  N: 90 in, left=butt, right=in-corner({corner} deg)\n"
        f"  E: 80 in, left=in-corner, right=butt{said(slope)}, transition left",
        spring,
    )
    assert result.ok, [one.message for one in result.diagnostics]
    return {piece.id.removeprefix("A-"): piece for piece in result.pieces}


@every("corner", [90, 80, 100])
@every("slope", [20, 8, 35, -15])
@every("spring", [38, 45])
def test_level_crown_the_piece_and_what_climbs_close(corner, slope, spring) -> None:
    got = turned(corner, slope, spring)
    piece = got["E-crown-left-transition"]
    long = float(piece.rounding.exact)
    north, level, climbs = Wall(0, 0), Wall(180 - corner, 0), Wall(180 - corner, slope)
    # in the corner: the level run's end and the piece's, as in any room
    a = end_shape(got["N-crown"].right, north.edge, *hung(north, UP, spring))
    b = end_shape(piece.left, -level.edge, *hung(level, UP, spring))
    assert a == pytest.approx(b, abs=1e-9)
    # at the other end: the piece's and the climbing run's
    start = long * level.edge
    c = start + end_shape(piece.right, level.edge, *hung(level, UP, spring))
    ceiling = np.cross(climbs.edge, climbs.out)
    ceiling *= np.sign(ceiling[2])
    d = start + end_shape(got["E-crown"].left, -climbs.edge, *hung(climbs, ceiling, spring))
    assert c == pytest.approx(d, abs=1e-9)
    # its ceiling edge is a point: there both ends meet, and the ceiling is touched only there
    assert b[2] == pytest.approx(c[2], abs=1e-6)
    # what climbs begins behind it, along the slope
    assert float(got["E-crown"].rounding.exact) == pytest.approx(
        (80 - long) / cos(radians(slope)), rel=1e-9
    )
    if corner == 90:
        # the level run's whole ceiling edge lies in the plane of that ceiling
        square = ceiling_of(north, climbs)
        assert (a[2] - d[2]) @ square == pytest.approx(0, abs=1e-6)
    # the stick gives the wall edge, and the point where the ceiling edge ends
    assert float(piece.length) >= max(c[0] @ level.edge, b[2] @ level.edge) - 1 / 16


def test_its_wall_edge_is_worked_by_hand() -> None:
    # spring 45: stands out and hangs 3 5/8 × 0.70711 = 2.5633; half of 20° has the tangent 0.17633
    assert float(turned(90, 20, 45)["E-crown-left-transition"].wall) == pytest.approx(
        2.5633 * 1.17633, abs=1e-3
    )
    down = turned(90, -20, 45)["E-crown-left-transition"]
    assert float(down.wall) == pytest.approx(2.5633 * (1 - tan(radians(10))), abs=1e-3)
    assert WIDE == 3.625


def test_each_ticket_says_what_to_do() -> None:
    got = turned(90, 20)
    assert "rises 20° from the wall: plane its ceiling bearing" in got["N-crown"].all_notes
    assert "left: meets a level piece whose wall edge is 2 3/4 in long" in got["E-crown"].all_notes
    assert got["E-crown-left-transition"].mates == ("A-E-crown",)
    assert "falls 20°" in turned(90, -20)["N-crown"].all_notes


def test_a_wall_between_two_slopes_that_hung_in_two_ways_hangs_in_one() -> None:
    lines = (
        "  A: 90 in, left=butt, right=in(90 deg), ceiling rising right 20 deg{}\n"
        "  B: 80 in, left=in, right=in(90 deg)\n"
        "  C: 90 in, left=in, right=butt, ceiling rising right 20 deg{}"
    )
    assert "T451" in {one.code for one in attic(lines.format("", "")).diagnostics}
    assert "T451" in {one.code for one in attic(lines.format(", transition right", "")).diagnostics}
    assert pieces(lines.format(", transition right", ", transition left"))
    # the other way out: a block that the crown ends at
    block = "block corbel: 4 in wide, 4 in tall, at 9.00\n"
    text = (
        f"{jobs.CROWN}\nstock crown: 16 ft at 90\n{block}"
        'room "Attic" as A, trim crown, open walk\n' + lines.format("", "")
    ).replace("B: 80 in, left=in", "B: 80 in, left=in(block corbel stops crown)")
    found = check_job(text)
    assert not {one.code for one in found.diagnostics} & {"T451", "T452"}


def test_base_goes_straight_on_where_the_crown_above_it_bends() -> None:
    lines = (
        "  A: 60 in, trim base, crown, left=butt, right=rake, ceiling rising right 20 deg\n"
        "  B: 50 in, trim base, crown, left=rake, right=butt, ceiling rising left 20 deg"
    )
    got = attic(lines)
    assert got.ok
    lengths = {piece.id: piece.to_mark for piece in got.pieces}
    assert lengths["A-A-base"] == 110
    alone = attic(lines.replace("trim base, ", ""))
    assert {one.id: one.to_mark for one in alone.pieces}.items() <= lengths.items()


@given(st.integers(2, 40), st.booleans(), st.sampled_from([38, 45, 52]))
def test_mirrored_and_metric_and_tidy_it_is_the_same_piece(slope, down, spring) -> None:
    rising, falling = ("left", "right") if down else ("right", "left")
    one = attic(
        f"  N: 90 in, left=butt, right=in(90 deg)\n"
        f"  E: 80 in, left=in, right=butt, ceiling rising {rising} {slope} deg, transition left",
        spring,
    )
    other = attic(
        f"  E: 2032 mm, left=butt, right=in(90 deg), ceiling rising {falling} {slope} deg,"
        " transition right\n  N: 2286 mm, left=in, right=butt",
        spring,
    )
    mine, its = ({p.id.replace("right", "left"): p for p in r.pieces} for r in (one, other))
    assert mine.keys() == its.keys()
    for name, piece in mine.items():
        assert piece.to_mark == its[name].to_mark
        ends = piece.left, its[name].right
        assert len({(end.exact, end.bevel, end.long_edge) for end in ends}) == 1


def test_a_transition_that_is_rounded_past_its_point_is_a_piece() -> None:
    piece = turned(90, 14)["E-crown-left-transition"]
    # 2.583 in long to the point in which its cuts meet, on the ticket 2 9/16 in
    assert float(piece.rounding.exact) == pytest.approx(2.583, abs=0.001)
    assert float(piece.to_mark) == 2.5625
