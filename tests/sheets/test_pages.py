"""All sheets as documents: whole, escaped, the same twice, in any language and unit."""

from __future__ import annotations

import builtins
import re
from collections.abc import Callable
from dataclasses import fields
from fractions import Fraction
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader
from syrupy.assertion import SnapshotAssertion

from tests import jobs
from tests.jobs import CASE_STOCK
from tests.sheets.jobs import SMALL, TITLES, compiled, house, odd, small, some_of_all
from trimlang.compiler import Result, compile_job
from trimlang.sheets.content.checklist import Checklist, Stage
from trimlang.sheets.content.elevations import Elevation, ElevationSheet
from trimlang.sheets.content.floor_plan import RoomPlan
from trimlang.sheets.content.job_at_a_glance import (
    Glance,
    OpenWarning,
    RoomAtAGlance,
    RoomPicture,
    SheetFiles,
    TrimAtAGlance,
)
from trimlang.sheets.content.order_reasons import OrderReasons, TrimReasons, WoodShare
from trimlang.sheets.content.overview import House, Overview
from trimlang.sheets.content.proofs import CostProofs
from trimlang.sheets.content.room_list import FittingTask, PieceLine, RoomList
from trimlang.sheets.content.stick_layouts import StickLayout
from trimlang.sheets.content.stock_order import Order, OrderedLine, TrimOrder
from trimlang.sheets.content.ticket import Ticket
from trimlang.sheets.content.ticket_ends import EndText
from trimlang.sheets.render.page_tree import page_tree
from trimlang.sheets.render.pages import render_sheets
from trimlang.sheets.render.paper import UnknownPaperError, label
from trimlang.sheets.render.pdf import PangoMissingError, ReachesOutError, to_pdf
from trimlang.sheets.render.template_filling import SheetTemplateError
from trimlang.sheets.wording.catalogue import UnknownLanguageError, languages, words_in
from trimlang.sheets.wording.quantities import Pen


@cache
def sheets_of(job: Callable[[], Result]) -> dict[str, str]:
    """All sheets of one of the jobs, as they are without any option."""
    return render_sheets(job())


PAPER_MONEY = "$977.10"
"""What the house's order comes to."""


def _body(html: str) -> str:
    """The part of a page that its job decides: no style, script or codes."""
    html = re.sub(r"<style.*?</style>|<script>.*?</script>", "", html, flags=re.DOTALL)
    return re.sub(r'<img class="qr".*?/>', "", html, flags=re.DOTALL)


@pytest.mark.parametrize("name", TITLES)
def test_small_job(name: str, snapshot: SnapshotAssertion) -> None:
    assert _body(sheets_of(small)[name]) == snapshot


@pytest.mark.parametrize("name", TITLES)
def test_sheets_need_nothing_from_outside(name: str) -> None:
    html = sheets_of(some_of_all)[name]
    assert not re.search(r"""(?:src|href)\s*=\s*["'](?!data:)|@import|url\((?!data:)""", html)
    assert "default-src 'none'" in html


def test_markup_in_a_note_is_text() -> None:
    sheets = sheets_of(small)
    for name in ("tickets", "floor-plan"):
        assert "<b>heater</b>" not in sheets[name]
        assert "&lt;b&gt;heater&lt;/b&gt; &amp; &#39;pipe&#39;" in sheets[name]


def test_same_job_same_bytes() -> None:
    first, second = (render_sheets(compiled(SMALL)) for _ in range(2))
    assert first == second
    assert to_pdf(first["floor-plan"]) == to_pdf(second["floor-plan"])


@pytest.mark.parametrize(("paper", "size"), [("letter", (612, 792)), ("a4", (595, 842))])
def test_pdf_has_paper_title_language_tags_and_page_numbers(
    paper: str, size: tuple[int, int]
) -> None:
    reader = PdfReader(
        BytesIO(to_pdf(render_sheets(small(), paper=paper, only=["checklist"])["checklist"]))
    )
    assert reader.metadata is not None
    assert reader.metadata.title == "Checklist · Plum Lane 3, box room"
    root: Any = reader.trailer["/Root"]
    assert root["/Lang"] == "en"
    assert root["/MarkInfo"]["/Marked"]
    box = reader.pages[0].mediabox
    assert (round(box.width), round(box.height)) == size
    for number, page in enumerate(reader.pages, start=1):
        text = page.extract_text()
        assert f"page {number} of {len(reader.pages)}" in text
        assert "Plum Lane 3, box room" in text
        assert re.search(r"revision [0-9a-f]{8}", text)


@pytest.mark.parametrize(
    ("paper", "language"),
    [("letter", "en"), ("a4", "es")]
    + [
        pytest.param(paper, language, marks=pytest.mark.nightly)
        for paper in ("letter", "a4")
        for language in languages()
        if (paper, language) not in (("letter", "en"), ("a4", "es"))
    ],
)
def test_the_order_is_one_page_to_hand_over(paper: str, language: str) -> None:
    html = render_sheets(house(), paper=paper, language=language, only=["stock-order"])
    (page,) = PdfReader(BytesIO(to_pdf(html["stock-order"]))).pages
    text = page.extract_text()
    for plan in house().plans:
        assert plan.trim in text
    assert (PAPER_MONEY if language != "de" else PAPER_MONEY.replace(".", ",")) in text


def test_label_stock_takes_one_ticket_each() -> None:
    html = render_sheets(small(), ticket="100mm x 50mm", only=["tickets"])["tickets"]
    reader = PdfReader(BytesIO(to_pdf(html)))
    assert len(reader.pages) == len(small().pieces)
    odd_number = render_sheets(odd(), ticket="100mm x 50mm", qr=False, only=["tickets"])["tickets"]
    assert len(odd().pieces) % 2
    pages = PdfReader(BytesIO(to_pdf(odd_number))).pages
    assert len(pages) >= len(odd().pieces)
    assert "" not in [page.extract_text() for page in pages]
    for piece, page in zip(small().pieces, reader.pages, strict=True):
        assert piece.id in page.extract_text().splitlines()
        assert round(page.mediabox.width) == round(100 / 25.4 * 72)


@pytest.mark.parametrize(
    "size", ["", "big", "100 x 50", "5mm x 5mm", "9000mm x 50mm", "-1in x 2in"]
)
def test_labels_that_cannot_be(size: str) -> None:
    with pytest.raises(UnknownPaperError):
        label(size)


def test_without_codes() -> None:
    assert 'class="qr"' in render_sheets(small())["tickets"]
    assert 'class="qr"' not in render_sheets(small(), qr=False)["tickets"]


@pytest.mark.parametrize("name", TITLES)
def test_pages_are_read_the_quick_way_for_paper(name: str) -> None:
    tree = page_tree(sheets_of(small)[name])
    assert tree is not None
    said = "".join(tree.itertext())
    assert "Find a piece" not in said
    assert "localStorage" not in said
    assert "Plum Lane 3, box room" in said


@pytest.mark.parametrize(
    "html",
    ["<p>a<br>b", "<!DOCTYPE html><p>a<br>b", "<!DOCTYPE html><p>&x;</p>"],
)
def test_a_page_that_is_no_xml_is_printed_too(html: str) -> None:
    assert page_tree(html) is None
    assert to_pdf(html).startswith(b"%PDF")


def test_what_only_a_screen_shows_leaves_the_text_behind_it() -> None:
    tree = page_tree(
        '<!DOCTYPE html><p>a<b class="x on-screen">no</b>b<i>c</i><b class="on-screen"/>d</p>'
    )
    assert tree is not None
    assert "".join(tree.itertext()) == "abcd"


def test_links_lead_to_the_first_words_of_what_they_led_to() -> None:
    tree = page_tree(
        '<!DOCTYPE html><main><p id="d"><b>a</b></p><p id="e"><svg id="f"/></p></main>'
    )
    assert tree is not None
    ids = {one.get("id"): one.tag for one in tree.iter() if one.get("id")}
    assert ids == {"d": "b", "e": "p", "f": "{http://www.w3.org/2000/svg}svg"}


def test_without_weasyprint_html_still_works(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    real = builtins.__import__

    def missing(name: str, *args: Any, **options: Any) -> Any:
        if name.startswith("weasyprint"):
            print("a long notice")  # noqa: T201
            raise OSError("cannot load library 'libpango-1.0-0'")
        return real(name, *args, **options)

    monkeypatch.setattr(builtins, "__import__", missing)
    sheets = render_sheets(small())
    assert set(sheets) == set(TITLES)
    with pytest.raises(PangoMissingError, match="apt install libpango") as caught:
        to_pdf(sheets["checklist"])
    assert "\n" not in str(caught.value)
    assert capsys.readouterr().out == ""


@pytest.mark.parametrize("url", ["http://example.invalid/x.png", "file:///etc/hostname"])
def test_pdf_loads_nothing_from_outside(url: str) -> None:
    with pytest.raises(ReachesOutError):
        to_pdf(f'<html lang="en"><title>x</title><img src="{url}">')


def test_own_template_takes_a_sheets_place(tmp_path: Path) -> None:
    (tmp_path / "checklist.html").write_text(
        "{% extends 'parts/page.html' %}{% block body %}{{ list.rooms|length }} rooms{% endblock %}"
    )
    sheets = render_sheets(small(), templates=tmp_path)
    assert "1 rooms" in sheets["checklist"]
    assert sheets["tickets"] == render_sheets(small())["tickets"]


@pytest.mark.parametrize(
    ("text", "line", "wrong"),
    [
        ("<p>\n{% if %}", 2, "Expected an expression"),
        ("<p>\n\n{{ nothing.here }}", 3, "'nothing' is undefined"),
        ("{{ 1 / 0 }}", 1, "ZeroDivisionError"),
        ("\n{{ job.__class__.__mro__ }}", 2, "unsafe"),
        ("{% extends 'lost.html' %}", 1, "lost.html"),
    ],
)
def test_fault_in_own_template_has_file_and_line(
    tmp_path: Path, text: str, line: int, wrong: str
) -> None:
    own = tmp_path / "checklist.html"
    own.write_text(text)
    with pytest.raises(SheetTemplateError, match=re.escape(wrong)) as caught:
        render_sheets(small(), templates=tmp_path)
    assert caught.value.file == str(own)
    assert caught.value.line == line


def test_template_folder_must_exist(tmp_path: Path) -> None:
    with pytest.raises(SheetTemplateError, match="no such folder"):
        render_sheets(small(), templates=tmp_path / "lost")


def test_units_and_language() -> None:
    chosen = ["tickets", "stick-layouts"]
    sheets = render_sheets(house(), show="mm", language="es", only=chosen)
    assert "Etiquetas de corte" in sheets["tickets"]
    assert '<html lang="es">' in sheets["tickets"]
    assert not re.search(r"\d in\b", _body(sheets["stick-layouts"]))


@pytest.mark.parametrize(
    ("inches", "said"),
    [
        ("146.25", "12 ft 2 1/4 in"),
        ("144", "12 ft"),
        ("144.0625", "12 ft 1/16 in"),
        ("145", "12 ft 1 in"),
        ("11.5", "11 1/2 in"),
    ],
)
def test_feet_are_counted_where_they_are_asked_for(inches: str, said: str) -> None:
    pen = Pen(words_in("en"), "$", feet=True)
    assert str(pen.length(Fraction(inches))) == said


def test_tickets_in_feet_say_the_same_lengths() -> None:
    """Every length on the tickets, read back, is the one that the plain tickets give in inches."""

    def lengths(show: str) -> list[Fraction]:
        page = render_sheets(house(), show=show, only=("tickets",))["tickets"].replace("\xa0", " ")
        found = re.findall(r'<p class="length[^>]*>(.*?)</p>', page)
        return [read_back(re.sub(r"<[^>]+>|&#160;", " ", one)) for one in found]

    def read_back(text: str) -> Fraction:
        feet, foot, rest = text.rpartition(" ft")
        total = 12 * Fraction(feet.strip() or 0) if foot else Fraction(0)
        inches = (rest if foot else text).replace("in", "").split()
        return total + sum(map(Fraction, inches), Fraction(0))

    assert lengths("ft") == lengths("in")
    assert len(lengths("in")) == len(house().pieces)


def test_unknown_arguments() -> None:
    with pytest.raises(UnknownPaperError):
        render_sheets(small(), paper="quarto")
    with pytest.raises(UnknownLanguageError):
        render_sheets(small(), language="../../x")
    with pytest.raises(ValueError, match="'cubits'"):
        render_sheets(small(), show="cubits")
    with pytest.raises(ValueError, match="errors"):
        render_sheets(compile_job("nonsense"))


def test_revision_follows_the_job_file() -> None:
    def revision(text: str) -> str:
        match = re.search(r'data-revision="(\w+)"', render_sheets(compiled(text))["checklist"])
        assert match
        return match[1]

    assert revision(SMALL) == revision(SMALL)
    assert revision(SMALL) != revision(SMALL + "# a word\n")


def test_the_documented_template_works(tmp_path: Path) -> None:
    docs = (Path(__file__).resolve().parents[2] / "docs" / "sheets.md").read_text("utf-8")
    (example,) = re.findall(r"```jinja\n(.*?)```", docs, re.DOTALL)
    (tmp_path / "checklist.html").write_text(example)
    assert "BR-E-base 29\xa01/8\xa0in" in render_sheets(small(), templates=tmp_path)["checklist"]


def test_the_documented_context_is_what_templates_see() -> None:
    docs = (Path(__file__).resolve().parents[2] / "docs" / "sheets.md").read_text("utf-8")
    views = (
        Ticket,
        EndText,
        Order,
        TrimOrder,
        OrderedLine,
        OrderReasons,
        TrimReasons,
        WoodShare,
        CostProofs,
        Checklist,
        Stage,
        RoomList,
        FittingTask,
        PieceLine,
        StickLayout,
        RoomPlan,
        ElevationSheet,
        Elevation,
    )
    glance = (Glance, RoomAtAGlance, RoomPicture, TrimAtAGlance, OpenWarning, SheetFiles)
    for view in (*views, House, Overview, *glance):
        for field in fields(view):
            assert f"`{field.name}`" in docs, f"{view.__name__}.{field.name}"


def test_a_label_too_small_to_read_is_refused_with_one_that_would_do() -> None:
    with pytest.raises(UnknownPaperError, match=r"too small for ticket .* it fits") as caught:
        render_sheets(small(), ticket="62mm x 29mm")
    would = re.findall(r"\d+mm x \d+mm", str(caught.value))
    assert len(would) == 3
    for size in would[1:]:
        across, down = (int(side) for side in re.findall(r"\d+", size))
        assert label(size).down == down
        assert across >= 62


def test_cautions_are_printed_where_the_job_has_such_work() -> None:
    trims = (
        f"{jobs.TRIM}trim strip: 3/4 in thick, 1 1/4 in tall\nstock strip: 8 ft at 4.10\n"
        f"trim bead: 1/4 in thick, 1/2 in tall\nstock bead: 8 ft at 2.10\n{jobs.CASE}\n"
        f"{jobs.CROWN}\nstock crown: 8 ft at 21.00\n"
        f"{CASE_STOCK}\n"
    )
    room = 'room "R", trim base, open walk\n'
    work = {
        "Kerfs: set their depth": "  N: 6 ft, left=butt, right=butt, curves in 9 in\n",
        "Scribing: clamp": "  N: 6 ft, left=butt, right=butt, floor gap 1/4 in\n",
        "Jamb strips are long": "  N: 6 ft, left=butt, right=butt\n"
        "  door 30 in, casing case, height 80 in, jambs strip\n  E: 40 in, left=butt, right=butt\n",
        "On a stair: clamp": "  N: 6 ft, left=plumb, right=plumb, rising right 7 in over 10 in\n",
        "Crown below a slope:": "  N: 6 ft, left=butt, right=butt, trim crown, ceiling rising"
        " right 10 deg\n",
        "Thin trim (bead)": "  N: 6 ft, left=butt, right=butt, trim base, bead\n",
        "Corners out of plumb:": "  N: 6 ft, left=butt, right=in-corner(91 deg at floor, 90 deg at"
        " top)\n  E: 40 in, right=butt\n",
    }
    printed = {
        said: render_sheets(compile_job(trims + room + walls), only=["checklist"])["checklist"]
        for said, walls in work.items()
    }
    for said in work:
        assert [one for one, page in printed.items() if said in page] == [said]
    assert all("manual comes before anything" in page for page in printed.values())
