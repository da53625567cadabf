"""No text lies on another or off its page, in the PDF as it is printed, drawings and all."""

from __future__ import annotations

from collections import Counter
from io import BytesIO
from random import Random

import pytest
from pypdf import PdfReader

from tests.sheets.any_house import any_house
from tests.sheets.jobs import SHIPPED, compiled, example
from tests.sheets.printed_texts import off_the_page, overlaps, printed_pages
from trimlang.compiler import compile_job
from trimlang.sheets.content.saw_sheet import saw_sheet
from trimlang.sheets.render.pages import render_sheets
from trimlang.sheets.render.pdf import to_pdf
from trimlang.sheets.wording.catalogue import languages, words_in
from trimlang.sheets.wording.quantities import Pen
from trimlang.stock.planner import QUICK

TURNED = """
<!DOCTYPE html><html lang="en"><title>x</title><style>@page { size: 100mm 60mm; margin: 0 }</style>
<svg width="100mm" height="60mm" viewBox="0 0 100 60" role="img" aria-label="x">
<text x="20" y="20" font-size="3">one two</text>
<text x="AT" y="30" font-size="3" transform="rotate(-90 AT 30)">turned upright</text>
</svg></html>
"""


def faults(html: str) -> list[object]:
    """What lies on another text or off its page, with the page's number."""
    pdf = to_pdf(html)
    sizes = [page.mediabox for page in PdfReader(BytesIO(pdf)).pages]
    found: list[object] = []
    for number, (texts, size) in enumerate(zip(printed_pages(pdf), sizes, strict=True), start=1):
        found += [(number, pair) for pair in overlaps(texts)]
        beyond = off_the_page(texts, (float(size.width), float(size.height)))
        found += [(number, text) for text in beyond]
    return found


def test_turned_texts_of_a_drawing_are_seen() -> None:
    assert faults(TURNED.replace("AT", "25"))
    assert not faults(TURNED.replace("AT", "50"))
    assert faults(TURNED.replace("AT", "101"))


@pytest.mark.parametrize("name", ["attic", "doors", "stair-hall"])
def test_no_text_lies_on_another_on_an_elevation(name: str) -> None:
    assert faults(render_sheets(example(name), only=["elevations"])["elevations"]) == []


def test_a_page_says_at_its_head_which_setting_it_goes_on_with() -> None:
    result = example("cornice")
    (html,) = render_sheets(result, only=["saw-sheet"]).values()
    set_for = {
        f"{made.stick} {made.mark} {made.ends}": group.setting
        for group in saw_sheet(result, Pen(words_in("en"), "$")).groups
        for made in group.strokes
    }
    goes_on = 0
    reader = PdfReader(BytesIO(to_pdf(html)))
    heads = Counter(reader.get_destination_page_number(one) for one in reader.outline[-1])
    for number, page in enumerate(reader.pages):
        text = " ".join(page.extract_text().split())
        table = text.removeprefix("done stick mark makes ")
        # No setting stands at a page's foot with its cuts overleaf.
        assert text.count("done stick mark makes") == heads[number] + (table != text)
        assert ("goes on: " in text) == (table != text)
        if table != text:
            (setting,) = {set_for[row] for row in set_for if table.startswith(row)}
            assert f"goes on: {setting}" in text
            goes_on += 1
    assert goes_on


def test_an_order_of_seven_trims_is_one_page_with_its_line_to_sign() -> None:
    (html,) = render_sheets(example("cornice"), only=["stock-order"]).values()
    (page,) = PdfReader(BytesIO(to_pdf(html))).pages
    assert "signature" in page.extract_text()


def test_an_order_of_two_dozen_trims_is_one_leaf_front_and_back() -> None:
    room = (
        'room "Room {n}" as R{n}, trim t{n}, open walk\n'
        "  A: 90 in, left=butt, right=butt\n  opening 30 in\n  B: 140 in, left=butt, right=butt\n"
    )
    trim = "trim t{n}: 9/16 in thick, 5 in tall, pine\nstock t{n}: 8 ft at 9.00, 12 ft at 15.00\n"
    job = "".join(text.format(n=n) for text in (trim, room) for n in range(24))
    (html,) = render_sheets(compiled(job), only=["stock-order"]).values()
    _, back = PdfReader(BytesIO(to_pdf(html))).pages
    assert "signature" in back.extract_text()


@pytest.mark.nightly
@pytest.mark.parametrize("name", SHIPPED)
@pytest.mark.parametrize(("paper", "language"), [("letter", "en"), ("a4", "de"), ("letter", "es")])
def test_no_text_lies_on_another_on_the_sheets_of_an_example(
    name: str, paper: str, language: str
) -> None:
    sheets = render_sheets(example(name), paper=paper, language=language)
    assert {sheet: found for sheet, html in sheets.items() if (found := faults(html))} == {}


GENERATED = 100


@pytest.mark.nightly
def test_no_text_lies_on_another_on_a_hundred_generated_jobs() -> None:
    found: dict[tuple[int, str], list[object]] = {}
    for seed in range(GENERATED):
        random = Random(seed)
        result = compile_job(any_house(random), effort=QUICK)
        assert result.ok, (seed, [one.message for one in result.diagnostics])
        sheets = render_sheets(
            result,
            paper=random.choice(("letter", "a4")),
            language=random.choice(languages()),
            show=random.choice((None, "ft", "mm")),
        )
        found |= {(seed, name): faults(html) for name, html in sheets.items()}
    assert {place: wrong for place, wrong in found.items() if wrong} == {}


def test_what_the_log_ticked_is_crossed_in_its_own_box() -> None:
    (html,) = render_sheets(example("site-log"), only=["checklist"]).values()
    (*_, page) = printed_pages(to_pdf(html))

    def middles(text: str) -> set[int]:
        return {round(one.at[4] + one.long / 2) for one in page if one.text.strip() == text}

    crosses = middles("×")
    for column in ("cut", "label", "dry-fit", "fix"):
        (head, *_) = middles(column)
        assert any(abs(head - cross) < 12 for cross in crosses), column
    assert len(crosses) == 4
