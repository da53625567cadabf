"""Kills builds at random points and looks at what is left.

    python -m benchmarks.power_cut --kills 200
    python -m benchmarks.power_cut --kills 200 --two-renames
    python -m benchmarks.power_cut --every-call

A kill ends the program where it stands, as a power cut does; what a power cut
does to the disk besides is answered by fsync before the sets change places,
whose cost is printed last.  ``--every-call`` ends each command that writes at every call
that changes the disk, once as a kill does and once so that all is lost which was not synced.
"""

from __future__ import annotations

import argparse
import os
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory
from time import perf_counter

from tests.trust.killing import Bench, Tally
from trimlang.output.folder import write_folder


def main() -> None:
    """Kill, look, and say what was found."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--kills", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--two-renames", action="store_true", help="as where nothing can exchange")
    parser.add_argument("--every-call", action="store_true", help="of each command that writes")
    options = parser.parse_args()
    if options.every_call:
        _every_call()
        return
    with TemporaryDirectory() as name:
        bench = Bench(Path(name), ("html",), exchange=not options.two_renames)
        tally = Tally()
        bench.kill(options.kills, Random(options.seed), tally)
        bench.heal()
        print(f"{options.kills} kills: {tally}")
        files = {f"{n}.html": os.urandom(100_000) for n in range(20)}
        for sync in (True, False):
            seconds = _writing(Path(name) / f"sync-{sync}", files, sync=sync)
            print(
                f"20 files of 100 kB {'with' if sync else 'without'} fsync: {seconds * 1000:.0f} ms"
            )


def _every_call() -> None:
    """Cut each command at each of its calls, and tell how many points that were."""
    from tests.trust.cut_commands import COMMANDS, points, try_at

    total = 0
    for name in COMMANDS:
        with TemporaryDirectory() as folder:
            count = points(name, Path(folder))
            for at in range(1, count + 1):
                for loses in (False, True):
                    try_at(name, at, Path(folder), loses=loses)
        total += 2 * count
        print(f"{name}: {count} calls, each cut in both ways", flush=True)
    print(f"{total} points: each file the old or the new one")


def _writing(target: Path, files: dict[str, bytes], *, sync: bool) -> float:
    fsync = os.fsync
    if not sync:
        os.fsync = lambda _: None
    try:
        began = perf_counter()
        for _ in range(10):
            write_folder(target, files)
        return (perf_counter() - began) / 10
    finally:
        os.fsync = fsync


if __name__ == "__main__":
    main()
