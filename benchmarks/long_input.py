"""Checks and plans jobs of more and more runs, and prints time and memory of each.

    python -m benchmarks.long_input --runs 1000 10000 100000
    python -m benchmarks.long_input --runs 1000 10000 --build quick

Each size runs in a process of its own; times are its CPU time.  ``--megabytes``
sets the most memory that it may have.
"""

from __future__ import annotations

import argparse
import subprocess
import sys
from pathlib import Path
from tempfile import TemporaryDirectory

ROOT = Path(__file__).resolve().parent.parent


def job(runs: int) -> str:
    """A site of rooms with four walls each."""
    lines = [
        "trim base: 9/16 in thick, 5 1/4 in tall",
        "stock base: 12 ft at 17.40, 16 ft at 24.10",
    ]
    for run in range(runs):
        if run % 4 == 0:
            lines.append(f'room "Room {run // 4}", trim base, open walk')
        lines.append(
            f"  {run}: {40 + run % 97} {run % 15 + 1}/16 in, left=in-corner, right=in-corner"
        )
    return "\n".join(lines) + "\n"


def main() -> None:
    """Measure each size."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--runs", type=int, nargs="+", default=[1000, 10_000])
    parser.add_argument("--build", choices=("quick", "full"), help="plan too, and write plan.json")
    parser.add_argument("--megabytes", type=int, default=4096)
    options = parser.parse_args()
    for runs in options.runs:
        with TemporaryDirectory() as name:
            path = Path(name) / "job.trim"
            path.write_text(job(runs), encoding="utf-8")
            words = ["check", str(path)]
            if options.build:
                words = ["build", str(path), "--format", "json", "--plan", options.build]
            code, seconds, most = _measured(words, options.megabytes)
        print(
            f"{runs:>7} runs: exit {code}, {seconds:.1f} s of CPU"
            f" ({1000 * seconds / runs:.2f} ms a run), {most} MiB",
            flush=True,
        )


def _measured(words: list[str], megabytes: int) -> tuple[int, float, int]:
    limit = megabytes * 2**20
    code = (
        "import resource, sys; from trimlang.cli import main;"
        f" resource.setrlimit(resource.RLIMIT_AS, ({limit}, {limit}));"
        " code = main(sys.argv[1:]); used = resource.getrusage(resource.RUSAGE_SELF);"
        " print(code, used.ru_utime + used.ru_stime, used.ru_maxrss // 1024)"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, *words], cwd=ROOT, capture_output=True, text=True, check=True
    )
    exit_code, seconds, most = done.stdout.split("\n")[-2].split()
    return int(exit_code), float(seconds), int(most)


if __name__ == "__main__":
    main()
