"""PDF/UA-1 (ISO 14289-1) as far as a reader of PDF can check it, rule by rule.

The rules are those of the PDF Association's Matterhorn Protocol 1.1 that a machine can hold;
their numbers stand beside them, from memory.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from io import BytesIO
from itertools import pairwise
from typing import Any

import pytest
from pypdf import PdfReader

from tests.sheets.jobs import WITH_WALLS, some_of_all
from trimlang.sheets.render.pages import render_sheets
from trimlang.sheets.render.pdf import to_pdf
from trimlang.sheets.wording.catalogue import languages

CHILDREN = {
    "/L": {"/LI", "/L", "/Caption"},
    "/LI": {"/Lbl", "/LBody"},
    "/Table": {"/TR", "/THead", "/TBody", "/TFoot", "/Caption"},
    "/THead": {"/TR"},
    "/TBody": {"/TR"},
    "/TR": {"/TH", "/TD"},
}


@cache
def printed(name: str, language: str) -> PdfReader:
    html = render_sheets(some_of_all(), only=[name], language=language)[name]
    return PdfReader(BytesIO(to_pdf(html)))


def elements(element: Any) -> Iterator[Any]:
    element = element.get_object()
    if not isinstance(element, dict):
        return
    if "/S" in element:
        yield element
    kids = element.get("/K", [])
    for kid in kids if isinstance(kids, list) else [kids]:
        yield from elements(kid) if hasattr(kid, "get_object") else ()


def kinds_below(element: Any) -> Iterator[str]:
    """The kinds of an element's children, those of no meaning of their own looked through."""
    kids = element.get("/K", [])
    for kid in kids if isinstance(kids, list) else [kids]:
        kid = kid.get_object()
        if isinstance(kid, dict) and "/S" in kid:
            if kid["/S"] == "/NonStruct":
                yield from kinds_below(kid)
            else:
                yield kid["/S"]


@pytest.mark.parametrize(
    ("name", "language"),
    [
        *((name, "en") for name in WITH_WALLS),
        # the tags come from the templates, which are the same in every language
        ("checklist", "es"),
        *(
            pytest.param(name, language, marks=pytest.mark.nightly)
            for name in WITH_WALLS
            for language in languages()[1:]
            if (name, language) != ("checklist", "es")
        ),
    ],
)
def test_a_sheet_keeps_the_rules_of_tagged_pdf(name: str, language: str) -> None:
    reader = printed(name, language)
    root: Any = reader.trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"]  # 06-001 and 01-003: tagged, and said so
    assert b"pdfuaid:part" in root["/Metadata"].get_object().get_data()  # 06-002
    assert reader.metadata is not None
    assert reader.metadata.title  # 06-003
    assert root["/ViewerPreferences"]["/DisplayDocTitle"]  # 07-001: the title is shown
    assert root["/Lang"] == language  # 11-006
    assert all(page["/Tabs"] == "/S" for page in reader.pages if "/Annots" in page)  # 28-008
    assert reader.outline  # bookmarks
    tree = list(elements(root["/StructTreeRoot"]))
    assert len(tree) > 20
    levels = [int(one["/S"][2:]) for one in tree if one["/S"][2:].isdigit()]
    assert levels[0] == 1  # 14-002: the first heading is of the first level
    # 14-003: none is skipped on the way down
    assert all(below <= above + 1 for above, below in pairwise(levels))
    for one in tree:
        kind = one["/S"]
        if kind == "/Figure":
            assert str(one.get("/Alt", "")).strip()  # 13-004
        if kind in CHILDREN:
            assert set(kinds_below(one)) <= CHILDREN[kind], kind  # 09-004 to 09-006
    for page in reader.pages:
        for font in page["/Resources"]["/Font"].values():  # 31: fonts are in the file
            (face,) = font.get_object()["/DescendantFonts"]
            descriptor = face.get_object()["/FontDescriptor"].get_object()
            assert {"/FontFile", "/FontFile2", "/FontFile3"} & set(descriptor)
            assert "/ToUnicode" in font.get_object()  # 10-001
