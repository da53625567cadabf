"""Small pictures of a saw's setting: fence, table, blade and wood, for the saw sheet.

One is drawn for each side of the blade on which a piece lies: from above, the fence at its
top and you below it, and under that, where the blade leans, from the front.  Another shows
from your left how the wood lies, the fence at its left.  Angles are true, the rest is not to
scale.  What is drawn comes from ``at_the_saw``; all coordinates are millimetres on paper,
each drawing a few paths, since paper costs time by the shape.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from math import cos, radians, sin, tan
from typing import Final

from trimlang.joinery.at_the_saw import Against, AtSaw, Facing, Hand, Lay, Pose
from trimlang.record import record
from trimlang.sheets.drawing.polygons import Point
from trimlang.sheets.drawing.typeface import run

WIDE: Final = 38.0
MIDDLE: Final = WIDE / 2
"""Where the blade meets the fence: the point that a saw's table turns about."""
FENCE: Final = 2.6
REACH: Final = 15.5
"""How far the table's arm, or a leaning blade, is drawn."""
DEEP: Final = {Facing.YOU: 4.6, Facing.UP: 9.4}
HIGH: Final = {Facing.YOU: 9.4, Facing.UP: 4.2}
KNOB: Final = 1.3
TABLE: Final = 33.6
LEANS: Final = 10.5
CLEAR: Final = 1.6
EDGE: Final = 2.0
"""The least of the wood that stays to be seen at each edge of a drawing."""

SIDE: Final = {Hand.LEFT: -1, Hand.RIGHT: 1, None: 0}
LETTER: Final = 3.2
TOP_OF_TABLE: Final = 15.4
AT_FENCE: Final = 4.4
LIES_WIDE: Final = 20.0


@record
class CutPicture:
    """A setting with the piece on one side of the blade; each text is the ``d`` of one path.

    ``piece`` is the wood that is kept (both sides of a square cut), ``other`` the strokes over
    what lies beyond the cut, ``thick`` fence and table, ``blade`` the table's arm with its
    handle and the leaning blade, ``thin`` where both would stand straight.
    """

    piece: str
    other: str
    thick: str
    blade: str
    thin: str
    wide: str
    tall: str


@record
class LayPicture:
    """How the wood lies, from your left: its section, the face of it, fence and table.

    ``pointer`` leads from what is at the fence to ``text``, which names it and begins at ``x``
    and stands on ``y``.
    """

    section: str
    face: str
    thick: str
    pointer: str
    text: str
    x: str
    y: str
    letter: str
    wide: str
    tall: str


def cut_picture(at: AtSaw, piece: Hand | None) -> CutPicture:
    """Draw a setting; ``piece`` is the side of the blade to keep, None for either."""
    swing = SIDE[at.swing] * radians(float(at.mitre))
    tilt = SIDE[at.tilt] * radians(float(at.bevel))
    # A steep cut would leave the paper before it is through: less of the wood's depth is drawn.
    deep = min(DEEP[at.pose.facing], (MIDDLE - EDGE) / max(abs(tan(swing)), 0.01))
    drawn = [_view(((MIDDLE, FENCE), (MIDDLE + tan(swing) * deep, FENCE + deep)), piece)]
    thick = [
        _path((0, FENCE), (WIDE, FENCE)),
        fence_strokes(WIDE, FENCE, tall=1.9, lean=1.6, every=30),
    ]
    foot = (MIDDLE + sin(swing) * REACH, FENCE + cos(swing) * REACH)
    blade = [_path((MIDDLE, FENCE), foot), _knob(foot)]
    # Where the saw stands at 0° is drawn thin beside where it is to stand, so that left and right
    # of it are seen without reading.
    thin = [_path((MIDDLE, FENCE), (MIDDLE, FENCE + REACH))] if swing else []
    if tilt:
        high = HIGH[at.pose.facing]
        top = (MIDDLE + sin(tilt) * LEANS, TABLE - cos(tilt) * LEANS)
        drawn.append(_view(((MIDDLE + tan(tilt) * high, TABLE - high), (MIDDLE, TABLE)), piece))
        thick.append(_path((0, TABLE), (WIDE, TABLE)))
        blade.append(_path((MIDDLE, TABLE), top))
        thin.append(_path((MIDDLE, TABLE), (MIDDLE, TABLE - LEANS)))
    return CutPicture(
        piece="".join(kept for kept, _ in drawn),
        other="".join(strokes for _, strokes in drawn),
        thick="".join(thick),
        blade="".join(blade),
        thin="".join(thin),
        wide=_fixed(WIDE),
        tall=_fixed((TABLE if tilt else FENCE + REACH + KNOB) + 0.8),
    )


def lay_picture(at: AtSaw, edge: str) -> LayPicture:
    """Draw how a piece lies; ``edge`` names what of it is at the fence."""
    section, face = _section(at.way, at.pose)
    touches = min(section)
    middle = (section[0][1] + section[1][1]) / 2
    return LayPicture(
        section=f"{_path(*section)}Z",
        face=_path(*face),
        thick=_path((AT_FENCE, 1), (AT_FENCE, TOP_OF_TABLE), (LIES_WIDE, TOP_OF_TABLE)),
        pointer=_path((touches[0] + 0.7, middle), (AT_FENCE + 0.7, TOP_OF_TABLE + CLEAR)),
        text=edge,
        x="0.40",
        y=_fixed(TOP_OF_TABLE + CLEAR + LETTER * 0.9),
        letter=_fixed(LETTER),
        wide=_fixed(max(LIES_WIDE, run(edge, LETTER) + 1)),
        tall=_fixed(TOP_OF_TABLE + CLEAR + LETTER * 1.25),
    )


def _section(way: Lay, pose: Pose) -> tuple[list[Point], list[Point]]:
    """Return a section as it lies, and the line of its face.

    It is first drawn up its face (0 to 1) and out from its back (0 to 1): a moulding is
    thinner at its free edge, a crown's face is wider than its back.  The first two points
    are the edge that is up on the wall.
    """
    if way in (Lay.CROWN, Lay.SCARF, Lay.NESTED):
        shape = [(1.0, 1.0), (0.84, 0.0), (0.16, 0.0), (0.0, 1.0)]
        face = [(1.0, 1.0), (0.0, 1.0)]
    elif way is Lay.CASING:  # its outer edge, which is drawn up, is the thick one
        shape = [(1.0, 1.0), (1.0, 0.0), (0.0, 0.0), (0.0, 0.45), (0.22, 1.0)]
        face = [(1.0, 1.0), (0.22, 1.0), (0.0, 0.45)]
    else:
        shape = [(1.0, 0.45), (1.0, 0.0), (0.0, 0.0), (0.0, 1.0), (0.78, 1.0)]
        face = [(1.0, 0.45), (0.78, 1.0), (0.0, 1.0)]
    # These are the edges that are up on the wall; with one of them at the fence the piece lies the
    # other way round.
    high = pose.fence in (Against.TOP, Against.OUTER, Against.CEILING)
    wide, thick = 12.4, 3.6

    def lain(point: Point) -> Point:
        up, out = point
        if pose.facing is Facing.YOU:
            return AT_FENCE + 0.4 + out * thick, TOP_OF_TABLE - 0.4 - up * wide
        return AT_FENCE + 0.4 + (1 - up if high else up) * wide, TOP_OF_TABLE - 0.4 - out * thick

    return [lain(one) for one in shape], [lain(one) for one in face]


def _view(cut: tuple[Point, Point], piece: Hand | None) -> tuple[str, str]:
    """Return the wood that is kept and the strokes over the rest, cut along a line (top, foot)."""
    (top_x, top), (foot_x, foot) = cut
    kept = "".join(
        _path((side, top), (top_x, top), (foot_x, foot), (side, foot))
        for hand, side in ((Hand.LEFT, 0.0), (Hand.RIGHT, WIDE))
        if piece in (hand, None)
    )
    if piece is None:
        return kept, ""
    left = piece is Hand.RIGHT  # the rest lies there
    strokes: list[Point] = []
    least, most = sorted((top_x, foot_x))
    # Counted in tenths of a millimetre: in whole numbers no error adds up from stroke to stroke.
    for tenth in range(6, int(WIDE * 10), 13):
        x = tenth / 10
        begin, end = top, foot
        if least < x < most:  # the stroke meets the cut
            meets = top + (foot - top) * (x - top_x) / (foot_x - top_x)
            begin, end = (top, meets) if (foot_x < x) is left else (meets, foot)
        elif (x < most) is not left:
            continue
        strokes += [(x, begin), (x, end)]
    pairs = zip(strokes[::2], strokes[1::2], strict=True)
    return kept, "".join(_path(*pair) for pair in pairs)


@cache
def fence_strokes(wide: float, fence: float, *, tall: float, lean: float, every: int) -> str:
    """Return the slanted strokes that mark a fence as solid, as one path.

    ``fence`` is the height of its near edge, ``tall`` how far the strokes reach behind it and
    ``lean`` how far they lean, all in the picture's units; ``every`` in tenths of them.
    """
    return "".join(
        _path((x / 10, fence - tall), (x / 10 - lean, fence))
        for x in range(22, int(wide * 10), every)
    )


def _knob(at: Point) -> str:
    x, y = at
    turn = f"a{KNOB} {KNOB} 0 1 0"
    return f"M{_fixed(x - KNOB)} {_fixed(y)}{turn} {2 * KNOB} 0{turn} {-2 * KNOB} 0"


def _path(*points: Point) -> str:
    return "M" + "L".join(f"{_fixed(x)} {_fixed(y)}" for x, y in points)


def _fixed(value: float) -> str:
    return f"{value + 0.0:.2f}"


def sides_of(pieces: Sequence[Hand]) -> tuple[Hand, ...]:
    """Return the sides of the blade on which pieces lie, each once, left first."""
    return tuple(hand for hand in Hand if hand in pieces)
