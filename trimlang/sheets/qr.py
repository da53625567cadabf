"""A ticket's payload as a QR code, drawn as SVG; any phone reads it without a network."""

from __future__ import annotations

from functools import lru_cache

from markupsafe import Markup


# a job that is built again has few new tickets
@lru_cache(maxsize=512)
def qr_svg(payload: str, about: str) -> Markup:
    """Return the code of a plain text as an SVG element."""
    import segno

    # every mask is valid; choosing the prettiest takes ten times as long as all the rest
    code = segno.make(payload, error="m", micro=False, mask=3)
    svg: str = code.svg_inline(border=2, omitsize=True, title=about, svgclass="qr", lineclass=None)
    return Markup(svg)  # noqa: S704 - segno escapes the title and draws the rest
