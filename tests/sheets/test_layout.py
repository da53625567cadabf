"""Nothing on a page overlaps or is cut off: WeasyPrint's own boxes, compared."""

from __future__ import annotations

from functools import cache
from itertools import combinations
from typing import Any

import pytest

from tests.conftest import LAWS
from tests.sheets.jobs import (
    LONG_WORD,
    LOW_TO_TALL,
    SHIPPED,
    TITLES,
    UNBROKEN,
    compiled,
    example,
    odd,
    small,
)
from trimlang.sheets.render.pages import render_sheets
from trimlang.sheets.render.paper import AREAS
from trimlang.sheets.render.pdf import data_fetcher
from trimlang.sheets.wording.catalogue import languages

weasyprint = pytest.importorskip("weasyprint")
Rectangle = tuple[float, float, float, float]
SLACK = 0.6
"""CSS pixels: rounding in the layout, not ink."""


@cache
def _pages(html: str) -> list[Any]:
    document = weasyprint.HTML(string=html, url_fetcher=data_fetcher(), media_type="print").render()
    return [page._page_box for page in document.pages]


def _border(box: Any) -> Rectangle:
    x, y = box.border_box_x(), box.border_box_y()
    return (x, y, x + box.border_width(), y + box.border_height())


def _texts(box: Any) -> list[tuple[str, Rectangle]]:
    """Each stretch of text with about its ink: the middle three fifths of its height."""
    found = []
    for one in box.descendants(placeholders=True):
        text = getattr(one, "text", None)
        if text and text.strip() and one.style["font_size"] > 2:
            fifth = one.height / 5
            found.append(
                (
                    text,
                    (
                        one.position_x,
                        one.position_y + fifth,
                        one.position_x + one.width,
                        one.position_y + 4 * fifth,
                    ),
                )
            )
    return found


def _overlap(one: Rectangle, other: Rectangle) -> bool:
    return (
        min(one[2], other[2]) - max(one[0], other[0]) > SLACK
        and min(one[3], other[3]) - max(one[1], other[1]) > SLACK
    )


def _inside(inner: Rectangle, outer: Rectangle) -> bool:
    return (
        inner[0] >= outer[0] - SLACK
        and inner[1] >= outer[1] - SLACK
        and inner[2] <= outer[2] + SLACK
        and inner[3] <= outer[3] + SLACK
    )


EN_BY_DAY = ["en", *(pytest.param(one, marks=pytest.mark.nightly) for one in languages()[1:])]
"""The other languages at night: their catalogues change less often than the sheets."""

OPTIONS: list[dict[str, Any]] = [
    {},
    {"paper": "a4", "show": "mm", "language": "es"},
    {"ticket": "100mm x 50mm"},
    {"ticket": "62mm x 100mm", "language": "de"},
]


@pytest.mark.parametrize(
    "options",
    [
        pytest.param(OPTIONS[0], id="letter"),
        pytest.param(OPTIONS[1], id="a4-es", marks=pytest.mark.nightly),
        pytest.param(OPTIONS[2], id="wide-label", marks=pytest.mark.nightly),
        pytest.param(OPTIONS[3], id="tall-label", marks=pytest.mark.nightly),
    ],
)
def test_tickets_hold_their_text_and_keep_apart(options: dict[str, Any]) -> None:
    seen = 0
    for page in _pages(render_sheets(odd(), **options)["tickets"]):
        sheet = (0.0, 0.0, page.margin_width(), page.margin_height())
        tickets = _tagged(page, "article")
        seen += len(tickets)
        for ticket in tickets:
            assert _inside(_border(ticket), sheet)
            for text, place in _texts(ticket):
                assert _inside(place, _border(ticket)), text
        for one, other in combinations(tickets, 2):
            assert not _overlap(_border(one), _border(other))
    assert seen == len(odd().pieces)


@pytest.mark.parametrize(
    "names", [["bay"], pytest.param(SHIPPED, marks=pytest.mark.nightly)], ids=["bay", "all"]
)
def test_tickets_stay_within_their_outlines(names: list[str]) -> None:
    """An outline is as tall as its tickets were measured to be before their text was set."""
    ways = [("letter", "en")] if LAWS != "night" else [(p, w) for p in AREAS for w in languages()]
    spilt = []
    for name in names:
        for paper, language in ways:
            html = render_sheets(example(name), only=["tickets"], paper=paper, language=language)
            for page in _pages(html["tickets"]):
                outlines = [_border(box) for box in _tagged(page, "i")]
                spilt += [
                    (name, paper, language, text)
                    for ticket in _tagged(page, "article")
                    for text, place in _texts(ticket)
                    if not any(_inside(place, outline) for outline in outlines)
                ]
    assert spilt == []


def _tagged(page: Any, tag: str) -> list[Any]:
    return [
        box
        for box in page.descendants(placeholders=True)
        if getattr(box, "element_tag", None) == tag and hasattr(box, "children")
    ]


def _holds_its_text(page: Any) -> None:
    """No text lies off the page or on another."""
    sheet = (0.0, 0.0, page.margin_width(), page.margin_height())
    texts = _texts(page)
    for text, place in texts:
        assert _inside(place, sheet), text
    for (one, here), (other, there) in combinations(texts, 2):
        assert not _overlap(here, there), (one, other)


# the narrower and taller paper, in the language with the longest words, at night
@pytest.mark.parametrize(
    ("paper", "language"), [("letter", "en"), pytest.param("a4", "de", marks=pytest.mark.nightly)]
)
@pytest.mark.parametrize("name", TITLES)
def test_no_text_lies_on_another_or_off_the_page(name: str, paper: str, language: str) -> None:
    html = render_sheets(small(), only=[name], paper=paper, language=language)[name]
    for page in _pages(html):
        _holds_its_text(page)


@pytest.mark.parametrize("language", EN_BY_DAY)
@pytest.mark.parametrize("name", ["stick-layouts", "saw-sheet"])
def test_a_crowns_two_settings_fit_in_every_language(name: str, language: str) -> None:
    """Mitre and bevel with their sides are the longest settings, and feet the longest marks."""
    for show in (None, "ft") if LAWS == "night" else ("ft",):
        html = render_sheets(odd(), language=language, show=show, only=(name,))[name]
        for page in _pages(html):
            _holds_its_text(page)


MM = 96 / 25.4
TALL = {"bead": 12.7, "shoe": 19.05, "rail": 44.45, "case": 57.15, "base": 82.55, "tall": 133.35}


def _of(box: Any, name: str) -> list[Any]:
    return [
        one
        for one in box.descendants(placeholders=True)
        if one.element is not None
        and name in (one.element.get("class") or "").split()
        and hasattr(one, "border_height")
        and type(one).__name__ in ("BlockBox", "TableCellBox")
    ]


@cache
def _low_to_tall(language: str) -> str:
    return render_sheets(compiled(LOW_TO_TALL), only=["tickets"], language=language)["tickets"]


@pytest.mark.parametrize("language", EN_BY_DAY)
def test_tickets_are_no_taller_than_their_trim(language: str) -> None:
    """Above the fold, that is: what is below it is folded back; only the bead wants a flag."""
    html = _low_to_tall(language)
    seen = set()
    for page in _pages(html):
        for ticket in _of(page, "ticket"):
            trim = ticket.element.get("data-piece").split("-")[2]
            (face,), flaps = _of(ticket, "face"), _of(ticket, "flap")
            seen.add(trim)
            assert ("flag" in ticket.element.get("class").split()) is (trim == "bead")
            assert face.border_height() / MM <= max(TALL[trim], 19.0)
            for text, place in _texts(face):
                assert _inside(place, _border(face)), text
            if not flaps and trim not in ("base", "tall"):  # a card is as tall as its neighbour
                assert ticket.border_height() / MM <= max(TALL[trim], 19.0) + 0.2
            texts = _texts(ticket)
            for (one, here), (other, there) in combinations(texts, 2):
                assert not _overlap(here, there), (one, other)
    assert seen == set(TALL)


def test_length_cuts_and_room_can_be_read_at_arms_length() -> None:
    for page in _pages(_low_to_tall("en")):
        for ticket in _of(page, "ticket"):
            (length,) = _of(ticket, "length")
            assert length.style["font_size"] * 0.75 >= 17.9
            for setting in _of(ticket, "setting"):
                assert setting.style["font_size"] * 0.75 >= 8.9
            (room,) = _of(ticket, "room")
            assert room.style["font_size"] * 0.75 >= 8.4


@cache
def _unbroken(name: str) -> str:
    return render_sheets(compiled(UNBROKEN), only=[name])[name]


@pytest.mark.parametrize("name", TITLES)
def test_a_word_without_end_is_cut_off_nowhere(name: str) -> None:
    for page in _pages(_unbroken(name)):
        _holds_its_text(page)


def test_a_shortened_name_stands_whole_on_its_ticket() -> None:
    printed = ""
    for page in _pages(_unbroken("tickets")):
        for ticket in _of(page, "ticket"):
            if ticket.element.get("data-piece") == f"RO-{LONG_WORD}-shoe":
                printed = "".join(text for text, _ in _texts(ticket)).replace(" ", "")
    assert f"RO-{LONG_WORD}-shoe" in printed
    assert f"note{LONG_WORD}" in printed
