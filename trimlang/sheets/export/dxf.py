"""The floor plan as DXF, in real-world size, for a drawing program.

Coordinates are floats, here and in drawings only, in the job file's unit.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from io import StringIO
from itertools import pairwise
from math import atan2, cos, degrees, hypot, radians, sin
from typing import TYPE_CHECKING, Any, Final

from trimlang.compiler import Result
from trimlang.extras import DRAWING
from trimlang.joinery.piece import PieceKind
from trimlang.language.tree import GapKind
from trimlang.lengths.tape import Unit, feet_text, length_text
from trimlang.letters import printable
from trimlang.sheets.content.overview import side_by_side
from trimlang.sheets.drawing.door_leaf import Door
from trimlang.sheets.drawing.neighbours import Placed
from trimlang.sheets.drawing.plan_scale import DrawnWall, inward, walls
from trimlang.sheets.drawing.polygons import Point, roomiest
from trimlang.survey.job import Gap, Room, Run
from trimlang.survey.outline import outline

if TYPE_CHECKING:
    from ezdxf.document import Drawing

LAYERS: Final = {
    "WALLS": (7, "CONTINUOUS"),
    "OPENINGS": (5, "DASHED"),
    "BARE-WALLS": (8, "DASHED"),
    "DOORS": (4, "CONTINUOUS"),
    "SPLICES": (1, "CONTINUOUS"),
    "WALL-IDS": (3, "CONTINUOUS"),
    "PIECE-IDS": (6, "CONTINUOUS"),
    "OPENING-NAMES": (5, "CONTINUOUS"),
    "ROOM-NAMES": (2, "CONTINUOUS"),
}
"""Each layer with its colour number and the look of its lines."""

_OF: Final = {GapKind.OPENING: "OPENINGS", GapKind.BARE: "BARE-WALLS"}
_UNITS: Final = {Unit.INCH: (1, 0, 1.0), Unit.MM: (4, 1, 25.4)}
"""$INSUNITS, $MEASUREMENT, and how many units make an inch."""

_LETTER: Final = 3.0
"""Height of a wall's label (inches): at 1 : 48 it is printed a sixteenth of an inch tall."""
_LEAST: Final = 0.75
"""The least height of a text (inches), beside a wall however short."""
_WIDE: Final = 0.9
"""About how wide a letter is, as a part of its height."""
_DASHES: Final = 12.0
"""Inches to a unit of the dashed lines' pattern."""
_APART: Final = 60.0
"""The distance between groups of rooms that no opening joins (inches)."""


class DrawingMissingError(RuntimeError):
    """The library that writes DXF is not installed."""


def floor_plan_dxf(result: Result) -> bytes:
    """Return the floor plan as a DXF file (R2010): the same result gives the same bytes.

    Raises:
        DrawingMissingError: ezdxf is not installed.
    """
    try:
        from ezdxf.filemanagement import new
    except ImportError:
        raise DrawingMissingError(DRAWING.remedy()) from None
    with _no_dates():
        document = new("R2010", setup=["linetypes"])
        code, measurement, size = _UNITS[result.job.settings.unit]
        document.header["$INSUNITS"] = code
        document.header["$MEASUREMENT"] = measurement
        document.header["$LTSCALE"] = _DASHES * size
        for name, (colour, line) in LAYERS.items():
            document.layers.add(name, color=colour, linetype=line)
        _Sheet(document, result).draw()
        _in_order(document)
        written = StringIO()
        document.write(written)
    return written.getvalue().encode("utf-8", "replace")


@contextmanager
def _no_dates() -> Iterator[None]:
    """Keep the library from writing the time and random names into the file."""
    import ezdxf

    options: Any = ezdxf.options  # type: ignore[attr-defined]
    before = options.write_fixed_meta_data_for_testing
    options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        options.write_fixed_meta_data_for_testing = before


def _in_order(document: Drawing) -> None:
    """Put the file's classes in the order of their names.

    The library lists them in the order of a set of its own, which changes with Python's
    hash seed.
    """
    from ezdxf.sections.classes import ClassesSection

    section: ClassesSection = document.classes
    section.add_required_classes(document.dxfversion)
    section.classes = dict(sorted(section.classes.items()))


class _Sheet:
    """Draws one job into a document."""

    def __init__(self, document: Drawing, result: Result) -> None:
        self._space: Any = document.modelspace()
        self._result = result
        self._size = _UNITS[result.job.settings.unit][2]
        self._right = 0.0

    def draw(self) -> None:
        rooms = [room for room in self._result.job.rooms if room.walk]
        walks = [walls(room, outline(room, self._result.job.trims)) for room in rooms]
        for group in side_by_side(rooms, walks):
            points = [point for one in group for wall in one.walk for point in wall.points]
            left = min(x for x, _ in points)
            # y points down here and up in the file: the lowest corner of each group lies at y = 0.
            base = max(y for _, y in points)
            self._origin = (self._right - left, base)
            for one in group:
                self._room(rooms[one.room], one)
            self._right += max(x for x, _ in points) - left + _APART

    def _at(self, point: Point) -> Point:
        """Return a point of the walk (inches, y down) in the file's unit, y up."""
        x = (point[0] + self._origin[0]) * self._size
        y = (self._origin[1] - point[1]) * self._size
        return round(x, 6) + 0.0, round(y, 6) + 0.0

    def _room(self, room: Room, placed: Placed) -> None:
        for wall in placed.walk:
            stretch = wall.stretch
            layer = _OF[stretch.kind] if isinstance(stretch, Gap) else "WALLS"
            for one, other in pairwise(wall.points):
                self._line(layer, one, other)
            if isinstance(stretch, Run):
                self._run(room, wall, stretch)
            else:
                self._gap(wall, stretch)
        x, y = roomiest(placed.shape)
        self._text("ROOM-NAMES", room.name, (x, y), 0.0, 2 * _LETTER)
        self._text("ROOM-NAMES", room.tag, (x, y + 4 * _LETTER), 0.0, 2 * _LETTER)

    def _run(self, room: Room, wall: DrawnWall, run: Run) -> None:
        long = feet_text(run.length, room.settings.unit)
        if room.settings.unit is Unit.MM:
            long = length_text(run.length, Unit.MM)
        self._text_beside("WALL-IDS", f"{room.tag}-{run.label}  {long}", wall, 1.2, _LETTER)
        pieces = [
            piece
            for piece in self._result.pieces
            if (piece.room, piece.run) == (room.name, run.label) and piece.kind is PieceKind.RUN
        ]
        for row, piece in enumerate(pieces):
            self._text_beside("PIECE-IDS", piece.id, wall, 2.8 + 1.1 * row, 0.7 * _LETTER)
        # One trim's splices stand for the wall: the first that it has.
        first = [piece for piece in pieces if piece.trim == pieces[0].trim]
        at = 0.0
        for piece in first[:-1]:
            at += float(piece.back)
            self._splice(wall, at)

    def _gap(self, wall: DrawnWall, gap: Gap) -> None:
        for end in (wall.start, wall.end):
            way = inward(wall)
            outer = (end[0] - way[0] * _LETTER, end[1] - way[1] * _LETTER)
            self._line(_OF[gap.kind], end, outer)
        if (door := Door.of(wall)) is not None:
            self._door(door)
        words = [gap.called or gap.kind, *(["(entrance)"] if gap.entrance else [])]
        self._text_beside("OPENING-NAMES", " ".join(words), wall, -1.2, _LETTER)

    def _door(self, door: Door) -> None:
        """Draw a door's leaf, open at a right angle, and the arc of its swing."""
        hinge, shut, opened = (self._at(at) for at in (door.hinge, door.shut, door.opened(1)))
        self._line("DOORS", door.hinge, door.opened(1))
        ends = [degrees(atan2(y - hinge[1], x - hinge[0])) % 360 for x, y in (shut, opened)]
        # An arc runs to the left from its start; a quarter turn that does not is begun at its end.
        first, last = ends if (ends[1] - ends[0]) % 360 < 180 else ends[::-1]
        self._space.add_arc(
            hinge,
            round(hypot(shut[0] - hinge[0], shut[1] - hinge[1]), 6),
            round(first, 6) + 0.0,
            round(last, 6) + 0.0,
            dxfattribs={"layer": "DOORS"},
        )

    def _splice(self, wall: DrawnWall, at: float) -> None:
        """Draw a stroke across the wall where two pieces meet."""
        along = (cos(radians(wall.heading)), sin(radians(wall.heading)))
        way = inward(wall)
        x, y = wall.start[0] + along[0] * at, wall.start[1] + along[1] * at
        dx, dy = (along[0] + way[0]) * 0.7 * _LETTER, (along[1] + way[1]) * 0.7 * _LETTER
        self._line("SPLICES", (x - dx, y - dy), (x + dx, y + dy))

    def _text_beside(
        self, layer: str, text: str, wall: DrawnWall, rows: float, tall: float
    ) -> None:
        """Put a text beside the middle of a wall, ``rows`` into the room, never upside down."""
        way = inward(wall)
        x = (wall.start[0] + wall.end[0]) / 2 + way[0] * rows * _LETTER
        y = (wall.start[1] + wall.end[1]) / 2 + way[1] * rows * _LETTER
        # Between -90° and 90°, so that the text is never upside down; y points up here.
        turn = (-wall.heading + 90) % 180 - 90
        long = hypot(wall.end[0] - wall.start[0], wall.end[1] - wall.start[1])
        # Beside a short wall the text is smaller, so that it does not run into its neighbour's.
        fits = long / (max(len(text), 1) * _WIDE)
        self._text(layer, text, (x, y), turn, max(min(tall, fits), _LEAST))

    def _line(self, layer: str, one: Point, other: Point) -> None:
        self._space.add_line(self._at(one), self._at(other), dxfattribs={"layer": layer})

    def _text(self, layer: str, text: str, at: Point, turn: float, tall: float) -> None:
        from ezdxf.enums import TextEntityAlignment

        looks = {"layer": layer, "height": tall * self._size, "rotation": round(turn, 6) + 0.0}
        drawn = self._space.add_text(_literal(text), dxfattribs=looks)
        drawn.set_placement(self._at(at), align=TextEntityAlignment.MIDDLE_CENTER)


def _literal(text: str) -> str:
    """Return a text in which DXF's control characters ``%%`` and ``^`` mean themselves."""
    text = printable(text).replace("^", "^ ")
    # “%%” begins a code (“%%d” is a degree sign); “%%%” is one per cent sign, “^ ” one caret.
    return text.replace("%", "%%%") if "%%" in text else text
