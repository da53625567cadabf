"""Which pieces meet at each end: round a corner, over a splice, at a return."""

from __future__ import annotations

from collections import defaultdict
from itertools import pairwise

from trimlang.compiler import Result
from trimlang.joinery.piece import Piece, PieceKind
from trimlang.joinery.strips import end_of, neighbours, run_of, strips
from trimlang.language.end_facts import Side
from trimlang.survey.job import Job, Room

Mates = dict[tuple[str, Side], str]
"""From a piece and one of its ends to the piece that it meets there."""


def mates(result: Result) -> Mates:
    """Return which piece each end of each piece meets, if it meets one."""
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
        _corners(met, room, result.job, by_run)
    # Last, since a small piece comes between two that met each other before.
    for piece in result.pieces:
        if piece.kind.is_glued:
            _glued(met, piece)
    return met


def _glued(met: Mates, piece: Piece) -> None:
    """Put a return, or the small piece of a rounded corner, next to the piece it is glued to.

    The neighbour that met that piece before now meets the small one.
    """
    (closed,) = piece.mates
    # a return is cut like the end that it closes only where it meets it
    at_left = piece.right.joint.returns or (
        piece.kind is PieceKind.CORNER and piece.at is Side.LEFT
    )
    its = Side.RIGHT if at_left else Side.LEFT
    of_closed = its.other
    beyond = met.get((closed, of_closed))
    met[piece.id, its], met[closed, of_closed] = closed, piece.id
    if beyond is not None:
        met[piece.id, of_closed], met[beyond, its] = beyond, piece.id


def _meet(met: Mates, one: Piece, other: Piece) -> None:
    met[one.id, Side.RIGHT] = other.id
    met[other.id, Side.LEFT] = one.id


def _corners(
    met: Mates,
    room: Room,
    job: Job,
    by_run: defaultdict[tuple[str, str, str], list[Piece]],
) -> None:
    for name in {name for run in room.runs for name in run.trims}:
        for one, other in neighbours(room, strips(room, job.trim(name))):
            ends = end_of(room, one, Side.RIGHT), end_of(room, other, Side.LEFT)
            joints = {end.joint for end in ends if end is not None}
            # Two ends that disagree, or that end by themselves, meet nothing.
            if len(joints) != 1 or not joints.pop().has_mate:
                continue
            here, there = (
                by_run.get((room.name, run_of(room, strip, Side.LEFT).label, name))
                for strip in (one, other)
            )
            if here and there:
                # A spliced run meets its neighbours with its last and its first part.
                _meet(met, here[-1], there[0])
