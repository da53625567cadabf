"""``trimlang start``: writes a commented job file to begin from."""

from __future__ import annotations

import sys
from argparse import Namespace
from pathlib import Path

from trimlang.cli.options import StartOptions
from trimlang.cli.replies import CLEAN, WRONG_USAGE, Commands, complain, tell_done


def describe(commands: Commands) -> None:
    """Add the command and its options."""
    start = commands.add_parser(
        "start", help="write a commented job file to begin from; never over one that is there"
    )
    start.add_argument(
        "file",
        metavar="FILE",
        nargs="?",
        default="job.trim",
        help="the file to write (default: job.trim); - prints it",
    )
    start.add_argument(
        "--metric", action="store_true", help="in millimetres instead of feet and inches"
    )
    start.set_defaults(run=run)


def run(asked: Namespace) -> int:
    """Write the file; return the exit code."""
    from datetime import date

    from trimlang.output.one_file import new_file

    options = StartOptions(file=asked.file, metric=asked.metric)
    path = Path(options.file)
    if options.file != "-" and not path.suffix:
        path = path.with_suffix(".trim")
    # Local time, not UTC: a survey is dated where it is made.
    today = date.today().isoformat()
    data = first_file("New job" if options.file == "-" else path.stem, today, options.metric)
    if options.file == "-":
        sys.stdout.flush()
        sys.stdout.buffer.write(data.encode("utf-8"))
        sys.stdout.buffer.flush()
        return CLEAN
    try:
        new_file(path, data.encode("utf-8"))
    except FileExistsError:
        complain(f"{path} is there already; name another file")
        return WRONG_USAGE
    except (OSError, ValueError) as error:
        complain(f"cannot write {path}: {(getattr(error, 'strerror', None) or str(error)).lower()}")
        return WRONG_USAGE
    tell_done(f"{path} is written; put your own walls into it, then: trimlang check {path}\n", path)
    return CLEAN


def first_file(name: str, today: str, metric: bool) -> str:
    """Return the text of a job named after the file ``name``, surveyed on ``today``."""
    from trimlang.resources import folder

    shipped = folder("templates") / "start" / ("metric.trim" if metric else "inch.trim")
    called = "".join(sign for sign in name if sign.isprintable() and sign not in '"“”')
    called = " ".join(called.replace("-", " ").replace("_", " ").split()) or "New job"
    text = shipped.read_text(encoding="utf-8")
    return text.replace("New job", called, 1).replace("2026-01-01", today, 1)
