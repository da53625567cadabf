"""What a disk is asked for besides reading and writing."""

from __future__ import annotations

import os
from pathlib import Path


def sync(path: Path) -> None:
    """Have a file or a folder on the disk, whatever happens to the power.

    Raises:
        OSError: the disk cannot say so.
    """
    descriptor = os.open(path, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)


def current_umask() -> int:
    """Return the permissions that new files are made without."""
    mask = os.umask(0)
    os.umask(mask)
    return mask
