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
    except (KeyboardInterrupt, Exception) as error:  # noqa: BLE001 - the user gets a line
        from trimlang.cli.cut_short import code_of

        return code_of(error)
    else:
        return code


def _open_closed_streams() -> None:
    """Replace standard streams that the caller has closed.

    What is printed to a closed standard output cannot be delivered, and is told so; what is told
    to a closed standard error cannot be told at all.
    """
    if None not in (sys.stdin, sys.stdout, sys.stderr):
        return
    # The next file that is opened would otherwise become the standard stream of that number.
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


__all__ = ["main"]
