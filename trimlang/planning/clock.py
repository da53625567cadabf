"""How the time for proofs is shared out among a job's trims."""

from __future__ import annotations

from dataclasses import replace
from time import thread_time

from trimlang.stock.planner import FULL, Effort


class Clock:
    """Shares the time for proofs among the trims; what one does not need, the others get."""

    def __init__(self, effort: Effort | None, trims: int) -> None:
        self._effort = effort or FULL
        # The thread's own CPU time, so that other programs on the machine do not shorten the
        # search.
        self._ends = thread_time() + self._effort.seconds
        self._left = trims

    def share(self) -> Effort:
        """Return the effort for the next trim, with an equal share of the seconds that are left."""
        seconds = max(self._ends - thread_time(), 0.0) / max(self._left, 1)
        self._left -= 1
        return replace(self._effort, seconds=seconds)
