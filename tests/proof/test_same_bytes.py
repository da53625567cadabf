"""The same job gives the same bytes, wherever and by whichever Python it is built."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from contextlib import chdir
from functools import cache
from pathlib import Path
from tempfile import mkdtemp

import pytest

from tests.conftest import EXAMPLES, ROOT
from tests.jobs import walls
from trimlang.cli import main

NEEDED = "highspy, jinja2, lark, numpy, pint, rich, segno, weasyprint"
OTHERS = [f"python3.{minor}" for minor in range(11, 20) if minor != sys.version_info[1]]
ELSEWHERE = {
    "PYTHONHASHSEED": "4711",
    "TZ": "Asia/Kathmandu",
    "LC_ALL": "de_DE.UTF-8",
    "LANG": "de_DE.UTF-8",
}
BARE = {"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}


def in_a_process(
    own: dict[str, str], *, python: str = sys.executable, cwd: Path = ROOT
) -> Callable[[list[str]], object]:
    """Return what runs a command in a process of its own with these settings."""

    def run(arguments: list[str]) -> None:
        subprocess.run(
            [python, "-W", "ignore", "-m", "trimlang", *arguments],
            cwd=cwd, env={**os.environ, "PYTHONPATH": str(ROOT), **own}, check=True,
            capture_output=True,
        )  # fmt: skip

    return run


def built(
    job: Path, own: dict[str, str], *, python: str = sys.executable, cwd: Path = ROOT, pdf: bool
) -> dict[str, bytes]:
    """Build a job with a quick plan in a process of its own; return the output by file name."""
    return sheets(in_a_process(own, python=python, cwd=cwd), job, pdf=pdf)


def sheets(build: Callable[[list[str]], object], job: Path, *, pdf: bool) -> dict[str, bytes]:
    out = Path(mkdtemp(prefix="same-bytes-"))
    formats = ["--format", "html", *(["--format", "pdf"] if pdf else [])]
    try:
        build(["build", str(job), "--plan", "quick", *formats, "--out", str(out / "sheets")])
        files = [path for path in (out / "sheets").iterdir() if not path.name.startswith(".")]
        return {path.name: path.read_bytes() for path in files}
    finally:
        shutil.rmtree(out)


@cache
def usual(name: str, *, pdf: bool) -> dict[str, bytes]:
    """Build an example in this process, with whatever hash seed it has."""
    return sheets(main, EXAMPLES / name, pdf=pdf)


def test_pages_and_data_are_the_same_with_another_hash_seed_time_zone_and_locale() -> None:
    same = usual("house.trim", pdf=False)
    assert {"tickets.html", "plan.json", "stock-order.csv"} <= set(same)
    assert built(EXAMPLES / "house.trim", ELSEWHERE, pdf=False) == same


def test_pages_and_data_are_the_same_from_another_folder_in_a_bare_locale(tmp_path: Path) -> None:
    copy = tmp_path / "elsewhere"
    copy.mkdir()
    for name in ("one-room.trim", "prices.trim"):
        shutil.copy(EXAMPLES / name, copy / name)
    there = built(Path("one-room.trim"), BARE, cwd=copy, pdf=False)
    assert there == usual("one-room.trim", pdf=False)


@pytest.mark.nightly
def test_every_pdf_is_the_same_with_another_hash_seed_time_zone_and_locale(tmp_path: Path) -> None:
    job = tmp_path / "small.trim"
    job.write_text(walls("N: 40 in, left=butt, right=out-corner"), encoding="utf-8")
    again = built(job, ELSEWHERE, pdf=True)
    assert "tickets.pdf" in again
    assert again == sheets(main, job, pdf=True)


def together(build: Callable[[list[str]], object], folder: Path) -> dict[str, bytes]:
    """Build two jobs with a common order in every format but PDF; return the output by path."""
    files = []
    for inches in (40, 50):
        files.append(f"flat-{inches}.trim")
        walk = f"N: {inches} in, left=butt, right=out-corner\nE: 9 ft, left=out-corner, right=butt"
        (folder / files[-1]).write_text(walls(walk), encoding="utf-8")
    formats = [word for kind in ("html", "csv", "dxf", "json") for word in ("--format", kind)]
    build(["build", *files, "--pool", *formats, "--out", "out"])
    out = folder / "out"
    return {
        path.relative_to(out).as_posix(): path.read_bytes()
        for path in out.rglob("*")
        if path.is_file() and not path.name.startswith(".")
    }


@pytest.mark.parametrize(
    "seed", ["4", *(pytest.param(seed, marks=pytest.mark.nightly) for seed in ("1", "10"))]
)
def test_jobs_bought_together_are_the_same_with_another_hash_seed(
    seed: str, tmp_path: Path
) -> None:
    """Thirty-two seeds at night: ``.ci/nightly``."""
    pytest.importorskip("ezdxf")
    for place in ("here", "there"):
        (tmp_path / place).mkdir()
    with chdir(tmp_path / "here"):
        here = together(main, tmp_path / "here")
    assert {Path(name).suffix for name in here} == {".html", ".csv", ".dxf", ".json"}
    there = in_a_process({"PYTHONHASHSEED": seed, "TZ": f"UTC{seed}"}, cwd=tmp_path / "there")
    assert together(there, tmp_path / "there") == here


@pytest.mark.parametrize("python", OTHERS)
def test_pages_and_data_are_the_same_by(python: str) -> None:
    """Any other Python on the PATH that has what trimlang needs; ``docs/trust.md``."""
    if shutil.which(python) is None:
        pytest.skip(f"there is no {python}")
    has = subprocess.run([python, "-c", f"import {NEEDED}"], capture_output=True, check=False)
    if has.returncode:
        pytest.skip(f"{python} lacks what trimlang needs")
    by_other = built(EXAMPLES / "house.trim", {}, python=python, pdf=False)
    assert by_other == usual("house.trim", pdf=False)
