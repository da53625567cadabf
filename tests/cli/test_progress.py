"""What a terminal shows while a plan is made, and what a pipe does not."""

import io
from pathlib import Path

import pytest

from tests.jobs import walls
from trimlang.cli import main, progress
from trimlang.cli.progress import Progress
from trimlang.compiler import compile_job
from trimlang.planning import moved_joints
from trimlang.planning.clock import Clock
from trimlang.stock.planner import Effort
from trimlang.stock.problem import Problem


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def told(stream: io.StringIO) -> str:
    with Progress(stream) as shown:
        watch = shown.watch("base")
        if watch is not None:
            for cost, bound in ((None, 5), (1000, 990), (1000, 1000)):
                watch(cost, bound)
    return stream.getvalue()


def test_a_terminal_is_told_how_the_search_goes(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(progress, "PATIENCE", 0)
    monkeypatch.setenv("TERM", "xterm")
    assert "planning base" in told(Terminal())


def test_a_quick_plan_shows_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(progress, "PATIENCE", 60)
    assert told(Terminal()) == ""


def test_a_pipe_is_told_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(progress, "PATIENCE", 0)
    assert told(io.StringIO()) == ""


def test_the_standing_in_words() -> None:
    assert progress.standing_text(None, 5) == "looking for a plan within the supply"
    assert progress.standing_text(1000, 990) == "at most 1.00 % above the least"
    assert "proven" in progress.standing_text(1000, 1000)


def test_the_time_is_shared_over_the_trims() -> None:
    clock = Clock(Effort(seconds=9), 3)
    shares = [clock.share().seconds for _ in range(3)]
    # nothing was used: each has what the others left
    assert shares[0] == pytest.approx(3, abs=0.5)
    assert shares[1] == pytest.approx(4.5, abs=0.5)
    assert shares[2] == pytest.approx(9, abs=0.5)


def test_each_trim_is_announced() -> None:
    names: list[str] = []
    result = compile_job(
        walls("N: 40 in, left=butt, right=butt"), watch=lambda trim: names.append(trim)
    )
    assert result.ok
    assert names == ["base"]


def test_the_limit_reaches_the_planner(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    efforts: list[Effort] = []
    plan = moved_joints.sound_plan

    def spy(problem: Problem, *, effort: Effort, watch: object) -> object:
        efforts.append(effort)
        return plan(problem, effort=effort)

    monkeypatch.setattr(moved_joints, "sound_plan", spy)
    job = tmp_path / "job.trim"
    job.write_text(walls("N: 40 in, left=butt, right=butt"), encoding="utf-8")
    build = ["build", str(job), "--format", "json"]
    assert main([*build, "--plan-seconds", "20"]) == 0
    assert main(build) == 0
    assert [round(effort.seconds) for effort in efforts] == [20, 10]
    assert capsys.readouterr().err == ""


@pytest.mark.parametrize("wrong", ["0", "-1", "nan", "soon", "1e9"])
def test_a_time_that_makes_no_sense(wrong: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stop:
        main(["build", "x.trim", f"--plan-seconds={wrong}"])
    assert stop.value.code == 2
    said = f"argument --plan-seconds: “{wrong}” is no number of seconds above 0, at most 86400"
    assert said in capsys.readouterr().err
