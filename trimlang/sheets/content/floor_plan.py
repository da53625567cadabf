"""The floor plan: each room to scale, its runs named as on the tickets."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from functools import partial
from itertools import accumulate
from math import cos, radians, sin

from trimlang.compiler import Result
from trimlang.incremental.cache import Cache, placeless
from trimlang.joinery.piece import PieceKind
from trimlang.lengths.tape import NOTHING
from trimlang.record import record
from trimlang.sheets.content.wall_pieces import WallPieces, wall_pieces
from trimlang.sheets.drawing.door_leaf import Door
from trimlang.sheets.drawing.lettering import SIZES, Wanted, letter
from trimlang.sheets.drawing.plan_arrows import entrance_arrow, middle_of, walk_arrow
from trimlang.sheets.drawing.plan_blocks import block_lines, corner_lines
from trimlang.sheets.drawing.plan_scale import (
    NARROWEST,
    TALL,
    DrawnLabel,
    DrawnLine,
    DrawnWall,
    Paper,
    fixed,
    inward,
    jamb,
    line,
    scale_text,
    tall_alone,
    wall_lines,
    walls,
)
from trimlang.sheets.drawing.polygons import Point, far
from trimlang.sheets.drawing.typeface import run as wide_of
from trimlang.sheets.wording import phrases
from trimlang.sheets.wording.box_sums import box_sum
from trimlang.sheets.wording.closing_words import closing_words
from trimlang.sheets.wording.quantities import Pen
from trimlang.sheets.wording.wall_words import note_in_plan
from trimlang.survey.job import End, Room, Run, Trim
from trimlang.survey.outline import outline
from trimlang.survey.verdict import Closing, Verdict


@record
class WallRow:
    """A wall in the list beside the drawing."""

    label: str
    length: str
    left: str
    right: str
    pieces: str
    note: str


@record
class RoomPlan:
    """A room's drawing and the list of its walls; coordinates are millimetres on paper.

    ``marks`` are corners and free ends (look, x, y, size), ``arrows`` the entrance as polygons,
    ``leaves`` doors that are hinged on a side, as the ``d`` of a path each.
    ``sums`` show of each set of boxes that it fills its wall.
    """

    name: str
    scale: str
    wide: str
    tall: str
    lines: tuple[DrawnLine, ...]
    marks: tuple[tuple[str, str, str, str], ...]
    arrows: tuple[str, ...]
    leaves: tuple[str, ...]
    labels: tuple[DrawnLabel, ...]
    rows: tuple[WallRow, ...]
    closure: str
    way: str
    sums: tuple[str, ...]
    note: str


def floor_plan(
    result: Result, pen: Pen, cache: Cache[RoomPlan] | None = None
) -> tuple[RoomPlan, ...]:
    """Return the plan of every room that has walls; those in ``cache`` are not drawn again."""
    rooms = [room for room in result.job.rooms if room.walk]
    trims = tuple(placeless(trim) for trim in result.job.trims)
    backs = _backs(result)
    ids = wall_pieces(result.job, result.pieces)
    closings = {one.room: one for one in result.closings}
    drawn: list[RoomPlan] = []
    for room in rooms:
        own = pen.of(room.settings.unit)
        joints = backs.get(room.name, ())
        # All that the drawing depends on is in the key below; places in the job file are left out,
        # so that a line added above a room does not make it new.
        closing = closings.get(room.name)
        pieces = ids.get(room.name, WallPieces())
        # A room that has the page to itself is drawn larger, and its list stands below it.
        tall = TALL if len(rooms) > 1 else tall_alone(pieces.listed(room.runs, own))
        draw = partial(
            _room,
            room,
            pieces,
            own,
            trims=trims,
            joints=joints,
            closing=closing,
            tall=tall,
        )
        if cache is None:
            drawn.append(draw())
        else:
            key = (placeless(room), trims, joints, pieces, closing, own, tall)
            drawn.append(cache.get(key, draw))
    return tuple(drawn)


def _backs(result: Result) -> dict[str, tuple[tuple[str, Fraction], ...]]:
    """Return, by room, runs whose first trim is spliced and each part's back length (inches)."""
    first: dict[tuple[str, str], str] = {}
    backs: dict[str, list[tuple[str, Fraction]]] = {}
    for piece in result.pieces:
        if piece.kind is not PieceKind.RUN:
            continue
        trim = first.setdefault((piece.room, piece.run), piece.trim)
        if piece.trim == trim and piece.parts > 1:
            backs.setdefault(piece.room, []).append((piece.run, piece.back))
    return {room: tuple(parts) for room, parts in backs.items()}


def _room(
    room: Room,
    pieces: WallPieces,
    pen: Pen,
    *,
    trims: tuple[Trim, ...],
    joints: tuple[tuple[str, Fraction], ...],
    closing: Closing | None,
    tall: float,
) -> RoomPlan:
    drawn = outline(room, trims)
    laid = walls(room, drawn)
    doors = [door for wall in laid if (door := Door.of(wall)) is not None]
    beyond = [door.opened(1) for door in doors]
    paper = Paper(laid, pen.unit, tall, beyond=beyond, narrow=NARROWEST)
    leaves = [door.drawn(paper) for door in doors]
    lines: list[DrawnLine] = []
    marks: list[tuple[str, str, str, str]] = []
    arrows: list[str] = []
    walking = ""
    called: dict[str, str] = {}
    names: list[Wanted] = []
    for wall in laid:
        one, other = paper.at(wall.start), paper.at(wall.end)
        stretch = wall.stretch
        lines += corner_lines(paper, wall)
        if isinstance(stretch, Run):
            lines += wall_lines("run", wall, paper)
            marks += _corner_marks(stretch, one, other)
            text = _said(stretch, far(one, other), pen)
            called[text] = stretch.label
            names.append(_wanted(wall, one, other, text, is_run=True))
            if not walking:
                # Once, at the first wall with trim: it shows which way the walls are listed.
                walking = walk_arrow(wall, one)
                arrows.append(walking)
            lines += [_across(paper, wall, at) for at in _splices(joints, stretch)]
        else:
            lines.append(line(stretch.kind, one, other))
            lines += [jamb(wall, one), jamb(wall, other)]
            wide = next((trim.height for trim in trims if trim.name == stretch.casing), None)
            lines += block_lines(paper, wall, stretch, wide or NOTHING, room.settings.reveal)
            if stretch.entrance:
                arrows.append(entrance_arrow(wall, one, other))
            if stretch.called:
                names.append(_wanted(wall, one, other, stretch.called))
    closure = closing_words(room, drawn, closing, pen)
    if closing is not None and closing.verdict is Verdict.GAPES:
        # Dashed on the plan: from where the walk ends to where it should have ended.
        lines.append(line("misclosure", paper.at(laid[-1].end), paper.at(laid[0].start)))
    # Names are placed last: they must avoid all lines and marks.
    solid = [(float(x), float(y)) for _, x, y, _ in marks]
    solid += [middle_of(arrow) for arrow in arrows if arrow != walking]
    taken = [*lines, *(stroke for leaf in leaves for stroke in leaf.strokes)]
    placed = letter(names, taken, solid, (paper.wide, paper.tall))
    # A name that stands off its wall goes without its length, which would crowd the others.
    led = {(one.x1, one.y1) for one in placed.leaders}
    short = [
        replace(one, text=called.get(one.text, one.text))
        if (fixed(one.middle[0]), fixed(one.middle[1])) in led
        else one
        for one in names
    ]
    if short != names:
        placed = letter(short, taken, solid, (paper.wide, paper.tall))
    return RoomPlan(
        name=room.name,
        scale=scale_text(paper.scale, pen),
        wide=fixed(paper.wide),
        tall=fixed(placed.tall),
        lines=(*placed.leaders, *lines),
        marks=tuple(marks),
        arrows=tuple(arrows),
        leaves=tuple(leaf.path for leaf in leaves),
        labels=placed.labels,
        rows=tuple(
            _row(wall.stretch, pieces, pen) for wall in laid if isinstance(wall.stretch, Run)
        ),
        closure=closure,
        way=_way(room, pen),
        sums=tuple(box_sum(room, boxes, pen) for boxes in room.boxes),
        note=room.note or "",
    )


def _way(room: Room, pen: Pen) -> str:
    """Say which wall comes first and on which side the next one follows."""
    runs = room.runs
    if len(runs) < 2:
        return ""
    return pen.words(
        "Begin at {first}: as you face it the walls go on to the right, and {second} comes next.",
        first=runs[0].label,
        second=runs[1].label,
    )


def _row(run: Run, pieces: WallPieces, pen: Pen) -> WallRow:
    def joint(end: End) -> str:
        name = phrases.joint_words(end.joint, end.fit, pen.words)
        if end.corner is not None:
            # What the surveyor read off stands as it was read.
            worked_out = end.implied or end.corner_error is not None
            angle = pen.worked_out_angle if worked_out else pen.angle
            name = f"{name} {angle(end.corner)}"
        return name if end.block is None else f"{name}, {end.block.block.name}"

    return WallRow(
        label=run.label,
        length=pen.length(run.length),
        left=joint(run.left),
        right=joint(run.right),
        pieces=pieces.along(run.label, pen),
        note=note_in_plan(run, pen),
    )


def _splices(joints: tuple[tuple[str, Fraction], ...], run: Run) -> list[float]:
    """Return how far from the wall's left end its first trim is spliced (inches)."""
    parts = [float(back) for label, back in joints if label == run.label]
    # Joints lie behind each part but the last.
    return list(accumulate(parts[:-1]))


def _corner_marks(run: Run, one: Point, other: Point) -> list[tuple[str, str, str, str]]:
    """Return a dot for an inside corner, a square for an outside one, a ring for a free end."""
    # Where a wall is shorter than two marks, they shrink so that both can be seen.
    size = fixed(min(max(far(one, other) * 0.4, 0.45), 1.0))
    return [
        (mark.value, fixed(at[0]), fixed(at[1]), size)
        for end, at in ((run.left, one), (run.right, other))
        if (mark := end.joint.row.mark) is not None
    ]


def _wanted(
    wall: DrawnWall, one: Point, other: Point, text: str, *, is_run: bool = False
) -> Wanted:
    """Return a name to place: a run's outside its room, an opening's inside."""
    way = inward(wall)
    # A run's name outside leaves the room's middle free; an opening's inside keeps it out of the
    # next room's drawing.
    off = (-way[0], -way[1]) if is_run else way
    look = "run" if is_run else "gap"
    return Wanted(look=look, text=text, one=one, other=other, off=off, heading=wall.heading)


def _across(paper: Paper, wall: DrawnWall, at: float) -> DrawnLine:
    """Return a slanting stroke across the wall where a splice is."""
    along = (cos(radians(wall.heading)), sin(radians(wall.heading)))
    x, y = paper.at((wall.start[0] + along[0] * at, wall.start[1] + along[1] * at))
    way = inward(wall)
    # Half way between along the wall and into the room: 45° across the wall.
    dx, dy = (along[0] + way[0]) * 1.8, (along[1] + way[1]) * 1.8
    return line("splice", (x - dx, y - dy), (x + dx, y + dy))


def _said(run: Run, room: float, pen: Pen) -> str:
    """A wall's name, with its length where both fit along it (mm); the list has all lengths."""
    text = f"{run.label} {pen.length(run.length)}"
    return text if wide_of(text, SIZES["run"]) < room else run.label
