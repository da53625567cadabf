"""What all commands share: exit codes, common arguments, and how a complaint is printed."""

from __future__ import annotations

import argparse
import os
import sys
from contextlib import suppress
from pathlib import Path
from typing import Final, TypeAlias

from trimlang.diagnostics.message_form import MessageForm
from trimlang.letters import printable
from trimlang.record import record

Commands: TypeAlias = "argparse._SubParsersAction[argparse.ArgumentParser]"

CLEAN: Final = 0
JOB_ERRORS: Final = 1
WRONG_USAGE: Final = 2
OUR_FAULT: Final = 3

STDIN: Final = "<stdin>"
"""The name of standard input in messages."""

EXITS: Final = """\
exit code: 0 clean or warnings only, 1 errors in the job, 2 wrong usage or a file
that cannot be read or written, 3 a defect in trimlang itself
"""


@record
class MessageOptions:
    """How a job's diagnostics are printed.

    ``folder`` is put before each file's name, where several jobs are done in one call.
    """

    form: MessageForm = MessageForm.TEXT
    folder: str = ""


def add_command(
    commands: Commands, name: str, what: str, exits: str = EXITS
) -> argparse.ArgumentParser:
    """Add a command whose help ends with its exit codes, and return its parser."""
    return commands.add_parser(
        name, help=what, epilog=exits, formatter_class=argparse.RawDescriptionHelpFormatter
    )


def jobs_and_messages(parser: argparse.ArgumentParser) -> None:
    """Add the arguments for job files and for how their diagnostics are printed."""
    parser.add_argument(
        "job_files",
        nargs="+",
        metavar="JOB.trim",
        help="a job file, or several; - alone reads standard input",
    )
    messages(parser)


def messages(parser: argparse.ArgumentParser) -> None:
    """Add the option for how diagnostics are printed."""
    parser.add_argument(
        "--messages",
        choices=tuple(MessageForm),
        default=MessageForm.TEXT,
        help="how to write diagnostics to standard error (json: an object a line)",
    )


def complain(text: str) -> None:
    """Print one line to standard error, safe for a terminal whatever names are in it."""
    # If even standard error cannot be written, there is no place left to say so.
    with suppress(OSError):
        sys.stderr.write(f"trimlang: {printable(text)}\n")


def print_whole(text: str) -> None:
    """Print what a command made, such as a job file or a report, in UTF-8.

    The terminal's own encoding may lack an arrow, and what is redirected into a file is UTF-8.
    """
    sys.stdout.flush()
    sys.stdout.buffer.write(text.encode("utf-8"))
    sys.stdout.buffer.flush()


def tell_done(text: str, written: Path | str) -> None:
    """Print what was done to a file or folder; where that fails, say that it is done all the same.

    Who hears only that something failed would do it again, and a line would stand twice in a log.
    """
    try:
        sys.stdout.write(text)
        sys.stdout.flush()
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        complain(f"{written} is written, and only this could not be printed: {reason}")
        drop_output()


def drop_output() -> None:
    """Let go of what could not be printed: it would fail once more when Python ends."""
    with suppress(OSError, ValueError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
