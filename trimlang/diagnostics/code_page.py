"""What is written about one diagnostic."""

from __future__ import annotations

from trimlang.diagnostics.family import Family
from trimlang.diagnostics.severity import Severity
from trimlang.diagnostics.whole import Whole
from trimlang.record import record


@record
class Page:
    """One diagnostic: ``message`` and ``remedy`` take named facts in braces.

    ``example`` is a whole job file, or a table of a survey, that triggers it (a test
    tries each); empty where only the world outside the file can (a missing file).
    ``needs`` and ``loses`` say which findings make which others pointless: see ``Whole``.
    """

    code: str
    title: str
    message: str
    remedy: str
    why: str
    example: str
    severity: Severity = Severity.ERROR
    needs: tuple[Whole, ...] = ()
    loses: Whole | None = None

    @property
    def family(self) -> Family:
        """What kind of fault it is about."""
        return Family.of(self.code)
