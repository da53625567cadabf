"""The measure lines of an elevation: a chain of the wall's parts below it, openings within."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction
from typing import Final

from trimlang.joinery.openings_in_place import OpeningInPlace
from trimlang.joinery.wall_faces import WallFace
from trimlang.record import record
from trimlang.sheets.drawing.elevation_lines import Stroke
from trimlang.sheets.drawing.elevation_paper import ElevationPaper
from trimlang.sheets.drawing.lettering import SIZES, Wanted
from trimlang.sheets.drawing.plan_scale import DrawnLabel, fixed
from trimlang.sheets.drawing.typeface import run
from trimlang.sheets.wording.quantities import Pen
from trimlang.survey.job import Run

TICK: Final = 1.0
"""Half of how far the slanting tick at an end of a measure reaches (mm)."""
SIZE: Final = SIZES["measure"]
UPRIGHT_APART: Final = 3.5
"""How far apart measures stand that are turned upright (mm)."""
FROM_THE_JAMB: Final = 2.5
"""How far inside the left jamb an opening's height is measured (mm)."""
LEAST_DRAWN: Final = 12.0
"""An opening is measured inside where it is at least so wide and high on paper (mm)."""


BETWEEN_CHAINS: Final = 4.5
"""What is free between two chains for the measures of the lower one (mm)."""
Part = tuple[float, float, str]
"""Where a part of a chain begins and ends (mm), and its measure."""


@record
class Chain:
    """The measures of a wall's parts, one behind the other: strokes, texts, and how deep (mm)."""

    strokes: tuple[Stroke, ...]
    labels: tuple[DrawnLabel, ...]
    tall: float


def chains_below(face: WallFace, paper: ElevationPaper, y: float, pen: Pen) -> Chain:
    """Return the chains of measures from the height ``y`` on the paper down.

    First come the wall's runs and openings, then the margins and widths of each row of boxes.
    """
    strokes: list[Stroke] = []
    labels: list[DrawnLabel] = []
    tall = 0.0
    for parts in (_parts(face, paper, pen), *_side_by_side(_boxed(face, paper, pen))):
        chain = _chain(parts, y + tall)
        strokes += chain.strokes
        labels += chain.labels
        tall += chain.tall + BETWEEN_CHAINS
    return Chain(strokes=tuple(strokes), labels=tuple(labels), tall=tall - BETWEEN_CHAINS)


def _parts(face: WallFace, paper: ElevationPaper, pen: Pen) -> list[Part]:
    begins = face.wall.begins
    parts: list[Part] = []
    for place, begin, end in zip(face.wall.places, begins, begins[1:], strict=False):
        stretch = face.room.walk[place]
        # A level run has the length that the tape gave. Along a slope the tape measured the slope,
        # while the chain lies level: there the level distance is worked out.
        if isinstance(stretch, Run) and not stretch.slope:
            text = pen.length(stretch.length)
        else:
            text = str(pen.mark(end.x - begin.x))
        parts.append((paper.at(begin)[0], paper.at(end)[0], text))
    return parts


def _boxed(face: WallFace, paper: ElevationPaper, pen: Pen) -> Iterator[list[Part]]:
    """Yield the margins and widths of each set of boxes; along a stair only its sum says them."""
    for one in face.boxes:
        if one.boxes.slope or not one.corners:
            continue
        # The corners are the boxes' own, so the chain begins one margin before the first of them.
        x = one.corners[0].x - one.boxes.margins[0]
        parts: list[Part] = []
        for margin in one.boxes.margins:
            for inches in (margin, one.boxes.wide):
                left, right = (paper.point(float(at), 0)[0] for at in (x, x + inches))
                parts.append((left, right, pen.length(inches)))
                x += inches
        # Each margin is followed by a box, and the last margin is followed by none.
        yield parts[:-1]


def _side_by_side(sets: Iterable[list[Part]]) -> list[list[Part]]:
    """Return sets of parts in rows, each in the first row that has room for it."""
    rows: list[list[Part]] = []
    for parts in sets:
        # Boxes above and below a chair rail lie over the same stretch of wall: they need two
        # chains, while sets that lie side by side share one.
        row = next((row for row in rows if row[-1][1] <= parts[0][0] + TICK), None)
        if row is None:
            rows.append(parts)
        else:
            row += parts
    return rows


def _chain(parts: Sequence[Part], y: float) -> Chain:
    """Return one chain; what does not fit between its ticks stands upright below them."""
    strokes: list[Stroke] = []
    labels: list[DrawnLabel] = []
    upright: list[tuple[float, str]] = []
    for left, right, text in parts:
        strokes.append(((left, y), (right, y)))
        middle = (left + right) / 2
        if run(text, SIZE) + 1 < right - left:
            labels.append(_text(text, middle, y - 1, 0.0))
        else:
            upright.append((middle, text))
    # Two neighbours share the tick between them, which is drawn once.
    strokes += [_tick(x, y) for x in sorted({x for part in parts for x in part[:2]})]
    deepest = 0.0
    for (middle, text), x in zip(upright, _apart([at for at, _ in upright]), strict=True):
        long = run(text, SIZE)
        deepest = max(deepest, long)
        strokes.append(((middle, y), (middle, y + 1.2), (x, y + 2.6)))
        # Turned upright the base line is at the right of the text's middle.
        labels.append(_text(text, x + SIZE * 0.35, y + 3.2 + long / 2, -90.0))
    tall = deepest + 4.2 if upright else 2.0
    return Chain(strokes=tuple(strokes), labels=tuple(labels), tall=tall)


def _apart(wanted: Sequence[float]) -> list[float]:
    """Return places as near as can be to those wanted, none too near the one before."""
    groups: list[list[float]] = []
    for at in wanted:
        groups.append([at])
        # Where two groups are too near, they become one round the middle of what they want.
        while len(groups) > 1 and _first(groups[-1]) - _last(groups[-2]) < UPRIGHT_APART:
            last = groups.pop()
            groups[-1] += last
    return [
        _first(group) + place * UPRIGHT_APART for group in groups for place in range(len(group))
    ]


def _first(group: Sequence[float]) -> float:
    return sum(group) / len(group) - (len(group) - 1) * UPRIGHT_APART / 2


def _last(group: Sequence[float]) -> float:
    return _first(group) + (len(group) - 1) * UPRIGHT_APART


def measured_openings(
    face: WallFace, paper: ElevationPaper, pen: Pen
) -> tuple[list[Stroke], list[Wanted]]:
    """Return the measures within a wall's openings: clear width and height, and the sill's."""
    strokes: list[Stroke] = []
    wanted: list[Wanted] = []
    for opening in face.openings:
        for one, other, inches in _measures(opening, paper):
            strokes += [(one, other), *(_tick(*end) for end in (one, other))]
            level = one[1] == other[1]
            wanted.append(
                Wanted(
                    look="measure",
                    text=pen.length(inches),
                    one=one,
                    other=other,
                    off=(0.0, -1.0) if level else (1.0, 0.0),
                    heading=0.0 if level else 90.0,
                )
            )
    return strokes, wanted


def _measures(
    opening: OpeningInPlace, paper: ElevationPaper
) -> Iterator[tuple[tuple[float, float], tuple[float, float], Fraction]]:
    if opening.high is None or opening.gap.clear_height is None:
        return
    x = float(opening.left) + FROM_THE_JAMB / paper.factor
    # The sill is asked for first: it is measured even where the opening is too small for the rest.
    if opening.gap.sill is not None:
        floor = paper.point(x, float(opening.begins.y))
        yield floor, paper.point(x, float(opening.low)), opening.gap.sill
    wide = float(opening.gap.width) * paper.factor
    tall = float(opening.gap.clear_height) * paper.factor
    if min(wide, tall) < LEAST_DRAWN:
        return
    yield (
        paper.point(x, float(opening.low)),
        paper.point(x, float(opening.high)),
        opening.gap.clear_height,
    )
    # Below the middle, so that it stays clear of the opening's name, which stands above it.
    y = float(opening.low) + float(opening.gap.clear_height) * 0.4
    yield (
        paper.point(float(opening.left), y),
        paper.point(float(opening.right), y),
        opening.gap.width,
    )


def _tick(x: float, y: float) -> Stroke:
    return (x - TICK, y + TICK), (x + TICK, y - TICK)


def _text(text: str, x: float, y: float, turn: float) -> DrawnLabel:
    return DrawnLabel(look="measure", x=fixed(x), y=fixed(y), turn=fixed(turn), text=text)
