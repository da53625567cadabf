"""The page of a diagnostic: everything that is written about one code."""

from __future__ import annotations

from trimlang.diagnostics.family import Family
from trimlang.diagnostics.severity import Severity
from trimlang.diagnostics.whole import Whole
from trimlang.record import record


@record
class Page:
    """One code's page.  ``message`` and ``remedy`` have named facts in braces.

    ``example`` is a whole job file, or a survey as CSV, that triggers it (a test tries each); it
    is empty where only something outside the file can, such as a missing file.  ``needs`` and
    ``loses`` say which findings make which others pointless: see ``Whole``.  ``settles`` are codes
    of findings that this one says better, at the places of its fact ``settled``.  ``in_a_table``
    is the remedy where the wall stands in a table, for which a line of a job file is no help.
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
    settles: tuple[str, ...] = ()
    in_a_table: str = ""

    @property
    def family(self) -> Family:
        """The kind of fault that it is about."""
        return Family.of(self.code)
