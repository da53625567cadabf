"""Writes one file, whole or not at all."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path

from trimlang.output.folder import current_umask


def replace_file(path: Path, data: bytes) -> None:
    """Put ``data`` in the place of a file's contents in one step; its mode stays.

    A file that is not there yet is made.  Where ``path`` is a link, what it leads to is replaced.

    Raises:
        OSError: it cannot be written; the old contents are there still.
    """
    target = Path(os.path.realpath(path))
    mode = target.stat().st_mode & 0o7777 if target.exists() else 0o666 & ~current_umask()
    descriptor, name = tempfile.mkstemp(prefix=f".{target.name}-", dir=target.parent)
    fresh = Path(name)
    try:
        with os.fdopen(descriptor, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        fresh.chmod(mode)
        fresh.replace(target)
    finally:
        fresh.unlink(missing_ok=True)


def new_file(path: Path, data: bytes) -> None:
    """Write a file that is not there yet.

    Raises:
        FileExistsError: it is there.
        OSError: it cannot be written; nothing is left of it.
    """
    with path.open("xb") as file:
        try:
            file.write(data)
        except OSError:
            path.unlink(missing_ok=True)
            raise
