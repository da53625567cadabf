"""``trimlang check``: what is asked of it."""

from __future__ import annotations

from argparse import Namespace

from trimlang.cli.replies import Commands, MessageOptions, jobs_and_messages
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
    jobs, form = tuple(asked.job_files), MessageForm(asked.messages)
    # One job, as most are, needs nothing of what is for several.
    if len(jobs) > 1:
        from trimlang.cli.many_checked import check_many

        return check_many(jobs, form)
    from trimlang.cli.check import check

    return check(jobs[0], MessageOptions(form=form)).code
