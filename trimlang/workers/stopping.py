"""Stops a command at once when it is told to, with Ctrl-C or by the system, wherever it is.

Where Python runs, the signal raises ``StoppedError`` there and then, and what was
begun is tidied up on the way out.  A long step inside a library, such as a search
of the solver's, hears nothing of that until it is over; so a thread waits half a
second and then ends the process.  Nothing is lost by that: what has been written
so far lies in a folder of its own, which the next build clears away.
"""

from __future__ import annotations

import os
import signal
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from threading import Event, Thread, current_thread, main_thread
from types import FrameType
from typing import Any, Final, NoReturn

GRACE: Final = 0.5
"""Seconds in which a command may end by itself."""

STOPPED: Final = "stopped; nothing was written"
_SIGNALS: Final = (signal.SIGINT, signal.SIGTERM)
_OVER: Final = b"\0"


class StoppedError(KeyboardInterrupt):
    """The command was told to stop: by which signal, and whether its work was done by then."""

    def __init__(self, number: int, *, done: bool = False) -> None:
        super().__init__(number)
        self.number = number
        self.done = done


class _Shield:
    """Whether what runs now must run to its end."""

    up = False


@contextmanager
def stoppable(last_words: str = STOPPED) -> Iterator[None]:
    """Stop what is done in here within a second of SIGINT or SIGTERM.

    ``last_words`` are told where it has to be ended by force.

    Raises:
        StoppedError: a signal came.
    """
    if current_thread() is not main_thread():
        yield  # signals are the main thread's affair
        return
    reader, writer = os.pipe()
    os.set_blocking(writer, False)
    ended = Event()
    thread = Thread(target=_end_anyway, args=(reader, ended, last_words), daemon=True)
    thread.start()
    before = signal.set_wakeup_fd(writer, warn_on_full_buffer=False)
    try:
        with _answered(_stop):
            yield
    finally:
        ended.set()
        signal.set_wakeup_fd(before)
        os.write(writer, _OVER)
        thread.join()
        os.close(writer)
        os.close(reader)


@contextmanager
def to_the_end() -> Iterator[None]:
    """Let what is done in here run to its end, and stop only then.

    Raises:
        StoppedError: a signal came meanwhile.
    """
    if current_thread() is not main_thread():
        yield
        return
    came: list[int] = []
    with _answered(lambda number, _frame: came.append(number)):
        _Shield.up = True
        try:
            yield
        finally:
            _Shield.up = False
    if came:
        raise StoppedError(came[0], done=True)


@contextmanager
def _answered(answer: Any) -> Iterator[None]:
    """Answer the signals in this way; one that is ignored, as under nohup, stays ignored."""
    heard = [number for number in _SIGNALS if signal.getsignal(number) != signal.SIG_IGN]
    before = [(number, signal.signal(number, answer)) for number in heard]
    try:
        yield
    finally:
        for number, was in before:
            signal.signal(number, was)


def _stop(number: int, _frame: FrameType | None) -> NoReturn:
    raise StoppedError(number)


def _end_anyway(reader: int, ended: Event, last_words: str) -> None:
    """End the process where a signal has come and the main thread does not hear it."""
    while (sign := os.read(reader, 1)) not in (b"", _OVER):
        if sign[0] not in _SIGNALS or ended.wait(GRACE):
            continue
        while _Shield.up:
            if ended.wait(GRACE / 10):
                break
        if not ended.is_set():
            # the progress line hides the cursor
            shown = b"\x1b[?25h\n" if sys.stderr.isatty() else b""
            os.write(2, shown + f"trimlang: {last_words}\n".encode())
            os._exit(128 + sign[0])
