"""``trimlang convert``: what is asked of it."""

from __future__ import annotations

from argparse import Namespace
from pathlib import Path

from trimlang.cli.options import ConvertOptions
from trimlang.cli.replies import Commands, messages
from trimlang.diagnostics.message_form import MessageForm


def describe(commands: Commands) -> None:
    """Add the command and its options."""
    convert = commands.add_parser(
        "convert", help="make a job file of a survey in CSV, or a table of a job file"
    )
    convert.add_argument(
        "source", type=Path, metavar="FROM", help="SURVEY.csv, or JOB.trim for the way back"
    )
    convert.add_argument(
        "target",
        type=Path,
        nargs="?",
        metavar="TO",
        help="the file to write (default, or -: standard output)",
    )
    convert.add_argument(
        "--include",
        metavar="FILE.trim",
        help="have the job file include this one, which says the trims and their prices",
    )
    convert.add_argument(
        "--force", action="store_true", help="write TO even where there is such a file already"
    )
    messages(convert)
    convert.set_defaults(run=run)


def run(asked: Namespace) -> int:
    """Convert the file; return the exit code."""
    options = ConvertOptions(
        source=asked.source,
        target=None if str(asked.target) == "-" else asked.target,
        include=asked.include,
        force=asked.force,
        messages=MessageForm(asked.messages),
    )
    from trimlang.cli.convert import convert

    return convert(options)
