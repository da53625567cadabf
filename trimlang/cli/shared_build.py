"""``trimlang build --pool``: one purchase for several jobs, with sheets for each job."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Final

from trimlang.cli.build import (
    StopError,
    checked_plans,
    counted,
    outcome,
    read_job,
    sheet_files,
    tell,
    write,
)
from trimlang.cli.many_jobs import one_of_many, places, several
from trimlang.cli.options import BuildOptions
from trimlang.cli.replies import CLEAN, JOB_ERRORS, WRONG_USAGE, complain, tell_done
from trimlang.compiler import Result, check_job

if TYPE_CHECKING:
    from trimlang.diagnostics import Diagnostic
    from trimlang.shared_order.flat import Flat
    from trimlang.shared_order.shared_plan import SharedOrder

SHARED_FOLDER: Final = "site"


def build_together(options: BuildOptions) -> int:
    """Plan one purchase for all jobs and write one folder; return the exit code."""
    files = several(options.jobs)
    if files is None:
        return WRONG_USAGE
    first = Path(files[0])
    target: Path = options.out or first.with_name("site-sheets")
    try:
        checked = _checked(options, files)
        shared = _planned(options, checked)
        write(target, _files(options, shared))
    except StopError as stop:
        return stop.outcome.code
    tell_done(_summary(shared, target), target)
    return CLEAN


def _checked(options: BuildOptions, files: Sequence[str]) -> list[tuple[str, Result]]:
    """Return each file with its checked job; every job's mistakes are printed before it stops."""
    from trimlang.cli.replies import STDIN

    checked: list[tuple[str, Result]] = []
    failed: list[tuple[str, str]] = []
    for file in files:
        messages = one_of_many(file, options.messages)
        try:
            text, path = read_job(file, messages)
        except StopError as stop:
            # Go on: all jobs' mistakes are told in one go.
            failed.append((file, stop.outcome.why))
            continue
        result = check_job(text, path=path, name=STDIN)
        tell(messages, result)
        how = outcome(result)
        if how.code != CLEAN:
            failed.append((file, how.why))
        checked.append((file, result))
    if failed:
        complain("an order for a site wants every job sound, so nothing is written:")
        for file, why in failed:
            sys.stderr.write(f"  {file}: {why}\n")
        raise StopError(JOB_ERRORS, failed[0][1])
    return checked


def _planned(options: BuildOptions, checked: Sequence[tuple[str, Result]]) -> SharedOrder:
    from trimlang.cli.progress import Progress
    from trimlang.shared_order.agreement import disagreements
    from trimlang.shared_order.flat import flats
    from trimlang.shared_order.shared_plan import plan_together

    pool = flats(checked)
    # Before planning: flats that disagree about a trim or the saw cannot share a stick.
    wrong = disagreements(pool)
    for flat, finding in wrong:
        _show(options, flat, (finding,))
    if wrong:
        raise StopError(JOB_ERRORS, wrong[0][1].message)
    with checked_plans(), Progress(sys.stderr) as progress:
        shared = plan_together(pool, options.plan.effort(), progress.watch)
    if not shared.result.ok:
        # the warnings of each job were printed when it was read
        printed = {finding for _, result in checked for finding in result.diagnostics}
        new = [finding for finding in shared.result.diagnostics if finding not in printed]
        _show(options, pool[0], new)
        raise StopError(JOB_ERRORS, new[0].message)
    return shared


def _show(options: BuildOptions, flat: Flat, findings: Sequence[Diagnostic]) -> None:
    from dataclasses import replace

    messages = one_of_many(flat.file, options.messages)
    tell(messages, replace(flat.result, diagnostics=tuple(findings)))


def _files(options: BuildOptions, shared: SharedOrder) -> dict[str, bytes]:
    """Return every file: those for all jobs together in one folder, each job's in its own."""
    from trimlang.output.job_files import Share
    from trimlang.sheets.sheet_table import Whose, sheets_of

    folders = [
        folder.as_posix()
        for folder in places(
            [one.flat.file for one in shared.flats], Path(), reserved=(SHARED_FOLDER,)
        )
    ]
    flats = tuple(
        (one.flat.job.name, f"../{folder}/index.html")
        for one, folder in zip(shared.flats, folders, strict=True)
    )
    bought = Share(sheets=sheets_of(Whose.THE_SITE), other_folders=flats)
    files = {
        f"{SHARED_FOLDER}/{name}": data
        for name, data in sheet_files(
            options.sheets, shared.result, share=bought, shared=shared
        ).items()
    }
    # The order, and what is cut from which stick, exist only once, for all jobs together.
    own = Share(
        sheets=sheets_of(Whose.EACH_JOB),
        elsewhere=("plan.json", "stock-order.csv", "sticks.csv"),
        other_folders=((shared.result.job.name, f"../{SHARED_FOLDER}/index.html"),),
    )
    for one, folder in zip(shared.flats, folders, strict=True):
        made = sheet_files(options.sheets, one.result, share=own)
        files |= {f"{folder}/{name}": data for name, data in made.items()}
    return files


def _summary(shared: SharedOrder, target: Path) -> str:
    from trimlang.money import money_text
    from trimlang.sheets.export.plan_json import least_words

    result = shared.result
    money = result.job.currency
    sticks = sum(len(plan.sticks) for plan in result.plans)
    lines = [
        f"{counted(len(shared.flats), 'job')}, {counted(len(result.pieces), 'piece')}"
        f" from {counted(sticks, 'stick')},"
        f" {money}{money_text(result.cost)} of trim ({least_words(result)}) → {target}"
    ]
    if shared.scarce:
        lines.append(f"bought job by job there would not be enough of {', '.join(shared.scarce)}")
    elif shared.alone is not None:
        saved = shared.alone - result.cost
        lines.append(
            f"bought job by job: {money}{money_text(shared.alone)};"
            f" together saves {money}{money_text(saved)}"
        )
    return "".join(f"{line}\n" for line in lines)
