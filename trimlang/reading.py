"""Reads job files and what they include: the one place where the compiler reads the disk."""

from __future__ import annotations

import os
from collections.abc import Callable
from dataclasses import field
from errno import EINVAL
from pathlib import Path
from stat import S_ISREG
from typing import BinaryIO, Final

from trimlang.diagnostics import Diagnostic, Span, say
from trimlang.diagnostics.source import MOST_LINES, Source
from trimlang.language import tree
from trimlang.language.other_files import other_kind
from trimlang.language.parse import ReadLine, parse, read_line
from trimlang.record import record

# Limits for what is not a job file (a disk image, a device) and for include chains that were meant
# as an attack; a house has a few hundred lines.
MOST_MEGABYTES: Final = 16
LOG_SUFFIX: Final = ".site"
DEEPEST: Final = 16
"""Files at most that include one another in a chain."""


class UnreadableError(Exception):
    """The file cannot be read as text; ``code`` and ``facts`` are the diagnostic that says why."""

    def __init__(self, code: str, facts: dict[str, object]) -> None:
        super().__init__(code)
        self.code = code
        self.facts = facts


@record
class Gathered:
    """A job file's statements with its includes in their places, and each file's text by name."""

    statements: tuple[tree.Statement, ...]
    findings: tuple[Diagnostic, ...]
    sources: dict[str, Source] = field(default_factory=dict)


def read_text(path: Path) -> str:
    """Return a job file's text.

    Raises:
        OSError: the file cannot be opened.
        UnreadableError: it is too large, or no UTF-8 text.
    """
    with path.open("rb") as stream:
        return read_stream(stream, path.name)


def read_regular(path: Path) -> str:
    """Return the text of a file that the user did not name; never of a pipe or a device.

    A pipe that lies where an included file is expected would make the compiler wait for ever.

    Raises:
        OSError: the file cannot be opened, or is not a regular file.
        UnreadableError: it is too large, or no UTF-8 text.
    """
    with open(path, "rb", opener=_without_waiting) as stream:
        if not S_ISREG(os.fstat(stream.fileno()).st_mode):
            raise OSError(EINVAL, "it is no file", str(path))
        return read_stream(stream, path.name)


def _without_waiting(path: str, flags: int) -> int:
    # Opening a pipe waits for a writer unless it is told not to.
    return os.open(path, flags | getattr(os, "O_NONBLOCK", 0))


def read_stream(stream: BinaryIO, name: str) -> str:
    """Return the text of a stream such as standard input.

    Raises:
        UnreadableError: it is too large, or no UTF-8 text.
    """
    # One byte more than is allowed tells a file that is too large without reading all of it.
    data = stream.read(MOST_MEGABYTES * 2**20 + 1)
    if len(data) > MOST_MEGABYTES * 2**20:
        raise UnreadableError("T605", {"path": name, "most": MOST_MEGABYTES})
    return decode(data, name)


def decode(data: bytes, name: str) -> str:
    """Return bytes as text.

    Raises:
        UnreadableError: they are no UTF-8 text.
    """
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        # bytes that are no text may still say at their head what they are
        if (other := other_kind(data[:64].decode("latin-1"))) is not None:
            said: dict[str, object] = {"path": name, "what": other.what, "remedy": other.remedy}
            raise UnreadableError("T600", said) from None
        line = data.count(b"\n", 0, error.start) + 1
        facts: dict[str, object] = {"path": name, "byte": error.start, "line": line}
        raise UnreadableError("T604", facts) from None


def log_beside(path: Path) -> Path:
    """Return the path of a job's log file: ``house.site`` beside ``house.trim``."""
    return path.with_suffix(LOG_SUFFIX)


def gather(
    text: str,
    *,
    path: Path | None = None,
    name: str = "<text>",
    read: Callable[[Path], str] = read_regular,
    line: ReadLine = read_line,
    log: str | None = None,
) -> Gathered:
    """Parse ``text`` and put the statements of each included file in place of its include line.

    Includes are looked for in the folder of ``path`` and never outside it, not even through
    links.  ``read`` returns a file's text and ``line`` a line's statement; an editor passes its
    own, for files that are not saved and lines that did not change.  The job's log file, where
    it has one, comes last; ``log`` is used in place of its text.
    """
    shown = path.name if path is not None else name
    gatherer = _Gatherer(path.resolve().parent if path is not None else None, read, line)
    statements = gatherer.file(Source(shown, text), path, ())
    # A log that is opened by itself has no log of its own.
    if path is not None and path.suffix != LOG_SUFFIX:
        statements += gatherer.log_file(log_beside(path), log)
    return Gathered(tuple(statements), tuple(gatherer.findings), gatherer.sources)


def read_site_log(source: Source, line: ReadLine = read_line) -> Gathered:
    """Return the lines of a site log by itself; any other line in it is reported."""
    gatherer = _Gatherer(None, read_regular, line)
    return Gathered(tuple(gatherer.log_lines(source)), tuple(gatherer.findings), gatherer.sources)


class _Gatherer:
    def __init__(self, root: Path | None, read: Callable[[Path], str], line: ReadLine) -> None:
        self._root = root
        self._signs = 0
        self._lines = 0
        self._read = read
        self._line = line
        self.findings: list[Diagnostic] = []
        self.sources: dict[str, Source] = {}

    def file(
        self, source: Source, path: Path | None, within: tuple[Path, ...]
    ) -> list[tree.Statement]:
        self.sources[source.name] = source
        # The limit on lines holds for the job and all that it includes together.
        statements, findings = parse(source, line=self._line, most=MOST_LINES - self._lines)
        self._signs += len(source.text)
        self._lines += source.line_count()
        self.findings.extend(findings)
        here = (*within, path.resolve()) if path is not None else within
        gathered: list[tree.Statement] = []
        for statement in statements:
            if isinstance(statement, tree.Include):
                gathered.extend(self._include(statement, path, here))
            else:
                gathered.append(statement)
        return gathered

    def log_file(self, path: Path, log: str | None) -> list[tree.Statement]:
        """Return the lines of the log file beside the job; any other line in it is reported."""
        span = Span(path.name, 1, 1, 2)
        if log is None:
            try:
                # A pipe, or a link that leads nowhere, is told below: a plan as if nothing were cut
                # yet would have sticks cut twice.
                if not os.path.lexists(path):
                    return []
                # The log may be a link: it must not lead out of the job's folder, as an include
                # must not.
                if self._root is not None and not path.resolve().is_relative_to(self._root):
                    self._say("T602", span, path=path.name)
                    return []
                # A pipe could be read without end.
                if path.exists() and not path.is_file():
                    self._say("T601", span, path=path.name, reason="it is no file")
                    return []
                log = self._read(path)
            except UnreadableError as error:
                self._say(error.code, span, **error.facts)
                return []
            # Before Python 3.13 a link to itself is a RuntimeError.
            except (OSError, RuntimeError) as error:
                reason = (getattr(error, "strerror", None) or "it cannot be followed").lower()
                self._say("T601", span, path=path.name, reason=reason)
                return []
        return self.log_lines(Source(path.name, log))

    def log_lines(self, source: Source) -> list[tree.Statement]:
        """Return a log's lines."""
        self.sources[source.name] = source
        statements, findings = parse(source, line=self._line)
        self.findings.extend(findings)
        for statement in statements:
            if not isinstance(statement, (*tree.LOG_LINES, tree.Unreadable)):
                self._say("T701", statement.span)
        return [one for one in statements if isinstance(one, tree.LOG_LINES)]

    def _include(
        self, line: tree.Include, path: Path | None, within: tuple[Path, ...]
    ) -> list[tree.Statement]:
        wanted, span = line.path.text, line.path.span
        if path is None or self._root is None:
            self._say("T606", span, path=wanted)
            return []
        try:
            target = (path.parent / wanted).resolve()
        except (OSError, ValueError, RuntimeError):
            self._say("T601", span, path=wanted, reason="this is no file name")
            return []
        # After resolve(), so that neither ".." nor a link leads out of the folder.
        if not target.is_relative_to(self._root):
            self._say("T602", span, path=wanted)
            return []
        if target in within:
            self._say("T603", span, path=wanted)
            return []
        if len(within) > DEEPEST:
            self._say("T608", span, path=wanted, most=DEEPEST)
            return []
        shown = target.relative_to(self._root).as_posix()
        # By the name within the job's folder, so that one file is one file however it was reached.
        if shown in self.sources:
            # A file that is included twice would state everything in it twice.
            self._say("T607", span, path=wanted)
            return []
        try:
            if target.exists() and not target.is_file():
                # A pipe or a device could be read without end.
                self._say("T601", span, path=wanted, reason="it is no file")
                return []
            text = self._read(target)
        except OSError as error:
            self._say("T601", span, path=wanted, reason=(error.strerror or "unknown").lower())
            return []
        except UnreadableError as error:
            self._say(error.code, span, **error.facts)
            return []
        # Each file alone may be small enough, and a chain of them still fill the memory.
        if self._signs + len(text) > MOST_MEGABYTES * 2**20:
            self._say("T609", span, path=wanted, most=MOST_MEGABYTES)
            return []
        return self.file(Source(shown, text), target, within)

    def _say(self, code: str, span: Span, **facts: object) -> None:
        self.findings.append(say(code, span, **facts))
