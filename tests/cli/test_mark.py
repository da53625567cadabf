"""Marking what was done: lines in full, nothing written where a line errs."""

from __future__ import annotations

from pathlib import Path

import pytest

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
        "bought 1 base 8 ft at 11.60\n"
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
