"""Several jobs in one call: which they are, where each one's sheets go, and the code of all."""

from __future__ import annotations

import os
from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path
from typing import Final

from trimlang.cli.replies import (
    CLEAN,
    JOB_ERRORS,
    OUR_FAULT,
    MessageOptions,
    complain,
)
from trimlang.diagnostics.message_form import MessageForm

_DEVICES: Final = frozenset(
    (
        "con",
        "prn",
        "aux",
        "nul",
        *(f"{port}{number}" for port in ("com", "lpt") for number in "123456789"),
    )
)
"""Names that no file may have on Windows, whatever stands behind a dot; nor may one end in a dot or
a blank (Microsoft, Naming Files, Paths, and Namespaces)."""


def several(given: Sequence[str]) -> list[str] | None:
    """Return the job files, each only once; None, with a complaint, if standard input is one."""
    if "-" in given:
        complain("standard input is one job: - cannot stand beside other job files")
        return None
    seen: dict[tuple[str, int, int], str] = {}
    for file in given:
        with suppress(OSError, RuntimeError):
            # A file given twice, also by another path, is one job: two builds would write one
            # folder.
            seen.setdefault(_identity(Path(file).resolve()), file)
    return list(seen.values())


def _identity(path: Path) -> tuple[str, int, int]:
    """Return what is the same for two names of one file that differ by case at most."""
    try:
        there = path.stat()
    except OSError:
        return str(path), 0, 0  # that it is missing is told when it is read
    return str(path).casefold(), there.st_dev, there.st_ino


def one_of_many(file: str, form: MessageForm) -> MessageOptions:
    """Return the message options for one of several jobs: its folder stands before file names."""
    folder = Path(file).parent.as_posix()
    return MessageOptions(form=form, folder="" if folder == "." else f"{folder.rstrip('/')}/")


def places(files: Sequence[str], out: Path | None, reserved: Sequence[str] = ()) -> list[Path]:
    """Return each job's folder, in ``out`` or beside the job; no two are the same.

    A folder in ``out`` has the name of the job's file.  Where two would be the same, the name of
    the file's own folder is put before it; where that does not help, the later ones get a number.
    ``reserved`` are names in ``out`` that no job may have.
    """
    paths = [Path(file) for file in files]
    names = [_everywhere(path.stem) if out is not None else f"{path.stem}-sheets" for path in paths]
    folders = [path.resolve().parent if out is None else out for path in paths]
    if out is not None:
        # Names that differ only in case are one folder on some disks.
        counts = {name.casefold(): 1 for name in reserved}
        for name in names:
            counts[name.casefold()] = counts.get(name.casefold(), 0) + 1
        names = [
            f"{path.resolve().parent.name}-{name}" if counts[name.casefold()] > 1 else name
            for path, name in zip(paths, names, strict=True)
        ]
    taken = {(out, name.casefold()) for name in reserved}
    found: list[Path] = []
    for path, folder, name in zip(paths, folders, names, strict=True):
        number, free = 1, name
        while (folder, free.casefold()) in taken:
            number += 1
            free = f"{name}-{number}"
        taken.add((folder, free.casefold()))
        found.append(out / free if out is not None else path.with_name(free))
    return found


def _everywhere(stem: str) -> str:
    """Return a job's name as a folder may be called on Windows too, where a folder is copied."""
    name = stem.rstrip(". ") or "job"
    return f"{name}-sheets" if name.partition(".")[0].casefold() in _DEVICES else name


def worse(one: int, other: int) -> int:
    """Return the exit code of two jobs together: 1 if one failed, 3 if trimlang is at fault."""
    if OUR_FAULT in (one, other):
        return OUR_FAULT
    return JOB_ERRORS if one or other else CLEAN


def cores() -> int:
    """Return how many cores this process may use."""
    with suppress(AttributeError):
        # In a container there may be fewer cores for us than the machine has.
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1
