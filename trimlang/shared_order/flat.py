"""One of several jobs bought together; tags on its rooms keep the pieces' ids apart."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path

from trimlang.compiler import Result
from trimlang.joinery.piece import Piece
from trimlang.joinery.pieces import joinery
from trimlang.joinery.spliced_pieces import Splice
from trimlang.record import record
from trimlang.survey.job import Job
from trimlang.survey.room_tags import room_tag


@record
class Flat:
    """A job of the pool.

    The id of each of its pieces begins with ``tag``.  ``file`` is the job file as it was given
    and ``folder`` where its includes are looked for.  ``job`` is the surveyed job with tagged
    rooms; ``pieces`` and ``splices`` are what its joinery gives.
    """

    tag: str
    file: str
    folder: Path
    result: Result
    job: Job
    pieces: tuple[Piece, ...]
    splices: tuple[Splice, ...] = ()


def flats(checked: Iterable[tuple[str, Result]]) -> tuple[Flat, ...]:
    """Return a flat for each pair of file name and checked job, in the same order.

    A flat's tag is made from the file's name as a room's is from the room's name:
    ``flat-12.trim`` becomes F12.  It depends only on that name and on the files before it.
    """
    tags: dict[str, str] = {}
    made: list[Flat] = []
    for file, result in checked:
        tag = room_tag(Path(file).stem, tags)
        tags[tag] = file
        rooms = tuple(replace(room, tag=f"{tag}-{room.tag}") for room in result.job.rooms)
        job = replace(result.job, rooms=rooms)
        folder = Path(file).resolve().parent
        # Joined again, since the ids of the pieces now begin with the flat's tag. The findings were
        # told when the job was checked.
        pieces, spliced, _ = joinery(job)
        made.append(
            Flat(
                tag=tag,
                file=file,
                folder=folder,
                result=result,
                job=job,
                pieces=pieces,
                splices=spliced,
            )
        )
    return tuple(made)
