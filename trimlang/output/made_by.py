"""Tells which files of a folder are trimlang's own, and unchanged since it wrote them.

With a list of names alone, anyone could have a folder's files deleted by putting a list into it,
and files that were changed by hand would be deleted too.  So the list holds the hash of what was
written with each name.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from hashlib import sha256
from pathlib import Path
from typing import Final

MARK: Final = ".made-by-trimlang"
"""The list's file name; a folder without it is the user's own."""


class NotOursError(Exception):
    """The folder is not empty, and trimlang did not make it."""


def mark_of(files: Mapping[str, bytes]) -> bytes:
    """Return the list for these files: one line a file, with its SHA-256 and its name."""
    lines = (f"{sha256(files[name]).hexdigest()}  {name}\n" for name in sorted(files))
    return "".join(lines).encode("utf-8", "surrogateescape")


def listed_in(mark: Path) -> dict[str, str]:
    """Return what a list says: the hash of each file by its name."""
    text = mark.read_text(encoding="utf-8", errors="surrogateescape")
    lines = (line.partition("  ") for line in text.splitlines())
    return {name: said for said, _, name in lines if name}


def names_alone(target: Path) -> bool:
    """Tell whether a folder's list is of the first builds, which wrote names without hashes.

    Nothing it names is taken for ours: that a file has a sheet's name, and was not changed after
    the list, would be as true of a user's file beside a list that somebody planted.
    """
    mark = target / MARK
    return mark.is_file() and not listed_in(mark) and mark.stat().st_size > 0


def foreign(target: Path) -> list[Path]:
    """Return what in the folder is the user's own, or no longer as trimlang wrote it.

    Raises:
        NotADirectoryError: ``target`` is a file.
        NotOursError: it is not empty and has no list.
    """
    if not target.exists():
        return []
    if not target.is_dir():
        raise NotADirectoryError(20, "is a file, not a folder", str(target))
    if not any(target.iterdir()):
        return []
    mark = target / MARK
    # A link would let the list come from anywhere.
    if mark.is_symlink() or not mark.is_file():
        raise NotOursError(str(target))
    return list(_others(target, target, listed_in(mark)))


def is_ours(path: Path, said: str | None) -> bool:
    """Tell whether a file is unchanged: its contents have the hash that the list says."""
    if said is None or path.is_symlink() or not path.is_file():
        return False
    try:
        return sha256(path.read_bytes()).hexdigest() == said
    except OSError:
        return False


def _others(folder: Path, target: Path, ours: Mapping[str, str]) -> Iterator[Path]:
    """Yield what is not ours in a folder of ours, going into folders that hold both."""
    for path in sorted(folder.iterdir()):
        name = path.relative_to(target).as_posix()
        if name == MARK or is_ours(path, ours.get(name)):
            continue
        # A folder with files of ours may also hold the user's: look inside.
        if any(one.startswith(f"{name}/") for one in ours) and not path.is_symlink():
            yield from _others(path, target, ours)
        else:
            yield path
