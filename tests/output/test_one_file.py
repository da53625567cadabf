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
