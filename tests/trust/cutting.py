"""Cuts the power at the n-th call that changes the disk, in a command run in a fork.

The process ends there and then, a write half made.  And what was not brought to the disk
(``fsync``) may be lost: half of each file's contents, and each file or folder that its own folder
was not told to keep.
"""

from __future__ import annotations

import builtins
import io
import os
import sys
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path
from threading import RLock
from typing import Any, Final
from unittest.mock import patch

from tests.trust.failing import CHANGING
from trimlang.output import folder as output_folder

CUT: Final = 77
"""The exit code of a process whose power was cut."""


class CutDisk:
    """Counts the calls that change the disk and ends the process at one of them.

    ``at`` is that call, counted from 1; 0 lets all be.  ``loses`` is whether what is not synced
    is lost then, as at a power cut; a kill loses nothing.
    """

    def __init__(self, at: int, top: Path, *, loses: bool) -> None:
        self.calls = 0
        self._at = at
        self._top = top
        self._loses = loses
        self._unsynced: set[int] = set()
        self._fresh: dict[str, str] = {}
        self._ending = False
        self._lock = RLock()

    def count(self, half: Callable[[], object] | None = None) -> None:
        """Count a call; at the one that is cut do ``half`` of it and end."""
        with self._lock:
            if self._ending:
                return
            self.calls += 1
            if self.calls == self._at:
                self._ending = True
                if half is not None:
                    half()
                if self._loses:
                    self._lose()
                os._exit(CUT)

    def _lose(self) -> None:
        for path in self._fresh:
            if os.path.lexists(path) and not os.path.isdir(path):  # noqa: PTH112
                os.unlink(path)  # noqa: PTH108 - what Path calls is counted
        for path, _, names in os.walk(self._top):
            for name in names:
                place = os.path.join(path, name)  # noqa: PTH118
                if os.lstat(place).st_ino in self._unsynced:
                    os.truncate(place, os.path.getsize(place) // 2)  # noqa: PTH202

    def wrote(self, descriptor: int) -> None:
        """Note that a file has contents that the disk may not have."""
        self._unsynced.add(os.fstat(descriptor).st_ino)

    def made(self, path: Any) -> None:
        """Note that a folder has an entry that the disk may not have."""
        place = os.path.abspath(os.fspath(path))  # noqa: PTH100
        self._fresh[place] = os.path.dirname(place)  # noqa: PTH120

    def synced(self, descriptor: int) -> None:
        """Note that a file's contents, or a folder's entries, are on the disk."""
        self._unsynced.discard(os.fstat(descriptor).st_ino)
        place = os.readlink(f"/proc/self/fd/{descriptor}")  # noqa: PTH115
        self._fresh = {path: of for path, of in self._fresh.items() if of != place}

    @contextmanager
    def in_place(self) -> Iterator[None]:
        """Have every call go through this disk, for a while."""
        with ExitStack() as patches:
            for name in (*CHANGING, "unlink", "rmdir"):
                patches.enter_context(patch.object(os, name, self._counted(name)))
            patches.enter_context(patch.object(os, "open", self._opening()))
            opened = self._streams(io.open)
            patches.enter_context(patch.object(builtins, "open", opened))
            patches.enter_context(patch.object(io, "open", opened))
            # os.fdopen goes through io.open
            swap = output_folder.exchange
            patches.enter_context(
                patch.object(
                    output_folder, "exchange", lambda *given: (self.count(), swap(*given))[1]
                )
            )
            yield

    def _counted(self, name: str) -> Callable[..., Any]:
        real = getattr(os, name)

        def call(*given: Any, **more: Any) -> Any:
            self.count()
            done = real(*given, **more)
            if name == "fsync":
                self.synced(given[0])
            elif name in ("mkdir", "link"):
                self.made(given[-1] if name == "link" else given[0])
            return done

        return call

    def _opening(self) -> Callable[..., int]:
        real = os.open

        def call(path: Any, flags: int, *given: Any, **more: Any) -> int:
            if not flags & os.O_CREAT:
                return real(path, flags, *given, **more)
            self.count()
            there = os.path.lexists(path)
            descriptor = real(path, flags, *given, **more)
            if not there:
                self.made(path)
            return descriptor

        return call

    def _streams(self, real: Callable[..., Any]) -> Callable[..., Any]:
        def call(file: Any, mode: str = "r", *given: Any, **more: Any) -> Any:
            if not set(mode) & set("wxa+") or "b" not in mode:
                return real(file, mode, *given, **more)
            self.count()
            there = isinstance(file, int) or os.path.lexists(file)
            stream = real(file, mode, *given, **more)
            if not there:
                self.made(file)
            return _Written(stream, self)

        return call


class _Written:
    """A binary file whose writes can be cut in the middle; everything else is the file's own."""

    def __init__(self, stream: Any, disk: CutDisk) -> None:
        self._stream = stream
        self._disk = disk

    def write(self, data: bytes) -> int:
        def half() -> None:
            self._stream.write(data[: len(data) // 2])
            self._stream.flush()

        self._disk.wrote(self._stream.fileno())
        self._disk.count(half)
        return int(self._stream.write(data))

    def __enter__(self) -> _Written:
        return self

    def __exit__(self, *_: object) -> None:
        self._stream.close()

    def __getattr__(self, name: str) -> Any:
        return getattr(self._stream, name)


def run_until(command: Callable[[], int], at: int, top: Path, *, loses: bool) -> tuple[int, int]:
    """Run a command in a fork and cut it at a call; return its exit code and how many there were.

    The count is 0 where it was cut.
    """
    reader, writer = os.pipe()
    child = os.fork()
    if child == 0:
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, 1)
        os.dup2(nowhere, 2)
        sys.stdout = sys.stderr = io.TextIOWrapper(io.BytesIO(), "utf-8")
        code = 70
        disk = CutDisk(at, top, loses=loses)
        try:
            with disk.in_place():
                code = command()
        finally:
            os.write(writer, str(disk.calls).encode())
            os._exit(code)
    os.close(writer)
    with open(reader, "rb") as stream:  # noqa: PTH123 - a descriptor
        count = stream.read()
    _, status = os.waitpid(child, 0)
    return os.waitstatus_to_exitcode(status), int(count or 0)
