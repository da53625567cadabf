"""Writes a set of files into a folder that no other folder can take the place of.

A disk's top folder cannot be renamed, and a shell whose current folder is replaced would be left
in the old one.  There the new files are written into a work folder within it and then moved to
their places one by one.  As soon as all of them are on the disk a journal says so; if the build
is killed after that, the next one finishes it.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterable, Mapping
from contextlib import suppress
from pathlib import Path
from typing import Final

from trimlang.output.made_by import MARK, is_ours, listed_in, mark_of
from trimlang.output.sync import keep_owner, sync
from trimlang.workers.stopping import to_the_end

_WORK: Final = ".trimlang-work"
NEW: Final = "new"
_JOURNAL: Final = "journal"
"""A file in the work folder: it exists once all files of the new set are on the disk."""


def cannot_be_swapped(target: Path) -> bool:
    """Tell whether a folder cannot be swapped: a disk's top folder, or where we stand."""
    if not target.is_dir():
        return False
    with suppress(OSError):
        here = Path.cwd().resolve()
        return os.path.ismount(target) or here.is_relative_to(target)
    return os.path.ismount(target)


def write_in_place(target: Path, files: Mapping[str, bytes]) -> None:
    """Replace trimlang's own files in a folder one by one.

    Raises:
        OSError: it cannot be written; unless the journal is there already, nothing has changed.
    """
    work = target / _WORK
    fresh = work / NEW
    try:
        fresh.mkdir(parents=True)
        for name, data in {**files, MARK: mark_of(files)}.items():
            place = fresh / name
            place.parent.mkdir(parents=True, exist_ok=True)
            place.write_bytes(data)
            sync(place)
        _sync_folders(fresh, (fresh / name for name in files))
    except BaseException:
        shutil.rmtree(work, ignore_errors=True)
        raise
    with to_the_end():
        # From here on the build is finished by whoever comes next, even after a power cut.
        (work / _JOURNAL).touch()
        sync(work)
        finish(target)


def finish(target: Path) -> None:
    """Finish an earlier build where its journal says that it can be; clear away its work."""
    work = target / _WORK
    if work.is_symlink() or not work.is_dir():
        return
    if (work / _JOURNAL).is_file():
        _move_in(work / NEW, target)
    shutil.rmtree(work, ignore_errors=True)


def _move_in(fresh: Path, target: Path) -> None:
    # The list is moved last: where it has gone, all the rest has been moved too.
    mark = fresh / MARK
    if mark.is_symlink() or not mark.is_file():
        return
    old = listed_in(target / MARK) if (target / MARK).is_file() else {}
    new = listed_in(mark)
    for name in new:
        place = target / name
        # Anybody could have put the journal there, so it never writes over what is not ours.
        free = not os.path.lexists(place) or is_ours(place, old.get(name))
        if free and _is_inside(place, target) and is_ours(fresh / name, new[name]):
            place.parent.mkdir(parents=True, exist_ok=True)
            if place.is_file():
                keep_owner(fresh / name, place)
            (fresh / name).replace(place)
    for name, said in old.items():
        place = target / name
        if name not in new and _is_inside(place, target) and is_ours(place, said):
            # A sheet of the old set that the new one does not have.
            place.unlink()
            _drop_empty(place.parent, target)
    mark.replace(target / MARK)
    # Only then may the journal go.
    with suppress(OSError):
        _sync_folders(target, (target / name for name in (*new, *old)))


def _sync_folders(top: Path, files: Iterable[Path]) -> None:
    """Have a folder, and those within it that hold files, know these files after a power cut."""
    folders = {folder for file in files for folder in file.parents if folder.is_relative_to(top)}
    for folder in sorted({top, *folders}, reverse=True):
        with suppress(FileNotFoundError):  # its last file was taken away
            sync(folder)


def _is_inside(place: Path, target: Path) -> bool:
    return place.parent.resolve().is_relative_to(target.resolve())


def _drop_empty(folder: Path, target: Path) -> None:
    with suppress(OSError):
        while folder != target:
            folder.rmdir()
            folder = folder.parent
