"""Makes some files in a process of its own while this one makes the others.

The PDF of a house's tickets takes as long as that of all other sheets together, and a saw
bench's laptop has two cores.  The process is forked (on Linux), prints nothing, writes nothing
to the disk and hands its files over through a pipe; where it is lost, its files are made here.
"""

from __future__ import annotations

import os
import signal
import sys
import warnings
from collections.abc import Callable, Mapping
from contextlib import suppress
from typing import TYPE_CHECKING, TypeAlias

if TYPE_CHECKING:
    from multiprocessing.connection import Connection

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
    from multiprocessing import get_context

    context = get_context("fork")
    reader, writer = context.Pipe(duplex=False)
    process = context.Process(target=_work, args=(first, writer), daemon=True)
    with warnings.catch_warnings():
        # other threads may be: one that waits for a stop, and the solver's, all asleep; what
        # is made here needs neither them nor anything that they hold
        warnings.simplefilter("ignore", DeprecationWarning)
        process.start()
    writer.close()
    try:
        refused: RefusedError | None = None
        here: Files = {}
        try:
            here = second()
        except RefusedError as error:
            refused = error
        beside: Files | RefusedError | None = None
        with suppress(EOFError, OSError):
            beside = reader.recv()
    finally:
        reader.close()
        process.kill()
        process.join()
    if isinstance(beside, RefusedError):
        raise beside
    if refused is not None:
        raise refused
    return {**(first() if beside is None else beside), **here}


def _worth_it() -> bool:
    return sys.platform == "linux" and len(os.sched_getaffinity(0)) > 1


def _work(make: Make, writer: Connection) -> None:
    """Make the files and hand them over: all that the forked process does."""
    # whatever else goes wrong shows when the files are made in the process that may say so
    with suppress(BaseException):
        # a signal that stops the command ends this process at once, and is not heard twice
        signal.set_wakeup_fd(-1)
        for number in (signal.SIGINT, signal.SIGTERM):
            if signal.getsignal(number) != signal.SIG_IGN:
                signal.signal(number, signal.SIG_DFL)
        try:
            writer.send(dict(make()))
        except RefusedError as error:
            writer.send(error)
