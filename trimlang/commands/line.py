"""What can be typed, and the exit codes."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Final

from trimlang.version import __version__

CLEAN: Final = 0
JOB_ERRORS: Final = 1
WRONG_USAGE: Final = 2
OUR_FAULT: Final = 3

_EXITS: Final = """\
exit code: 0 clean or warnings only, 1 errors in the job, 2 wrong usage or a file
that cannot be read or written, 3 a defect in trimlang itself
"""


def arguments() -> argparse.ArgumentParser:
    """Return the parser of the command line."""
    parser = argparse.ArgumentParser(
        prog="trimlang",
        description="Compile a job file of interior trim into cut tickets, a stock order"
        " and a checklist.",
        epilog=_EXITS,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--version", action="version", version=f"trimlang {__version__}")
    commands = parser.add_subparsers(dest="command", metavar="COMMAND", required=True)

    build = commands.add_parser(
        "build",
        help="write tickets, stock order, checklist and plan.json into a folder",
        epilog=_EXITS,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    _job(build)
    build.add_argument(
        "--out",
        type=Path,
        metavar="DIR",
        help="the folder to write (default: the job's name and “-sheets”, beside it)",
    )
    build.add_argument(
        "--format",
        action="append",
        choices=("html", "pdf", "json"),
        dest="formats",
        help="what to write; may be given more than once (default: html and pdf; "
        "plan.json is always written)",
    )
    build.add_argument(
        "--paper",
        choices=("letter", "a4"),
        help="paper of the sheets (default: letter, a4 for jobs in millimetres)",
    )
    build.add_argument(
        "--show",
        choices=("in", "mm"),
        help="show lengths in inches or millimetres, whatever the job file is in",
    )
    build.add_argument(
        "--language", default="en", metavar="CODE", help="language of the sheets (en, es)"
    )
    build.add_argument(
        "--ticket",
        metavar="WxH",
        help="print one ticket on each label of this size, such as “100mm x 50mm”",
    )
    build.add_argument(
        "--no-codes", action="store_true", help="print tickets without their QR codes"
    )
    build.add_argument(
        "--plan",
        choices=("full", "quick"),
        default="full",
        help="full looks for a proof that no plan costs less; quick takes the first good one",
    )
    build.add_argument(
        "--plan-seconds",
        type=_seconds,
        default=10.0,
        metavar="N",
        help="the most time for that proof, all trims together (default: 10); "
        "then the best plan is printed with how far from least it can be",
    )
    build.add_argument(
        "--templates",
        type=Path,
        metavar="DIR",
        help="a folder of your own templates, used before the shipped ones",
    )

    check = commands.add_parser("check", help="print what is wrong with a job file, nothing else")
    _job(check)

    explain = commands.add_parser("explain", help="tell more about a diagnostic's code")
    explain.add_argument("code", metavar="CODE", help="such as T301")
    return parser


def _seconds(text: str) -> float:
    seconds = float(text)
    if not 0 < seconds <= 86_400:
        raise ValueError(text)
    return seconds


def _job(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("job", metavar="JOB.trim", help="the job file; - reads standard input")
    parser.add_argument(
        "--messages",
        choices=("text", "json"),
        default="text",
        help="how to write diagnostics to standard error (json: an object a line)",
    )


def run(argv: Sequence[str] | None = None) -> int:
    """Do what the command line asks and return the exit code."""
    options = arguments().parse_args(argv)
    try:
        if options.command == "explain":
            return _explain(options.code)
        from trimlang.commands.jobs import build, check

        return check(options) if options.command == "check" else build(options)
    except KeyboardInterrupt:
        complain("stopped; nothing was written")
        return 130
    except BrokenPipeError:
        return WRONG_USAGE


def complain(text: str) -> None:
    """Write one line to standard error."""
    sys.stderr.write(f"trimlang: {text}\n")


def _explain(code: str) -> int:
    from trimlang.diagnostics.pages import PAGES, page_text

    page = PAGES.get(code.upper())
    if page is None:
        from trimlang.syntax.mistakes import did_you_mean

        listed = f"Codes run from {min(PAGES)} to {max(PAGES)}."
        complain(f"there is no {code}. " + did_you_mean(code.upper(), tuple(PAGES), listed))
        return WRONG_USAGE
    sys.stdout.write(page_text(page))
    return CLEAN
