"""Reads the names that earlier versions gave to pieces, as an old site log may have them."""

from __future__ import annotations

import re
from collections.abc import Collection
from dataclasses import replace
from typing import Final

from trimlang.survey.job import Job
from trimlang.survey.log_entries import BoughtSticks, Counted, Entry
from trimlang.survey.openings import opening_names

# Up to version 0.1.0: the second opening of a room was D2, whatever it is called.
_COUNTED: Final = re.compile(r"D(\d+)-")


def named_as_now(job: Job, pieces: Collection[str]) -> Job:
    """Return the job with the pieces in its log called by their present names.

    ``pieces`` are the ids of the job's pieces; a name that is among them stays as it is.
    """
    log = tuple(
        entry
        if isinstance(entry, BoughtSticks | Counted) or entry.piece in pieces
        else _renamed(entry, now_called(entry.piece, job))
        for entry in job.log
    )
    return job if log == job.log else replace(job, log=log)


def now_called(piece: str, job: Job) -> str:
    """Return a piece's present id; up to version 0.1.0 openings were counted (``ST-D1-…``).

    Other ids are returned as they are.
    """
    for room in job.rooms:
        rest = piece.removeprefix(f"{room.tag}-")
        found = _COUNTED.match(rest)
        if rest == piece or found is None:
            continue
        # In the order of the walk, in which they were counted then.
        names = list(opening_names(room).values())
        if 1 <= int(found[1]) <= len(names):
            return f"{room.tag}-{names[int(found[1]) - 1]}-{rest[found.end() :]}"
    return piece


def _renamed(entry: Entry, name: str) -> Entry:
    return entry if isinstance(entry, BoughtSticks | Counted) else replace(entry, piece=name)
