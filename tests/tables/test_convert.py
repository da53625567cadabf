"""A survey in CSV: what is read of it, what is told of its cells, and the way back."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import fields, is_dataclass
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from syrupy.assertion import SnapshotAssertion

from tests.conftest import EXAMPLES, examples
from tests.every import every
from tests.jobs import TRIM, walls
from trimlang.cli import main
from trimlang.compiler import check_job
from trimlang.diagnostics import Span
from trimlang.diagnostics.source import Source
from trimlang.formulas import guarded, unguarded
from trimlang.survey.job import Gap, Job
from trimlang.tables.from_csv import Made, from_csv
from trimlang.tables.to_csv import to_csv

HEAD = "room,wall,length,left,right,trims,note,kind,called,more,line\n"


def read(table: str | bytes, include: str | None = None) -> Made:
    data = table if isinstance(table, bytes) else table.encode()
    return from_csv(data, Path("walls.csv"), include)


def text_of(table: str | bytes) -> str:
    made = read(table)
    assert not [one for one in made.findings if one.severity == "error"], made.findings
    return made.text


def meaning(value: Any) -> Any:
    """A job as plain values, without the places in its file."""
    if isinstance(value, Span):
        return None
    if is_dataclass(value):
        return {field.name: meaning(getattr(value, field.name)) for field in fields(value)}
    return [meaning(one) for one in value] if isinstance(value, tuple) else value


def back(text: str) -> str:
    table, findings = to_csv(Source("job.trim", text))
    assert not [one for one in findings if one.severity == "error"]
    return read(table).text


ROWS = (
    "Study,N,29 1/8 in,in-corner,out-corner(91 deg),base,beside the radiator,,,no splice,\n"
    ",E,40 in,out-corner,butt,base,,,,,\n"
    ",,32 in,,,,,opening,door to hall,entrance,\n"
    "Hall,N,40 in,butt,butt,base,,run,,,\n"
)
JOB = (
    'room "Study"\n'
    "  N: 29 1/8 in, left=in-corner, right=out-corner(91 deg), trim base,"
    ' note "beside the radiator", no splice\n'
    "  E: 40 in, left=out-corner, right=butt, trim base\n"
    '  opening 32 in, "door to hall", entrance\n'
    "\n"
    'room "Hall"\n'
    "  N: 40 in, left=butt, right=butt, trim base\n"
)


def test_a_plain_survey() -> None:
    assert text_of(HEAD + ROWS) == JOB


@every(
    "made",
    [
        lambda text: text.encode("utf-8-sig"),
        lambda text: text.encode("utf-16"),
        lambda text: b"\xfe\xff" + text.encode("utf-16-be"),
        lambda text: text.replace("\n", "\r\n").encode(),
        lambda text: text.replace("\n", "\r").encode(),
        lambda text: text.replace(",", ";").encode(),
        lambda text: text.replace(",", "\t").encode(),
        lambda text: ("sep=;\r\n" + text.replace(",", ";")).encode(),
        lambda text: text.upper().split("\n")[0].encode() + text[text.index("\n") :].encode(),
        lambda text: text.replace("wall", " Run ").replace("trims", "Trim").encode(),
        lambda text: text.replace("\n", "\n,,,,,,,,,,\n\n").encode(),
        lambda text: "".join(
            ",".join(f'"{cell}"' for cell in line.split(",")) + "\n" for line in text.splitlines()
        ).encode(),
        lambda text: text.rstrip("\n").encode(),
    ],
)
def test_however_a_spreadsheet_saves_it(made: Callable[[str], bytes]) -> None:
    assert text_of(made(HEAD + ROWS)) == JOB


@every(
    "page, room, length",
    [
        ("cp1252", "Küche", "29½ in"),
        ("cp1252", "Salón", "2 ft 5¾"),
        ("cp850", "Küche", "29¾ in"),
        ("cp437", "Cocina pequeña", "29½ in"),
        ("cp1250", "Łóżko", "29 1/2 in"),
        ("cp1252", "WÄSCHE", "29 in"),
    ],
)
def test_an_old_code_page_is_told(page: str, room: str, length: str) -> None:
    table = f'{HEAD}{room},N,"{length}",butt,in-corner(91°),base,,,,,\n'
    made = read(table.encode(page))
    assert f'room "{room}"' in made.text
    assert f"N: {length}, left=butt, right=in-corner(91°)" in made.text
    (told,) = made.remarks
    assert "is no UTF-8" in told
    assert not made.findings


def test_a_text_that_makes_sense_in_no_code_page_is_refused() -> None:
    table = f"{HEAD}Study,N,29 in,butt,butt,base,,,,,\n".encode()
    (one,) = read(table.replace(b"ud", b"u\xb2d")).findings
    assert one.code == "T651"


def test_a_decimal_comma_where_commas_do_not_part_cells() -> None:
    table = "room;wall;length;left;right;trims\nBad;N;2740,5 mm;butt;in-corner(91,5 deg);base\n"
    assert "N: 2740.5 mm, left=butt, right=in-corner(91.5 deg)" in text_of(table)
    (wrong, *_) = read(table.replace("2740,5", "1,200")).findings
    assert (wrong.code, wrong.span.column) == ("T655", 7)


def test_rooms_and_other_lines() -> None:
    table = (
        HEAD
        + ',,,,,,,,,,"trim base: 9/16 in thick"\n'
        + ',,,,,,,,,,"stock base: 12 ft at 17.40"\n'
        + 'Study,ST,,,,"base",wait,room,,open walk,\n'
        + ",,,,,,,,,,round to 1/32 in\n"
        + ",N,40 in,butt,butt,,,,,,\n"
    )
    made = read(table)
    assert made.findings == ()
    assert made.text.splitlines()[3:] == [
        'room "Study" as ST, trim base, note "wait", open walk',
        "round to 1/32 in",
        "  N: 40 in, left=butt, right=butt",
    ]


def test_an_include_at_the_head(tmp_path: Path) -> None:
    (tmp_path / "prices.trim").write_text(TRIM, encoding="utf-8")
    table = HEAD + "Study,N,40 in,butt,butt,bse,,,,,\n"
    made = from_csv(table.encode(), tmp_path / "walls.csv", "prices.trim")
    assert made.text.startswith('include "prices.trim"\n')
    # with the trims at hand their names are checked too, at the cell that names one
    (wrong, *_) = [one for one in made.findings if one.code == "T210"]
    assert (wrong.span.line, wrong.span.column) == (2, 25)
    assert wrong.message.startswith("row 2, trims: ")


WRONG = {
    "no text": b"room,wall\n\xff\xfe",
    "open quote": 'room,wall,length\n"Study,N,40\n',
    "nothing": "",
    "no heading": "Study,N,40 in\n",
    "heading": "room,wal,length,length,left,right\nStudy,N,40 in,,butt,butt\n",
    "cells": HEAD
    + "Study,N,forty,in-cornr,butt,base,,,,no spice,\n"
    + ",E,=B2*2,butt,@SUM(A1),base,,,,,\n"
    + ",,40 in,butt,,,,,,,,,x\n"
    + ",S,40 in # not sure,butt,butt,base,,,,,\n"
    + ",W,40 in,butt,butt,base,,doorway,,,\n"
    + ",X,,,,,,,,,\n"
    + ",,,,,,,line,,,\n",
    "no room": HEAD + ",N,40 in,butt,butt,base,,,,,\n,,,,,base,,room,,,\n",
    "what cannot be so": HEAD
    + "Study,N,0 in,in-corner,butt,base,,,,,\n"
    + ",N,200 ft,butt,butt,base,,,,,\n"
    + ',E,40 in,in-corner,butt,base,"say ""five""\nand a half",,,,\n'
    + 'Hall,"1\n",40 in,butt,butt,,,,,,\n',
}


@pytest.mark.parametrize("case", WRONG)
def test_every_cell_that_is_wrong_is_told(case: str, snapshot: SnapshotAssertion) -> None:
    made = read(WRONG[case])
    assert [
        f"{one.span.file}:{one.span.line}:{one.span.column}-{one.span.end} {one.severity}"
        f" {one.code} {one.message} | {one.remedy}"
        for one in made.findings
    ] == snapshot


@pytest.mark.parametrize("path", sorted(EXAMPLES.glob("*.trim")), ids=lambda path: path.stem)
def test_an_example_keeps_its_meaning_there_and_back(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    again = from_csv(to_csv(Source(path.name, text))[0].encode(), path).text
    one, other = check_job(text, path=path), check_job(again, path=path)
    assert meaning(one.job) == meaning(other.job)
    assert one.pieces == other.pieces
    assert to_csv(Source(path.name, again))[0] == to_csv(Source(path.name, text))[0]


NAMES = st.text(
    st.characters(blacklist_categories=("Cc", "Cs", "Zl", "Zp", "Cf"), blacklist_characters='"“”'),
    min_size=1,
    max_size=12,
).filter(lambda text: text == " ".join(text.split()))
LENGTHS = st.sampled_from(
    ["29 1/8 in", "2' 5 1/8\"", "29⅛ in", "740 mm", "7.4 m", "3 ft", "40", "12 ft 3-1/2 in"]
)
ENDS = st.sampled_from(
    [
        "in-corner",
        "out-corner(91.5 deg)",
        "butt",
        "return",
        "open",
        "in-corner(cope)",
        "out-corner(taken point, 89°)",
        "in-corner(corner by 36 in, 36 in, diagonal 51 1/4 in)",
    ]
)
MORE = st.sampled_from(
    ["", ", no splice", ", no shoe", ", taken point", ", first stud 7 in, floor gap 1/8 in"]
)


@st.composite
def jobs(draw: st.DrawFn) -> str:
    lines = [
        f'job "{draw(NAMES)}"',
        "trim base: 9/16 in thick, 5 1/4 in tall, mdf   # from the yard",
        "trim shoe: 1/2 in thick, in front of base",
        "stock base: 16 ft at $17.40, pack of 10 12 ft at 158 at most 3",
        "stock shoe: 16 ft at 5.20",
        "corners: out-corner mitre 46 deg, in-corner gap 1/8 in",
    ]
    if draw(st.booleans()):
        lines.append("ends in")
    names = draw(st.lists(NAMES, min_size=1, max_size=3, unique_by=lambda name: name.casefold()))
    for number, name in enumerate(names):
        lines.append(f'room "{name}" as R{number}, trim base, shoe, open walk, note "{name}"')
        if draw(st.booleans()):
            lines.append("round out-corner nearest")
        for run in range(draw(st.integers(1, 4))):
            note = f', note "{draw(NAMES)}"' if draw(st.booleans()) else ""
            ends = draw(st.sampled_from(("", f", left={draw(ENDS)}, right={draw(ENDS)}")))
            lines.append(f"  W{run}: {draw(LENGTHS)}{ends}{note}{draw(MORE)}")
            if draw(st.booleans()):
                lines.append(f'  opening {draw(LENGTHS)}, "{draw(NAMES)}"')
    return "\n".join(lines) + "\n"


@given(jobs())
@settings(max_examples=examples(15))
def test_there_and_back_keeps_the_meaning(text: str) -> None:
    one, other = check_job(text), check_job(back(text))
    assert meaning(one.job) == meaning(other.job)
    assert one.pieces == other.pieces
    assert [finding.code for finding in one.diagnostics] == [
        finding.code for finding in other.diagnostics
    ]


@given(st.text(max_size=20))
def test_the_guard_is_taken_away_again(text: str) -> None:
    assert unguarded(guarded(text)) == text
    assert not guarded(text).startswith(("=", "+", "-", "@", "\t", "\r"))


@given(st.binary(max_size=200) | st.text(max_size=200).map(lambda text: (HEAD + text).encode()))
@settings(max_examples=examples(50))
def test_any_bytes_give_a_job_or_a_word(data: bytes) -> None:
    made = from_csv(data, Path("walls.csv"))
    assert isinstance(made.text, str)
    for one in made.findings:
        assert 1 <= one.span.column < one.span.end


def test_formulas_in_texts_do_no_harm() -> None:
    job = walls('N: 40 in, left=butt, right=butt, note "=HYPERLINK(1)"\nopening 30 in, "\'=x"')
    table, _ = to_csv(Source("job.trim", job))
    assert ",'=HYPERLINK(1)," in table
    assert ",''=x," in table
    walk = check_job(back(job)).job.rooms[0].walk
    assert walk[0].note == "=HYPERLINK(1)"
    assert isinstance(walk[1], Gap)
    assert walk[1].called == "'=x"


def test_the_command(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    Path("walls.csv").write_text(HEAD + "Bad,N,1 in,butt,butt,base,ü,,,,\n", encoding="utf-8")
    assert main(["convert", "walls.csv"]) == 0
    assert capsys.readouterr().out.endswith('note "ü"\n')
    assert main(["convert", "walls.csv", "job.trim", "--include", "prices.trim"]) == 1
    assert "T601" in capsys.readouterr().err  # there are no prices.trim
    assert main(["convert", "walls.csv", "job.trim", "--include", "p\udcff.trim"]) == 2
    assert "signs that are no text" in capsys.readouterr().err
    assert not Path("job.trim").exists()
    Path("prices.trim").write_text(TRIM, encoding="utf-8")
    assert main(["convert", "walls.csv", "job.trim", "--include", "prices.trim"]) == 0
    job = Path("job.trim").read_text(encoding="utf-8")
    assert job.startswith('include "prices.trim"')
    assert main(["convert", "walls.csv", "job.trim"]) == 2
    assert "--force" in capsys.readouterr().err
    assert Path("job.trim").read_text(encoding="utf-8") == job
    assert main(["convert", "job.trim", "again.csv"]) == 0
    assert Path("again.csv").read_bytes().startswith(b"\xef\xbb\xbfkind,room")
    assert main(["convert", "again.csv", "job.trim", "--force"]) == 0
    assert Path("job.trim").read_text(encoding="utf-8") == job
    capsys.readouterr()
    Path("walls.csv").write_text(HEAD + "Bad,N,long,butt,butt,base,,,,,\n", encoding="utf-8")
    assert main(["convert", "walls.csv", "job.trim", "--force"]) == 1
    assert "walls.csv:2:7: error T655: row 2, length: " in capsys.readouterr().err
    assert Path("job.trim").read_text(encoding="utf-8") == job
    assert main(["convert", "none.csv"]) == 2
    assert main(["convert", "again.csv", "none/job.trim"]) == 2
    Path("bad.trim").write_bytes(b"room \xff")
    assert main(["convert", "bad.trim"]) == 1
    Path("bad.trim").write_text("room room\n", encoding="utf-8")
    assert main(["convert", "bad.trim"]) == 1
    assert {path.name for path in tmp_path.iterdir()} == {
        "walls.csv",
        "job.trim",
        "prices.trim",
        "again.csv",
        "bad.trim",
    }


def test_the_meaning_of_a_job_leaves_nothing_out() -> None:
    job = check_job(walls("N: 40 in, left=butt, right=butt")).job
    assert isinstance(job, Job)
    assert meaning(job)["rooms"][0]["walk"][0]["length"] == 40


@every(
    "sign", (*"=+-@\uff1d\uff0b\uff0d\uff20\ufe66\ufe62\ufe63\ufe6b\u2212", " =", "\u00a0@", "\n")
)
def test_no_sign_of_a_formula_begins_a_cell(sign: str) -> None:
    note = f"{sign}1+1"
    assert guarded(note) == f"'{note}"
    assert unguarded(guarded(note)) == note
