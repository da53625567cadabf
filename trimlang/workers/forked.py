"""Makes files in processes beside this one, which end when their files are made.

The PDF of a house's tickets takes as long as all other sheets together, and even a small
laptop has two cores.  What a laid out sheet leaves in memory goes with its process, where
looking for what can be let go of would take an eighth of all the time.  The processes are forked
(on Linux only), print nothing, write only what goes with them, and send their files back
through pipes.  Where one dies, its files are made in this process.
"""

from __future__ import annotations

import gc
import os
import signal
import sys
import tempfile
import warnings
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager, suppress
from threading import current_thread, main_thread
from typing import TYPE_CHECKING, TypeAlias

from trimlang.record import record

if TYPE_CHECKING:
    from multiprocessing.connection import Connection
    from multiprocessing.context import ForkProcess

Files: TypeAlias = Mapping[str, bytes]
Make: TypeAlias = Callable[[], Files]


class RefusedError(Exception):
    """The files cannot be made; the message says why, in words for the user."""


def side_by_side(*makes: Make) -> dict[str, bytes]:
    """Return the files of all, each made in a process of its own where that saves time.

    Raises:
        RefusedError: one of them refused; where several did, the reason of the first.
    """
    if not worth_it():
        return {name: data for make in makes for name, data in make().items()}
    begun: list[_Beside] = []
    # what a process keeps on the disk while it works is deleted here: it may be killed
    with tempfile.TemporaryDirectory(prefix="trimlang-") as scratch:
        try:
            with _signals_held():
                begun.extend(_fork(make, scratch) for make in makes)
            answers = [_answer(one.pipe) for one in begun]
        finally:
            for one in begun:
                one.pipe.close()
                # It has nothing left to do, or its files are not wanted any more.
                one.process.kill()
                one.process.join()
    files: dict[str, bytes] = {}
    for make, answer in zip(makes, answers, strict=True):
        if isinstance(answer, RefusedError):
            raise answer
        # Lost without an answer: make its files here, where an error reaches the user.
        files |= make() if answer is None else answer
    return files


@contextmanager
def _signals_held() -> Iterator[None]:
    """Keep signals that come meanwhile, and raise them afterwards.

    Just behind a fork Python drops what a handler raises, and before a process is known nothing
    would end it.  Blocking them is not enough: another thread may be the one that gets them.
    """
    if current_thread() is not main_thread():
        # Only the main thread runs handlers, and only there may they be changed.
        yield
        return
    held: list[int] = []
    usual = {
        number: handler
        for number in signal.valid_signals()
        if callable(handler := signal.getsignal(number))
    }
    for number in usual:
        signal.signal(number, lambda caught, _: held.append(caught))
    try:
        yield
    finally:
        for number, handler in usual.items():
            signal.signal(number, handler)
    for caught in held:
        signal.raise_signal(caught)


@record
class _Beside:
    process: ForkProcess
    pipe: Connection


def _fork(make: Make, scratch: str) -> _Beside:
    from multiprocessing import get_context

    context = get_context("fork")
    reader, writer = context.Pipe(duplex=False)
    process = context.Process(target=_work, args=(make, writer, scratch), daemon=True)
    with warnings.catch_warnings():
        # Python warns of a fork while other threads run. Ours are the one that waits for a stop
        # and the solver's. All are asleep, and the second process needs no lock that they hold.
        warnings.simplefilter("ignore", DeprecationWarning)
        process.start()
    # With our own end open, `recv` would wait for ever on a process that has died.
    writer.close()
    return _Beside(process, reader)


def _answer(pipe: Connection) -> Files | RefusedError | None:
    with suppress(EOFError, OSError):
        answer: Files | RefusedError = pipe.recv()
        return answer
    return None


def worth_it() -> bool:
    """Tell whether a second process would save time here."""
    # macOS and Windows do not fork safely, and a spawned process would take longer to start than it
    # saves. With one core nothing is gained.
    return sys.platform == "linux" and len(os.sched_getaffinity(0)) > 1


def _work(make: Make, writer: Connection, scratch: str) -> None:
    """Make the files and send them: all that the forked process does."""
    gc.disable()
    tempfile.tempdir = scratch
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
