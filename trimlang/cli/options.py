"""What each command is asked to do, as frozen values.

The argument parser's own object has no types and can be changed, so it goes no further than each
command's ``run``, which makes one of these records from it.
"""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path

from trimlang.cli.replies import MessageOptions
from trimlang.diagnostics.message_form import MessageForm
from trimlang.output.sheet_options import SheetOptions
from trimlang.record import record


class Search(StrEnum):
    """How hard to look for the least cost."""

    FULL = "full"
    QUICK = "quick"


@record
class PlanOptions:
    """How hard to look for the least cost, and for how many seconds of CPU time at most."""

    search: Search = Search.FULL
    seconds: float = 10.0


@record
class BuildOptions:
    """``trimlang build``: the job files, and what is the same for all of them.

    out: the folder to write; None means one beside each job.
    at_once: how many jobs are built at the same time; None means one for each core.
    pool: whether the jobs are bought together.
    log: the site's log of jobs that are bought together, or None.
    watch: whether the job is built again at every save.
    """

    jobs: tuple[str, ...]
    messages: MessageForm
    out: Path | None
    at_once: int | None
    pool: bool
    log: Path | None
    watch: bool
    plan: PlanOptions
    sheets: SheetOptions

    def only_job(self) -> JobBuild:
        """Return the build of the one job that was given."""
        (job,) = self.jobs
        return JobBuild(
            job=job,
            messages=MessageOptions(form=self.messages),
            out=self.out,
            plan=self.plan,
            sheets=self.sheets,
        )


@record
class JobBuild:
    """One job to build; it can also be sent to a worker process.

    quiet: show no progress and start no further process, since other jobs are being built.
    """

    job: str
    messages: MessageOptions
    out: Path | None
    plan: PlanOptions
    sheets: SheetOptions
    quiet: bool = False
