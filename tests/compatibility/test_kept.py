"""Job files of each released version go on meaning what they meant."""

from __future__ import annotations

import json
import re
from fractions import Fraction
from hashlib import sha256
from pathlib import Path
from typing import Any

import pytest

from tests.compatibility.kept import (
    CHEAPER,
    FIGURES_MENDED,
    PLAN_MENDED,
    TOLD_SINCE,
    VERSIONS,
    compiled,
    cost,
    effort_for,
    figures,
    figures_mended,
    job_files,
    meaning,
    mended,
    of_whole_walls,
    plan_as_then,
)
from tests.conftest import ROOT
from tests.every import every
from trimlang.compiler import check_job
from trimlang.sheets.export.plan_json import plan_json
from trimlang.site_log.former_names import now_called
from trimlang.version import __version__

KEPT = [path for version in VERSIONS for path in job_files(version)]


def kept(path: Path) -> dict[str, Any]:
    told = json.loads((path.parent / "meaning.json").read_text(encoding="utf-8"))
    of_file: dict[str, Any] = told[path.name]
    return of_file


def called_as_now(path: Path, pieces: dict[str, Any]) -> dict[str, Any]:
    """Since 0.1.0 cased openings go by their names, where they were counted before."""
    job = check_job(path.read_text(encoding="utf-8"), path=path).job
    return {now_called(piece, job): told for piece, told in pieces.items()}


def name(path: Path) -> str:
    return f"{path.parent.name}/{path.stem}"


@pytest.mark.parametrize("path", KEPT, ids=name)
def test_a_kept_job_means_what_it_meant(path: Path) -> None:
    told = kept(path)
    now = meaning(path)
    since = [said for said, _ in TOLD_SINCE.get(name(path), [])]
    assert sorted(now["diagnostics"]) == sorted([*told["diagnostics"], *since])
    assert now["pieces"] == called_as_now(path, mended(path, told["pieces"]))


@pytest.mark.parametrize("path", KEPT, ids=name)
def test_a_kept_job_costs_what_it_cost(path: Path) -> None:
    told = kept(path)
    before, floor = Fraction(str(told["cost"])), Fraction(str(told["bound"]))
    price, bound = (Fraction(text) for text in cost(path))
    # the quick plan needs no proof: it lies at or above what was proven, and below it no bound
    assert price >= floor
    assert bound <= before


@every("path", KEPT)
def test_a_kept_job_s_figures_are_the_same_to_the_byte(path: Path) -> None:
    """Every length, cut, stick and price of plan.json, as an earlier build wrote them."""
    told = json.loads((path.parent / "figures.json").read_text(encoding="utf-8"))
    before = figures_mended(path, "\n".join(told[path.name]) + "\n")
    now = figures(json.loads(plan_json(compiled(path, effort_for(path)))))
    if name(path) in CHEAPER:
        assert of_whole_walls(now) == of_whole_walls(before)
        cost_now, cost_before = (Fraction(text.split()[-1]) for text in (now, before))
        assert cost_now <= cost_before * Fraction(101, 100)  # planned quickly here
    else:
        assert now.encode() == before.encode()


@every("path", KEPT)
def test_a_kept_job_s_plan_json_is_the_same_to_the_byte(path: Path) -> None:
    """The whole file: each piece, stick, line of the order, finding and sum."""
    if name(path) in CHEAPER:
        return
    told = json.loads((path.parent / "digests.json").read_text(encoding="utf-8"))
    then = plan_as_then(path, json.loads(plan_json(compiled(path, effort_for(path)))))
    assert sha256(then.encode()).hexdigest() == told[path.name]


def test_each_exception_is_told_with_its_reason() -> None:
    page = " ".join((ROOT / "docs" / "promises.md").read_text(encoding="utf-8").split())
    listed = {**FIGURES_MENDED, **PLAN_MENDED, **TOLD_SINCE}
    reasons = {job: {why for *_, why in changes} for job, changes in listed.items()}
    reasons |= {job: {why} for job, why in CHEAPER.items()}
    for job, whys in reasons.items():
        row = re.search(rf"\| `{job.partition('/')[2]}` \|[^|]*\|", page)
        assert row is not None, job
        assert all(why in row[0] for why in whys), job
    jobs = re.findall(r"\| `(\S+)` \|", page.partition("## What was corrected")[2])
    assert sorted(jobs) == sorted(job.partition("/")[2] for job in reasons)


def test_this_version_is_kept() -> None:
    assert __version__ in {version.name for version in VERSIONS}, (
        "run python -m tests.compatibility.freeze"
    )
    assert len(KEPT) >= 20


@pytest.mark.parametrize("version", VERSIONS, ids=lambda path: path.name)
def test_no_kept_job_is_forgotten(version: Path) -> None:
    told = json.loads((version / "meaning.json").read_text(encoding="utf-8"))
    assert sorted(told) == [path.name for path in job_files(version)]
