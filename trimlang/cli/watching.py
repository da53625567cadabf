"""``trimlang build --watch``: builds a job again at every save.

The sheets of the quick plan are written first, then those of the full plan where they differ.
A save during the search for the full plan ends that search.
"""

from __future__ import annotations

import sys
from contextlib import suppress
from dataclasses import replace
from pathlib import Path
from time import monotonic
from typing import TYPE_CHECKING, Any, Final, NoReturn

from trimlang.cli.build import sheet_files, sheets_beside, summary, write
from trimlang.cli.one_job import StopError, complained, outcome, read_job, tell
from trimlang.cli.options import BuildOptions, JobBuild
from trimlang.cli.progress import Progress, checked_plans, effort_of
from trimlang.cli.replies import CLEAN, JOB_ERRORS, WRONG_USAGE, complain
from trimlang.compiler import Result, check_job, plan_checked
from trimlang.extras import WATCH
from trimlang.incremental.cache import Cache
from trimlang.incremental.cached_steps import CachedSteps
from trimlang.incremental.compiler_steps import Steps
from trimlang.output.own_templates import unusable
from trimlang.output.sheet_options import FileFormat
from trimlang.planning.first_plan import PlanCache
from trimlang.reading import log_beside, read_text
from trimlang.sheets.render.paper import label
from trimlang.sheets.render.template_filling import TemplateFiller
from trimlang.sheets.wording.catalogue import words_in
from trimlang.stock.planner import QUICK, Effort, Watch
from trimlang.watch.preview_server import PreviewServer
from trimlang.workers.stopping import StoppedError, stoppable

if TYPE_CHECKING:
    from collections.abc import Callable

    from trimlang.watch.file_changes import FileWatcher

_STOPPED: Final = "stopped watching"


class OvertakenError(Exception):
    """A file was saved meanwhile, so what is being planned is out of date."""


class _NoPlaceError(Exception):
    """The first sheets cannot be written where they should go; the reason is already printed."""

    def __init__(self, code: int) -> None:
        super().__init__(code)
        self.code = code


def watch_job(options: BuildOptions) -> int:
    """Build the job at every save until a signal comes; return the exit code.

    A signal is the usual end.  Its code is the one that a shell gives: 130 for Ctrl-C.
    """
    try:
        job = _one_job(options)
        from trimlang.watch.file_changes import FileWatcher

        _sound(job)
    except StopError as stop:
        return stop.code
    except ModuleNotFoundError as error:
        if not WATCH.lacks(error):
            raise
        complain(WATCH.remedy())
        return WRONG_USAGE
    try:
        with stoppable(_STOPPED), FileWatcher() as watcher, PreviewServer() as preview:
            WatchedJob(job, watcher, preview).go_on()
    except _NoPlaceError as stop:
        return stop.code
    except StoppedError as stop:
        complain(_STOPPED)
        return 128 + stop.number
    return CLEAN


def _one_job(options: BuildOptions) -> JobBuild:
    """Return the one job to watch, built as HTML unless other formats are asked for."""
    if options.pool or len(options.jobs) > 1:
        raise complained(WRONG_USAGE, "--watch builds one job: name one file, without --pool")
    job = options.only_job()
    if job.job == "-":
        raise complained(WRONG_USAGE, "--watch wants a job file: standard input is not saved again")
    return replace(
        job, sheets=replace(job.sheets, formats=job.sheets.formats or (FileFormat.HTML,))
    )


def _sound(options: JobBuild) -> None:
    """Refuse now what no later save of the job file could mend."""
    if not Path(options.job).is_file():
        raise complained(WRONG_USAGE, f"there is no file {options.job} to watch")
    why = unusable(options.sheets.templates)
    if why is not None:
        raise complained(WRONG_USAGE, why)
    try:
        words_in(options.sheets.language)
        if options.sheets.ticket is not None:
            label(options.sheets.ticket)
    except ValueError as error:
        raise complained(WRONG_USAGE, str(error)) from None


class WatchedJob:
    """A job that is built at every save, with what is kept from build to build."""

    def __init__(self, options: JobBuild, watcher: FileWatcher, preview: PreviewServer) -> None:
        self._options = options
        self._watcher = watcher
        self._preview = preview
        self._path = Path(options.job)
        self._target: Path = options.out or sheets_beside(self._path)
        self._files: dict[str, bytes] = {}
        self._filler: TemplateFiller | None = None
        # Only the full plan may be dropped for a newer save; a quick plan is always finished and
        # shown.
        self._proving = False
        self._steps = CachedSteps()
        self._plans: PlanCache = Cache()
        self._drawings: Cache[Any] = Cache()

    def go_on(self) -> NoReturn:
        """Build, wait for a save, build again.

        Raises:
            _NoPlaceError: the sheets cannot be written into their folder.
        """
        while True:
            own = self._options.sheets.templates
            # The log is watched even where it is missing: the first `mark` makes it.
            files = [self._path, log_beside(self._path)]
            # Watching begins before the files are read, so that no save in between is missed.
            self._watcher.begin(files, [own] if own is not None else [])
            # The user's own templates may be what was saved; ours do not change.
            if own is not None:
                self._filler = None
            with suppress(OvertakenError):
                self.build()
            _say_at_once()
            self._watcher.wait()

    def build(self) -> None:
        """Check, plan and print: quickly first, then with a proof, unless a save overtakes it.

        Raises:
            OvertakenError: a file was saved meanwhile.
            _NoPlaceError: the sheets cannot be written into their folder.
        """
        began = monotonic()
        try:
            checked = self._checked()
            self._plan("quick plan", checked, QUICK, began)
            full = effort_of(self._options.plan)
            if full.prove:
                self._plan("full plan", checked, full, began)
        except StopError as stop:
            if not self._files:
                complain("nothing is written yet; waiting for the next save")
            else:
                self._preview.tell(f"{stop.outcome.why}\nThese are the sheets from before.")
                complain(
                    f"the sheets in {self._target} stay as they are; waiting for the next save"
                )

    def _checked(self) -> Result:
        options = self._options
        text, path = read_job(options.job, options.messages)
        self._steps.next_turn()
        self._plans.next_turn()
        steps = Steps(self._read, self._steps.line, self._steps.room)
        result = check_job(text, path=path, steps=steps)
        if not result.ok:
            tell(options.messages, result)
            raise StopError(JOB_ERRORS, outcome(result).why)
        return result

    def _read(self, path: Path) -> str:
        """Read an included file and watch it from now on, even where it does not exist yet."""
        self._watcher.note(path)
        return read_text(path)

    def _plan(self, name: str, checked: Result, effort: Effort, began: float) -> None:
        self._proving = effort.prove
        with checked_plans(), Progress(sys.stderr) as progress:
            watch = self._unless_overtaken(progress) if effort.prove else None
            result = plan_checked(checked, effort=effort, watch=watch, cache=self._plans)
        # The full plan would repeat the quick plan's findings word for word, so they are told once.
        if not effort.prove or not result.ok:
            tell(self._options.messages, result)
        if not result.ok:
            raise StopError(JOB_ERRORS, outcome(result).why)
        self._drawings.next_turn()
        files = sheet_files(self._options.sheets, result, filler=self._filler_of_last_build())
        self._look_up()
        # A comment changed, or the quick plan was the best already: leave disk and browser alone.
        if files == self._files and self._target.is_dir():
            self._preview.tell("")
            sys.stdout.write(f"{name}: the same sheets\n")
            return
        self._put_in_place(files)
        seconds = monotonic() - began
        sys.stdout.write(f"{name} ({seconds:.2f} s): {summary(result, self._target)}")
        _say_at_once()

    def _put_in_place(self, files: dict[str, bytes]) -> None:
        first = not self._files
        if not first:
            self._preview.put(files)  # the browser need not wait for the disk
        try:
            write(self._target, files)
        except StopError as stop:
            # At the first build the user still looks and can name another folder. Later the fault
            # may pass, as with a full disk, and the next save tries again.
            raise _NoPlaceError(stop.code) if first else stop from None
        self._files = files
        if first:
            self._preview.put(files)
        if first and any(name.endswith(".html") for name in files):
            sys.stdout.write(f"in a browser: {self._preview.address}\n")

    def _unless_overtaken(self, progress: Progress) -> Callable[[str], Watch | None]:
        """Return a watch for each trim's search that ends the search when a file is saved."""

        def watch(trim: str) -> Watch:
            shown = progress.watch(trim)

            def step(cost: int | None, bound: int) -> None:
                if self._watcher.hinted():
                    raise OvertakenError
                if shown is not None:
                    shown(cost, bound)

            return step

        return watch

    def _filler_of_last_build(self) -> TemplateFiller | None:
        """Return the last build's filler, whose templates are already read and compiled."""
        if self._filler is None and self._options.sheets.wants(FileFormat.HTML, FileFormat.PDF):
            own = self._options.sheets.templates
            if own is None or own.is_dir():
                self._filler = TemplateFiller(
                    own, drawings=self._drawings, before_sheet=self._look_up
                )
        return self._filler

    def _look_up(self) -> None:
        """Drop the full plan where a file was saved meanwhile; the quick one is always finished."""
        if self._proving and self._watcher.hinted():
            raise OvertakenError


def _say_at_once() -> None:
    sys.stdout.flush()
    sys.stderr.flush()
