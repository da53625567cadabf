"""Cut the wood, carry it to the wall, and see that pieces neither overlap nor stand apart.

Every joint, for every trim that comes to it and every pair of trims that meet there, as solids in
space (``solids.py``).  Where two like pieces meet, their cut faces fall together corner by corner.
"""

from __future__ import annotations

from collections.abc import Mapping
from math import cos, radians, sin

import numpy as np
import pytest

from tests.every import every
from tests.jobs import CASE
from tests.proof.solids import (
    Hung,
    Solid,
    apart,
    crown_on_wall,
    crown_section,
    on_slope,
    on_wall,
    overlap,
    rectangle,
    rise_of,
    solid,
    wall_axes,
)
from trimlang.compiler import check_job
from trimlang.joinery.piece import Piece

HEAD = f"""
saw: reaches 75 deg, reads to 1/8 deg
corners: in-corner gap 9 in, out-corner gap 9 in
trim tall: 3/4 in thick, 5 1/4 in tall
trim low: 9/16 in thick, 3 1/4 in tall
trim shoe: 1/2 in thick, 3/4 in tall, in front of tall
trim rail: 1 in thick, 2 1/2 in tall
trim frieze: 3/4 in thick, 3 in tall
trim steep: 11/16 in thick, 3 5/8 in wide, spring 38 deg
trim even: 5/8 in thick, 4 1/4 in wide, spring 45 deg
trim above: 11/16 in thick, 3 5/8 in wide, spring 52 deg, in front of frieze
trim bead: 1/4 in thick, 1/2 in tall, in front of above
{CASE}
""" + "".join(
    f"stock {name}: 16 ft at 9\n"
    for name in "tall low shoe rail frieze steep even above bead case".split()
)
STANDING = {"tall": (5.25, 0.75), "low": (3.25, 0.5625), "shoe": (0.75, 0.5), "rail": (2.5, 1.0),
            "bead": (0.5, 0.25)}  # fmt: skip
CROWNS = {
    "steep": (3.625, 0.6875, 38.0),
    "even": (4.25, 0.625, 45.0),
    "above": (3.625, 0.6875, 52.0),
}
BEHIND = {"shoe": 0.75, "above": 0.75, "bead": 0.75 + 3.625 * sin(radians(52))}
WITH = {"shoe": "tall, shoe", "above": "frieze, above", "bead": "frieze, above, bead"}
ANGLES = [40, 60, 85, 89.5, 90, 95, 120, 150]
TOUCH = 1e-6
"""Inches: what the digits of sines and tangents may leave."""
WALL = 60.0
ORIGIN = np.zeros(3)


def cut(walls: str, room: str, settings: str = "") -> Mapping[str, Piece]:
    result = check_job(f'{HEAD}{settings}\nroom "R" as R, {room}, open walk\n{walls}\n')
    assert result.ok, [one.message for one in result.diagnostics]
    return {piece.id: piece for piece in result.pieces}


def hangs(trim: str, heading: float, origin: np.ndarray, off: float | None = None) -> Hung:
    """Where a trim hangs on a wall that is ``heading`` degrees to the right of the first."""
    off = BEHIND.get(trim, 0.0) if off is None else off
    if trim in CROWNS:
        wide, thick, spring = CROWNS[trim]
        return crown_on_wall(heading, origin, off, spring, crown_section(wide, thick, spring))
    return on_wall(heading, origin, off, rectangle(*STANDING[trim]))


def turn_of(joint: str, degrees: float) -> float:
    return (180 - degrees) * (1 if joint == "in-corner" else -1)


def two_walls(
    joint: str, degrees: float, trim: str, other: str = "", fit: str = ""
) -> Mapping[str, Piece]:
    names = [WITH.get(name, name) for name in (trim, other or trim)]
    return cut(
        f"  N: 60 in, trim {names[0]}, left=butt, right={joint}({degrees} deg)\n"
        f"  E: 60 in, trim {names[1]}, left={joint}{fit}, right=butt",
        f"trim {names[0]}",
    )


def at_corner(
    found: Mapping[str, Piece], turn: float, one: str, other: str, *, nested: bool = False
) -> tuple[Solid, Solid]:
    """The first wall runs along x and ends at 60; the second ends at its own 60."""
    spring = CROWNS[one][2] if nested else None
    return (
        solid(found[f"R-N-{one}"], hangs(one, 0.0, ORIGIN), start=0.0, nested=spring),
        solid(
            found[f"R-E-{other}"],
            hangs(other, turn, np.array([WALL, 0.0, 0.0])),
            stop=WALL,
            nested=spring,
        ),
    )


def stays_in_room(made: Solid, turn: float, origin: np.ndarray) -> None:
    """No corner of the wood lies in the wall that follows at an inside corner."""
    _, out = wall_axes(turn)
    for face in (made.left, made.right):
        assert ((face - origin) @ out).min() > -TOUCH, "it runs into the wall"


@every("degrees", ANGLES)
@every("joint", ["in-corner", "out-corner"])
@every("trim", [*STANDING, *CROWNS])
def test_mitred_corners_close_face_on_face(trim: str, joint: str, degrees: float) -> None:
    turn = turn_of(joint, degrees)
    one, other = at_corner(two_walls(joint, degrees, trim), turn, trim, trim)
    assert apart(one.right, other.left) < TOUCH
    assert overlap(one, other) < TOUCH
    if joint == "in-corner":
        stays_in_room(one, turn, np.array([WALL, 0.0, 0.0]))
        stays_in_room(other, 0.0, ORIGIN)


@every("degrees", ANGLES)
@every("joint", ["in-corner", "out-corner"])
@every("trim", [*CROWNS])
def test_crown_cut_nested_closes_as_well(trim: str, joint: str, degrees: float) -> None:
    turn = turn_of(joint, degrees)
    found = two_walls(joint, degrees, trim)
    one, other = at_corner(found, turn, trim, trim, nested=True)
    assert apart(one.right, other.left) < TOUCH
    flat, _ = at_corner(found, turn, trim, trim)
    assert apart(one.right, flat.right) < TOUCH, "flat and nested are two ways to one cut"


@every("degrees", ANGLES)
@every("joint", ["in-corner", "out-corner"])
@every("one, other", [("tall", "low"), ("low", "tall")])
def test_unlike_trims_neither_overlap_nor_leave_their_corner(
    one: str, other: str, joint: str, degrees: float
) -> None:
    turn = turn_of(joint, degrees)
    first, second = at_corner(two_walls(joint, degrees, one, other), turn, one, other)
    assert overlap(first, second) < TOUCH
    if joint == "out-corner":
        # one plane cuts both, from where the backs meet to where the faces meet
        for face in (first.right, second.left):
            for made in (first, second):
                end = 1 if made is first else 0
                assert np.abs(face @ made.squares[end] - made.bounds[end]).max() < TOUCH
        return
    # inside, one stands against the wall, the other against its face
    _, out = wall_axes(turn)
    gap = ((first.right - [WALL, 0, 0]) @ out).min()
    far = ((second.left - ORIGIN) @ np.array([0.0, -1.0, 0.0])).min()
    low = {"tall": 0.0, "low": 0.75}
    assert (gap, far) == pytest.approx((low[one], low[other]), abs=TOUCH)


@every("degrees", [40, 60, 80, 90, 100, 130])
@every("trim", [*STANDING, *CROWNS])
def test_a_cope_follows_its_mate_and_the_mate_stays_out_of_the_wall(
    trim: str, degrees: float
) -> None:
    turn = turn_of("in-corner", degrees)
    mate, coped = at_corner(two_walls("in-corner", degrees, trim, fit=" cope"), turn, trim, trim)
    stays_in_room(mate, turn, np.array([WALL, 0.0, 0.0]))
    touching = ((mate.right - [WALL, 0, 0]) @ wall_axes(turn)[1]).min()
    if degrees <= 90:
        assert touching == pytest.approx(BEHIND.get(trim, 0.0), abs=TOUCH), "it stops short"
    # before it is coped, the piece is mitred: where it is as far off its wall as a point of the
    # mate's section is off its own, it reaches just that point
    _, out = wall_axes(turn)
    for corner in coped.left:
        assert -corner[1] == pytest.approx((corner - [WALL, 0, 0]) @ out, abs=TOUCH)


@every("degrees", [50, 70, 84.5, 95.5, 110, 140])
@every("side", ["left", "right"])
@every("trim", [*STANDING, *CROWNS])
def test_an_end_at_a_crooked_wall_lies_along_it(trim: str, side: str, degrees: float) -> None:
    """Base and crown alike: nothing is there to mitre with, so the end is the wall's own plane."""
    room = f"trim {WITH.get(trim, trim)}"
    turn = turn_of("in-corner", degrees)
    if side == "right":
        found = cut(
            f"  N: 60 in, left=butt, right=in-corner\n  bare 6 ft, left=in-corner({degrees} deg)",
            room,
        )
        made = solid(found[f"R-N-{trim}"], hangs(trim, 0.0, ORIGIN), start=0.0)
        end, where, heading = made.right, np.array([WALL, 0.0, 0.0]), turn
    else:
        found = cut(
            f"  bare 6 ft, right=in-corner({degrees} deg)\n  N: 60 in, left=in-corner, right=butt",
            room,
        )
        made = solid(found[f"R-N-{trim}"], hangs(trim, 0.0, ORIGIN), stop=WALL)
        end, where, heading = made.left, ORIGIN, -turn
    _, out = wall_axes(heading)
    assert np.abs((end - where) @ out).max() < TOUCH


@every("degrees", [86, 90, 94])
@every("trim", [*STANDING, *CROWNS])
def test_a_square_end_touches_a_wall_that_is_nearly_square(trim: str, degrees: float) -> None:
    found = cut(
        f"  N: 60 in, left=butt, right=in-corner\n  bare 6 ft, left=in-corner({degrees} deg)",
        f"trim {WITH.get(trim, trim)}",
    )
    made = solid(found[f"R-N-{trim}"], hangs(trim, 0.0, ORIGIN), start=0.0)
    turn = turn_of("in-corner", degrees)
    off = ((made.right - [WALL, 0, 0]) @ wall_axes(turn)[1]).min()
    # the edge of its back, or of its face, whichever comes first: caulk closes the rest
    assert off == pytest.approx(0.0, abs=TOUCH)


@every("angle", [30, 45])
@every("entrance", ["", "left", "right"])
@every("trim", ["tall", "rail", "steep", "even"])
def test_scarfs_close_face_on_face(trim: str, entrance: str, angle: int) -> None:
    doors = {
        "left": ("  opening 32 in, entrance\n", ""),
        "right": ("", "\n  opening 32 in, entrance"),
    }
    before, after = doors.get(entrance, ("", ""))
    found = cut(
        f"{before}  N: 300 in, left=butt, right=butt{after}",
        f"trim {trim}",
        f"splices: angle {angle} deg",
    )
    parts = [solid(found[f"R-N-{trim}-a"], hangs(trim, 0.0, ORIGIN), start=0.0),
             solid(found[f"R-N-{trim}-b"], hangs(trim, 0.0, ORIGIN), stop=300.0)]  # fmt: skip
    assert apart(parts[0].right, parts[1].left) < TOUCH
    assert overlap(*parts) < TOUCH
    # from the entrance one sees no open end: the near piece lies over the far one
    near_reaches = parts[0].right[2, 0] - parts[0].right[0, 0]
    assert (near_reaches > 0) == (entrance != "right")


@every("side", ["left", "right"])
@every("trim", ["tall", "rail", "steep", "even"])
def test_a_return_closes_the_profile_back_to_the_wall(trim: str, side: str) -> None:
    ends = {"left": "butt", "right": "butt"} | {side: "return"}
    found = cut(f"  N: 60 in, left={ends['left']}, right={ends['right']}", f"trim {trim}")
    run = solid(
        found[f"R-N-{trim}"], hangs(trim, 0.0, ORIGIN),
        **({"stop": WALL} if side == "left" else {"start": 0.0}),
    )  # fmt: skip
    small = found[f"R-N-{trim}-{side}-return"]
    # it runs back to the wall, round an outside corner of 90° that stands at the run's end
    deep = (
        STANDING[trim][1] if trim in STANDING else CROWNS[trim][0] * sin(radians(CROWNS[trim][2]))
    )
    assert float(small.rounding.exact) == pytest.approx(deep, abs=TOUCH)
    # base ends where the number does, crown's wall edge does: its ceiling edge goes on past it
    within = deep if trim in STANDING else 0.0
    heading, at = (-90.0, WALL - within) if side == "right" else (90.0, within)
    where = np.array([at, 0.0, 0.0])
    hung = hangs(trim, heading, where)
    if trim in STANDING:
        made = solid(small, hung, **({"stop": 0.0} if side == "left" else {"start": 0.0}))
        made = moved(made, -deep if side == "right" else deep, heading)
    else:
        # its ceiling edge is the longest, and its wall edge comes to nothing at the wall
        made = solid(small, hung, **({"stop": 0.0} if side == "left" else {"start": 0.0}))
        made = at_wall(made, side)
    mitred, meets = (made.left, run.right) if side == "right" else (made.right, run.left)
    assert apart(mitred, meets) < TOUCH
    square = made.right if side == "right" else made.left
    assert np.abs(square[:, 1]).max() < TOUCH, "it ends at the wall"
    assert overlap(run, made) < TOUCH


@every("degrees", ANGLES)
@every("joint", ["in-corner", "out-corner"])
def test_a_bead_lies_along_its_crown_s_ceiling_edge(joint: str, degrees: float) -> None:
    turn = turn_of(joint, degrees)
    ceiling = np.array([0.0, 0.0, 3.625 * cos(radians(52)) - 0.5])
    found = two_walls(joint, degrees, "bead")
    crowns = at_corner(found, turn, "above", "above")
    beads = [lifted(one, ceiling) for one in at_corner(found, turn, "bead", "bead")]
    for crown, bead in zip(crowns, beads, strict=True):
        assert overlap(crown, bead) < TOUCH
    # the crown's section begins with the back: its third corner is the ceiling edge; the bead's
    # fourth is its upper back edge
    assert np.linalg.norm(crowns[0].right[2] - beads[0].right[1]) < TOUCH
    assert np.linalg.norm(crowns[1].left[2] - beads[1].left[1]) < TOUCH


def test_a_bead_goes_round_the_return_of_its_crown() -> None:
    found = cut("  N: 60 in, left=butt, right=return", "trim frieze, above, bead")
    out = BEHIND["bead"]
    crown = solid(found["R-N-above"], hangs("above", 0.0, ORIGIN), start=0.0)
    bead = solid(found["R-N-bead"], hangs("bead", 0.0, ORIGIN), start=0.0)
    # its back ends where the crown's ceiling edge does
    assert bead.right[0, 0] == pytest.approx(crown.right[2, 0], abs=TOUCH)
    small = found["R-N-bead-right-return"]
    turned = hangs("bead", -90.0, np.array([crown.right[2, 0] - out, 0.0, 0.0]))
    made = solid(small, turned, stop=float(small.rounding.exact) - out - 0.25)
    made = moved(made, out + 0.25 - float(small.rounding.exact), -90.0)
    made = at_wall(made, "right")
    assert apart(made.left, bead.right) < TOUCH
    assert overlap(bead, made) < TOUCH


def lifted(made: Solid, by: np.ndarray) -> Solid:
    return Solid(made.squares, made.bounds + made.squares @ by, made.left + by, made.right + by)


def moved(made: Solid, by: float, heading: float) -> Solid:
    """Push a solid along its wall."""
    shift = by * wall_axes(heading)[0]
    return Solid(
        made.squares, made.bounds + made.squares @ shift, made.left + shift, made.right + shift
    )


def at_wall(made: Solid, side: str) -> Solid:
    """Push a return back until its square end stands at the first wall."""
    square = made.right if side == "right" else made.left
    shift = np.array([0.0, -square[0, 1], 0.0])
    return Solid(
        made.squares, made.bounds + made.squares @ shift, made.left + shift, made.right + shift
    )


@pytest.mark.parametrize("pitch", [12, 30, 36.87, 42])
@pytest.mark.parametrize("trim", ["tall", "low"])
def test_raking_trim_meets_level_trim_face_on_face(trim: str, pitch: float) -> None:
    section = rectangle(*STANDING[trim])
    found = cut(
        "  A: 48 in, left=butt, right=rake\n"
        f"  B: 100 in, left=rake, right=plumb, rising right {pitch} deg",
        f"trim {trim}",
    )
    level = solid(found[f"R-A-{trim}"], hangs(trim, 0.0, ORIGIN), start=0.0)
    stair = on_slope(np.array([48.0, 0.0, 0.0]), pitch, section)
    # plumb at its upper end, where its lower edge has run its 100 in
    raking = lower_edge_ends(found[f"R-B-{trim}"], stair, "right", 100.0)
    assert apart(level.right, raking.left) < TOUCH
    assert overlap(level, raking) < TOUCH
    assert np.ptp(raking.right[:, 0]) < TOUCH, "a plumb cut stands upright"

    above = cut(
        f"  B: 100 in, left=plumb, right=rake, rising right {pitch} deg\n"
        "  C: 48 in, left=rake, right=butt",
        f"trim {trim}",
    )
    raking = lower_edge_ends(above[f"R-B-{trim}"], on_slope(ORIGIN, pitch, section), "left", 0.0)
    landing = solid(above[f"R-C-{trim}"], hangs(trim, 0.0, rise_of(pitch, 100)), stop=48.0)
    assert apart(raking.right, landing.left) < TOUCH
    assert overlap(raking, landing) < TOUCH


@pytest.mark.parametrize("pitch", [30, 36.87, 42])
@pytest.mark.parametrize("side", ["left", "right"])
def test_a_level_cut_lies_level(side: str, pitch: float) -> None:
    ends = {"left": "butt", "right": "butt"} | {side: "level"}
    found = cut(
        f"  B: 100 in, left={ends['left']}, right={ends['right']}, rising right {pitch} deg",
        "trim tall",
    )
    made = lower_edge_ends(
        found["R-B-tall"], on_slope(ORIGIN, pitch, rectangle(*STANDING["tall"])), "left", 0.0
    )
    assert np.ptp(getattr(made, side)[:, 2]) < TOUCH
    lower = [made.left[0], made.right[0]]
    assert np.linalg.norm(lower[1] - lower[0]) == pytest.approx(100, abs=TOUCH)


def lower_edge_ends(piece: Piece, hung: Hung, side: str, at: float) -> Solid:
    """Hang a piece so that the lower edge of its back ends ``at`` along its frame."""
    made = solid(piece, hung, start=0.0)
    corner = (made.left if side == "left" else made.right)[0]
    now = float((corner - hung.origin) @ hung.axes[0])
    return solid(piece, hung, start=at - now)


@pytest.mark.parametrize("settings", ["", "casings: head butt, overhang 1/2 in"])
@pytest.mark.parametrize("opening", [(32.0, 80.0), (30.0, 36.0)])
def test_a_casing_frames_its_opening(settings: str, opening: tuple[float, float]) -> None:
    wide, tall = opening
    found = cut(
        "  N: 40 in, left=butt, right=butt\n"
        f'  opening {wide} in, "d", casing case, height {tall} in',
        "trim tall",
        settings,
    )
    reveal, (across, thick) = 0.1875, (2.25, 0.6875)
    section = rectangle(across, thick)
    out = np.array([0.0, -1.0, 0.0])
    left, right = np.array([-1.0, 0.0, 0.0]), np.array([1.0, 0.0, 0.0])
    up = np.array([0.0, 0.0, 1.0])
    # inner edges stand back from the jamb by the reveal; the opening begins at 0
    legs = {
        "left": Hung(-reveal * right, np.array([up, left, out]), section),
        "right": Hung((wide + reveal) * right, np.array([-up, right, out]), section),
    }
    made = {
        "left": solid(found["R-d-case-left-leg"], legs["left"], start=0.0),
        "right": solid(found["R-d-case-right-leg"], legs["right"], stop=0.0),
    }
    over = Hung((tall + reveal) * up, np.array([right, up, out]), section)
    piece = found["R-d-case-head"]
    head = solid(piece, over, start=(wide - float(piece.rounding.exact)) / 2)
    for one in made.values():
        assert overlap(one, head) < TOUCH
    if settings:
        for one in (made["left"].right, made["right"].left):
            assert np.abs(one[:, 2] - (tall + reveal)).max() < TOUCH, "the head lies on the legs"
        reaches = [
            head.left[0, 0] - made["left"].right[:, 0].min(),
            made["right"].left[:, 0].max() - head.right[0, 0],
        ]
        assert reaches == pytest.approx([-0.5, -0.5], abs=TOUCH)
    else:
        assert apart(made["left"].right, head.left) < TOUCH
        assert apart(made["right"].left, head.right) < TOUCH


@every("degrees", [60, 85, 90, 120])
@every("joint", ["in-corner", "out-corner"])
@every("one, other", [("low", "low"), ("low", "tall"), ("tall", "low"), ("tall", "tall")])
def test_shoe_closes_before_whatever_base_stands_on_each_wall(
    one: str, other: str, joint: str, degrees: float
) -> None:
    turn = turn_of(joint, degrees)
    found = cut(
        f"  N: 60 in, trim {one}, shoe, left=butt, right={joint}({degrees} deg)\n"
        f"  E: 60 in, trim {other}, shoe, left={joint}, right=butt",
        f"trim {one}, shoe",
    )
    off = {name: STANDING[name][1] for name in (one, other)}
    start = np.array([WALL, 0.0, 0.0])
    shoes = (
        solid(found["R-N-shoe"], hangs("shoe", 0.0, ORIGIN, off[one]), start=0.0),
        solid(found["R-E-shoe"], hangs("shoe", turn, start, off[other]), stop=WALL),
    )
    assert apart(shoes[0].right, shoes[1].left) < TOUCH
    assert overlap(*shoes) < TOUCH
    for shoe in shoes:
        for base in at_corner(found, turn, one, other):
            assert overlap(shoe, base) < TOUCH


def test_the_solids_themselves_tell_a_wrong_cut() -> None:
    """A piece a sixteenth too long runs into its mate; one too short stands apart from it."""
    found = two_walls("in-corner", 90, "tall")
    one, other = at_corner(found, 90.0, "tall", "tall")
    longer = moved(one, 1 / 16, 0.0)
    assert overlap(longer, other) > 0.01
    assert apart(longer.right, other.left) > 0.06
