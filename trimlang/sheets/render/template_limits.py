"""Keeps a user's template within bounded time and memory.

A sandbox keeps a template away from the machine, not from running on: loops within loops, text
that doubles, numbers to the power of numbers.
"""

from __future__ import annotations

import ctypes
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from threading import Event, Lock, Thread, get_ident
from typing import Any, Final

from jinja2.runtime import Context
from jinja2.sandbox import ImmutableSandboxedEnvironment

MOST_SECONDS: Final = 60.0
"""CPU time for one sheet; the largest of ours takes a tenth of it."""
_MOST_MEMORY: Final = 2**29
"""Bytes that a sheet may take while it is filled, beyond what trimlang has already."""
_MOST_BITS: Final = 1 << 16
"""Bits of a number: Python cannot be stopped within one sum, however long that takes."""
_LOOK: Final = 0.05
"""Seconds between two looks at the clock."""


class TooMuchError(Exception):
    """A template takes too long or makes too much."""

    def __init__(self, wrong: str = "takes too long: it may loop without end") -> None:
        super().__init__(wrong)


class BoundedEnvironment(ImmutableSandboxedEnvironment):
    """jinja2's sandbox, in which no single operation takes for ever."""

    intercepted_binops = frozenset(("*", "**"))

    def __init__(self, *args: Any, **options: Any) -> None:
        super().__init__(*args, **options)
        shipped = self.filters["round"]

        def rounded(value: Any, precision: int = 0, method: Any = "common") -> Any:
            if abs(precision) > _MOST_BITS.bit_length():
                raise TooMuchError("rounds to more places than a number has")
            return shipped(value, precision, method)

        self.filters["round"] = rounded

    def call_binop(self, context: Context, operator: str, left: Any, right: Any) -> Any:
        """Multiply, or take a power; see jinja2."""
        if isinstance(left, int) and isinstance(right, int):
            grows = right if operator == "**" else 1
            if max(left.bit_length(), 1) * max(grows, 0) + right.bit_length() > _MOST_BITS:
                raise TooMuchError("makes a number of too many figures")
        return super().call_binop(context, operator, left, right)


@contextmanager
def bounded(seconds: float) -> Iterator[None]:
    """Stop what runs within this after so many seconds of CPU time, or where it takes too much.

    Raises:
        TooMuchError: it took too long.
        MemoryError: it took too much memory.
    """
    watched, over, closing = get_ident(), Event(), Lock()
    until = time.process_time() + seconds

    def watch() -> None:
        while not over.wait(_LOOK):
            if time.process_time() > until:
                with closing:
                    if not over.is_set():
                        _interrupt(watched, TooMuchError)
                return

    watcher = Thread(target=watch, daemon=True)
    with _bounded_memory():
        watcher.start()
        try:
            yield
        finally:
            with closing:
                over.set()
            # What was sent and has not arrived yet arrives here, as a call begins, and not in the
            # next sheet. (Taking it back instead would leave Python 3.11 looking for it without
            # end wherever calls are traced.)
            watcher.join()


def _interrupt(thread: int, error: type[Exception]) -> None:
    ctypes.pythonapi.PyThreadState_SetAsyncExc(ctypes.c_ulong(thread), ctypes.py_object(error))


@contextmanager
def _bounded_memory() -> Iterator[None]:
    if sys.platform != "linux":  # elsewhere the system does not tell or does not hold the limit
        yield
        return
    from resource import RLIM_INFINITY, RLIMIT_AS, getpagesize, getrlimit, setrlimit

    was = getrlimit(RLIMIT_AS)
    try:
        pages = int(Path("/proc/self/statm").read_text(encoding="ascii").split()[0])
    except OSError:  # a place without /proc
        yield
        return
    most = pages * getpagesize() + _MOST_MEMORY
    lower = [most, *(one for one in was if one != RLIM_INFINITY)]
    setrlimit(RLIMIT_AS, (min(lower), was[1]))
    try:
        yield
    finally:
        setrlimit(RLIMIT_AS, was)
