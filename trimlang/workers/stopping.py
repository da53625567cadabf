"""Stops a command at once on Ctrl-C or when the system asks, whatever it is doing.

While Python code runs, the signal raises ``StoppedError`` right there, and what was begun is
cleaned up on the way out.  A long step inside a library, such as a search of the solver's, does
not notice before it is over; so a thread waits half a second and then ends the process.
Nothing is lost by that: what has been written so far lies in a folder of its own, which the
next build clears away.
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
"""Seconds that a command has to end by itself."""

STOPPED: Final = "stopped; nothing was written"
_SIGNALS: Final = (signal.SIGINT, signal.SIGTERM)
_OVER: Final = b"\0"


class StoppedError(KeyboardInterrupt):
    """The command was told to stop: by which signal (``number``), and whether it was ``done``."""

    def __init__(self, number: int, *, done: bool = False) -> None:
        super().__init__(number)
        self.number = number
        self.done = done


class _Shield:
    """Whether what runs now must not be cut short, as while finished files are put in place."""

    # One for the process, not an argument: the thread that ends the process by force must see
    # it, whatever code is running.
    up = False


@contextmanager
def stoppable(last_words: str = STOPPED) -> Iterator[None]:
    """Stop what is done in here within a second of SIGINT or SIGTERM.

    ``last_words`` are printed where the process has to be ended by force.

    Raises:
        StoppedError: a signal came.
    """
    if current_thread() is not main_thread():
        yield  # Python delivers signals to the main thread only
        return
    # Python writes a byte into this pipe for each signal, from C, even while a library holds the
    # main thread; that is how the thread below hears of it.
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
    """Let what is done in here run to its end; stop only afterwards.

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
    """Handle the signals with ``answer``; one that is ignored, as under nohup, stays ignored."""
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
    """End the process where a signal came and the main thread does not get to handle it."""
    while (sign := os.read(reader, 1)) not in (b"", _OVER):
        if sign[0] not in _SIGNALS or ended.wait(GRACE):
            continue
        # Files are being put in place: wait for that, in short steps, since it may end at any time.
        while _Shield.up:
            if ended.wait(GRACE / 10):
                break
        if not ended.is_set():
            # The progress line hides the cursor, and nobody else will show it again.
            shown = b"\x1b[?25h\n" if sys.stderr.isatty() else b""
            os.write(2, shown + f"trimlang: {last_words}\n".encode())
            # Not sys.exit: that only raises in this thread, and the main one is deep in a library.
            # 128 plus the signal's number is the code that a shell gives a process ended by a
            # signal.
            os._exit(128 + sign[0])
