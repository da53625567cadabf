"""What each command was asked to do, as frozen values.

The parser's own object has no types and can be changed, so it goes no further than the door of
each command, its ``run``: there one of these records is made of it.
"""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING

from trimlang.diagnostics.message_form import MessageForm
from trimlang.output.sheet_options import SheetOptions
from trimlang.record import record

if TYPE_CHECKING:
    from trimlang.stock.planner import Effort


class Search(StrEnum):
    """How hard to look for the least cost."""

    FULL = "full"
    QUICK = "quick"


class ComparisonForm(StrEnum):
    """How a comparison is told."""

    TEXT = "text"
    JSON = "json"
    HTML = "html"


@record
class PlanOptions:
    """How hard to look for the least cost, and for how many seconds of work at most."""

    search: Search = Search.FULL
    seconds: float = 10.0

    def effort(self) -> Effort:
        """Return what the planner is given."""
        # the planner is heavy, and most options are read by commands that do not plan
        from trimlang.stock.planner import QUICK, Effort

        return QUICK if self.search is Search.QUICK else Effort(seconds=self.seconds)


@record
class MessageOptions:
    """How a job's diagnostics are written.

    ``folder`` stands before each file's name, to tell one job of several from another.
    """

    form: MessageForm = MessageForm.TEXT
    folder: str = ""


@record
class CheckOptions:
    """``trimlang check``: the job files, ``-`` for standard input."""

    jobs: tuple[str, ...]
    messages: MessageForm


@record
class BuildOptions:
    """``trimlang build``: the job files and what becomes of all of them.

    out: the folder to write; None takes one beside each job.
    at_once: how many jobs are built at once; None for one a core.
    pool: whether the jobs are bought together.
    watch: whether the job is built again at every save.
    """

    jobs: tuple[str, ...]
    messages: MessageForm
    out: Path | None
    at_once: int | None
    pool: bool
    watch: bool
    plan: PlanOptions
    sheets: SheetOptions

    def only_job(self) -> JobBuild:
        """Return what is asked where one job is given."""
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
    """One job to build: what a process beside this one is handed, too.

    quiet: no progress is shown, and no further process is started: other jobs are at work.
    colour: whether messages are written for a terminal where a process keeps them.
    """

    job: str
    messages: MessageOptions
    out: Path | None
    plan: PlanOptions
    sheets: SheetOptions
    quiet: bool = False
    colour: bool = False


@record
class CompareOptions:
    """``trimlang compare``: two job files, or one and a git revision.

    cut: ids of pieces that are cut, as they were given, some with commas between.
    out: the file to write; None for standard output.
    force: whether a file that is there is written over.
    paper: of the HTML page; None takes what goes with the job's unit.
    exit_code: whether a difference shows in the exit code.
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
class MarkOptions:
    """``trimlang mark``: a job file, and lines for its log.

    file: a file with more lines, None where there is none.
    pin: whether all lines that are there are written out in full.
    undo: whether the log's last line is taken out again.
    anyway: whether lines are written that a question would be asked about.
    """

    job: str
    lines: tuple[str, ...]
    file: str | None
    pin: bool
    undo: bool
    anyway: bool
    messages: MessageForm


@record
class ConvertOptions:
    """``trimlang convert``: a table or a job file, and the file to make of it.

    target: None for standard output.
    include: a file that the job file is to include.
    force: whether a file that is there is written over.
    """

    source: Path
    target: Path | None
    include: str | None
    force: bool
    messages: MessageForm


@record
class TidyOptions:
    """``trimlang tidy``: the files, and whether to tell, print or show instead of writing."""

    files: tuple[str, ...]
    check: bool
    printed: bool
    diff: bool
    messages: MessageForm


@record
class StartOptions:
    """``trimlang start``: the file to write, ``-`` for standard output."""

    file: str
    metric: bool
