"""Lets only one trimlang at a time change the files of a folder.

Where two commands read a file, add to it and write it back, the later one could undo the
earlier one.  The folder itself is locked, so that no lock file lies among the user's files.
"""

from __future__ import annotations

import os
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from hashlib import sha256
from pathlib import Path


@contextmanager
def alone_in(*folders: Path) -> Iterator[bool]:
    """Wait until no other trimlang changes files in the folders, and keep others out meanwhile.

    Yields:
        Whether others are kept out; false where the system or the disk has no such lock.
    """
    # In one order for all, so that no two commands wait for each other.
    opened = [_opened(folder) for folder in sorted(set(folders))]
    try:
        locked = [one is not None and _locked(one) for one in opened]
        yield all(locked)
    finally:
        # The system drops the lock with the descriptor, however the process ends.
        for one in opened:
            if one is not None:
                os.close(one)


def _opened(folder: Path) -> int | None:
    with suppress(OSError):
        if sys.platform == "win32":  # pragma: no cover - it locks only files
            # Windows cannot lock a folder, so a file named after it is locked instead.
            name = sha256(os.fsencode(os.path.realpath(folder))).hexdigest()[:16]
            place = Path(tempfile.gettempdir()) / f"trimlang-{name}.lock"
            return os.open(place, os.O_RDWR | os.O_CREAT)
        return os.open(folder, os.O_RDONLY)
    return None


def _locked(descriptor: int) -> bool:
    try:
        if sys.platform == "win32":  # pragma: no cover
            from msvcrt import LK_LOCK, locking

            locking(descriptor, LK_LOCK, 1)
        else:
            from fcntl import LOCK_EX, flock

            flock(descriptor, LOCK_EX)
    except (ImportError, OSError):
        return False
    return True
