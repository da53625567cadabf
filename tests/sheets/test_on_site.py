"""On a phone and under a camera: ticks that stay, codes that read, catalogues that fit."""

from __future__ import annotations

import re
import shutil
import subprocess
from io import BytesIO
from pathlib import Path

import pytest

from tests.browser import CHROMIUM, Browser
from tests.sheets.jobs import small
from trimlang.resources import folder
from trimlang.sheets.content.ticket import tickets
from trimlang.sheets.render.pages import render_sheets
from trimlang.sheets.render.pdf import to_pdf
from trimlang.sheets.wording.catalogue import languages, unbroken, words_in
from trimlang.sheets.wording.quantities import Pen

TO_PICTURE = shutil.which("pdftoppm")
BOX = "BR-E-base:cut"


@pytest.mark.skipif(CHROMIUM is None, reason="no chromium here")
def test_a_tick_is_still_there_after_a_reload(browser: Browser, tmp_path: Path) -> None:
    page = tmp_path / "tickets.html"
    page.write_text(render_sheets(small(), only=["tickets"])["tickets"], encoding="utf-8")
    box = f"document.querySelector('[data-tick=\"{BOX}\"]')"
    browser.forget()
    browser.open(page.as_uri())
    assert browser.value(f"{box}.checked") is False
    browser.value(f"{box}.click()")
    browser.open(page.as_uri())
    assert browser.value(f"{box}.checked") is True
    browser.value(
        'const search = document.getElementById("find"); search.value = "br-n";'
        'search.dispatchEvent(new Event("input"))'
    )
    shown = browser.value(
        '[...document.querySelectorAll("article")]'
        ".filter((one) => !one.hidden).map((one) => one.dataset.piece)"
    )
    assert shown == ["BR-N-base-a", "BR-N-base-b", "BR-N2-base"]


@pytest.mark.skipif(TO_PICTURE is None, reason="no pdftoppm here")
def test_codes_read_back_from_the_printed_page(tmp_path: Path) -> None:
    reader = pytest.importorskip("zxingcpp")
    image = pytest.importorskip("PIL.Image")
    assert TO_PICTURE
    (tmp_path / "tickets.pdf").write_bytes(to_pdf(render_sheets(small())["tickets"]))
    subprocess.run(
        [TO_PICTURE, "-r", "150", "-png", "tickets.pdf", "page"],
        cwd=tmp_path,
        check=True,
    )
    read = {
        code.text
        for picture in sorted(tmp_path.glob("page*.png"))
        for code in reader.read_barcodes(image.open(picture))
    }
    made = tickets(small(), Pen(words_in("en"), small().job.currency))
    assert read == {ticket.payload for ticket in made}
    assert "BR-E-base\n29 1/8 in\nL inside corner, square in: square\nR butt: square" in read


def test_catalogues_fit_the_sheets() -> None:
    """Every message is translated, with the same names in braces, and the .mo is the .po."""
    babel = pytest.importorskip("babel.messages.pofile")
    for language in languages()[1:]:
        source = folder("templates") / "words" / f"{language}.po"
        with source.open("rb") as file:
            catalogue = babel.read_po(file, locale=language)
        said = words_in(language)
        for message in catalogue:
            if message.id:
                assert message.string, message.id
                assert said(message.id) == unbroken(message.string)
                names = [set(re.findall(r"{(\w+)}", text)) for text in (message.id, message.string)]
                assert names[0] == names[1], message.id


MARKS = {"words": None, "w": None, "N_": None, "_": None}
"""Functions that a message is given to."""


def test_no_message_is_missing_from_a_catalogue() -> None:
    extract = pytest.importorskip("babel.messages.extract")
    babel = pytest.importorskip("babel.messages.pofile")
    home = Path(__file__).resolve().parents[2]
    wanted: set[str] = set()
    for place, how in (("trimlang", "python"), ("templates", "jinja2.ext.babel_extract")):
        for path in sorted((home / place).rglob("*.py" if how == "python" else "*.html")):
            text = path.read_bytes()
            # read word by word only where there may be one of them
            if re.search(rb"\b(?:words|w|N_|_)\(", text):
                found = extract.extract(how, BytesIO(text), keywords=MARKS, comment_tags=())
                wanted |= {message for _, message, _, _ in found if message}
    for language in languages()[1:]:
        with (home / "templates" / "words" / f"{language}.po").open("rb") as file:
            known = {message.id for message in babel.read_po(file)}
        assert wanted <= known, sorted(wanted - known)
