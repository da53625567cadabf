"""Writes one file, whole or not at all."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterable, Iterator
from contextlib import contextmanager, suppress
from errno import EISDIR
from pathlib import Path

from trimlang.output.sync import current_umask, keep_owner, sync


def replace_file(path: Path, data: bytes) -> None:
    """Replace a file's contents with ``data`` in one step; its permissions stay.

    A file that does not exist yet is made.  Where ``path`` is a link, the file that it leads to
    is replaced.  A device or a pipe stays what it is and is written to.

    Raises:
        OSError: it cannot be written; the old contents are still there.
    """
    target = Path(os.path.realpath(path))
    if target.is_dir():
        raise IsADirectoryError(EISDIR, "is a folder", str(target))
    if target.exists() and not target.is_file():
        # /dev/stdout and its like cannot be replaced, only written to.
        with target.open("wb") as stream:
            stream.write(data)
        return
    with _written_beside(target, data) as fresh:
        if target.exists():
            keep_owner(fresh, target)
        fresh.replace(target)
        _keep_name(target.parent)


def new_file(path: Path, data: bytes) -> None:
    """Write a file that does not exist yet, whole or not at all.

    Raises:
        FileExistsError: it exists already, even if it is a link that leads nowhere.
        OSError: it cannot be written; nothing of it is left.
    """
    if os.path.lexists(path):
        raise FileExistsError(17, "is there already", str(path))
    with _written_beside(path, data) as fresh:
        try:
            # A link, unlike a rename, fails where somebody else has taken the name meanwhile.
            os.link(fresh, path)
        except FileExistsError:
            raise
        except OSError:
            # A disk without second links: at least nobody had the name a moment ago.
            fresh.rename(path)
        _keep_name(path.parent)


def is_one_of(path: Path, files: Iterable[Path]) -> bool:
    """Tell whether a path leads to one of these files, also by a link or a name in other capitals.

    A device that is read and written, as a terminal is, does not count: nothing of it is replaced.
    """
    return path.is_file() and any(file.exists() and path.samefile(file) for file in files)


@contextmanager
def _written_beside(target: Path, data: bytes) -> Iterator[Path]:
    """Hold the contents safely on the disk, under a random name beside the target, for a while."""
    descriptor, name = tempfile.mkstemp(prefix=".trimlang-", dir=target.parent)
    fresh = Path(name)
    try:
        with os.fdopen(descriptor, "wb") as file:
            file.write(data)
            file.flush()
            # Before the rename: otherwise a power cut could leave the new name with empty contents.
            os.fsync(file.fileno())
        fresh.chmod(0o666 & ~current_umask())
        yield fresh
    finally:
        # Whether the file is written is settled: a second name that stays does not change it.
        with suppress(OSError):
            fresh.unlink()


def _keep_name(folder: Path) -> None:
    """Bring the file's name to the disk too, where the system allows it, against a power cut."""
    with suppress(OSError):
        sync(folder)
