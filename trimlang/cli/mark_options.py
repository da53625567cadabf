"""``trimlang mark``: what is asked of it."""

from __future__ import annotations

from argparse import Namespace
from pathlib import Path

from trimlang.cli.options import MarkOptions
from trimlang.cli.replies import Commands, add_command, messages
from trimlang.diagnostics.message_form import MessageForm


def describe(commands: Commands) -> None:
    """Add the command and its options."""
    mark = add_command(
        commands,
        "mark",
        "write what was done (cut, spoiled, bought, fitted) into the job's log file",
    )
    mark.add_argument("job", metavar="JOB.trim", help="the job file; the log is JOB.site beside it")
    mark.add_argument(
        "lines",
        nargs="*",
        metavar="LINE",
        help="a line of the log, such as “cut ST-N-base”; it is written out in full",
    )
    mark.add_argument(
        "--with",
        action="append",
        default=[],
        dest="others",
        metavar="JOB.trim",
        help="a job that is bought together with it (build --pool); once for each, in the order"
        " in which they are built",
    )
    mark.add_argument(
        "--log",
        type=Path,
        metavar="SITE.site",
        help="the one log of jobs that are bought together",
    )
    mark.add_argument(
        "--from",
        dest="file",
        metavar="FILE",
        help="lines from a file, such as the one that a phone saved",
    )
    mark.add_argument(
        "--undo",
        action="store_true",
        help="take the log's last line out again, and print what it was",
    )
    mark.add_argument(
        "--anyway",
        action="store_true",
        help="write a line that would be asked about: the same as a moment ago, or a stick"
        " that nobody bought or that has no price",
    )
    mark.add_argument(
        "--pin",
        action="store_true",
        help="write the lines that are there already out in full too, in their place",
    )
    messages(mark)
    mark.set_defaults(run=run)


def run(asked: Namespace) -> int:
    """Write what was done into the log; return the exit code."""
    options = MarkOptions(
        job=asked.job,
        others=tuple(asked.others),
        log=asked.log,
        lines=tuple(asked.lines),
        file=asked.file,
        pin=asked.pin,
        undo=asked.undo,
        anyway=asked.anyway,
        messages=MessageForm(asked.messages),
    )
    from trimlang.cli.mark import mark

    return mark(options)
