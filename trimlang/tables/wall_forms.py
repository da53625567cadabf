"""Writes the walls of a job file in the form that says all, or in the short one.

In the long form each wall has a line of its own and says both its ends; in the short one a joint
is said once, the corners that most walls have are said for the room, and several walls stand in
a line.  What is written is read again: it is only given where it means the same.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from trimlang.compiler import check_job
from trimlang.diagnostics.source import Source
from trimlang.joints_by_role import USUAL
from trimlang.language import tree
from trimlang.language.meaning import same_meaning
from trimlang.language.parse import parse
from trimlang.survey.job import Job
from trimlang.survey.room_tags import room_tag
from trimlang.tables.room_writer import RoomWriter, WallForm
from trimlang.tables.said_once import of_rooms


class NoSuchFormError(ValueError):
    """The file cannot be written in the form that is asked for; the text says why."""


def in_form(source: Source, path: Path | None, form: WallForm) -> str:
    """Return a job file's text with its walls in another form.

    Raises:
        NoSuchFormError: it has mistakes, or would mean something else.
    """
    before = check_job(source.text, path=path, name=source.name)
    if not before.ok:
        raise NoSuchFormError("it has mistakes, which trimlang check tells")
    # Read without what it includes: only this file's own lines are written anew.
    statements, _ = parse(source)
    # Walls are matched with the job's rooms by their order, and this file is the only one that may
    # be written.
    if sum(isinstance(one, tree.RoomLine) for one in statements) != len(before.job.rooms):
        raise NoSuchFormError("rooms of it stand in files that it includes")
    # What most rooms say is said once for the job where that does, and otherwise room by room.
    for once in (True, False) if form is WallForm.SHORT else (False,):
        lines = _lines(source, statements, before.job, form, once=once)
        text = "".join(f"{line}\n" for line in lines)
        after = check_job(text, path=path, name=source.name)
        # Warnings count too: a form that brings one up, or silences one, says something else.
        codes = [[one.code for one in result.diagnostics] for result in (before, after)]
        if codes[0] == codes[1] and same_meaning(_walks(before.job), _walks(after.job)):
            return text
    raise NoSuchFormError("something in it cannot be said so")


def _walks(job: Job) -> tuple[object, ...]:
    return tuple(
        (room.name, room.tag, room.walk, room.open_walk, room.diagonals) for room in job.rooms
    )


def _lines(
    source: Source,
    statements: tuple[tree.Statement, ...],
    job: Job,
    form: WallForm,
    *,
    once: bool,
) -> Iterator[str]:
    """Yield the lines of the new text; ``once`` lets lines above say it for all rooms."""
    lines = source.lines()
    trims = _trims_of_rooms(statements, lines) if once else None
    writers = _writers(statements, job, lines, form, usual=USUAL.word if once else "", trims=trims)
    says_ends = once and sum(one.says_ends for one in writers) > 1
    if once and not says_ends:
        writers = _writers(statements, job, lines, form, usual="", trims=trims)
    above = [f"every room: {trims}"] if trims else []
    above += ["ends in"] if says_ends else []
    first = next((one.span.line for one in statements if isinstance(one, tree.RoomLine)), 0)
    while first > 1 and lines[first - 2].lstrip().startswith("#"):
        first -= 1  # remarks above the first room are its own
    by_line: dict[int, list[tree.Statement]] = {}
    for one in statements:
        by_line.setdefault(one.span.line, []).append(one)
    rooms = iter(writers)
    writer: RoomWriter | None = None
    for number, raw in enumerate(lines, start=1):
        here = by_line.get(number, [])
        if above and number == first:
            yield from (*above, "")
        if here and isinstance(here[0], tree.RoomLine):
            yield from writer.flush() if writer else ()
            writer = next(rooms)
            yield from writer.heading(raw, here[0], said=says_ends)
        elif writer and here and isinstance(here[0], tree.RunLine | tree.GapLine):
            walls = [one for one in here if isinstance(one, tree.RunLine | tree.GapLine)]
            end = walls[-1].span.end - 1
            yield from writer.walls(walls, raw[end:].strip())
        else:
            yield from writer.flush() if writer else ()
            yield raw
    yield from writer.flush() if writer else ()


def _trims_of_rooms(statements: tuple[tree.Statement, ...], lines: list[str]) -> str | None:
    """Return the trims to say once for every room, None where that is not shorter."""
    if any(isinstance(one, tree.EveryRoomLine) for one in statements):
        return None
    headings = [one for one in statements if isinstance(one, tree.RoomLine)]
    return of_rooms(headings, lambda span: lines[span.line - 1][span.column - 1 : span.end - 1])


def _writers(
    statements: tuple[tree.Statement, ...],
    job: Job,
    lines: list[str],
    form: WallForm,
    *,
    usual: str,
    trims: str | None,
) -> list[RoomWriter]:
    rooms = iter(job.rooms)
    writers: list[RoomWriter] = []
    tags: set[str] = set()
    for at, line in enumerate(statements):
        if not isinstance(line, tree.RoomLine):
            continue
        room = next(rooms)
        walls = [
            one
            for one in _until_room(statements[at + 1 :])
            if isinstance(one, tree.RunLine | tree.GapLine)
        ]
        # A tag that hangs on the order of the rooms stays, whether or not it is the usual one.
        plain = room_tag(room.name, ())
        writers.append(
            RoomWriter(
                room,
                walls,
                lines,
                form,
                usual=usual,
                trims=trims,
                plain_tag="" if plain in tags else plain,
            )
        )
        tags.add(room.tag)
    return writers


def _until_room(statements: tuple[tree.Statement, ...]) -> Iterator[tree.Statement]:
    for one in statements:
        if isinstance(one, tree.RoomLine):
            return
        yield one
