"""What the system is asked for besides reading and writing."""

from __future__ import annotations

import os
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
