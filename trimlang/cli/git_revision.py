"""Takes a job file and its includes out of git, as they were at a revision.

A repository that came from somebody else may have settings that run commands: where git lacks an
object it fetches it, with a command that the repository names.  So git may only read what is on
this disk.
"""

from __future__ import annotations

import os
import posixpath
import subprocess
from pathlib import Path, PurePosixPath
from typing import Final

from trimlang.diagnostics.source import Source
from trimlang.language import tree
from trimlang.language.parse import parse
from trimlang.reading import MOST_MEGABYTES, UnreadableError, decode, log_beside

_PATIENCE: Final = 60
"""Seconds that git may take for one call."""

_MOST_BYTES: Final = MOST_MEGABYTES * 2**20
"""Bytes that a job's files may have together, the same as when they are read from the disk."""

FETCH_NOTHING: Final = {
    "GIT_NO_LAZY_FETCH": "1",
    # Older versions of git do not know the first variable: allow them no way of fetching.
    "GIT_ALLOW_PROTOCOL": "",
    "GIT_TERMINAL_PROMPT": "0",
    "GIT_OPTIONAL_LOCKS": "0",
}
_RUN_NOTHING: Final = ("-c", f"core.hooksPath={os.devnull}", "-c", "core.fsmonitor=false")


class NotInGitError(Exception):
    """There is no such revision, or no such file in it; the message says why."""


class _TooLargeError(NotInGitError):
    """The file is larger than a job file may be."""


def take_out(job: Path, revision: str, into: Path) -> tuple[Path, str]:
    """Write a job file of ``revision``, its includes and its site log below ``into``.

    Returns:
        The path of the job file below ``into``, and the revision's short name.

    Raises:
        NotInGitError: git is missing, or has no such revision or file.
    """
    # Git would take it for an option.
    if not revision or revision.startswith("-"):
        raise NotInGitError(f"“{revision}” is no revision")
    home = job.resolve().parent
    if not home.is_dir():
        raise NotInGitError(f"there is no folder {home}")
    try:
        asked = ("rev-parse", "--verify", "--short", "--end-of-options", f"{revision}^{{commit}}")
        commit = _git(home, *asked).decode("ascii", "replace").strip()
    except NotInGitError as error:
        raise NotInGitError(f"git has no revision “{revision}” of {job}: {error}") from None
    name = job.resolve().name
    try:
        data = _blob(home, commit, name)
    except _TooLargeError:
        raise NotInGitError(_too_large(str(job), revision)) from None
    except NotInGitError:
        raise NotInGitError(f"{job} is not in revision “{revision}”") from None
    wanted = [(name, data)]
    left = _MOST_BYTES
    taken: set[str] = set()
    # Includes include: each file is taken once, and all together may be no larger than on the disk.
    while wanted:
        path, data = wanted.pop()
        if path in taken:
            continue
        taken.add(path)
        left -= len(data)
        if left < 0:
            raise NotInGitError(_too_large(f"with what it includes, {job}", revision))
        target = into.joinpath(*PurePosixPath(path).parts)
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(data)
        # The job's log counts as part of the version, as it does on the disk.
        also = [log_beside(Path(name)).name] if path == name else []
        for other in (*_includes(path, data), *also):
            try:
                wanted.append((other, _blob(home, commit, other)))
            except _TooLargeError:
                raise NotInGitError(_too_large(other, revision)) from None
            except NotInGitError:
                continue  # the compiler reports a missing include; a job need not have a log
    return into / name, commit


def _includes(path: str, data: bytes) -> list[str]:
    """Return what a file includes, as paths from the job's folder; only those below it."""
    try:
        text = decode(data, path)
    except UnreadableError:
        return []
    found: list[str] = []
    for line in parse(Source(path, text))[0]:
        if isinstance(line, tree.Include):
            other = posixpath.normpath(posixpath.join(posixpath.dirname(path), line.path.text))
            # Includes outside the job's folder are not taken; the compiler refuses them in any
            # case.
            inside = not other.startswith(("/", "../")) and other not in ("..", ".")
            if inside and "\0" not in other:
                found.append(other)
    return found


def _too_large(what: str, revision: str) -> str:
    return f"{what} in revision “{revision}” is larger than {MOST_MEGABYTES} MB"


def _blob(home: Path, commit: str, path: str) -> bytes:
    """Return a file's contents, after asking for their size: git reads a blob into memory whole.

    Raises:
        _TooLargeError: it is larger than any job file may be.
        NotInGitError: there is no such file.
    """
    called = f"{commit}:./{path}"
    size = _git(home, "cat-file", "-s", called).strip()
    if not size.isdigit() or len(size) > 18 or int(size) > _MOST_BYTES:
        raise _TooLargeError
    return _git(home, "cat-file", "blob", called)


def _git(home: Path, *words: str) -> bytes:
    """Run git in a folder and return what it prints.

    Raises:
        NotInGitError: it is missing or fails.
    """
    try:
        done = subprocess.run(  # noqa: S603 - no shell, and options end before what the user says
            ["git", "-C", str(home), *_RUN_NOTHING, *words],  # noqa: S607 - git is where the user has it
            capture_output=True,
            check=False,
            env={**os.environ, **FETCH_NOTHING},
            stdin=subprocess.DEVNULL,
            timeout=_PATIENCE,
        )
    except FileNotFoundError:
        raise NotInGitError("git is not installed") from None
    except (subprocess.TimeoutExpired, ValueError) as error:
        raise NotInGitError(str(error)) from None
    if done.returncode:
        said = done.stderr.decode("utf-8", "replace").strip().splitlines()
        raise NotInGitError(said[-1].removeprefix("fatal: ") if said else "git failed")
    return done.stdout
