"""Marking what was done: lines in full, nothing written where a line errs."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.jobs import TWELVE_FEET
from tests.site_log.test_log import JOB
from trimlang.cli import main


@pytest.fixture
def job(tmp_path: Path) -> Path:
    path = tmp_path / "porch.trim"
    path.write_text(JOB, encoding="utf-8")
    return path


def log(job: Path) -> Path:
    return job.with_suffix(".site")


def test_a_line_is_written_out_in_full(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["mark", str(job), "bought 3 base 12 ft", "cut PO-S-base,  PO-N-base"]) == 0
    written = (
        "bought 3 base 12 ft at 17.40\n"
        "cut PO-S-base 96 1/2 in from base-1 of 12 ft, PO-N-base 29 3/4 in from base-1 of 12 ft\n"
    )
    assert log(job).read_text(encoding="utf-8") == written
    out, err = capsys.readouterr()
    assert out.startswith(written)
    assert "3 pieces: 2 cut" in out
    assert not err


def test_a_line_needs_no_quotes(job: Path) -> None:
    assert main(["mark", str(job), "bought", "3", "base", "12", "ft", "cut", "PO-N-base"]) == 0
    first, second = log(job).read_text(encoding="utf-8").splitlines()
    assert first == "bought 3 base 12 ft at 17.40"
    assert second.startswith("cut PO-N-base 29 3/4 in from base-")


def test_a_line_that_errs_is_not_written(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    log(job).write_text("# begun\n", encoding="utf-8")
    for line in ("cut PO-Q-base", "fitted PO-N-base", "spare 5 %", "hello"):
        assert main(["mark", str(job), line]) == 1
        assert "porch.site:2:" in capsys.readouterr().err
    assert log(job).read_text(encoding="utf-8") == "# begun\n"
    assert sorted(path.name for path in job.parent.iterdir()) == ["porch.site", "porch.trim"]


def test_usage(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["mark", str(job)]) == 2
    assert main(["mark", "-", "cut PO-N-base"]) == 2
    assert main(["mark", str(job.with_name("none.trim")), "cut PO-N-base"]) == 2
    assert not log(job).exists()


def test_pinning_leaves_the_rest_of_the_lines_as_it_is(job: Path) -> None:
    job.write_text(JOB + "CUT po-n-base # wrong case\n".replace("po-n", "PO-N"), encoding="utf-8")
    log(job).write_bytes("\ufeff  cut PO-S-base   # the long one\r\nbought 1 base 8 ft".encode())
    before = main(["check", str(job)])
    assert before == 0
    assert main(["mark", str(job), "--pin"]) == 0
    assert job.read_text(encoding="utf-8").endswith(
        "CUT PO-N-base 29 3/4 in from base-1 of 12 ft # wrong case\n"
    )
    assert log(job).read_bytes().decode() == (
        "  cut PO-S-base 96 1/2 in from base-1 of 12 ft   # the long one\r\n"
        "bought 1 base 8 ft at 11.60\r\n"
    )
    again = log(job).read_bytes()
    assert main(["mark", str(job), "--pin"]) == 0
    assert log(job).read_bytes() == again


def test_metric_jobs_are_pinned_exactly(tmp_path: Path) -> None:
    job = tmp_path / "stube.trim"
    job.write_text(
        "unit mm\ntrim base: 14 thick, 134 tall\nstock base: 2440 at 17.40, 8 ft 1/3 in at 12\n"
        'room "Stube", trim base, open walk\n'
        "  N: 1740.4, left=butt, right=out-corner\n  E: 900.5, left=out-corner, right=butt\n",
        encoding="utf-8",
    )
    assert main(["mark", str(job), "cut ST-N-base", "cut ST-E-base"]) == 0
    assert main(["check", str(job)]) == 0
    assert main(["build", str(job), "--format", "json"]) == 0
    assert "ST-N-base 1755 mm from base-1 of" in log(job).read_text(encoding="utf-8")


def test_a_stick_in_feet_is_the_same_stick_in_a_metric_log(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """12 ft are 3657.6 mm: written as 3.658 m it was a stick that nobody had bought."""
    job = tmp_path / "stube.trim"
    job.write_text(
        f"unit mm\ntrim base: 14 thick, 134 tall\n{TWELVE_FEET}\n"
        'room "Stube", trim base, open walk\n  N: 1740, left=butt, right=butt\n'
        "  opening 800\n  E: 900, left=butt, right=butt\n",
        encoding="utf-8",
    )
    lines = ("bought 1 base 12 ft", "cut ST-N-base", "cut ST-E-base 900 from base-1 of 12 ft")
    for line in lines:
        assert main(["mark", str(job), line]) == 0
    out, err = capsys.readouterr()
    assert not err
    assert out.endswith("spent 17.40, still to buy 0.00, together 17.40\nno ticket changed\n")
    assert log(job).read_text(encoding="utf-8").splitlines()[:2] == [
        "bought 1 base 3657.6 mm at 17.40",
        "cut ST-N-base 1740 mm from base-1 of 3657.6 mm",
    ]


def test_of_several_at_once_none_is_lost(job: Path) -> None:
    # one of them comes to the log by a link, from a job in another folder
    inside = job.parent / "inside" / job.name
    inside.parent.mkdir()
    inside.write_bytes(job.read_bytes())
    log(inside).touch()
    log(job).symlink_to(log(inside))
    begun = [
        subprocess.Popen(
            [sys.executable, "-m", "trimlang", "mark", str(one), f"bought {count} base 12 ft"],
            stdout=subprocess.DEVNULL,
        )
        for count, one in enumerate((job, inside, job), 1)
    ]
    assert [one.wait(60) for one in begun] == [0] * 3
    lines = log(job).read_text(encoding="utf-8").splitlines()
    assert sorted(lines) == [f"bought {count} base 12 ft at 17.40" for count in range(1, 4)]


def test_the_last_line_is_taken_back(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    log(job).write_bytes(b"# begun\r\nbought 3 base 12 ft at 17.40\r\n# at noon\r\n")
    assert main(["mark", str(job), "cut PO-N-base"]) == 0
    capsys.readouterr()
    assert main(["mark", str(job), "--undo"]) == 0
    assert capsys.readouterr().out == "taken back: cut PO-N-base 29 3/4 in from base-1 of 12 ft\n"
    assert main(["mark", str(job), "--undo"]) == 0
    assert capsys.readouterr().out == "taken back: bought 3 base 12 ft at 17.40\n"
    assert log(job).read_bytes() == b"# begun\r\n# at noon\r\n"
    assert main(["mark", str(job), "--undo"]) == 2
    assert main(["mark", str(job), "cut PO-N-base", "--undo"]) == 2


def test_nothing_is_taken_back_where_there_is_no_log(job: Path) -> None:
    assert main(["mark", str(job), "--undo"]) == 2
    assert not log(job).exists()


def test_the_same_line_within_a_minute_is_asked_about(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    said = ["mark", str(job), "bought 1 base 12 ft"]
    assert main(said) == 0
    assert main(said) == 2
    assert "less than a minute ago" in capsys.readouterr().err
    assert main([*said, "--anyway"]) == 0
    an_hour_ago = log(job).stat().st_mtime - 3600
    os.utime(log(job), (an_hour_ago, an_hour_ago))
    assert main(said) == 0
    assert log(job).read_text(encoding="utf-8").count("bought 1") == 3


def test_a_stick_that_nobody_bought_is_asked_about(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    cut = "cut PO-N-base 29 3/4 in from base-7 of 9 ft"
    assert main(["mark", str(job), cut]) == 1
    assert "say first what was bought" in capsys.readouterr().err
    assert not log(job).exists()
    assert main(["mark", str(job), cut, "--anyway"]) == 0
    assert log(job).read_text(encoding="utf-8").startswith("cut PO-N-base")


def test_a_purchase_without_a_price_is_asked_about_where_others_have_one(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["mark", str(job), "bought 1 base 16 ft"]) == 1
    assert "would count as free" in capsys.readouterr().err
    assert not log(job).exists()
    assert main(["mark", str(job), "bought 1 base 16 ft at 21"]) == 0
    log(job).unlink()
    job.write_text(JOB.replace(" at 11.60", "").replace(" at 17.40", ""), encoding="utf-8")
    assert main(["mark", str(job), "bought 1 base 9 ft"]) == 0


def test_a_log_keeps_its_line_ends(job: Path) -> None:
    log(job).write_bytes(b"# begun\r\nbought 1 base 12 ft at 17.40")
    for _ in range(2):
        main(["mark", str(job), "cut PO-N-base"])
    full = b"cut PO-N-base 29 3/4 in from base-1 of 12 ft\r\n"
    assert log(job).read_bytes() == b"# begun\r\nbought 1 base 12 ft at 17.40\r\n" + full
    main(["mark", str(job), "bought 1 base 12 ft"])
    assert main(["mark", str(job), "bought 1 base 12 ft"]) == 2
    assert main(["mark", str(job), "--undo"]) == 0
    assert log(job).read_bytes().endswith(full)


def test_a_wall_s_name_is_completed(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["mark", str(job), "cut n"]) == 1
    assert "Did you mean “PO-N-base”?" in capsys.readouterr().err
    assert main(["mark", str(job), "cut base"]) == 1
    assert "Did you mean one of these: “PO-E-base”, “PO-N-base”" in capsys.readouterr().err
    # a wall of another room
    assert main(["mark", str(job), "cut LR-E"]) == 1
    assert "Did you mean “PO-E-base”?" in capsys.readouterr().err


def test_a_log_that_is_a_link_out_is_not_written_to(
    job: Path, tmp_path_factory: pytest.TempPathFactory, capsys: pytest.CaptureFixture[str]
) -> None:
    elsewhere = tmp_path_factory.mktemp("elsewhere") / "other.txt"
    elsewhere.write_text("# mine\n", encoding="utf-8")
    log(job).symlink_to(elsewhere)
    assert main(["mark", str(job), "bought 1 base 12 ft"]) == 2
    assert main(["mark", str(job), "--undo"]) == 2
    assert "leads out of the job's folder" in capsys.readouterr().err
    assert elsewhere.read_text(encoding="utf-8") == "# mine\n"


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="the system has no pipes with names")
def test_a_log_that_is_a_pipe_is_not_waited_for(job: Path) -> None:
    os.mkfifo(log(job))
    assert main(["mark", str(job), "bought 1 base 12 ft"]) == 2


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="the system has no pipes with names")
def test_a_log_that_cannot_be_read_is_not_passed_over(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    def lead_nowhere(path: Path) -> None:
        path.symlink_to("nowhere.site")

    def lead_to_itself(path: Path) -> None:
        path.symlink_to(path.name)

    for make in (os.mkfifo, Path.mkdir, lead_nowhere, lead_to_itself):
        make(log(job))
        assert main(["check", str(job)]) == 1
        assert "“porch.site” cannot be read" in capsys.readouterr().err
        assert make is not lead_to_itself or main(["mark", str(job), "bought 1 base 12 ft"]) == 2
        log(job).rmdir() if log(job).is_dir() else log(job).unlink()


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="the system has no full device")
def test_what_is_written_is_said_to_be_where_it_cannot_be_printed(job: Path) -> None:
    with Path("/dev/full").open("wb") as full:
        done = subprocess.run(
            [sys.executable, "-m", "trimlang", "mark", str(job), "bought 1 base 12 ft"],
            stdout=full,
            stderr=subprocess.PIPE,
            check=False,
        )
    assert done.returncode == 0
    assert "is written, and only this could not be printed" in done.stderr.decode()
    assert log(job).read_text(encoding="utf-8") == "bought 1 base 12 ft at 17.40\n"


def test_options_may_stand_before_the_lines(job: Path) -> None:
    assert main(["mark", str(job), "--anyway", "bought 3 base 12 ft"]) == 0
    assert log(job).read_text(encoding="utf-8") == "bought 3 base 12 ft at 17.40\n"


def test_a_price_of_nine_digits_can_be_read_again(job: Path) -> None:
    job.write_text(JOB.replace("12 ft at 17.40", "12 ft at 999999999"), encoding="utf-8")
    assert main(["mark", str(job), "bought 1 base 12 ft"]) == 0
    assert main(["check", str(job)]) == 0
