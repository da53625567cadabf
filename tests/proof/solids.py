"""Pieces as solids: a section drawn along, sawn off by two planes, and hung on its wall.

A piece is what is left of a prism on the kept side of two half-spaces.  Each plane is turned as
the blade is: the table swings, the blade tilts, and the piece lies as its ticket says.  Nothing
here knows how trimlang came to a length or an angle, and nothing of its joinery is used but the
words and numbers of the ticket, before they are rounded.

Frames, all right-handed: of a piece (along to the right as one faces it, across from its lower
or wall edge, out of its back); of the saw (right along the fence, away from you, up); of the
room (along the first wall to the right, to its back, up).
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations
from math import cos, radians, sin, tan

import numpy as np
import pytest
from numpy.typing import NDArray

from trimlang.joinery.at_the_saw import Hand, MitreSaw, at_saw
from trimlang.joinery.at_the_saw import nested as in_the_nest
from trimlang.joinery.piece import Cut, Piece, PieceKind
from trimlang.language.end_facts import Side

Vector = NDArray[np.float64]
Section = list[tuple[float, float]]
UP = np.array([0.0, 0.0, 1.0])


def rectangle(across: float, out: float) -> Section:
    """Return a section from its lower back corner: (across, out of the back) in inches."""
    return [(0.0, 0.0), (across, 0.0), (across, out), (0.0, out)]


def crown_section(wide: float, thick: float, spring: float) -> Section:
    """Return crown's section: its width across the face, its back cut to wall and ceiling."""
    lean = tan(radians(spring))
    return [(thick / lean, -thick), (wide - thick * lean, -thick), (wide, 0.0), (0.0, 0.0)]


def blade(mitre: float, swing: str, tilt: float = 0.0) -> Vector:
    """Return the square to the blade, to the right of it: it swings, and tilts to the left."""
    turn = radians(mitre) * {"left": -1, "right": 1, "square": 0}[swing]
    upright = np.array([cos(turn), sin(turn), 0.0])
    return cos(radians(tilt)) * upright + sin(radians(tilt)) * UP


def lying(along: int, across: Vector, out: Vector) -> NDArray[np.float64]:
    """Return the piece's axes in the saw's frame, a row each."""
    return np.array([[along, 0.0, 0.0], across, out])


FACE_UP_TOP_AT_FENCE = lying(1, np.array([0.0, 1.0, 0.0]), UP)
FACE_UP_FOOT_AT_FENCE = lying(-1, np.array([0.0, -1.0, 0.0]), UP)
BACK_AT_FENCE = lying(1, UP, np.array([0.0, -1.0, 0.0]))


def half_space(cut: Cut, side: str, *, nested: float | None = None) -> Vector:
    """Return the square to one end's plane, out of the wood, in the piece's frame.

    ``nested`` is the spring angle of a crown that is cut leaning between fence and table.
    """
    crown = cut.crown
    if crown is not None and nested is not None:
        # upside down: the wall's side at the fence, the ceiling's on the table
        lean = radians(nested)
        axes = np.array([
            [-1.0, 0.0, 0.0],
            [0.0, -sin(lean), -cos(lean)],
            [0.0, -cos(lean), sin(lean)],
        ])  # fmt: skip
        at = in_the_nest(cut, Side(side))
        assert at is not None
        square, keep = blade(float(crown.nested), at.swing or "square"), at.piece
    elif crown is not None:
        at = at_saw(cut, Side(side), MitreSaw((Hand.LEFT,)))
        axes = FACE_UP_FOOT_AT_FENCE if at.pose.turned else FACE_UP_TOP_AT_FENCE
        swing = at.swing or "square"
        square, keep = blade(float(crown.mitre), swing, float(crown.bevel)), at.piece
    elif cut.bevel:
        # a scarf of crown: the end that is longer at the face runs out under the face
        tilt = radians(float(cut.bevel)) * (-1 if cut.long_edge == "face" else 1)
        along = 1.0 if side == "right" else -1.0
        return np.array([along * cos(tilt), 0.0, sin(tilt)])
    else:
        axes = FACE_UP_TOP_AT_FENCE if cut.long_edge.is_across else BACK_AT_FENCE
        square = blade(float(cut.exact), str(cut.lean))
        keep = "left" if side == "right" else "right"
    found: Vector = axes @ square
    return found if keep == "left" else -found


@dataclass(frozen=True)
class Hung:
    """Where a piece hangs: its frame's origin and axes (rows) in the room's, and its section."""

    origin: Vector
    axes: NDArray[np.float64]
    section: Section


@dataclass(frozen=True)
class Solid:
    """A convex piece in the room: half-spaces n · p ≤ b, and the corners of its two ends."""

    squares: NDArray[np.float64]
    bounds: Vector
    left: NDArray[np.float64]
    right: NDArray[np.float64]

    def depth_in(self, point: Vector) -> float:
        """Return how deep a point lies in the wood (inches), less than 0 outside it."""
        return float(np.min(self.bounds - self.squares @ point))


def reach(square: Vector, section: Section) -> Vector:
    """Return how far along each corner of the section a plane through the origin lies."""
    return np.array([-(square[1] * u + square[2] * v) / square[0] for u, v in section])


def solid(
    piece: Piece, hung: Hung, *, start: float | None = None, stop: float | None = None,
    nested: float | None = None,
) -> Solid:  # fmt: skip
    """Return the piece as it hangs, from where it starts or to where it stops along its frame.

    Its number counts from long point to long point, at a crown's mitres from the wall edge.
    """
    squares = [half_space(piece.left, "left", nested=nested),
               half_space(piece.right, "right", nested=nested)]  # fmt: skip
    ends = [reach(square, hung.section) for square in squares]
    assert squares[0][0] < 0 < squares[1][0], "the wood lies on the wrong side of the blade"
    if piece.kind is PieceKind.RUN:
        for told, end in zip((piece.left, piece.right), ends, strict=True):
            assert np.ptp(end) == pytest.approx(float(told.inset), abs=1e-9), (
                "the inset that is told"
            )
    if piece.wall_edge is None or piece.left.crown is None:
        ends[0] = ends[0] - ends[0].min()
    if piece.wall_edge is None or piece.right.crown is None:
        ends[1] = ends[1] - ends[1].max()
    long = float(piece.rounding.exact)
    at = start if start is not None else (stop or 0.0) - long
    ends = [ends[0] + at, ends[1] + at + long]
    corners = [
        np.array([hung.origin + hung.axes.T @ np.array([x, u, v])
                  for x, (u, v) in zip(end, hung.section, strict=True)])
        for end in ends
    ]  # fmt: skip
    planes = [hung.axes.T @ square for square in squares]
    bounds = [float(plane @ end[0]) for plane, end in zip(planes, corners, strict=True)]
    for (u, v), (w, x) in zip(hung.section, [*hung.section[1:], hung.section[0]], strict=True):
        # the section's corners go round with the wood at their left
        plane = hung.axes.T @ np.array([0.0, x - v, u - w])
        planes.append(plane / np.linalg.norm(plane))
        bounds.append(float(planes[-1] @ (hung.origin + hung.axes.T @ np.array([0.0, u, v]))))
    return Solid(np.array(planes), np.array(bounds), corners[0], corners[1])


def overlap(one: Solid, other: Solid) -> float:
    """Return how deep two pieces run into each other (inches): nothing where they only touch."""
    squares = np.vstack([one.squares, other.squares])
    bounds = np.concatenate([one.bounds, other.bounds])
    triples = np.array(list(combinations(range(len(squares)), 3)))
    systems = squares[triples]
    good = np.abs(np.linalg.det(systems)) > 1e-9
    points = np.linalg.solve(systems[good], bounds[triples[good]][..., None])[..., 0]
    inside = points[np.all(points @ squares.T <= bounds + 1e-9, axis=1)]
    if len(inside) < 4:
        return 0.0
    middle = inside.mean(0)
    return max(min(one.depth_in(middle), other.depth_in(middle)), 0.0)


def apart(one: NDArray[np.float64], other: NDArray[np.float64]) -> float:
    """Return how far the corners of two cut faces are from falling together, one by one."""
    far = np.linalg.norm(one[:, None] - other[None, :], axis=2)
    return float(max(far.min(0).max(), far.min(1).max()))


# ---- walls ----------------------------------------------------------------------------


def wall_axes(heading: float) -> tuple[Vector, Vector]:
    """Return a wall's way and the way out of it, ``heading`` degrees right of the first one's."""
    turn = radians(heading)
    along = np.array([cos(turn), -sin(turn), 0.0])
    return along, np.cross(along, UP)


def on_wall(heading: float, origin: Vector, off: float, section: Section) -> Hung:
    """Return where trim stands upright on a wall, ``off`` inches from it."""
    along, out = wall_axes(heading)
    return Hung(origin + off * out, np.array([along, UP, out]), section)


def crown_on_wall(
    heading: float, origin: Vector, off: float, spring: float, section: Section
) -> Hung:
    """Return where crown leans on a wall at its spring angle, its wall edge at height nothing."""
    along, out = wall_axes(heading)
    lean = radians(spring)
    across = sin(lean) * out + cos(lean) * UP
    return Hung(origin + off * out, np.array([along, across, np.cross(along, across)]), section)


def on_slope(origin: Vector, pitch: float, section: Section) -> Hung:
    """Return where trim stands along a stair that rises to the right by ``pitch`` degrees."""
    rise = radians(pitch)
    along = np.array([cos(rise), 0.0, sin(rise)])
    across = np.array([-sin(rise), 0.0, cos(rise)])
    return Hung(origin, np.array([along, across, np.cross(along, across)]), section)


def corner(long: float, turn: float) -> tuple[float, Vector]:
    """Return the next wall's heading and where it begins, behind a first wall ``long`` inches."""
    return turn, np.array([long, 0.0, 0.0])


def rise_of(pitch: float, along: float) -> Vector:
    """Return the place so far up a stair."""
    return along * np.array([1.0, 0.0, tan(radians(pitch))]) * cos(radians(pitch))
