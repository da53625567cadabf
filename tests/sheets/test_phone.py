"""On a phone of 360 px: everything under a thumb, ticks that stay with their piece, taken home."""

from __future__ import annotations

import re
from functools import cache
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread
from time import monotonic, sleep

import pytest

from tests.browser import CHROMIUM, PATIENCE, Browser
from tests.conftest import EXAMPLES
from tests.sheets.jobs import SMALL, TITLES, WITH_WALLS, compiled, house, some_of_all
from trimlang.cli import main
from trimlang.compiler import Result, compile_job
from trimlang.sheets.render.pages import render_index, render_phone, render_sheets
from trimlang.sheets.sheet_table import INDEX, PHONE
from trimlang.sheets.wording.catalogue import languages
from trimlang.site_log.lines_ahead import lines_ahead
from trimlang.site_log.progress_of_job import State
from trimlang.stock.planner import QUICK

pytestmark = pytest.mark.skipif(CHROMIUM is None, reason="no chromium here")

THUMB = 44
"""Least width and height of what a finger taps, in px (WCAG 2.1, success criterion 2.5.5)."""
UPRIGHT = (360, 740)

PAGES = [
    *((name, "en") for name in (*WITH_WALLS, INDEX)),
    # the phone's page holds all sheets
    *((PHONE, language) for language in ("en", "de")),  # German has the longest words
    *(
        pytest.param(name, language, marks=pytest.mark.nightly)
        for name in (*WITH_WALLS, INDEX, PHONE)
        for language in languages()[1:]
        if (name, language) != (PHONE, "de")
    ),
]

WIDE = """
[...document.querySelectorAll("body *")]
  .filter((one) => !one.parentElement.closest(".across"))
  .map((one) => [one.tagName, one.getBoundingClientRect()])
  .filter(([, place]) => place.width && (place.right > innerWidth + 1 || place.left < -1))
  .map(([name, place]) => [name, Math.round(place.right)])
"""
# a drawing of a wall is moved under the thumb, within a frame that is itself within the screen
MOVED = """
[...document.querySelectorAll(".across")]
  .map((one) => [getComputedStyle(one).overflowX, one.tabIndex, one.clientWidth <= innerWidth])
"""
TAPPED = """
[...document.querySelectorAll("input, button, textarea, a")]
  .map((one) => (one.closest("label") || one))
  .map((one) => [one.textContent.trim(), one.getBoundingClientRect()])
  .filter(([, place]) => place.width)
"""


@pytest.fixture
def unticked(browser: Browser) -> None:
    """Take the ticks of earlier tests out of the browser."""
    browser.forget()


@cache
def page_of(name: str, language: str) -> str:
    if name == INDEX:
        files = [f"{sheet}.{end}" for sheet in TITLES for end in ("html", "pdf")]
        return render_index(house(), files, language=language)
    if name == PHONE:
        return render_phone(some_of_all(), language=language)
    return render_sheets(some_of_all(), only=[name], language=language)[name]


def show(browser: Browser, folder: Path, html: str, part: str = "") -> None:
    page = folder / "sheet.html"
    page.write_text(html, encoding="utf-8")
    browser.open(page.as_uri() + part, size=UPRIGHT)


@pytest.mark.parametrize(("name", "language"), PAGES)
def test_all_of_a_page_is_within_the_screen_and_large_enough_for_a_thumb(
    name: str, language: str, browser: Browser, tmp_path: Path
) -> None:
    show(browser, tmp_path, page_of(name, language))
    assert browser.value("document.body.innerText.length") > 100
    assert browser.value(WIDE) == []
    moved = browser.value(MOVED)
    assert all(one == ["auto", 0, True] for one in moved)
    assert bool(moved) is (name in ("elevations", "stick-layouts", PHONE))
    small = f"{TAPPED}.filter(([, at]) => at.width < {THUMB} || at.height < {THUMB})"
    assert browser.value(small) == []


def test_a_sticks_bar_is_legible_on_a_phone(browser: Browser, tmp_path: Path) -> None:
    """A phone held near shows 12 px about 2 mm tall."""
    show(browser, tmp_path, page_of("stick-layouts", "en"))
    heights = browser.value(
        "[...document.querySelectorAll('.bar text')].map(one => one.getBoundingClientRect().height)"
    )
    assert heights
    assert min(heights) > 12


def box(piece: str, what: str) -> str:
    return f"document.querySelector('[data-tick=\"{piece}:{what}\"]')"


def tap(browser: Browser, piece: str, *boxes: str) -> None:
    for what in boxes:
        browser.value(f"{box(piece, what)}.click()")
        sleep(0.002)  # so that the order of the work is the order of the clock


def written(browser: Browser) -> list[str]:
    """The lines that the button writes."""
    browser.value("document.querySelector('.take-home .lines').click()")
    return str(browser.value("document.querySelector('.take-home textarea').value")).splitlines()


def checklist_of(text: str, log: str = "") -> str:
    result = compile_job(text + log, name="small.trim")
    assert result.ok, result.diagnostics
    return render_sheets(result, only=["checklist"])["checklist"]


@pytest.mark.usefixtures("unticked")
def test_a_tick_survives_a_new_revision_and_belongs_to_its_piece(
    browser: Browser, tmp_path: Path
) -> None:
    show(browser, tmp_path, checklist_of(SMALL))
    tap(browser, "BR-E-base", "cut", "label")
    before = written(browser)
    longer = SMALL.replace("29 1/8 in", "29 1/2 in").replace("40 in", "41 in")
    show(browser, tmp_path, checklist_of(longer))
    assert browser.value(f"{box('BR-E-base', 'cut')}.checked") is True
    assert browser.value(f"{box('BR-E-base', 'label')}.checked") is True
    assert browser.value(f"{box('BR-S-base', 'cut')}.checked") is False
    # it was cut as it was told then, and the page says so
    assert written(browser) == before
    assert before[0].startswith("cut BR-E-base 29 1/8 in from base-")
    said = browser.value(f"{box('BR-E-base', 'cut')}.parentNode.innerText")
    assert f"ticked as: {before[0]}" in said
    # another job's piece of the same name is another piece
    show(browser, tmp_path, checklist_of(SMALL.replace("Plum Lane 3", "Plum Lane 5")))
    assert browser.value(f"{box('BR-E-base', 'cut')}.checked") is False


@pytest.mark.usefixtures("unticked")
def test_the_lines_are_what_the_site_log_reads(browser: Browser, tmp_path: Path) -> None:
    show(browser, tmp_path, checklist_of(SMALL))
    tap(browser, "BR-S-base", "cut")
    tap(browser, "BR-E-base", "fix")  # it was cut before, whether or not that was ticked
    tap(browser, "BR-N2-base", "cut", "fix")
    lines = written(browser)
    verbs = [" ".join(line.split()[:2]) for line in lines]
    assert verbs == [
        "cut BR-S-base",
        "cut BR-E-base",
        "fitted BR-E-base",
        "cut BR-N2-base",
        "fitted BR-N2-base",
    ]
    log = "".join(f"{line}\n" for line in lines)
    result = compile_job(SMALL + log, name="small.trim")
    assert result.ok
    # T714: nobody has said yet that the sticks were bought, which a phone does not know
    assert {one.code for one in result.diagnostics if one.code.startswith("T7")} <= {"T714"}
    assert result.progress is not None
    assert result.progress.state("BR-S-base") is State.CUT
    assert result.progress.state("BR-E-base") is State.FITTED
    # once they are in the log the page has nothing new to say, and the boxes stay ticked
    show(browser, tmp_path, checklist_of(SMALL, log))
    assert written(browser) == []
    assert "Nothing new is ticked" in browser.text()
    assert browser.value(f"{box('BR-E-base', 'fix')}.checked") is True


@pytest.mark.usefixtures("unticked")
def test_a_piece_that_is_gone_is_told_as_a_remark(browser: Browser, tmp_path: Path) -> None:
    show(browser, tmp_path, checklist_of(SMALL))
    tap(browser, "BR-E-base", "cut")
    (line,) = written(browser)
    renamed = SMALL.replace("  E: 29", "  F: 29")
    show(browser, tmp_path, checklist_of(renamed))
    assert written(browser) == [f"# no longer in the job: {line}"]
    assert compile_job(f"{renamed}# no longer in the job: {line}\n").ok


@pytest.mark.usefixtures("unticked")
def test_the_lines_are_copied_and_saved_as_a_file(browser: Browser, tmp_path: Path) -> None:
    show(browser, tmp_path, checklist_of(SMALL))
    tap(browser, "BR-E-base", "cut")
    (line,) = written(browser)
    browser.save_to(tmp_path)
    browser.value("document.querySelector('.take-home .save').click()")
    saved, ends = tmp_path / "small-ticked.site", monotonic() + PATIENCE
    while not (saved.exists() and saved.stat().st_size):
        assert monotonic() < ends
        sleep(0.02)
    assert saved.read_text("utf-8") == f"{line}\n"
    browser.value("document.querySelector('.take-home .copy').click()", tapped=True)
    assert "copied" in browser.value("document.querySelector('.written [role=status]').innerText")


@pytest.mark.parametrize("example", ["house", "crown", "metric", "stair"])
def test_mark_writes_the_same_lines(example: str, tmp_path: Path) -> None:
    """Each line is already in full: ``mark`` adds nothing to it, and the log finds no fault."""
    path = EXAMPLES / f"{example}.trim"
    result: Result = compile_job(path.read_text("utf-8"), path=path, effort=QUICK)
    lines = lines_ahead(result.job, result.pieces, result.plans)
    assert set(lines) == {piece.id for piece in result.pieces}
    log = "".join(f"{one.cut}\n{one.fitted}\n" for one in lines.values())
    after = compile_job(path.read_text("utf-8"), path=path, log=log, effort=QUICK)
    assert after.ok
    assert [one for one in after.diagnostics if one.code in ("T710", "T711", "T712")] == []
    assert after.progress is not None
    assert after.progress.count(State.FITTED) == len(result.pieces)
    assert [one.length for one in after.pieces] == [one.length for one in result.pieces]


def test_a_saved_file_goes_into_the_log_with_mark(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    job = tmp_path / "small.trim"
    job.write_text(SMALL)
    lines = lines_ahead(compiled(SMALL).job, compiled(SMALL).pieces, compiled(SMALL).plans)
    saved = tmp_path / "small-ticked.site"
    saved.write_text(f"{lines['BR-E-base'].cut}\r\n\n{lines['BR-E-base'].fitted}\n")
    assert main(["mark", str(job), "--from", str(saved)]) == 0
    assert job.with_suffix(".site").read_text() == (
        f"{lines['BR-E-base'].cut}\n{lines['BR-E-base'].fitted}\n"
    )
    assert "1 cut, 1 of them fitted" in capsys.readouterr().out
    assert main(["mark", str(job), "--from", str(tmp_path / "none.site")]) == 2


@pytest.mark.usefixtures("unticked")
def test_a_page_works_on_once_it_is_open_without_a_network(
    browser: Browser, tmp_path: Path
) -> None:
    (tmp_path / "small-phone.html").write_text(render_phone(compiled(SMALL)), encoding="utf-8")

    class Quiet(SimpleHTTPRequestHandler):
        def __init__(self, *args: object) -> None:
            super().__init__(*args, directory=str(tmp_path))  # type: ignore[arg-type]

        def log_message(self, *args: object) -> None:
            pass

    server = ThreadingHTTPServer(("127.0.0.1", 0), Quiet)
    Thread(target=server.serve_forever, daemon=True).start()
    try:
        browser.open(f"http://127.0.0.1:{server.server_port}/small-phone.html", size=UPRIGHT)
    finally:
        server.shutdown()
        server.server_close()
    tap(browser, "BR-E-base", "fix")
    assert [line.split()[0] for line in written(browser)] == ["cut", "fitted"]
    for sheet in TITLES:
        browser.value(f"document.querySelector('.turn a[href=\"#{sheet}\"]').click()")
        sheets = '[...document.querySelectorAll("section.sheet")]'
        shown = f"{sheets}.filter((one) => one.offsetHeight).map((one) => one.id).join()"
        ends = monotonic() + PATIENCE
        while browser.value(shown) != sheet:
            assert monotonic() < ends, browser.value(shown)
    browser.value(
        'const search = document.getElementById("find"); search.value = "br-n";'
        'search.dispatchEvent(new Event("input"))'
    )
    assert (
        browser.value('document.getElementById("found").textContent')
        == f"3 / {len(compiled(SMALL).pieces)}"
    )


def test_the_phones_page_needs_no_other_file_and_has_no_name_twice() -> None:
    html = render_phone(some_of_all())
    links = re.findall(r"""(?:src|href)\s*=\s*["']([^"']*)["']""", html)
    ids = re.findall(r'\sid="([^"]*)"', html)
    assert links
    assert all(link.startswith("#") and link[1:] in ids for link in links)
    assert not re.search(r"@import|url\((?!data:)", html)
    assert len(ids) == len(set(ids))
    assert 'class="qr"' not in html


def test_share_writes_it_beside_the_sheets(tmp_path: Path) -> None:
    job = tmp_path / "box room.trim"
    job.write_text(SMALL)
    out = tmp_path / "out"
    assert main(["build", str(job), "--out", str(out), "--format", "html", "--share"]) == 0
    assert (out / "box room-phone.html").is_file()
    assert 'href="box%20room-phone.html"' in (out / "index.html").read_text("utf-8")
    assert main(["build", str(job), "--out", str(out), "--format", "json", "--share"]) == 0
    assert {path.name for path in out.iterdir() if not path.name.startswith(".")} == {
        "plan.json",
        "stock-order.csv",
        "box room-phone.html",
    }
