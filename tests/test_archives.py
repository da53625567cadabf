"""What is in the source archive and in the wheel: all that its own tests need, and each licence."""

from __future__ import annotations

import subprocess
import sys
import tarfile
from email import message_from_string
from pathlib import Path
from zipfile import ZipFile

import pytest

from tests.conftest import ROOT


def built(kind: str, source: Path, into: Path) -> Path:
    words = ["hatchling", "build", "--target", kind, "--directory", str(into)]
    subprocess.run([sys.executable, "-m", *words], cwd=source, check=True, capture_output=True)
    (made,) = into.glob("*.tar.gz" if kind == "sdist" else "*.whl")
    return made


@pytest.fixture(scope="module")
def unpacked(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The source archive, unpacked."""
    pytest.importorskip("hatchling")
    into = tmp_path_factory.mktemp("archive")
    with tarfile.open(built("sdist", ROOT, into)) as archive:
        archive.extractall(into, filter="data")
    (folder,) = (path for path in into.iterdir() if path.is_dir())
    return folder


def test_the_source_archive_holds_every_file_that_git_does(unpacked: Path) -> None:
    listed = subprocess.run(
        ["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, text=True, check=False
    )
    if listed.returncode:
        pytest.skip("this is no checkout")
    files = set(listed.stdout.split("\0")) - {"", ".gitattributes"}
    there = {path.relative_to(unpacked).as_posix() for path in unpacked.rglob("*")}
    assert files - there == set()


def test_the_archive_s_own_tests_run_from_it(unpacked: Path) -> None:
    """Some of them: that the archive has what they need is asked above."""
    words = ["-m", "pytest", "-q", "-p", "no:cacheprovider", "tests/test_record.py"]
    ran = subprocess.run(
        [sys.executable, *words], cwd=unpacked, capture_output=True, text=True, check=False
    )
    assert ran.returncode == 0, ran.stdout


@pytest.mark.nightly
def test_the_wheel_carries_each_licence(unpacked: Path, tmp_path: Path) -> None:
    with ZipFile(built("wheel", unpacked, tmp_path)) as wheel:
        names = wheel.namelist()
        (about,) = (name for name in names if name.endswith("/METADATA"))
        said = message_from_string(wheel.read(about).decode())
        assert said["License-Expression"] == "MIT AND OFL-1.1"
        for licence in said.get_all("License-File", []):
            kept = wheel.read(f"{Path(about).parent}/licenses/{licence}")
            assert kept == (ROOT / licence).read_bytes()
        assert any(name.endswith(".woff2") for name in names)
    assert "SIL Open Font License" in (ROOT / "templates/fonts/LICENSE.txt").read_text()
