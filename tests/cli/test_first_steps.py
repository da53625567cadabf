"""A file to begin from, completion in the shell, and the manual page."""

from __future__ import annotations

import json
import shutil
import subprocess
import sys
from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest
import shtab

from tests.conftest import ROOT
from trimlang.cli import main
from trimlang.cli.command_line import arguments
from trimlang.cli.completion import SHELLS, script
from trimlang.cli.manual import manual_page

PAGE = ROOT / "docs" / "trimlang.1"

needs_bash = pytest.mark.skipif(shutil.which("bash") is None, reason="no bash")


@pytest.mark.parametrize("metric", [False, True])
def test_the_first_file_checks_clean_builds_and_is_tidy(
    metric: bool, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "kiln-lane_3.trim"
    assert main(["start", str(path), *(["--metric"] if metric else [])]) == 0
    capsys.readouterr()
    text = path.read_text(encoding="utf-8")
    assert 'job "kiln lane 3"\n' in text
    assert f"surveyed {date.today().isoformat()}\n" in text
    assert f"unit {'mm' if metric else 'in'} " in text
    assert main(["check", str(path)]) == 0
    assert main(["tidy", "--check", str(path)]) == 0
    told = capsys.readouterr()
    assert told.err == ""
    assert told.out.startswith("Living room: closes within ")
    assert told.out.count("\n") == 1
    assert main(["build", str(path), "--format", "json", "--out", str(tmp_path / "out")]) == 0
    plan = json.loads((tmp_path / "out" / "plan.json").read_text(encoding="utf-8"))
    assert {piece["room"] for piece in plan["pieces"]} == {"Living room", "Hall"}


@pytest.mark.parametrize("metric", [False, True])
def test_what_the_first_file_has_in_remarks_can_be_used(metric: bool, tmp_path: Path) -> None:
    path = tmp_path / "all.trim"
    assert main(["start", str(path), *(["--metric"] if metric else [])]) == 0
    lines = path.read_text(encoding="utf-8").splitlines()
    used = [
        line.removeprefix("# ")
        for line in lines
        if not line.startswith("#") or line.startswith(("# trim ", "# stock ", "# on-hand "))
    ]
    assert len(used) > len([line for line in lines if not line.startswith("#")])
    text = "\n".join(used).replace('"Hall", trim base', '"Hall", trim base, shoe')
    path.write_text(f"{text}\nstock shoe: 12 ft at 7.10\n", encoding="utf-8")
    assert main(["check", str(path)]) == 0


def test_nothing_is_written_over(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["start"]) == 0
    assert [path.name for path in tmp_path.iterdir()] == ["job.trim"]
    Path("job.trim").write_text("mine", encoding="utf-8")
    assert main(["start"]) == 2
    assert main(["start", "job"]) == 2
    assert "is there already" in capsys.readouterr().err
    assert Path("job.trim").read_text(encoding="utf-8") == "mine"
    assert main(["start", "none/job.trim"]) == 2
    assert "cannot write" in capsys.readouterr().err
    assert main(["start", "-"]) == 0
    assert 'job "New job"' in capsys.readouterr().out


def test_all_shells_that_can_be_completed_in() -> None:
    assert sorted(SHELLS) == sorted(shtab.SUPPORTED_SHELLS)
    for shell in SHELLS:
        text = script(arguments(), shell)
        assert "compare" in text
        assert text.endswith("\n")


def completed(words: list[str], folder: Path) -> set[str]:
    """Ask bash itself what it would offer for the last word."""
    driver = r"""
    eval "$("$1" -m trimlang completion bash)"
    shift
    COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); COMP_LINE="$*"; COMP_POINT=${#COMP_LINE}
    name=$(complete -p trimlang | sed 's/.*-F \([^ ]*\).*/\1/')
    "$name" trimlang "${COMP_WORDS[$COMP_CWORD]}" "${COMP_WORDS[$COMP_CWORD-1]}"
    printf '%s\n' "${COMPREPLY[@]}"
    """
    done = subprocess.run(
        ["bash", "-c", driver, "bash", sys.executable, *words],
        cwd=folder,
        capture_output=True,
        text=True,
        check=True,
    )
    assert not done.stderr
    return set(done.stdout.split())


@needs_bash
def test_bash_completes(tmp_path: Path) -> None:
    for name in ("den.trim", "notes.txt"):
        (tmp_path / name).touch()
    (tmp_path / "dens").mkdir()
    assert {"check", "compare", "completion"} <= completed(["trimlang", "c"], tmp_path)
    assert completed(["trimlang", "check", "d"], tmp_path) == {"den.trim", "dens"}
    assert completed(["trimlang", "tidy", "den.trim", ""], tmp_path) == {"den.trim", "dens"}
    assert completed(["trimlang", "compare", "--fo"], tmp_path) == {"--force", "--form"}
    assert completed(["trimlang", "compare", "--form", "h"], tmp_path) == {"html"}
    assert completed(["trimlang", "build", "--out", "d"], tmp_path) == {"dens"}


@pytest.mark.parametrize("shell", ["zsh", "fish", "tcsh"])
def test_other_shells_take_the_script(shell: str) -> None:
    if shutil.which(shell) is None:
        pytest.skip(f"no {shell}")
    read = [shell, "-n"] if shell != "tcsh" else ["tcsh", "-f"]
    done = subprocess.run(
        read, input=script(arguments(), shell), text=True, capture_output=True, check=False
    )
    assert (done.returncode, done.stderr) == (0, "")


def test_the_manual_page_is_made_from_the_commands(
    same_in_git: Callable[[Path, str], None],
) -> None:
    same_in_git(PAGE, manual_page())


@pytest.mark.skipif(shutil.which("groff") is None, reason="no groff")
def test_the_manual_page_is_set_without_a_warning() -> None:
    done = subprocess.run(
        ["groff", "-ww", "-man", "-Tutf8", "-P-cbou", str(PAGE)],
        capture_output=True,
        text=True,
        check=True,
    )
    assert not done.stderr
    for word in ("SYNOPSIS", "compare", "EXIT STATUS"):
        assert word in done.stdout
