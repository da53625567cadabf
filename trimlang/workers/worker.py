"""One process of several: builds the jobs that it is handed, one at a time."""

from __future__ import annotations

import ctypes
import gc
import os
import signal
import sys
from contextlib import redirect_stderr, redirect_stdout, suppress
from io import StringIO
from typing import TYPE_CHECKING, Any, Final, Protocol, TypeAlias

from trimlang.record import record

if TYPE_CHECKING:
    from collections.abc import Callable
    from multiprocessing.connection import Connection
    from types import FrameType

_TOLD_OF_DEATH: Final = 1  # PR_SET_PDEATHSIG


class HandedJob(Protocol):
    """What a process is handed: a value that can be sent, of whatever kind the work is of."""

    @property
    def colour(self) -> bool:
        """Whether what is printed will be shown on a terminal."""
        ...


Do: TypeAlias = "Callable[[Any], tuple[int, str]]"
"""Does one job, prints what there is to say, and returns the exit code and the reason."""


@record
class JobAnswer:
    """How a job went: exit code, the reason in a line, and what was printed."""

    code: int
    why: str
    out: str
    err: str


class _Printed(StringIO):
    """Keeps what is printed; coloured where it will be shown on a terminal."""

    def __init__(self, *, terminal: bool) -> None:
        super().__init__()
        self._terminal = terminal

    def isatty(self) -> bool:
        return self._terminal


def work(jobs: Connection, do: Do, our_fault: int) -> None:
    """Do jobs and send their answers back until the pipe is closed.

    ``our_fault`` is the exit code where ``do`` fails in a way that it does not know itself.
    """
    # Ctrl-C is the master's to answer: it ends us with the other signal
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    signal.signal(signal.SIGTERM, _leave)
    _follow_master()
    gc.set_threshold(100_000, 20, 20)
    # what a library prints on its own is no answer of ours
    os.dup2(2, 1)
    # the master is gone, or wants no more
    with suppress(EOFError, BrokenPipeError):
        while True:
            jobs.send(_done(jobs.recv(), do, our_fault))
    # nothing is half written any more, and what is raised while Python ends is printed
    signal.signal(signal.SIGTERM, signal.SIG_DFL)


def _follow_master() -> None:
    """Have the system end us when the master is killed, in the middle of a job too (Linux)."""
    with suppress(AttributeError, OSError, TypeError):
        ctypes.CDLL(None).prctl(_TOLD_OF_DEATH, signal.SIGTERM)


def _leave(_signal: int, _frame: FrameType | None) -> None:
    # raised where we are, so that a half-written folder is taken away on the way out
    raise SystemExit(1)


def _done(job: HandedJob, do: Do, our_fault: int) -> JobAnswer:
    out, err = _Printed(terminal=False), _Printed(terminal=job.colour)
    with redirect_stdout(out), redirect_stderr(err):
        try:
            code, why = do(job)
        except Exception as error:  # noqa: BLE001 - the other jobs go on, and this one is told
            code, why = our_fault, f"{type(error).__name__}: {error}"
            sys.stderr.write(f"trimlang: a defect in trimlang itself: {why}\n")
    return JobAnswer(code=code, why=why, out=out.getvalue(), err=err.getvalue())
