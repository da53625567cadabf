"""Crown's scarfs and gaps, and cuts across the face, worked by hand."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest

from tests.jobs import CASE, CROWN, CROWN_STOCK, walls
from trimlang.compiler import check_job
from trimlang.joinery.at_the_saw import Hand, MitreSaw, at_saw, nested
from trimlang.joinery.faces import face_cut
from trimlang.joinery.piece import Lean, Piece
from trimlang.joinery.pieces import joinery
from trimlang.joinery.splice_choices import other_cuts
from trimlang.joint_row import Edge, Fit
from trimlang.joints import Joint
from trimlang.language.end_facts import Side
from trimlang.settings.table import Settings

CROWN_SOLD = f"{CROWN}\n{CROWN_STOCK}\n"


def crown(line: str, settings: str = "") -> tuple[Piece, ...]:
    text = walls(line, settings=CROWN_SOLD + settings).replace(
        "trim base, open", "trim crown, open"
    )
    result = check_job(text)
    assert result.ok, [one.message for one in result.diagnostics]
    return result.pieces


def test_a_scarf_in_crown_is_the_blades_tilt_alone() -> None:
    one, other = crown("N: 14 ft, left=butt, right=butt", "splices: angle 30 deg\n")
    for cut in (one.right, other.left):
        assert (cut.joint, cut.setting, cut.bevel, cut.bevel_setting) == (Joint.SPLICE, 0, 30, 30)
        # 11/16 × tan 30° = 0.396926
        assert float(cut.inset) == pytest.approx(0.6875 * 0.5773503, abs=1e-6)
    # no entrance: the left piece laps over, so the cuts run parallel, to the right
    assert (one.right.long_edge, other.left.long_edge) == ("face", "back")
    assert one.right.lean is other.left.lean is Lean.RIGHT


def test_a_square_end_of_crown_keeps_its_joint_and_fit() -> None:
    one, other = crown(
        "N: 40 in, left=open, right=in-corner cope\n  E: 40 in, left=in-corner, right=butt"
    )
    assert (one.left.joint, one.left.setting, one.left.bevel) == (Joint.OPEN, 0, 0)
    assert (one.right.fit, other.left.fit) == (Fit.COPED, Fit.SQUARE)
    assert (other.left.joint, other.left.inset) == (Joint.IN_CORNER, 0)


def test_what_the_saws_steps_leave_open_at_crown() -> None:
    (one,) = crown(
        "N: 40 in, left=butt, right=out-corner(90 deg)", "corners: out-corner gap 1 in\n"
    )
    # flat: mitre 31.6196°, bevel 33.8630°; the saw reads 31.5° and 34°
    # the blade runs u × tan(mitre) + v × tan(bevel) ÷ cos(mitre) along the crown, u across its
    # width and v through its thickness: so set, 0.00287 u less and 0.00298 v more.  They touch at
    # the wall edge's face and are apart by 2 × 0.00287 × 3 5/8 × sin 45° at the ceiling's
    assert float(one.right.gap) == pytest.approx(0.0147, abs=3e-4)
    assert one.right.opens_at is Edge.FACE
    assert not one.right.assumed
    assert crown("N: 40 in, left=butt, right=out-corner")[0].right.assumed


def test_cuts_across_the_face() -> None:
    text = walls(
        "A: 40 in, left=butt, right=rake\n"
        "  B: 9 ft, left=rake, right=plumb, rising right 36.3 deg\n"
        "  bare 3 ft\n"
        "  C: 40 in, left=level, right=plumb, rising right 36 deg",
        settings="corners: in-corner gap 1 in\nsaw: reads to 1 deg, reaches 60 deg\n",
    )
    result = check_job(text)
    assert result.ok, result.diagnostics
    level, rising, other = result.pieces
    # the trim turns upwards: both rakes are 18.15°, longest at the bottom, and run one way
    for cut, lean in ((level.right, Lean.RIGHT), (rising.left, Lean.LEFT)):
        assert (cut.joint, cut.fit, cut.long_edge) == (Joint.RAKE, Fit.MITRED, "bottom")
        assert (cut.exact, cut.setting, cut.assumed) == (Fraction("18.15"), 18, False)
        # the blade runs as the ticket and plan.json say, from the fence towards you
        assert cut.lean is lean
        # 2 × 5 1/4 × (tan 18.15° − tan 18°) × cos 18.15° = 0.0289
        assert float(cut.gap) == pytest.approx(0.0289, abs=3e-4)
    assert (rising.right.exact, rising.right.long_edge) == (Fraction("36.3"), "top")
    assert (other.left.exact, other.left.long_edge) == (54, "top")


def test_other_places_for_a_splice_keep_its_rules() -> None:
    text = walls("N: 40 ft, left=butt, right=butt", settings="splices: least 30 in\n")
    (splice,) = check_job(text).splices
    cuts = other_cuts(splice, [Fraction(30), Fraction(100), Fraction(1)])
    total = 480 + 2 * Fraction(9, 16)
    assert len(cuts) >= 3
    assert len(set(cuts)) == len(cuts)
    for cut in cuts:
        assert len(cut) == 3
        assert cut != splice.cut
        assert sum(cut) == total
        assert all(30 <= length <= 192 for length in cut)
        assert all(length % Fraction(1, 16) == 0 for length in cut[:-1])
        assert cut[-1] <= 192 - Fraction(1, 16)
    # the piece that an offcut of 100 in gives comes with full sticks behind it
    assert any(cut[0] == 100 and cut[1] == 192 for cut in cuts)
    assert any(max(one - other for one, other in pairwise(sorted(cut, reverse=True))) < 1
               for cut in cuts)  # fmt: skip


def test_crown_at_a_wide_corner() -> None:
    (one,) = crown("N: 40 in, left=in-corner(120 deg), right=out-corner(120 deg)")
    # standing, the corner is mitred 30°: 3 5/8 × sin 38° × tan 30° = 1.28850
    assert float(one.left.inset) == pytest.approx(1.28850, abs=1e-4)
    assert float(one.right.inset) == pytest.approx(1.28850, abs=1e-4)


def test_crowns_cut_runs_to_where_the_table_is_swung() -> None:
    (one,) = crown("N: 40 in, left=in-corner, right=in-corner")
    assert (one.left.lean, one.right.lean) == (Lean.LEFT, Lean.RIGHT)
    (other,) = crown("N: 40 in, left=out-corner, right=out-corner")
    assert (other.left.lean, other.right.lean) == (Lean.RIGHT, Lean.LEFT)


def test_a_crown_corner_by_its_diagonal_tells_how_far_it_may_be_off() -> None:
    corner = "out-corner(corner by 36 in, 36 in, diagonal 51 in)"
    (one,) = crown(f"N: 40 in, left=butt, right={corner}")
    # a sixteenth in the diagonal is 51 × 0.0625 / 36² radians = 0.1409°
    assert one.right.corner_error is not None
    assert float(one.right.corner_error) == pytest.approx(0.1409, abs=3e-4)


def test_a_cut_across_the_face_at_no_angle_is_square() -> None:
    cut = face_cut(Joint.RAKE, Side.LEFT, Fraction(0), Fraction(5), Edge.TOP, Settings())
    assert (cut.lean, cut.long_edge, cut.inset, cut.gap) == (Lean.UPRIGHT, Edge.BOTH, 0, 0)


def test_crown_whose_ceiling_edge_comes_to_nothing_is_no_piece() -> None:
    # 2 1/8 in of wall; standing out 2.2318 in, the left mitre of 44° takes 2.1552 in of the
    # ceiling edge, and the right one of 1/2° gives but 0.0195 in back
    line = "N: 2 1/8 in, left=in-corner(92 deg), right=out-corner(179 deg)"
    text = walls(line, settings=CROWN_SOLD).replace("trim base, open", "trim crown, open")
    result = check_job(text)
    assert "T402" in {one.code for one in result.diagnostics}
    assert not result.pieces


def test_crown_whose_length_along_the_wall_rounds_to_nothing_is_no_piece() -> None:
    # 1/64 in of wall rounds down to none; the return's mitre makes the ceiling edge 2 in long
    job = walls("N: 1/64 in, left=butt, right=return", settings=CROWN_SOLD)
    result = check_job(job.replace("trim base, open", "trim crown, open"))
    assert "T402" in {one.code for one in result.diagnostics}


def test_crown_goes_round_a_step_in_the_wall_smaller_than_it_stands_out() -> None:
    step = "left=in-corner(90 deg), right=out-corner(90 deg)"
    (one,) = crown(f"N: 1/4 in, {step}")
    # standing out 3 5/8 × sin 38° = 2.2318 in, the ceiling edge loses that at the left and gains
    # it at the right: it is as long as the wall edge
    assert (one.wall_edge, one.back, one.face) == (Fraction(1, 4),) * 3
    assert float(one.left.inset) == pytest.approx(2.2318, abs=1e-4)
    # the stick must reach from the wall edge's left point to the ceiling edge's right one
    assert Fraction(1, 4) + one.right.inset <= one.length <= Fraction(5, 16) + one.right.inset
    assert one.short_points < 0
    # coped, it would begin 2.2318 in along a wall of 1/4 in
    coped = walls(f"N: 1/4 in, {step}".replace("(90 deg),", "(90 deg) cope,"), settings=CROWN_SOLD)
    result = check_job(coped.replace("trim base, open", "trim crown, open"))
    assert [one.code for one in result.diagnostics if one.severity == "error"] == ["T402"]


def test_what_lies_flat_on_the_saw() -> None:
    (one,) = crown("N: 40 in, left=in-corner, right=out-corner")
    assert (one.left.lies_flat, one.right.lies_flat) == (True, True)
    (base,) = check_job(walls("N: 40 in, left=in-corner, right=butt")).pieces
    assert (base.left.lies_flat, base.right.lies_flat) == (False, False)
    text = walls(
        "A: 40 in, left=butt, right=rake\n  B: 9 ft, left=rake, right=plumb, rising right 36 deg"
    )
    level, rising = check_job(text).pieces
    assert (level.right.long_edge, level.right.lies_flat) == ("bottom", True)
    assert (rising.right.long_edge, rising.right.lies_flat) == ("top", True)
    case = f"{CASE}\nstock case: 7 ft at 6.10"
    opening = "N: 40 in, left=butt, right=butt\n  opening 32 in, casing case, height 60 in"
    head = check_job(walls(opening, settings=case)).pieces[-1]
    assert (head.left.long_edge, head.left.lies_flat) == (Edge.OUTER, True)


@pytest.mark.parametrize(("side", "keep"), [("left", "right"), ("right", "left")])
def test_a_crown_return_nested_lies_as_its_mitred_end_asks(side: str, keep: str) -> None:
    ends = {"left": "butt", "right": "butt", side: "return"}
    _, returned = crown(f"N: 40 in, left={ends['left']}, right={ends['right']}")
    # a return at the right end is mitred at its own left one
    cut = returned.right if side == "left" else returned.left
    at = nested(cut, Side(side).other)
    assert at is not None
    assert at.piece == keep


def test_full_sticks_behind_a_first_piece_leave_the_least_for_the_last() -> None:
    # 33 ft and two laps of 9/16 are 397 1/8; behind 190 in, a full stick of 192 would leave 15 1/8
    text = walls("N: 33 ft, left=butt, right=butt", settings="splices: least 30 in\n")
    job = check_job(text).job
    (splice,) = joinery(job)[1]
    assert splice.cut == (192, Fraction(1401, 8), 30)
    assert (190, Fraction(1417, 8), 30) in other_cuts(splice, [Fraction(190)])


def test_an_offcut_gives_crown_less_what_the_ceiling_edge_reaches_past() -> None:
    line = "N: 31 ft, left=butt, right=out-corner"
    text = walls(line, settings=CROWN_SOLD).replace("trim base, open", "trim crown, open")
    (splice,) = joinery(check_job(text).job)[1]
    # standing out 2.2318 in, at a mitre of 45.5° 2.2710 in, on the tape 2 5/16
    assert splice.past == Fraction(37, 16)
    assert any(cut[0] == 100 - Fraction(37, 16) for cut in other_cuts(splice, [Fraction(100)]))


@pytest.mark.parametrize("side", ["left", "right"])
def test_a_crown_return_is_cut_as_the_outside_corner_that_it_makes(side: str) -> None:
    ends = {"left": "butt", "right": "butt", side: "return"}
    _, returned = crown(f"N: 40 in, left={ends['left']}, right={ends['right']}")
    other = "right" if side == "left" else "left"
    corner = {"left": "butt", "right": "butt", other: "out-corner(90 deg)"}
    (like,) = crown(f"N: 40 in, left={corner['left']}, right={corner['right']}")
    assert getattr(returned, other).crown == getattr(like, other).crown
    # it comes to nothing at the wall edge: its number is along the ceiling edge
    assert returned.wall_edge is None
    assert returned.to_mark == returned.length


def test_a_crowns_scarf_says_how_the_piece_lies() -> None:
    # a blade that tilts to the left leaves the piece at its left longest at the back: the one
    # that lies under its mate is kept there, with its end pointing right
    over, under = crown("N: 40 in, left=butt, right=splice\n  E: 40 in, left=splice, right=butt")
    assert (over.right.long_edge, under.left.long_edge) == (Edge.FACE, Edge.BACK)
    for saw, edge, hand in (((Hand.LEFT,), "wall", "left"), ((Hand.RIGHT,), "ceiling", "right")):
        for cut, side, piece in ((over.right, "right", "right"), (under.left, "left", "left")):
            at = at_saw(cut, Side(side), MitreSaw(saw))
            kept = piece if edge == "wall" else {"left": "right", "right": "left"}[piece]
            assert (at.mitre, at.bevel, at.tilt) == (0, 45, hand)
            assert (at.pose.fence, at.piece) == (f"{edge} edge", kept)
