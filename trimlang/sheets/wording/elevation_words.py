"""Says what an elevation shows, and what of it nobody measured."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from trimlang.joinery.piece import Piece
from trimlang.joinery.piece_in_place import Upon
from trimlang.joinery.wall_faces import WallFace
from trimlang.marking import N_
from trimlang.sheets.wording.box_sums import box_sum
from trimlang.sheets.wording.quantities import Pen
from trimlang.sheets.wording.wall_words import wall_note
from trimlang.survey.job import Run


def said_of(piece: Piece, pen: Pen) -> str:
    """Return a piece's id and its length as its ticket has it."""
    return f"{piece.id} {pen.mark(piece.to_mark)}"


def wall_name(face: WallFace, pen: Pen) -> str:
    """Return what a wall is called: by its runs, or by its openings where it has none."""
    labels = face.labels
    if not labels:
        return ", ".join(one.gap.called or one.gap.kind.value for one in face.openings)
    if len(labels) == 1:
        return labels[0]
    return pen.words("{first} to {last}", first=labels[0], last=labels[-1])


def in_words(face: WallFace, pen: Pen) -> str:
    """Say what is drawn, for whoever does not see it."""
    pieces = ", ".join(said_of(one.piece, pen) for one in face.pieces)
    room, wall = face.room.name, wall_name(face, pen)
    return pen.words(
        "{room}, wall {wall}, seen from within the room: {pieces}",
        room=room,
        wall=wall,
        pieces=pieces,
    )


def elevation_notes(face: WallFace, pieces: Mapping[str, Piece], pen: Pen) -> Iterator[str]:
    """Yield what a drawing does not show: climbs, sums, what is glued on, what lies behind."""
    for place in face.wall.places:
        stretch = face.room.walk[place]
        if isinstance(stretch, Run) and (climb := _climb_of(stretch, pen)):
            yield f"{stretch.label}: {climb}"
    for boxes in face.boxes:
        yield box_sum(face.room, boxes.boxes, pen)
    # What the drawing leaves out is named below it, so that every piece is found somewhere.
    shown = {one.piece.id for one in face.pieces}
    doors = {one.piece.run for one in face.pieces if one.piece.kind.of_casing}
    own = [one for one in pieces.values() if one.room == face.room.name and one.id not in shown]
    for text, found in (
        (
            N_("Glued to their ends: {pieces}"),
            [one for one in own if one.kind.is_glued and shown.intersection(one.mates)],
        ),
        (
            N_("On the other side of the wall: {pieces}"),
            [one for one in own if one.kind.of_casing and one.run in doors],
        ),
    ):
        if found:
            yield pen.words(text, pieces=", ".join(said_of(one, pen) for one in found))
    if unmeasured := ", ".join(_unmeasured(face, pen)):
        yield pen.words("Nobody measured how high these are: {what}", what=unmeasured)


def _climb_of(run: Run, pen: Pen) -> str:
    """Return a run's note, how it climbs, and the steps that it climbs by."""
    note, steps = wall_note(run, pen), run.stair.steps
    if steps is None:
        return note
    rise, going = pen.length(steps.rise), pen.length(steps.run)
    step = pen.words("each step {rise} up and {run} on", rise=rise, run=going)
    return f"{note}; {step}"


def _unmeasured(face: WallFace, pen: Pen) -> Iterator[str]:
    rails = dict.fromkeys(one.piece.trim for one in face.runs if one.upon is Upon.NOTHING_MEASURED)
    yield from rails
    if face.boxes:
        yield pen.words("the boxes")
    for opening in face.openings:
        if not opening.from_floor:
            name = opening.gap.called
            yield pen.words("“{name}”", name=name) if name else pen.words("the window")
