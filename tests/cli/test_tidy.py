"""``trimlang tidy`` as its user meets it: what is written where, and what is left alone."""

from __future__ import annotations

import io
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.conftest import EXAMPLES
from trimlang.cli import main

UGLY = """\ufeff

JOB   “Kiln lane 3”
unit IN #inches
Trim base:9/16" thick ,5-1/4" TALL, mdf   primed
 stock base : 12' at $ 17.40,PACK OF 10 12 ft at 158.00#pack
\tsaw:kerf 1/8 in,reads to ½ °
   # walls
ROOM "Den",TRIM base , open WALK
# north first
N:29⅛",left = butt , right=OUT-corner( 91 ° )    # a
E2 : 2'-5 1/8" ,left=out-corner,right=BUTT # b
opening 32, "door"
1: 29.5 , left=butt, right = butt cop


# loft
room "Loft", trim base
  2: 3 ft 4, left=butt,right=butt,  note  "x  y"\u0020\u0020\u0020
#  3: 4 ft, left=butt

"""
TIDY = """\
job "Kiln lane 3"
unit in  #inches
trim base: 9/16 in thick, 5 1/4 in tall, mdf primed
stock base: 12 ft at $17.40, pack of 10 12 ft at 158.00  #pack
saw: kerf 1/8 in, reads to 1/2 deg

# walls
room "Den", trim base, open walk
  # north first
  N:  29 1/8 in, left=butt, right=out-corner(91 deg)  # a
  E2: 2 ft 5 1/8 in, left=out-corner, right=butt      # b
  opening 32, "door"
1: 29.5 , left=butt, right = butt cop

# loft
room "Loft", trim base
  2: 3 ft 4 in, left=butt, right=butt, note "x  y"
#  3: 4 ft, left=butt
"""


@pytest.fixture
def ugly(tmp_path: Path) -> Path:
    path = tmp_path / "den.trim"
    path.write_bytes(UGLY.replace("\n", "\r\n").encode())
    return path


def test_a_file_is_laid_out_in_place(ugly: Path, capsys: pytest.CaptureFixture[str]) -> None:
    ugly.chmod(0o640)
    assert main(["tidy", str(ugly)]) == 1  # one line cannot be read
    assert ugly.read_bytes() == TIDY.encode()
    assert ugly.stat().st_mode & 0o777 == 0o640
    assert [path.name for path in ugly.parent.iterdir()] == ["den.trim"]
    out, err = capsys.readouterr()
    assert out == f"{ugly}: tidied\n"
    assert "den.trim:14:35: error T101" in err
    before = ugly.stat()
    assert main(["tidy", str(ugly)]) == 1
    assert ugly.stat().st_mtime_ns == before.st_mtime_ns
    assert ugly.stat().st_ino == before.st_ino


@pytest.mark.skipif(shutil.which("patch") is None, reason="no patch")
def test_check_and_diff_write_nothing(ugly: Path, capsys: pytest.CaptureFixture[str]) -> None:
    ugly.write_text(UGLY.replace(" cop\n", "\n"), encoding="utf-8")
    data = ugly.read_bytes()
    assert main(["tidy", "--check", str(ugly)]) == 1
    assert capsys.readouterr() == ("", f"trimlang: {ugly} is not tidy\n")
    assert main(["tidy", "--diff", str(ugly)]) == 0
    diff = capsys.readouterr().out
    assert ugly.read_bytes() == data
    subprocess.run(["patch", "-s", str(ugly)], input=diff.encode(), check=True)
    assert main(["tidy", "--check", str(ugly)]) == 0
    assert main(["tidy", "--diff", str(ugly)]) == 0
    assert capsys.readouterr() == ("", "")


def test_a_missing_last_line_end_shows_in_the_diff(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "a.trim"
    path.write_bytes(b"unit in")
    assert main(["tidy", "--diff", "--check", str(path)]) == 1
    assert "-unit in\n\\ No newline at end of file\n+unit in\n" in capsys.readouterr().out


def test_standard_input_is_printed(
    monkeypatch: pytest.MonkeyPatch, capsysbinary: pytest.CaptureFixture[bytes]
) -> None:
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(UGLY.encode())))
    assert main(["tidy", "-"]) == 1
    assert capsysbinary.readouterr().out == TIDY.encode()


def test_printing_leaves_the_file_alone(
    ugly: Path, capsysbinary: pytest.CaptureFixture[bytes]
) -> None:
    assert main(["tidy", "--print", str(ugly)]) == 0
    assert capsysbinary.readouterr().out == TIDY.encode()
    assert ugly.read_bytes().startswith(b"\xef\xbb\xbf")


def test_what_a_file_includes_and_a_link_to_it_stay(tmp_path: Path) -> None:
    prices = tmp_path / "prices.trim"
    prices.write_text("trim   base: 1/2 in thick\n", encoding="utf-8")
    job = tmp_path / "job.trim"
    job.write_text('include   "prices.trim"\n', encoding="utf-8")
    link = tmp_path / "link.trim"
    link.symlink_to(job)
    assert main(["tidy", str(link)]) == 0
    assert link.is_symlink()
    assert job.read_text(encoding="utf-8") == 'include "prices.trim"\n'
    assert prices.read_text(encoding="utf-8") == "trim   base: 1/2 in thick\n"


def test_what_cannot_be_read_or_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "bad.trim").write_bytes(b"unit \xff")
    (tmp_path / "good.trim").write_text("unit   in\n")
    names = [str(tmp_path / name) for name in ("bad.trim", "none.trim", "good.trim")]
    assert main(["tidy", *names]) == 2
    err = capsys.readouterr().err
    assert "T604" in err
    assert "cannot read" in err
    assert (tmp_path / "good.trim").read_text() == "unit in\n"
    assert main(["tidy", str(tmp_path)]) == 2
    os.mkfifo(tmp_path / "pipe")
    assert main(["tidy", str(tmp_path / "pipe")]) == 2
    assert main(["tidy", "-", "-"]) == 2


def untidy(text: str) -> str:
    """Write the same in another layout: commas, quotes and remarks are left as they are."""
    lines = []
    for line in text.splitlines():
        said, mark, remark = line.partition("#")
        outside = said.split('"')
        outside[::2] = [re.sub(r" ?([,=]) ?", r" \1  ", part) for part in outside[::2]]
        said = '"'.join(outside).strip()
        lines.append(f"{'' if not line.startswith(' ') else '    '}{said}   {mark}{remark}\r\n")
    return "".join(lines)


SHIPPED = sorted(path for path in EXAMPLES.iterdir() if path.suffix in (".trim", ".site"))


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.name)
def test_the_shipped_examples_are_tidy(path: Path, tmp_path: Path) -> None:
    """And come back from another layout as they are."""
    text = path.read_bytes().decode()
    file = tmp_path / path.name
    file.write_bytes(untidy(text).encode())
    assert main(["tidy", str(file)]) == 0
    assert file.read_bytes().decode() == text
