"""What can be typed: each command is a module that describes itself and runs."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from typing import Final

from trimlang.cli import (
    build_options,
    check,
    compare,
    completion,
    convert,
    explain,
    language_server,
    mark,
    schema,
    start,
    tidy,
)
from trimlang.cli.replies import EXITS
from trimlang.version import __version__

# light modules all: what a command needs is loaded when it runs
_COMMANDS: Final = (
    build_options,
    check,
    compare,
    completion,
    convert,
    explain,
    mark,
    schema,
    language_server,
    start,
    tidy,
)


def arguments() -> argparse.ArgumentParser:
    """Return the parser of the command line."""
    parser = argparse.ArgumentParser(
        prog="trimlang",
        description="Compile a job file of interior trim into cut tickets, a stock order"
        " and a checklist.",
        epilog=EXITS,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--version", action="version", version=f"trimlang {__version__}")
    commands = parser.add_subparsers(dest="command", metavar="COMMAND", required=True)
    for command in _COMMANDS:
        command.describe(commands)
    return parser


def run(argv: Sequence[str] | None = None) -> int:
    """Do what the command line asks and return the exit code."""
    asked = arguments().parse_args(argv)
    code: int = asked.run(asked)
    return code
