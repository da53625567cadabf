"""``trimlang schema``: the JSON Schema of plan.json."""

from __future__ import annotations

import sys
from argparse import Namespace

from trimlang.cli.replies import CLEAN, Commands


def describe(commands: Commands) -> None:
    """Add the command."""
    schema = commands.add_parser("schema", help="print the JSON Schema of plan.json")
    schema.set_defaults(run=run)


def run(_asked: Namespace) -> int:
    """Print the schema; return the exit code."""
    from importlib.resources import files

    text = (files("trimlang") / "sheets" / "export" / "plan.schema.json").read_text(
        encoding="utf-8"
    )
    sys.stdout.write(text)
    return CLEAN
