"""What must hold of any room."""

from dataclasses import replace
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

import trimlang
from tests.jobs import BASE, CROWN, SHOE, SIXTEEN_FEET
from trimlang.compiler import check_job
from trimlang.joinery.piece import Lean

HEAD = f"""
{BASE}
{SHOE}
{SIXTEEN_FEET}
stock shoe: 16 ft at 8.00
room "R", trim base, shoe, open walk
"""
LENGTHS = st.integers(30 * 16, 150 * 16).map(lambda n: f"{n // 16} {n % 16}/16 in")
CORNERS = st.one_of(
    st.sampled_from(["in-corner", "out-corner"]),
    st.builds("{}({} deg)".format, st.sampled_from(["in-corner", "out-corner"]),
              st.integers(90, 150)),
)  # fmt: skip
FREE = st.sampled_from(["butt", "return", "open"])
SIDES = {"left": "right", "right": "left"}


@st.composite
def rooms(draw):
    """Runs as (length, left, right): each corner is written at both its runs."""
    count = draw(st.integers(1, 5))
    joints = [draw(FREE), *(draw(CORNERS) for _ in range(count - 1)), draw(FREE)]
    return [(draw(LENGTHS), joints[at], joints[at + 1]) for at in range(count)]


def text(runs):
    return HEAD + "\n".join(
        f"R{number}: {long}, left={left}, right={right}" for number, (long, left, right) in runs
    )


def mirrored_cut(cut):
    lean = {Lean.LEFT: Lean.RIGHT, Lean.RIGHT: Lean.LEFT}.get(cut.lean, cut.lean)
    return replace(cut, lean=lean)


@given(rooms())
def test_mirroring_a_room_swaps_left_and_right_and_changes_nothing_else(room):
    numbered = list(enumerate(room))
    as_seen = trimlang.compile(text(numbered))
    turned = [(number, (long, right, left)) for number, (long, left, right) in reversed(numbered)]
    in_mirror = trimlang.compile(text(turned))
    assert as_seen.ok, [one.message for one in as_seen.diagnostics]

    def key(piece, *, mirrored):
        name = piece.id
        if mirrored:
            name = name.replace("-left-", "-LEFT-").replace("-right-", "-left-")
            name = name.replace("-LEFT-", "-right-")
        return name

    there = {key(piece, mirrored=True): piece for piece in in_mirror.pieces}
    here = {key(piece, mirrored=False): piece for piece in as_seen.pieces}
    assert here.keys() == there.keys()
    for name, piece in here.items():
        other = there[name]
        assert piece.length == other.length
        assert (piece.back, piece.face) == (other.back, other.face)
        assert piece.rounding == other.rounding
        assert piece.left == mirrored_cut(other.right)
        assert piece.right == mirrored_cut(other.left)


@given(rooms())
def test_both_sides_of_a_corner_close_it_within_the_saws_step(room):
    result = trimlang.compile(text(enumerate(room)))
    runs = result.job.rooms[0].runs
    pieces = {(piece.run, piece.trim): piece for piece in result.pieces if piece.kind == "run"}
    for one, other in pairwise(runs):
        for trim in ("base", "shoe"):
            first = pieces[one.label, trim].right
            second = pieces[other.label, trim].left
            assert first.exact == second.exact
            assert first.setting == second.setting
            assert first.long_edge == second.long_edge
            assert {first.lean, second.lean} == {Lean.LEFT, Lean.RIGHT}
            corner = one.right.corner
            if corner is not None:
                off = 180 - first.setting - second.setting - corner
                assert abs(off) <= result.job.settings.saw_step


@given(st.integers(10 * 16, 140 * 16))
def test_scaling_a_whole_job_to_millimetres_changes_no_exact_length(sixteenths):
    def exact(unit, per_sixteenth):
        # the same walls in the other unit; a sixteenth is 1.5875 mm exactly
        long = f"{sixteenths * per_sixteenth / 10000:.4f} {unit}"
        job = HEAD + f"N: {long}, left=in-corner, right=out-corner"
        return [piece.rounding.exact for piece in trimlang.compile(job).pieces]

    assert exact("in", 625) == exact("mm", 15875)


ENDS = st.sampled_from(
    ["in-corner", "out-corner", "butt", "return", "open", "splice", "rake", "plumb", "level",
     "in-corner cope", "in-corner(135 deg)", "out-corner(300 deg)", "out-corner(30 deg)",
     "out-corner(corner by 30 in, 36 in, diagonal 50 in)", "in-corner(taken point)"]
)  # fmt: skip
EXTRAS = st.sampled_from(
    ["", ", rising right 36 deg", ", rising left 7 in over 10 in", ", floor gap 1/4 in",
     ", first stud 5 in", ", splice", ", no splice", ", taken point", ", no shoe", ", trim crown"]
)  # fmt: skip
GAPS = st.sampled_from(
    ["opening 32 in, entrance", "opening 32 in, casing case, height 80 in", "bare 40 in",
     "opening 30 in, left=in-corner, right=out-corner", "corners: in-corner cope",
     "taken point", "closes within 1/4 in"]
)  # fmt: skip
WALLS = st.builds(
    "{}, left={}, right={}{}".format,
    st.sampled_from(["1/2 in", "3 in", "40 in", "13 ft", "61 ft"]),
    ENDS,
    ENDS,
    EXTRAS,
)


@given(st.lists(st.one_of(WALLS, WALLS, GAPS), max_size=8), st.booleans())
def test_any_walls_at_all_give_pieces_or_reasons(lines, open_walk):
    head = HEAD.replace("room", f"{CROWN}\n"
                        "trim case: 3/4 in thick, 2 1/4 in wide\nstock crown: 12 ft at 9\n"
                        "stock case: 7 ft at 6\nroom")  # fmt: skip
    if not open_walk:
        head = head.replace(", open walk", "")
    text = "\n".join(
        line if line[0].isalpha() else f"R{number}: {line}" for number, line in enumerate(lines)
    )
    result = check_job(head + text)
    for piece in result.pieces:
        assert piece.length > 0
        assert (piece.length * 16).denominator == 1
        assert all(mate in {one.id for one in result.pieces} for mate in piece.mates)
    ids = [piece.id for piece in result.pieces]
    assert len(ids) == len(set(ids))
