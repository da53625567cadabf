"""A piece's two ends in plan, to scale, from the saw operator's side.

The fence is at the top, the piece's back against it, its face towards you: so
left on the drawing is left at the saw and left on the wall.  All coordinates
are millimetres on the paper, fixed to two decimals so that the same piece
always gives the same bytes.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from trimlang.joinery.piece import Cut, Piece
from trimlang.survey.job import Fit

WIDE: Final = 84.0
TALL: Final = 14.6
FENCE: Final = 4.0
"""Where the fence ends and the piece's back edge lies."""
THICK: Final = 9.0
"""How thick the piece is drawn; the ends' slopes are to the same scale."""
BREAK: Final = 5.0
MARGIN: Final = 1.5
Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class EndsDrawing:
    """The shapes of a plan view: polygon points, and marks as ``x y`` texts.

    ``bodies`` are the wood (one where the whole piece fits, else its two ends),
    ``waste`` what a cope saws away, ``points`` the long points, ``breaks`` where
    length is left out, ``hatch`` the fence.  ``faces`` are the seen edges.
    """

    bodies: tuple[str, ...]
    faces: tuple[tuple[str, str, str, str], ...]
    waste: tuple[str, ...]
    points: tuple[tuple[str, str], ...]
    breaks: tuple[str, ...]
    hatch: tuple[tuple[str, str], ...]
    whole: bool
    wide: str
    tall: str
    middle: str


def draw_ends(piece: Piece, thickness: Fraction | None) -> EndsDrawing:
    """Draw the ends of a piece of trim that is so thick (inches)."""
    scale = THICK / float(thickness or Fraction(1, 2))
    back, front = FENCE, FENCE + THICK
    left_back, left_face = _inset(piece.left, "back", scale), _inset(piece.left, "face", scale)
    right_back, right_face = _inset(piece.right, "back", scale), _inset(piece.right, "face", scale)
    length = float(piece.length) * scale
    whole = length <= WIDE - 2 * MARGIN
    start = (WIDE - length) / 2 if whole else MARGIN
    end = start + length if whole else WIDE - MARGIN
    left: list[Point] = [(start + left_back, back), (start + left_face, front)]
    right: list[Point] = [(end - right_face, front), (end - right_back, back)]
    bodies: tuple[str, ...]
    faces: tuple[tuple[str, str, str, str], ...]
    breaks: tuple[str, ...] = ()
    if whole:
        bodies = (_points([left[0], *[left[1]], *right]),)
        faces = (_edge(left[1], right[0]),)
    else:
        middle = WIDE / 2
        one = [(middle - BREAK, front), (middle - BREAK + 1, back)]
        other = [(middle + BREAK, back), (middle + BREAK - 1, front)]
        bodies = (_points([*left, *one]), _points([*right, *other]))
        faces = (_edge(left[1], one[0]), _edge(other[1], right[0]))
        breaks = (_points(_zigzag(one[0], one[1])), _points(_zigzag(other[1], other[0])))
    waste: list[str] = []
    undercut = 1.0
    if piece.left.fit is Fit.COPED:
        waste.append(_points([left[0], left[1], (left[1][0] + undercut, back)]))
    if piece.right.fit is Fit.COPED:
        waste.append(_points([right[1], right[0], (right[0][0] - undercut, back)]))
    points = tuple(
        (_fixed(at[0]), _fixed(at[1]))
        for at in (*_long(piece.left, left[0], left[1]), *_long(piece.right, right[1], right[0]))
    )
    hatch = tuple((_fixed(x / 10), _fixed(x / 10 - 2.2)) for x in range(22, int(WIDE * 10), 25))
    return EndsDrawing(
        bodies,
        faces,
        tuple(waste),
        points,
        breaks,
        hatch,
        whole,
        _fixed(WIDE),
        _fixed(TALL),
        _fixed(WIDE / 2),
    )


def _inset(cut: Cut, edge: str, scale: float) -> float:
    """How far an edge stays back from the long point, on paper."""
    return 0.0 if cut.long_edge in (edge, "both") else float(cut.inset) * scale


def _long(cut: Cut, back: Point, face: Point) -> tuple[Point, ...]:
    if cut.long_edge == "both":
        return ()
    return (back,) if cut.long_edge == "back" else (face,)


def _zigzag(one: Point, other: Point) -> list[Point]:
    """A break line: length is left out here."""
    (x1, y1), (x2, y2) = one, other
    at = [(0.0, 0.0), (0.4, 0.0), (0.46, 1.0), (0.54, -1.0), (0.6, 0.0), (1.0, 0.0)]
    return [(x1 + (x2 - x1) * part + aside, y1 + (y2 - y1) * part) for part, aside in at]


def _edge(one: Point, other: Point) -> tuple[str, str, str, str]:
    return (_fixed(one[0]), _fixed(one[1]), _fixed(other[0]), _fixed(other[1]))


def _points(points: list[Point]) -> str:
    return " ".join(f"{_fixed(x)},{_fixed(y)}" for x, y in points)


def _fixed(value: float) -> str:
    return f"{value + 0.0:.2f}"
