"""Where names differ by case alone on a disk that knows no case: nothing is lost without a word."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.jobs import walls
from tests.trust.bad_disk import snapshot
from tests.trust.folding import no_case
from trimlang.cli import main
from trimlang.output import folder

JOB = walls("  N: 40 in, left=butt, right=butt")
QUICK = ["--format", "json", "--plan", "quick", "--jobs", "1"]


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    (tmp_path / "porch.trim").write_text(JOB, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    # the system's own exchange of two names asks no call of Python's
    monkeypatch.setattr(folder, "exchange", lambda *_: False)
    with no_case(tmp_path):
        yield tmp_path


def names(place: Path) -> set[str]:
    return {path.name for path in place.iterdir()}


def test_the_disk_itself(shop: Path) -> None:
    assert (shop / "PORCH.trim").read_text(encoding="utf-8") == JOB
    with pytest.raises(FileExistsError):
        Path("Porch.trim").touch(exist_ok=False)
    Path("porch.trim").rename("Porch.trim")
    assert names(shop) == {"Porch.trim"}


def test_a_job_given_in_two_ways_is_one_job_and_has_one_folder(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["build", "porch.trim", "PORCH.trim", *QUICK]) == 0
    assert capsys.readouterr().out.count("→") == 1
    assert names(shop) == {"porch.trim", "porch-sheets"}
    for again in (["Porch.trim"], ["porch.trim", "--out", "PORCH-SHEETS"]):
        assert main(["build", *again, *QUICK]) == 0
        assert sorted(name.casefold() for name in names(shop)) == ["porch-sheets", "porch.trim"]


def test_jobs_of_one_name_from_two_folders_get_two_folders(shop: Path) -> None:
    for place in ("one/Flat", "two/flat"):
        (shop / place).parent.mkdir()
        (shop / f"{place}.trim").write_text(JOB, encoding="utf-8")
    assert main(["build", "one/Flat.trim", "two/flat.trim", *QUICK, "--out", "out"]) == 0
    assert names(shop / "out") == {"one-Flat", "two-flat"}


def test_no_folder_has_a_name_that_windows_gives_to_another(shop: Path) -> None:
    """There CON is a device, and a folder `flat.` is the folder `flat`."""
    jobs = ["CON.trim", "flat.trim", "flat..trim", "flat .trim"]
    for name in jobs:
        Path(name).write_text(JOB, encoding="utf-8")
    assert main(["build", *jobs, *QUICK, "--out", "out"]) == 0
    flats = {f"{shop.name}-flat", f"{shop.name}-flat-2", f"{shop.name}-flat-3"}
    assert names(shop / "out") == {"CON-sheets", *flats}


def test_a_sheet_s_name_in_other_letters_is_the_user_s_own(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["build", "porch.trim", *QUICK]) == 0
    Path("porch-sheets/Tickets.html").write_text("mine", encoding="utf-8")
    Path("porch-sheets/plan.json").rename("porch-sheets/Plan.json")
    before = snapshot(shop)
    assert main(["build", "porch.trim", "--plan", "quick", "--format", "html"]) == 2
    assert "porch-sheets" in capsys.readouterr().err
    assert snapshot(shop) == before


def test_nothing_that_is_there_is_replaced_under_another_case(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    Path("List.csv").write_text("mine", encoding="utf-8")
    before = snapshot(shop)
    for command in (
        ["start", "Porch.trim"],
        ["convert", "porch.trim", "LIST.csv"],
        ["convert", "porch.trim", "PORCH.trim"],
        ["compare", "porch.trim", "Porch.trim", "--out", "list.CSV"],
        ["compare", "porch.trim", "Porch.trim", "--out", "PORCH.TRIM"],
    ):
        assert main(command) == 2, command
        assert snapshot(shop) == before, command
        assert capsys.readouterr().err.startswith("trimlang: "), command


def test_what_changes_a_file_keeps_its_name_and_its_one_log(shop: Path) -> None:
    assert main(["mark", "porch.trim", "bought 1 base 12 ft at 17.40"]) == 0
    assert main(["mark", "PORCH.trim", "bought 2 base 12 ft at 17.40"]) == 0
    assert names(shop) == {"porch.trim", "porch.site"}
    assert Path("porch.site").read_text(encoding="utf-8").count("bought") == 2
    assert main(["mark", "Porch.trim", "--undo"]) == 0
    assert Path("porch.site").read_text(encoding="utf-8").count("bought") == 1
    Path("porch.trim").write_text(JOB.replace("N: 40", "N:    40"), encoding="utf-8")
    assert main(["tidy", "PORCH.trim", "porch.trim"]) == 0
    assert Path("porch.trim").read_text(encoding="utf-8") == JOB
    assert main(["convert", "Porch.trim", "porch.csv"]) == 0
    assert main(["convert", "Porch.trim", "PORCH.csv", "--force"]) == 0
    assert names(shop) == {"porch.trim", "porch.site", "porch.csv"}


def test_files_that_include_each_other_under_other_letters_go_round_once(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    Path("porch.trim").write_text(f'include "Prices.trim"\n{JOB}', encoding="utf-8")
    Path("prices.trim").write_text('include "PORCH.trim"\n', encoding="utf-8")
    assert main(["check", "porch.trim"]) == 1
    assert "T603" in capsys.readouterr().err
