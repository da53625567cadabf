"""Several jobs in one call: each for itself, told in order, ended together."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
from collections.abc import Callable
from io import StringIO
from pathlib import Path
from time import monotonic, sleep

import pytest

from tests.conftest import ROOT
from tests.jobs import walls
from trimlang.cli import main
from trimlang.cli.build import build
from trimlang.cli.many_jobs import places
from trimlang.cli.options import JobBuild, PlanOptions
from trimlang.cli.replies import MessageOptions
from trimlang.output.folder import leftovers
from trimlang.output.made_by import MARK
from trimlang.output.sheet_options import SheetOptions
from trimlang.workers.job_workers import WorkerPool

BAD = walls("N: 0 in, left=butt, right=butt")
WARNED = walls("N: 40 5/12 in, left=butt, right=butt")


def good(inches: int) -> str:
    return walls(f"N: {inches} in, left=butt, right=butt")


@pytest.fixture
def jobs(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "b").mkdir()
    for name, text in (
        ("one.trim", good(40)),
        ("bad.trim", BAD),
        ("warned.trim", WARNED),
        ("b/one.trim", good(50)),
    ):
        (tmp_path / name).write_text(text, encoding="utf-8")
    return tmp_path


def test_a_job_that_fails_stops_no_other(jobs: Path, capsys: pytest.CaptureFixture[str]) -> None:
    files = ["bad.trim", "one.trim", "none.trim", "warned.trim", "b/one.trim"]
    assert main(["build", *files, "--out", "shop", "--format", "json", "--jobs", "2"]) == 1
    out, err = capsys.readouterr()
    assert sorted(path.name for path in (jobs / "shop").iterdir()) == [
        "b-one",
        f"{jobs.name}-one",
        "warned",
    ]
    assert [line.rsplit("→ ")[1] for line in out.splitlines()] == [
        f"shop/{jobs.name}-one",
        "shop/warned",
        "shop/b-one",
    ]
    said = ["bad.trim:5:4: error T202", "cannot read none.trim", "warned.trim:5:7: warning T112"]
    assert [err.index(text) for text in said] == sorted(err.index(text) for text in said)
    assert err.splitlines()[-3:] == [
        "trimlang: 2 of 5 jobs failed:",
        "  bad.trim: an error in line 5: T202 run N cannot be zero or less",
        "  none.trim: cannot read none.trim: no such file or directory",
    ]


def test_what_is_written_is_what_a_job_alone_writes(
    jobs: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    given = ["one.trim", "./one.trim", "warned.trim"]
    assert main(["build", *given, "--format", "html", "--jobs", "1"]) == 0
    # a job given twice is built once
    assert capsys.readouterr().out.count("→") == 2
    together = {path.name: path.read_bytes() for path in (jobs / "one-sheets").iterdir()}
    assert main(["build", "one.trim", "--out", "alone", "--format", "html"]) == 0
    assert together == {path.name: path.read_bytes() for path in (jobs / "alone").iterdir()}
    assert (jobs / "warned-sheets" / "tickets.html").is_file()


def test_messages_as_json_tell_the_jobs_apart(
    jobs: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (jobs / "b" / "bad.trim").write_text(BAD, encoding="utf-8")
    build = ["build", "bad.trim", "b/bad.trim", "--format", "json", "--messages", "json"]
    build += ["--jobs", "1"]
    assert main(build) == 1
    found = [json.loads(line) for line in capsys.readouterr().err.splitlines()]
    assert [one["file"] for one in found[:2]] == ["bad.trim", "b/bad.trim"]
    assert [(one["job"], one["exit_code"]) for one in found[2:]] == [
        ("bad.trim", 1),
        ("b/bad.trim", 1),
    ]


def test_check_takes_several(jobs: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", "one.trim", "b/one.trim"]) == 0
    out, err = capsys.readouterr()
    assert [line.count("not checked: an open walk") for line in out.splitlines()] == [1, 1]
    assert not err
    assert main(["check", "bad.trim", "none.trim", "warned.trim", "one.trim"]) == 1
    err = capsys.readouterr().err
    assert [err.index(text) for text in ("bad.trim:5", "none.trim", "warned.trim:5")] == sorted(
        err.index(text) for text in ("bad.trim:5", "none.trim", "warned.trim:5")
    )


@pytest.mark.parametrize("form", ["text", "json"])
def test_what_is_wrong_in_an_included_file_is_told_once(
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    form: str,
) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "yard.trim").write_text("trim shoe: 1/2 in thick, pine\nstock shoe: 8 ft at 3\n")
    for name in ("a", "b"):
        own = WARNED.replace("room", 'include "yard.trim"\nroom', 1)
        (tmp_path / f"{name}.trim").write_text(own)
    for command in (["check"], ["build", "--format", "json"], ["build", "--pool", "--out", "o"]):
        assert main([*command, "a.trim", "b.trim", "--messages", form]) == 0
        err = capsys.readouterr().err
        assert [err.count(code) for code in ("T214", "T112")] == [1, 2], command
        if form == "text":
            assert err.count("^^^^\n") == 3


@pytest.mark.parametrize("words", [["check"], ["build", "--format", "json"]])
def test_standard_input_is_one_job(
    words: list[str], jobs: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main([*words, "one.trim", "-"]) == 2
    assert capsys.readouterr().err.count("\n") == 1


def test_what_is_wrong_for_all_is_said_once(jobs: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for wrong in (["--language", "tlh"], ["--ticket", "small"], ["--templates", "none"]):
        assert main(["build", "one.trim", "warned.trim", *wrong]) == 2
        assert capsys.readouterr().err.count("\n") == 1
    with pytest.raises(SystemExit):
        main(["build", "one.trim", "warned.trim", "--jobs", "0"])


def test_no_two_jobs_share_a_folder() -> None:
    files = ["a/x.trim", "b/X.trim", "c/b/x.trim", "y.trim", "y.txt", "Z.trim"]
    found = [path.as_posix() for path in places(files, Path("out"))]
    here = Path.cwd().name
    assert found == ["out/a-x", "out/b-X", "out/b-x-2", f"out/{here}-y", f"out/{here}-y-2", "out/Z"]
    beside = [path.as_posix() for path in places(["a/x.trim", "b/x.trim", "a/x.txt"], None)]
    assert beside == ["a/x-sheets", "b/x-sheets", "a/x-sheets-2"]


@pytest.mark.parametrize("jobs", [40, pytest.param(500, marks=pytest.mark.nightly)])
def test_hundreds_of_jobs(jobs: int, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    files = []
    for number in range(jobs):
        path = tmp_path / f"flat-{number:03d}.trim"
        path.write_text(good(20 + number % 90), encoding="utf-8")
        files.append(str(path))
    out = tmp_path / "shop"
    assert main(["build", *files, "--out", str(out), "--format", "json", "--plan", "quick"]) == 0
    told = [line.rsplit("/", 1)[1] for line in capsys.readouterr().out.splitlines()]
    assert told == [f"flat-{number:03d}" for number in range(jobs)]
    for number in (0, jobs // 4, jobs - 1):
        plan = json.loads((out / f"flat-{number:03d}" / "plan.json").read_text(encoding="utf-8"))
        assert plan["pieces"][0]["length_in"] == str(20 + number % 90)


def bring_down(status: int) -> None:
    """End this process at once; coverage puts an os._exit of its own there, which no pipe takes."""
    os._exit(status)


def built(job: JobBuild, _hand_back: Callable[[object], None]) -> tuple[int, str]:
    outcome = build(job)
    return outcome.code, outcome.why


class Deadly:
    """A job that brings the process down that it is handed to."""

    def __reduce__(self) -> tuple[Callable[[int], object], tuple[int]]:
        return bring_down, (1,)


@pytest.mark.parametrize("processes", [1, pytest.param(2, marks=pytest.mark.nightly)])
def test_a_process_that_comes_down_takes_one_job_with_it(processes: int) -> None:
    broken = JobBuild(
        job=None,  # what no command line gives
        messages=MessageOptions(),
        out=None,
        plan=PlanOptions(),
        sheets=SheetOptions(),
    )
    with WorkerPool(processes, built, 3) as pool:
        answers = dict(pool.do([Deadly(), broken, Deadly()]))
        assert not pool.at_work()
    assert answers[0] is answers[2] is None
    answer = answers[1]
    assert answer is not None
    assert answer.code == 3
    assert "a defect in trimlang itself" in answer.err


def gone(group: int) -> bool:
    """Wait until the system has cleared away the last process of a group, for a while at most."""
    until = monotonic() + 30
    while monotonic() < until:
        try:
            os.killpg(group, 0)
        except ProcessLookupError:
            return True
        sleep(0.02)
    return False


@pytest.mark.skipif(not hasattr(os, "killpg"), reason="processes are not told so here")
@pytest.mark.parametrize(
    ("told", "number"),
    [
        ("the terminal's group", signal.SIGINT),
        pytest.param("the master alone", signal.SIGINT, marks=pytest.mark.nightly),
        pytest.param("the master alone", signal.SIGTERM, marks=pytest.mark.nightly),
    ],
)
def test_a_signal_leaves_nothing_behind(tmp_path: Path, told: str, number: int) -> None:
    files = []
    for flat in range(24):
        path = tmp_path / f"flat-{flat}.trim"
        path.write_text(good(20 + flat), encoding="utf-8")
        files.append(path.name)
    build = subprocess.Popen(
        [sys.executable, "-m", "trimlang", "build", *files, "--out", "out", "--format", "html"],
        cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        start_new_session=True,
    )
    assert build.stdout is not None
    build.stdout.readline()  # the first job is told: the others are at work
    if told == "the master alone":
        build.send_signal(number)
    else:
        os.killpg(build.pid, number)
    # the end of its output comes only when no process of the group holds it any more
    _, err = build.communicate(timeout=60)
    assert build.returncode == 128 + number
    assert "of 24 jobs built, no folder is half written" in err
    assert gone(build.pid)
    folders = list((tmp_path / "out").iterdir())
    assert folders
    assert not [path for path in folders if path.name.startswith(".")]
    assert all((path / MARK).is_file() and (path / "plan.json").is_file() for path in folders)


def test_what_a_process_left_half_written_is_found(tmp_path: Path) -> None:
    for name in (".shop-trimlang-12-abc", ".shop-123-abc", ".shop2-12-abc", "shop"):
        (tmp_path / name).mkdir()
    assert leftovers(tmp_path / "shop", 12) == [tmp_path / ".shop-trimlang-12-abc"]
    assert leftovers(tmp_path / "none" / "shop", 12) == []


class Terminal(StringIO):
    def isatty(self) -> bool:
        return True


def test_a_terminal_sees_how_far_it_is(jobs: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    screen = Terminal()
    monkeypatch.setattr(sys, "stderr", screen)
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.delenv("NO_COLOR", raising=False)
    given = ["one.trim", "bad.trim", "warned.trim"]
    assert main(["build", *given, "--format", "json", "--jobs", "1"]) == 1
    shown = screen.getvalue()
    assert "building" in shown
    assert "3/3" in shown
    assert "\x1b[1;31m" in shown  # errors are red, as for a job alone


def test_a_process_that_is_ended_on_its_way_out_says_nothing() -> None:
    own = (
        "import atexit, os, signal; from multiprocessing import Pipe;"
        " from trimlang.workers.worker import work; ours, theirs = Pipe(); ours.close();"
        " work(theirs, print, 3); atexit.register(lambda: os.kill(os.getpid(), signal.SIGTERM))"
    )
    gone = subprocess.run(
        [sys.executable, "-c", own], capture_output=True, text=True, cwd=ROOT, check=False
    )
    assert (gone.returncode, gone.stderr) == (-signal.SIGTERM, "")
