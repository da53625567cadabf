"""The command line: a module a command."""

from __future__ import annotations

import gc
import io
import sys
from collections.abc import Sequence


def main(argv: Sequence[str] | None = None) -> int:
    """Run trimlang and return its exit code.

    What a compiler makes lives until it ends, so looking for garbage while it
    starts and when it stops only costs time (a tenth of ``trimlang check``).
    """
    gc.set_threshold(100_000, 20, 20)
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            # a terminal without the sign for an arrow or a quote still gets the rest
            stream.reconfigure(errors="replace")
    from trimlang.commands.line import run

    try:
        return run(argv)
    finally:
        gc.freeze()


__all__ = ["main"]
