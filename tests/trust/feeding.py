"""Feeds trimlang any bytes at all, the whole way through, and says what must hold of each."""

from __future__ import annotations

import csv
import json
from collections import Counter
from dataclasses import dataclass
from io import StringIO
from time import process_time
from typing import Final

from trimlang.compiler import Result, check_job, compile_job
from trimlang.diagnostics.code_pages import PAGES
from trimlang.diagnostics.message_form import MessageForm
from trimlang.diagnostics.show import show
from trimlang.reading import UnreadableError, decode
from trimlang.sheets.content.wall_pieces import wall_pieces
from trimlang.sheets.export.order_csv import order_csv
from trimlang.sheets.export.plan_json import plan_json
from trimlang.sheets.render.pages import render_sheets
from trimlang.stock.planner import QUICK

MOST_SECONDS: Final = 2.0


@dataclass(slots=True)
class Tally:
    """How many inputs went how far."""

    fed: int = 0
    no_text: int = 0
    planned: int = 0
    printed: int = 0
    slowest: float = 0.0

    def __str__(self) -> str:
        return (
            f"{self.fed:,} inputs: {self.no_text:,} no text, {self.planned:,} planned with"
            f" plan.json and CSV, {self.printed:,} printed as HTML;"
            f" slowest {self.slowest:.2f} s of CPU"
        )


def feed(data: bytes, tally: Tally, *, print_each: int = 1) -> None:
    """Compile ``data`` as a job file and hold the result against the promises.

    Every ``print_each``-th job that is free of errors is set in HTML too, which
    takes far longer than all the rest.

    Raises:
        AssertionError: a promise is broken.
        Exception: whatever trimlang raises, which is a defect whatever it is.
    """
    began = process_time()
    tally.fed += 1
    try:
        text = decode(data, "job.trim")
    except UnreadableError:
        tally.no_text += 1
        return
    result = check_job(text, name="job.trim")
    says_where(result)
    if result.ok:
        result = compile_job(text, name="job.trim", effort=QUICK)
        says_where(result)
    if result.ok:
        tally.planned += 1
        loses_nothing(result)
        json.loads(plan_json(result))
        rows = list(csv.reader(StringIO(order_csv(result))))
        assert len({len(row) for row in rows}) == 1
        if tally.planned % print_each == 0:
            tally.printed += 1
            sheets = render_sheets(result, qr=tally.printed % 8 == 1)
            assert all(html.rstrip().endswith("</html>") for html in sheets.values())
    took = process_time() - began
    tally.slowest = max(tally.slowest, took)
    assert took < MOST_SECONDS, f"{took:.1f} s of CPU"


def says_where(result: Result) -> None:
    """Each finding has a page and stands in its file, and nothing in it steers a terminal."""
    counts = {name: len(source.lines()) for name, source in result.sources.items()}
    for finding in result.diagnostics:
        assert finding.code in PAGES
        span = finding.span
        assert 1 <= span.line <= max(counts[span.file], 1), finding
        assert 1 <= span.column < span.end, finding
    for form in ("text", "json"):
        shown = StringIO()
        show(result.diagnostics, result.sources, shown, form=MessageForm(form))
        assert shown.getvalue().replace("\n", "").isprintable(), shown.getvalue()


def loses_nothing(result: Result) -> None:
    """Every run is on pieces, its own or those that go on past it, every piece on one stick."""
    along = wall_pieces(result.job, result.pieces)
    for room in result.job.rooms:
        here = along[room.name]
        named = {label for label, _ in (*here.own, *here.carried)}
        assert {run.label for run in room.runs if run.trims} <= named
    placed = Counter(
        place.piece for plan in result.plans for stick in plan.sticks for place in stick.places
    )
    all_pieces = Counter(piece.id for piece in result.pieces)
    if result.progress is None:
        assert placed == all_pieces
    else:
        cut = {one for one in all_pieces if result.progress.is_cut(one)}
        assert set(placed) - cut == set(all_pieces) - cut
    assert not placed or max(placed.values()) == 1
