"""Writes a set of files into a folder, whole or not at all.

The set is written into a new folder beside the target and the two change
places in one step where the system can do that (Linux), in two renames
elsewhere.  A power cut leaves the whole old set or the whole new one.
"""

from __future__ import annotations

import ctypes
import os
import shutil
import tempfile
from collections.abc import Mapping
from pathlib import Path
from typing import Final

MARK: Final = ".made-by-trimlang"
"""Lists the files that trimlang wrote; without it a folder is the user's own."""

_AT_FDCWD: Final = -100
_EXCHANGE: Final = 2


class NotOursError(Exception):
    """The folder holds things, and trimlang did not make it."""


def write_folder(target: Path, files: Mapping[str, bytes]) -> None:
    """Replace the contents of ``target`` by ``files`` (name → bytes).

    What the user put into the folder since the last build stays in it.

    Raises:
        NotOursError: ``target`` holds files, but no mark of an earlier build.
        OSError: it cannot be written; nothing has changed then.
    """
    # a link stays a link: what it leads to is replaced
    target = Path(os.path.realpath(target))
    kept = _foreign(target)
    target.parent.mkdir(parents=True, exist_ok=True)
    fresh = Path(tempfile.mkdtemp(prefix=f".{target.name}-", dir=target.parent))
    try:
        for name, data in files.items():
            _write(fresh / name, data)
        _write(fresh / MARK, "".join(f"{name}\n" for name in sorted(files)).encode())
        for path in kept:
            if path.name not in files:
                _copy(path, fresh / path.name)
        fresh.chmod(0o777 & ~current_umask())
        _sync(fresh)
        _put_in_place(fresh, target)
    finally:
        shutil.rmtree(fresh, ignore_errors=True)


def _foreign(target: Path) -> list[Path]:
    """Return what in the folder is the user's own."""
    if not target.exists():
        return []
    if not target.is_dir():
        raise NotADirectoryError(20, "is a file, not a folder", str(target))
    present = sorted(target.iterdir())
    mark = target / MARK
    if not present:
        return []
    if not mark.is_file():
        raise NotOursError(str(target))
    ours = {MARK, *mark.read_text(encoding="utf-8", errors="replace").splitlines()}
    return [path for path in present if path.name not in ours]


def _write(path: Path, data: bytes) -> None:
    with path.open("wb") as file:
        file.write(data)
        file.flush()
        os.fsync(file.fileno())


def _copy(path: Path, to: Path) -> None:
    if path.is_dir() and not path.is_symlink():
        shutil.copytree(path, to, symlinks=True)
    else:
        shutil.copy2(path, to, follow_symlinks=False)


def current_umask() -> int:
    """Return the permissions that new files are made without."""
    mask = os.umask(0)
    os.umask(mask)
    return mask


def _sync(folder: Path) -> None:
    descriptor = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)


def _put_in_place(fresh: Path, target: Path) -> None:
    if not target.exists():
        fresh.rename(target)
        return
    if _exchange(fresh, target):
        return
    aside = Path(tempfile.mkdtemp(prefix=f".{target.name}-old-", dir=target.parent)) / "old"
    target.rename(aside)
    try:
        fresh.rename(target)
    except OSError:
        aside.rename(target)
        raise
    finally:
        shutil.rmtree(aside.parent, ignore_errors=True)


def _exchange(one: Path, other: Path) -> bool:
    """Swap two folders in one step; False where the system cannot."""
    try:
        renameat2 = ctypes.CDLL(None, use_errno=True).renameat2
    except (AttributeError, OSError, TypeError):
        return False
    done = renameat2(_AT_FDCWD, os.fsencode(one), _AT_FDCWD, os.fsencode(other), _EXCHANGE)
    return bool(done == 0)
