"""A HiGHS solver that keeps quiet: one thread, nothing on the terminal."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any


def quiet_solver(options: Mapping[str, object]) -> Any:
    """A new ``highspy.Highs`` with the given options, on one thread."""
    solver = _quiet_class()()
    for option, value in {"threads": 1, "random_seed": 0, **options}.items():
        solver.setOptionValue(option, value)
    return solver


@cache
def _quiet_class() -> Any:
    """``Highs``, told to be quiet before its own start prints a banner."""
    import highspy

    class Quiet(highspy.Highs):
        def enableCallbacks(self) -> None:  # noqa: N802 - the library's own name
            self.setOptionValue("output_flag", False)
            super().enableCallbacks()  # type: ignore[no-untyped-call]

        def __init__(self) -> None:
            super().__init__()  # type: ignore[no-untyped-call]
            self.setOptionValue("output_flag", False)

    return Quiet
