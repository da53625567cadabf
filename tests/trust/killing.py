"""Builds a job over and over and ends it at any moment: what then stands in the folder?"""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from dataclasses import dataclass, field
from pathlib import Path
from random import Random
from time import monotonic, sleep

from tests.conftest import ROOT
from tests.jobs import walls

JOBS = {
    "old": walls("N: 40 in, left=butt, right=out-corner\nE: 50 in, left=out-corner, right=butt"),
    "new": walls("N: 41 in, left=butt, right=out-corner\nE: 50 in, left=out-corner, right=butt"),
}
OWN = {"notes.txt": b"paint is late", "photos/a.jpg": b"x" * 4000}

_NO_EXCHANGE = (
    "import sys; from trimlang.cli import main; from trimlang.output import folder;"
    " folder.exchange = lambda *_: False; sys.exit(main(sys.argv[1:]))"
)


@dataclass(slots=True)
class Tally:
    """What was found after each kill."""

    held: dict[str, int] = field(default_factory=dict)
    missing: int = 0
    ended: int = 0
    left: int = 0

    def __str__(self) -> str:
        sets = ", ".join(f"{count} {name}" for name, count in sorted(self.held.items()))
        return (
            f"{sets}, {self.missing} set aside; {self.ended} had ended before;"
            f" {self.left} left a folder for the next build to clear"
        )


class Bench:
    """A folder with two jobs, and what each builds to."""

    def __init__(self, place: Path, formats: tuple[str, ...], *, exchange: bool = True) -> None:
        self.place = place
        self.shop = place / "shop"
        self._options = [word for one in formats for word in ("--format", one)]
        self._code = ["-m", "trimlang"] if exchange else ["-c", _NO_EXCHANGE]
        self._whole: dict[str, dict[str, bytes]] = {}
        for name, text in JOBS.items():
            (place / f"{name}.trim").write_text(text, encoding="utf-8")
            began = monotonic()
            self.start(name).wait()
            self.seconds = monotonic() - began
            for own, data in OWN.items():
                (self.shop / own).parent.mkdir(exist_ok=True)
                (self.shop / own).write_bytes(data)
            self._whole[name] = self._contents(self.shop)

    def start(self, name: str) -> subprocess.Popen[bytes]:
        """Begin to build one of the jobs."""
        options = ["--out", str(self.shop), "--plan", "quick", *self._options]
        return subprocess.Popen(
            [sys.executable, *self._code, "build", str(self.place / f"{name}.trim"), *options],
            cwd=ROOT,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )

    def kill(self, times: int, random: Random, tally: Tally) -> None:
        """Kill that many builds; half of them while they write.

        Raises:
            AssertionError: the folder holds anything but a whole set and what is the user's own.
        """
        for number in range(times):
            name = "old" if number % 2 else "new"
            process = self.start(name)
            if number % 4 < 2:
                sleep(random.uniform(0, 1.1 * self.seconds))
            else:
                self._await_writing(process)
                sleep(random.uniform(0, 0.03))
            process.send_signal(signal.SIGKILL)
            if process.wait() >= 0:
                tally.ended += 1
            self.look(tally)

    def look(self, tally: Tally) -> None:
        """Hold what is there now against the two whole sets."""
        left = list(self.place.glob(".shop-trimlang-*"))
        tally.left += bool(left)
        shop = self.shop
        if not shop.exists():
            # without an exchange: between the two renames the old set lies aside
            (shop,) = [one / "old" for one in left if (one / "old").is_dir()]
            tally.missing += 1
        found = self._contents(shop)
        whole = [name for name, contents in self._whole.items() if contents == found]
        assert len(whole) == 1, sorted(found)
        tally.held[whole[0]] = tally.held.get(whole[0], 0) + 1

    def heal(self) -> None:
        """Build once more to the end: nothing is left over then."""
        assert self.start("new").wait() == 0
        assert self._contents(self.shop) == self._whole["new"]
        assert not list(self.place.glob(".shop-trimlang-*"))

    def _await_writing(self, process: subprocess.Popen[bytes]) -> None:
        before = set(self.place.glob(".shop-trimlang-*"))
        while process.poll() is None and set(self.place.glob(".shop-trimlang-*")) <= before:
            sleep(0.0005)

    def _contents(self, folder: Path) -> dict[str, bytes]:
        return {
            os.path.relpath(path, folder): path.read_bytes()
            for path in sorted(folder.rglob("*"))
            if path.is_file()
        }
