"""A diagnostic is a value: a code, a place in the user's file, a cause and a remedy."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from trimlang.diagnostics.severity import Severity
from trimlang.record import record

if TYPE_CHECKING:
    from trimlang.diagnostics.code_page import Page
    from trimlang.diagnostics.whole import Whole


@dataclass(frozen=True, slots=True, order=True)
class Span:
    """A stretch of one line: columns count from 1, ``end`` is the column after the last."""

    file: str
    line: int
    column: int
    end: int


@record
class Diagnostic:
    """One finding about the job file.

    ``facts`` are what its message was filled with, by name, and what only a mend
    needs to know; two findings that read alike are alike.
    """

    code: str
    severity: Severity
    span: Span
    message: str
    remedy: str
    facts: tuple[tuple[str, object], ...] = field(default=(), compare=False, repr=False)

    @property
    def page(self) -> Page:
        """What is written about it, such as its family."""
        # most jobs have no findings, and so never load the pages
        from trimlang.diagnostics.code_pages import PAGES

        return PAGES[self.code]

    def needs_any(self, lost: Collection[Whole]) -> bool:
        """Tell whether something is lost without which it is pointless."""
        return any(one in lost for one in self.page.needs)


def say(code: str, span: Span, **facts: object) -> Diagnostic:
    """Make the diagnostic ``code`` at ``span``, its page's wording filled with ``facts``."""
    from trimlang.diagnostics.code_pages import PAGES

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
