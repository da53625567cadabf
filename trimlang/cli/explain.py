"""``trimlang explain``: prints the page of a diagnostic's code."""

from __future__ import annotations

import sys
from argparse import Namespace

from trimlang.cli.replies import CLEAN, WRONG_USAGE, Commands, complain


def describe(commands: Commands) -> None:
    """Add the command and its options."""
    explain = commands.add_parser("explain", help="tell more about a diagnostic's code")
    explain.add_argument("code", metavar="CODE", help="such as T301")
    explain.set_defaults(run=run)


def run(asked: Namespace) -> int:
    """Print the code's page; return the exit code."""
    from trimlang.diagnostics.code_pages import PAGES, page_text

    code: str = asked.code
    page = PAGES.get(code.upper())
    if page is None:
        from trimlang.diagnostics.suggestion import did_you_mean

        listed = f"Codes run from {min(PAGES)} to {max(PAGES)}."
        near = did_you_mean(code.upper(), tuple(PAGES), listed)
        complain(f"there is no {code}. {near}")
        return WRONG_USAGE
    sys.stdout.write(page_text(page))
    return CLEAN
