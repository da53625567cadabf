"""Writes the walls of a job file in the form that says all, or in the short one.

In the long form each wall has a line of its own and says both its ends; in the short one a joint
is said once, the corners that most walls have are said for the room, and several walls stand in
a line.  What is written is read again: it is only given where it means the same.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from trimlang.compiler import check_job
from trimlang.joints_by_role import USUAL
from trimlang.language import tree
from trimlang.language.meaning import same_meaning
from trimlang.language.parse import parse
from trimlang.language.source import Source
from trimlang.survey.job import Job
from trimlang.tables.room_writer import RoomWriter, WallForm


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
    statements, _ = parse(source)
    if sum(isinstance(one, tree.RoomLine) for one in statements) != len(before.job.rooms):
        raise NoSuchFormError("rooms of it stand in files that it includes")
    # What most corners are is said once for the job where that does, and otherwise room by room.
    for job_ends in (True, False) if form is WallForm.SHORT else (False,):
        lines = _lines(source, statements, before.job, form, job_ends=job_ends)
        text = "".join(f"{line}\n" for line in lines)
        after = check_job(text, path=path, name=source.name)
        # Warnings count too: a form that brings one up, or silences one, says something else.
        codes = [[one.code for one in result.diagnostics] for result in (before, after)]
        if codes[0] == codes[1] and same_meaning(_walks(before.job), _walks(after.job)):
            return text
    raise NoSuchFormError("something in it cannot be said so")


def _walks(job: Job) -> tuple[object, ...]:
    return tuple((room.name, room.walk, room.open_walk, room.diagonals) for room in job.rooms)


def _lines(
    source: Source,
    statements: tuple[tree.Statement, ...],
    job: Job,
    form: WallForm,
    *,
    job_ends: bool,
) -> Iterator[str]:
    """Yield the lines of the new text; with ``job_ends`` a line says the ends of all rooms."""
    lines = source.lines()
    writers = _writers(statements, job, lines, form, job_ends=job_ends)
    says_ends = job_ends and sum(one.says_ends for one in writers) > 1
    if job_ends and not says_ends:
        writers = _writers(statements, job, lines, form, job_ends=False)
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
        if says_ends and number == first:
            yield from ("ends in", "")
        if here and isinstance(here[0], tree.RoomLine):
            yield from writer.flush() if writer else ()
            writer = next(rooms)
            yield writer.heading(raw, here[0], said=says_ends)
        elif writer and here and isinstance(here[0], tree.RunLine | tree.GapLine):
            walls = [one for one in here if isinstance(one, tree.RunLine | tree.GapLine)]
            end = walls[-1].span.end - 1
            yield from writer.walls(walls, raw[end:].strip())
        else:
            yield from writer.flush() if writer else ()
            yield raw
    yield from writer.flush() if writer else ()


def _writers(
    statements: tuple[tree.Statement, ...],
    job: Job,
    lines: list[str],
    form: WallForm,
    *,
    job_ends: bool,
) -> list[RoomWriter]:
    rooms = iter(job.rooms)
    return [
        RoomWriter(
            next(rooms),
            [
                one
                for one in _until_room(statements[at + 1 :])
                if isinstance(one, tree.RunLine | tree.GapLine)
            ],
            lines,
            form,
            usual=USUAL.word if job_ends else "",
        )
        for at, line in enumerate(statements)
        if isinstance(line, tree.RoomLine)
    ]


def _until_room(statements: tuple[tree.Statement, ...]) -> Iterator[tree.Statement]:
    for one in statements:
        if isinstance(one, tree.RoomLine):
            return
        yield one
