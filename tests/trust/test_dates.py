"""No sheet holds the time at which it was made, so SOURCE_DATE_EPOCH has nothing to change."""

from __future__ import annotations

from io import BytesIO

import pypdf
import pytest

from tests.jobs import walls
from trimlang.compiler import compile_job
from trimlang.sheets.render.pages import render_sheets
from trimlang.sheets.render.pdf import to_pdf
from trimlang.stock.planner import QUICK


def test_the_time_of_making_stands_nowhere(monkeypatch: pytest.MonkeyPatch) -> None:
    text = walls("N: 40 in, left=butt, right=butt")
    made = []
    for epoch in ("0", "1700000000"):
        monkeypatch.setenv("SOURCE_DATE_EPOCH", epoch)
        sheets = render_sheets(compile_job(text, effort=QUICK))
        made.append((sheets, to_pdf(sheets["saw-sheet"])))
    assert made[0] == made[1]
    facts = pypdf.PdfReader(BytesIO(made[0][1])).metadata or {}
    assert not {"/CreationDate", "/ModDate"} & set(facts)
