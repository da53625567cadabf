"""``build --pool``: one folder for a site, with the flats' own sheets in it."""

from __future__ import annotations

import csv
import json
from pathlib import Path

import jsonschema
import pytest

from tests.shared_order.jobs import TRIM, flat
from trimlang.cli import main
from trimlang.output.made_by import MARK
from trimlang.sheets.export.plan_file import schema as plan_schema

WALLS = "  N: 70 in, left=butt, right=butt\n  bare 3 in\n  E: 19 ft, left=butt, right=return"


@pytest.fixture
def flats(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> list[str]:
    monkeypatch.chdir(tmp_path)
    names = ["flat-1.trim", "flat-2.trim", "site.trim"]
    for name in names:
        (tmp_path / name).write_text(flat(WALLS), encoding="utf-8")
    return names


def written(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file()
    }


def test_a_site_and_its_flats(flats: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    build = ["build", *flats, "--pool", "--format", "html", "--format", "csv"]
    assert main(build) == 0
    out = capsys.readouterr().out
    assert out.startswith("3 jobs, 12 pieces from ")
    assert "together saves " in out
    here = Path.cwd()
    names = set(written(here / "site-sheets"))
    own = {"index.html", "tickets.html", "checklist.html", "floor-plan.html", "cut-list.csv"}
    for name in ("flat-1", "flat-2", f"{here.name}-site"):
        assert {one.split("/")[1] for one in names if one.startswith(f"{name}/")} == own
    assert {one.split("/")[1] for one in names if one.startswith("site/")} == {
        "index.html",
        "plan.json",
        "stock-order.html",
        "order-explained.html",
        "stock-order.csv",
        "stick-layouts.html",
        "saw-sheet.html",
        "sticks.csv",
        "cut-list.csv",
        "flats.html",
        "flats.csv",
    }
    site = here / "site-sheets" / "site"
    plan = json.loads((site / "plan.json").read_text(encoding="utf-8"))
    schema = plan_schema()
    jsonschema.validate(plan, schema)
    with (site / "flats.csv").open(encoding="utf-8-sig", newline="") as file:
        rows = list(csv.DictReader(file))
    assert {row["piece"] for row in rows} == {piece["id"] for piece in plan["pieces"]}
    assert {(row["piece"], row["stick"]) for row in rows} == {
        (piece["id"], piece["stick"]) for piece in plan["pieces"]
    }
    assert all(row["piece"].startswith(f"{row['flat']}-") for row in rows)
    page = (site / "flats.html").read_text(encoding="utf-8")
    tickets = (here / "site-sheets" / "flat-2" / "tickets.html").read_text(encoding="utf-8")
    for row in rows:
        assert row["piece"] in page
        assert (row["piece"] in tickets) == (row["flat"] == "F2")


def test_the_same_flats_give_the_same_bytes(flats: list[str]) -> None:
    for out in ("one", "two"):
        assert main(["build", *flats, "--pool", "--out", out, "--format", "html"]) == 0
    assert written(Path("one")) == written(Path("two"))


def test_what_the_user_put_into_a_flats_folder_stays(flats: list[str]) -> None:
    build = ["build", *flats, "--pool", "--out", "out", "--format", "html"]
    assert main(build) == 0
    Path("out/flat-1/photo.jpg").write_bytes(b"x")
    Path("out/mine").mkdir()
    Path("out/mine/note.txt").write_bytes(b"y")
    before = written(Path("out"))
    assert main(build) == 0
    assert written(Path("out")) == before
    assert main(["build", flats[1], flats[2], "--pool", "--out", "out", "--format", "json"]) == 0
    assert set(written(Path("out"))) == {
        MARK,
        "site/plan.json",
        "flat-1/photo.jpg",
        "mine/note.txt",
    }


def test_nothing_is_bought_for_a_site_with_a_job_that_fails(
    flats: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    Path("flat-2.trim").write_text(flat("  N: 0 in, left=butt, right=butt"), encoding="utf-8")
    assert main(["build", *flats, "none.trim", "--pool", "--out", "out"]) == 1
    err = capsys.readouterr().err
    assert "flat-2.trim:5:6: error T202" in err
    assert err.splitlines()[-2].startswith("  flat-2.trim: an error in line 5: T202")
    assert err.splitlines()[-1].startswith("  none.trim: cannot read")
    assert not Path("out").exists()


def test_jobs_that_disagree_are_told_where(
    flats: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    Path("flat-2.trim").write_text(
        flat(WALLS, trim=TRIM.replace("9/16", "1/2"), settings="spare 3 %\n"), encoding="utf-8"
    )
    assert main(["build", *flats, "--pool", "--out", "out"]) == 1
    err = capsys.readouterr().err
    assert "flat-2.trim:1:6: error T661: the thickness of trim “base” is 1/2 in here" in err
    assert "flat-2.trim:1:1: error T662: the spare is 3 % in this job, and 0 % in flat-1" in err
    assert not Path("out").exists()


def test_a_pool_of_one_costs_what_the_job_costs(flats: list[str]) -> None:
    assert main(["build", "flat-1.trim", "--pool", "--out", "pool", "--format", "json"]) == 0
    assert main(["build", "flat-1.trim", "--out", "alone", "--format", "json"]) == 0
    pool, alone = (
        json.loads(Path(name).read_text(encoding="utf-8"))
        for name in ("pool/site/plan.json", "alone/plan.json")
    )
    assert pool["summary"] == alone["summary"]
    assert pool["order"] == alone["order"]


def test_supplies_that_run_out(flats: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    only = TRIM.splitlines()[0] + "\nstock base: 12 ft at 5 at most 1\n"
    for name in flats[:2]:
        Path(name).write_text(
            flat("  N: 140 in, left=butt, right=butt", trim=only), encoding="utf-8"
        )
    assert main(["build", *flats[:2], "--pool", "--out", "out"]) == 1
    assert "T663" in capsys.readouterr().err
    assert main(["build", "-", *flats, "--pool"]) == 2
