"""A HiGHS solver that keeps quiet: one thread, nothing on the terminal."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache
from time import thread_time
from typing import Any, Final

HAIR: Final = 1e-7
"""Differences below this are the solver's rounding errors."""
CIRCLING: Final = 2.0
"""By the clock on the wall a solver has so many times the seconds that it may work."""

SEARCH: Final = {
    "presolve": "off",
    "mip_heuristic_run_feasibility_jump": False,
    "mip_heuristic_run_rens": False,
    "mip_heuristic_run_rins": False,
    "mip_heuristic_run_root_reduced_cost": False,
}
"""Options of small integer programs: on these each of them takes longer than all the rest."""


def quiet_solver(options: Mapping[str, object]) -> Any:
    """Return a new ``highspy.Highs`` with the given options; the same seed each time."""
    solver = _quiet_class()()
    for option, value in {"threads": 1, "random_seed": 0, **options}.items():
        solver.setOptionValue(option, value)
    return solver


def add_row(solver: Any, lower: float, entries: Mapping[int, float]) -> None:
    """Add a row that is to come to ``lower`` or more; ``entries`` are its factors by column."""
    _add(solver.addRow, (lower, solver.inf), entries)


def add_column(solver: Any, price: float, upper: float, entries: Mapping[int, float]) -> None:
    """Add a column from 0 to ``upper`` at a ``price``; ``entries`` are its factors by row."""
    _add(solver.addCol, (price, 0.0, upper), entries)


def _add(add: Any, limits: tuple[float, ...], entries: Mapping[int, float]) -> None:
    import numpy as np

    places = np.array(list(entries), dtype=np.int32)
    add(*limits, len(entries), places, np.array(list(entries.values()), dtype=np.float64))


def solve_within(solver: Any, seconds: float) -> None:
    """Solve a program, and stop once this thread has worked for so many seconds.

    The solver's own limit goes by the clock on the wall, which other work on the machine
    would use up.  It is only for a solver that goes round in circles, where it does not ask.
    """
    ends = thread_time() + seconds
    stop_when(solver, lambda: thread_time() > ends)
    solver.setOptionValue("time_limit", CIRCLING * seconds)
    solver.run()


def stop_when(solver: Any, late: Callable[[], bool]) -> None:
    """Have each run of a solver stop once ``late`` says so."""

    def asked(event: Any) -> None:
        if late():
            event.interrupt()

    solver.cbMipInterrupt.subscribe(asked)
    solver.cbSimplexInterrupt.subscribe(asked)
    solver.cbIpmInterrupt.subscribe(asked)


@cache
def _quiet_class() -> Any:
    """Return ``Highs`` made quiet before its constructor prints a banner."""
    import highspy

    class Quiet(highspy.Highs):
        def enableCallbacks(self) -> None:  # noqa: N802 - the library's own name
            self.setOptionValue("output_flag", False)
            super().enableCallbacks()  # type: ignore[no-untyped-call]

        def __init__(self) -> None:
            super().__init__()  # type: ignore[no-untyped-call]
            self.setOptionValue("output_flag", False)

    return Quiet
