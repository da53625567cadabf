"""The drawing of a QR code is read back, module by module."""

from __future__ import annotations

from base64 import b64decode
from io import BytesIO

import pytest

from trimlang.sheets.drawing.qr import QUIET, code_of, qr_picture


def modules(picture: str) -> tuple[int, set[tuple[int, int]]]:
    """How many modules a picture is across, and its dark ones by row and column."""
    image = pytest.importorskip("PIL.Image")
    head, data = picture.removesuffix('"/>').split(";base64,")
    assert head.endswith('src="data:image/png')
    with image.open(BytesIO(b64decode(data))) as drawn:
        wide, tall = drawn.size
        assert wide == tall
        grey = drawn.convert("L")
        places = ((row, column) for row in range(tall) for column in range(wide))
        return wide, {(row, column) for row, column in places if not grey.getpixel((column, row))}


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
    drawn = qr_picture(payload, "K-1")
    assert drawn.startswith('<img class="qr" alt="K-1"')
    across, dark_ones = modules(drawn)
    assert across == side
    assert dark_ones == {
        (QUIET + row, QUIET + column)
        for row, line in enumerate(matrix)
        for column, dark in enumerate(line)
        if dark
    }


def test_the_name_is_text() -> None:
    assert 'alt="&lt;b&gt; &amp; &#34;c&#34;"' in qr_picture("A", '<b> & "c"')
