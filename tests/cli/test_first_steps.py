"""A file to begin from, completion in the shell, and the manual page."""

from __future__ import annotations

import json
import shutil
import subprocess
import sys
from collections.abc import Callable
from datetime import date
from itertools import chain
from pathlib import Path

import pytest
import shtab

from tests.conftest import LAWS, ROOT
from tests.jobs import TWELVE_FOR_TEN
from trimlang.cli import main
from trimlang.cli.command_line import arguments
from trimlang.cli.completion import SHELLS, script
from trimlang.cli.manual import manual_page
from trimlang.cli.start import first_file
from trimlang.compiler import check_job, compile_job
from trimlang.incremental.cached_steps import CachedSteps
from trimlang.incremental.compiler_steps import Steps
from trimlang.language.grammar import parser
from trimlang.language.tidy_line import read_line

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
    assert told.out.endswith("\nHall: not checked: an open walk\n")
    assert told.out.count("\n") == 2
    assert main(["build", str(path), "--format", "json", "--out", str(tmp_path / "out")]) == 0
    plan = json.loads((tmp_path / "out" / "plan.json").read_text(encoding="utf-8"))
    assert {piece["room"] for piece in plan["pieces"]} == {"Living room", "Hall"}


def remarked(text: str) -> list[list[int]]:
    """Return the groups of lines that may be taken into use: # and no blank, then what follows."""
    groups: list[list[int]] = []
    for number, line in enumerate(text.splitlines()):
        begun = bool(groups) and groups[-1][-1] == number - 1
        if line[:1] != "#" or (line[1:2] in ("", " ") and not (begun and line.startswith("#  "))):
            continue
        if begun:
            groups[-1].append(number)
        else:
            groups.append([number])
    return groups


def uncommented(text: str, numbers: list[int]) -> str:
    lines = text.splitlines()
    return "\n".join(line[1:] if at in numbers else line for at, line in enumerate(lines)) + "\n"


@pytest.mark.parametrize("metric", [False, pytest.param(True, marks=pytest.mark.nightly)])
def test_each_remark_that_is_a_line_works_when_its_sign_is_taken_off(metric: bool) -> None:
    text = first_file("new", "2026-04-18", metric)
    groups = remarked(text)
    assert len(groups) > 20
    kept = CachedSteps()
    steps = Steps(line=kept.line, room=kept.room)
    for group in groups:
        used = uncommented(text, group)
        kept.next_turn()
        assert not check_job(used, steps=steps).diagnostics, used.splitlines()[group[0]]
    # with all at once every way to buy is weighed against every other, which takes its time
    every = uncommented(text, [*chain.from_iterable(groups)])
    plan = compile_job if LAWS == "night" else check_job
    assert not plan(every).diagnostics


@pytest.mark.parametrize("metric", [False, True])
def test_the_first_file_shows_every_kind_of_line(metric: bool) -> None:
    """All but the log's, which come later, and an include, which needs another file."""
    text = first_file("new", "2026-04-18", metric)
    used = uncommented(text, [number for group in remarked(text) for number in group])
    assert not check_job(used).diagnostics
    shown = {read_line(line).rule for line in used.splitlines()}
    rules = {rule.expansion[0].name for rule in parser().rules if rule.origin.name == "statement"}
    later = {"cut", "spoiled", "shortened", "fitted", "bought", "rack", "include"}
    written = {one.removeprefix("_") for one in shown if one}
    assert rules - later <= written | {"spare_covers"}
    for word in ("window", "cabinets", "shoe return", "stops", "first stud", "rising"):
        assert word in used


@pytest.mark.parametrize("metric", [False, True])
def test_a_room_is_added_to_a_file_and_checks_clean(
    metric: bool, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "job.trim"
    assert main(["start", str(path), *(["--metric"] if metric else [])]) == 0
    before = path.read_text(encoding="utf-8")
    assert main(["start", "--room", "Guest bath", str(path)]) == 0
    after = path.read_text(encoding="utf-8")
    assert after.startswith(before.rstrip("\n"))
    result = check_job(after)
    assert not result.diagnostics
    assert [room.name for room in result.job.rooms][-1] == "Guest bath"
    assert result.closings[-1].gap == 0
    capsys.readouterr()
    assert main(["start", "--room", "guest BATH", str(path)]) == 2
    assert "already" in capsys.readouterr().err
    assert path.read_text(encoding="utf-8") == after
    assert main(["start", "--room", "Den", str(tmp_path / "none.trim")]) == 2
    assert main(["start", "--room", '""', str(path)]) == 2


def test_a_room_is_added_above_the_log_with_the_files_own_line_ends(tmp_path: Path) -> None:
    path = tmp_path / "job.trim"
    head = f"ends in\ntrim base: 9/16 in thick\n{TWELVE_FOR_TEN}\n"
    room = 'room "Den", trim base, open walk\n  N 40 in, left=butt, right=butt\n'
    log = "\nbought 2 base 12 ft\n"
    path.write_bytes((head + room + log).replace("\n", "\r\n").encode("utf-8-sig"))
    assert main(["start", "--room", "Bath", str(path)]) == 0
    data = path.read_bytes()
    text = data.decode("utf-8-sig")
    assert data.startswith(b"\xef\xbb\xbf")
    assert text.count("\n") == text.count("\r\n")
    assert text.index("Den") < text.index('room "Bath", trim base\r\n') < text.index("bought")
    assert not [one for one in check_job(text).diagnostics if one.code < "T7"]


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
