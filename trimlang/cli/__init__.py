"""The command line: one module for each command."""

from __future__ import annotations

import atexit
import gc
import io
import os
import sys
from collections.abc import Sequence
from errno import EBADF
from pathlib import Path
from typing import Final

FIRST_FREE: Final = 3
"""The lowest number of a file that is no standard stream."""


def main(argv: Sequence[str] | None = None) -> int:
    """Run trimlang and return its exit code.

    Almost everything that a compiler makes lives until it ends, so collecting garbage while it
    runs, and once more when it stops, only costs time (a tenth of ``trimlang check``).
    """
    # The collector would look often and find nothing (see the docstring).
    gc.set_threshold(300_000, 20, 20)
    # What is left at the end is given back by the system, so a last collection would only delay
    # it.  Not before: whoever gives many commands in one process wants their memory back.
    atexit.unregister(gc.freeze)
    atexit.register(gc.freeze)
    _open_closed_streams()
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            # A terminal that has no arrow or quotation mark in its encoding still gets the rest.
            stream.reconfigure(errors="replace")
    try:
        from trimlang.cli.command_line import run

        try:
            code = run(argv)
        except SystemExit:
            # argparse has printed a help that may not have got out yet
            sys.stdout.flush()
            raise
        if not sys.stdout.closed:  # the language server closes it when its editor exits
            sys.stdout.flush()
    except KeyboardInterrupt as stop:
        return _stopped(stop)
    except OSError as error:
        return _unheard(error)
    except Exception as error:  # noqa: BLE001 - the user gets a line, whatever is wrong
        return _our_fault(error)
    else:
        return code


def _open_closed_streams() -> None:
    """Replace standard streams that the caller has closed.

    What is printed to a closed standard output cannot be delivered, and is told so; what is told
    to a closed standard error cannot be told at all.
    """
    if None not in (sys.stdin, sys.stdout, sys.stderr):
        return
    # else the next file that is opened would be the standard stream of that number
    while os.open(os.devnull, os.O_RDWR) < FIRST_FREE:
        pass
    if sys.stdout is None:
        sys.stdout = io.TextIOWrapper(_ClosedStream(), "utf-8", write_through=True)
    if sys.stderr is None:
        sys.stderr = Path(os.devnull).open("w", encoding="utf-8")  # noqa: SIM115 - until the end


class _ClosedStream(io.BufferedIOBase):
    """A standard output that the caller has closed: nothing can be written to it."""

    def writable(self) -> bool:
        return True

    def write(self, data: object) -> int:  # noqa: ARG002 - as the base class calls it
        raise OSError(EBADF, "standard output is closed")


def _stopped(stop: KeyboardInterrupt) -> int:
    from signal import SIGINT

    from trimlang.cli.replies import complain
    from trimlang.workers.stopping import STOPPED, StoppedError

    done = isinstance(stop, StoppedError) and stop.done
    complain("stopped; the sheets were written before" if done else STOPPED)
    return 128 + (stop.number if isinstance(stop, StoppedError) else SIGINT)


def _our_fault(error: Exception) -> int:
    from trimlang.cli.replies import OUR_FAULT, complain

    # For whoever mends trimlang; a carpenter has no use for a traceback.
    if os.environ.get("TRIMLANG_TRACEBACK"):
        import traceback

        traceback.print_exception(error)
    complain(
        f"a defect in trimlang itself, so nothing is written ({type(error).__name__}: {error});"
        " please report it with the job file"
    )
    return OUR_FAULT


def _unheard(error: OSError) -> int:
    """Report that the output cannot be written: its reader has gone, or the disk is full."""
    from trimlang.cli.replies import WRONG_USAGE, complain, drop_output

    drop_output()
    # A reader that has seen enough, as `head` has, is no mistake to report.
    if not isinstance(error, BrokenPipeError):
        complain(f"reading or writing failed: {(error.strerror or str(error)).lower()}")
    return WRONG_USAGE


__all__ = ["main"]
