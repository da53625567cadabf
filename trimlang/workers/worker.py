"""One worker process: does the jobs that it is handed, one at a time."""

from __future__ import annotations

import ctypes
import gc
import os
import signal
import sys
from contextlib import redirect_stderr, redirect_stdout, suppress
from io import StringIO
from typing import TYPE_CHECKING, Any, Final, TypeAlias

from trimlang.record import record

if TYPE_CHECKING:
    from collections.abc import Callable
    from multiprocessing.connection import Connection
    from types import FrameType

# The first argument of Linux's prctl(2): the signal to send to us when our parent dies.
_PR_SET_PDEATHSIG: Final = 1


Do: TypeAlias = "Callable[[Any, Callable[[Any], None]], tuple[int, str]]"
"""Does one job, prints what there is to say, and returns the exit code and its reason.

The other function is to be called with each value that is to be handed back besides.
"""


@record
class JobAnswer:
    """How a job went: exit code, the reason in one line, what was printed, what was handed back."""

    code: int
    why: str
    out: str
    err: str
    back: tuple[Any, ...] = ()


def work(jobs: Connection, do: Do, our_fault: int) -> None:
    """Do jobs and send back their answers until the pipe is closed.

    ``our_fault`` is the exit code where ``do`` fails in a way that it does not know itself.
    """
    # Ctrl-C reaches the whole group of processes, but the parent answers it: it sends us SIGTERM.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    signal.signal(signal.SIGTERM, _leave)
    _follow_master()
    # A job makes very many small values that live until it ends: with Python's own thresholds the
    # collector would look through them over and over.
    gc.set_threshold(100_000, 20, 20)
    # What a library prints past Python goes to stderr, where it cannot be taken for an answer.
    os.dup2(2, 1)
    # A closed pipe means that the parent is gone or has no more jobs.
    with suppress(EOFError, BrokenPipeError):
        while True:
            jobs.send(_done(jobs.recv(), do, our_fault))
    # Nothing is half written any more, and SystemExit raised while Python ends would be printed.
    signal.signal(signal.SIGTERM, signal.SIG_DFL)


def _follow_master() -> None:
    """Have Linux end this process when its parent is killed, even in the middle of a job."""
    with suppress(AttributeError, OSError, TypeError):
        ctypes.CDLL(None).prctl(_PR_SET_PDEATHSIG, signal.SIGTERM)


def _leave(_signal: int, _frame: FrameType | None) -> None:
    # Raised where the code is now, so that a half-written folder is removed on the way out.
    raise SystemExit(1)


def _done(job: Any, do: Do, our_fault: int) -> JobAnswer:
    out, err = StringIO(), StringIO()
    back: list[Any] = []
    with redirect_stdout(out), redirect_stderr(err):
        try:
            code, why = do(job, back.append)
        except Exception as error:  # noqa: BLE001 - the other jobs go on, and this one is told
            code, why = our_fault, f"{type(error).__name__}: {error}"
            sys.stderr.write(f"trimlang: a defect in trimlang itself: {why}\n")
    return JobAnswer(code=code, why=why, out=out.getvalue(), err=err.getvalue(), back=tuple(back))
