"""Takes jobs near their limits through everything that a command would do, in memory.

Each job is read, checked and, where it has no error, planned.  Then one thing more is done with
it, and all of these in turn: a thousand jobs a second would not leave time for every one with each.
Lines that were read before are not read again, except where that is what is tried.
"""

from __future__ import annotations

import csv
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import lru_cache
from io import StringIO
from itertools import cycle
from pathlib import Path
from random import Random
from tempfile import gettempdir
from time import process_time
from typing import Final

from tests.trust import commanding
from tests.trust.commanding import hold, renamed
from tests.trust.feeding import MOST_SECONDS, loses_nothing, says_where
from tests.trust.sessions import NAMES, Session, any_command
from trimlang.compare.changes import compare
from trimlang.compare.report import Versions, comparison_json, comparison_text
from trimlang.compiler import Result, check_gathered, check_job, compile_job, plan_checked
from trimlang.diagnostics import has_errors
from trimlang.diagnostics.source import Source
from trimlang.editor.hover import hover
from trimlang.editor.open_job import read_job
from trimlang.editor.proposals import complete
from trimlang.incremental.cached_steps import CachedSteps
from trimlang.incremental.compiler_steps import Steps
from trimlang.language.meaning import same_meaning
from trimlang.language.parse import read_line
from trimlang.language.room_skeleton import with_room
from trimlang.language.tidy_file import tidy
from trimlang.reading import gather
from trimlang.shared_order.agreement import disagreements
from trimlang.shared_order.flat import flats
from trimlang.shared_order.shared_plan import plan_together
from trimlang.sheets.export.dxf import floor_plan_dxf
from trimlang.sheets.export.order_csv import order_csv
from trimlang.sheets.export.plan_csv import cut_list_csv, sticks_csv
from trimlang.sheets.export.plan_file import write_plan
from trimlang.sheets.export.plan_json import plan_json
from trimlang.sheets.export.read_plan import read_plan
from trimlang.sheets.render.pages import render_sheets
from trimlang.sheets.render.template_filling import TemplateFiller
from trimlang.sheets.sheet_table import SHEET_TITLES
from trimlang.site_log.written_out import in_full
from trimlang.stock.planner import QUICK
from trimlang.tables.from_csv import from_csv
from trimlang.tables.room_writer import WallForm
from trimlang.tables.to_csv import to_csv
from trimlang.tables.wall_forms import NoSuchFormError, in_form

KEPT_LINES: Final = 40_000
JOB: Final = "job.trim"
# No such folder is there: nothing is read from the disk, whatever a job includes.
_PATH: Final = Path(gettempdir()) / "near-limits" / JOB


@dataclass(slots=True)
class Tally:
    """How many inputs went how far, and what was done with them."""

    fed: int = 0
    planned: int = 0
    done: Counter[str] = field(default_factory=Counter)
    slowest: float = 0.0

    def __str__(self) -> str:
        named = ", ".join(f"{count:,} {name}" for name, count in sorted(self.done.items()))
        return (
            f"{self.fed:,} inputs: {self.planned:,} planned ({named});"
            f" slowest {self.slowest:.2f} s of CPU"
        )


class Feeder:
    """Takes one job after the other; ``tally`` says what was done so far."""

    def __init__(self, random: Random) -> None:
        self.tally = Tally()
        self._random = random
        self._steps = Steps(line=lru_cache(KEPT_LINES)(read_line))
        self._before: Result | None = None
        self._sheets = cycle(SHEET_TITLES)
        self._filler: TemplateFiller | None = None
        self._planned = _in_turn(self._with_planned())
        self._any = _in_turn(self._with_any())

    def _with_planned(self) -> dict[Callable[[str, str, Result], None], int]:
        """What is done with a job that has a plan, and how often in two hundred such jobs.

        What takes longer than planning itself has a small share: two million inputs still bring
        each of them thousands of jobs.
        """
        return {
            self._plan_json: 101, self._tables: 69, self._compared: 6, self._marked: 6,
            self._tidied: 4, self._converted: 4, self._again: 4, self._room: 1, self._in_editor: 1,
            self._walls: 1, self._in_common: 1, self._html: 1, self._dxf: 1,
        }  # fmt: skip

    def _with_any(self) -> dict[Callable[[str, str, Result], None], int]:
        """What is done with a job that has errors, in two hundred."""
        return {self._nothing: 195, self._tidied: 2, self._again: 1, self._converted: 1,
                self._in_editor: 1}  # fmt: skip

    def _nothing(self, _text: str, _log: str, _result: Result) -> None:
        """Only its diagnostics are held."""

    def feed(self, text: str, log: str = "") -> None:
        """Take a job with its site log.

        Raises:
            AssertionError: a promise is broken.
            Exception: whatever trimlang raises, which is a defect whatever it is.
        """
        began = process_time()
        self.tally.fed += 1
        result = self._compiled(text, log)
        says_where(result)
        if result.ok:
            self.tally.planned += 1
            loses_nothing(result)
            todo = next(self._planned)
        else:
            todo = next(self._any)
        todo(text, log, result)
        self.tally.done[todo.__name__.strip("_<>").replace("_", " ")] += 1
        if result.ok:
            self._before = result
        took = process_time() - began
        self.tally.slowest = max(self.tally.slowest, took)
        assert took < MOST_SECONDS, f"{took:.1f} s of CPU"

    def command(self, text: str, log: str, folder: Path) -> None:
        """Give one command on a job and its log as files of their own, in an empty folder."""
        files = {JOB: text, "job.site": log} if log else {JOB: text}
        session = Session(files, ((any_command(self._random, files),),))
        given = commanding.Tally()
        hold(session, folder, given)
        self.tally.done["as " + next(iter(given.commands))] += 1

    def _compiled(self, text: str, log: str) -> Result:
        path = _PATH if log else None
        line = self._steps.line
        gathered = gather(text, path=path, name=JOB, line=line, log=log)
        return plan_checked(check_gathered(gathered, JOB, self._steps), effort=QUICK)

    def _plan_json(self, _text: str, _log: str, result: Result) -> None:
        text = plan_json(result)
        assert write_plan(read_plan(text)) == text

    def _tables(self, _text: str, _log: str, result: Result) -> None:
        for made in (order_csv, cut_list_csv, sticks_csv):
            rows = list(csv.reader(StringIO(made(result))))
            assert len({len(row) for row in rows}) == 1, made
        listed = Counter(row[0] for row in csv.reader(StringIO(cut_list_csv(result))))
        assert all(listed[piece.id] == 1 for piece in result.pieces)

    def _again(self, text: str, log: str, result: Result) -> None:
        """Read without what is kept of former lines, a job is the same."""
        path = _PATH if log else None
        fresh = compile_job(text, path=path, name=JOB, log=log, effort=QUICK)
        assert fresh == result

    def _compared(self, _text: str, _log: str, result: Result) -> None:
        old = self._before
        if old is None or bool(old.job.log) != bool(result.job.log):
            old = result
        found = compare(old, result)
        versions = Versions("old.trim", JOB)
        assert comparison_text(found, versions).endswith("\n")
        assert comparison_json(found, versions).endswith("}\n")
        assert compare(result, result).same

    def _tidied(self, text: str, log: str, result: Result) -> None:
        tidied = tidy(Source(JOB, text)).text
        assert tidy(Source(JOB, tidied)).text == tidied
        after = self._compiled(tidied, log)
        assert _codes(after) == _codes(result)
        assert not result.ok or same_meaning(after.job, result.job)

    def _converted(self, text: str, _log: str, result: Result) -> None:
        """A job goes into a table and comes out of it with the same meaning."""
        table, findings = to_csv(Source(JOB, text))
        # what a log says is in hand may be all that a wall can be cut from; no table has the log
        alone = check_job(text, name=JOB)
        if not result.ok or not alone.ok or has_errors(findings):
            return
        made = from_csv(table.encode(), Path("job.csv"))
        assert not has_errors(made.findings), made.findings
        assert same_meaning(alone.job, check_job(made.text, name=JOB).job)

    def _walls(self, text: str, _log: str, _result: Result) -> None:
        for form in WallForm:
            try:
                written = in_form(Source(JOB, text), None, form)
            except NoSuchFormError:
                continue
            again = in_form(Source(JOB, written), None, form)
            assert tidy(Source(JOB, again)) == tidy(Source(JOB, written))

    def _room(self, text: str, log: str, result: Result) -> None:
        """A room is added as ``start --room`` does, which leaves the others as they are."""
        after = self._compiled(with_room(Source(JOB, text), "Quite another room"), log)
        count = len(result.job.rooms)
        assert len(after.job.rooms) == count + 1
        assert same_meaning(after.job.rooms[:count], result.job.rooms)

    def _marked(self, text: str, log: str, result: Result) -> None:
        """A log that is written out in full, as ``mark`` does, says what it said before."""
        entries = () if result.progress is None else result.progress.full_entries
        full = in_full(result.job, entries, {piece.id: piece.unit for piece in result.pieces})
        lines = {JOB: text.split("\n"), "job.site": log.split("\n")}
        for span in sorted(full, reverse=True):
            line = lines[span.file][span.line - 1]
            end = line[: span.column - 1] + full[span] + line[span.end - 1 :]
            lines[span.file][span.line - 1] = end
        after = self._compiled("\n".join(lines[JOB]), "\n".join(lines["job.site"]))
        assert after.ok, after.diagnostics
        assert after.cost == result.cost
        assert [one.id for one in after.pieces] == [one.id for one in result.pieces]
        if after.progress is not None and result.progress is not None:
            assert after.progress.states == result.progress.states

    def _in_editor(self, text: str, _log: str, _result: Result) -> None:
        """A name is changed; what is under the pointer is explained; words are proposed."""
        random, path = self._random, _PATH
        reading = read_job(path, JOB, {path: text}, CachedSteps())
        renamed(reading, random.randrange(30), random.choice(NAMES))
        lines = text.split("\n")
        at = random.randrange(len(lines))
        column = random.randint(1, len(lines[at]) + 1)
        hover(reading, JOB, at + 1, column, None)
        complete(reading, lines[at][: column - 1])

    def _in_common(self, _text: str, _log: str, result: Result) -> None:
        """Two jobs are bought together."""
        other = self._before or result
        pool = flats([("one.trim", result), ("other.trim", other)])
        if not disagreements(pool):
            shared = plan_together(pool, QUICK)
            if shared.result.ok:
                loses_nothing(shared.result)
                plan_json(shared.result)

    def _html(self, _text: str, _log: str, result: Result) -> None:
        self._filler = self._filler or TemplateFiller(None)
        random, name = self._random, next(self._sheets)
        sheets = render_sheets(
            result,
            paper=random.choice(("letter", "a4")),
            show=random.choice((None, "in", "ft", "mm")),
            language=random.choice(("en", "es", "de")),
            only=(name,),
            filler=self._filler,
        )
        assert all(html.rstrip().endswith("</html>") for html in sheets.values())

    def _dxf(self, _text: str, _log: str, result: Result) -> None:
        assert floor_plan_dxf(result).rstrip().endswith(b"EOF")


def _codes(result: Result) -> Counter[str]:
    return Counter(one.code for one in result.diagnostics)


def _in_turn(
    shares: dict[Callable[[str, str, Result], None], int],
) -> cycle[Callable[[str, str, Result], None]]:
    """Mix what is to be done so that nothing stands in a row, by its shares."""
    every = [(at / share, todo) for todo, share in shares.items() for at in range(share)]
    return cycle([todo for _, todo in sorted(every, key=lambda one: one[0])])
