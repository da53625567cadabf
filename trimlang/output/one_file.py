"""Writes one file, whole or not at all."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from errno import EISDIR
from pathlib import Path

from trimlang.output.sync import current_umask, sync


def replace_file(path: Path, data: bytes) -> None:
    """Put ``data`` in the place of a file's contents in one step; its mode stays.

    A file that is not there yet is made.  Where ``path`` is a link, what it leads to is
    replaced.  A device or a pipe stays one: it is written to.

    Raises:
        OSError: it cannot be written; the old contents are there still.
    """
    target = Path(os.path.realpath(path))
    if target.is_dir():
        raise IsADirectoryError(EISDIR, "is a folder", str(target))
    if target.exists() and not target.is_file():
        with target.open("wb") as stream:
            stream.write(data)
        return
    mode = target.stat().st_mode & 0o7777 if target.exists() else 0o666 & ~current_umask()
    with _beside(target, data, mode) as fresh:
        fresh.replace(target)
        _keep_name(target.parent)


def new_file(path: Path, data: bytes) -> None:
    """Write a file that is not there yet; it is there whole, or not.

    Raises:
        FileExistsError: it is there, be it a link that leads nowhere.
        OSError: it cannot be written; nothing is left of it.
    """
    if os.path.lexists(path):
        raise FileExistsError(17, "is there already", str(path))
    with _beside(path, data, 0o666 & ~current_umask()) as fresh:
        try:
            os.link(fresh, path)
        except FileExistsError:
            raise
        except OSError:
            # a disk without second links: nobody else had the name a moment ago
            fresh.rename(path)
        _keep_name(path.parent)


@contextmanager
def _beside(target: Path, data: bytes, mode: int) -> Iterator[Path]:
    """Have the contents safely on the disk under a name that nobody can guess, for a while."""
    descriptor, name = tempfile.mkstemp(prefix=".trimlang-", dir=target.parent)
    fresh = Path(name)
    try:
        with os.fdopen(descriptor, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        fresh.chmod(mode)
        yield fresh
    finally:
        fresh.unlink(missing_ok=True)


def _keep_name(folder: Path) -> None:
    """Have the folder know the file after a power cut too, where the system can say so."""
    try:
        sync(folder)
    except OSError:
        return
