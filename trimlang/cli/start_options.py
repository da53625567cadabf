"""``trimlang start``: what is asked of it."""

from __future__ import annotations

from argparse import Namespace

from trimlang.cli.options import StartOptions
from trimlang.cli.replies import Commands


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
    start.add_argument(
        "--room",
        metavar="NAME",
        help="add a room of that name to FILE, which is there, with walls to be replaced",
    )
    start.set_defaults(run=run)


def run(asked: Namespace) -> int:
    """Write the file; return the exit code."""
    from trimlang.cli.start import start

    return start(StartOptions(file=asked.file, metric=asked.metric, room=asked.room))
