"""No wrong ticket on paper: what the PDF says, read back by pypdf, against the oracle."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import HealthCheck, Phase, given, settings

from tests.conftest import EXAMPLES
from tests.proof.oracle import faults
from tests.proof.random_rooms import jobs
from tests.proof.tickets_seen import Seen, in_pdf
from trimlang.compiler import compile_job
from trimlang.sheets.pages import render_sheets
from trimlang.sheets.pdf import to_pdf
from trimlang.stock.planner import QUICK

# a job under way has no tickets for what is cut
SHIPPED = sorted(
    path for path in EXAMPLES.glob("*.trim") if path.stem not in ("prices", "site-log")
)
ON_A4 = ("metric", "stair", "doors")


def on_paper(text: str, paper: str, path: Path | None = None) -> list[Seen]:
    result = compile_job(text, path=path, effort=QUICK)
    assert result.ok, [one.message for one in result.diagnostics]
    return in_pdf(to_pdf(render_sheets(result, paper=paper, qr=False)["tickets"]))


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.stem)
def test_the_examples_on_paper(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    paper = "a4" if path.stem in ON_A4 else "letter"
    assert faults(text, on_paper(text, paper, path), path.parent) == []


@pytest.mark.parametrize("paper", ["letter", "a4"])
@given(jobs(most_rooms=8))
@settings(max_examples=2, phases=[Phase.generate], suppress_health_check=[HealthCheck.too_slow])
def test_made_up_rooms_on_paper(paper: str, text: str) -> None:
    assert faults(text, on_paper(text, paper)) == []
