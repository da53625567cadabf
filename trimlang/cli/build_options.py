"""``trimlang build``: its options, and which kind of build they ask for."""

from __future__ import annotations

from argparse import ArgumentTypeError, Namespace
from pathlib import Path

from trimlang.cli.options import BuildOptions, PlanOptions, Search
from trimlang.cli.replies import (
    WRONG_USAGE,
    Commands,
    add_command,
    complain,
    jobs_and_messages,
)
from trimlang.diagnostics.message_form import MessageForm
from trimlang.lengths.tape import Shown
from trimlang.output.sheet_options import FileFormat, SheetOptions
from trimlang.sheets.render.paper import PAPERS


def describe(commands: Commands) -> None:
    """Add the command and its options."""
    build = add_command(
        commands, "build", "write tickets, stock order, checklist and plan.json into a folder"
    )
    jobs_and_messages(build)
    build.add_argument(
        "--out",
        type=Path,
        metavar="DIR",
        help="the folder to write (default: the job's name and “-sheets”, beside it);"
        " with several jobs it holds a folder for each",
    )
    build.add_argument(
        "--jobs",
        type=_number,
        dest="at_once",
        metavar="N",
        help="how many of several jobs are built at once (default: one for each core)",
    )
    build.add_argument(
        "--pool",
        action="store_true",
        help="buy and lay out the trim of several jobs together: one order for a site",
    )
    build.add_argument(
        "--log",
        type=Path,
        metavar="SITE.site",
        help="with --pool: the site's log, of all jobs together; what is left is planned again",
    )
    build.add_argument(
        "--format",
        action="append",
        choices=tuple(FileFormat),
        dest="formats",
        help="what to write; may be given more than once (default: html and pdf; "
        "plan.json is always written; csv: order, cut list and sticks; dxf: the floor plan)",
    )
    build.add_argument(
        "--paper",
        choices=tuple(PAPERS),
        help="paper of the sheets (default: letter, a4 for jobs in millimetres)",
    )
    build.add_argument(
        "--show",
        choices=tuple(Shown),
        help="show lengths in inches, in feet and inches or in millimetres, whatever the job file "
        "is in",
    )
    build.add_argument(
        "--language", default="en", metavar="CODE", help="language of the sheets (en, de, es)"
    )
    build.add_argument(
        "--ticket",
        metavar="WxH",
        help="print one ticket on each label of this size, such as “100mm x 50mm”",
    )
    build.add_argument(
        "--no-codes", action="store_true", help="print tickets without their QR codes"
    )
    build.add_argument(
        "--share",
        action="store_true",
        help="also write one page with all sheets in it, JOB-phone.html, to send to a phone",
    )
    build.add_argument(
        "--plan",
        choices=tuple(Search),
        default="full",
        help="full looks for a proof that no plan costs less; quick takes the first good one",
    )
    build.add_argument(
        "--plan-seconds",
        type=_seconds,
        default=10.0,
        metavar="N",
        help="the most seconds of work for that proof, all trims together (default: 10); "
        "then the best plan is printed with how far from least it can be",
    )
    build.add_argument(
        "--templates",
        type=Path,
        metavar="DIR",
        help="a folder of your own templates, used before the shipped ones",
    )
    build.add_argument(
        "--watch",
        action="store_true",
        help="build one job again at every save until Ctrl-C, html only unless --format says"
        " otherwise, and show the sheets in a browser on this machine",
    )
    build.set_defaults(run=run)


def run(asked: Namespace) -> int:
    """Build the job or the jobs; return the exit code."""
    options = build_options(asked)
    # Without a pool each job has its log beside it, found by its name.
    if options.log is not None and not options.pool:
        complain("--log is the log of jobs that are bought together: add --pool")
        return WRONG_USAGE
    if str(options.out) == "-":
        complain("sheets are a folder of files, which standard output cannot take; name a folder")
        return WRONG_USAGE
    # From the most particular to the plain build; each kind loads only what it needs.
    if options.watch:
        from trimlang.cli.watching import watch_job

        return watch_job(options)
    if options.pool:
        from trimlang.cli.shared_build import build_together

        return build_together(options)
    if len(options.jobs) > 1:
        from trimlang.cli.many_built import build_many

        return build_many(options)
    from trimlang.cli.build import build
    from trimlang.workers.stopping import stoppable

    # A signal ends the build wherever Python runs, but waits while two sets of sheets change
    # places.
    with stoppable():
        return build(options.only_job()).code


def build_options(asked: Namespace) -> BuildOptions:
    """Return what was typed as a frozen value."""
    return BuildOptions(
        jobs=tuple(asked.job_files),
        messages=MessageForm(asked.messages),
        out=asked.out,
        at_once=asked.at_once,
        pool=asked.pool,
        log=asked.log,
        watch=asked.watch,
        plan=PlanOptions(search=Search(asked.plan), seconds=asked.plan_seconds),
        sheets=SheetOptions(
            formats=tuple(FileFormat(word) for word in asked.formats or ()),
            paper=asked.paper,
            show=None if asked.show is None else Shown(asked.show),
            language=asked.language,
            ticket=asked.ticket,
            codes=not asked.no_codes,
            phone=asked.share,
            templates=asked.templates,
        ),
    )


def _number(text: str) -> int:
    # Cut to nine figures first: converting a number of a million figures would take minutes.
    if not text.isdecimal() or not 1 <= int(text[:9]) <= 1000:
        raise ArgumentTypeError(f"“{text}” is no whole number from 1 to 1000")
    return int(text)


def _seconds(text: str) -> float:
    wrong = ArgumentTypeError(f"“{text}” is no number of seconds above 0, at most 86400")
    try:
        seconds = float(text)
    except ValueError:
        raise wrong from None
    # A number that is not a number, “nan”, is refused here too: it is not above 0.
    if not 0 < seconds <= 86_400:
        raise wrong
    return seconds
