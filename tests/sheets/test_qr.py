"""The drawing of a QR code, held against the drawing of the library that makes the code."""

from __future__ import annotations

import pytest

from trimlang.sheets.drawing.qr import QUIET, code_of, qr_svg


@pytest.mark.parametrize(
    "payload",
    [
        "A",
        "SR-N-base-a\n61 in\nL inside corner: 44.5° right\nR scarf: 45° left",
        "x" * 300,
        "salón 7/16",
    ],
)
def test_drawn_as_segno_draws_it(payload: str) -> None:
    drawn = code_of(payload).svg_inline(
        border=QUIET, omitsize=True, title="K-1", svgclass="qr", lineclass=None
    )
    assert qr_svg(payload, "K-1") == drawn


def test_the_title_is_text() -> None:
    assert "<title>&lt;b&gt; &amp; c</title>" in qr_svg("A", "<b> & c")
