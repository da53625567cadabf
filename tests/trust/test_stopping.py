"""A build that is told to stop ends soon, and the old sheets are untouched."""

from __future__ import annotations

import signal
import threading
from pathlib import Path
from time import monotonic

import pytest

from tests.jobs import BASE, TWELVE_FEET
from tests.trust.stopping import Bench, room_of
from trimlang.cli import main
from trimlang.output import folder
from trimlang.output.folder import write_folder
from trimlang.workers.stopping import StoppedError, stoppable, to_the_end

ANY_LONG_WAIT = 30.0


# Ctrl-C in the midst of many jobs is tried at every change in tests/cli/test_many.py.
@pytest.mark.parametrize(
    "number", [pytest.param(signal.SIGINT, marks=pytest.mark.nightly), signal.SIGTERM]
)
def test_a_long_plan_stops(tmp_path: Path, number: signal.Signals) -> None:
    bench = Bench(tmp_path, "--format", "json", "--plan-seconds", "60")
    code, delay = bench.stop(0.8, number)
    assert code == 128 + number
    # a minute's search was cut short; how fast is measured in benchmarks/stopping.py
    assert delay < ANY_LONG_WAIT
    assert not list(tmp_path.glob(".shop-trimlang-*"))


def test_a_signal_is_raised_at_once() -> None:
    with pytest.raises(StoppedError) as stop, stoppable():
        signal.raise_signal(signal.SIGTERM)
    assert (stop.value.number, stop.value.done) == (signal.SIGTERM, False)
    assert signal.getsignal(signal.SIGTERM) == signal.SIG_DFL


def test_what_must_run_to_its_end_does() -> None:
    done = []

    def work() -> None:
        with stoppable(), to_the_end():
            signal.raise_signal(signal.SIGINT)
            done.append(True)

    with pytest.raises(StoppedError) as stop:
        work()
    assert done == [True]
    assert stop.value.done


def test_another_threads_work_is_left_alone() -> None:
    done = []

    def work() -> None:
        with stoppable(), to_the_end():
            done.append(True)

    thread = threading.Thread(target=work)
    thread.start()
    thread.join()
    assert done == [True]


def test_a_stop_while_the_sets_change_places_comes_after(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    write_folder(tmp_path / "job-sheets", {"a": b"old"})
    swap = folder.put_in_place

    def stopped(*places: Path) -> Path | None:
        signal.raise_signal(signal.SIGINT)
        return swap(*places)

    monkeypatch.setattr(folder, "put_in_place", stopped)
    job = tmp_path / "job.trim"
    job.write_text(
        f'{BASE}\n{TWELVE_FEET}\nroom "A", trim base, open walk\nN: 40 in, left=butt, right=butt\n',
        encoding="utf-8",
    )
    assert main(["build", str(job), "--format", "json"]) == 130
    assert "were written before" in capsys.readouterr().err
    assert (tmp_path / "job-sheets" / "plan.json").exists()


def test_a_stop_before_anything_is_written(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write_folder(tmp_path / "job-sheets", {"a": b"old"})
    monkeypatch.setattr(folder, "write_file", lambda *_: signal.raise_signal(signal.SIGINT))
    with pytest.raises(StoppedError), stoppable():
        write_folder(tmp_path / "job-sheets", {"a": b"new"})
    assert (tmp_path / "job-sheets" / "a").read_bytes() == b"old"
    assert not list(tmp_path.glob(".job-sheets-trimlang-*"))


def test_a_planner_ends_at_its_time(tmp_path: Path) -> None:
    job = tmp_path / "job.trim"
    job.write_text(room_of(400), encoding="utf-8")
    began = monotonic()
    assert main(["build", str(job), "--format", "json", "--plan-seconds", "0.1"]) == 0
    assert monotonic() - began < ANY_LONG_WAIT
