"""Takes a job file and what it includes out of git, as they were at a revision."""

from __future__ import annotations

import posixpath
import subprocess
from pathlib import Path, PurePosixPath
from typing import Final

from trimlang.language import tree
from trimlang.language.parse import parse
from trimlang.language.source import Source
from trimlang.reading import UnreadableError, decode, log_beside

_PATIENCE: Final = 60
"""Seconds that git may take for one file."""


class NotInGitError(Exception):
    """The revision or the file in it cannot be had; the message says why."""


def take_out(job: Path, revision: str, into: Path) -> tuple[Path, str]:
    """Write a job file of ``revision``, its includes and its site log below ``into``.

    Returns:
        Where the job file lies now, and the revision's short name.

    Raises:
        NotInGitError: git is missing, or has no such revision or file.
    """
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
    except NotInGitError:
        raise NotInGitError(f"{job} is not in revision “{revision}”") from None
    wanted = [(name, data)]
    taken: set[str] = set()
    while wanted:
        path, data = wanted.pop()
        if path in taken:
            continue
        taken.add(path)
        target = into.joinpath(*PurePosixPath(path).parts)
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(data)
        also = [log_beside(Path(name)).name] if path == name else []
        for other in (*_includes(path, data), *also):
            try:
                wanted.append((other, _blob(home, commit, other)))
            except NotInGitError:
                continue  # the compiler says so where one is asked for; a job need have no log
    return into / name, commit


def _includes(path: str, data: bytes) -> list[str]:
    """Return what a file includes, as paths from the job's folder that stay below it."""
    try:
        text = decode(data, path)
    except UnreadableError:
        return []
    found: list[str] = []
    for line in parse(Source(path, text))[0]:
        if isinstance(line, tree.Include):
            other = posixpath.normpath(posixpath.join(posixpath.dirname(path), line.path.text))
            inside = not other.startswith(("/", "../")) and other not in ("..", ".")
            if inside and "\0" not in other:
                found.append(other)
    return found


def _blob(home: Path, commit: str, path: str) -> bytes:
    return _git(home, "cat-file", "blob", f"{commit}:./{path}")


def _git(home: Path, *words: str) -> bytes:
    """Run git in a folder and return what it prints.

    Raises:
        NotInGitError: it is missing or fails.
    """
    try:
        done = subprocess.run(  # noqa: S603 - no shell, and options end before what the user says
            ["git", "-C", str(home), *words],  # noqa: S607 - git is where the user has it
            capture_output=True,
            check=False,
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
