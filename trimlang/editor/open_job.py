"""A job as an editor has it before it: its files, saved or not, and what they mean."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from trimlang.compiler import Result, check_gathered
from trimlang.diagnostics import Span
from trimlang.editor.names import Names, names_in
from trimlang.incremental.cached_steps import CachedSteps
from trimlang.incremental.compiler_steps import Steps
from trimlang.language import tree
from trimlang.language.parse import read_line
from trimlang.reading import (
    LOG_SUFFIX,
    Gathered,
    UnreadableError,
    gather,
    log_beside,
    read_regular,
)
from trimlang.survey.job import Room, Stretch

JOB_SUFFIX = ".trim"
MOST_LOOKED_AT = 200
"""Files that are searched for one that includes another."""


@dataclass(frozen=True)
class JobReading:
    """What one job's files say, at one moment.

    ``job`` is the job's own file, None where it was never saved; the names of
    files in places and sources are as seen from its folder.
    """

    job: Path | None
    file: str
    gathered: Gathered
    result: Result

    @cached_property
    def names(self) -> Names:
        """Where each name stands."""
        return names_in(self.gathered.statements)

    @cached_property
    def lines(self) -> dict[str, list[str]]:
        """Each file's lines."""
        return {name: source.lines() for name, source in self.result.sources.items()}

    @cached_property
    def _by_line(self) -> dict[tuple[str, int], list[tree.Statement]]:
        found: dict[tuple[str, int], list[tree.Statement]] = {}
        for one in self.gathered.statements:
            found.setdefault((one.span.file, one.span.line), []).append(one)
        return found

    def path(self, file: str) -> Path | None:
        """Return where a file of the job lies."""
        return None if self.job is None else self.job.parent / file

    def named(self, path: Path | None) -> str | None:
        """Return a file's name in this job, None where the job does not read it."""
        if path == self.job:
            return self.file
        return next((name for name in self.result.sources if self.path(name) == path), None)

    def text(self, span: Span) -> str:
        """Return the line that a place is on."""
        lines = self.lines.get(span.file, [])
        return lines[span.line - 1] if 0 < span.line <= len(lines) else ""

    def statement(self, file: str, line: int, column: int = 1) -> tree.Statement | None:
        """Return what a line states: of several walls the one that holds a column (from 1)."""
        found = self._by_line.get((file, line), [])
        return next((one for one in reversed(found) if one.span.column <= column), None) or next(
            iter(found), None
        )

    def stretch(self, file: str, line: int, column: int = 1) -> tuple[Room, Stretch] | None:
        """Return the wall that a line describes at a column (from 1), and its room."""
        found = [
            (room, stretch)
            for room in self.result.job.rooms
            for stretch in room.walk
            if (stretch.span.line, stretch.span.file) == (line, file)
        ]
        return next((one for one in reversed(found) if one[1].span.column <= column), None) or next(
            iter(found), None
        )


def read_job(
    job: Path | None, file: str, texts: Mapping[Path, str], cached: CachedSteps
) -> JobReading:
    """Read a job; ``texts`` are the files that an editor holds, by their resolved paths.

    An unsaved job, with no path, is the text under ``Path(file)``.
    """
    cached.next_turn()

    def read(path: Path) -> str:
        text = texts.get(path)
        return read_regular(path) if text is None else text

    try:
        text = read(job if job is not None else Path(file))
    except (OSError, UnreadableError):
        text = ""
    steps = Steps(read, cached.line, cached.room)
    # a log that was never saved is read as well
    log = None if job is None else texts.get(log_beside(job))
    gathered = gather(text, path=job, name=file, read=read, line=cached.line, log=log)
    return JobReading(job, file, gathered, check_gathered(gathered, file, steps))


def jobs_with(path: Path, texts: Mapping[Path, str], within: Iterable[Path]) -> tuple[Path, ...]:
    """Return the jobs that a file belongs to: itself, unless others include it.

    Looked for are the files that the editor holds, and those in the folders
    above ``path`` as far as ``within`` (at the least in its own folder).  A log
    belongs to the job that it lies beside.
    """
    if path.suffix == LOG_SUFFIX:
        job = path.with_suffix(JOB_SUFFIX)
        return (job if job in texts or job.is_file() else path,)
    jobs: set[Path] = set()
    todo, seen = [path], {path}
    among = _trim_files(path, texts, tuple(within))
    while todo:
        file = todo.pop()
        above = [other for other in among if other != file and _includes(other, file, texts)]
        if not above:
            jobs.add(file)
        fresh = [other for other in above if other not in seen]
        seen.update(fresh)
        todo.extend(fresh)
    return tuple(sorted(jobs)) or (path,)


def _trim_files(path: Path, texts: Mapping[Path, str], within: tuple[Path, ...]) -> list[Path]:
    files = dict.fromkeys(other for other in texts if other.suffix == path.suffix)
    for folder in path.parents:
        if folder != path.parent and not any(folder.is_relative_to(top) for top in within):
            break
        try:
            files |= dict.fromkeys(sorted(folder.glob(f"*{path.suffix}"))[:MOST_LOOKED_AT])
        except OSError:
            break
    return list(files)[:MOST_LOOKED_AT]


def _includes(job: Path, file: Path, texts: Mapping[Path, str]) -> bool:
    text = texts.get(job)
    if text is None:
        try:
            text = read_regular(job)
        except (OSError, UnreadableError):
            return False
    if file.name not in text:
        return False
    for line in text.splitlines():
        if file.name in line and line.lstrip().lower().startswith("include"):
            statement = read_line(line, "", 1)[0]
            if isinstance(statement, tree.Include):
                try:
                    if (job.parent / statement.path.text).resolve() == file:
                        return True
                except (OSError, ValueError, RuntimeError):
                    continue
    return False
