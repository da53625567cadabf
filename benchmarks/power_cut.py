"""Kills builds at random points and looks at what is left.

    python -m benchmarks.power_cut --kills 200
    python -m benchmarks.power_cut --kills 200 --two-renames
    python -m benchmarks.power_cut --every-call

A kill ends the program where it stands, as a power cut does; what a power cut
does to the disk besides is answered by fsync before the sets change places,
whose cost is printed last.  ``--every-call`` has trouble at every call of each command that
writes: a kill, a power cut that loses what was not synced, a call that fails once, a disk that is
full from there on, one that can only be read from there on.
"""

from __future__ import annotations

import argparse
import os
from itertools import product
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
        raise SystemExit(_every_call() > 0)
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


def _every_call() -> int:
    """Have each trouble at each call of each command; return how many points were broken."""
    from tests.trust.bad_disk import Trouble
    from tests.trust.cut_commands import COMMANDS, points, try_at

    total = found = 0
    for name in COMMANDS:
        broken: list[str] = []
        with TemporaryDirectory() as folder:
            count = points(name, Path(folder))
            for at, trouble in product(range(1, count + 1), Trouble):
                try:
                    try_at(name, at, Path(folder), trouble)
                except AssertionError as error:
                    broken.append(f"{error}"[:2000])
        total += len(Trouble) * count
        found += len(broken)
        ways = f"{name}: {count} calls, each in {len(Trouble)} ways; {len(broken)} broken"
        print(ways, *broken, sep="\n", flush=True)
    print(f"{total} points, {found} broken: each other file the old or the new one")
    return found


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
