"""No wrong ticket on paper: what the PDF says, read back by pypdf, against the oracle."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from tests.conftest import EXAMPLES
from tests.proof.oracle import faults
from tests.proof.oracle_reading import BEYOND
from tests.proof.random_rooms import jobs
from tests.proof.tickets_on_paper import in_pdf
from tests.proof.tickets_seen import Seen
from tests.sheets.jobs import LOW_TO_TALL, SMALL
from trimlang.compiler import compile_job
from trimlang.sheets.render.pages import render_sheets
from trimlang.sheets.render.pdf import to_pdf
from trimlang.stock.planner import QUICK

SHIPPED = sorted(path for path in EXAMPLES.glob("*.trim") if path.stem not in BEYOND)
ON_A4 = ("metric", "stair", "doors")
AT_ONCE = ("one-room", "stair")
"""On paper at every change.  The others are, as HTML; at night they are printed too."""


def page_of(text: str, paper: str, path: Path | None = None, ticket: str | None = None) -> str:
    """Return the page of a job's tickets, compiled quickly."""
    result = compile_job(text, path=path, effort=QUICK)
    assert result.ok, [one.message for one in result.diagnostics]
    return render_sheets(result, paper=paper, ticket=ticket, qr=False)["tickets"]


def on_paper(text: str, paper: str, path: Path | None = None) -> list[Seen]:
    return in_pdf(to_pdf(page_of(text, paper, path)))


@pytest.mark.parametrize(
    "path",
    [
        pytest.param(path, marks=() if path.stem in AT_ONCE else pytest.mark.nightly, id=path.stem)
        for path in SHIPPED
    ],
)
def test_the_examples_on_paper(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    paper = "a4" if path.stem in ON_A4 else "letter"
    assert faults(text, on_paper(text, paper, path), path.parent) == []


@pytest.mark.parametrize(
    ("text", "ticket", "shapes"),
    [
        (LOW_TO_TALL, None, {"card", "wide", "strip", "strip flag"}),
        (SMALL, "100mm x 50mm", {"wide"}),
    ],
    ids=["paper", "label"],
)
def test_every_shape_of_ticket_on_paper(text: str, ticket: str | None, shapes: set[str]) -> None:
    page = page_of(text, "letter", ticket=ticket)
    assert set(re.findall(r'<article class="ticket ([a-z ]+)(?: [a-z]\d+)*"', page)) == shapes
    assert faults(text, in_pdf(to_pdf(page))) == []


@pytest.mark.nightly  # as HTML at every change: test_oracle_rooms.py
@given(jobs(most_rooms=2), st.sampled_from(["letter", "a4"]))
@settings(max_examples=20, phases=[Phase.generate], suppress_health_check=[HealthCheck.too_slow])
def test_made_up_rooms_on_paper(text: str, paper: str) -> None:
    assert faults(text, on_paper(text, paper)) == []
