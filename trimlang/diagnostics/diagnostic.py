"""A diagnostic is a value: a code, a place in the user's file, a cause and a remedy.

Passes collect diagnostics and go on, rather than raise an error at the first one, so that the
user sees everything that is wrong at once.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import field
from typing import TYPE_CHECKING

from trimlang.diagnostics.severity import Severity
from trimlang.record import record

if TYPE_CHECKING:
    from trimlang.diagnostics.code_page import Page
    from trimlang.diagnostics.whole import Whole


@record
class Span:
    """A stretch of one line: lines and columns count from 1, ``end`` is behind the last column.

    Spans are sorted by their files' names, and within a file from top to bottom.
    """

    file: str
    line: int
    column: int
    end: int

    def __lt__(self, other: Span) -> bool:
        mine = (self.file, self.line, self.column, self.end)
        return mine < (other.file, other.line, other.column, other.end)


@record
class Diagnostic:
    """One finding about the job file.

    ``facts`` are what its message was filled with, by name, and what only a mend needs to know.
    They do not count when two findings are compared: two that read alike are equal.
    """

    code: str
    severity: Severity
    span: Span
    message: str
    remedy: str
    facts: tuple[tuple[str, object], ...] = field(default=(), compare=False, repr=False)

    @property
    def page(self) -> Page:
        """The page of its code, with its title and family."""
        # Imported here: most jobs have no findings, and so never load the pages.
        from trimlang.diagnostics.code_pages import PAGES

        return PAGES[self.code]

    def needs_any(self, lost: Collection[Whole]) -> bool:
        """Tell whether something that this finding depends on was lost, so it is not to be told."""
        return any(one in lost for one in self.page.needs)

    def settles(self, other: Diagnostic) -> bool:
        """Tell whether it says better what another finding says, so that one is not to be told."""
        places = dict(self.facts).get("settled")
        return (
            other.code in self.page.settles and isinstance(places, tuple) and other.span in places
        )


def say(code: str, span: Span, **facts: object) -> Diagnostic:
    """Return the diagnostic ``code`` at ``span``, its page's wording filled with ``facts``.

    Raises:
        KeyError: there is no such code, or its wording names a fact that is not given.
    """
    from trimlang.diagnostics.code_pages import PAGES

    # The wording stands on the page alone, so that `explain`, the reference and the message cannot
    # differ.
    page = PAGES[code]
    return Diagnostic(
        code=code,
        severity=page.severity,
        span=span,
        message=page.message.format(**facts),
        remedy=page.remedy.format(**facts),
        facts=tuple(facts.items()),
    )


def has_errors(diagnostics: Iterable[Diagnostic]) -> bool:
    """Tell whether any finding stops the sheets."""
    return any(finding.severity is Severity.ERROR for finding in diagnostics)
