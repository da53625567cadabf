"""What the system is asked for besides reading and writing."""

from __future__ import annotations

import os
from contextlib import suppress
from pathlib import Path


def sync(path: Path) -> None:
    """Bring a file or a folder safely to the disk, so that it survives a power cut.

    Raises:
        OSError: the system cannot do that.
    """
    descriptor = os.open(path, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)


def current_umask() -> int:
    """Return the permission bits that new files do not get."""
    # The system only tells the mask when it is set, so it is set twice.
    mask = os.umask(0)
    os.umask(mask)
    return mask


def keep_owner(fresh: Path, old: Path) -> None:
    """Give what takes another's place its owner, group and mode, as far as the system lets us."""
    was, now = old.stat(), fresh.stat()
    for owner, group in ((was.st_uid, -1), (-1, was.st_gid)):
        # Each by itself: whoever may not give a file away may still give it to a group of theirs.
        if hasattr(os, "chown") and (owner, group) not in ((now.st_uid, -1), (-1, now.st_gid)):
            with suppress(OSError):
                os.chown(fresh, owner, group, follow_symlinks=False)
    # Last, as a change of owner takes some bits of the mode away.
    fresh.chmod(was.st_mode & 0o7777)
