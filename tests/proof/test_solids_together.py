"""Several joints at once as solids: scarfs on a stair, and every corner of a room that closes."""

from __future__ import annotations

import numpy as np
import pytest

from tests.every import every
from tests.proof.solids import apart, on_slope, overlap, rectangle, solid
from tests.proof.test_solids import (
    HEAD,
    ORIGIN,
    STANDING,
    TOUCH,
    cut,
    hangs,
    lower_edge_ends,
    rise_of,
    turn_of,
)
from trimlang.compiler import check_job

BAY = (
    # joint before the wall, corner in degrees, wall in inches: a bay in the first wall of a room
    ("in-corner", 90.0, 36.0),
    ("out-corner", 135.0, 40.0),
    ("in-corner", 135.0, 40.0),
    ("in-corner", 135.0, 40.0),
    ("out-corner", 135.0, 35.4375),
    ("in-corner", 90.0, 220.0),
    ("in-corner", 90.0, 168.0),
    ("in-corner", 90.0, 220.0),
)


@every("pitch", [12, 30, 42])
@every("angle", [15, 30, 45])
@every("ends", [("butt", "butt"), ("plumb", "level"), ("rake", "plumb")])
def test_scarfs_on_a_stair_close_face_on_face(
    ends: tuple[str, str], angle: int, pitch: int
) -> None:
    left, right = ends
    level = "  A: 40 in, left=butt, right=rake\n" if left == "rake" else ""
    found = cut(
        f"{level}  B: 300 in, left={left}, right={right}, rising right {pitch} deg",
        "trim tall",
        f"splices: angle {angle} deg",
    )
    section = rectangle(*STANDING["tall"])
    stair = on_slope(ORIGIN, pitch, section)
    parts = [found["R-B-tall-a"], found["R-B-tall-b"]]
    made = [lower_edge_ends(parts[0], stair, "left", 0.0),
            lower_edge_ends(parts[1], stair, "right", 300.0)]  # fmt: skip
    assert apart(made[0].right, made[1].left) < TOUCH
    assert overlap(*made) < TOUCH
    # both lie on one line: the lower edges run from the foot to where the tape ended
    top = rise_of(pitch, 300.0)
    assert np.linalg.norm(made[1].right[0] - top) < TOUCH


@pytest.mark.parametrize("trim", ["tall", "rail", "steep", "even"])
def test_all_pieces_of_a_room_with_a_bay_close_at_once(trim: str) -> None:
    lines = []
    for at, (joint, degrees, long) in enumerate(BAY):
        after, turn, _ = BAY[(at + 1) % len(BAY)]
        lines.append(f"  w{at}: {long} in, left={joint}({degrees} deg), right={after}({turn} deg)")
    result = check_job(f'{HEAD}\nroom "R" as R, trim {trim}\n' + "\n".join(lines) + "\n")
    assert result.ok, [one.message for one in result.diagnostics]
    found = {piece.id: piece for piece in result.pieces}
    heading, place, hung = 0.0, ORIGIN, []
    for at, (_, _, long) in enumerate(BAY):
        if at:
            heading += turn_of(*BAY[at][:2])
        along = hangs(trim, heading, place).axes[0]
        names = [name for name in found if name.startswith(f"R-w{at}-{trim}")]
        frame = hangs(trim, heading, place)
        if trim in STANDING:  # the walls' own points are at its back
            first = lower_edge_ends(found[min(names)], frame, "left", 0.0)
            last = lower_edge_ends(found[max(names)], frame, "right", long)
        else:
            first = solid(found[min(names)], frame, start=0.0)
            last = solid(found[max(names)], frame, stop=long)
        hung.append((first, last, len(names)))
        place = place + long * along
    assert np.linalg.norm(place) < 0.05, "the room itself comes round"
    for (first, last, count), (after, _, _) in zip(hung, [*hung[1:], hung[0]], strict=True):
        if count == 2:
            assert apart(first.right, last.left) < TOUCH
        # the room's own sixteenths are all that stands open where the walk comes round
        assert apart(last.right, after.left) < 0.05
        assert overlap(last, after) < 0.05
    for one in range(len(BAY) - 1):
        assert apart(hung[one][1].right, hung[one + 1][0].left) < TOUCH
