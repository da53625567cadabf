"""How long after a save the sheets of ``build --watch`` are new, by the clock.

``python -m benchmarks.watching [SAVES] [JOB]`` saves a job (the shipped house, 40 times) at
random moments, in place and by renaming in turns, each time with a wall a sixteenth longer or
shorter.  It prints the median, the 95th of a hundred and the slowest from the end of the save to
the new folder being in its place, and to a page in a browser hearing of it, beside the load of
the machine while it ran.  Target: 300 ms on a machine with little else to do.
"""

from __future__ import annotations

import os
import random
import re
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path
from threading import Thread
from urllib.request import urlopen

ROOT = Path(__file__).resolve().parent.parent
SAVES = 40
PAUSES = (0.3, 2.5)
"""Seconds between a save's sheets and the next save, at least and at most."""


class _Watching:
    """The process, and the address that it shows its sheets at."""

    def __init__(self, job: Path, out: Path) -> None:
        command = [sys.executable, "-m", "trimlang", "build", str(job), "--watch"]
        self.process = subprocess.Popen(
            [*command, "--out", str(out)], cwd=ROOT, stdout=subprocess.PIPE, encoding="utf-8"
        )
        self.address = ""
        assert self.process.stdout is not None
        for line in self.process.stdout:
            if line.startswith("in a browser: "):
                self.address = line.split()[-1]
                break
        Thread(target=self.process.stdout.read, daemon=True).start()

    def cpu(self) -> float:
        """Return the seconds of processor time that it has taken."""
        fields = Path(f"/proc/{self.process.pid}/stat").read_text().rpartition(")")[2].split()
        return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


class _Browser(Thread):
    """Asks for one page's news again and again, as that page's own script does."""

    def __init__(self, address: str) -> None:
        super().__init__(daemon=True)
        self._address = address
        self.heard: list[float] = []
        self.start()

    def run(self) -> None:
        """Note when the page's stamp becomes another."""
        turn, stamp = "", ""
        while True:
            try:
                with urlopen(f"{self._address}tickets.html.news?{turn}") as answer:  # noqa: S310
                    turn, new = answer.read().decode().split("\n")[:2]
            except OSError:
                return  # it is over
            if new != stamp:
                self.heard.append(time.monotonic())
                stamp = new


def _texts(text: str) -> Iterator[str]:
    """Yield the job with one wall after another a sixteenth or more longer."""
    walls = list(re.finditer(r"^ +\w+: +(?:\d+ ft )?\d+", text, re.MULTILINE))
    while True:
        wall = random.choice(walls)
        at = wall.end()
        yield f"{text[:at]}.{random.randint(1, 15) * 625:04d}{_without_fraction(text[at:])}"


def _without_fraction(rest: str) -> str:
    return re.sub(r"^ \d+/\d+(?= in)", "", rest)


def _save(job: Path, text: str, *, rename: bool) -> None:
    if rename:
        fresh = job.with_name(".fresh")
        fresh.write_text(text, encoding="utf-8")
        fresh.replace(job)
    else:
        job.write_text(text, encoding="utf-8")


def _report(what: str, seconds: list[float]) -> None:
    ordered = sorted(seconds)
    median, late = (
        ordered[len(ordered) // 2],
        ordered[min(len(ordered) * 95 // 100, len(ordered) - 1)],
    )
    print(f"{what:28} {1000 * median:8.0f} {1000 * late:8.0f} {1000 * ordered[-1]:8.0f}")


def main() -> None:
    """Save, wait for the sheets, and print how long they took."""
    saves = int(sys.argv[1]) if len(sys.argv) > 1 else SAVES
    source = Path(sys.argv[2]) if len(sys.argv) > 2 else ROOT / "examples" / "house.trim"
    with tempfile.TemporaryDirectory() as folder:
        for file in source.parent.glob("*.trim"):
            shutil.copy(file, folder)
        job, out = Path(folder, source.name), Path(folder, "shop")
        watching = _Watching(job, out)
        try:
            _measure(watching, job, out, saves)
        finally:
            watching.process.kill()
            watching.process.wait()


def _measure(watching: _Watching, job: Path, out: Path, saves: int) -> None:
    browser = _Browser(watching.address)
    time.sleep(2)
    placed: list[float] = []
    told: list[float] = []
    loads = [os.getloadavg()[0]]
    texts = _texts(job.read_text(encoding="utf-8"))
    cpu = watching.cpu()
    for number in range(saves):
        time.sleep(random.uniform(*PAUSES))
        before, heard = out.stat().st_ino, len(browser.heard)
        _save(job, next(texts), rename=bool(number % 2))
        saved = time.monotonic()
        while not out.exists() or out.stat().st_ino == before:
            time.sleep(0.001)
        placed.append(time.monotonic() - saved)
        while len(browser.heard) == heard:
            time.sleep(0.001)
        told.append(browser.heard[heard] - saved)
        loads.append(os.getloadavg()[0])
    print(f"{'ms from the save to':28} {'median':>8} {'95 %':>8} {'slowest':>8}")
    _report("the folder in its place", placed)
    _report("the browser hearing of it", told)
    print(f"processor time a save, quick and full plan: {(watching.cpu() - cpu) / saves:.2f} s")
    print(f"load: {min(loads):.1f} to {max(loads):.1f} on {os.cpu_count()} cores; {saves} saves")


if __name__ == "__main__":
    main()
