"""Gives trimlang commands without end, on jobs whose numbers lie near their limits.

    python -m benchmarks.any_command --sessions 100000 --seed 1
    python -m benchmarks.any_command --again FOUND.json

Each session is a job file, a log or a survey, and one to three commands with them (check,
build of every kind, tidy, mark, convert, compare, start, a rename as in the editor), now and
then two or three at once.  A chunk of sessions runs in one fork of a process that has everything
loaded.  What breaks a promise is left in ``--found``, and the run goes on.
"""

from __future__ import annotations

import argparse
import os
import pickle
import resource
import shutil
import signal
import sys
import traceback
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory, gettempdir
from time import monotonic

CHUNK = 250
MOST_MEGABYTES = 512
MOST_SECONDS_A_SESSION = 90


def main() -> int:
    """Give commands; return 1 where a promise was broken."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--sessions", type=int, default=10_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--first", type=int, default=0, help="the number of the first session")
    parser.add_argument("--seconds", type=int, default=36_000, help="stop then at the latest")
    parser.add_argument("--found", type=Path, default=Path(gettempdir()) / "any_command-found")
    parser.add_argument("--again", type=Path, help="a session that was left, once more")
    options = parser.parse_args()
    from tests.trust.commanding import Tally, hold
    from tests.trust.sessions import read_session

    if options.again is not None:
        with TemporaryDirectory() as folder:
            hold(read_session(options.again.read_text(encoding="utf-8")), Path(folder), Tally())
        return 0
    _load()
    tally, found, most = Tally(), 0, 0.0
    at, last = options.first, options.first + options.sessions
    ends = monotonic() + options.seconds
    while at < last and monotonic() < ends:
        upto = min(at + CHUNK, last)
        counted, broken, megabytes = _forked(options.seed, at, upto, options.found)
        tally.add(counted)
        found += broken
        most = max(most, megabytes)
        at = upto
        if at % (20 * CHUNK) == 0:
            print(f"up to {at:,}: {tally}; {most:.0f} MiB; {found} broken", flush=True)
    print(f"{tally}; {most:.0f} MiB at most; {found} broke a promise", flush=True)
    return int(found > 0)


def _load() -> None:
    """Have everything imported that a command needs, so that no fork does it anew."""
    from tests.trust.commanding import Tally, given, hold
    from tests.trust.sessions import grown_session

    with TemporaryDirectory() as folder:
        hold(grown_session(Random(0)), Path(folder), Tally())
        job = Path(folder) / "load.trim"
        given(("start", str(job)))
        kinds = ("html", "pdf", "csv", "dxf")
        given(("build", str(job), *(word for kind in kinds for word in ("--format", kind))))
        given(("compare", str(job), str(job)))


def _forked(seed: int, at: int, upto: int, found: Path) -> tuple[object, int, float]:
    """Run a chunk of sessions in a process of its own, which gives what it counted."""
    reader, writer = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(reader)
        with os.fdopen(writer, "wb") as stream:
            pickle.dump(_chunk(seed, at, upto, found), stream)
        os._exit(0)
    os.close(writer)
    with os.fdopen(reader, "rb") as stream:
        data = stream.read()
    _, status = os.waitpid(child, 0)
    if status == 0 and data:
        return pickle.loads(data)  # noqa: S301 - from our own process
    from tests.trust.commanding import Tally

    print(f"sessions {at} to {upto} of seed {seed} ended with status {status}", flush=True)
    return Tally(), 1, 0.0


def _chunk(seed: int, at: int, upto: int, found: Path) -> tuple[object, int, float]:
    from tests.trust.commanding import Tally, hold
    from tests.trust.sessions import grown_session

    def too_long(*_: object) -> None:
        raise AssertionError(f"more than {MOST_SECONDS_A_SESSION} s")

    signal.signal(signal.SIGALRM, too_long)
    tally, broken = Tally(), 0
    fast = Path("/dev/shm")  # noqa: S108 - where there is one, no disk wears out
    with TemporaryDirectory(dir=fast if fast.is_dir() else None) as top:
        for number in range(at, upto):
            session = grown_session(Random(f"{seed}/{number}"))
            folder = Path(top) / "job"
            folder.mkdir()
            signal.alarm(MOST_SECONDS_A_SESSION)
            try:
                hold(session, folder, tally)
            except Exception:  # noqa: BLE001 - whatever it is, it is a find
                broken += 1
                found.mkdir(parents=True, exist_ok=True)
                text = session.written().encode("utf-8", "surrogatepass")
                (found / f"{seed}-{number}.json").write_bytes(text)
                why = traceback.format_exc()
                (found / f"{seed}-{number}.txt").write_text(why, "utf-8", "backslashreplace")
                print(f"session {number} of seed {seed}: {why.splitlines()[-1][:300]}", flush=True)
            finally:
                signal.alarm(0)
            shutil.rmtree(folder)
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    if most > MOST_MEGABYTES:
        print(f"sessions {at} to {upto} of seed {seed} took {most:.0f} MiB", file=sys.stderr)
        broken += 1
    return tally, broken, most


if __name__ == "__main__":
    raise SystemExit(main())
