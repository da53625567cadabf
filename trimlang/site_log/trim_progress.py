"""How one trim stands after the last line of the log."""

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
    """A line's item with nothing left open: the ticket's length, the stick, how long it was."""

    entry: Entry
    length: Fraction
    stick: str
    stick_length: Fraction


@record
class TrimProgress:
    """One trim after the last line: its sticks, its plan, what is to be cut.

    ``changed`` are the pieces of these whose tickets the last new plan changed, None
    where the first plan is still in force.  ``cut`` are the pieces as they were cut.
    """

    scaled: ScaledTrim
    rack: Rack
    layout: PlanInForce
    to_cut: frozenset[str]
    changed: frozenset[str] | None
    cut: Mapping[str, Part]
    told: tuple[FullEntry, ...]
    findings: tuple[Diagnostic, ...]
