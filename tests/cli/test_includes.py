"""What one file may include of others."""

from pathlib import Path

import pytest

from tests.jobs import TRIM
from trimlang.compiler import check_job
from trimlang.diagnostics.mending import mends

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


def test_an_include_that_is_not_there_is_taken_out_by_a_mend(job: Path) -> None:
    lines = [*TRIM.split("\n"), 'include "none.trim"', *ROOM.split("\n")]
    (found,) = check_job("\n".join(lines), path=job).diagnostics
    ((edit,),) = [mend.edits for mend in mends(found, lines[found.span.line - 1], lines)]
    assert (edit.text, edit.span.end - edit.span.column) == ("", len('include "none.trim"'))


def test_files_that_cannot_be_read(job: Path) -> None:
    (job.parent / "binary.trim").write_bytes(b"\xff\xfe")
    (job.parent / "folder.trim").mkdir()
    for path, code in (
        ("none.trim", "T601"),
        ("folder.trim", "T601"),
        ("binary.trim", "T604"),
        ("x" * 300, "T601"),
    ):
        job.write_text(TRIM + f'include "{path}"\n' + ROOM, encoding="utf-8")
        assert [found[0] for found in codes(job)] == [code], path


def test_a_huge_file_is_not_read(job: Path) -> None:
    with (job.parent / "huge.trim").open("wb") as file:
        file.truncate(17 * 2**20)
    job.write_text(TRIM + 'include "huge.trim"\n' + ROOM, encoding="utf-8")
    assert codes(job) == [("T605", "job.trim")]


def test_a_name_that_no_file_can_have(job: Path) -> None:
    # what cannot be seen in it is left out, and then there is no such file
    job.write_text(TRIM + 'include "a\x00b"\n' + ROOM, encoding="utf-8")
    assert [found[0] for found in codes(job)] == ["T119", "T601"]


def test_a_long_chain_of_includes(job: Path) -> None:
    for number in range(40):
        (job.parent / f"{number}.trim").write_text(
            f'include "{number + 1}.trim"\n', encoding="utf-8"
        )
    (job.parent / "40.trim").write_text(TRIM, encoding="utf-8")
    job.write_text('include "0.trim"\n' + ROOM, encoding="utf-8")
    assert codes(job) == [("T608", "15.trim")]


def test_files_that_are_too_much_together(job: Path) -> None:
    for number in range(3):
        (job.parent / f"{number}.trim").write_text(
            "# " + "x" * 1500 + "\n" * 2**23, encoding="utf-8"
        )
    includes = "".join(f'include "{number}.trim"\n' for number in range(3))
    job.write_text(TRIM + includes + ROOM, encoding="utf-8")
    assert sorted(found[0] for found in codes(job)) == ["T117", "T609", "T609"]
