"""One test for many cases of one kind: each that fails is told."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import wraps
from inspect import signature
from typing import Any

import pytest

Test = Callable[..., None]
FAILURES = (Exception, pytest.fail.Exception, BaseExceptionGroup)
"""What a test fails with, one held for every case among them; no stop and no skip."""


def every(names: str, cases: Iterable[Any]) -> Callable[[Test], Test]:
    """Hold a test for every case, as ``pytest.mark.parametrize`` does, but as one test.

    For scans of a table or a list, whose cases take less time than it takes to begin and end a test
    of its own.  ``names`` are those of the arguments, with commas between them, and each case has a
    value for each.  All cases share what the test's fixtures give.
    """
    arguments = names.split(", ")
    every_case = [case if len(arguments) > 1 else (case,) for case in cases]
    if not every_case:
        raise ValueError("a test of no case holds nothing")

    def decorate(test: Test) -> Test:
        @wraps(test)
        def hold(**fixtures: Any) -> None:
            failed: list[BaseException] = []
            for case in every_case:
                values = dict(zip(arguments, case, strict=True))
                try:
                    test(**fixtures, **values)
                except FAILURES as error:
                    error.add_note("case: " + ", ".join(f"{one}={values[one]!r}" for one in values))
                    failed.append(error)
            if failed:
                raise BaseExceptionGroup(f"{len(failed)} of {len(every_case)} cases", failed)

        # pytest looks here for the fixtures that are asked for
        given = signature(test)
        asked = [one for name, one in given.parameters.items() if name not in arguments]
        hold.__signature__ = given.replace(parameters=asked)  # type: ignore[attr-defined]
        return hold

    return decorate
