"""A file of another kind that was named as a job is told as such, with nothing else of it."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.jobs import walls
from trimlang.compiler import check_job, compile_job
from trimlang.diagnostics.source import Source
from trimlang.language.tidy_file import tidy
from trimlang.reading import UnreadableError, decode
from trimlang.sheets.export.dxf import floor_plan_dxf
from trimlang.sheets.export.plan_json import plan_json
from trimlang.sheets.render.pages import render_sheets
from trimlang.stock.planner import QUICK
from trimlang.tables.from_csv import from_csv
from trimlang.tables.to_csv import to_csv

JOB = walls("N: 40 in, left=butt, right=butt")


def test_what_trimlang_writes_is_no_job() -> None:
    result = compile_job(JOB, effort=QUICK)
    written = (
        plan_json(result),
        render_sheets(result, only=("tickets",))["tickets"],
        to_csv(Source("job.trim", JOB))[0],
        floor_plan_dxf(result).decode(),
    )
    for text in written:
        (found,) = check_job(text).diagnostics
        assert found.code == "T600", text[:80]
        assert [one.code for one in tidy(Source("job.trim", text)).findings] == ["T600"]


def test_a_pdf_is_called_so() -> None:
    with pytest.raises(UnreadableError) as told:
        decode(b"%PDF-1.7\n\xff\xfe", "tickets.pdf")
    assert told.value.code == "T600"
    assert told.value.facts["what"] == "a PDF"


def test_a_plan_is_no_table() -> None:
    made = from_csv(plan_json(compile_job(JOB, effort=QUICK)).encode(), Path("plan.json"))
    assert [one.code for one in made.findings] == ["T651"]


@pytest.mark.parametrize("slip", ["{", "[", "<", "room, length"])
def test_a_slip_in_the_first_line_hides_nothing(slip: str) -> None:
    found = [one.span.line for one in check_job(f"{slip}\n{JOB}E: ? in\n").diagnostics]
    assert found[0] == 1
    assert found[-1] > JOB.count("\n")
