"""Stops builds at random points with Ctrl-C and SIGTERM, and says how long they took to end.

    python -m benchmarks.stopping --times 60

The job plans for several seconds inside the solver and prints PDF, so that the
points lie in every stage.  Points before Python has started are left out.
"""

from __future__ import annotations

import argparse
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory

from tests.trust.stopping import Bench


def main() -> None:
    """Stop, and print the delays."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--times", type=int, default=60)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--format", default="pdf", choices=("html", "pdf", "json"))
    options = parser.parse_args()
    with TemporaryDirectory() as name:
        bench = Bench(Path(name), "--format", options.format, "--plan-seconds", "4")
        found = bench.measured(options.times, Random(options.seed))
    delays = sorted(delay for _, _, delay in found)
    codes = sorted({code for _, code, _ in found})
    print(
        f"{len(found)} stops, exit codes {codes}: half within {delays[len(delays) // 2]:.2f} s,"
        f" all within {delays[-1]:.2f} s"
    )


if __name__ == "__main__":
    main()
