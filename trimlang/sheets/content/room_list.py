"""A room's part of the checklist: its walls, its pieces, and what to do to fit them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from trimlang.compiler import Result
from trimlang.joinery.balustrades import Caps, caps, is_cap
from trimlang.joinery.piece import Piece, PieceKind
from trimlang.marking import N_
from trimlang.record import record
from trimlang.sheets.wording.quantities import Pen, Reading
from trimlang.sheets.wording.wall_words import wall_length
from trimlang.site_log.lines_ahead import LinesAhead, lines_ahead
from trimlang.site_log.progress_of_job import State
from trimlang.survey.job import Job, Room
from trimlang.survey.wall_blocks import blocks_of
from trimlang.takeoff.supplies import nails_in

CUT: Final = N_("cut")
FIX: Final = N_("fix")
COLUMNS: Final = (
    CUT,
    N_("label"),
    N_("dry-fit"),
    FIX,
    N_("caulk"),
    N_("fill"),
    N_("touch up"),
)
"""The boxes of each piece, in the order of the work."""


@record
class PieceLine:
    """A piece's row of boxes; those in ``done`` are ticked because the site log says so.

    ``logged`` are the log's lines that a phone will write when a box is ticked, by the box's key.
    """

    id: str
    length: Reading
    nails: str
    is_return: bool
    done: tuple[str, ...]
    logged: dict[str, str]


@record
class FittingTask:
    """Something to do to some pieces of a room besides cutting and nailing them."""

    what: str
    pieces: tuple[str, ...]


@record
class RoomList:
    """A room: its walls to measure again, what to do when fitting, its pieces, its note."""

    name: str
    walls: tuple[tuple[str, str], ...]
    tasks: tuple[FittingTask, ...]
    pieces: tuple[PieceLine, ...]
    note: str


def room_lists(result: Result, pen: Pen) -> tuple[RoomList, ...]:
    """Return the list of every room that is surveyed or has pieces, in the order of the file."""
    ahead = lines_ahead(result.job, result.pieces, result.plans)
    # Pieces may be for something that is no room of the job; it gets a list too.
    names = (*(room.name for room in result.job.rooms), *(piece.room for piece in result.pieces))
    return tuple(_room(result, name, ahead, pen) for name in dict.fromkeys(names))


def _room(result: Result, name: str, ahead: dict[str, LinesAhead], pen: Pen) -> RoomList:
    job = result.job
    rooms = [room for room in job.rooms if room.name == name]
    # A room may be measured in another unit than the job, and is checked with the same tape.
    own = pen.of(rooms[0].settings.unit) if rooms else pen
    pieces = [piece for piece in result.pieces if piece.room == name]
    # Asked once for the job, since it looks at every balustrade.
    on_posts = caps(job)
    return RoomList(
        name=name,
        walls=tuple((run.label, wall_length(run, own)) for room in rooms for run in room.runs),
        tasks=(*_blocks(rooms, own), *_tasks(pieces, own)),
        pieces=tuple(
            PieceLine(
                id=piece.id,
                length=own.mark(piece.to_mark),
                nails=_nails(piece, job, on_posts, pen),
                is_return=piece.kind is PieceKind.RETURN,
                done=_done(result, piece.id),
                logged=_logged(ahead.get(piece.id)),
            )
            for piece in pieces
        ),
        note="; ".join(room.note for room in rooms if room.note),
    )


def _nails(piece: Piece, job: Job, on_posts: Caps, pen: Pen) -> str:
    # Nails through a short return would split it.
    if piece.kind.is_glued:
        return pen.words("glue")
    if is_cap(piece, on_posts):
        return "–"  # fixed from below, to its posts and rail
    return str(nails_in(piece, job.trim(piece.trim), job.settings.nail_every))


def _blocks(rooms: Sequence[Room], pen: Pen) -> Iterator[FittingTask]:
    """Yield the task of setting blocks: they go up before the trim that ends at them."""
    set_there = [
        f"{there.count} × {there.block.name} ({there.place or pen.words('opening')})"
        for room in rooms
        for there in blocks_of(room)
    ]
    if set_there:
        yield FittingTask(pen.words("set blocks"), tuple(set_there))


def _tasks(pieces: Sequence[Piece], pen: Pen) -> Iterator[FittingTask]:
    """Yield what there is to do at the wall, each task with its pieces."""
    words = pen.words
    runs = [piece for piece in pieces if piece.kind is PieceKind.RUN]
    shims = [(piece.id, pen.thickness(piece.shim)) for piece in runs]
    kinds = (
        (
            words("scribe to the floor, at most"),
            [f"{piece.id} {pen.mark(piece.scribe)}" for piece in pieces if piece.scribe],
        ),
        (
            words("shim at the bottom where the corner gaps"),
            [f"{name} {shim}" for name, shim in shims if shim],
        ),
        (
            words("glue scarfs"),
            [
                f"{piece.id} + {mate}"
                for piece in runs
                for mate in piece.mates
                # each pair once, from its left piece
                if piece.parts > 1 and piece.id < mate
            ],
        ),
        (
            words("glue returns"),
            [f"{piece.id} + {' + '.join(piece.mates)}" for piece in pieces if piece.kind.is_glued],
        ),
    )
    for what, names in kinds:
        if names:
            yield FittingTask(what, tuple(names))


def _logged(lines: LinesAhead | None) -> dict[str, str]:
    # A piece that no log line can name has boxes on paper only.
    return {} if lines is None else {CUT: lines.cut, FIX: lines.fitted}


def _done(result: Result, piece: str) -> tuple[str, ...]:
    """Return the boxes that are ticked: the cut, or for a fitted piece all up to the nails."""
    if result.progress is None or not result.progress.is_cut(piece):
        return ()
    # The log says no more than “cut” and “fitted”; label and dry-fit come before fixing.
    return COLUMNS[:4] if result.progress.state(piece) is State.FITTED else COLUMNS[:1]
