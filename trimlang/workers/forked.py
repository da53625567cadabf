"""Makes some of the files in a second process while this one makes the others.

The PDF of a house's tickets takes as long as all other sheets together, and even a small
laptop has two cores.  The second process is forked (on Linux only), prints nothing, writes
nothing to the disk and sends its files back through a pipe.  Where it dies, its files are made
in this process.
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
    """The files cannot be made; the message says why, in words for the user."""


def side_by_side(first: Make, second: Make) -> dict[str, bytes]:
    """Return the files of both, with ``first`` in a second process where that saves time.

    Raises:
        RefusedError: one of them refused; where both did, the reason of ``first``.
    """
    if not worth_it():
        return {**first(), **second()}
    from multiprocessing import get_context

    context = get_context("fork")
    reader, writer = context.Pipe(duplex=False)
    process = context.Process(target=_work, args=(first, writer), daemon=True)
    with warnings.catch_warnings():
        # Python warns of a fork while other threads run. Ours are the one that waits for a stop
        # and the solver's. All are asleep, and the second process needs no lock that they hold.
        warnings.simplefilter("ignore", DeprecationWarning)
        process.start()
    # With our own end open, `recv` would wait for ever on a process that has died.
    writer.close()
    try:
        refused: RefusedError | None = None
        here: Files = {}
        try:
            here = second()
        except RefusedError as error:
            refused = error
        there: Files | RefusedError | None = None
        with suppress(EOFError, OSError):
            there = reader.recv()
    finally:
        reader.close()
        # It has nothing left to do, or `second` failed and its files are not wanted any more.
        process.kill()
        process.join()
    if isinstance(there, RefusedError):
        raise there
    if refused is not None:
        raise refused
    # Lost without an answer: make its files here, where an error reaches the user.
    return {**(first() if there is None else there), **here}


def worth_it() -> bool:
    """Tell whether a second process would save time here."""
    # macOS and Windows do not fork safely, and a spawned process would take longer to start than it
    # saves. With one core nothing is gained.
    return sys.platform == "linux" and len(os.sched_getaffinity(0)) > 1


def _work(make: Make, writer: Connection) -> None:
    """Make the files and send them: all that the forked process does."""
    # Any other failure is silent here: the parent gets no answer, makes the files itself, and
    # says what went wrong.
    with suppress(BaseException):
        # A signal that stops the command ends this process at once. The wake-up pipe is shared
        # with the parent: without this the parent would hear the same signal twice.
        signal.set_wakeup_fd(-1)
        for number in (signal.SIGINT, signal.SIGTERM):
            if signal.getsignal(number) != signal.SIG_IGN:
                signal.signal(number, signal.SIG_DFL)
        try:
            writer.send(dict(make()))
        except RefusedError as error:
            writer.send(error)
