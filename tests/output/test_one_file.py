"""A file that a command writes: its mode stays, no name is guessed, nothing foreign is lost."""

from __future__ import annotations

import os
from pathlib import Path
from stat import S_ISCHR

import pytest

from tests.jobs import walls
from trimlang.cli import main
from trimlang.output.one_file import new_file, replace_file

JOB = walls("  N: 40 in, left=butt, right=butt")


def mode(path: Path) -> int:
    return path.stat().st_mode & 0o7777


def test_convert_keeps_a_file_s_mode(tmp_path: Path) -> None:
    source, target = tmp_path / "job.trim", tmp_path / "job.csv"
    source.write_text(JOB, encoding="utf-8")
    target.write_text("# mine\n", encoding="utf-8")
    target.chmod(0o600)
    assert main(["convert", str(source), str(target)]) == 2
    assert target.read_text(encoding="utf-8") == "# mine\n"
    assert main(["convert", str(source), str(target), "--force"]) == 0
    assert "40 in" in target.read_text(encoding="utf-8")
    assert mode(target) == 0o600


def test_a_link_laid_under_the_old_temporary_name_is_not_written_through(tmp_path: Path) -> None:
    source, mine = tmp_path / "job.trim", tmp_path / "mine.txt"
    source.write_text(JOB, encoding="utf-8")
    mine.write_text("mine", encoding="utf-8")
    (tmp_path / ".job.csv.new").symlink_to(mine)
    assert main(["convert", str(source), str(tmp_path / "job.csv")]) == 0
    assert mine.read_text(encoding="utf-8") == "mine"
    assert (tmp_path / ".job.csv.new").is_symlink()


def test_compare_writes_over_no_file_unasked(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    job = tmp_path / "job.trim"
    job.write_text(JOB, encoding="utf-8")
    asked = ["compare", str(job), str(job), "--out", str(job)]
    assert main(asked) == 2
    assert "add --force" in capsys.readouterr().err
    assert job.read_text(encoding="utf-8") == JOB
    page = tmp_path / "changes.txt"
    for more in ([], ["--force"]):
        assert main(["compare", str(job), str(job), "--out", str(page), *more]) == 0
    assert page.read_text(encoding="utf-8")


def test_what_a_command_reads_it_does_not_write_over(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    job, log, link, twin = (tmp_path / name for name in ("a.trim", "a.site", "l.csv", "t.csv"))
    job.write_text(JOB, encoding="utf-8")
    log.write_text("bought 3 base 12 ft\n", encoding="utf-8")
    link.symlink_to(job)
    twin.hardlink_to(job)
    table = tmp_path / "a.csv"
    assert main(["convert", str(job), str(table)]) == 0
    for asked in (
        *(["convert", str(job), str(to), "--force"] for to in (job, link, twin)),
        ["convert", str(table), str(job), "--include", "a.trim", "--force"],
        *(["compare", str(job), str(job), "--out", str(to), "--force"] for to in (job, link)),
        ["mark", str(job), "--from", str(log)],
        ["mark", str(job), "--with", str(twin), "--log", str(link), "bought 1 base 12 ft"],
    ):
        assert main(asked) == 2, asked
        assert "name" in capsys.readouterr().err or asked[-1] == str(log)
    assert job.read_text(encoding="utf-8") == JOB
    assert log.read_text(encoding="utf-8") == "bought 3 base 12 ft\n"


def test_a_dash_is_standard_output(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    Path("job.trim").write_text(JOB, encoding="utf-8")
    assert main(["compare", "job.trim", "job.trim", "--out", "-"]) == 0
    assert "same" in capsys.readouterr().out
    assert main(["convert", "job.trim", "-"]) == 0
    assert "40 in" in capsys.readouterr().out
    assert main(["build", "job.trim", "--out", "-"]) == 2
    assert "name a folder" in capsys.readouterr().err
    assert [path.name for path in tmp_path.iterdir()] == ["job.trim"]


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() != 0, reason="root alone gives away")
def test_a_file_and_a_folder_stay_their_owner_s(tmp_path: Path) -> None:
    job, table, sheets = (tmp_path / name for name in ("job.trim", "job.csv", "sheets"))
    job.write_text(JOB, encoding="utf-8")
    sheets.mkdir()
    table.touch()
    for one in (table, sheets):
        os.chown(one, 12_345, 54_321)
        one.chmod(0o2750)
    assert main(["convert", str(job), str(table), "--force"]) == 0
    assert main(["build", str(job), "--out", str(sheets), "--format", "html"]) == 0
    for one in (table, sheets):
        assert (one.stat().st_uid, one.stat().st_gid, mode(one)) == (12_345, 54_321, 0o2750)
    sheet = sheets / "tickets.html"
    os.chown(sheet, 12_345, 54_321)
    assert main(["build", str(job), "--out", str(sheets), "--format", "html"]) == 0
    assert (sheet.stat().st_uid, sheet.stat().st_gid) == (12_345, 54_321)


def test_a_comparison_replaces_nothing_that_the_jobs_are_read_from(tmp_path: Path) -> None:
    for name in ("one", "two"):
        (tmp_path / f"{name}.trim").write_text(f'include "more.trim"\n{JOB}', encoding="utf-8")
    (tmp_path / "more.trim").write_text("# nothing\n", encoding="utf-8")
    (tmp_path / "one.site").write_text("# not begun\n", encoding="utf-8")
    kept = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    for name in kept:
        jobs = [str(tmp_path / job) for job in ("one.trim", "two.trim")]
        assert main(["compare", *jobs, "--out", str(tmp_path / name), "--force"]) == 2
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == kept


def test_a_new_file_takes_no_other_s_place(tmp_path: Path) -> None:
    (tmp_path / "there").symlink_to(tmp_path / "nowhere")
    with pytest.raises(FileExistsError):
        new_file(tmp_path / "there", b"x")
    assert not (tmp_path / "nowhere").exists()
    new_file(tmp_path / "fresh", b"x")
    assert [path.name for path in sorted(tmp_path.iterdir())] == ["fresh", "there"]


def test_a_disk_without_second_links_gets_its_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_: object) -> None:
        raise OSError(95, "no such thing here")

    monkeypatch.setattr(os, "link", refuse)
    new_file(tmp_path / "fresh", b"x")
    assert [path.name for path in tmp_path.iterdir()] == ["fresh"]


def test_a_device_stays_one(tmp_path: Path) -> None:
    link = tmp_path / "out"
    link.symlink_to(os.devnull)
    replace_file(link, b"x")
    assert link.is_symlink()
    assert S_ISCHR(Path(os.devnull).stat().st_mode)
    with pytest.raises(IsADirectoryError):
        replace_file(tmp_path, b"x")
