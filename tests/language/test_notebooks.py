"""Surveys as a hurried hand writes them: mended line by line, every length is the one measured."""

from __future__ import annotations

import pytest

from tests.jobs import TRIM
from trimlang.compiler import check_job
from trimlang.diagnostics import Severity
from trimlang.diagnostics.mending import mends

FLAT = """\
rm "Den" base, ends in
• N 10` 2 1/4, E 8 ft 7 9/16
S 10-2-1/4 IN W 8 ft 7 9/16.
room «Bath» trim base, ends in
N 60 1\\2 then E 72
S 60 and 1/2, dr 30, W 42
"""
HOUSE = """\
Room: Hall, trim base, end in
N N 12 ft, dor closet 30 in wide
N2: 6 ft left=butt right=in-corner
E = 9 ft 3, right=incorner
S 20 ft & 6, W 9-3
"""
METRIC = """\
Zimmer "Küche" base, ends innen
Wand N 3,25 m
E: 2,40 m, in, in
S 1.45 m, Tür Flur 80 cm, S2 1OO cm
W 240cm ?
"""


def _mended(text: str) -> str:
    """Apply the first mend of the first error, again and again until none is left."""
    for _ in range(30):
        errors = [one for one in check_job(text).diagnostics if one.severity is Severity.ERROR]
        if not errors:
            return text
        lines = text.split("\n")
        at = errors[0].span.line - 1
        made = mends(errors[0], lines[at], lines)
        assert made, (lines[at], errors[0])
        for edit in sorted(made[0].edits, key=lambda one: (one.span.line, -one.span.column)):
            row, span = edit.span.line - 1, edit.span
            lines[row] = lines[row][: span.column - 1] + edit.text + lines[row][span.end - 1 :]
        text = "\n".join(lines)
    return text


MENDED = {
    FLAT: """\
room "Den", trim base, ends in
N 10' 2 1/4, E 8 ft 7 9/16
S 10 ft 2 1/4 IN, W 8 ft 7 9/16
room "Bath", trim base, ends in
N 60 1/2, E 72
S 60 1/2, door 30, W 42
""",
    HOUSE: """\
Room "Hall", trim base, ends in
N 12 ft, door closet 30 in
N2: 6 ft, left=butt, right=in-corner
E: 9 ft 3, right=in-corner
S 20 ft 6, W 9 ft 3
""",
    METRIC: """\
room "Küche", trim base, ends in-corner
N 3.25 m
E: 2.40 m, left=in, right=in
S 1.45 m, door Flur 80 cm, S2 100 cm
W 240cm
""",
}


@pytest.mark.parametrize("notes", MENDED, ids=["a flat", "a house", "in metres"])
def test_mended_line_by_line_a_survey_has_every_length_that_was_written(notes: str) -> None:
    assert _mended(TRIM + notes) == TRIM + MENDED[notes]
