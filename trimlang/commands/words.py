"""What every command shares: the exit codes, the job's argument, how a line is complained."""

from __future__ import annotations

import argparse
import sys
from typing import Final, TypeAlias

Commands: TypeAlias = "argparse._SubParsersAction[argparse.ArgumentParser]"

CLEAN: Final = 0
JOB_ERRORS: Final = 1
WRONG_USAGE: Final = 2
OUR_FAULT: Final = 3

STDIN: Final = "<stdin>"
"""What messages call standard input."""

EXITS: Final = """\
exit code: 0 clean or warnings only, 1 errors in the job, 2 wrong usage or a file
that cannot be read or written, 3 a defect in trimlang itself
"""


def job_and_messages(parser: argparse.ArgumentParser) -> None:
    """Add the job file and how its diagnostics are written."""
    parser.add_argument("job", metavar="JOB.trim", help="the job file; - reads standard input")
    messages(parser)


def messages(parser: argparse.ArgumentParser) -> None:
    """Add how diagnostics are written."""
    parser.add_argument(
        "--messages",
        choices=("text", "json"),
        default="text",
        help="how to write diagnostics to standard error (json: an object a line)",
    )


def complain(text: str) -> None:
    """Write one line to standard error."""
    sys.stderr.write(f"trimlang: {text}\n")
