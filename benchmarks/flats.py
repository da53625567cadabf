"""A site of many flats: bought together, and compiled on a cluster that loses a worker.

    python -m benchmarks.flats FOLDER --flats 200            one order for all of them
    python -m benchmarks.flats FOLDER --flats 200 --cluster  each on two workers, one of them killed

A handful of layouts comes again and again, each wall as it was measured, up to an inch off
the layout.  One file says what all flats share.
"""

from __future__ import annotations

import argparse
import os
import resource
import signal
import subprocess
import sys
import time
from collections.abc import Sequence
from pathlib import Path
from random import Random

import trimlang

ROOT = Path(__file__).resolve().parent.parent
SHARED = """\
trim base: 1/2 in thick, 3 1/4 in tall, pine
stock base: 8 ft at 7.90, 10 ft at 9.60, 12 ft at 11.40, 16 ft at 15.90
trim shoe: 1/2 in thick, 3/4 in tall, pine
stock shoe: 8 ft at 3.20, 12 ft at 4.90, pack of 10 16 ft at 61.00
saw: kerf 3/32 in, reads to 1 deg
"""
LAYOUTS = 6
ROOMS = {
    "Hall": "base, shoe",
    "Kitchen": "base, shoe",
    "Bath": "base, shoe",
    "Bedroom": "base",
    "Living room": "base",
}
"""Each with its trims."""


def flat(number: int) -> str:
    """Return the job file of one flat: five rooms of four walls."""
    layout, measured = Random(number % LAYOUTS), Random(number)
    lines = [f'job "Flat {number}"', 'include "shared.trim"']
    ends = ["butt", "in-corner", "in-corner", "in-corner", "butt"]
    for name, trims in ROOMS.items():
        lines.append(f'room "{name}", trim {trims}, open walk')
        for wall, side in enumerate("NESW"):
            usual = layout.randint(30 * 16, 150 * 16)
            inches, sixteenths = divmod(usual + measured.randint(-16, 16), 16)
            length = f"{inches} {sixteenths}/16 in" if sixteenths else f"{inches} in"
            lines.append(f"  {side}: {length}, left={ends[wall]}, right={ends[wall + 1]}")
    return "\n".join(lines) + "\n"


def write_flats(folder: Path, count: int) -> list[Path]:
    """Write a folder of flats and return their files."""
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "shared.trim").write_text(SHARED, encoding="utf-8")
    jobs = [folder / f"flat-{number:03}.trim" for number in range(1, count + 1)]
    for number, job in enumerate(jobs, start=1):
        job.write_text(flat(number), encoding="utf-8")
    return jobs


def compiled_on_a_cluster(jobs: Sequence[Path], out: Path) -> int:
    """Compile the jobs on two workers, kill one after the first is done; return how many came back.

    The recipe runs as it would for anyone, beside a scheduler that is there already.
    """
    from dask.distributed import Client, LocalCluster

    with (
        LocalCluster(n_workers=2, threads_per_worker=1, dashboard_address=None) as cluster,
        Client(cluster) as client,
    ):
        recipe = subprocess.Popen(
            [
                *(sys.executable, str(ROOT / "examples" / "cluster.py"), *map(str, jobs)),
                *("--out", str(out), "--scheduler", cluster.scheduler_address),
            ],
            env={**os.environ, "PYTHONPATH": str(ROOT)},
            stdout=subprocess.PIPE,
            text=True,
        )
        assert recipe.stdout is not None
        told = recipe.stdout.readline()
        victim = next(iter(client.run(os.getpid).values()))
        os.kill(victim, signal.SIGKILL)
        told += recipe.stdout.read()
        recipe.wait()
    return told.count(": done")


def lost(jobs: Sequence[Path], out: Path) -> list[str]:
    """Return the jobs whose plan.json is not what a compile in this process gives."""
    wrong = []
    for job in jobs:
        made = out / f"{job.stem}.json"
        here = trimlang.compile(job.read_text(encoding="utf-8"), path=job)
        if not made.exists() or made.read_bytes() != trimlang.plan_json(here):
            wrong.append(job.name)
    return wrong


def bought_together(jobs: Sequence[Path], out: Path, seconds: float) -> None:
    """Build one order for all jobs; its summary is printed by the command itself."""
    asked = ["--pool", "--format", "json", "--plan-seconds", f"{seconds:g}", "--out", str(out)]
    subprocess.run([sys.executable, "-m", "trimlang", "build", *map(str, jobs), *asked], check=True)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("folder", type=Path)
    parser.add_argument("--flats", type=int, default=200)
    parser.add_argument("--cluster", action="store_true")
    parser.add_argument("--plan-seconds", type=float, default=60.0, help="for the one order")
    choices = parser.parse_args()
    jobs = write_flats(choices.folder, choices.flats)
    started, spent = time.perf_counter(), resource.getrusage(resource.RUSAGE_CHILDREN)
    if choices.cluster:
        done = compiled_on_a_cluster(jobs, choices.folder / "plans")
        print(f"{done} of {len(jobs)} done")
    else:
        bought_together(jobs, choices.folder / "site", choices.plan_seconds)
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    core = used.ru_utime + used.ru_stime - spent.ru_utime - spent.ru_stime
    print(
        f"{len(jobs)} flats: {time.perf_counter() - started:.0f} s by the clock, {core:.0f} s of"
        f" one core, {used.ru_maxrss // 1024} MiB"
    )
    if choices.cluster:
        print(f"not as compiled here: {', '.join(lost(jobs, choices.folder / 'plans')) or 'none'}")


if __name__ == "__main__":
    main()
