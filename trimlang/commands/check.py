"""``trimlang check``: what is wrong with a job file, nothing else."""

from __future__ import annotations

from argparse import Namespace

from trimlang.commands.words import Commands, job_and_messages


def describe(commands: Commands) -> None:
    """Add the command and its options."""
    check = commands.add_parser("check", help="print what is wrong with a job file, nothing else")
    job_and_messages(check)
    check.set_defaults(run=run)


def run(options: Namespace) -> int:
    """Check the job; return the exit code."""
    from trimlang.commands.jobs import check

    return check(options)
