"""Which pieces meet at each end: round a corner, over a splice, at a return."""

from __future__ import annotations

from collections import defaultdict
from itertools import pairwise

from trimlang.compiler import Result
from trimlang.joinery.piece import Piece, PieceKind
from trimlang.survey.job import Room, Run

Mates = dict[tuple[str, str], str]
"""(piece, ``left`` or ``right``) to the piece that it meets there."""


def mates(result: Result) -> Mates:
    """Return what each end of each piece meets, as far as it meets a piece."""
    by_run: defaultdict[tuple[str, str, str], list[Piece]] = defaultdict(list)
    met: Mates = {}
    for piece in result.pieces:
        if piece.kind is PieceKind.RUN:
            by_run[piece.room, piece.run, piece.trim].append(piece)
    for parts in by_run.values():
        parts.sort(key=lambda piece: piece.part)
        for one, other in pairwise(parts):
            _meet(met, one, other)
    for room in result.job.rooms:
        _corners(met, room, by_run)
    for piece in result.pieces:
        if piece.kind is PieceKind.RETURN:
            parts = by_run[piece.room, piece.run, piece.trim]
            if piece.right.joint.returns:
                _meet(met, piece, parts[0])
            else:
                _meet(met, parts[-1], piece)
    return met


def _meet(met: Mates, one: Piece, other: Piece) -> None:
    met[one.id, "right"] = other.id
    met[other.id, "left"] = one.id


def _corners(
    met: Mates, room: Room, by_run: defaultdict[tuple[str, str, str], list[Piece]]
) -> None:
    walk = room.walk
    for index, one in enumerate(walk):
        last = index + 1 == len(walk)
        if last and room.open_walk:
            return
        other = walk[0 if last else index + 1]
        if not isinstance(one, Run) or not isinstance(other, Run) or one is other:
            continue
        if not one.right.joint.has_mate or other.left.joint is not one.right.joint:
            continue
        for trim in one.trims:
            here = by_run.get((room.name, one.label, trim))
            there = by_run.get((room.name, other.label, trim))
            if here and there:
                _meet(met, here[-1], there[0])
