"""What many tests need: a small job as far as its pieces, and files held to what makes them."""

from __future__ import annotations

import gc
import os
import signal
import sys
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest
from hypothesis import settings

from tests.browser import Browser
from tests.jobs import walls
from trimlang.compiler import Result, check_job
from trimlang.joinery.piece import Piece
from trimlang.made_ahead import FOLDER

# shared machines stall at will: how long one example takes says nothing about the code
settings.register_profile("suite", deadline=None, max_examples=7)
# at night a law that names no count of its own is tried on many more
settings.register_profile("night", deadline=None, max_examples=500)
LAWS = os.environ.get("TRIMLANG_LAWS", "suite")
settings.load_profile(LAWS)

# What one of the suite's processes has compiled, the hundreds that follow need not compile again:
# with this setting, as many containers have it, that would take a fifth of all the time.
sys.dont_write_bytecode = False
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)

if signal.getsignal(signal.SIGINT) is signal.SIG_IGN:
    # a shell has its background jobs ignore Ctrl-C, and what they start would too
    signal.signal(signal.SIGINT, signal.default_int_handler)

ROOT = Path(__file__).resolve().parent.parent
EXAMPLES = ROOT / "examples"


def examples(number: int) -> int:
    """How many examples a law with a count of its own is tried on: by day a third of it.

    At every change that is what a third of a second pays for, and each run draws new ones; at
    night, where nobody waits, it is ten times the count.
    """
    return number * 10 if LAWS == "night" else max(number // 3, 1)


def at_night(values: Iterable[object]) -> Iterator[Any]:
    """Mark values of a parametrised test that are tried at night only."""
    every = (value if isinstance(value, tuple) else (value,) for value in values)
    return (pytest.param(*each, marks=pytest.mark.nightly) for each in every)


def pytest_configure(config: pytest.Config) -> None:
    """Have the libraries do ahead again what an editable install has of older texts.

    Else each process of the tests would read the grammar and compile the templates for itself.
    """
    if hasattr(config, "workerinput") or not FOLDER.is_dir():
        return
    texts = [path for name in ("grammar", "templates") for path in (ROOT / name).rglob("*")]
    texts += [ROOT / "trimlang" / "language" / "word_lexer.py"]
    if max(path.stat().st_mtime for path in texts) > FOLDER.stat().st_mtime:
        from hatch_build import make_in_place

        with TemporaryDirectory() as work:
            make_in_place(ROOT, Path(work))


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(config: pytest.Config, log: Any) -> Any:
    """Give each process one half of the tests, and who is done first some of the other's.

    Handed out by turns, each process would make for itself whatever neighbours share.
    """
    from xdist.scheduler import WorkStealingScheduling

    return WorkStealingScheduling(config, log) if config.getoption("dist") == "load" else None


def pytest_collection_finish() -> None:
    """Keep the cyclic collector from walking thousands of tests and libraries again and again."""
    gc.collect()
    gc.freeze()


@pytest.fixture(scope="session")
def browser(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Browser]:
    """Give the one browser in which all pages are opened; what a page stored is still there."""
    with Browser(tmp_path_factory.mktemp("profile")) as page:
        yield page


@pytest.fixture
def same_in_git(request: pytest.FixtureRequest) -> Callable[[Path, str], None]:
    """Hold a file that is made and kept in git against what it is made from.

    ``--snapshot-update`` writes it anew, as it does the snapshots.
    """

    def hold(file: Path, made: str) -> None:
        if request.config.getoption("update_snapshots"):
            file.write_text(made, encoding="utf-8")
        kept = file.read_text(encoding="utf-8")
        assert kept == made, "run the tests with --snapshot-update, then read the diff"

    return hold


@pytest.fixture
def check() -> Callable[[str], Result]:
    """Compile a text as far as its pieces."""
    return check_job


@pytest.fixture
def pieces() -> Callable[..., dict[str, Piece]]:
    """Return the pieces of a few walls by run and part, which must compile without an error."""

    def make(lines: str, *, settings: str = "") -> dict[str, Piece]:
        result = check_job(walls(lines, settings=settings))
        assert result.ok, result.diagnostics
        return {piece.id.removeprefix("ST-").replace("-base", ""): piece for piece in result.pieces}

    return make
