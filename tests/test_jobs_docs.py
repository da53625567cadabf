"""What the pages on several jobs, tables and clusters show is so."""

from __future__ import annotations

import json
import re
import shlex
import shutil
from pathlib import Path

import pytest

from tests.conftest import EXAMPLES, ROOT
from trimlang.cli import main
from trimlang.diagnostics.code_pages import PAGES
from trimlang.tables.from_csv import from_csv
from trimlang.tables.table_columns import COLUMNS, RowKind

DOCS = ROOT / "docs"
JOB = (
    'include "prices.trim"\nroom "Study", trim base, open walk\n'
    "  N: 4{n} in, left=butt, right=butt\n"
)


def page(name: str) -> str:
    return (DOCS / name).read_text(encoding="utf-8")


def blocks(name: str, kind: str) -> list[str]:
    return re.findall(rf"^```{kind}\n(.*?)^```", page(name), re.MULTILINE | re.DOTALL)


@pytest.mark.parametrize("name", ["many-jobs.md", "csv-and-dxf.md"])
def test_every_command_runs(name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    shutil.copy(EXAMPLES / "prices.trim", tmp_path)
    for n in (1, 2, 3):
        (tmp_path / f"flat-{n}.trim").write_text(JOB.format(n=n), encoding="utf-8")
    (table,) = blocks("csv-and-dxf.md", "csv")
    (tmp_path / "walls.csv").write_text(table, encoding="utf-8")
    measured = "Name;Value [m]\nN;3,105\nE;2,631\n"
    (tmp_path / "attic.csv").write_text(measured, encoding="utf-8")
    (tmp_path / "notes.txt").write_text("Den\nN 10 ft 2 1/4\n", encoding="utf-8")
    for line in "".join(blocks(name, "sh")).splitlines():
        program, *words = shlex.split(line)
        assert program == "trimlang"
        if words[0] == "convert":
            words.append("--force")
        elif words[0] == "build" and "--format" not in words:
            words += ["--format", "json"]
        assert main(words) == 0, line


def test_the_columns_are_listed_and_the_table_is_sound() -> None:
    told = page("csv-and-dxf.md")
    listed = re.findall(r"^\| ((?:`\w+`(?:, )?)+) \|", told, re.MULTILINE)
    assert {name for row in listed for name in re.findall(r"`(\w+)`", row)} >= set(COLUMNS)
    assert all(f"`{kind}`" in told for kind in RowKind)
    (table,) = blocks("csv-and-dxf.md", "csv")
    assert "error" not in {one.severity for one in from_csv(table.encode(), Path("t.csv")).findings}


def test_every_code_named_has_a_page() -> None:
    for name in ("many-jobs.md", "csv-and-dxf.md"):
        assert set(re.findall(r"\bT\d{3}\b", page(name))) <= set(PAGES)


def test_the_recipe_is_there() -> None:
    assert "python examples/cluster.py" in page("many-jobs.md")
    assert (EXAMPLES / "cluster.py").is_file()


def test_a_site_is_worked_as_one_job(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    shutil.copy(EXAMPLES / "prices.trim", tmp_path)
    told = page("many-jobs.md")
    for name, text in re.findall(r"^```trim (\S+)\n(.*?)^```", told, re.MULTILINE | re.DOTALL):
        Path(name).write_text(text, encoding="utf-8")
    for n in (1, 2):
        flat = f'job "Flat {n}"\ninclude "prices.trim"\ninclude "flat-{n}-rooms.trim"\n'
        Path(f"flat-{n}.trim").write_text(flat, encoding="utf-8")
    build = ["build", "--format", "json"]
    assert main([*build, "flat-1.trim", "flat-2.trim", "--pool", "--out", "pool"]) == 0
    assert main([*build, "site.trim", "--out", "one"]) == 0
    pool, one = (
        json.loads(Path(plan).read_text(encoding="utf-8"))
        for plan in ("pool/site/plan.json", "one/plan.json")
    )
    assert one["summary"]["cost"] == pool["summary"]["cost"]
    capsys.readouterr()
    for line in re.findall(r"^    trimlang (mark .*)$", told, re.MULTILINE):
        assert main(shlex.split(line)) == 0
    assert "the stock in hand covers what is left" in capsys.readouterr().out
    Path("flat-1.site").write_text(Path("site.site").read_text(encoding="utf-8"), encoding="utf-8")
    assert main([*build, "flat-1.trim", "flat-2.trim", "--pool", "--out", "again"]) == 1
    assert "T720" in capsys.readouterr().err
