"""A survey's walls in the long form and in the short one, which mean the same."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from tests.conftest import EXAMPLES, ROOT
from tests.jobs import CASE_STOCK, TRIM, WIDE_CASE
from trimlang.cli import main
from trimlang.compiler import check_job
from trimlang.diagnostics.source import Source
from trimlang.joinery.piece import Piece
from trimlang.language.meaning import same_meaning
from trimlang.language.tidy_file import tidy
from trimlang.tables.room_writer import WallForm
from trimlang.tables.wall_forms import NoSuchFormError, in_form

JOBS = sorted(
    path
    for path in (*EXAMPLES.glob("*.trim"), *(ROOT / "tests" / "story" / "pad").glob("*.trim"))
    if "room " in path.read_text(encoding="utf-8")
)
LARGEST = (EXAMPLES / "ferncote.trim", EXAMPLES / "house.trim")
LONG = """\
room "Den", trim base
  N:  10 ft 2 1/4 in, left=in-corner, right=in-corner  # first
  E:  8 ft 7 9/16 in, left=in-corner, right=in-corner(91 deg)
  S:  10 ft 2 1/4 in, left=in-corner, right=in-corner
  W:  4 ft 2 in, left=in-corner, right=butt, base return
  opening 32 in, "to hall"
  W2: 21 9/16 in, left=butt, right=in-corner
"""
SHORT = """\
room "Den", trim base, ends in
  N 10 ft 2 1/4  # first
  E 8 ft 7 9/16, in(91), S 10 ft 2 1/4, W 4 ft 2, base right=return, opening to hall 32, W2 21 9/16
"""


def written(text: str, form: WallForm, path: Path | None = None) -> str:
    made = in_form(Source("x", text), path, form)
    return tidy(Source("x", made)).text


def test_what_is_said_once_is_said_once() -> None:
    short = written(TRIM + LONG, WallForm.SHORT)
    assert short.partition("room ")[2] == SHORT.partition("room ")[2]


def test_what_all_rooms_say_is_said_once_above_them() -> None:
    two = TRIM + LONG + LONG.replace("Den", "Hall")
    short = written(two, WallForm.SHORT)
    assert short.index("ends in\n") < short.index('room "Den", trim base\n')
    assert short.count("ends in") == 1
    assert same_meaning(
        [room.walk for room in check_job(short).job.rooms],
        [room.walk for room in check_job(two).job.rooms],
    )


CASED = f"""\
{WIDE_CASE}
{CASE_STOCK}
"""
ROOM = """\
room "Hall" as HA, trim base, ends in
  N: 10 ft, left=in-corner, right=out-corner(91 deg)
  E: 20 in, left=out-corner(91 deg), right=butt
  opening 30 in, "bath", casing case, height 80 in
  E2: 20 in, left=butt, right=butt
  opening 34 in, "den, left", casing case, height 80 in
  E3: 20 in, left=butt, right=butt
  opening 40 in, "arch"
  E4: 20 in, left=butt, right=butt
  bare 24 in, "cabinets", left=in-corner, right=in-corner
  bare 36 in, "D3", left=in-corner, right=in-corner
  W: 20 in, left=butt, right=in-corner
"""


def test_what_all_openings_have_is_said_once_for_their_room() -> None:
    text = TRIM + CASED + ROOM
    short = written(text, WallForm.SHORT)
    assert short.partition("room ")[2].splitlines() == [
        '"Hall", trim base, ends in, casing case',
        "  casings: height 80",
        '  N 10 ft, out(91), E 20, opening bath 30, E2 20, opening "den, left" 34, E3 20',
        "  opening arch 40, no casing, E4 20, in, cabinets 24, in, bare D3 36, in, W 20",
    ]
    assert written(short, WallForm.SHORT) == short
    for form in WallForm:
        again = check_job(written(short, form))
        assert same_meaning(again.pieces, check_job(text).pieces)


def test_the_short_form_is_written_out_again() -> None:
    text = written(TRIM + SHORT, WallForm.LONG)
    for line in ("left=in-corner, right=in-corner(91)", "left=butt, right=in-corner"):
        assert line in text
    assert same_meaning(check_job(text).job.rooms[0].walk, check_job(TRIM + LONG).job.rooms[0].walk)


@cache
def pieces_of(path: Path) -> tuple[Piece, ...]:
    return check_job(path.read_text(encoding="utf-8"), path=path).pieces


@pytest.mark.parametrize("form", WallForm)
@pytest.mark.parametrize(
    "path",
    [
        # the large house's walls are held tidy at every change in tests/joinery/test_house_laws.py
        pytest.param(path, marks=pytest.mark.nightly if path in LARGEST else ())
        for path in JOBS
    ],
    ids=[path.stem + path.parent.name for path in JOBS],
)
def test_a_job_means_the_same_in_both_forms_and_once_more_changes_nothing(
    path: Path, form: WallForm
) -> None:
    text = path.read_text(encoding="utf-8")
    made = written(text, form, path)
    assert written(made, form, path) == made
    after = check_job(made, path=path)
    assert same_meaning(pieces_of(path), after.pieces)
    remarks = [line.partition("#")[2].strip() for line in (*text.split("\n"), *made.split("\n"))]
    said, kept = remarks[: text.count("\n") + 1], remarks[text.count("\n") + 1 :]
    assert sorted(filter(None, said)) == sorted(filter(None, kept))


def test_what_has_mistakes_stays_as_it_is(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "job.trim"
    path.write_text(TRIM + LONG.replace("10 ft", "0 ft"), encoding="utf-8")
    before = path.read_bytes()
    path.write_bytes(before.replace(b"E:", b"N:"))
    assert main(["tidy", "--walls", "short", str(path)]) == 1
    assert "stays as it is" in capsys.readouterr().err
    with pytest.raises(NoSuchFormError, match="mistakes"):
        in_form(Source("x", "room"), None, WallForm.LONG)


def test_the_command_writes_either_form(tmp_path: Path) -> None:
    path = tmp_path / "job.trim"
    path.write_text(TRIM + LONG, encoding="utf-8")
    assert main(["tidy", "--walls", "short", str(path)]) == 0
    assert path.read_text(encoding="utf-8").endswith(SHORT)
    assert main(["tidy", "--walls", "long", str(path)]) == 0
    assert same_meaning(
        check_job(path.read_text(encoding="utf-8")).pieces, check_job(TRIM + LONG).pieces
    )
