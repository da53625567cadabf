"""Whichever call to the disk fails, a command leaves what was there or what is to be there."""

from __future__ import annotations

import shutil
from contextlib import chdir
from pathlib import Path

import pytest

from tests.jobs import walls
from tests.trust.failing import failing_disk, snapshot
from trimlang.cli import main

JOB = walls("  N: 40 in, left=butt, right=butt")
UNTIDY = JOB.replace("N: 40", "N:    40")
COMMANDS = {
    "build": ["build", "job.trim", "--format", "json", "--plan", "quick"],
    "build in place": ["build", "../job.trim", "--format", "json", "--plan", "quick", "--out", "."],
    "mark": ["mark", "job.trim", "bought 1 base 12 ft"],
    "mark --undo": ["mark", "job.trim", "--undo"],
    "tidy": ["tidy", "job.trim"],
    "convert": ["convert", "job.trim", "job.csv"],
    "convert --force": ["convert", "job.trim", "there.csv", "--force"],
    "start": ["start", "fresh.trim"],
    "compare": ["compare", "job.trim", "job.trim", "--out", "page.txt"],
}


@pytest.fixture(scope="module")
def begun(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Make the folder that every command begins in, with an earlier build in it."""
    folder = tmp_path_factory.mktemp("begun")
    (folder / "job.trim").write_text(UNTIDY, encoding="utf-8")
    (folder / "there.csv").write_text("mine", encoding="utf-8")
    (folder / "job.site").write_text("bought 2 base 12 ft at 17.40\n", encoding="utf-8")
    with chdir(folder):
        build = ["build", "job.trim", "--format", "json", "--format", "csv", "--plan", "quick"]
        assert main(build) == 0
    return folder


def fresh(begun: Path, folder: Path, name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Copy the folder that a command is run in, and go there."""
    shutil.copytree(begun, folder)
    monkeypatch.chdir(folder / "job-sheets" if name == "build in place" else folder)


@pytest.mark.parametrize(
    ("name", "full"),
    [
        # a disk that stays full lets no clean-up through; one that fails once does
        pytest.param(
            name,
            full,
            id=f"{name}-{'full' if full else 'once'}",
            marks=pytest.mark.nightly if name == "build in place" and not full else (),
        )
        for name in COMMANDS
        for full in (False, True)
    ],
)
def test_every_call_to_the_disk_may_fail(
    name: str,
    full: bool,
    begun: Path,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    fresh(begun, tmp_path / "whole", name, monkeypatch)
    before = snapshot(tmp_path / "whole")
    with failing_disk(0) as disk:
        assert main(COMMANDS[name]) == 0
    after = snapshot(tmp_path / "whole")
    assert disk.calls > 2
    assert after != before
    for at in range(1, disk.calls + 1):
        folder = tmp_path / f"at-{at}"
        fresh(begun, folder, name, monkeypatch)
        capsys.readouterr()
        with failing_disk(at, full=full):
            code = main(COMMANDS[name])
        told = capsys.readouterr()
        left = snapshot(folder)
        assert "Traceback" not in told.err, at
        assert "defect" not in told.err, at
        if ".trimlang-work" in str(sorted(left)):
            # killed between the moves: the next build goes on
            assert name == "build in place"
            assert code == 2
            assert main(COMMANDS[name]) == 0
            left, code = snapshot(folder), 0
        assert left == (after if code == 0 else before) or (code == 2 and left == after), at
        if code == 2:
            assert "cannot write" in told.err or "writing failed" in told.err, at
