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


class ComparisonForm(StrEnum):
    """The form in which a comparison is written."""

    TEXT = "text"
    JSON = "json"
    HTML = "html"


@record
class CompareOptions:
    """``trimlang compare``: two job files, or one and a git revision.

    cut: ids of pieces that are cut, as typed: several may stand in one, with commas.
    out: the file to write; None for standard output.
    force: whether a file that is there is written over.
    paper: the HTML page's; None means the one that goes with the job's unit.
    exit_code: whether the exit code says that the versions differ.
    """

    old: str
    new: str | None
    revision: str | None
    cut: tuple[str, ...]
    form: ComparisonForm
    out: Path | None
    force: bool
    paper: str | None
    plan: PlanOptions
    exit_code: bool
    messages: MessageForm


@record
class ConvertOptions:
    """``trimlang convert``: a table or a job file, and the file to make from it.

    target: None means standard output.
    include: the name of a file that the job file will include, or None.
    force: whether a file that is there is written over.
    """

    source: Path
    target: Path | None
    include: str | None
    force: bool
    messages: MessageForm


@record
class MarkOptions:
    """``trimlang mark``: a job file and lines for its site log.

    others: the jobs that are bought together with it; log: the one log of all, or None.
    file: a file with more lines, or None.
    pin: whether the lines that are there already are written out in full too.
    undo: whether the log's last line is removed again.
    anyway: whether lines are written even where they look like a mistake.
    """

    job: str
    others: tuple[str, ...]
    log: Path | None
    lines: tuple[str, ...]
    file: str | None
    pin: bool
    undo: bool
    anyway: bool
    messages: MessageForm


@record
class TidyOptions:
    """``trimlang tidy``: the files, and whether to check, print or diff instead of writing.

    ``walls`` is the form in which walls are to be written, None for the one that they have.
    """

    files: tuple[str, ...]
    check: bool
    printed: bool
    diff: bool
    walls: str | None
    messages: MessageForm


@record
class StartOptions:
    """``trimlang start``: the file to write; ``-`` means standard output.

    ``room`` is the name of a room to add to a file that is there.
    """

    file: str
    metric: bool
    room: str | None
