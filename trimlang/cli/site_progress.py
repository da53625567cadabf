"""Says on the command line how far a job under way has come."""

from __future__ import annotations

from trimlang.compiler import Result
from trimlang.lengths.tape import feet_text
from trimlang.money import money_text
from trimlang.site_log.progress_of_job import JobProgress, State

SHOWN = 12
"""Tickets that are named at most; of more only the number is given."""


def site_words(result: Result) -> str:
    """Return the job's progress in lines: pieces, stock, money, changed tickets."""
    progress = result.progress
    if progress is None:
        return ""

    sign = result.job.currency
    money = (
        f"spent {sign}{money_text(progress.spent)},"
        f" still to buy {sign}{money_text(progress.to_buy)},"
        f" together {sign}{money_text(result.cost)}"
    )
    return "".join(
        f"{line}\n" for line in (_pieces(progress), _stock(result), money, *_changed(progress))
    )


def _pieces(progress: JobProgress) -> str:
    fitted, spoiled = progress.count(State.FITTED), progress.count(State.SPOILED)
    cut = fitted + progress.count(State.CUT)
    summary = f"{len(progress.states)} pieces: {cut} cut, {fitted} of them fitted"
    summary += f"; {len(progress.states) - cut} to cut"
    return summary + (f", {spoiled} of them again" if spoiled else "")


def _stock(result: Result) -> str:
    unit = result.job.settings.unit
    wanted = [
        f"{line.packs} {'pack of ' + str(line.pack) + ' ' if line.pack > 1 else ''}"
        f"{plan.trim} {feet_text(line.length, unit)}"
        for plan in result.plans
        for line in plan.bought
        if not line.on_hand
    ]
    if not wanted:
        return "the stock in hand covers what is left"
    return f"to buy: {', '.join(wanted)}"


def _changed(progress: JobProgress) -> tuple[str, ...]:
    # Before the first new plan every ticket is as it was printed.
    if not progress.replanned:
        return ()
    if not progress.changed:
        return ("no ticket changed",)
    named = ", ".join(progress.changed[:SHOWN])
    more = len(progress.changed) - SHOWN
    return (f"tickets that changed: {named}{f' and {more} more' if more > 0 else ''}",)
