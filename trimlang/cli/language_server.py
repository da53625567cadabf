"""``trimlang language-server``: answers an editor over standard input and output."""

from __future__ import annotations

from argparse import Namespace

from trimlang.cli.replies import CLEAN, JOB_ERRORS, WRONG_USAGE, Commands, complain
from trimlang.extras import EDITOR


def describe(commands: Commands) -> None:
    """Add the command and its options."""
    server = commands.add_parser(
        "language-server",
        help="answer an editor over standard input and output: mistakes as you type, and more",
    )
    # Many editors' clients add this option by themselves.
    server.add_argument("--stdio", action="store_true", help="what it does anyway")
    server.set_defaults(run=run)


def run(_asked: Namespace) -> int:
    """Serve until the editor exits; return the exit code."""
    try:
        from trimlang.editor.serving import serve
    except ModuleNotFoundError as error:
        # Another module that is missing is a defect, and must not be taken for an extra that was
        # not installed.
        if not EDITOR.lacks(error):
            raise
        complain(EDITOR.remedy())
        return WRONG_USAGE
    return CLEAN if serve() else JOB_ERRORS
