"""A point between thousands is asked about, wherever a tape was read in millimetres."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.every import every
from tests.jobs import walls
from trimlang.compiler import check_job
from trimlang.diagnostics.mending import mends
from trimlang.tables.from_csv import from_csv


def codes(text: str) -> list[str]:
    return [one.code for one in check_job(text).diagnostics]


@every(
    "length, asked",
    [
        ("2.740", True),
        ("2.740 mm", True),
        ("12.740", True),
        ("912.500", True),
        ("0.900", True),
        ("2.740 m", False),
        ("2.74", False),
        ("2740.125", False),
        ("2740", False),
        ("274.000 cm", False),
    ],
)
def test_three_figures_behind_a_point_in_millimetres(length: str, asked: bool) -> None:
    text = "unit mm\n" + walls(f"  N: {length}, left=butt, right=butt")
    assert ("T251" in codes(text)) is asked


@pytest.mark.parametrize(
    "line",
    [
        "stock base: 3.600 mm at 5.00",
        "on-hand base: 2 of 1.200 mm",
        'room "B", trim base\n  N: 900 mm, left=butt, right=butt\n  opening 0.812 mm',
    ],
)
def test_sticks_offcuts_and_openings_are_asked_about_too(line: str) -> None:
    assert "T251" in codes(walls("  N: 40 in, left=butt, right=butt") + line + "\n")


def test_a_section_may_be_given_to_thousandths() -> None:
    section = "trim fine: 14.288 mm thick, 88.900 mm tall\n"
    job = section + walls("  N: 900 mm, left=butt, right=butt")
    assert "T251" not in codes("unit mm\n" + job)
    assert "T251" not in codes(walls("  N: 29.125 in, left=butt, right=butt"))


def test_both_readings_are_offered() -> None:
    line = "  N: 2.740, left=butt, right=butt"
    (found,) = [
        one for one in check_job("unit mm\n" + walls(line)).diagnostics if one.code == "T251"
    ]
    assert "2740 mm" in found.message
    assert [mend.edits[0].text for mend in mends(found, line)] == ["2740 mm", "2.74 mm"]


@pytest.mark.parametrize("cell", ["2.740", "2.740 mm", '"2,740"'])
def test_a_table_is_asked_about_in_its_cell(cell: str, tmp_path: Path) -> None:
    (tmp_path / "prices.trim").write_text("unit mm\n" + walls(""), encoding="utf-8")
    table = f"room,wall,length,left,right\nStudy,N,{cell},butt,butt\n"
    made = from_csv(table.encode(), tmp_path / "survey.csv", "prices.trim")
    assert any((one.span.file, one.span.line) == ("survey.csv", 2) for one in made.findings)
