"""Tells builds to stop at any moment, and measures how long they take to."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from pathlib import Path
from random import Random
from time import monotonic, sleep

from tests.conftest import ROOT
from tests.jobs import TRIM

_CORNERS = ("in-corner", "out-corner", "in-corner")


def room_of(runs: int) -> str:
    """Return a job of one room; the more runs, the longer it takes to plan and to print."""
    return "\n".join(
        (
            TRIM.replace("16 ft at 24.10", "16 ft at 24.10, 10 ft at 14.40, 8 ft at 11.20"),
            'room "Hall", trim base, open walk',
            *(
                # mitres that could be shared are the hardest to plan
                f"  {n}: {31 + n * 37 % 113} {n * 7 % 16}/16 in,"
                f" left={_CORNERS[n % 3]}, right={_CORNERS[(n + 1) % 3]}"
                for n in range(1, runs + 1)
            ),
        )
    )


LONG_TO_PLAN = room_of(1500)


def _worked(process: int) -> float:
    """Return the seconds of CPU that a process has had."""
    fields = Path(f"/proc/{process}/stat").read_text(encoding="ascii").rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


class Bench:
    """A job that takes long to plan and to print, and the old sheets of another."""

    def __init__(self, place: Path, *options: str, text: str = LONG_TO_PLAN) -> None:
        self.place = place
        self.shop = place / "shop"
        self._options = options
        (place / "short.trim").write_text(
            TRIM + 'room "A", trim base, open walk\nN: 40 in, left=butt, right=butt\n',
            encoding="utf-8",
        )
        (place / "long.trim").write_text(text, encoding="utf-8")
        assert self._start("short.trim", "--format", "json").wait() == 0
        self.old = self._contents()

    def stop(self, after: float, number: signal.Signals = signal.SIGINT) -> tuple[int, float]:
        """Build, send the signal after so many seconds of CPU; return the exit code and the delay.

        By the clock a busy machine might not have begun the build by then.
        """
        process = self._start("long.trim", *self._options)
        while process.poll() is None and _worked(process.pid) < after:
            sleep(0.01)
        sent = monotonic()
        process.send_signal(number)
        code = process.wait()
        delay = monotonic() - sent
        if code in (128 + number, -number):
            assert self._contents() == self.old
        return code, delay

    def seconds(self) -> float:
        """How long the whole build takes; the old sheets are put back."""
        began = monotonic()
        assert self._start("long.trim", *self._options).wait() == 0
        took = monotonic() - began
        assert self._start("short.trim", "--format", "json").wait() == 0
        return took

    def restore(self) -> None:
        """Put the old sheets back."""
        assert self._start("short.trim", "--format", "json").wait() == 0

    def measured(self, times: int, random: Random) -> list[tuple[float, int, float]]:
        """Stop that many builds anywhere: after how long, the exit code, the delay."""
        whole = self.seconds()
        found = []
        for turn in range(times):
            after = random.uniform(0.15, whole)
            number = (signal.SIGINT, signal.SIGTERM)[turn % 2]
            code, delay = self.stop(after, number)
            found.append((after, code, delay))
            if self._contents() != self.old:
                self.restore()
        return found

    def _start(self, job: str, *options: str) -> subprocess.Popen[bytes]:
        return subprocess.Popen(
            [
                *(sys.executable, "-m", "trimlang", "build", str(self.place / job)),
                *("--out", str(self.shop), *options),
            ],
            cwd=ROOT,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )

    def _contents(self) -> dict[str, bytes]:
        return {
            os.path.relpath(path, self.shop): path.read_bytes()
            for path in sorted(self.shop.rglob("*"))
            if path.is_file()
        }
