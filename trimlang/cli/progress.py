"""Planning on the command line: how the search goes, and the end where a plan fails its check."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from time import monotonic
from typing import Any, Final, TextIO

from trimlang.cli.one_job import complained
from trimlang.cli.options import PlanOptions, Search
from trimlang.cli.replies import OUR_FAULT
from trimlang.planning.wrong_plan import WrongPlanError
from trimlang.stock.planner import QUICK, Effort, Watch

PATIENCE: Final = 0.5
"""Seconds before anything is shown; most jobs are planned by then."""


def effort_of(plan: PlanOptions) -> Effort:
    """Return what the planner is asked for by how hard it is to look."""
    return QUICK if plan.search is Search.QUICK else Effort(seconds=plan.seconds)


class Progress:
    """A line that appears after half a second and goes away when the plan is there.

    Only on a terminal: output that is piped or kept in a file has no use for it.
    """

    def __init__(self, stream: TextIO, *, quiet: bool = False) -> None:
        self._stream = stream
        # Nobody looks at a file or a pipe, and control characters would spoil it.
        self._looked_at = stream.isatty() and not quiet
        self._shown: Any = None
        self._began = monotonic()

    def __enter__(self) -> Progress:
        return self

    def __exit__(self, *_: object) -> None:
        if self._shown is not None:
            self._shown.stop()

    def watch(self, trim: str) -> Watch | None:
        """Return the function for the planner to call for one trim, None where nobody looks."""
        if not self._looked_at:
            return None
        return lambda cost, bound: self._tell(trim, cost, bound)

    def _tell(self, trim: str, cost: int | None, bound: int) -> None:
        if monotonic() - self._began < PATIENCE:
            return
        text = f"planning {trim}: {standing_text(cost, bound)}"
        if self._shown is None:
            from rich.console import Console

            console = Console(file=self._stream)
            self._shown = console.status(text)
            self._shown.start()
        else:
            self._shown.update(text)


def standing_text(cost: int | None, bound: int) -> str:
    """Say how far the best plan so far is above the cost that no plan can go below."""
    if cost is None:
        return "looking for a plan within the supply"
    if cost <= bound:
        return "the least is proven, looking for fewer sticks"
    above = 100 * (cost - bound) / cost
    return f"at most {max(above, 0.01):.2f} % above the least"


@contextmanager
def checked_plans(what: str = "printed") -> Iterator[None]:
    """Plan within this: a plan that the verifier rejects is our defect and ends the command.

    Raises:
        StopError: a plan was rejected; the reason has been printed.
    """
    try:
        yield
    except WrongPlanError as error:
        text = f"a stock plan failed its own check, so nothing is {what} ({error})"
        raise complained(OUR_FAULT, text) from None
