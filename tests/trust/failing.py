"""A disk that fails at the n-th call: whichever it is, of those that change what is on it."""

from __future__ import annotations

import builtins
import io
import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any, Final
from unittest.mock import patch

CHANGING: Final = (
    "chmod", "fsync", "link", "mkdir", "rename", "replace", "symlink", "write",
)  # fmt: skip
"""Calls of ``os`` that a write to a disk goes through."""


class FailingDisk:
    """Counts the calls that change the disk, and fails one or all from one on.

    ``at`` is the call that fails, counted from 1; 0 lets all be.  A disk that is ``full``
    fails from there on, another once.
    """

    def __init__(self, at: int, *, full: bool) -> None:
        self.at = at
        self.full = full
        self.calls = 0

    def count(self) -> None:
        """Count a call.

        Raises:
            OSError: it is the one that fails, or one behind it on a full disk.
        """
        self.calls += 1
        if self.at and (self.calls == self.at or (self.full and self.calls > self.at)):
            raise OSError(28, "No space left on device")

    def failing(self, real: Callable[..., Any]) -> Callable[..., Any]:
        """Return a call that is counted first."""

        def call(*given: Any, **more: Any) -> Any:
            self.count()
            return real(*given, **more)

        return call

    def opening(self, real: Callable[..., Any]) -> Callable[..., Any]:
        """Return an ``open`` whose files for writing are counted when made and when written to."""

        def call(file: Any, mode: str = "r", *given: Any, **more: Any) -> Any:
            if not set(mode) & set("wxa+"):
                return real(file, mode, *given, **more)
            self.count()
            stream = real(file, mode, *given, **more)
            return _Counted(stream, self) if "b" in mode else stream

        return call


class _Counted:
    """A binary file whose writes are counted; everything else is the file's own."""

    def __init__(self, stream: Any, disk: FailingDisk) -> None:
        self._stream = stream
        self._disk = disk

    def write(self, data: bytes) -> int:
        try:
            self._disk.count()
        except OSError:
            # as on a real disk: some of it is written
            self._stream.write(data[: len(data) // 2])
            raise
        return int(self._stream.write(data))

    def __enter__(self) -> _Counted:
        return self

    def __exit__(self, *_: object) -> None:
        self._stream.close()

    def __getattr__(self, name: str) -> Any:
        return getattr(self._stream, name)


@contextmanager
def failing_disk(at: int, *, full: bool = False) -> Iterator[FailingDisk]:
    """Have a disk that fails, for a while."""
    disk = FailingDisk(at, full=full)
    patches = [patch.object(os, name, disk.failing(getattr(os, name))) for name in CHANGING]
    opened = disk.opening(io.open)
    patches += [
        patch.object(builtins, "open", opened),
        patch.object(io, "open", opened),
        patch.object(os, "fdopen", disk.opening(os.fdopen)),
    ]
    for one in patches:
        one.start()
    try:
        yield disk
    finally:
        for one in reversed(patches):
            one.stop()


def snapshot(folder: Path) -> dict[str, bytes]:
    """Return each file below a folder, by its name."""
    files = [path for path in folder.rglob("*") if path.is_file()]
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in files}
