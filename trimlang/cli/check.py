"""``trimlang check``: what is wrong with job files, and how their rooms close."""

from __future__ import annotations

from argparse import Namespace

from trimlang.cli.options import CheckOptions, MessageOptions
from trimlang.cli.replies import Commands, jobs_and_messages
from trimlang.diagnostics.message_form import MessageForm


def describe(commands: Commands) -> None:
    """Add the command and its options."""
    check = commands.add_parser(
        "check", help="print what is wrong with job files and how their rooms close; write nothing"
    )
    jobs_and_messages(check)
    check.set_defaults(run=run)


def run(asked: Namespace) -> int:
    """Check the jobs; return the exit code."""
    options = CheckOptions(jobs=tuple(asked.job_files), messages=MessageForm(asked.messages))
    if len(options.jobs) > 1:
        from trimlang.cli.many_jobs import check_many

        return check_many(options)
    from trimlang.cli.build import check

    return check(options.jobs[0], MessageOptions(form=options.messages)).code
