"""Each coped corner has one coped side, chosen for the piece's ends and the eye."""

from hypothesis import given
from hypothesis import strategies as st

import trimlang
from tests.jobs import BASE, SIXTEEN_FEET
from trimlang.joint_row import Fit

HEAD = f"""
{BASE}
{SIXTEEN_FEET}
room "R", trim base
"""


def surveyed(lines, head=HEAD):
    result = trimlang.compile(head + lines)
    assert result.ok, [one.message for one in result.diagnostics]
    return result


def fits(result):
    return {run.label: (run.left.fit, run.right.fit) for run in result.job.rooms[0].runs}


def square_room(door="S"):
    walls = {
        name: f"{name}: {size} in, left=in-corner, right=in-corner\n"
        for name, size in {"N": 144, "E": 120, "S": 144, "W": 120}.items()
    }
    half = {"N": 54, "E": 42, "S": 54, "W": 42}[door]
    walls[door] = (
        f"{door}1: {half} in, left=in-corner, right=butt\nopening 36 in, entrance\n"
        f"{door}2: {half} in, left=butt, right=in-corner\n"
    )
    return "corners: in-corner cope\n" + "".join(walls.values())


def test_the_walls_beside_the_line_of_sight_are_coped():
    # from the middle of the south wall the far corners lie at ±72, 120: the side
    # walls E and W are met at 31° and the far wall N at 59°, so E and W would be
    # coped at the far corners.  At the near corners S1 and S2 lie in line with the
    # eye itself, so they are coped there, and no piece is coped at both ends.
    assert fits(surveyed(square_room("S"))) == {
        "N": (Fit.SQUARE, Fit.SQUARE),
        "E": (Fit.COPED, Fit.SQUARE),
        "S1": (Fit.COPED, Fit.MITRED),
        "S2": (Fit.MITRED, Fit.COPED),
        "W": (Fit.SQUARE, Fit.COPED),
    }


def test_the_file_fixes_a_side_and_the_rest_makes_way():
    lines = square_room("S").replace("N: 144 in, left=in-corner", "N: 144 in, left=in-corner cope")
    chosen = fits(surveyed(lines))
    assert chosen["N"] == (Fit.COPED, Fit.SQUARE)
    assert chosen["W"][1] is Fit.SQUARE


def test_both_ends_only_where_the_file_leaves_no_other_way():
    lines = square_room("S").replace(
        "N: 144 in, left=in-corner, right=in-corner",
        "N: 144 in, left=in-corner cope, right=in-corner cope",
    )
    result = surveyed(lines)
    assert fits(result)["N"] == (Fit.COPED, Fit.COPED)
    assert [one.code for one in result.diagnostics] == ["T306"]


@given(
    st.sampled_from("NESW"),
    st.dictionaries(st.sampled_from("NESW"), st.sampled_from(["left", "right"]), max_size=3),
)
def test_every_corner_has_one_cope_and_unfixed_rooms_no_piece_with_two(door, fixed):
    lines = square_room(door)
    for wall, side in fixed.items():
        if wall != door:
            old = f"{wall}: "
            at = lines.index(f"\n{old}") if f"\n{old}" in lines else lines.index(old)
            line_end = lines.index("\n", at + 1)
            line = lines[at:line_end].replace(f"{side}=in-corner", f"{side}=in-corner cope")
            lines = lines[:at] + line + lines[line_end:]
    result = trimlang.compile(HEAD + lines)
    if not result.ok:
        assert {one.code for one in result.diagnostics} <= {"T305", "T306"}
        return
    runs = result.job.rooms[0].runs
    corners = 0
    for one, other in zip(runs, (*runs[1:], runs[0]), strict=True):
        if one.right.joint == "in-corner":
            assert {one.right.fit, other.left.fit} == {Fit.COPED, Fit.SQUARE}
            corners += 1
    assert corners == 4
    if not fixed:
        assert all((run.left.fit, run.right.fit) != (Fit.COPED, Fit.COPED) for run in runs)


def test_without_an_entrance_the_following_piece_is_coped():
    lines = square_room("S").replace(", entrance", "")
    chosen = fits(surveyed(lines))
    assert chosen["N"] == (Fit.COPED, Fit.SQUARE)
    assert chosen["S2"] == (Fit.MITRED, Fit.SQUARE)


def test_one_corner_may_be_mitred_where_the_others_are_coped():
    head = HEAD.replace('room "R"', 'corners: in-corner cope\nroom "R"')
    lines = (
        "  N: 144 in, left=in-corner, right=in-corner{right}\n"
        "  E: 120 in, left=in-corner{left}, right=in-corner\n"
        "  S: 144 in, left=in-corner, right=in-corner\n"
        "  W: 120 in, left=in-corner, right=in-corner\n"
    )
    for right, left in (("(mitre)", ""), ("", "(mitre)"), ("(mitre)", "(90 deg, mitre)")):
        found = fits(surveyed(lines.format(right=right, left=left), head))
        assert found["N"][1] is found["E"][0] is Fit.MITRED
        both = [found["E"][1], found["S"][0], found["S"][1], found["W"][0], found["W"][1]]
        assert sorted(both).count(Fit.COPED) == 2
    both = trimlang.compile(head + lines.format(right="(mitre)", left=" cope"))
    assert "T491" in {one.code for one in both.diagnostics}


def test_of_two_pieces_that_are_hard_to_hold_the_longer_is_coped():
    head = HEAD.replace('room "R"', 'corners: in-corner cope\nroom "R"')

    def ends(*inches):
        first, *rest = (f"{long} in" for long in inches)
        lines = [f"  A0: {first}, left=butt, right=in-corner"]
        lines += [f"  A{at}: {one}, right=in-corner" for at, one in enumerate(rest, 1)]
        lines[-1] = lines[-1].replace("in-corner", "butt")
        return fits(surveyed("\n".join(lines) + "\n", head))

    longer = ends(100, 7, 2, 90)
    assert (longer["A1"][1], longer["A2"][0]) == (Fit.COPED, Fit.SQUARE)
    # the longer one is not coped at both ends for that
    between = ends(100, 2, 7, 3, 90)
    assert between["A2"].count(Fit.COPED) == 1
