"""Which pieces lie along each wall of a floor plan's table."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from trimlang.joinery.piece import Piece, PieceKind
from trimlang.joinery.strips import strips
from trimlang.record import record
from trimlang.sheets.drawing.typeface import lines
from trimlang.sheets.wording.quantities import Pen
from trimlang.survey.job import Job, Room, Run

COLUMN: Final = 80.0
"""The least width of the table's column of pieces, where no wall has a note (mm)."""
TYPE: Final = 8 * 25.4 / 72
LINE: Final = 1.3 * TYPE
ROW: Final = 0.8
"""What a row of the table takes beside its lines: its padding and its rule (mm)."""


@record
class WallPieces:
    """A room's runs, each with a piece's id: those that begin there, those that go on past it."""

    own: tuple[tuple[str, str], ...] = ()
    carried: tuple[tuple[str, str], ...] = ()

    def along(self, run: str, pen: Pen) -> str:
        """Name a run's pieces; where none begins there, those that it is a part of."""
        begins, goes_on = (
            [name for at, name in of if at == run] for of in (self.own, self.carried)
        )
        if begins or not goes_on:
            return ", ".join(begins)
        return pen.words("part of {pieces}", pieces=", ".join(goes_on))

    def listed(self, runs: Iterable[Run], pen: Pen) -> float:
        """Return how tall the table of these runs is on paper (mm)."""
        return sum(lines(self.along(run.label, pen), COLUMN, TYPE) * LINE + ROW for run in runs)


def wall_pieces(job: Job, pieces: Iterable[Piece]) -> dict[str, WallPieces]:
    """Return by room which pieces lie along its walls, in the order of the pieces.

    The four sides of each box are not listed one by one: the sum of their set names them.
    """
    of_room: dict[str, list[Piece]] = {}
    for piece in pieces:
        if piece.kind is not PieceKind.FRAME:
            of_room.setdefault(piece.room, []).append(piece)
    carried: dict[str, list[tuple[str, str]]] = {}
    for room in job.rooms:
        carried.setdefault(room.name, []).extend(_carried(job, room, of_room.get(room.name, ())))
    return {
        name: WallPieces(
            own=tuple((piece.run, piece.id) for piece in of_room.get(name, ())),
            carried=tuple(carried.get(name, ())),
        )
        for name in {*of_room, *carried}
    }


def _carried(job: Job, room: Room, pieces: Iterable[Piece]) -> list[tuple[str, str]]:
    """Return each run behind an opening with the pieces that come to it from the run before."""
    by_wall: dict[tuple[str, str], list[str]] = {}
    for piece in pieces:
        if piece.kind is PieceKind.RUN:
            by_wall.setdefault((piece.run, piece.trim), []).append(piece.id)
    labels = {at: one.label for at, one in enumerate(room.walk) if isinstance(one, Run)}
    found: list[tuple[str, str]] = []
    for name in dict.fromkeys(name for run in room.runs for name in run.trims):
        for strip in strips(room, job.trim(name)):
            # A piece over an opening is filed under its first run; who stands at the next one looks
            # there.
            for place in strip.runs[1:]:
                ids = by_wall.get((labels[strip.runs[0]], name), [])
                found += [(labels[place], one) for one in ids]
    return found
