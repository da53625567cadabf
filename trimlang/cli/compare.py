"""``trimlang compare``: what has changed in meaning between two versions of a job."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Final, TypeAlias

from trimlang.cli.git_revision import NotInGitError, take_out
from trimlang.cli.one_job import StopError, read_job
from trimlang.cli.options import CompareOptions, ComparisonForm
from trimlang.cli.progress import checked_plans, effort_of
from trimlang.cli.replies import (
    CLEAN,
    JOB_ERRORS,
    STDIN,
    WRONG_USAGE,
    MessageOptions,
    complain,
    print_whole,
)
from trimlang.compare.changes import Comparison, compare
from trimlang.compare.report import Versions, comparison_json, comparison_text
from trimlang.compiler import Result, check_job, plan_checked
from trimlang.diagnostics.show import show
from trimlang.diagnostics.suggestion import did_you_mean
from trimlang.language.meaning import same_meaning
from trimlang.letters import printable
from trimlang.output.one_file import is_one_of, replace_file
from trimlang.reading import log_beside
from trimlang.sheets.render.paper import usual_paper
from trimlang.survey.log_entries import Entry

Log: TypeAlias = Sequence[Entry]

# An exit code of its own, as 1 already means that a job has errors.
DIFFERENT: Final = 4


def compare_versions(options: CompareOptions) -> int:
    """Compare the two versions; return the exit code."""
    # Told before the work, which may take long; a pipe or a device is written to as it is.
    if options.out is not None and options.out.is_file() and not options.force:
        complain(f"{options.out} is there already; name another file, or add --force")
        return WRONG_USAGE
    # Either a second file or a revision says what to compare with, never both.
    if (options.new is None) == (options.revision is None):
        complain("give two job files, or one and --git REV")
        return WRONG_USAGE
    try:
        # For an older version out of git: as files, because a job reads its includes from beside
        # it.
        with TemporaryDirectory(prefix="trimlang-", ignore_cleanup_errors=True) as folder:
            return _compare(options, Path(folder))
    except StopError as stop:
        return stop.code


def _compare(options: CompareOptions, folder: Path) -> int:
    if options.revision is not None:
        was, commit = _old_version(options.old, options.revision, folder)
        # The path of the copy out of git means nothing to a reader, so the versions get names.
        names = (str(was), options.old)
        called = printable(options.old)
        versions = Versions(f"{called} at {_called(options.revision, commit)}", called)
    else:
        assert options.new is not None  # noqa: S101  looked at by run
        names = (options.old, options.new)
        versions = Versions(*(STDIN if name == "-" else printable(name) for name in names))
    old, new, logs = _both(options, names, versions)
    found = compare(old, new, _named(old, options.cut), logs)
    text = _in_form(options, found, versions, old, new)
    if options.out is None:
        print_whole(text)
    else:
        try:
            replace_file(options.out, text.encode("utf-8"))
        except OSError as error:
            complain(f"cannot write {options.out}: {(error.strerror or str(error)).lower()}")
            return WRONG_USAGE
    return DIFFERENT if options.exit_code and not found.same else CLEAN


def _read(options: CompareOptions, old: Result, new: Result) -> list[Path]:
    """Return the files that the two jobs are read from, what they include and their logs."""
    jobs = (Path(options.old), Path(options.new or options.old))
    files = [(job, name) for job, one in zip(jobs, (old, new), strict=True) for name in one.sources]
    return [*jobs, *map(log_beside, jobs), *(job.parent / name for job, name in files)]


def _old_version(job: str, revision: str, folder: Path) -> tuple[Path, str]:
    try:
        return take_out(Path(job), revision, folder)
    except NotInGitError as error:
        complain(str(error))
    except OSError as error:
        complain(f"cannot take {job} out of git: {(error.strerror or str(error)).lower()}")
    raise StopError(WRONG_USAGE)


def _called(revision: str, commit: str) -> str:
    # A revision that is typed as the commit itself is not said twice.
    return commit if commit.startswith(revision) else f"{revision} ({commit})"


def _both(
    options: CompareOptions, names: tuple[str, str], versions: Versions
) -> tuple[Result, Result, tuple[Log, Log]]:
    """Compile both versions; where they mean the same, one plan serves both.

    Where only one of them has a site log, both are planned as if nothing had been done, so that
    like is compared with like.  The logs are returned as they are.
    """
    # The first reading would leave nothing for the second.
    if names.count("-") > 1:
        complain("standard input can be read once")
        raise StopError(WRONG_USAGE)
    texts = [read_job(name, MessageOptions(form=options.messages)) for name in names]
    checked = [check_job(text, path=path, name=STDIN) for text, path in texts]
    called = (versions.old, versions.new)

    def tell(name: str, result: Result) -> None:
        complain(f"{name} has errors:")
        show(result.diagnostics, result.sources, sys.stderr, form=options.messages)

    # The mistakes of both versions are told before it stops.
    for name, result in zip(called, checked, strict=True):
        if not result.ok:
            tell(name, result)
    if not all(result.ok for result in checked):
        raise StopError(JOB_ERRORS)
    # Before the plans, which take long.
    if options.out is not None and is_one_of(options.out, _read(options, *checked)):
        complain(f"{options.out} is read by one of the jobs; name another file")
        raise StopError(WRONG_USAGE)
    # Kept before the logs are taken off the jobs below.
    logs = (checked[0].job.log, checked[1].job.log)
    if not all(logs):
        checked = [replace(one, job=replace(one.job, log=())) for one in checked]
    same = same_meaning(checked[0].job, checked[1].job)
    effort = effort_of(options.plan)
    compiled: list[Result] = []
    for name, one in list(zip(called, checked, strict=True))[: 1 if same else 2]:
        # A plan that fails its check is never compared, as it is never printed.
        with checked_plans():
            result = plan_checked(one, effort=effort)
        if not result.ok:
            tell(name, result)
            raise StopError(JOB_ERRORS)
        compiled.append(result)
    if same:
        # Equal jobs have equal plans; only the text that findings point into differs.
        compiled.append(replace(compiled[0], sources=checked[1].sources))
    return compiled[0], compiled[1], logs


def _named(old: Result, named: Sequence[str]) -> frozenset[str]:
    """Return the ids of the old version's pieces that the user says are cut."""
    # Ids are typed from paper, so small and capital letters count as the same.
    known = {piece.id.casefold(): piece.id for piece in old.pieces}
    names = [name.strip() for part in named for name in part.split(",") if name.strip()]
    for name in names:
        if name.casefold() not in known:
            remedy = did_you_mean(name, list(known.values()), "See the older version's tickets.")
            complain(f"the older version has no piece {name}. {remedy}")
            raise StopError(WRONG_USAGE)
    return frozenset(known[name.casefold()] for name in names)


def _in_form(
    options: CompareOptions, found: Comparison, versions: Versions, old: Result, new: Result
) -> str:
    if options.form is ComparisonForm.JSON:
        return comparison_json(found, versions)
    if options.form is ComparisonForm.TEXT:
        return comparison_text(found, versions)

    from trimlang.compare.comparison_page import comparison_page

    # Both versions on one page get the paper of the newer one.
    paper = options.paper or usual_paper(new.job.settings.unit)
    return comparison_page(found, versions, old, new, paper=paper)
