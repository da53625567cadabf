"""The command line: one module for each command."""

from __future__ import annotations

import gc
import io
import os
import sys
from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path
from signal import SIGINT


def main(argv: Sequence[str] | None = None) -> int:
    """Run trimlang and return its exit code.

    Almost everything that a compiler makes lives until it ends, so collecting garbage while it
    runs, and once more when it stops, only costs time (a tenth of ``trimlang check``).
    """
    gc.set_threshold(100_000, 20, 20)
    _open_closed_streams()
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            # A terminal that has no arrow or quotation mark in its encoding still gets the rest.
            stream.reconfigure(errors="replace")
    try:
        from trimlang.cli.command_line import run

        code = run(argv)
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
    finally:
        gc.freeze()


def _open_closed_streams() -> None:
    """Replace standard streams that the caller has closed by ones that write nowhere."""
    for name in ("stdout", "stderr"):
        if getattr(sys, name) is None:
            nowhere = Path(os.devnull).open("w", encoding="utf-8")  # noqa: SIM115 - until the end
            setattr(sys, name, nowhere)


def _stopped(stop: KeyboardInterrupt) -> int:
    from trimlang.cli.replies import complain
    from trimlang.workers.stopping import STOPPED, StoppedError

    done = isinstance(stop, StoppedError) and stop.done
    complain("stopped; the sheets were written before" if done else STOPPED)
    return 128 + (stop.number if isinstance(stop, StoppedError) else SIGINT)


def _our_fault(error: Exception) -> int:
    from trimlang.cli.replies import OUR_FAULT, complain

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
    from trimlang.cli.replies import WRONG_USAGE, complain

    # What is left in the buffer would fail once more when Python flushes it at its end.
    with suppress(OSError, ValueError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    if not isinstance(error, BrokenPipeError):
        complain(f"reading or writing failed: {(error.strerror or str(error)).lower()}")
    return WRONG_USAGE


__all__ = ["main"]
