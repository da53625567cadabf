"""``trimlang compare``: what is asked of it."""

from __future__ import annotations

from argparse import Namespace
from pathlib import Path
from typing import Final

from trimlang.cli.options import CompareOptions, ComparisonForm, PlanOptions, Search
from trimlang.cli.replies import Commands, add_command, messages
from trimlang.diagnostics.message_form import MessageForm
from trimlang.sheets.render.paper import PAPERS

_EXITS: Final = """\
exit code: 0 both versions were compared, 1 errors in one of them, 2 wrong usage or a
file or revision that cannot be read, 3 a defect in trimlang itself, 4 they differ
(only with --exit-code)
"""


def describe(commands: Commands) -> None:
    """Add the command and its options."""
    compare = add_command(
        commands,
        "compare",
        "tell what has changed between two versions: pieces, tickets, order, cost",
        _EXITS,
    )
    compare.add_argument(
        "old", metavar="OLD.trim", help="the older job file; with --git, the one job file"
    )
    compare.add_argument(
        "new", metavar="NEW.trim", nargs="?", help="the newer job file; - reads standard input"
    )
    compare.add_argument(
        "--git",
        metavar="REV",
        dest="revision",
        help="compare the job file as it is with what it was, and what it included,"
        " at this git revision",
    )
    compare.add_argument(
        "--cut",
        metavar="ID,ID",
        action="append",
        default=[],
        help="pieces that are cut already, besides those that a site log tells of; tells which"
        " of them are wrong now",
    )
    compare.add_argument(
        "--form", choices=tuple(ComparisonForm), default=ComparisonForm.TEXT, help="how to tell it"
    )
    compare.add_argument(
        "--out",
        type=Path,
        metavar="FILE",
        help="write to this file instead of standard output, which - means too",
    )
    compare.add_argument(
        "--force", action="store_true", help="write FILE even where there is such a file already"
    )
    compare.add_argument(
        "--paper", choices=tuple(PAPERS), help="paper of the HTML page, as for build"
    )
    compare.add_argument(
        "--plan",
        choices=tuple(Search),
        default=Search.FULL,
        help="how hard to look for the least cost, as for build",
    )
    compare.add_argument(
        "--exit-code", action="store_true", help="end with code 4 where the versions differ"
    )
    messages(compare)
    compare.set_defaults(run=run)


def run(asked: Namespace) -> int:
    """Compare the two versions; return the exit code."""
    options = CompareOptions(
        old=asked.old,
        new=asked.new,
        revision=asked.revision,
        cut=tuple(asked.cut),
        form=ComparisonForm(asked.form),
        out=None if str(asked.out) == "-" else asked.out,
        paper=asked.paper,
        plan=PlanOptions(search=Search(asked.plan)),
        force=asked.force,
        exit_code=asked.exit_code,
        messages=MessageForm(asked.messages),
    )
    from trimlang.cli.compare import compare_versions

    return compare_versions(options)
