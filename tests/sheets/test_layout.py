"""Nothing on a page overlaps or is cut off: WeasyPrint's own boxes, compared."""

from __future__ import annotations

from itertools import combinations
from typing import Any

import pytest

from tests.sheets.jobs import odd, small
from trimlang.sheets.pages import TITLES, render_sheets
from trimlang.sheets.pdf import _within

weasyprint = pytest.importorskip("weasyprint")
Rectangle = tuple[float, float, float, float]
SLACK = 0.6
"""CSS pixels: rounding in the layout, not ink."""


def _pages(html: str) -> list[Any]:
    document = weasyprint.HTML(string=html, url_fetcher=_within(), media_type="print").render()
    return [page._page_box for page in document.pages]


def _border(box: Any) -> Rectangle:
    x, y = box.border_box_x(), box.border_box_y()
    return (x, y, x + box.border_width(), y + box.border_height())


def _texts(box: Any) -> list[tuple[str, Rectangle]]:
    """Each stretch of text with about its ink: the middle three fifths of its height."""
    found = []
    for one in box.descendants():
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


OPTIONS: list[dict[str, Any]] = [
    {},
    {"paper": "a4", "show": "mm", "language": "es"},
    {"ticket": "100mm x 50mm"},
    {"ticket": "62mm x 100mm", "language": "es"},
]


@pytest.mark.parametrize("options", OPTIONS, ids=["letter", "a4-es", "wide-label", "tall-label"])
def test_tickets_hold_their_text_and_keep_apart(options: dict[str, Any]) -> None:
    seen = 0
    for page in _pages(render_sheets(odd(), **options)["tickets"]):
        sheet = (0.0, 0.0, page.margin_width(), page.margin_height())
        tickets = [
            box
            for box in page.descendants()
            if getattr(box, "element_tag", None) == "article" and hasattr(box, "children")
        ]
        seen += len(tickets)
        for ticket in tickets:
            assert _inside(_border(ticket), sheet)
            for text, place in _texts(ticket):
                assert _inside(place, _border(ticket)), text
        for one, other in combinations(tickets, 2):
            assert not _overlap(_border(one), _border(other))
    assert seen == len(odd().pieces)


@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize("name", TITLES)
def test_no_text_lies_on_another_or_off_the_page(name: str, paper: str) -> None:
    for page in _pages(render_sheets(small(), paper=paper)[name]):
        sheet = (0.0, 0.0, page.margin_width(), page.margin_height())
        texts = _texts(page)
        for text, place in texts:
            assert _inside(place, sheet), text
        for (one, here), (other, there) in combinations(texts, 2):
            assert not _overlap(here, there), (one, other)
