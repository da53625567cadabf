"""The commands that meet a bad disk, the folder each begins in, and what must hold afterwards."""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable
from contextlib import chdir, redirect_stderr, redirect_stdout
from functools import cache, partial
from io import StringIO
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Final

from tests.jobs import walls
from tests.trust.bad_disk import CUT, Trouble, run_on_it, snapshot
from trimlang.cli import main
from trimlang.output import folder as output_folder

_JOB: Final = walls(
    "  N: 40 in, left=butt, right=out-corner\n  E:   50 in, left=out-corner, right=butt"
)
_QUICK: Final = ("--plan", "quick", "--format", "csv")
_EARLIER: Final = (*_QUICK[:3], "html")
"""What an earlier build printed: files that the next one is to take away."""

COMMANDS: Final[dict[str, tuple[str, ...]]] = {
    "build": ("build", "job.trim", *_QUICK),
    "build by two renames": ("build", "job.trim", *_QUICK),
    "build in place": ("build", "../job.trim", *_QUICK, "--out", "."),
    "build of several in place": (
        "build",
        "../job.trim",
        "../other.trim",
        "--pool",
        *_QUICK,
        "--out",
        ".",
    ),
    "build of several": ("build", "job.trim", "other.trim", "--pool", *_QUICK, "--out", "site"),
    "mark": ("mark", "job.trim", "bought 1 base 12 ft"),
    "mark --pin": ("mark", "job.trim", "--pin", "cut ST-N-base"),
    "mark --undo": ("mark", "job.trim", "--undo"),
    "tidy": ("tidy", "job.trim"),
    "convert": ("convert", "job.trim", "job.csv"),
    "convert --force": ("convert", "job.trim", "there.csv", "--force"),
    "start": ("start", "fresh.trim"),
    "compare": ("compare", "job.trim", "other.trim", "--plan", "quick", "--out", "page.txt"),
}


_TOLD: Final = 2
"""The exit code of a command that could not write."""


def points(name: str, top: Path) -> int:
    """Return how many calls a command makes that change the disk, and keep what it leaves."""
    _prepared(name, top)
    ran = run_on_it(_in(name, top / "after"), 0, top, Trouble.KILL)
    assert ran.code == 0, (name, ran.told)
    return ran.calls


def try_at(name: str, at: int, top: Path, trouble: Trouble) -> None:
    """Have trouble at a call, and hold what is left against what was there and what is to be.

    Raises:
        AssertionError: something is half written, or gone, or told wrongly, or the command does
            not do it now.
    """
    folder = top / "tried"
    shutil.rmtree(folder, ignore_errors=True)
    shutil.copytree(top / "before", folder, symlinks=True)
    ran = run_on_it(_in(name, folder), at, folder, trouble)
    which = (name, at, trouble.name, ran)
    before, after = whole = (snapshot(top / "before"), snapshot(top / "after"))
    left = _seen(folder)
    if trouble.ends:
        assert ran.code == CUT, which
    elif ran.code == 0:
        assert left == after, (*which, _differs(left, after))
    else:
        assert ran.code == _TOLD, which
        assert any(word in ran.told for word in ("cannot write", "writing failed")), which
    if name.endswith("in place"):
        # files that change one by one: each is the old one or the new one
        for file, data in left.items():
            assert data in (one.get(file) for one in whole), (*which, file)
    elif name == "build by two renames" and not (folder / "job-sheets").exists():
        (aside,) = folder.glob(".job-sheets-trimlang-*/old")
        held = {f"job-sheets/{file}": data for file, data in snapshot(aside).items()}
        assert {**left, **held} in whole, which
    elif name == "mark --pin":
        assert set(left) == set(before), which
        assert all(data in (before[file], after[file]) for file, data in left.items()), which
    elif trouble.ends:
        assert left in whole, (*which, _differs(left, *whole))
    elif ran.code != 0:
        assert left == before, (*which, _differs(left, before))
    if left not in whole or name.startswith("build"):
        again = run_on_it(_in(name, folder), 0, folder, trouble)
        assert again.code == 0, (*which, again)
        assert snapshot(folder) == after, (*which, _differs(snapshot(folder), after))


def _prepared(name: str, top: Path) -> None:
    """Make the folder that a command begins in, with earlier sheets, a log and a table in it."""
    folder = top / "before"
    folder.mkdir()
    for file, data in _begun().items():
        (folder / file).parent.mkdir(exist_ok=True)
        (folder / file).write_bytes(data)
    if "several" not in name:
        log = "bought 2 base 12 ft\n" if name == "mark --pin" else "bought 2 base 12 ft at 17.40\n"
        (folder / "job.site").write_text(log, encoding="utf-8")
    shutil.copytree(folder, top / "after")


@cache
def _begun() -> dict[str, bytes]:
    """Make what every command begins with; each fork then finds loaded what a command needs."""
    with TemporaryDirectory() as made, chdir(made):
        folder = Path(made)
        (folder / "job.trim").write_text(_JOB, encoding="utf-8")
        (folder / "other.trim").write_text(_JOB.replace("40 in", "41 in"), encoding="utf-8")
        (folder / "there.csv").write_text("mine", encoding="utf-8")
        with redirect_stdout(StringIO()), redirect_stderr(StringIO()):
            for out in ("job-sheets", "site"):
                assert main(["build", "other.trim", *_EARLIER, "--out", out]) == 0
            main(["compare", "job.trim", "other.trim", "--plan", "quick"])
        (folder / "job-sheets" / "mine.txt").write_text("mine", encoding="utf-8")
        return snapshot(folder)


def _in(name: str, folder: Path) -> Callable[[], int]:
    return partial(_command, name, folder)


def _command(name: str, folder: Path) -> int:
    inside = {"build in place": "job-sheets", "build of several in place": "site"}
    os.chdir(folder / inside.get(name, "."))
    if name == "build by two renames":
        output_folder.exchange = lambda *_: False
    return main(COMMANDS[name])


def _seen(folder: Path) -> dict[str, bytes]:
    """Return the files that a user sees: what is being written has a name of its own."""
    return {
        name: data
        for name, data in snapshot(folder).items()
        if not any(
            part.startswith(".trimlang-") or "-trimlang-" in part for part in name.split("/")
        )
    }


def _differs(one: dict[str, bytes], *others: dict[str, bytes]) -> list[list[str]]:
    names = [sorted({*one, *other}) for other in others]
    return [
        [name for name in of if one.get(name) != other.get(name)]
        for of, other in zip(names, others, strict=True)
    ]
