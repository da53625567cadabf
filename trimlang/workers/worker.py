"""One process of a crew: builds the jobs that it is handed, one at a time."""

from __future__ import annotations

import ctypes
import gc
import json
import os
import signal
import sys
from argparse import Namespace
from contextlib import redirect_stderr, redirect_stdout, suppress
from io import StringIO
from pathlib import Path
from types import FrameType
from typing import Any, Final, TextIO

from trimlang.cli.replies import OUR_FAULT

_TOLD_OF_DEATH: Final = 1  # PR_SET_PDEATHSIG


class _Page(StringIO):
    """Keeps what is printed; coloured where it will be shown on a terminal."""

    def __init__(self, *, terminal: bool) -> None:
        super().__init__()
        self._terminal = terminal

    def isatty(self) -> bool:
        return self._terminal


def task(options: Namespace, **own: object) -> dict[str, Any]:
    """Return the options of a build as plain data, with what is one job's own."""
    said = {**vars(options), **own}
    plain = {
        name: str(value) if isinstance(value, Path) else value
        for name, value in said.items()
        if isinstance(value, str | int | float | list | Path | None) and name != "job_files"
    }
    paths = [name for name, value in said.items() if isinstance(value, Path)]
    return {"options": plain, "paths": paths}


def work() -> None:
    """Do tasks from standard input until it ends."""
    # Ctrl-C is the master's to answer: it ends us with the other signal
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    signal.signal(signal.SIGTERM, _leave)
    _follow_master()
    gc.set_threshold(100_000, 20, 20)
    answers = os.fdopen(os.dup(1), "w", encoding="utf-8", errors="surrogateescape")
    # whatever prints where it should not must not come between the answers
    os.dup2(2, 1)
    tasks = os.fdopen(os.dup(0), encoding="utf-8", errors="surrogateescape")
    _serve(tasks, answers)
    # nothing is half written any more, and what is raised while Python ends is printed
    signal.signal(signal.SIGTERM, signal.SIG_DFL)


def _follow_master() -> None:
    """Have the system end us when the master is killed, in the middle of a job too (Linux)."""
    with suppress(AttributeError, OSError, TypeError):
        ctypes.CDLL(None).prctl(_TOLD_OF_DEATH, signal.SIGTERM)


def _serve(tasks: TextIO, answers: TextIO) -> None:
    for line in tasks:
        answer = _done(json.loads(line))
        try:
            answers.write(json.dumps(answer) + "\n")
            answers.flush()
        except BrokenPipeError:
            return


def _leave(_signal: int, _frame: FrameType | None) -> None:
    # raised where we are, so that a half-written folder is taken away on the way out
    raise SystemExit(1)


def _done(asked: dict[str, Any]) -> dict[str, Any]:
    from trimlang.cli.build import Outcome, build

    options = Namespace(**asked["options"])
    for name in asked["paths"]:
        setattr(options, name, Path(getattr(options, name)))
    out, err = _Page(terminal=False), _Page(terminal=options.colour)
    with redirect_stdout(out), redirect_stderr(err):
        try:
            outcome = build(options)
        except Exception as error:  # noqa: BLE001 - the other jobs go on, and this one is told
            outcome = Outcome(OUR_FAULT, f"{type(error).__name__}: {error}")
            sys.stderr.write(f"trimlang: a defect in trimlang itself: {outcome.why}\n")
    return {
        "code": outcome.code,
        "why": outcome.why,
        "out": out.getvalue(),
        "err": err.getvalue(),
    }
