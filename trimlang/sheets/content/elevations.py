"""Elevations: walls with more than level trim on their floor, as one sees them from the room."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from functools import partial
from itertools import pairwise
from typing import Final

from trimlang.compiler import Result
from trimlang.joinery.piece import Piece
from trimlang.joinery.wall_faces import WallFace, wall_faces
from trimlang.language.facts import Side
from trimlang.record import record
from trimlang.sheets.drawing.elevation_lines import Layer, elevation_lines, path_of
from trimlang.sheets.drawing.elevation_measures import chains_below, measured_openings
from trimlang.sheets.drawing.elevation_names import (
    named_openings,
    named_pieces,
    numbered_boxes,
)
from trimlang.sheets.drawing.elevation_paper import WIDE, common_scale, paper_of
from trimlang.sheets.drawing.lettering import Wanted, letter
from trimlang.sheets.drawing.plan_scale import DrawnLabel, DrawnLine, fixed, line, scale_text
from trimlang.sheets.wording.elevation_words import elevation_notes, in_words, wall_name
from trimlang.sheets.wording.quantities import Pen
from trimlang.survey.job import Job, Run, Stretch

APART: Final = 2.5
"""What is free between two walls of a row (mm)."""
LEAST_WIDE: Final = 44.0
"""A drawing is no narrower, so that its heading and its key have room (mm)."""
BELOW: Final = 6.0
"""What is free between the floor and the chain of measures for the names of low trim (mm)."""


@record
class Elevation:
    """One wall: its drawing in millimetres on paper, and what is to be said of it.

    ``layers`` are its lines from behind to before, ``leaders`` and ``measures`` the ``d`` of a
    path each.  ``key`` says which pieces are only numbered, ``alt`` in words what is drawn.
    """

    room: str
    name: str
    wide: str
    tall: str
    layers: tuple[Layer, ...]
    leaders: str
    measures: str
    labels: tuple[DrawnLabel, ...]
    key: tuple[tuple[str, str], ...]
    alt: str
    notes: tuple[str, ...]


@record
class ElevationSheet:
    """All walls to draw, to one scale, in rows as they stand beside each other on a page."""

    scale: str
    rows: tuple[tuple[Elevation, ...], ...]


def has_elevations(job: Job) -> bool:
    """Tell whether any wall of a job is drawn."""
    return any(
        bool(room.boxes) or any(_shows_more(job, stretch) for stretch in room.walk)
        for room in job.rooms
    )


def elevations(result: Result, pen: Pen) -> ElevationSheet:
    """Return every wall that climbs or has casing, crown, boxes or a block, in the walk's order."""
    job = result.job
    by_id = {piece.id: piece for piece in result.pieces}
    faces = [
        face
        for room in job.rooms
        # A room of loose pieces alone has no walls to draw.
        if room.walk
        for face in wall_faces(job, room, by_id, partial(_shows_more, job))
    ]
    # One scale for all, so that walls of a job can be compared by eye.
    scale = common_scale(faces, pen.unit)
    drawn = (_drawn(job, face, by_id, scale, pen.of(face.room.settings.unit)) for face in faces)
    return ElevationSheet(scale=scale_text(scale, pen), rows=_in_rows(drawn))


def _in_rows(drawn: Iterable[Elevation]) -> tuple[tuple[Elevation, ...], ...]:
    """Return walls in rows no longer than a page is wide, each in the first that has room for it.

    A room begins at the earliest in the last row of the one before, so that it stays together.
    """
    rows: list[list[Elevation]] = []
    first, room = 0, ""
    for wall in drawn:
        if wall.room != room:
            # One row back, so that a new room fills the row before it but never goes among older
            # ones.
            first, room = max(len(rows) - 1, 0), wall.room
        free = (row for row in rows[first:] if _long(row) + APART + float(wall.wide) <= WIDE)
        row = next(free, None)
        if row is None:
            rows.append([wall])
        else:
            row.append(wall)
    return tuple(map(tuple, rows))


def _long(row: Sequence[Elevation]) -> float:
    return sum(float(one.wide) for one in row) + APART * (len(row) - 1)


def _shows_more(job: Job, stretch: Stretch) -> bool:
    """Tell whether there is more to see of a stretch than a plan shows.

    Where a block stands, how high it and the trims at both its sides are is what one wants to see.
    """
    if not isinstance(stretch, Run):
        # Of a gap only casing shows, which is what its trims are, and a block.
        return bool(stretch.trims) or stretch.trimmings.transition is not None
    if any(stretch.side(side).block is not None for side in Side):
        return True
    crown = any(job.trim(name).spring is not None for name in stretch.trims)
    return bool(stretch.slope) or crown


def _drawn(
    job: Job, face: WallFace, pieces: Mapping[str, Piece], scale: int, pen: Pen
) -> Elevation:
    paper = paper_of(face, scale, LEAST_WIDE)
    lines = elevation_lines(job, face, paper)
    inside, measured = measured_openings(face, paper, pen)
    wanted = [*named_pieces(job, face, paper, pen), *named_openings(face, paper), *measured]
    for boxes in face.boxes:
        wanted += numbered_boxes(boxes, paper)
    # Strokes come first: a name may move, a wall may not.
    taken = [*lines.strokes, *_lines(inside)]
    # Names are placed before the chain of measures: they may need rows below the drawing, and the
    # chain goes below those.
    placed = letter(wanted, taken, [], (paper.wide, paper.tall + BELOW))
    labels, key = _numbered(wanted, placed.labels)
    chain = chains_below(face, paper, placed.tall + 4.5, pen)
    return Elevation(
        room=face.room.name,
        name=wall_name(face, pen),
        wide=fixed(paper.wide),
        tall=fixed(placed.tall + 4.5 + chain.tall),
        layers=lines.layers,
        leaders=path_of(
            ((float(one.x1), float(one.y1)), (float(one.x2), float(one.y2)))
            for one in placed.leaders
        ),
        measures=path_of([*inside, *chain.strokes]),
        labels=(*labels, *chain.labels),
        key=key,
        alt=in_words(face, pen),
        notes=tuple(elevation_notes(face, pieces, pen)),
    )


def _numbered(
    wanted: Sequence[Wanted], labels: Sequence[DrawnLabel]
) -> tuple[list[DrawnLabel], tuple[tuple[str, str], ...]]:
    """Return labels with those that are numbers counted from 1, and what each number stands for."""
    made: list[DrawnLabel] = []
    key: list[tuple[str, str]] = []
    for one, label in zip(wanted, labels, strict=True):
        # Only now is it known which pieces are numbered, so they are counted from 1 without gaps.
        if one.instead is not None and label.text != one.text:
            key.append((str(len(key) + 1), one.text))
            made.append(replace(label, text=key[-1][0]))
        else:
            made.append(label)
    return made, tuple(key)


def _lines(strokes: list[tuple[tuple[float, float], ...]]) -> Iterator[DrawnLine]:
    for stroke in strokes:
        yield from (line("measure", one, other) for one, other in pairwise(stroke))
