"""Notices when files change on the disk.

Folders are watched, not files, because many editors save by putting a new file in the old
one's place.  What the system reports is only a hint to look.  A change is what differs from
the last look, so no change is missed and none is reported twice.
"""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from threading import Event, Thread
from types import TracebackType
from typing import Final

from watchfiles import watch

_STEP: Final = 5
"""Milliseconds without a further change, after which a change is reported."""

_LONGEST: Final = 60
"""Milliseconds after which a change is reported even though more of them follow."""

_LOOK: Final = 0.5
"""Seconds that the main thread sleeps at most: on some systems it hears no signal meanwhile."""

_GONE: Final = 0.2
"""Seconds that an editor may take between emptying or removing a file and writing the new one."""

# By path: time of change (ns), size (bytes) and inode; None where there is no such file. The inode
# tells a file that was put in the place of another within the clock's step.
Stamps = dict[Path, tuple[int, int, int] | None]


class FileWatcher:
    """Watches files and the folders of templates; used as ``with FileWatcher() as watcher``."""

    def __init__(self) -> None:
        self._folders: frozenset[Path] = frozenset()
        self._stamps: Stamps = {}
        self._trees: tuple[Path, ...] = ()
        self._hint = Event()
        self._over = Event()
        self._thread: Thread | None = None

    def __enter__(self) -> FileWatcher:
        return self

    def __exit__(
        self,
        _kind: type[BaseException] | None,
        _error: BaseException | None,
        _at: TracebackType | None,
    ) -> None:
        self._rest()

    def begin(self, files: Iterable[Path], trees: Iterable[Path] = ()) -> None:
        """Note how these files and all below ``trees`` are now; a later difference is a change."""
        self._trees = tuple(trees)
        self._stamps = _stamps([*files, *_below(self._trees)])

    def note(self, file: Path) -> None:
        """Note how one more file is now; call it before the file is read, so no save is missed."""
        self._stamps |= _stamps([file])

    def hinted(self) -> bool:
        """Whether something has changed; quick while the system has reported nothing."""
        return self._hint.is_set() and self._differs()

    def wait(self) -> None:
        """Wait until something has changed."""
        self._watch_folders()
        while not self._differs():
            self._hint.clear()
            # A change between the look and the clearing has lost its hint, so look once more.
            if self._differs():
                break
            while not self._hint.wait(_LOOK):
                pass
        # A file that is empty or gone now and was there before is most likely a save in progress:
        # wait for the rest of it rather than build an empty job.
        if any(was is not None and _unfinished(path) for path, was in self._stamps.items()):
            self._hint.clear()
            self._hint.wait(_GONE)

    def _differs(self) -> bool:
        return self._stamps != _stamps([*self._stamps, *_below(self._trees)])

    def _watch_folders(self) -> None:
        folders = frozenset(
            folder
            for path in self._stamps
            # Where the job file is a link, both its own folder and that of the file it leads to may
            # change.
            for one in (path, path.resolve())
            for folder in (_standing(one if one.is_dir() else one.parent),)
        )
        if folders == self._folders and self._thread is not None:
            return
        self._rest()
        self._folders = folders
        self._over = Event()
        self._thread = Thread(target=self._listen, args=(folders, self._over), daemon=True)
        self._thread.start()

    def _rest(self) -> None:
        self._over.set()
        if self._thread is not None:
            self._thread.join()
            self._thread = None

    def _listen(self, folders: frozenset[Path], over: Event) -> None:
        changes = watch(
            *sorted(folders),
            watch_filter=None,
            debounce=_LONGEST,
            step=_STEP,
            stop_event=over,
            # Wake up each second without a report: a change from before the listening began has
            # none.
            rust_timeout=1000,
            yield_on_timeout=True,
            # The trees of templates are small; everything beside a job file may be a whole disk.
            recursive=False,
            ignore_permission_denied=True,
        )
        try:
            for _ in changes:
                self._hint.set()
        except OSError:
            # A watched folder was removed: go on looking at intervals, without the system's help.
            while not over.wait(_LOOK):
                self._hint.set()


def _stamps(paths: Iterable[Path]) -> Stamps:
    found: Stamps = {}
    for path in paths:
        try:
            about = path.stat()
        except (OSError, ValueError):
            found[path] = None
        else:
            # A folder's own time and size change with anything that is put beside our files.
            stamp = (about.st_mtime_ns, about.st_size, about.st_ino)
            found[path] = (0, 0, about.st_ino) if path.is_dir() else stamp
    return found


def _unfinished(path: Path) -> bool:
    """Tell whether an editor seems to be in the middle of a save: the file is empty or gone."""
    try:
        return path.stat().st_size == 0
    except OSError:
        return True


def _below(trees: Iterable[Path]) -> list[Path]:
    return [path for tree in trees for path in (tree, *sorted(tree.rglob("*")))]


def _standing(folder: Path) -> Path:
    """Return the folder, or the nearest existing one above it."""
    while not folder.is_dir() and folder != folder.parent:
        folder = folder.parent
    return folder
