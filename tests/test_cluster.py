"""The recipe for a cluster gives what a compile here gives, byte for byte."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

import trimlang
from benchmarks.flats import compiled_on_a_cluster, lost, write_flats
from tests.conftest import EXAMPLES, ROOT
from tests.jobs import BASE, TWELVE_FEET

PRICES = f"{BASE}\n{TWELVE_FEET}\n"
JOB = (
    'job "Flat {n}"\ninclude "yard/prices.trim"\nroom "Study", trim base, open walk\n'
    "  N: 4{n} in, left=butt, right=out-corner\n  E: 5{n} 5/12 in, left=out-corner, right=butt\n"
)


@pytest.mark.nightly
def test_two_workers_give_the_same_bytes(tmp_path: Path) -> None:
    pytest.importorskip("dask.distributed")
    (tmp_path / "yard").mkdir()
    (tmp_path / "yard" / "prices.trim").write_text(PRICES, encoding="utf-8")
    jobs = [tmp_path / f"flat-{n}.trim" for n in range(3)]
    for n, job in enumerate(jobs):
        job.write_text(JOB.format(n=n), encoding="utf-8")
    out = tmp_path / "plans"
    done = subprocess.run(
        [sys.executable, str(EXAMPLES / "cluster.py"), *map(str, jobs), "--out", str(out)],
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        capture_output=True,
        text=True,
        timeout=120,
    )
    assert done.returncode == 0, done.stderr
    assert done.stdout.count(": done") == 3
    for job in jobs:
        result = trimlang.compile(job.read_text(encoding="utf-8"), path=job)
        assert result.ok
        assert result.diagnostics  # the warning names the job file as it is named here
        assert (out / f"{job.stem}.json").read_bytes() == trimlang.plan_json(result)


@pytest.mark.nightly
def test_a_worker_that_is_killed_loses_no_job(tmp_path: Path) -> None:
    pytest.importorskip("dask.distributed")
    jobs = write_flats(tmp_path, 12)
    assert compiled_on_a_cluster(jobs, tmp_path / "plans") == len(jobs)
    assert lost(jobs, tmp_path / "plans") == []
