"""What is told, and which code a command ends with, where it did not come to its end."""

from __future__ import annotations

import os
import traceback
from signal import SIGINT

from trimlang.cli.replies import OUR_FAULT, WRONG_USAGE, complain, drop_output
from trimlang.workers.stopping import STOPPED, StoppedError


def code_of(error: BaseException) -> int:
    """Tell in one line what cut a command short; return its exit code."""
    if isinstance(error, KeyboardInterrupt):
        return _stopped(error)
    if isinstance(error, OSError):
        return _unheard(error)
    return _our_fault(error)


def _stopped(stop: KeyboardInterrupt) -> int:
    done = isinstance(stop, StoppedError) and stop.done
    complain("stopped; the sheets were written before" if done else STOPPED)
    return 128 + (stop.number if isinstance(stop, StoppedError) else SIGINT)


def _our_fault(error: BaseException) -> int:
    # For whoever mends trimlang; a carpenter has no use for a traceback.
    if os.environ.get("TRIMLANG_TRACEBACK"):
        traceback.print_exception(error)
    complain(
        f"a defect in trimlang itself, so nothing is written ({type(error).__name__}: {error});"
        " please report it with the job file"
    )
    return OUR_FAULT


def _unheard(error: OSError) -> int:
    """Report that the output cannot be written: its reader has gone, or the disk is full."""
    drop_output()
    # A reader that has seen enough, as `head` has, is no mistake to report.
    if not isinstance(error, BrokenPipeError):
        complain(f"reading or writing failed: {(error.strerror or str(error)).lower()}")
    return WRONG_USAGE
