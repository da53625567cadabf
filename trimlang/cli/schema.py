"""``trimlang schema``: prints the JSON Schema of plan.json."""

from __future__ import annotations

import json
import sys
from argparse import Namespace

from trimlang.cli.replies import CLEAN, Commands


def describe(commands: Commands) -> None:
    """Add the command."""
    schema = commands.add_parser("schema", help="print the JSON Schema of plan.json")
    schema.set_defaults(run=run)


def run(_asked: Namespace) -> int:
    """Print the schema; return the exit code."""
    from trimlang.sheets.export.plan_file import schema

    sys.stdout.write(json.dumps(schema(), ensure_ascii=False, indent=1) + "\n")
    return CLEAN
