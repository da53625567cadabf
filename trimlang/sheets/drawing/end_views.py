"""A piece's two ends as they lie at the saw, to scale, seen from above.

The fence is at the top, you stand below.  Each end lies as ``at_the_saw`` says: one that is
cut right of the blade stands at the left of its half, one left of the blade at the right.
Where both lie alike they are one drawing, and left on it is left at the saw and on the wall.
All coordinates are millimetres on paper, fixed to two decimals so that the
same piece always gives the same bytes.
"""

from __future__ import annotations

from fractions import Fraction
from math import cos, radians, tan
from typing import Final

from trimlang.joinery.at_the_saw import AtSaw, Facing, Hand, lie_alike
from trimlang.joinery.piece import Piece
from trimlang.joint_row import Fit
from trimlang.record import record
from trimlang.sheets.drawing.setting_picture import fence_strokes
from trimlang.survey.job import Trim

MARGIN: Final = 1.5
UNDERCUT: Final = 1.0
LEAST_BEVEL: Final = 0.8
"""The least that a bevel's line stands off on paper (mm), so that it is seen."""
Point = tuple[float, float]
Line = tuple[str, str, str, str]


@record
class Frame:
    """The frame of a drawing, in millimetres.

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


CARD_ENDS: Final = Frame(wide=84.0, tall=10.8, fence=2.6, thick=6.6, most=34.0, apart=6.5)
ROOM_FOR_TEXT: Final = 50.0
"""A narrower drawing has no room to name what lies at the fence (mm)."""
STRIP_ENDS: Final = Frame(wide=24.0, tall=10.2, fence=3.0, thick=5.6, most=7.5, apart=1.6)


@record
class DrawnText:
    """A text on a drawing: its middle, and its base line."""

    x: str
    y: str
    text: str


@record
class EndsDrawing:
    """The shapes of a drawing: polygons and lines as ``x,y`` texts.

    ``bodies`` are the wood (one where the whole piece fits, else its two ends),
    ``waste`` what a cope saws away, ``points`` the long points, ``breaks`` where
    length is left out.  ``edges`` are the near edges.  ``bevels`` are where a leaning blade
    leaves the wood below: seen, or ``hidden`` under it.  ``fence`` is the fence's line and
    ``hatch`` the path of the strokes behind it.  ``texts`` name what lies at the fence.
    """

    bodies: tuple[str, ...]
    edges: tuple[Line, ...]
    waste: tuple[str, ...]
    bevels: tuple[Line, ...]
    hidden: tuple[Line, ...]
    points: tuple[tuple[str, str], ...]
    breaks: tuple[str, ...]
    texts: tuple[DrawnText, ...]
    hatch: str
    whole: bool
    wide: str
    tall: str
    fence: str


@record
class _End:
    """An end on paper: its corners at the fence (``far``) and near you.

    ``inside`` is 1 where the wood lies right of the blade, else -1.
    """

    at: AtSaw
    inside: int
    far: Point
    near: Point
    bevel: float

    def along(self, corner: Point, into: float) -> Point:
        """Return the point this far into the wood from a corner."""
        return (corner[0] + self.inside * into, corner[1])


def draw_ends(
    piece: Piece,
    ends: tuple[AtSaw, AtSaw],
    trim: Trim,
    at_fence: tuple[str, str] = ("", ""),
    frame: Frame = CARD_ENDS,
) -> EndsDrawing:
    """Draw the ends of a piece of that trim; ``at_fence`` names what of each is at the fence."""
    wide, middle = frame.wide, frame.wide / 2
    alike = lie_alike(ends)
    # The piece is drawn as deep as the frame has room, and its length to the same scale.
    length = float(piece.length) * frame.thick / _deep(ends, trim)
    whole = alike and length <= wide - 2 * MARGIN
    start, end = (middle - length / 2, middle + length / 2) if whole else (MARGIN, wide - MARGIN)
    if not alike:
        # An end that lies left of the blade has its wood on the left: its cut is then drawn at the
        # middle of the paper, and the wood runs to the outer edge.
        start = start if ends[0].piece is Hand.RIGHT else middle - frame.apart
        end = end if ends[1].piece is Hand.LEFT else middle + frame.apart
    drawn = (_end(ends[0], start, trim, frame), _end(ends[1], end, trim, frame))
    bodies: tuple[str, ...]
    edges: tuple[Line, ...]
    breaks: tuple[str, ...] = ()
    if whole:
        corners = [(drawn[0].far, drawn[1].far), (drawn[0].near, drawn[1].near)]
        bodies = (_points([corners[1][0], corners[0][0], corners[0][1], corners[1][1]]),)
        edges = (_edge(*corners[1]),)
    else:
        broken = [
            _broken(one, middle + side * frame.apart if _inwards(one, side) else outer, frame)
            for one, side, outer in zip(drawn, (-1, 1), (MARGIN, wide - MARGIN), strict=True)
        ]
        bodies = tuple(
            _points([one.near, one.far, *cut]) for one, cut in zip(drawn, broken, strict=True)
        )
        edges = tuple(_edge(one.near, cut[1]) for one, cut in zip(drawn, broken, strict=True))
        breaks = tuple(_points(_zigzag(cut[0], cut[1])) for cut in broken)
    fits = (piece.left.fit, piece.right.fit)
    bevels = [(one, _edge(one.along(one.far, -shown), one.along(one.near, -shown)))
              for one in drawn if (shown := _shown(one))]  # fmt: skip
    return EndsDrawing(
        bodies=bodies,
        edges=edges,
        waste=tuple(
            _points([one.far, one.near, (one.along(one.near, UNDERCUT)[0], one.far[1])])
            for one, fit in zip(drawn, fits, strict=True)
            if fit is Fit.COPED
        ),
        # A blade that leans over the wood takes more off its top: the lower edge stands out and is
        # seen. One that leans away hides it.
        bevels=tuple(line for one, line in bevels if one.at.piece is one.at.tilt),
        hidden=tuple(line for one, line in bevels if one.at.piece is not one.at.tilt),
        points=tuple(point for one in drawn for point in _long(one)),
        breaks=breaks,
        texts=() if whole or frame.wide < ROOM_FOR_TEXT else _texts(alike, at_fence, frame),
        hatch=fence_strokes(wide, frame.fence - 0.3, tall=2.1, lean=2.2, every=25),
        whole=whole,
        wide=_fixed(wide),
        tall=_fixed(frame.tall),
        fence=_fixed(frame.fence - 0.3),
    )


def _deep(ends: tuple[AtSaw, AtSaw], trim: Trim) -> float:
    """Return how deep the piece is on the table, from the fence towards you (inches)."""
    thick = trim.thickness or Fraction(1, 2)
    flat = any(one.pose.facing is Facing.UP and not one.is_square for one in ends)
    return float((trim.height or thick) if flat else thick)


def _end(at: AtSaw, x: float, trim: Trim, frame: Frame) -> _End:
    """Place an end on paper; its long point is at ``x``."""
    inside = 1 if at.piece is Hand.RIGHT else -1
    # Over the piece's depth a mitre runs depth * tan(mitre) along it.
    slope = min(tan(radians(float(at.mitre))) * frame.thick, frame.most)
    # A cut that swings towards the wood's side enters it on the near edge, and shortens that one.
    near = slope if at.swing is at.piece else 0.0
    far = slope if at.swing is not None and not near else 0.0
    deep = float(trim.thickness or 0) / float(trim.height or 1) * frame.thick
    # Seen from above, a blade tilted by the bevel comes out thickness * tan(bevel) further, square
    # to the cut; along the fence that is 1 / cos(mitre) times as far.
    bevel = deep * tan(radians(float(at.bevel))) / cos(radians(float(at.mitre)))
    return _End(
        at=at,
        inside=inside,
        far=(x + inside * far, frame.fence),
        near=(x + inside * near, frame.fence + frame.thick),
        bevel=max(min(bevel, frame.most / 2), LEAST_BEVEL) if at.tilt else 0.0,
    )


def _shown(end: _End) -> float:
    """Return how far the lower edge stands out of the wood at a bevel; negative: under it."""
    return end.bevel if end.at.piece is end.at.tilt else -end.bevel


def _inwards(end: _End, side: int) -> bool:
    """Return whether the wood of an end in half ``side`` (-1 left, 1 right) runs to the middle."""
    return end.inside == -side


def _broken(end: _End, x: float, frame: Frame) -> list[Point]:
    """Return the line where an end is broken off, from the far edge to the near one."""
    aside = 0.5 * end.inside
    return [(x + aside, frame.fence), (x - aside, frame.fence + frame.thick)]


def _long(end: _End) -> tuple[tuple[str, str], ...]:
    """Return the long point of a mitre, at the fence or near you; none for a square end."""
    if end.at.swing is None:
        return ()
    x, y = end.far if end.at.swing is end.at.piece else end.near
    return ((_fixed(x), _fixed(y)),)


def _texts(alike: bool, at_fence: tuple[str, str], frame: Frame) -> tuple[DrawnText, ...]:
    y = _fixed(frame.fence + frame.thick * 0.62)
    quarter = (frame.wide / 2 - frame.apart) / 2
    if alike:
        return (DrawnText(_fixed(quarter), y, next(filter(None, at_fence), "")),)
    places = (quarter, frame.wide - quarter)
    return tuple(
        DrawnText(_fixed(x), y, text) for x, text in zip(places, at_fence, strict=True) if text
    )


def _zigzag(one: Point, other: Point) -> list[Point]:
    """Return a break line, which shows that length is left out here."""
    (x1, y1), (x2, y2) = one, other
    at = [(0.0, 0.0), (0.4, 0.0), (0.46, 1.0), (0.54, -1.0), (0.6, 0.0), (1.0, 0.0)]
    return [(x1 + (x2 - x1) * part + aside, y1 + (y2 - y1) * part) for part, aside in at]


def _edge(one: Point, other: Point) -> Line:
    return (_fixed(one[0]), _fixed(one[1]), _fixed(other[0]), _fixed(other[1]))


def _points(points: list[Point]) -> str:
    return " ".join(f"{_fixed(x)},{_fixed(y)}" for x, y in points)


def _fixed(value: float) -> str:
    return f"{value + 0.0:.2f}"
