"""Balustrade caps: trim on posts, with no wall behind it to be nailed or caulked to.

A cap lies flat, wider than it is high, and runs to a newel (common practice, no source).
"""

from __future__ import annotations

from typing import TypeAlias

from trimlang.joinery.piece import Piece
from trimlang.language.facts import Side
from trimlang.survey.job import Gap, Job, Room, Trim
from trimlang.survey.over_openings import beyond

Caps: TypeAlias = frozenset[tuple[str, str, str]]
"""Room, run and trim of each balustrade cap."""

_POST = "newel"


def caps(job: Job) -> Caps:
    """Return which trims of a job are balustrade caps, and where."""
    return frozenset(
        (room.name, run.label, name)
        for room in job.rooms
        for at, run in enumerate(room.walk)
        if not isinstance(run, Gap) and _beside_a_newel(room, at)
        for name in run.trims
        if _lies_flat(job.trim(name))
    )


def is_cap(piece: Piece, of_job: Caps) -> bool:
    """Tell whether a piece is one of a job's caps."""
    return (piece.room, piece.run, piece.trim) in of_job


def _lies_flat(trim: Trim) -> bool:
    # A size that is not given says nothing of how it lies.
    thick, tall = trim.thickness, trim.height
    return trim.spring is None and thick is not None and tall is not None and thick > tall


def _beside_a_newel(room: Room, at: int) -> bool:
    for side in Side:
        place = next(beyond(room, at, side.step), None)
        stretch = None if place is None else room.walk[place]
        if isinstance(stretch, Gap) and (stretch.called or "").casefold().startswith(_POST):
            return True
    return False
