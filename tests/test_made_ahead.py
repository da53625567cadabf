"""What the libraries made ahead is used where it is up to date, and changes nothing."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from hatch_build import make_ahead
from tests.conftest import EXAMPLES

ROOT = EXAMPLES.parent

NIGHTLY = pytest.mark.nightly

_RUN = """
import sys
from pathlib import Path
from trimlang import made_ahead
made_ahead.FOLDER = Path(sys.argv[1])
{before}
from trimlang.cli import main
sys.exit(main(["build", sys.argv[2], "--out", sys.argv[3], "--plan", "quick", "--format", "html"]))
"""

_NO_WORK = """
import lark, jinja2
def refused(*_, **__):
    raise AssertionError("this was made ahead")
lark.Lark.__init__ = jinja2.Environment.compile = refused
import trimlang.lengths.units
trimlang.lengths.units.factor_from_pint = refused
"""

_OTHER_TEXTS = """
import trimlang.resources
theirs = trimlang.resources.folder
ours = Path({folder!r})
trimlang.resources.folder = lambda name: ours / name if (ours / name).is_dir() else theirs(name)
"""

_CHANGED = {
    "lark": 'import lark; lark.__version__ = "0"',
    "jinja2": 'import jinja2; jinja2.__version__ = "0"',
    "pint": "import importlib.util; importlib.util.find_spec = lambda _: None",
    "grammar/trim.lark": _OTHER_TEXTS,
    "templates/tickets.html": _OTHER_TEXTS,
}


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("made")
    make_ahead(ROOT, folder)
    return folder


def _built(made: Path, out: Path, before: str = "") -> tuple[str, dict[str, bytes]]:
    """Build a job in a process of its own; return what it complains of and the files."""
    job = EXAMPLES / "one-room.trim"
    command = [sys.executable, "-c", _RUN.format(before=before), str(made), str(job), str(out)]
    done = subprocess.run(command, capture_output=True, cwd=ROOT, check=False, encoding="utf-8")
    return done.stderr, {path.name: path.read_bytes() for path in out.glob("*")}


def test_sheets_are_the_same_bytes_with_and_without(made: Path, tmp_path: Path) -> None:
    (tmp_path / "empty").mkdir()
    said, files = _built(made, tmp_path / "with", _NO_WORK)
    assert "tickets.html" in files
    assert _built(tmp_path / "empty", tmp_path / "without") == (said, files)


@pytest.mark.parametrize(
    "what",
    [
        # a text; the libraries and the other texts at night
        pytest.param(what, marks=() if what == "grammar/trim.lark" else NIGHTLY)
        for what in _CHANGED
    ],
)
def test_what_is_out_of_date_is_not_used(what: str, made: Path, tmp_path: Path) -> None:
    """Another version of a library, or another text, and the library does its work again."""
    before = _CHANGED[what]
    if before is _OTHER_TEXTS:
        shipped, changed = (ROOT / what).parent, (tmp_path / what).parent
        shutil.copytree(shipped, changed)
        with (tmp_path / what).open("a", encoding="utf-8") as file:
            file.write("\n")
        before = before.format(folder=str(tmp_path))
    said, files = _built(made, tmp_path / "refused", before + _NO_WORK)
    assert "this was made ahead" in said
    assert not files
    said, files = _built(made, tmp_path / "out", before)
    assert "tickets.html" in files
