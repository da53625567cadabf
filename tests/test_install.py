"""The lock is installed as it stands, whatever the index has had since.

Invented packages stand for the real ones: ``cabinet`` wants ``alder[oil]``, the lock names
``alder`` 1.0, and the index offers newer releases of all.  That is how coverage and its extra
``toml``, which pytest-cov wants, stopped installs on the day on which coverage had a release.
"""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Mapping
from hashlib import sha256
from importlib.metadata import distribution, distributions, version
from pathlib import Path
from zipfile import ZipFile

import pytest

from tests.conftest import ROOT

OLDEST = (
    # ensurepip of Python 3.11.0; https://docs.python.org/3.11/whatsnew/changelog.html
    "pip==22.3 --hash=sha256:1daab4b8d3b97d1d763caeb01a4640a2250a0ea899e257b1e44b9eded91e15ab"
)
NEWEST = version("pip")
"""The tests' own lock has the newest."""

WANTS: Mapping[str, tuple[str, ...]] = {
    "alder": ('linseed>=1.0; extra == "oil"',),
    "cabinet": ("alder[oil]>=1.0",),
    "linseed": (),
}


def _release(index: Path, name: str, number: str) -> str:
    """Lay a release of a package into the index; return what pins it."""
    wheel = index / f"{name}-{number}-py3-none-any.whl"
    told = f"{name}-{number}.dist-info"
    about = [
        f"Metadata-Version: 2.1\nName: {name}\nVersion: {number}\nProvides-Extra: oil",
        *(f"Requires-Dist: {wanted}" for wanted in WANTS[name]),
    ]
    files = {
        f"{name}.py": f"NUMBER = {number!r}\n",
        f"{told}/METADATA": "\n".join(about) + "\n",
        f"{told}/WHEEL": "Wheel-Version: 1.0\nRoot-Is-Purelib: true\nTag: py3-none-any\n",
    }
    record = "".join(f"{file},,\n" for file in (*files, f"{told}/RECORD"))
    with ZipFile(wheel, "w") as packed:
        for file, text in {**files, f"{told}/RECORD": record}.items():
            packed.writestr(file, text)
    return f"{name}=={number} --hash=sha256:{sha256(wheel.read_bytes()).hexdigest()}"


@pytest.fixture
def index(tmp_path: Path) -> Path:
    """A folder that pip can look for packages in."""
    folder = tmp_path / "index"
    folder.mkdir()
    return folder


@pytest.fixture
def lock(tmp_path: Path, index: Path) -> Path:
    """A lock of the first releases; the index has had others since."""
    path = tmp_path / "lock.txt"
    path.write_text("".join(f"{_release(index, name, '1.0')}\n" for name in WANTS), "utf-8")
    for name in WANTS:
        _release(index, name, "1.1")
    return path


def _settings(index: Path) -> dict[str, str]:
    """The environment in which pip knows that index alone, whatever is set on this machine."""
    own = {name: value for name, value in os.environ.items() if not name.startswith("PIP_")}
    return {
        **own,
        "PIP_CONFIG_FILE": os.devnull,
        "PIP_NO_INDEX": "1",
        "PIP_FIND_LINKS": str(index),
        "PIP_NO_CACHE_DIR": "1",
    }


@pytest.fixture(scope="session")
def oldest(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The oldest pip's wheel, from the package index."""
    folder = tmp_path_factory.mktemp("oldest")
    (folder / "lock.txt").write_text(f"{OLDEST}\n", encoding="utf-8")
    fetch = f"{sys.executable} -m pip download -q --no-deps --require-hashes -r lock.txt"
    done = subprocess.run(fetch.split(), cwd=folder, capture_output=True, text=True, check=False)
    if done.returncode:
        assert "HASHES" not in done.stderr
        pytest.skip("the package index is out of reach")
    (wheel,) = folder.glob("*.whl")
    return wheel


@pytest.fixture(params=["oldest", "newest"])
def python(request: pytest.FixtureRequest, tmp_path: Path) -> Path:
    """The Python of a fresh venv with one of the two pips in it."""
    venv = tmp_path / "venv"
    subprocess.run([sys.executable, "-m", "venv", "--without-pip", venv], check=True)
    (packages,) = venv.glob("lib/*/site-packages")
    if request.param == "oldest":
        ZipFile(request.getfixturevalue("oldest")).extractall(packages)
    else:
        for part in ("pip", f"pip-{NEWEST}.dist-info"):
            # as it lies here, compiled already
            (packages / part).symlink_to(str(distribution("pip").locate_file(part)))
    return venv / "bin" / "python"


OLD_AT_NIGHT = pytest.mark.parametrize(
    "python", [pytest.param("oldest", marks=pytest.mark.nightly), "newest"], indirect=True
)
"""What no pip does otherwise than another."""


def _run(*command: str | Path, index: Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        command, env=_settings(index), capture_output=True, text=True, check=False
    )


def _install(python: Path, lock: Path, index: Path) -> subprocess.CompletedProcess[str]:
    return _run("sh", ROOT / ".ci" / "install", python, lock, index=index)


def _installed(python: Path) -> dict[str, str]:
    (packages,) = python.parent.parent.glob("lib/*/site-packages")
    found = distributions(path=[str(packages)])
    return {one.name: one.version for one in found if one.name in WANTS}


@OLD_AT_NIGHT
def test_newer_releases_of_what_is_locked_change_nothing(
    python: Path, lock: Path, index: Path
) -> None:
    done = _install(python, lock, index)
    assert (done.returncode, done.stdout, done.stderr) == (0, "", "")
    assert _installed(python) == dict.fromkeys(WANTS, "1.0")


@pytest.mark.nightly
@pytest.mark.parametrize("python", ["oldest"], indirect=True)
def test_an_old_pip_that_resolves_comes_to_grief_on_this_index(
    python: Path, lock: Path, index: Path
) -> None:
    """So the index is one that tells the two ways apart; the newest pip has learnt it."""
    done = _run(python, "-m", "pip", "install", "--require-hashes", "-r", lock, index=index)
    assert done.returncode != 0
    assert "must have their versions pinned with ==" in done.stderr
    assert "alder[oil]>=1.0" in done.stderr
    assert _installed(python) == {}


@OLD_AT_NIGHT
def test_a_lock_that_lacks_something_is_told(python: Path, lock: Path, index: Path) -> None:
    lines = lock.read_text(encoding="utf-8").splitlines(keepends=True)
    lock.write_text("".join(line for line in lines if "alder" not in line), encoding="utf-8")
    done = _install(python, lock, index)
    assert done.returncode == 1
    assert "cabinet 1.0 requires alder, which is not installed" in done.stderr


@OLD_AT_NIGHT
def test_another_file_than_the_locked_one_is_refused(python: Path, lock: Path, index: Path) -> None:
    with ZipFile(index / "alder-1.0-py3-none-any.whl", "a") as packed:
        packed.writestr("more.py", "")
    done = _install(python, lock, index)
    assert done.returncode != 0
    assert "DO NOT MATCH THE HASHES" in done.stderr
    assert _installed(python) == {}
