"""Writes a set of files into a folder, whole or not at all.

The set is written into a new folder beside the target and brought safely to the disk; then the
two change places, in one step where the system can do that (Linux), in two renames elsewhere.
Whatever ends the program, also when the power fails, the folder holds the whole old set or the
whole new one.  Between two renames it can be missing; the next build then puts the old one back.

One build at a time writes in a folder's parent, and each clears away what earlier builds that
were killed have left there.
"""

from __future__ import annotations

import ctypes
import os
import re
import shutil
import tempfile
from collections.abc import Collection, Iterable, Mapping
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from errno import EBUSY, EXDEV
from filecmp import cmp
from pathlib import Path
from stat import S_ISREG
from typing import Final

from trimlang.output.in_place import NEW, cannot_be_swapped, finish, write_in_place
from trimlang.output.lock import alone_in
from trimlang.output.made_by import MARK, NotOursError, foreign, mark_of, names_alone
from trimlang.output.sync import keep_owner, sync
from trimlang.workers.stopping import to_the_end

AT_ONCE: Final = 16
"""Files that are brought to the disk at the same time."""

_OLD: Final = "old"
"""In a folder that is worked in, beside ``NEW``: the set that the new one replaces."""

_LEFT: Final = re.compile(r"\.(?P<name>.+)-trimlang-\d+-[a-z0-9_]{8}", re.DOTALL)
"""How such a folder is called: after its target, the process, and with a random end."""

# Arguments of Linux's renameat2(2): paths as they are, and RENAME_EXCHANGE.
_AT_FDCWD: Final = -100
_EXCHANGE: Final = 2


def write_folder(target: Path, files: Mapping[str, bytes]) -> None:
    """Replace the contents of ``target`` by ``files`` (name → bytes).

    A name may lead into a folder (``site/plan.json``).  What the user has put into the folder
    since the last build stays in it.

    Raises:
        NotOursError: ``target`` holds files, and no list of an earlier build's files.
        OSError: it cannot be written; then nothing has changed.
        StoppedError: a signal came; where its ``done`` is true, the new set is in place.
    """
    # A link stays a link: the folder that it leads to is replaced.
    target = Path(os.path.realpath(target))
    target.parent.mkdir(parents=True, exist_ok=True)
    with alone_in(target.parent) as alone:
        # Without the lock, what lies there may be another build's work in progress.
        if alone:
            _clear_up(target)
            finish(target)
        of_the_user = foreign(target)
        # A sheet that was changed by hand is the user's; better no build than a lost change.
        for path in of_the_user:
            name = path.relative_to(target).as_posix()
            if name in files and names_alone(target):
                wrong = "an earlier trimlang made it; move it away, this once"
                raise FileExistsError(17, wrong, str(target))
            if name in files:
                wrong = f"{name} in it is not as trimlang made it; move it away"
                raise FileExistsError(17, wrong, str(path))
        if cannot_be_swapped(target):
            write_in_place(target, files)
            return
        work = Path(tempfile.mkdtemp(prefix=_in_work(target, os.getpid()), dir=target.parent))
        try:
            fresh = work / NEW
            fresh.mkdir()
            if target.exists():
                # The new folder must be as readable for others as the old one, and as much theirs.
                keep_owner(fresh, target)
            for name, data in files.items():
                (fresh / name).parent.mkdir(parents=True, exist_ok=True)
                write_file(fresh / name, data)
            write_file(fresh / MARK, mark_of(files))
            for name in (*files, MARK):
                if (target / name).is_file():
                    keep_owner(fresh / name, target / name)
            for path in of_the_user:
                place = fresh / path.relative_to(target)
                place.parent.mkdir(parents=True, exist_ok=True)
                _take_along(path, place)
            _sync_all(fresh, (fresh / name for name in (*files, MARK)))
            with to_the_end():
                try:
                    old = put_in_place(fresh, target, work)
                except OSError as error:
                    if error.errno not in (EBUSY, EXDEV):
                        raise
                    # Another disk begins here, although `cannot_be_swapped` saw no mount.
                    write_in_place(target, files)
                    return
                with suppress(OSError):  # the set is in place, if perhaps not yet on the disk
                    sync(target.parent)
                if old is not None:
                    _bring_late_ones(old, target, files)
        finally:
            # Where the old set can neither be replaced nor put back, it waits for the next build.
            if target.exists() or not (work / _OLD).exists():
                shutil.rmtree(work, ignore_errors=True)


def _prefix(target: Path) -> str:
    return f".{target.name}-trimlang-"


def _in_work(target: Path, pid: int) -> str:
    """Return how the names of the folders begin that a process is still writing."""
    return f"{_prefix(target)}{pid}-"


def _clear_up(target: Path) -> None:
    """Remove what a killed build has left; put back the old set where it had set that aside.

    All that lies beside the target is looked at, not what was to become the target alone: a job
    that is built no more with its neighbours would never clear its own away.
    """
    for left in sorted(target.parent.glob(".*-trimlang-*")):
        named = _LEFT.fullmatch(left.name)
        if named is None or left.is_symlink() or not left.is_dir():
            continue
        held = {path.name for path in left.iterdir()}
        if not held <= {NEW, _OLD}:
            continue  # whoever made it, we did not
        place = target.with_name(named["name"])
        if _OLD in held and not os.path.lexists(place):
            (left / _OLD).rename(place)
        shutil.rmtree(left, ignore_errors=True)


def leftovers(target: Path, pid: int) -> list[Path]:
    """Return the half-written folders that process ``pid`` left beside ``target``."""
    target = Path(os.path.realpath(target))
    if not target.parent.is_dir():
        return []
    begin = _in_work(target, pid)
    return [path for path in target.parent.iterdir() if path.name.startswith(begin)]


def write_file(path: Path, data: bytes) -> None:
    """Write one file of the new set."""
    with path.open("wb") as file:
        file.write(data)


def _take_along(path: Path, to: Path) -> None:
    """Put the user's own file or folder into the new folder too, as a second link or a copy."""
    if path.is_dir() and not path.is_symlink():
        shutil.copytree(path, to, symlinks=True, copy_function=_link)
    else:
        _link(path, to)


def _link(path: str | Path, to: str | Path) -> None:
    try:
        os.link(path, to, follow_symlinks=False)
    except FileExistsError:
        raise  # as where a disk takes `Tickets.html` of the user's for our `tickets.html`
    except OSError:
        shutil.copy2(path, to, follow_symlinks=False)
        if not Path(to).is_symlink():
            sync(Path(to))


def _bring_late_ones(old: Path, target: Path, files: Collection[str]) -> None:
    """Move over what the user added to the old folder while the new one was being written."""
    try:
        late = foreign(old)
    except NotOursError:
        late = list(old.iterdir())
    for path in late:
        if path.relative_to(old).as_posix() in files:
            continue  # a sheet changed by hand meanwhile: its new version is there
        # The new set is in place, so what cannot be moved over does not make the build a failure.
        with suppress(OSError):
            place = target / path.relative_to(old)
            place.parent.mkdir(parents=True, exist_ok=True)
            _bring(path, place)


def _bring(path: Path, to: Path) -> None:
    if path.is_dir() and not path.is_symlink() and to.is_dir():
        for inner in path.iterdir():
            _bring(inner, to / inner.name)
        return
    there = os.lstat(to) if os.path.lexists(to) else None
    here = os.lstat(path)
    # A second link to the same file, or a copy. Bytes are compared, as times are not enough: some
    # disks keep them to two seconds.
    same = there is not None and (
        os.path.samestat(here, there)
        or (S_ISREG(here.st_mode) and S_ISREG(there.st_mode) and cmp(path, to, shallow=False))
    )
    if not same:
        path.replace(to)


def _sync_all(folder: Path, files: Iterable[Path]) -> None:
    """Bring files in a folder, and the folders on the way to them, safely to the disk.

    Several at a time, since a disk writes many things at once nearly as fast as one.
    """
    places = {path: None for file in files for path in (file, *file.parents)}
    ours = [path for path in places if path.is_relative_to(folder)]
    with ThreadPoolExecutor(AT_ONCE) as disk:
        list(disk.map(sync, ours))


def put_in_place(fresh: Path, target: Path, work: Path) -> Path | None:
    """Put the new set in place; return where the old one is now, None where there was none."""
    if not target.exists():
        fresh.rename(target)
        return None
    if exchange(fresh, target):
        return fresh
    # Two renames: in between there is no folder, and `_clear_up` puts the old one back if we die.
    aside = work / _OLD
    target.rename(aside)
    try:
        fresh.rename(target)
    except OSError:
        # The new set cannot take the place: put the old one back and report it.
        aside.rename(target)
        raise
    return aside


def exchange(one: Path, other: Path) -> bool:
    """Swap two folders in one step; return false where the system cannot."""
    try:
        renameat2 = ctypes.CDLL(None, use_errno=True).renameat2
    except (AttributeError, OSError, TypeError):
        return False
    done = renameat2(_AT_FDCWD, os.fsencode(one), _AT_FDCWD, os.fsencode(other), _EXCHANGE)
    return bool(done == 0)
