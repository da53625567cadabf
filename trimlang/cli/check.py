"""``trimlang check``: what is wrong with job files, nothing else."""

from __future__ import annotations

from argparse import Namespace

from trimlang.cli.replies import Commands, jobs_and_messages


def describe(commands: Commands) -> None:
    """Add the command and its options."""
    check = commands.add_parser("check", help="print what is wrong with job files, nothing else")
    jobs_and_messages(check)
    check.set_defaults(run=run)


def run(options: Namespace) -> int:
    """Check the jobs; return the exit code."""
    if len(options.job_files) > 1:
        from trimlang.cli.many_jobs import check_many

        return check_many(options)
    from trimlang.cli.build import check

    options.job = options.job_files[0]
    return check(options).code
