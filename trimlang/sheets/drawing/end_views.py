"""A piece's two ends, to scale, from the saw operator's side.

The fence is at the top: standing trim has its back against it and is seen from
above, trim that lies flat has its top (or outer) edge there and is seen on its
face.  So left on the drawing is left at the saw and left on the wall.  Crown is
drawn as it sits on the wall, seen from above: the wall is where the fence is.
All coordinates are millimetres on paper, fixed to two decimals so that the
same piece always gives the same bytes.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from typing import Final

from trimlang.joinery.crown import projection
from trimlang.joinery.piece import Cut, Piece
from trimlang.joint_row import Edge, Fit
from trimlang.record import record
from trimlang.sheets.wording.phrases import lay
from trimlang.survey.job import Trim

MARGIN: Final = 1.5
UNDERCUT: Final = 1.0
Point = tuple[float, float]


@record
class Frame:
    """What a drawing is drawn in, in millimetres.

    ``fence`` is where the fence ends and the far edge of the piece lies, ``thick``
    how deep the piece is drawn (the ends' slopes are to the same scale), ``most`` the
    furthest that a slope goes in before its end is only hinted at, ``apart`` half of
    what is left out between the two ends.
    """

    wide: float
    tall: float
    fence: float
    thick: float
    most: float
    apart: float


CARD_ENDS: Final = Frame(wide=84.0, tall=14.6, fence=4.0, thick=9.0, most=34.0, apart=6.5)
STRIP_ENDS: Final = Frame(wide=24.0, tall=10.2, fence=3.0, thick=5.6, most=7.5, apart=1.6)


@record
class EndsDrawing:
    """The shapes of a drawing: polygons and lines as ``x,y`` texts.

    ``bodies`` are the wood (one where the whole piece fits, else its two ends),
    ``waste`` what a cope saws away, ``points`` the long points, ``breaks`` where
    length is left out.  ``faces`` are the near edges.  ``fence`` is the fence's line and
    ``hatch`` the path of the strokes behind it.  ``view`` is ``face`` (near edge),
    ``bottom``, ``ceiling`` or ``mixed``.
    """

    bodies: tuple[str, ...]
    faces: tuple[tuple[str, str, str, str], ...]
    waste: tuple[str, ...]
    points: tuple[tuple[str, str], ...]
    breaks: tuple[str, ...]
    hatch: str
    whole: bool
    view: str
    wide: str
    tall: str
    middle: str
    fence: str


def draw_ends(piece: Piece, trim: Trim, frame: Frame = CARD_ENDS) -> EndsDrawing:
    """Draw the ends of a piece of that trim."""
    wide = frame.wide
    views = {lay(cut) for cut in (piece.left, piece.right) if cut.long_edge is not Edge.BOTH}
    left_scale, right_scale = (
        _scale(cut, trim, views, frame.thick) for cut in (piece.left, piece.right)
    )
    far, near = frame.fence, frame.fence + frame.thick
    left_far, left_near = _insets(piece.left, left_scale, frame.most)
    right_far, right_near = _insets(piece.right, right_scale, frame.most)
    length = float(piece.length) * min(left_scale, right_scale)
    whole = length <= wide - 2 * MARGIN and len(views) < 2
    start = (wide - length) / 2 if whole else MARGIN
    end = start + length if whole else wide - MARGIN
    left: list[Point] = [(start + left_far, far), (start + left_near, near)]
    right: list[Point] = [(end - right_near, near), (end - right_far, far)]
    bodies: tuple[str, ...]
    faces: tuple[tuple[str, str, str, str], ...]
    breaks: tuple[str, ...] = ()
    if whole:
        bodies = (_points([*left, *right]),)
        faces = (_edge(left[1], right[0]),)
    else:
        middle = wide / 2
        one = [(middle - frame.apart, near), (middle - frame.apart + 1, far)]
        other = [(middle + frame.apart, far), (middle + frame.apart - 1, near)]
        bodies = (_points([*left, *one]), _points([*right, *other]))
        faces = (_edge(left[1], one[0]), _edge(other[1], right[0]))
        breaks = (_points(_zigzag(one[0], one[1])), _points(_zigzag(other[1], other[0])))
    waste: list[str] = []
    if piece.left.fit is Fit.COPED:
        waste.append(_points([left[0], left[1], (left[1][0] + UNDERCUT, far)]))
    if piece.right.fit is Fit.COPED:
        waste.append(_points([right[1], right[0], (right[0][0] - UNDERCUT, far)]))
    points = (*_long(piece.left, left[0], left[1]), *_long(piece.right, right[1], right[0]))
    return EndsDrawing(
        bodies=bodies,
        faces=faces,
        waste=tuple(waste),
        points=tuple((_fixed(x), _fixed(y)) for x, y in points),
        breaks=breaks,
        hatch=_hatch(wide, far - 0.3),
        whole=whole,
        view=_view(views),
        wide=_fixed(wide),
        tall=_fixed(frame.tall),
        middle=_fixed(wide / 2),
        fence=_fixed(far - 0.3),
    )


@cache
def _hatch(wide: float, fence: float) -> str:
    """Return the slanted strokes that mark the fence as solid, as one path."""
    top, foot = _fixed(fence - 2.1), _fixed(fence)
    return "".join(
        f"M{_fixed(x / 10)} {top}L{_fixed(x / 10 - 2.2)} {foot}"
        for x in range(22, int(wide * 10), 25)
    )


def _view(views: set[str]) -> str:
    if len(views) > 1:
        return "mixed"
    return {"flat": "bottom", "crown": "ceiling"}.get(next(iter(views), ""), "face")


def _scale(cut: Cut, trim: Trim, views: set[str], thick: float) -> float:
    """How many millimetres on paper are an inch at this end."""
    seen = lay(cut) if cut.long_edge is not Edge.BOTH else next(iter(sorted(views)), "standing")
    deep = trim.thickness or Fraction(1, 2)
    if seen == "flat":
        deep = trim.height or deep
    elif seen == "crown" and trim.spring is not None:
        deep = projection(trim.height or deep, trim.spring)
    return thick / float(deep)


def _insets(cut: Cut, scale: float, most: float) -> tuple[float, float]:
    """How far the far and the near edge stay back from the long point, on paper."""
    if cut.long_edge is Edge.BOTH:
        return 0.0, 0.0
    inset = min(float(cut.inset) * scale, most)
    return (0.0, inset) if cut.long_edge.is_far else (inset, 0.0)


def _long(cut: Cut, far: Point, near: Point) -> tuple[Point, ...]:
    if cut.long_edge is Edge.BOTH:
        return ()
    return (far,) if cut.long_edge.is_far else (near,)


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
