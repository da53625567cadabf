"""Stops builds at random points with Ctrl-C and SIGTERM, and says how long they took to end.

    python -m benchmarks.stopping --times 40

Half of the stops meet a job that is printed as PDF for most of its time, half one that is
in the solver for seconds, so that the points lie in every stage.  A negative exit code is of a
process that had not begun to listen.
"""

from __future__ import annotations

import argparse
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory

from tests.trust.stopping import Bench, room_of

JOBS = {
    "PDF": (40, ("--format", "pdf", "--plan-seconds", "1")),
    "plan.json": (1200, ("--format", "json", "--plan-seconds", "4")),
}
"""What is printed, of how many runs, with which options."""


def main() -> None:
    """Stop, and print the delays."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--times", type=int, default=40)
    parser.add_argument("--seed", type=int, default=1)
    options = parser.parse_args()
    random = Random(options.seed)
    for made, (runs, asked) in JOBS.items():
        with TemporaryDirectory() as name:
            bench = Bench(Path(name), *asked, text=room_of(runs))
            whole = bench.seconds()
            found = bench.measured(options.times // 2, random)
        delays = sorted(delay for _, _, delay in found)
        codes = sorted({code for _, code, _ in found})
        print(
            f"{runs} runs, {made}, {whole:.1f} s in all: {len(found)} stops,"
            f" exit codes {codes}: half within {delays[len(delays) // 2]:.2f} s,"
            f" all within {delays[-1]:.2f} s",
            flush=True,
        )


if __name__ == "__main__":
    main()
