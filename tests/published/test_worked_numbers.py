"""Shoe, stairs, casing, scarfs, scribing and gaps, each number worked beside its job.

The rules are common practice, no source; the working is plain arithmetic and trigonometry with
values that anyone can look up (tan 30° = 0.57735, tan 35° = 0.70021, ...).
"""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from tests.jobs import BASE, CASE, CROWN, SHOE
from trimlang.compiler import check_job
from trimlang.joinery.piece import Piece
from trimlang.joint_row import Edge

TRIMS = f"""
saw: reaches 60 deg
{BASE}
trim plinth: 7/8 in thick, 6 in tall
{SHOE}
{CASE}
trim cap: 3/4 in thick, 4 1/2 in wide
{CROWN}
""" + "".join(f"stock {name}: 10 ft at 9\n" for name in "base plinth shoe case cap crown".split())


def job(
    walls: str, trims: str = "base", settings: str = ""
) -> tuple[Mapping[str, Piece], set[str]]:
    result = check_job(f'{TRIMS}{settings}\nroom "R" as R, trim {trims}, open walk\n{walls}\n')
    assert result.ok, [one.message for one in result.diagnostics]
    codes = {one.code for one in result.diagnostics}
    return {piece.id.removeprefix("R-"): piece for piece in result.pieces}, codes


def exact(piece: Piece) -> float:
    return float(piece.rounding.exact)


def test_shoe_before_its_base_round_both_kinds_of_corner() -> None:
    walls = (
        "A: 40 in, left=in-corner(90 deg), right=out-corner(90 deg)\n"
        "B: 30 in, left=out-corner, right=in-corner(90 deg)\n"
    )
    made, _ = job(walls, "base, shoe")
    # 9/16 off each inside end; past the outside corner 9/16 of base and 1/2 of shoe
    assert exact(made["A-shoe"]) == 40 - 0.5625 + 0.5625 + 0.5
    assert exact(made["B-shoe"]) == 30 + 0.5625 + 0.5 - 0.5625


def test_shoe_before_another_base_than_its_own() -> None:
    walls = (
        "A: 40 in, trim plinth, shoe, left=butt, right=in-corner(90 deg)\n"
        "B: 30 in, left=in-corner, right=butt\n"
    )
    made, _ = job(walls, "base, shoe")
    # A's shoe stops at B's base, 9/16 in; B's at A's plinth, 7/8 in
    assert exact(made["A-shoe"]) == 40 - 0.5625
    assert exact(made["B-shoe"]) == 30 - 0.875


def test_a_base_dies_into_a_thicker_one_in_an_acute_corner() -> None:
    walls = (
        "A: 40 in, trim plinth, left=butt, right=in-corner(80 deg)\n"
        "B: 30 in, trim base, left=in-corner(80 deg), right=butt"
    )
    made, _ = job(walls, "base")
    # the plinth's face lies 7/8 in off its wall, and B's wall meets it at 7/8 ÷ sin 80° = 0.8885;
    # at B's own face, 9/16 in off, at (7/8 + 9/16 × cos 80°) ÷ sin 80° = 0.9877
    assert exact(made["B-base"]) == pytest.approx(30 - 0.8885, abs=1e-4)


def test_a_stairs_ends() -> None:
    up = "A: 40 in, left=butt, right=rake\nB: 60 in, left=rake, right=plumb, rising right 35 deg"
    made, _ = job(up)
    # half of 35°: 5 1/4 × tan 17.5° = 5.25 × 0.315299 = 1.65532
    assert float(made["A-base"].right.inset) == pytest.approx(1.65532, abs=1e-5)
    assert float(made["A-base"].right.exact) == 17.5
    # at its upper end a plumb cut reaches further at the top: 5 1/4 × tan 35° = 3.67609
    assert made["B-base"].right.long_edge is Edge.TOP
    assert exact(made["B-base"]) == pytest.approx(63.67609, abs=1e-5)
    level, _ = job("B: 60 in, left=level, right=butt, rising right 35 deg")
    # level is 55° from square, and at the lower end longest at the top: tan 55° = 1.428148
    cut = level["B-base"].left
    assert (float(cut.exact), cut.long_edge) == (55, Edge.TOP)
    assert float(cut.inset) == pytest.approx(5.25 * 1.428148, abs=1e-5)
    assert exact(level["B-base"]) == pytest.approx(60 + 5.25 * 1.428148, abs=1e-5)
    foot, _ = job("B: 60 in, left=plumb, right=butt, rising right 35 deg")
    # at the lower end plumb is longest at the bottom
    assert (exact(foot["B-base"]), foot["B-base"].left.long_edge) == (60, Edge.BOTTOM)
    top, _ = job("B: 60 in, left=butt, right=level, rising right 35 deg")
    assert (exact(top["B-base"]), top["B-base"].right.long_edge) == (60, Edge.BOTTOM)


DOOR = "A: 40 in, left=butt, right=butt\nopening 32 in, {casing}, height 80 in"


def test_a_mitred_casing() -> None:
    made, _ = job(
        DOOR.format(casing="casing case"), settings="casings: reveal 1/4 in, off floor 1/8 in"
    )
    # legs: 80 + 1/4 of reveal + 2 1/4 of width - 1/8 off the floor; head: 32 + 2 × (1/4 + 2 1/4)
    assert exact(made["after-A-case-left-leg"]) == exact(made["after-A-case-right-leg"]) == 82.375
    assert exact(made["after-A-case-head"]) == 37
    head = made["after-A-case-head"]
    assert [float(cut.exact) for cut in (head.left, head.right)] == [45, 45]
    # their inner edges frame 32 1/2: 37 less a width at each end
    assert float(head.short_points) == 32.5


def test_a_butt_head_lies_over_the_legs() -> None:
    made, _ = job(
        DOOR.format(casing="casing case head cap"),
        settings="casings: reveal 1/4 in, overhang 1/2 in",
    )
    # legs end under the head, at 80 1/4; the head goes 1/2 past each: 32 + 2 × (1/4 + 2 1/4 + 1/2)
    assert exact(made["after-A-case-left-leg"]) == 80.25
    assert exact(made["after-A-cap-head"]) == 38
    assert made["after-A-cap-head"].left.exact == made["after-A-case-left-leg"].right.exact == 0


@pytest.mark.parametrize(("angle", "lap"), [(15, 0.15072), (30, 0.32476), (45, 0.5625)])
def test_a_scarf_laps_by_thickness_times_tangent(angle: int, lap: float) -> None:
    # 9/16 × tan 30° = 0.32476, × tan 45° = 9/16
    made, _ = job("A: 200 in, left=butt, right=butt", settings=f"splices: angle {angle} deg")
    parts = [made["A-base-a"], made["A-base-b"]]
    assert sum(map(exact, parts)) == pytest.approx(200 + lap, abs=1e-5)
    assert [float(part.right.exact or part.left.exact) for part in parts] == [angle, angle]


@pytest.mark.parametrize(
    ("walls", "over"),
    [
        # who comes in sees the near piece run over the far one, and no open end
        ("opening 32 in, entrance\nA: 200 in, left=butt, right=butt", "left"),
        ("A: 200 in, left=butt, right=butt\nopening 32 in, entrance", "right"),
        ("A: 200 in, left=butt, right=butt", "left"),
    ],
)
@pytest.mark.parametrize("trim", ["base", "crown"])
def test_the_piece_nearer_the_entrance_laps_over(walls: str, over: str, trim: str) -> None:
    made, _ = job(walls, trim)
    ends = {"left": made[f"A-{trim}-a"].right, "right": made[f"A-{trim}-b"].left}
    # what lies over is the longer at the face
    assert {side: cut.long_edge for side, cut in ends.items()} == {
        side: Edge.FACE if side == over else Edge.BACK for side in ends
    }


def test_a_scribe_takes_the_widest_gap_unless_shoe_covers_it() -> None:
    wall = "A: 40 in, left=butt, right=butt, floor gap {gap}"
    assert job(wall.format(gap="3/8 in"))[0]["A-base"].scribe == 0.375
    assert job(wall.format(gap="3/8 in"), "base, shoe")[0]["A-base"].scribe == 0
    # shoe of 3/4 in covers less than 3/4 in
    assert job(wall.format(gap="3/4 in"), "base, shoe")[0]["A-base"].scribe == 0.75
    made, _ = job(wall.format(gap="3/4 in"), "base, shoe")
    assert made["A-shoe"].scribe == 0


@pytest.mark.parametrize(("gap", "seen"), [("1/8 in", False), ("3/16 in", True)])
def test_tops_that_differ_by_more_than_an_eighth_are_seen(gap: str, seen: bool) -> None:
    _, codes = job(
        f"A: 40 in, left=butt, right=in-corner, floor gap {gap}\n"
        "B: 40 in, left=in-corner, right=butt"
    )
    assert ("T407" in codes) == seen


def test_how_wide_a_joint_stands_open() -> None:
    coarse = "saw: reads to 5 deg\n"
    # two mitres of 45° for 43°: 2 × 9/16 × (1 - 0.932515) × cos 43° = 0.0555247
    made, codes = job("A: 40 in, left=in-corner(94 deg), right=butt", settings=coarse)
    assert float(made["A-base"].left.gap) == pytest.approx(0.0555247, abs=1e-6)
    assert made["A-base"].left.opens_at is Edge.FACE
    assert "T405" not in codes  # up to 1/16 in is left to caulk
    _, codes = job(
        "A: 40 in, left=in-corner(94 deg), right=butt",
        settings=coarse + "corners: in-corner gap 3/64 in\n",
    )
    assert "T405" in codes
    # outside the steeper mark closes at the face: 45° for 43°, open at the back
    made, codes = job("A: 40 in, left=out-corner(94 deg), right=butt", settings=coarse)
    assert float(made["A-base"].left.setting) == 45
    assert made["A-base"].left.opens_at is Edge.BACK
    assert "T405" not in codes
    # one end set against a crooked wall opens half as far: 9/16 × (tan 22° - tan 20°) × cos 22°
    wall = "A: 40 in, left=butt, right=in-corner\nbare 4 ft, left=in-corner(68 deg)"
    made, _ = job(wall, settings=coarse)
    assert float(made["A-base"].right.gap) == pytest.approx(0.0208877, abs=1e-4)


def test_how_wide_a_crowns_corner_stands_open() -> None:
    """Crown set to 30° and 35° where 31.6190° and 33.8629° are right, by points in space."""
    import numpy as np

    made, _ = job(
        "A: 40 in, left=in-corner(90 deg), right=butt",
        "crown",
        "saw: reads to 5 deg\ncorners: in-corner gap 1 in",
    )
    cut = made["A-crown"].left
    assert (float(cut.setting), float(cut.bevel_setting)) == (30, 35)
    # how far along the piece the cut lies at each corner of the section, u up and v out
    width, thick, spring = 3.625, 0.6875, np.radians(38)

    def ends(mitre: float, bevel: float) -> dict[tuple[float, float], float]:
        m, b = np.radians([mitre, bevel])
        return {
            (u, v): u * np.tan(m) + v * np.tan(b) / np.cos(m)
            for u in (0.0, width) for v in (0.0, thick)
        }  # fmt: skip

    exact_mitre = np.degrees(np.arctan(np.sin(spring)))
    exact_bevel = np.degrees(np.arcsin(np.cos(spring) * np.sqrt(0.5)))
    right, made_so = ends(exact_mitre, exact_bevel), ends(30, 35)
    # inside, what is cut back less stands out more: there the pieces touch first
    early = {at: right[at] - made_so[at] for at in right}
    touch = max(early.values())
    face = max(touch - early[u, thick] for u in (0.0, width))
    # each piece is off along the wall by that, square to the joint by its cosine of 45°
    assert float(cut.gap) == pytest.approx(2 * face * np.sqrt(0.5), abs=1e-6)
