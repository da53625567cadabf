"""Lengths that no wall has: a fraction by itself that no tape has, where feet were meant.

“3/10” may be three feet ten.  As three tenths of an inch it would bring up a wall too short for its
trim and a room that does not close; so it is told as a slip, and the wall counts as not read.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from trimlang.diagnostics import Diagnostic, say
from trimlang.diagnostics.named_codes import MISPLACED, OFF_TAPE
from trimlang.diagnostics.suggestion import Suggestion
from trimlang.language.tree import RunLine, Statement, WallsLine
from trimlang.lengths.units import LengthUnit

_WANTED: Final = "a length that a tape has"


def without_no_lengths(
    statement: Statement | None, problems: list[Diagnostic]
) -> tuple[Statement | None, list[Diagnostic]]:
    """Return a line without its walls of no length, None where it is such a wall; and its findings.

    Where walls were taken out, the line says that some are ``lost``.
    """
    odd = {one.span.column: one for one in problems if _means_feet(one)}
    stretches = statement.stretches if isinstance(statement, WallsLine) else (statement,)
    short = [
        one
        for one in stretches
        if isinstance(one, RunLine)
        and one.length.span.column in odd
        and all(0 < amount < 1 and unit != LengthUnit.FOOT for amount, unit in one.length.parts)
    ]
    if not short:
        return statement, problems
    # The same finding, in the words of a wall that is no wall; all others stay as they are.
    told = {one.length.span.column for one in short}
    found = [
        _no_length(one) if one.span.column in told and _means_feet(one) else one for one in problems
    ]
    if isinstance(statement, WallsLine):
        left = tuple(one for one in statement.stretches if one not in short)
        return replace(statement, stretches=left, lost=True), found
    return None, found


def _means_feet(finding: Diagnostic) -> bool:
    return finding.code == OFF_TAPE and bool(dict(finding.facts)["instead"])


def _no_length(finding: Diagnostic) -> Diagnostic:
    facts = dict(finding.facts)
    remedy = Suggestion(f"{facts['guess']}Look at the tape once more.", str(facts["instead"]))
    return say(MISPLACED, finding.span, word=facts["written"], wanted=_WANTED, remedy=remedy)
