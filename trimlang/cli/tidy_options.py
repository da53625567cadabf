"""``trimlang tidy``: what is asked of it."""

from __future__ import annotations

from argparse import Namespace
from typing import Final

from trimlang.cli.options import TidyOptions
from trimlang.cli.replies import Commands, add_command, messages
from trimlang.diagnostics.message_form import MessageForm

_EXITS: Final = """\
exit code: 0 the files are tidy now, 1 a line cannot be read (it stays as it is; not
with --print) or, with --check, a file is not tidy, 2 wrong usage or a file that
cannot be read or written
"""


def describe(commands: Commands) -> None:
    """Add the command and its options."""
    tidy = add_command(
        commands,
        "tidy",
        "lay job files out in the one canonical way; what they say and their comments stay",
        _EXITS,
    )
    tidy.add_argument(
        "files",
        metavar="FILE",
        nargs="+",
        help="files to rewrite in place (what they include is left alone);"
        " - reads standard input and prints",
    )
    how = tidy.add_mutually_exclusive_group()
    how.add_argument(
        "--check", action="store_true", help="write nothing; tell which files are not tidy"
    )
    how.add_argument(
        "--print",
        action="store_true",
        dest="printed",
        help="write nothing; print the tidy text (for git: see docs/commands.md)",
    )
    tidy.add_argument(
        "--diff", action="store_true", help="write nothing; show what would change, as a diff"
    )
    tidy.add_argument(
        "--walls",
        choices=("long", "short"),
        help="long: each wall in a line of its own, with both its ends; short: a joint said once,"
        " several walls in a line (default: as they are written)",
    )
    messages(tidy)
    tidy.set_defaults(run=run)


def run(asked: Namespace) -> int:
    """Tidy the files; return the worst exit code of any of them."""
    options = TidyOptions(
        files=tuple(asked.files),
        check=asked.check,
        printed=asked.printed,
        diff=asked.diff,
        walls=asked.walls,
        messages=MessageForm(asked.messages),
    )
    from trimlang.cli.tidy import tidy_files

    return tidy_files(options)
