"""A number is read as one: it breaks over no line, and stays with its unit."""

from __future__ import annotations

import re
from fractions import Fraction
from functools import cache
from html.parser import HTMLParser

import pytest

from tests.conftest import LAWS, ROOT
from trimlang.compiler import Result, compile_job
from trimlang.lengths.tape import MM, Unit
from trimlang.sheets.render.pages import render_index, render_sheets
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.quantities import Pen
from trimlang.stock.planner import QUICK

EXAMPLES = sorted((ROOT / "examples").glob("*.trim"))
UNIT = r"(?:in|ft|mm|m|°)\b"
TORN = re.compile(
    rf"\d[ \n]\d+/\d+(?=[ \n\xa0]{UNIT}|°)|(?<![\w.])(?:\d+|\d+/\d+|\d+\.\d+)[ \n]{UNIT}"
)
"""A mixed number, or a number and its unit, with a space at which a line may end."""


class _Texts(HTMLParser):
    """What is read on a page; not its style, its script, nor what a reader cannot see."""

    def __init__(self) -> None:
        super().__init__()
        self.read: list[str] = []
        self._unread = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag in ("style", "script", "title"):
            self._unread = tag
        elif tag not in ("span", "b"):
            self.read.append("\n\n")

    def handle_endtag(self, tag: str) -> None:
        if tag == self._unread:
            self._unread = ""

    def handle_data(self, data: str) -> None:
        if not self._unread:
            self.read.append(data)


def torn(html: str, user: str) -> list[str]:
    """Texts of a page in which a number may break over a line, but for the user's own texts."""
    page = _Texts()
    page.feed(html)
    texts = [text for text in "".join(page.read).split("\n\n") if text.strip()]
    return [text for text in texts if (found := TORN.search(text)) and found[0] not in user]


def source(name: str) -> str:
    return (ROOT / "examples" / name).read_text(encoding="utf-8")


@cache
def example(name: str) -> Result:
    return compile_job(source(name), path=ROOT / "examples" / name, effort=QUICK)


@pytest.mark.parametrize(
    "name",
    [
        # the largest: what it alone has is on the sheets of the smaller ones too
        pytest.param(path.name, marks=pytest.mark.nightly if path.stem == "ferncote" else ())
        for path in EXAMPLES
    ],
)
def test_no_number_of_the_examples_may_break(name: str) -> None:
    result = example(name)
    if not result.job.rooms:  # a file that others include
        return
    user = "\n".join(re.findall(r'"[^"\n]*"', source(name)))
    # by day each example in one way, and its neighbour in the other
    ways = [(None, "en"), ("mm", "es"), ("mm", "en")]
    neighbours = sum(path.name < name for path in EXAMPLES)
    for show, language in ways if LAWS == "night" else [ways[neighbours % 2]]:
        pages = render_sheets(result, show=show, language=language, qr=False)
        pages["index"] = render_index(result, (), show=show, language=language)
        for sheet, html in pages.items():
            assert torn(html, user) == [], sheet


def test_a_number_that_may_break_is_found() -> None:
    assert torn("<p>cut 29 1/8 in off</p>", "") == ["cut 29 1/8 in off"]
    assert torn("<p>cut 29\xa01/8\nin off</p>", "")
    assert torn("<p>mitre 31 1/8° left</p>", "")
    assert torn("<p>12 ft</p>", "")
    assert not torn("<p>cut 29\xa01/8\xa0in off, 2 of 3</p>", "")


def test_figures_are_written_as_the_language_writes_them() -> None:
    pen = Pen(words_in("de"), "€", show=Unit.MM)
    assert pen.money(Fraction(123456, 100)) == "€1.234,56"
    assert pen.angle(Fraction(89, 2)) == "44,5°"
    assert str(pen.reading(Fraction(3, 2))) == "38,1 mm"
    assert Pen(words_in("es"), "$").money(Fraction(1234)) == "$1,234.00"


@pytest.mark.parametrize("unit", Unit)
def test_a_stick_keeps_the_name_that_it_is_bought_by(unit: Unit) -> None:
    pen = Pen(words_in("en"), "$", show=unit)
    assert (pen.stick(Fraction(144)), pen.stick(3600 * MM)) == ("12 ft", "3.6 m")
    assert (pen.stick(Fraction(114)), pen.offcut(Fraction(120))) == ("9 ft 6 in", "10 ft")
    assert pen.offcut(Fraction(99)) == {Unit.MM: "2515 mm", Unit.INCH: "99 in"}[unit]
