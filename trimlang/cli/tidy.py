"""``trimlang tidy``: rewrites job files in the one canonical layout."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from difflib import unified_diff
from io import BytesIO
from pathlib import Path

from trimlang.cli.options import TidyOptions
from trimlang.cli.replies import (
    CLEAN,
    JOB_ERRORS,
    STDIN,
    WRONG_USAGE,
    complain,
    tell_done,
)
from trimlang.diagnostics import Span, say
from trimlang.diagnostics.show import show
from trimlang.diagnostics.source import Source
from trimlang.language.tidy_file import Tidied, tidy
from trimlang.output.lock import alone_in
from trimlang.output.one_file import replace_file
from trimlang.reading import MOST_MEGABYTES, UnreadableError, read_stream
from trimlang.record import record
from trimlang.tables.room_writer import WallForm
from trimlang.tables.wall_forms import NoSuchFormError, in_form


@record
class _File:
    """A file's name as given, its bytes, and its text tidied."""

    name: str
    before: bytes
    tidied: Tidied

    @property
    def after(self) -> bytes:
        return self.tidied.text.encode("utf-8")

    @property
    def is_tidy(self) -> bool:
        return self.before == self.after


def tidy_files(options: TidyOptions) -> int:
    """Tidy the files; return the worst exit code of any of them."""
    if options.files.count("-") > 1:
        complain("standard input can be read once")
        return WRONG_USAGE
    # All files are done even if one fails; the worst code is returned.
    return max(_tidy(name, options) for name in options.files)


def _tidy(name: str, options: TidyOptions) -> int:
    """Tidy a file, with its folder locked from reading to writing."""
    # What writes nothing needs no lock.
    if name == "-" or options.check or options.printed or options.diff:
        return _tidied(name, options)

    # A log may be written by another command at this moment; what it adds must not be lost.
    with alone_in(Path(os.path.realpath(name)).parent):
        return _tidied(name, options)


def _tidied(name: str, options: TidyOptions) -> int:
    try:
        file = _read(name, options.walls)
    except UnreadableError as error:
        finding = say(error.code, Span(_shown(name), 1, 1, 2), **error.facts)
        show((finding,), {}, sys.stderr, form=options.messages)
        return JOB_ERRORS
    except NoSuchFormError as error:
        complain(f"{_shown(name)} stays as it is: {error}")
        return JOB_ERRORS
    except (OSError, ValueError) as error:
        # What is no file at all has no reason of the system's, only the words raised below.
        complain(f"cannot read {name}: {(getattr(error, 'strerror', None) or str(error)).lower()}")
        return WRONG_USAGE
    source = Source(_shown(name), file.before.decode("utf-8-sig"))
    show(file.tidied.findings, {source.name: source}, sys.stderr, form=options.messages)
    # git's textconv stops at any code but 0, so --print never fails on an unreadable line.
    code = JOB_ERRORS if file.tidied.findings and not options.printed else CLEAN
    if options.diff:
        _print("".join(_diff(file)).encode("utf-8"))
    if options.check:
        # With --check the exit code says it too, for a commit hook.
        if not file.is_tidy:
            complain(f"{_shown(name)} is not tidy")
            code = JOB_ERRORS
    elif options.diff:
        pass
    elif options.printed or name == "-":
        _print(file.after)
    elif not file.is_tidy:
        try:
            replace_file(Path(name), file.after)
        except OSError as error:
            complain(f"cannot write {name}: {(error.strerror or str(error)).lower()}")
            return WRONG_USAGE
        tell_done(f"{name}: tidied\n", name)
    return code


def _shown(name: str) -> str:
    return STDIN if name == "-" else name


def _read(name: str, walls: str | None) -> _File:
    # One byte more than allowed is enough to see that a file is too large.
    most = MOST_MEGABYTES * 2**20 + 1
    if name == "-":
        data = sys.stdin.buffer.read(most)
    else:
        path = Path(name)
        # A pipe would be waited for without end.
        if path.exists() and not path.is_file():
            raise ValueError("it is no file")
        with path.open("rb") as stream:
            data = stream.read(most)
    text = read_stream(BytesIO(data), Path(name).name)
    if walls is not None:
        job_file = None if name == "-" else Path(name)
        text = in_form(Source(_shown(name), text), job_file, WallForm(walls))
    return _File(name, data, tidy(Source(_shown(name), text)))


def _diff(file: _File) -> Iterator[str]:
    """Yield a unified diff that ``patch`` accepts; it shows CRs and a byte order mark."""
    name = _shown(file.name)
    for line in unified_diff(_lines(file.before), _lines(file.after), name, name):
        yield line if line.endswith("\n") else f"{line}\n\\ No newline at end of file\n"


def _lines(data: bytes) -> list[str]:
    # Not splitlines: it would also break at signs that no editor takes for a line's end.
    lines = data.decode("utf-8").split("\n")
    return [f"{line}\n" for line in lines[:-1]] + ([lines[-1]] if lines[-1] else [])


def _print(data: bytes) -> None:
    sys.stdout.flush()
    sys.stdout.buffer.write(data)
    sys.stdout.buffer.flush()
