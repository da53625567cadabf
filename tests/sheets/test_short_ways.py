"""What the PDF takes the short way looks as WeasyPrint draws it by itself."""

from __future__ import annotations

import subprocess
from pathlib import Path
from shutil import which

import pytest
from PIL import Image, ImageChops

from tests.sheets.printed_texts import printed_pages
from trimlang.sheets.drawing.qr import qr_picture
from trimlang.sheets.render.pdf import to_pdf

TO_PICTURES = which("pdftoppm")
EVERYTHING = """
<path d="M2 2L18 2 10,9zM20 2H30V8M-1 12L9.5 14.25" fill="#bbb" stroke="#000" stroke-width="0.5"/>
<path d="M3 20L40 24" fill="none" stroke="#000" stroke-width="1" stroke-dasharray="2 1"/>
<line x1="40" y1="2" x2="55" y2="9" stroke="#000" stroke-width="0.8"/>
<rect x="60" y="2" width="12" height="7" fill="#fff" stroke="#000" stroke-width="0.3"/>
<polygon points="75,2 85,4 78,10" fill="#000"/>
<circle cx="92" cy="6" r="4" fill="#000"/>
<text x="50" y="20" text-anchor="middle" font-size="6" font-weight="700" font-family="Trim Sans" fill="#000">16 3/8 in</text>
<text x="20" y="34" transform="rotate(-30 20 34)" text-anchor="end" font-size="4" font-family="Trim Sans" fill="#000">SR-N &amp; base</text>
"""  # noqa: E501


def page(drawing: str, *, long_way: bool) -> bytes:
    """A drawing on a page; a part within another is what the short way does not read."""
    drawn = f"<g>{drawing}</g>" if long_way else drawing
    svg = f'<svg viewBox="-2 0 100 40" style="width:180mm" role="img">{drawn}</svg>'
    return to_pdf(
        f'<!DOCTYPE html><html lang="en"><head><title>x</title></head><body>{svg}</body></html>'
    )


def test_every_kind_of_part_is_drawn_as_the_long_way_draws_it(tmp_path: Path) -> None:
    if TO_PICTURES is None:
        pytest.skip("no pdftoppm here")
    drawn = []
    for long_way in (False, True):
        path = tmp_path / f"{long_way}.pdf"
        path.write_bytes(page(EVERYTHING, long_way=long_way))
        command = [TO_PICTURES, "-r", "60", "-gray", "-singlefile", path, path.with_suffix("")]
        subprocess.run(command, check=True)
        drawn.append(Image.open(path.with_suffix(".pgm")))
    short, long = drawn
    assert sum(short.histogram()[:128]) > 2000, "nothing is drawn"
    # strokes and areas fall on the same dots; letters may stand a tenth of a dot elsewhere
    assert sum(ImageChops.difference(short, long).histogram()[128:]) < 20


def test_texts_keep_their_place_and_turn() -> None:
    (short,), (long,) = (printed_pages(page(EVERYTHING, long_way=way)) for way in (False, True))
    assert [text.text for text in short] == ["16 3/8 in", "SR-N & base"]
    starts = {"1": short[0], "S": short[1]}
    for letter, text in starts.items():
        same = next(one for one in long if one.text == letter)
        assert text.at == pytest.approx(same.at, abs=1)  # pairs of letters are set closer


@pytest.mark.parametrize("more", ['<path d="M0 0C1 1 2 2 3 3"/>', '<use href="#x"/>'])
def test_what_is_not_known_is_left_to_weasyprint(more: str) -> None:
    assert page(EVERYTHING + more, long_way=False).startswith(b"%PDF")


def test_a_code_stands_on_the_page_dot_by_dot(tmp_path: Path) -> None:
    if TO_PICTURES is None:
        pytest.skip("no pdftoppm here")
    code = str(qr_picture("SR-N-base 16 3/8 in", "SR-N-base"))
    shown = []
    # with a style of its own an image is left to WeasyPrint
    for own in ("", 'style="width: 400px"'):
        img = code.replace("<img", f"<img {own}")
        path = tmp_path / f"{len(own)}.pdf"
        path.write_bytes(
            to_pdf(
                '<!DOCTYPE html><html lang="en"><head><title>x</title><style>'
                ".qr { width: 400px; image-rendering: pixelated }</style></head>"
                f"<body>{img}</body></html>"
            )
        )
        command = [TO_PICTURES, "-r", "60", "-gray", "-singlefile", path, path.with_suffix("")]
        subprocess.run(command, check=True)
        shown.append(Image.open(path.with_suffix(".pgm")))
    assert sum(shown[0].histogram()[:128]) > 10_000
    assert ImageChops.difference(*shown).getbbox() is None
