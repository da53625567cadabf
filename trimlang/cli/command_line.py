"""The commands: each is a module that describes itself (``describe``) and runs (``run``)."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from importlib import import_module
from typing import Final

from trimlang.cli.argument_parser import CommandParser, PlainParser
from trimlang.cli.replies import EXITS
from trimlang.version import __version__

_MODULES: Final = {
    "build": "build_options",
    "check": "check_options",
    "compare": "compare_options",
    "completion": "completion",
    "convert": "convert_options",
    "explain": "explain",
    "mark": "mark_options",
    "schema": "schema",
    "language-server": "language_server",
    "start": "start_options",
    "tidy": "tidy_options",
}
"""The commands and their modules, in the order of the help."""


def arguments(command: str | None = None) -> argparse.ArgumentParser:
    """Return the parser of the command line, or only of ``command`` where that is known."""
    parser = PlainParser(
        prog="trimlang",
        description="Compile a job file of interior trim into cut tickets, a stock order"
        " and a checklist.",
        epilog=EXITS,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--version", action="version", version=f"trimlang {__version__}")
    commands = parser.add_subparsers(
        dest="command",
        metavar="COMMAND",
        required=True,
        parser_class=CommandParser,
        prog=parser.prog,  # else argparse formats the whole usage to find it out
    )
    # A command's help and options are described in its module; only the one asked for is imported.
    for module in [_MODULES[command]] if command in _MODULES else _MODULES.values():
        import_module(f"trimlang.cli.{module}").describe(commands)
    return parser


def run(argv: Sequence[str] | None = None) -> int:
    """Do what the command line asks and return the exit code."""
    words = sys.argv[1:] if argv is None else list(argv)
    # Loading the modules of the other commands would take longer than a whole check.
    asked = arguments(words[0] if words else None).parse_args(words)
    code: int = asked.run(asked)
    return code
