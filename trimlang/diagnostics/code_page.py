"""What is written about one diagnostic."""

from __future__ import annotations

from trimlang.diagnostics.severity import Severity
from trimlang.record import record


@record
class Page:
    """One diagnostic: ``message`` and ``remedy`` take named facts in braces.

    ``example`` is a whole job file, or a table of a survey, that triggers it (a test
    tries each);
    empty where only the world outside the file can (a missing file).
    """

    code: str
    title: str
    message: str
    remedy: str
    why: str
    example: str
    severity: Severity = Severity.ERROR
