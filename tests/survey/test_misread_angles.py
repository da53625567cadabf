"""One corner that was measured some degrees off square, and others that nobody measured."""

import trimlang
from tests.every import every
from tests.jobs import BASE, SIXTEEN_FEET

CORNERS = "left=in-corner, right=in-corner"


def room(walls, angles=("87 deg",)):
    """A room whose first corners have these angles."""
    said = [f"({angle})" for angle in angles] + [""] * (4 - len(angles))
    lines = [
        f"{name}: {long}, {CORNERS}{angle}"
        for name, long, angle in zip("NESW", walls, said, strict=True)
    ]
    return trimlang.compile("\n".join([BASE, SIXTEEN_FEET, 'room "R", trim base', *lines]))


def named(result):
    (closing,) = result.closings
    return [slip.words for slip in closing.slips]


SQUARE = ("12 ft", "9 ft", "12 ft", "9 ft")
# by hand: 87° at the right end of N and 90° at those of E and S turn these by 3° from N, so S is
# 144 × cos 3° = 143 13/16 in long, and W 108 - 144 × sin 3° = 100 7/16
TRAPEZOID = ("144 in", "108 in", "143 13/16 in", "100 7/16 in")


@every(
    "walls, angles, words",
    [
        (SQUARE, ("87 deg", "90 deg", "90 deg", "90 deg"), "run N and run E is 90°, not 87°"),
        (TRAPEZOID, ("87 deg",), "run W and run N is 93°, not square"),
        (
            ("156 in", *TRAPEZOID[1:]),
            ("87 deg",),
            "run W and run N is 93°, not square; and besides run N read a foot too long",
        ),
    ],
)
def test_the_corner_is_named_and_the_wall_that_is_wrong_besides(walls, angles, words):
    (slip,) = named(room(walls, angles))
    assert slip.startswith("the corner of ")
    assert words in slip


def test_one_corner_of_a_rectangle_may_be_misread_or_the_room_may_lean():
    """A parallelogram's walls are as long as a rectangle's, so only a diagonal can tell."""
    one, other = named(room(SQUARE))
    assert one == "the corner of run N and run E is 90°, not 87°"
    assert other.startswith("the room leans: the corner of run E and run S is 93°")


def test_a_length_that_leaves_the_room_wide_open_is_never_named():
    """80° where the others should be square: that much of a turn excuses no wall of 100 ft."""
    result = room(("100 in", "80 in", "100 in", "60 in"), angles=("90 deg", "90 deg", "80 deg"))
    assert not [slip for slip in named(result) if "inches for feet" in slip]


@every("foot_off", (0, 1, 2, 3))
def test_a_wall_a_foot_wrong_is_named_though_the_corners_lack_a_whole_turn(foot_off):
    """87° and 91° thrice: what nobody measured is off by more than a corner's doubt."""
    walls = [144, 108, "140 1/4", 103]
    walls[foot_off] = walls[foot_off] + 12 if foot_off != 2 else "152 1/4"
    result = room([f"{long} in" for long in walls])
    names = [f"run {name} " for name in ("NS" if foot_off in (0, 2) else "EW")]
    assert sorted(slip[:6] for slip in named(result)) == names
    assert "T313" in {one.code for one in result.diagnostics}
