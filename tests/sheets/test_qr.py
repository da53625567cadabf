"""The drawing of a QR code is read back, module by module."""

from __future__ import annotations

import re

import pytest

from trimlang.sheets.drawing.qr import QUIET, code_of, qr_svg


def modules(svg: str) -> set[tuple[int, int]]:
    """The dark modules of a drawing, by row and column, from the strokes of its one path."""
    found: set[tuple[int, int]] = set()
    column, row = 0, 0
    (path,) = re.findall(r' d="M([^"]+)"', svg)
    for right, down, wide in re.findall(r"(-?[0-9]+) (-?[0-9.]+)h([0-9]+)", path):
        column, row = column + int(right), row + int(float(down))
        found |= {(row, column + at) for at in range(int(wide))}
        column += int(wide)
    return found


@pytest.mark.parametrize(
    "payload",
    [
        "A",
        "SR-N-base-a\n61 in\nL inside corner: 44 1/2° right\nR scarf: 45° left",
        "x" * 300,
        "salón 7/16",
    ],
)
def test_each_dark_module_is_drawn_and_no_other(payload: str) -> None:
    matrix = code_of(payload).matrix
    side = len(matrix) + 2 * QUIET
    drawn = qr_svg(payload, "K-1")
    assert drawn.startswith(f'<svg viewBox="0 0 {side} {side}" class="qr">')
    assert modules(drawn) == {
        (QUIET + row, QUIET + column)
        for row, line in enumerate(matrix)
        for column, dark in enumerate(line)
        if dark
    }


def test_the_title_is_text() -> None:
    assert "<title>&lt;b&gt; &amp; c</title>" in qr_svg("A", "<b> & c")
