"""``trimlang tidy``: rewrites job files in the one canonical layout."""

from __future__ import annotations

import os
import sys
from argparse import Namespace
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Final

from trimlang.cli.options import TidyOptions
from trimlang.cli.replies import (
    CLEAN,
    JOB_ERRORS,
    STDIN,
    WRONG_USAGE,
    Commands,
    add_command,
    complain,
    messages,
    tell_done,
)
from trimlang.diagnostics.message_form import MessageForm
from trimlang.record import record

if TYPE_CHECKING:
    from trimlang.language.tidy_file import Tidied

_EXITS: Final = """\
exit code: 0 the files are tidy now, 1 a line cannot be read (it stays as it is; not
with --print) or, with --check, a file is not tidy, 2 wrong usage or a file that
cannot be read or written
"""


def describe(commands: Commands) -> None:
    """Add the command and its options."""
    tidy = add_command(
        commands,
        "tidy",
        "lay job files out in the one canonical way; what they say and their comments stay",
        _EXITS,
    )
    tidy.add_argument(
        "files",
        metavar="FILE",
        nargs="+",
        help="files to rewrite in place (what they include is left alone);"
        " - reads standard input and prints",
    )
    how = tidy.add_mutually_exclusive_group()
    how.add_argument(
        "--check", action="store_true", help="write nothing; tell which files are not tidy"
    )
    how.add_argument(
        "--print",
        action="store_true",
        dest="printed",
        help="write nothing; print the tidy text (for git: see docs/commands.md)",
    )
    tidy.add_argument(
        "--diff", action="store_true", help="write nothing; show what would change, as a diff"
    )
    tidy.add_argument(
        "--walls",
        choices=("long", "short"),
        help="long: each wall in a line of its own, with both its ends; short: a joint said once,"
        " several walls in a line (default: as they are written)",
    )
    messages(tidy)
    tidy.set_defaults(run=run)


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


def run(asked: Namespace) -> int:
    """Tidy the files; return the worst exit code of any of them."""
    options = TidyOptions(
        files=tuple(asked.files),
        check=asked.check,
        printed=asked.printed,
        diff=asked.diff,
        walls=asked.walls,
        messages=MessageForm(asked.messages),
    )
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
    from trimlang.output.lock import alone_in

    # A log may be written by another command at this moment; what it adds must not be lost.
    with alone_in(Path(os.path.realpath(name)).parent):
        return _tidied(name, options)


def _tidied(name: str, options: TidyOptions) -> int:
    from trimlang.diagnostics.show import show
    from trimlang.language.source import Source
    from trimlang.reading import UnreadableError
    from trimlang.tables.wall_forms import NoSuchFormError

    try:
        file = _read(name, options.walls)
    except UnreadableError as error:
        from trimlang.diagnostics import Span, say

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
        from trimlang.output.one_file import replace_file

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
    from io import BytesIO

    from trimlang.language.source import Source
    from trimlang.language.tidy_file import tidy
    from trimlang.reading import MOST_MEGABYTES, read_stream

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
        from trimlang.tables.room_writer import WallForm
        from trimlang.tables.wall_forms import in_form

        job_file = None if name == "-" else Path(name)
        text = in_form(Source(_shown(name), text), job_file, WallForm(walls))
    return _File(name, data, tidy(Source(_shown(name), text)))


def _diff(file: _File) -> Iterator[str]:
    """Yield a unified diff that ``patch`` accepts; it shows CRs and a byte order mark."""
    from difflib import unified_diff

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
