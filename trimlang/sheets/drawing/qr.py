"""A ticket's payload as a QR code, drawn as SVG; any phone reads it without a network."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from markupsafe import Markup, escape

if TYPE_CHECKING:
    from segno import QRCode

#: The margin that readers need, in modules: half of what ISO/IEC 18004 asks for, which a ticket's
#: own white paper makes up.
QUIET: Final = 2

_RUNS: Final = re.compile(rb"(\x00*)(\x01+)")


# a job that is built again has few new tickets
@lru_cache(maxsize=512)
def qr_svg(payload: str, about: str) -> Markup:
    """Return the code of a plain text as an SVG element."""
    code = code_of(payload)
    side = len(code.matrix) + 2 * QUIET
    return Markup(  # noqa: S704 - the title is escaped and the rest is drawn
        f'<svg viewBox="0 0 {side} {side}" class="qr"><title>{escape(about)}</title>'
        f'<path stroke="#000" d="{_strokes(code.matrix)}"/></svg>'
    )


def code_of(payload: str) -> QRCode:
    """Return the code of a plain text.

    On a ticket large modules help a phone in poor light more than spare ones do: the
    lowest level of correction, raised (by segno) where that takes no more modules.
    """
    import segno

    # every mask is valid; choosing the prettiest takes ten times as long as all the rest, and
    # this one is the quickest to lay over a code
    return segno.make(payload, error="l", micro=False, mask=2)


def _strokes(rows: Sequence[bytes | bytearray]) -> str:
    """Return the dark modules as the strokes of a pen one module wide, row by row.

    segno's own drawing is the same, but asks of every module which kind it is.
    """
    drawn: list[str] = []
    pen, down = -QUIET, QUIET + 0.5
    for row in rows:
        first, *others = _RUNS.findall(row)
        drawn.append(f"m{len(first[0]) - pen} {down:g}h{len(first[1])}")
        drawn.extend(map(_STROKES.__getitem__, others))
        pen, down = row.rindex(1) + 1, 1
    return f"M{''.join(drawn)[1:]}"


class _Strokes(dict[tuple[bytes, bytes], str]):
    """Light modules and the dark ones after them, as a stroke on the same row."""

    def __missing__(self, run: tuple[bytes, bytes]) -> str:
        self[run] = f"m{len(run[0])} 0h{len(run[1])}"
        return self[run]


#: A code has thousands of runs, which are of a few dozen kinds.
_STROKES: Final = _Strokes()
