"""The command line as its user meets it: what is printed where, exit codes, what is written."""

from __future__ import annotations

import codecs
import gc
import io
import json
import subprocess
import sys
from pathlib import Path

import jsonschema
import pytest

import trimlang
from tests.conftest import EXAMPLES
from tests.jobs import walls
from trimlang.cli import main
from trimlang.output.made_by import MARK
from trimlang.sheets.export.plan_file import schema as plan_schema

GOOD = walls("N: 40 in, left=butt, right=out-corner\nE: 50 in, left=out-corner, right=butt")
WARNED = walls("N: 40 5/12 in, left=butt, right=butt")
BAD = walls("N: 0 in, left=butt, right=butt")


@pytest.fixture
def job(tmp_path: Path) -> Path:
    path = tmp_path / "job.trim"
    path.write_text(GOOD, encoding="utf-8")
    return path


def test_check_prints_diagnostics_and_closings_only(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    closing = "Study: not checked: an open walk\n"
    assert main(["check", str(job)]) == 0
    assert capsys.readouterr() == (closing, "")
    job.write_text(WARNED, encoding="utf-8")
    assert main(["check", str(job)]) == 0
    assert "T112" in capsys.readouterr().err
    job.write_text(BAD, encoding="utf-8")
    assert main(["check", str(job)]) == 1
    out, err = capsys.readouterr()
    assert out == closing
    assert "job.trim:5:4: error T202" in err


def test_a_process_that_gives_many_commands_keeps_nothing_of_them(job: Path) -> None:
    kept = gc.get_freeze_count()
    assert main(["check", str(job)]) == 0
    assert gc.get_freeze_count() <= kept


def test_a_warning_is_printed_once_by_a_command(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    job.write_text(WARNED, encoding="utf-8")
    out = str(job.parent / "shop")
    assert main(["build", str(job), "--out", out, "--format", "json"]) == 0
    assert capsys.readouterr().err.count("T112") == 1
    other = job.with_name("other.trim")
    other.write_text(GOOD, encoding="utf-8")
    site = ["build", "--pool", str(job), str(other), "--format", "json", "--out"]
    assert main([*site, str(job.parent / "site")]) == 0
    assert capsys.readouterr().err.count("T112") == 1
    # where the two cannot be bought for together, that alone is told besides
    scarce = WARNED.replace(", 16 ft at 24.10", " at most 1")
    job.write_text(scarce, encoding="utf-8")
    other.write_text(scarce, encoding="utf-8")
    assert main([*site, str(job.parent / "site")]) == 1
    err = capsys.readouterr().err
    assert (err.count("warning T112"), err.count("error T")) == (2, 1)


def test_build_writes_the_whole_set(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = job.parent / "shop"
    assert main(["build", str(job), "--out", str(out), "--format", "html"]) == 0
    names = {path.name for path in out.iterdir()} - {MARK}
    assert names >= {"tickets.html", "stock-order.html", "checklist.html", "plan.json"}
    assert not any(name.endswith(".pdf") for name in names)
    assert "2 pieces from 1 stick" in capsys.readouterr().out


def test_build_writes_html_and_pdf_by_default(job: Path) -> None:
    assert main(["build", str(job)]) == 0
    out = job.parent / "job-sheets"
    for sheet in ("tickets", "stock-order", "checklist"):
        assert (out / f"{sheet}.html").read_text(encoding="utf-8").startswith("<!DOCTYPE html>")
        assert (out / f"{sheet}.pdf").read_bytes().startswith(b"%PDF-")


def test_a_job_with_errors_writes_nothing(job: Path) -> None:
    out = job.parent / "shop"
    assert main(["build", str(job), "--out", str(out), "--format", "json"]) == 0
    before = (out / "plan.json").read_bytes()
    job.write_text(BAD, encoding="utf-8")
    assert main(["build", str(job), "--out", str(out), "--format", "json"]) == 1
    assert (out / "plan.json").read_bytes() == before
    assert sorted(path.name for path in job.parent.iterdir()) == ["job.trim", "shop"]


def test_a_folder_of_the_users_is_left_alone(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = job.parent / "photos"
    out.mkdir()
    (out / "wall.jpg").write_bytes(b"x")
    assert main(["build", str(job), "--out", str(out), "--format", "json"]) == 2
    assert "was not made by trimlang" in capsys.readouterr().err
    assert [path.name for path in out.iterdir()] == ["wall.jpg"]


def test_what_the_user_adds_to_the_folder_stays(job: Path) -> None:
    out = job.parent / "shop"
    assert main(["build", str(job), "--out", str(out), "--format", "html"]) == 0
    (out / "notes.txt").write_text("paint is late", encoding="utf-8")
    (out / "photos").mkdir()
    (out / "photos" / "a.jpg").write_bytes(b"x")
    assert main(["build", str(job), "--out", str(out), "--format", "json"]) == 0
    names = {path.name for path in out.iterdir()}
    assert names == {"notes.txt", "photos", "plan.json", MARK}
    assert (out / "photos" / "a.jpg").read_bytes() == b"x"


def test_tables_are_read_by_spreadsheets_as_they_are(job: Path) -> None:
    out = job.parent / "shop"
    job.write_text(job.read_text(encoding="utf-8").replace('room "', 'room "é'), encoding="utf-8")
    assert main(["build", str(job), "--out", str(out), "--format", "csv"]) == 0
    tables = {path.name: path.read_bytes() for path in out.glob("*.csv")}
    assert tables.keys() == {"stock-order.csv", "cut-list.csv", "sticks.csv"}
    assert "é" in tables["cut-list.csv"].decode()
    for data in tables.values():
        assert data.startswith(codecs.BOM_UTF8)
        assert data.count(b"\n") == data.count(b"\r\n") > 1


def test_options_of_the_sheets(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = job.parent / "shop"
    build = ["build", str(job), "--out", str(out), "--format", "html"]
    options = ["--show", "mm", "--language", "es", "--no-codes", "--paper", "a4"]
    assert main([*build, *options]) == 0
    page = (out / "tickets.html").read_text(encoding="utf-8")
    assert 'lang="es"' in page
    assert "\xa0mm" in page
    assert 'class="qr"' not in page
    assert (out / "stock-order.csv").exists()
    assert main([*build, "--ticket", "100mm x 50mm"]) == 0
    capsys.readouterr()
    for wrong in (["--language", "tlh"], ["--ticket", "small"]):
        assert main([*build, *wrong]) == 2
        assert capsys.readouterr().err.count("\n") == 1
    templates = job.parent / "mine"
    templates.mkdir()
    (templates / "tickets.html").write_text("{% for %}", encoding="utf-8")
    assert main([*build, "--templates", str(templates)]) == 2
    assert "tickets.html:1" in capsys.readouterr().err
    assert main([*build, "--templates", str(job.parent / "none")]) == 2
    assert "none" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("name", "said"),
    [("tickts.html", "meant to be tickets.html?"), ("own.html", "such as tickets.html")],
)
def test_templates_that_nothing_asks_for_are_refused(
    job: Path, capsys: pytest.CaptureFixture[str], name: str, said: str
) -> None:
    out = job.parent / "shop"
    build = ["build", str(job), "--out", str(out), "--format", "html"]
    templates = job.parent / "mine"
    templates.mkdir()
    (templates / name).write_text("mine", encoding="utf-8")
    assert main([*build, "--templates", str(templates)]) == 2
    assert said in capsys.readouterr().err
    assert not out.exists()
    # beside one that is asked for it may be a part of that one
    (templates / "tickets.html").write_text("mine", encoding="utf-8")
    assert main([*build, "--templates", str(templates)]) == 0


def test_wrong_usage(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", str(tmp_path / "none.trim")]) == 2
    assert main(["check", str(tmp_path)]) == 2
    assert main(["explain", "T999"]) == 2
    err = capsys.readouterr().err
    assert "cannot read" in err
    assert "Traceback" not in err
    for wrong in ([], ["bild"], ["build"], ["build", "x", "--format", "docx"]):
        with pytest.raises(SystemExit) as stop:
            main(wrong)
        assert stop.value.code == 2


def test_a_file_that_is_no_text(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "job.trim"
    path.write_bytes(b"room \xff\xfe")
    assert main(["check", str(path)]) == 1
    assert "T604" in capsys.readouterr().err


def test_the_target_cannot_be_written(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    blocked = job.parent / "file"
    blocked.write_text("x", encoding="utf-8")
    assert main(["build", str(job), "--out", str(blocked), "--format", "json"]) == 2
    assert main(["build", str(job), "--out", str(blocked / "in"), "--format", "json"]) == 2
    assert "cannot write" in capsys.readouterr().err
    assert blocked.read_text(encoding="utf-8") == "x"


def test_explain_version_and_help(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", "t301"]) == 0
    assert "T301" in capsys.readouterr().out
    for option, text in (("--version", trimlang.__version__), ("--help", "exit code")):
        with pytest.raises(SystemExit) as stop:
            main([option])
        assert stop.value.code == 0
        assert text in capsys.readouterr().out


def test_standard_input(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    class Stdin:
        buffer = io.BytesIO((BAD + 'include "x.trim"\n').encode())

    monkeypatch.setattr(sys, "stdin", Stdin)
    assert main(["check", "-", "--messages", "json"]) == 1
    found = [json.loads(line) for line in capsys.readouterr().err.splitlines()]
    assert {one["code"] for one in found} == {"T202", "T606"}
    assert {one["file"] for one in found} == {"<stdin>"}


@pytest.mark.parametrize(
    "name",
    [
        # what it has that the others lack is more of the same
        pytest.param("house", marks=pytest.mark.nightly),
        *("metric", "crown", "doors", "stair", "bay"),
    ],
)
def test_plan_json_follows_its_schema_and_holds_every_piece_once(tmp_path: Path, name: str) -> None:
    out = tmp_path / "shop"
    job = str(EXAMPLES / f"{name}.trim")
    assert main(["build", job, "--out", str(out), "--format", "json"]) == 0
    plan = json.loads((out / "plan.json").read_text(encoding="utf-8"))
    schema = plan_schema()
    jsonschema.Draft202012Validator.check_schema(schema)
    jsonschema.Draft202012Validator(schema).validate(plan)
    pieces = [piece["id"] for piece in plan["pieces"]]
    on_sticks = [piece for stick in plan["sticks"] for piece in stick["pieces"]]
    assert len(set(pieces)) == len(pieces)
    assert sorted(on_sticks) == sorted(pieces)
    home = {piece: stick["id"] for stick in plan["sticks"] for piece in stick["pieces"]}
    assert all(piece["stick"] == home[piece["id"]] for piece in plan["pieces"])
    assert float(plan["summary"]["lower_bound"]) <= float(plan["summary"]["cost"])


@pytest.mark.parametrize("command", ["check", "build --format json --plan quick --out sheets"])
def test_what_needs_nothing_heavy_loads_nothing_heavy(tmp_path: Path, command: str) -> None:
    # from elsewhere: in the folder of the sources these, not made ahead, would be found first
    code = (
        "import sys, trimlang.cli as c; c.main(sys.argv[1:]);"
        "print(*{'pint', 'jinja2', 'weasyprint', 'highspy', 'numpy', 'rich'} & set(sys.modules))"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, *command.split(), str(EXAMPLES / "house.trim")],
        check=True,
        cwd=tmp_path,
        capture_output=True,
        text=True,
    )
    assert done.stdout.splitlines()[-1] == ""


def test_the_front_door() -> None:
    result = trimlang.compile(GOOD)
    assert isinstance(result, trimlang.Result)
    assert result.ok
    assert [piece.id for piece in result.pieces] == ["ST-N-base", "ST-E-base"]
    assert result.plans[0].trim == "base"
    broken = trimlang.compile(BAD)
    assert not broken.ok
    assert not broken.plans
    assert isinstance(broken.diagnostics[0], trimlang.Diagnostic)
    assert broken.diagnostics[0].severity is trimlang.Severity.ERROR
    with pytest.raises(AttributeError):
        _ = trimlang.nothing
