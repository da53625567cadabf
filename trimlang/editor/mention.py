"""A name of a job, and a place where it stands."""

from __future__ import annotations

from enum import StrEnum

from trimlang.diagnostics import Span
from trimlang.record import record


class NameSort(StrEnum):
    """What a name stands for."""

    TRIM = "trim"
    ROOM = "room"
    TAG = "tag"
    RUN = "run"
    BLOCK = "block"


@record
class Name:
    """What is named: two mentions with equal names mean the same thing in the job.

    ``room`` is the number of the room that a tag, room or run belongs to,
    counted from 0 along the file; None for trims and blocks.
    """

    sort: NameSort
    text: str
    room: int | None = None


@record
class Mention:
    """One place where a name stands; ``gives`` is true where it is given rather than used."""

    name: Name
    span: Span
    gives: bool = False
