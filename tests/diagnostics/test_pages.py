"""Every page's example brings up its code, and every message reads as it should."""

from collections.abc import Callable
from pathlib import Path

import pytest
from syrupy.assertion import SnapshotAssertion

from tests.conftest import ROOT
from tests.every import every
from trimlang.compiler import compile_job
from trimlang.diagnostics.code_pages import PAGES, page_text
from trimlang.diagnostics.reference import reference
from trimlang.diagnostics.severity import Severity
from trimlang.stock.planner import QUICK
from trimlang.tables.from_csv import from_csv

WITH_EXAMPLE = sorted(
    code for code, page in PAGES.items() if page.example and not page.family.is_of_tables
)
OF_TABLES = sorted(code for code, page in PAGES.items() if page.family.is_of_tables)


@every("code", WITH_EXAMPLE)
def test_the_example_brings_it_up(code: str, tmp_path: Path, snapshot: SnapshotAssertion) -> None:
    page = PAGES[code]
    path = tmp_path / "job.trim"
    result = compile_job(page.example, path=path, effort=QUICK)
    found = [finding for finding in result.diagnostics if finding.code == code]
    assert found
    assert all(finding.severity is page.severity for finding in found)
    lines = page.example.split("\n")
    for finding in found:
        span = finding.span
        assert span.file == "job.trim"
        assert 1 <= span.line <= len(lines)
        assert 1 <= span.column < span.end
    shown = [
        (one.code, one.span.line, one.span.column, one.span.end, one.message, one.remedy)
        for one in result.diagnostics
    ]
    assert shown[:5] == snapshot(name=code)
    # an example is about one thing: errors of other codes would hide it
    others = {one.code for one in result.diagnostics if one.severity is Severity.ERROR} - {code}
    follow_on = {"T206"} if code in ("T105", "T106", "T117", "T601", "T602") else set()
    if code == "T312":  # it says which side of a disputed corner (T301) is the wrong one
        follow_on = {"T301"}
    assert others <= follow_on | ({"T100"} if code == "T106" else set())


def test_pages_without_an_example_are_about_files() -> None:
    bare = {code for code in PAGES if not PAGES[code].example}
    # T117 would need a hundred thousand lines, and no word is on its way out yet (T130);
    # T701 and T720 need other files beside the job
    assert {code for code in bare if not code.startswith("T6")} == {"T117", "T130", "T701", "T720"}
    # includes and room tags can be shown in a job file
    assert not bare & {"T601", "T602", "T641"}


@pytest.mark.parametrize("code", OF_TABLES)
def test_a_tables_example_brings_up_its_code_and_no_other(
    code: str, snapshot: SnapshotAssertion
) -> None:
    found = from_csv(PAGES[code].example.encode(), Path("walls.csv")).findings
    assert {one.code for one in found} - {"T206"} == {code}
    assert all(one.severity is PAGES[code].severity for one in found)
    assert [(one.span.line, one.span.column, one.message, one.remedy) for one in found] == snapshot
    assert "A survey in CSV that brings it up" in page_text(PAGES[code])


def test_the_reference_is_made_from_the_pages(same_in_git: Callable[[Path, str], None]) -> None:
    same_in_git(ROOT / "docs" / "diagnostics.md", reference())


def test_a_page_as_text(snapshot: SnapshotAssertion) -> None:
    assert page_text(PAGES["T301"]) == snapshot
