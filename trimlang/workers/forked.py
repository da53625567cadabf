"""Makes some files in a process of its own while this one makes the others.

Tickets take as long as all other sheets together, and a saw bench's laptop has two cores.
The process is forked off (on Linux), says nothing, writes nothing to the disk and hands
its files over through a pipe; whatever becomes of it, its files are made here then.
"""

from __future__ import annotations

import json
import os
import signal
import sys
import warnings
from collections.abc import Callable, Mapping
from contextlib import suppress
from typing import Final, NoReturn, TypeAlias

Files: TypeAlias = Mapping[str, bytes]
Make: TypeAlias = Callable[[], Files]


class RefusedError(Exception):
    """The files cannot be made, and the user is told why."""


def side_by_side(first: Make, second: Make) -> dict[str, bytes]:
    """Return what both make, the first in a process of its own where that saves time.

    Raises:
        RefusedError: one of them refused; the first one's reason where both did.
    """
    if not _worth_it():
        return {**first(), **second()}
    forked = _Forked(first)
    try:
        refused: RefusedError | None = None
        here: Files = {}
        try:
            here = second()
        except RefusedError as error:
            refused = error
        beside = forked.files()
    finally:
        forked.end()
    if refused is not None:
        raise refused
    return {**(first() if beside is None else beside), **here}


def _worth_it() -> bool:
    return sys.platform == "linux" and len(os.sched_getaffinity(0)) > 1


_ANSWERED: Final = "files"
_REFUSED: Final = "refused"


class _Forked:
    """A process that makes files, and the pipe that they come through."""

    def __init__(self, make: Make) -> None:
        reader, writer = os.pipe()
        with warnings.catch_warnings():
            # other threads may be: one that waits for a stop, and the solver's, all asleep; what
            # is made here needs neither them nor anything that they hold
            warnings.simplefilter("ignore", DeprecationWarning)
            self._pid = os.fork()
        if self._pid == 0:
            os.close(reader)
            _work(make, writer)
        os.close(writer)
        self._answer = os.fdopen(reader, "rb")

    def files(self) -> dict[str, bytes] | None:
        """Wait for the files; None where the process ended without an answer.

        Raises:
            RefusedError: they cannot be made.
        """
        try:
            said = json.loads(self._answer.readline())
        except ValueError:
            return None
        if _REFUSED in said:
            raise RefusedError(said[_REFUSED])
        files = {name: self._answer.read(size) for name, size in said[_ANSWERED]}
        whole = all(len(files[name]) == size for name, size in said[_ANSWERED])
        return files if whole else None

    def end(self) -> None:
        """End the process, should it still run."""
        self._answer.close()
        with suppress(ProcessLookupError):
            os.kill(self._pid, signal.SIGKILL)
        os.waitpid(self._pid, 0)


def _work(make: Make, writer: int) -> NoReturn:
    """Make the files and hand them over: all that the forked process does."""
    code = 1
    try:
        # a signal that stops the command ends this process at once, and is not heard twice
        signal.set_wakeup_fd(-1)
        for number in (signal.SIGINT, signal.SIGTERM):
            if signal.getsignal(number) != signal.SIG_IGN:
                signal.signal(number, signal.SIG_DFL)
        try:
            files = make()
            head: dict[str, object] = {
                _ANSWERED: [[name, len(data)] for name, data in files.items()]
            }
        except RefusedError as error:
            files, head = {}, {_REFUSED: str(error)}
        with os.fdopen(writer, "wb") as answer:
            answer.write(json.dumps(head).encode() + b"\n")
            for data in files.values():
                answer.write(data)
        code = 0
    finally:
        # nothing of the other process's is flushed or tidied up here
        os._exit(code)
