"""A disk that knows no case: `Job.trim` opens `job.trim`, and names stay as they were given."""

from __future__ import annotations

import builtins
import io
import os
from collections.abc import Callable, Iterator
from contextlib import ExitStack, closing, contextmanager
from pathlib import Path
from typing import Any, Final
from unittest.mock import patch

ONE_NAME: Final = (
    "open", "stat", "lstat", "chmod", "utime", "mkdir", "rmdir", "unlink", "remove", "readlink",
    "listdir", "access", "chdir",
)  # fmt: skip
"""Calls of ``os`` that name one place."""

TWO_NAMES: Final = ("link", "rename", "replace", "symlink")
"""Calls of ``os`` that name two."""

_LISTDIR: Final = os.listdir


class FoldingDisk:
    """Everything below ``root``, where names that differ by case alone are one name."""

    def __init__(self, root: Path) -> None:
        self._root = root.resolve()
        self._busy = False

    def place(self, path: Any) -> Any:
        """Return a path as it is spelt on the disk, or as given where nothing like it is there."""
        if self._busy or not isinstance(path, (str, bytes, os.PathLike)):
            return path
        self._busy = True
        try:
            whole = Path.cwd() / os.fsdecode(path)
            if not whole.is_relative_to(self._root):
                return path
            found = self._root
            for name in whole.relative_to(self._root).parts:
                found = found.parent if name == ".." else found / self._on_disk(found, name)
        finally:
            self._busy = False
        return path if found == whole else str(found)

    @staticmethod
    def _on_disk(folder: Path, name: str) -> str:
        try:
            there = _LISTDIR(folder)
        except OSError:
            return name
        if name in there:
            return name
        return next((one for one in there if one.casefold() == name.casefold()), name)

    def one(self, real: Callable[..., Any]) -> Callable[..., Any]:
        """Return a call that takes its first path from this disk."""

        def call(path: Any = ".", *given: Any, **more: Any) -> Any:
            if more.get("dir_fd") is not None:
                return real(path, *given, **more)
            return real(self.place(path), *given, **more)

        return call

    def listing(self, real: Callable[..., Any]) -> Callable[..., Any]:
        """Return a ``scandir`` of this disk, whose entries lie in the folder as it was given."""

        def call(path: Any = ".") -> Any:
            place = self.place(path)
            return real(path) if place == path else _Listing(real(place), path)

        return call

    def two(self, real: Callable[..., Any]) -> Callable[..., Any]:
        """Return a call that takes its two paths from this disk."""

        def call(path: Any, to: Any, **more: Any) -> Any:
            here, there = self.place(path), self.place(to)
            # a name may be changed to one that differs by case alone: it then is as given
            same = Path.cwd() / os.fsdecode(here) == Path.cwd() / os.fsdecode(there)
            return real(here, to if same else there, **more)

        return call


class _Listing(closing[Any]):
    """What ``scandir`` returns."""

    def __init__(self, entries: Any, folder: Any) -> None:
        super().__init__(entries)
        self._entries = (_Entry(entry, folder) for entry in entries)

    def __enter__(self) -> _Listing:
        return self

    def __iter__(self) -> Iterator[_Entry]:
        return self._entries

    def __next__(self) -> _Entry:
        return next(self._entries)


class _Entry:
    """An entry of a folder, found by another spelling of it; all but its path is the entry's."""

    def __init__(self, entry: Any, folder: Any) -> None:
        self._entry = entry
        self.path = os.path.join(folder, entry.name)  # noqa: PTH118 - as the system writes it

    def __fspath__(self) -> Any:
        return self.path

    def __getattr__(self, name: str) -> Any:
        return getattr(self._entry, name)


@contextmanager
def no_case(root: Path) -> Iterator[None]:
    """Have a disk without case below a folder, for a while."""
    disk = FoldingDisk(root)
    opened = disk.one(io.open)
    patches = [patch.object(os, name, disk.one(getattr(os, name))) for name in ONE_NAME]
    patches += [patch.object(os, name, disk.two(getattr(os, name))) for name in TWO_NAMES]
    patches.append(patch.object(os, "scandir", disk.listing(os.scandir)))
    patches += [patch.object(builtins, "open", opened), patch.object(io, "open", opened)]
    with ExitStack() as stack:
        for one in patches:
            stack.enter_context(one)
        yield
