"""One trim's progress after the last line of the log."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from trimlang.diagnostics import Diagnostic
from trimlang.record import record
from trimlang.site_log.rack import Rack
from trimlang.site_log.whole_units import PlanInForce, ScaledTrim
from trimlang.stock.problem import Part
from trimlang.survey.log_entries import Entry


@record
class FullEntry:
    """An entry with everything filled in: the ticket's length, the stick and its whole length."""

    entry: Entry
    length: Fraction
    stick: str
    stick_length: Fraction


@record
class TrimProgress:
    """One trim after the last line: its sticks, and the plan of what is still to cut.

    ``changed`` are the pieces still to cut whose tickets the last new plan changed, None while
    the first plan is still in force.  ``cut`` are the cut pieces, as they were cut.
    """

    scaled: ScaledTrim
    rack: Rack
    layout: PlanInForce
    changed: frozenset[str] | None
    cut: Mapping[str, Part]
    full_entries: tuple[FullEntry, ...]
    findings: tuple[Diagnostic, ...]
