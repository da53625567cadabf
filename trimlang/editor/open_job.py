"""A job as an editor sees it: its files, saved or not, and what they mean."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from trimlang.compiler import Result, check_gathered, plan_checked
from trimlang.diagnostics import Span
from trimlang.editor.names import Names, names_in
from trimlang.incremental.cached_steps import CachedSteps
from trimlang.incremental.compiler_steps import Steps
from trimlang.language import tree
from trimlang.language.parse import read_line
from trimlang.planning.wrong_plan import WrongPlanError
from trimlang.reading import (
    LOG_SUFFIX,
    Gathered,
    UnreadableError,
    gather,
    log_beside,
    read_regular,
)
from trimlang.site_log.written_out import in_full
from trimlang.survey.job import Room, Stretch

JOB_SUFFIX = ".trim"
MOST_LOOKED_AT = 200
"""Files at most that are searched for one that includes another."""


@dataclass(frozen=True)
class JobReading:
    """What one job's files said at one moment.

    ``job`` is the job's own file, None where it was never saved.  Files are named in places and
    sources as seen from its folder.
    """

    job: Path | None
    file: str
    gathered: Gathered
    result: Result

    @cached_property
    def names(self) -> Names:
        """The job's names; worked out when they are first asked for."""
        return names_in(self.gathered.statements)

    @cached_property
    def lines(self) -> dict[str, list[str]]:
        """Each file's lines, by the file's name."""
        return {name: source.lines() for name, source in self.result.sources.items()}

    @cached_property
    def log_in_full(self) -> Mapping[Span, str]:
        """What to write at which place of a log whose lines do not say all; {} without a plan.

        The job is planned for it as a build plans it, since a quicker plan may cut a piece from
        another stick than the tickets say; so it may take as long as a build when it is first asked
        for.
        """
        try:
            result = plan_checked(self.result)
        # The build will say that; here is only nothing to offer.
        except WrongPlanError:
            return {}
        if result.progress is None:
            return {}
        units = {piece.id: piece.unit for piece in result.pieces}
        return in_full(result.job, result.progress.full_entries, units)

    @cached_property
    def _by_line(self) -> dict[tuple[str, int], list[tree.Statement]]:
        found: dict[tuple[str, int], list[tree.Statement]] = {}
        for one in self.gathered.statements:
            found.setdefault((one.span.file, one.span.line), []).append(one)
        return found

    def path(self, file: str) -> Path | None:
        """Return the path of one of the job's files, None where the job was never saved."""
        return None if self.job is None else self.job.parent / file

    def named(self, path: Path | None) -> str | None:
        """Return the name that a file has in this job, None where the job does not read it."""
        if path == self.job:
            return self.file
        return next((name for name in self.result.sources if self.path(name) == path), None)

    def text(self, span: Span) -> str:
        """Return the text of the line that a place is on."""
        lines = self.lines.get(span.file, [])
        return lines[span.line - 1] if 0 < span.line <= len(lines) else ""

    def statement(self, file: str, line: int, column: int = 1) -> tree.Statement | None:
        """Return the statement of a line; of several walls in it the one at a column (from 1)."""
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
    """Read a job; ``texts`` are the files that an editor has open, by their resolved paths.

    An unsaved job, with no path, is the text under ``Path(file)``.
    """
    cached.next_turn()

    def read(path: Path) -> str:
        text = texts.get(path)
        return read_regular(path) if text is None else text

    try:
        text = read(job if job is not None else Path(file))
    except (OSError, UnreadableError):
        # A job that cannot be read is an empty one here: its includes may be open, and want
        # answers.
        text = ""
    steps = Steps(read, cached.line, cached.room)
    # The log is found by the job's name on the disk; one that was never saved is only in the
    # editor.
    log = None if job is None else texts.get(log_beside(job))
    gathered = gather(text, path=job, name=file, read=read, line=cached.line, log=log)
    return JobReading(job, file, gathered, check_gathered(gathered, file, steps))


def jobs_with(path: Path, texts: Mapping[Path, str], within: Iterable[Path]) -> tuple[Path, ...]:
    """Return the jobs that a file belongs to: itself, or those that include it.

    Searched are the files that the editor has open, those in the file's own folder, and those in
    the folders above it that lie in one of ``within`` (the editor's workspace).  A site log
    belongs to the job that it lies beside.
    """
    if path.suffix == LOG_SUFFIX:
        job = path.with_suffix(JOB_SUFFIX)
        return (job if job in texts or job.is_file() else path,)
    jobs: set[Path] = set()
    todo, seen = [path], {path}
    among = _trim_files(path, texts, tuple(within))
    # Files include files: those that nothing includes any more are the jobs. `seen` ends a circle
    # of includes.
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
    # Cheap tests first, as this runs over up to 200 files: only a line that may be an include is
    # parsed.
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
