"""A disk whose n-th change fails, or at which the power is cut, under a command.

Every call that changes what is on the disk is counted.  The one that is chosen is half done where
it is a write; then the process ends there and then, or the call fails as the system's own would.
At a power cut what was not brought to the disk (``fsync``) is lost besides: half of each file's
contents, and each file or folder that its own folder was not told to keep.
"""

from __future__ import annotations

import builtins
import io
import os
from collections.abc import Callable, Iterator
from contextlib import ExitStack, chdir, contextmanager, redirect_stderr, redirect_stdout
from dataclasses import dataclass
from enum import Enum, auto
from errno import EIO, ENOSPC, EROFS
from pathlib import Path
from threading import RLock
from typing import Any, Final
from unittest.mock import patch

from trimlang.output import folder as output_folder

CUT: Final = 77
"""The exit code of a process that was ended at a call."""

_REMOVING: Final = ("rmdir", "unlink")
_CHANGING: Final = (
    "chmod", "fsync", "link", "mkdir", "rename", "replace", "symlink", *_REMOVING,
)  # fmt: skip
"""Calls of ``os`` that a change to a disk goes through."""


class Trouble(Enum):
    """What happens at the call that is chosen."""

    KILL = auto()
    POWER_CUT = auto()
    FAILS_ONCE = auto()
    FULL = auto()
    """From there on; what is there can still be taken away."""
    READ_ONLY = auto()
    """From there on, as where a system has found its disk to be damaged."""

    @property
    def ends(self) -> bool:
        """Whether the process ends there."""
        return self in (Trouble.KILL, Trouble.POWER_CUT)


_ERRORS: Final = {Trouble.FAILS_ONCE: EIO, Trouble.FULL: ENOSPC, Trouble.READ_ONLY: EROFS}


@dataclass(frozen=True)
class Ran:
    """How a command went on a bad disk."""

    code: int
    calls: int
    told: str
    """What it printed; nothing where it was ended."""


class BadDisk:
    """Counts the calls that change the disk; from 1 on ``at`` is the one with trouble, 0 none."""

    def __init__(self, at: int, top: Path, trouble: Trouble) -> None:
        self.calls = 0
        self._at = at
        self._top = top
        self._trouble = trouble
        self._unsynced: set[int] = set()
        self._fresh: dict[str, str] = {}
        self._ending = False
        self._lock = RLock()

    def count(self, half: Callable[[], object] | None = None, *, removes: bool = False) -> None:
        """Count a call; at the one that is chosen do ``half`` of it, and then what is to happen.

        Raises:
            OSError: it is the one that fails, or one behind it on a disk that stays bad.
        """
        with self._lock:
            if self._ending:
                return
            self.calls += 1
            if not self._at or self.calls < self._at:
                return
            if self._trouble.ends:
                self._ending = True
                if half is not None:
                    half()
                if self._trouble is Trouble.POWER_CUT:
                    self._lose()
                os._exit(CUT)
            once = self._trouble is Trouble.FAILS_ONCE
            if (once and self.calls > self._at) or (removes and self._trouble is Trouble.FULL):
                return
            if half is not None and self.calls == self._at:
                half()
            number = _ERRORS[self._trouble]
            raise OSError(number, os.strerror(number))

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
            for name in _CHANGING:
                patches.enter_context(patch.object(os, name, self._counted(name)))
            patches.enter_context(patch.object(os, "open", self._opening()))
            opened = self._streams(io.open)
            patches.enter_context(patch.object(builtins, "open", opened))
            patches.enter_context(patch.object(io, "open", opened))
            # os.fdopen goes through io.open
            swap = self._swapping(output_folder.exchange)
            patches.enter_context(patch.object(output_folder, "exchange", swap))
            yield

    def _counted(self, name: str) -> Callable[..., Any]:
        real = getattr(os, name)

        def call(*given: Any, **more: Any) -> Any:
            self.count(removes=name in _REMOVING)
            done = real(*given, **more)
            if name == "fsync":
                self.synced(given[0])
            elif name in ("mkdir", "link"):
                self.made(given[-1] if name == "link" else given[0])
            return done

        return call

    def _swapping(self, real: Callable[..., bool]) -> Callable[..., bool]:
        def call(*given: Any) -> bool:
            try:
                self.count()
            except OSError:
                return False  # it says no more than that it could not
            return real(*given)

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
    """A binary file whose writes can end in the middle; everything else is the file's own."""

    def __init__(self, stream: Any, disk: BadDisk) -> None:
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
        # what was taken and could not be kept is told at the end, as network disks do
        self._disk.count()

    def __getattr__(self, name: str) -> Any:
        return getattr(self._stream, name)


def run_on_it(command: Callable[[], int], at: int, top: Path, trouble: Trouble) -> Ran:
    """Run a command on a disk with trouble at a call; in a fork where the process is to end."""
    if not (at and trouble.ends):
        return _run(command, BadDisk(at, top, trouble))
    child = os.fork()
    if child == 0:
        try:
            code = _run(command, BadDisk(at, top, trouble)).code
        except BaseException:  # noqa: BLE001 - only the code goes further
            code = 70
        os._exit(code)
    return Ran(os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]), 0, "")


def _run(command: Callable[[], int], disk: BadDisk) -> Ran:
    kept = io.BytesIO()
    told = io.TextIOWrapper(kept, "utf-8", write_through=True)
    with chdir("."), redirect_stdout(told), redirect_stderr(told), disk.in_place():
        code = command()
    return Ran(code, disk.calls, kept.getvalue().decode())


def snapshot(folder: Path) -> dict[str, bytes]:
    """Return each file below a folder, by its name."""
    files = [path for path in folder.rglob("*") if path.is_file()]
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in files}
