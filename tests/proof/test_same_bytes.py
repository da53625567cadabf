"""The same job gives the same bytes, wherever and by whichever Python it is built."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from functools import cache
from pathlib import Path
from tempfile import mkdtemp

import pytest

from tests.conftest import EXAMPLES, ROOT
from trimlang.cli import main

NEEDED = "highspy, jinja2, lark, numpy, pint, rich, segno, weasyprint"
OTHERS = [f"python3.{minor}" for minor in range(11, 20) if minor != sys.version_info[1]]
ELSEWHERE = {
    "PYTHONHASHSEED": "4711",
    "TZ": "Asia/Kathmandu",
    "LC_ALL": "de_DE.UTF-8",
    "LANG": "de_DE.UTF-8",
}
SETTINGS = {
    "another hash seed, time zone and locale": ELSEWHERE,
    "a bare locale": {"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"},
}


def built(
    job: Path, own: dict[str, str], *, python: str = sys.executable, cwd: Path = ROOT, pdf: bool
) -> dict[str, bytes]:
    """Build a job with a quick plan in a process of its own; return the output by file name."""

    def build(arguments: list[str]) -> None:
        subprocess.run(
            [python, "-W", "ignore", "-m", "trimlang", *arguments],
            cwd=cwd, env={**os.environ, "PYTHONPATH": str(ROOT), **own}, check=True,
            capture_output=True,
        )  # fmt: skip

    return sheets(build, job, pdf=pdf)


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


@pytest.mark.parametrize("setting", SETTINGS)
def test_pages_and_data_are_the_same_in(setting: str) -> None:
    same = usual("house.trim", pdf=False)
    assert {"tickets.html", "plan.json", "stock-order.csv"} <= set(same)
    assert built(EXAMPLES / "house.trim", SETTINGS[setting], pdf=False) == same


def test_pages_and_data_are_the_same_from_another_folder(tmp_path: Path) -> None:
    copy = tmp_path / "elsewhere"
    copy.mkdir()
    for name in ("house.trim", "prices.trim"):
        shutil.copy(EXAMPLES / name, copy / name)
    there = built(Path("house.trim"), {}, cwd=copy, pdf=False)
    assert there == usual("house.trim", pdf=False)


def test_a_pdf_is_the_same_with_another_hash_seed_time_zone_and_locale() -> None:
    again = built(EXAMPLES / "one-room.trim", ELSEWHERE, pdf=True)
    assert "tickets.pdf" in again
    assert again == usual("one-room.trim", pdf=True)


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
