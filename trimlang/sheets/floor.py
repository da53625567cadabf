"""The floor plan: each room to scale, its runs named as on the tickets."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import cos, radians, sin
from typing import Final

from trimlang.compiler import Result
from trimlang.joinery.piece import Kind
from trimlang.lengths.tape import steps_nearest
from trimlang.sheets import phrases
from trimlang.sheets.pen import Pen
from trimlang.survey.job import Joint, Room, Run, Stretch
from trimlang.survey.outline import Outline, outline

WIDE: Final = 166.0
TALL: Final = 72.0
MARGIN: Final = 8.0
SCALES: Final = {
    "in": (16, 24, 32, 48, 64, 96, 128, 192, 384),
    "mm": (10, 20, 25, 50, 75, 100, 200, 500),
}
MM_PER_INCH: Final = 25.4
Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Wall:
    """A stretch where it lies, in inches, y downwards; ``heading`` in degrees to the right."""

    stretch: Stretch
    start: Point
    end: Point
    heading: float


def walls(room: Room, drawn: Outline) -> tuple[Wall, ...]:
    """Return the walk of a room as a drawing takes it."""
    return tuple(
        Wall(
            room.walk[leg.index],
            (float(leg.start.x), -float(leg.start.y)),
            (float(leg.end.x), -float(leg.end.y)),
            float(leg.heading),
        )
        for leg in drawn.legs
    )


@dataclass(frozen=True, slots=True)
class Line:
    """A line on paper, with a class for its look (``run``, ``opening``, ``bare`` …)."""

    look: str
    x1: str
    y1: str
    x2: str
    y2: str


@dataclass(frozen=True, slots=True)
class Label:
    """A text on paper, turned by so many degrees about its own place."""

    look: str
    x: str
    y: str
    turn: str
    text: str


@dataclass(frozen=True, slots=True)
class WallRow:
    """A wall in the list beside the drawing."""

    label: str
    length: str
    left: str
    right: str
    trims: str
    note: str


@dataclass(frozen=True, slots=True)
class RoomPlan:
    """A room's drawing and its walls."""

    name: str
    scale: str
    wide: str
    tall: str
    lines: tuple[Line, ...]
    marks: tuple[tuple[str, str, str], ...]
    arrows: tuple[str, ...]
    labels: tuple[Label, ...]
    rows: tuple[WallRow, ...]
    closure: str
    note: str


class Paper:
    """Turns inches in the room into millimetres on the paper.

    The drawing is at most ``tall`` (mm, without margins), and no larger than at ``least``.
    """

    def __init__(
        self, laid: tuple[Wall, ...], unit: str, tall: float = TALL, least: int = 0
    ) -> None:
        points = [wall.start for wall in laid] + [wall.end for wall in laid]
        self._left = min(x for x, _ in points)
        self._top = min(y for _, y in points)
        across = max(x for x, _ in points) - self._left
        down = max(y for _, y in points) - self._top
        fits = [
            scale
            for scale in SCALES[unit]
            if scale >= least
            and across * MM_PER_INCH / scale <= WIDE
            and down * MM_PER_INCH / scale <= tall
        ]
        wanted = max(across / WIDE, down / tall) * MM_PER_INCH
        self.scale = fits[0] if fits else _enough(max(wanted, least))
        self.factor = MM_PER_INCH / self.scale
        self.wide = across * self.factor + 2 * MARGIN
        self.tall = down * self.factor + 2 * MARGIN

    def at(self, point: Point) -> Point:
        """Return where on the paper a point of the room comes."""
        return (
            (point[0] - self._left) * self.factor + MARGIN,
            (point[1] - self._top) * self.factor + MARGIN,
        )


def _enough(ratio: float) -> int:
    """A round scale for a room that none of the usual ones holds."""
    scale = 1000
    while scale < ratio:
        scale *= 2
    return scale


def floor_plan(result: Result, pen: Pen) -> tuple[RoomPlan, ...]:
    """Return every room that has a walk."""
    return tuple(
        _room(result, room, pen.of(room.settings.unit)) for room in result.job.rooms if room.walk
    )


def _room(result: Result, room: Room, pen: Pen) -> RoomPlan:
    drawn = outline(room, result.job.trims)
    laid = walls(room, drawn)
    paper = Paper(laid, pen.unit)
    lines: list[Line] = []
    marks: list[tuple[str, str, str]] = []
    arrows: list[str] = []
    labels: list[Label] = []
    for wall in laid:
        one, other = paper.at(wall.start), paper.at(wall.end)
        stretch = wall.stretch
        if isinstance(stretch, Run):
            lines.append(line("run", one, other))
            marks += _corner_marks(stretch, one, other)
            labels.append(_label("run", wall, one, other, stretch.label, -3.2))
            lines += [_across(paper, wall, at) for at in _splices(result, room, stretch)]
        else:
            lines.append(line(stretch.kind, one, other))
            lines += [jamb(wall, one), jamb(wall, other)]
            if stretch.entrance:
                arrows.append(_arrow(wall, one, other))
            if stretch.called:
                labels.append(_label("gap", wall, one, other, stretch.called, 3.0))
    closure = ""
    if drawn.gap is not None and drawn.gap > room.settings.closes_within:
        lines.append(line("misclosure", paper.at(laid[-1].end), paper.at(laid[0].start)))
        closure = pen.words(
            "The walk as surveyed ends {off} from its start (dashed): measure again.",
            off=pen.length(steps_nearest(drawn.gap, room.settings.rounding_step)),
        )
    return RoomPlan(
        room.name,
        scale_text(paper.scale, pen),
        fixed(paper.wide),
        fixed(paper.tall),
        tuple(lines),
        tuple(marks),
        tuple(arrows),
        tuple(labels),
        tuple(_row(wall.stretch, pen) for wall in laid if isinstance(wall.stretch, Run)),
        closure,
        room.note or "",
    )


def scale_text(scale: int, pen: Pen) -> str:
    """Write a scale as a carpenter reads it."""
    if pen.unit == "mm":
        return f"1 : {scale}"
    return pen.words(
        "{inch} = 1 ft (1 : {scale})", inch=pen.length(Fraction(12, scale)), scale=scale
    )


def _row(run: Run, pen: Pen) -> WallRow:
    def joint(end_joint: Joint, corner: Fraction | None) -> str:
        name = pen.words(phrases.JOINTS[end_joint])
        return f"{name} {pen.angle(corner)}" if corner is not None else name

    return WallRow(
        run.label,
        pen.length(run.length),
        joint(run.left.joint, run.left.corner),
        joint(run.right.joint, run.right.corner),
        ", ".join(run.trims),
        run.note or "",
    )


def _splices(result: Result, room: Room, run: Run) -> list[float]:
    """How far from the wall's left end its first trim is pieced, in inches."""
    parts = [
        piece
        for piece in result.pieces
        if piece.kind is Kind.RUN and (piece.room, piece.run) == (room.name, run.label)
    ]
    parts = [piece for piece in parts if piece.trim == parts[0].trim]
    marks, at = [], 0.0
    for piece in parts[:-1]:
        at += float(piece.back)
        marks.append(at)
    return marks


def _corner_marks(run: Run, one: Point, other: Point) -> list[tuple[str, str, str]]:
    """A dot in an inside corner, a square at an outside one, a ring at a free end."""
    looks = {
        Joint.IN_CORNER: "in",
        Joint.OUT_CORNER: "out",
        Joint.RETURN: "free",
        Joint.OPEN: "free",
    }
    return [
        (looks[end.joint], fixed(at[0]), fixed(at[1]))
        for end, at in ((run.left, one), (run.right, other))
        if end.joint in looks
    ]


def inward(wall: Wall) -> Point:
    """The unit direction from a wall into the room: to the right of the walk."""
    return (-sin(radians(wall.heading)), cos(radians(wall.heading)))


def _label(look: str, wall: Wall, one: Point, other: Point, text: str, inside: float) -> Label:
    """Put a text beside a wall's middle, along it, never upside down."""
    way = inward(wall)
    turn = (wall.heading + 90) % 180 - 90
    x = (one[0] + other[0]) / 2 + way[0] * inside
    y = (one[1] + other[1]) / 2 + way[1] * inside
    # a text stands on its base line: move it down by half a letter
    x += -sin(radians(turn)) * 0.9
    y += cos(radians(turn)) * 0.9
    return Label(look, fixed(x), fixed(y), fixed(turn), text)


def _across(paper: Paper, wall: Wall, at: float) -> Line:
    """A slanting stroke over the wall where a splice comes."""
    along = (cos(radians(wall.heading)), sin(radians(wall.heading)))
    x, y = paper.at((wall.start[0] + along[0] * at, wall.start[1] + along[1] * at))
    way = inward(wall)
    dx, dy = (along[0] + way[0]) * 1.8, (along[1] + way[1]) * 1.8
    return line("splice", (x - dx, y - dy), (x + dx, y + dy))


def jamb(wall: Wall, at: Point) -> Line:
    """Return the short stroke across the wall at an opening's side."""
    way = inward(wall)
    return line(
        "jamb", (at[0] - way[0] * 1.6, at[1] - way[1] * 1.6), (at[0] + way[0], at[1] + way[1])
    )


def _arrow(wall: Wall, one: Point, other: Point) -> str:
    """A solid arrow head that points into the room at its entrance."""
    way = inward(wall)
    along = (cos(radians(wall.heading)), sin(radians(wall.heading)))
    x, y = (one[0] + other[0]) / 2, (one[1] + other[1]) / 2
    tip = (x + way[0] * 0.5, y + way[1] * 0.5)
    foot = (x - way[0] * 3.5, y - way[1] * 3.5)
    points = [
        tip,
        (foot[0] + along[0] * 1.8, foot[1] + along[1] * 1.8),
        (foot[0] - along[0] * 1.8, foot[1] - along[1] * 1.8),
    ]
    return " ".join(f"{fixed(px)},{fixed(py)}" for px, py in points)


def line(look: str, one: Point, other: Point) -> Line:
    """Return a line between two points on the paper."""
    return Line(look, fixed(one[0]), fixed(one[1]), fixed(other[0]), fixed(other[1]))


def fixed(value: float) -> str:
    """Write a coordinate with two decimals, so that the same drawing gives the same bytes."""
    return f"{round(value, 2) + 0.0:.2f}"
