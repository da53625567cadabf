"""What a hand needs is read at 1.5 m, and no text lies on another: measured on the PDF itself.

A letter is seen at an angle of atan(height ÷ distance).  Sight 20/20 reads letters of five
minutes of arc (ISO 8596: an optotype with a gap of one minute is five minutes tall); a letter's
height is that of the capitals, as the font's own table gives it.
"""

from __future__ import annotations

import re
import shutil
import subprocess
from functools import cache
from math import atan, degrees
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from fontTools.ttLib import TTFont

from tests.conftest import ROOT
from tests.sheets.jobs import compiled, some_of_all
from trimlang.compiler import compile_job
from trimlang.sheets.render.pages import render_sheets
from trimlang.sheets.render.pdf import to_pdf

FAR = 1500.0
"""Millimetres from the eye: the saw's fence from who stands before it."""
LEAST = 5.0
POINT = 25.4 / 72
NOT_NEEDED = """
@page { @top-left { content: none } @top-right { content: none }
  @bottom-left { content: none } @bottom-right { content: none } }
.how, .head, thead, .count, .cautions, main > section > .small { display: none }
"""
"""What is read with the sheet in one's hand: heads, legends, the words above a table."""
TO_BOXES = shutil.which("pdftotext")
LOW_AND_HIGH = """
job "Heights"
trim shoe: 1/2 in thick, 3/4 in tall
trim cap: 1/2 in thick, 2 1/4 in tall
trim base: 3/4 in thick, 5 in tall
stock shoe: 12 ft at 1
stock cap: 12 ft at 1
stock base: 12 ft at 1
room "Room" as RO, trim base, cap, shoe, open walk
  N: 40 in, left=butt, right=out-corner(90 deg)
  E: 52 1/8 in, left=out-corner(90 deg), right=in-corner(91.3 deg) cope
  S: 30 in, left=in-corner, right=return
"""


@cache
def capitals() -> float:
    """The height of a capital in ems."""
    font = TTFont(ROOT / "templates" / "fonts" / "B612-Regular.woff2")
    return float(font["OS/2"].sCapHeight / font["head"].unitsPerEm)


def minutes(points: float) -> float:
    return degrees(atan(points * POINT * capitals() / FAR)) * 60


@cache
def box_height() -> float:
    """The height of a word's box in ems, as the font has it: of a word of a known size."""
    html = render_sheets(some_of_all(), only=["saw-sheet"], qr=False)["saw-sheet"]
    known = "<style>@page { margin: 5mm } p { font: 100pt Trim Sans }</style><p>Xp</p>"
    style = html[html.index("<style>") : html.index("</style>")]
    with TemporaryDirectory() as folder:
        printed = boxes(f"{style}</style>{known}", Path(folder))
    (one,) = [word for page in printed for word in page if word[4] == "Xp"]
    return (one[3] - one[1]) / 100


def sizes(html: str, folder: Path) -> list[tuple[float, str]]:
    """Every word of a sheet's PDF and its size in points."""
    tall = box_height()
    pages = boxes(html.replace("</head>", f"<style>{NOT_NEEDED}</style></head>", 1), folder)
    return [((foot - top) / tall, text) for page in pages for _, top, _, foot, text in page]


@pytest.mark.skipif(TO_BOXES is None, reason="no pdftotext here")
@pytest.mark.parametrize("sheet", ["tickets", "stick-layouts", "saw-sheet"])
@pytest.mark.parametrize("job", ["all", pytest.param("heights", marks=pytest.mark.nightly)])
def test_what_a_hand_needs_is_read_at_one_and_a_half_metres(
    sheet: str, job: str, tmp_path: Path
) -> None:
    result = some_of_all() if job == "all" else compiled(LOW_AND_HIGH)
    seen = sizes(render_sheets(result, only=[sheet], qr=False)[sheet], tmp_path)
    assert len(seen) > 20
    # a box is given in thousandths of a point, and a page rounds its scale
    assert [one for one in seen if minutes(one[0]) < LEAST - 0.03] == []


def test_seven_and_a_half_points_are_too_small() -> None:
    assert minutes(7.5) < LEAST < minutes(8.25)


# ---- no text lies on another -----------------------------------------------------------

BOX = re.compile(
    r'<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*?)</word>'
)
BAND = 0.3
"""What of a box's height counts above and below its middle: the letters without their feet."""
TOUCH = 0.3
"""Points that rounding may let two boxes share."""

Box = tuple[float, float, float, float, str]


def boxes(html: str, folder: Path) -> list[list[Box]]:
    """The words of each page of a sheet, as the PDF sets them."""
    pdf = folder / "sheet.pdf"
    pdf.write_bytes(to_pdf(html))
    assert TO_BOXES
    out = subprocess.run(
        [TO_BOXES, "-bbox", str(pdf), "-"], check=True, capture_output=True, text=True
    ).stdout
    pages = []
    for page in out.split("<page ")[1:]:
        words = []
        for left, top, right, foot, text in BOX.findall(page):
            middle, tall = (float(top) + float(foot)) / 2, float(foot) - float(top)
            words.append(
                (float(left), middle - BAND * tall, float(right), middle + BAND * tall, text)
            )
        pages.append(words)
    return pages


def overlaps(words: list[Box]) -> list[tuple[str, str]]:
    """Pairs of words of which one lies on the other."""
    found = []
    row = sorted(words)
    for number, (left, top, right, foot, text) in enumerate(row):
        for other in row[number + 1 :]:
            if other[0] >= right - TOUCH:
                break
            if min(right, other[2]) - max(left, other[0]) > TOUCH and (
                min(foot, other[3]) - max(top, other[1]) > TOUCH
            ):
                found.append((text, other[4]))
    return found


QUICK = ("one-room.trim",)
"""Printed at every change; the others at night."""

PRINTED = [
    pytest.param(path.name, marks=() if path.name in QUICK else pytest.mark.nightly)
    for path in sorted((ROOT / "examples").glob("*.trim"))
    if path.name != "prices.trim"  # no job: others include it
]


@pytest.mark.skipif(TO_BOXES is None, reason="no pdftotext here")
@pytest.mark.parametrize("name", PRINTED)
def test_no_text_of_the_examples_lies_on_another(name: str, tmp_path: Path) -> None:
    path = ROOT / "examples" / name
    sheets = render_sheets(compile_job(path.read_text(encoding="utf-8"), path=path))
    for sheet, html in sheets.items():
        pages = boxes(html, tmp_path)
        assert sum(map(len, pages)) > 10
        assert [(sheet, pair) for page in pages for pair in overlaps(page)] == []


@pytest.mark.skipif(TO_BOXES is None, reason="no pdftotext here")
def test_a_text_on_another_is_found(tmp_path: Path) -> None:
    html = "<p style='position:absolute'>first</p><p style='position:absolute; left:3mm'>second</p>"
    ((words),) = boxes(html, tmp_path)
    assert overlaps(words) == [("first", "second")]
