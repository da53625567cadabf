"""A ticket's payload as a QR code, drawn as SVG; any phone reads it without a network."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache
from typing import Final

from markupsafe import Markup, escape

#: The margin that readers need, in modules: half of what ISO/IEC 18004 asks for, which a ticket's
#: own white paper makes up.
QUIET: Final = 2

_DARK: Final = re.compile(rb"\x01+")


# a job that is built again has few new tickets
@lru_cache(maxsize=512)
def qr_svg(payload: str, about: str) -> Markup:
    """Return the code of a plain text as an SVG element."""
    import segno

    # every mask is valid; choosing the prettiest takes ten times as long as all the rest
    code = segno.make(payload, error="m", micro=False, mask=3)
    side = len(code.matrix) + 2 * QUIET
    return Markup(  # noqa: S704 - the title is escaped and the rest is drawn
        f'<svg viewBox="0 0 {side} {side}" class="qr"><title>{escape(about)}</title>'
        f'<path stroke="#000" d="{_strokes(code.matrix)}"/></svg>'
    )


def _strokes(rows: Sequence[bytes | bytearray]) -> str:
    """Return the dark modules as the strokes of a pen one module wide, row by row.

    segno's own drawing is the same, but asks of every module which kind it is.
    """
    strokes: list[str] = []
    pen, down = -QUIET, QUIET + 0.5
    for row in rows:
        for dark in _DARK.finditer(row):
            start, end = dark.span()
            strokes.append(f"m{start - pen} {down:g}h{end - start}")
            pen, down = end, 0
        down += 1
    return f"M{strokes[0][1:]}{''.join(strokes[1:])}"
