"""A setting as a line states it: which rows of the table its phrase may mean, and its values."""

from __future__ import annotations

from typing import Any

from trimlang.diagnostics import Span
from trimlang.language.written import Angle, Measure, Number, Price, Word
from trimlang.record import record
from trimlang.settings.setting_kinds import Setting


@record
class Stated:
    """A setting as stated: the table's rows that its phrase may mean, and the values written.

    ``yes`` says which it was, for a phrase that says yes or no.
    """

    rows: tuple[Setting[Any], ...]
    values: tuple[Word | Number | Measure | Angle | Price, ...]
    yes: bool
    span: Span

    @property
    def for_room(self) -> bool:
        """Whether a room may say it for itself."""
        return bool(self.rows) and self.rows[0].for_room

    def row(self) -> Setting[Any] | None:
        """Return the row that is meant, None where no row is for the kind of end that was named."""
        ends = [value.text for value in self.values[:1] if isinstance(value, Word)]
        if len(self.rows) == 1 and not (self.rows[0].end and ends):
            return self.rows[0]
        return next((row for row in self.rows if row.end in ends), None)
