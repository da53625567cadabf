"""What one file may include of others."""

from pathlib import Path

import pytest

from tests.conftest import TRIM
from trimlang.compiler import check_job

ROOM = 'room "Study", trim base, open walk\nN: 40 in, left=butt, right=butt\n'


def codes(path: Path) -> list[tuple[str, str]]:
    result = check_job(path.read_text(encoding="utf-8"), path=path)
    return [(finding.code, finding.span.file) for finding in result.diagnostics]


@pytest.fixture
def job(tmp_path: Path) -> Path:
    folder = tmp_path / "job"
    folder.mkdir()
    return folder / "job.trim"


def test_an_included_file_stands_in_the_lines_place(job: Path) -> None:
    (job.parent / "yard").mkdir()
    (job.parent / "yard" / "prices.trim").write_text(TRIM, encoding="utf-8")
    job.write_text('include "yard/prices.trim"\n' + ROOM, encoding="utf-8")
    assert codes(job) == []


def test_mistakes_in_it_carry_its_name(job: Path) -> None:
    (job.parent / "prices.trim").write_text(TRIM + "stock bse: 8 ft at 1\n", encoding="utf-8")
    job.write_text('include "prices.trim"\n' + ROOM, encoding="utf-8")
    assert codes(job) == [("T210", "prices.trim")]


def test_nothing_outside_the_folder_is_read(job: Path) -> None:
    (job.parent.parent / "secret.trim").write_text(TRIM, encoding="utf-8")
    (job.parent / "link.trim").symlink_to(job.parent.parent / "secret.trim")
    for path in ("../secret.trim", str(job.parent.parent / "secret.trim"), "link.trim"):
        job.write_text(TRIM + f'include "{path}"\n' + ROOM, encoding="utf-8")
        assert codes(job) == [("T602", "job.trim")]


def test_circles_and_repeats(job: Path) -> None:
    (job.parent / "a.trim").write_text('include "job.trim"\n' + TRIM, encoding="utf-8")
    job.write_text('include "a.trim"\n' + ROOM, encoding="utf-8")
    assert codes(job) == [("T603", "a.trim")]
    (job.parent / "a.trim").write_text(TRIM, encoding="utf-8")
    job.write_text('include "a.trim"\ninclude "a.trim"\n' + ROOM, encoding="utf-8")
    assert codes(job) == [("T607", "job.trim")]


def test_files_that_cannot_be_read(job: Path) -> None:
    (job.parent / "binary.trim").write_bytes(b"\xff\xfe")
    (job.parent / "folder.trim").mkdir()
    for path, code in (
        ("none.trim", "T601"),
        ("folder.trim", "T601"),
        ("binary.trim", "T604"),
        ("a\x00b", "T601"),
        ("x" * 300, "T601"),
    ):
        job.write_text(TRIM + f'include "{path}"\n' + ROOM, encoding="utf-8")
        assert [found[0] for found in codes(job)] == [code], path


def test_a_huge_file_is_not_read(job: Path) -> None:
    with (job.parent / "huge.trim").open("wb") as file:
        file.truncate(17 * 2**20)
    job.write_text(TRIM + 'include "huge.trim"\n' + ROOM, encoding="utf-8")
    assert codes(job) == [("T605", "job.trim")]
