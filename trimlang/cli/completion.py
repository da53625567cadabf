"""``trimlang completion``: a script for the shell that completes what is typed."""

from __future__ import annotations

import argparse
import sys
from argparse import Namespace
from typing import Any, Final

from trimlang.cli.replies import CLEAN, Commands

SHELLS: Final = ("bash", "zsh", "fish", "tcsh", "powershell")

_JOBS: Final = {
    "bash": "_trimlang_jobs",
    "zsh": "_files -g '*.trim'",
    "tcsh": "f:*.trim",
}
_PREAMBLE: Final = {
    "bash": """\
# job files, and the folders on the way to them
_trimlang_jobs() {
  compgen -f -X '!*.trim' -- "$1"
  compgen -d -- "$1"
}
"""
}
_JOB_ARGUMENTS: Final = frozenset({"JOB.trim", "OLD.trim", "NEW.trim"})


def describe(commands: Commands) -> None:
    """Add the command and its options."""
    completion = commands.add_parser(
        "completion", help="print a script that completes commands, options and job files"
    )
    completion.add_argument("shell", choices=SHELLS, help="the shell to complete in")
    completion.set_defaults(run=run)


def run(asked: Namespace) -> int:
    """Print the script; return the exit code."""
    from trimlang.cli.command_line import arguments

    sys.stdout.write(script(arguments(), asked.shell))
    return CLEAN


def script(parser: argparse.ArgumentParser, shell: str) -> str:
    """Return the completion script of a parser for one of ``SHELLS``."""
    import shtab

    files: dict[str, Any] = dict(shtab.FILE)
    _mark(parser, files | _JOBS, files, dict(shtab.DIRECTORY))
    text: str = shtab.complete(parser, shell, preamble=_PREAMBLE)  # type: ignore[arg-type]
    return f"{text.rstrip()}\n"


def _mark(
    parser: argparse.ArgumentParser,
    jobs: dict[str, Any],
    files: dict[str, Any],
    folders: dict[str, Any],
) -> None:
    """Mark each argument that is a file or folder, by its name in the help."""
    # argparse has no public list of its arguments.
    for action in parser._actions:
        if isinstance(action, argparse._SubParsersAction):
            for command in action.choices.values():
                _mark(command, jobs, files, folders)
        elif action.metavar in _JOB_ARGUMENTS or (action.metavar == "FILE" and _is_job(action)):
            action.complete = jobs  # type: ignore[attr-defined]
        elif action.metavar == "FILE":
            action.complete = files  # type: ignore[attr-defined]
        elif action.metavar == "DIR":
            action.complete = folders  # type: ignore[attr-defined]


def _is_job(action: argparse.Action) -> bool:
    return not action.option_strings
