"""Compile many jobs on a Dask cluster: python examples/cluster.py JOB.trim … --out DIR.

Without ``--scheduler`` two processes are started here.  What goes to a worker is a
job's text with the texts that it includes, what comes back is the bytes of its
plan.json; the workers need trimlang, no shared disk and no network of their own.
"""

from __future__ import annotations

import argparse
import tempfile
from pathlib import Path

from dask.distributed import Client, LocalCluster, as_completed

import trimlang


def pack(path: Path) -> dict[str, str]:
    """Return a job's text and those that it includes, by file name, the job's own first."""
    result = trimlang.check(path.read_text(encoding="utf-8-sig"), path=path)
    return {name: source.text for name, source in result.sources.items()}


def plan(texts: dict[str, str]) -> bytes:
    """Compile a packed job; this runs on a worker."""
    with tempfile.TemporaryDirectory() as folder:
        for name, text in texts.items():
            path = Path(folder, name)
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8", newline="")
        job = Path(folder, next(iter(texts)))
        return trimlang.plan_json(trimlang.compile(texts[job.name], path=job))


def main() -> None:
    """Send every job to the cluster and write what comes back, as it comes."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("jobs", nargs="+", type=Path, metavar="JOB.trim")
    parser.add_argument("--out", type=Path, required=True, metavar="DIR")
    parser.add_argument("--scheduler", metavar="ADDRESS", help="such as tcp://10.0.0.4:8786")
    options = parser.parse_args()
    options.out.mkdir(parents=True, exist_ok=True)
    if options.scheduler:
        run(Client(options.scheduler), options.jobs, options.out)
        return
    with LocalCluster(n_workers=2, threads_per_worker=1, dashboard_address=None) as cluster:
        run(Client(cluster), options.jobs, options.out)


def run(client: Client, jobs: list[Path], out: Path) -> None:
    """Compile the jobs on the client's cluster into ``out``: NAME.json for NAME.trim."""
    with client:
        waiting = {client.submit(plan, pack(job), pure=False): job for job in jobs}
        for future, data in as_completed(waiting, with_results=True, raise_errors=False):
            job = waiting[future]
            if future.status == "error":
                print(f"{job}: {future.exception()}")
            else:
                (out / f"{job.stem}.json").write_bytes(data)
                print(f"{job}: done")


if __name__ == "__main__":
    main()
