"""The stylesheet with its fonts inside, so that a sheet needs no other file."""

from __future__ import annotations

from base64 import b64encode
from functools import cache
from typing import Final

from markupsafe import Markup

from trimlang.resources import folder
from trimlang.sheets.render.template_filling import TemplateFiller

FAMILY: Final = "Trim Sans"
WEIGHTS: Final = {"400": "B612-Regular.woff2", "700": "B612-Bold.woff2"}


def stylesheet(filler: TemplateFiller) -> Markup:
    """Return the fonts and the one stylesheet, the user's own where there is one."""
    return Markup(_fonts() + filler.source("sheets.css"))  # noqa: S704 - CSS, never job text


def screen_style(filler: TemplateFiller) -> Markup:
    """Return what holds on a screen only, which a PDF need not read."""
    return Markup(filler.source("screen.css"))  # noqa: S704 - CSS, never job text


@cache
def _fonts() -> str:
    """The shipped fonts under a family name of the sheets' own, as data: URIs.

    They are subsets of some 20 kB each.  A bare machine has no fonts at all,
    and a length in a fallback font might be set too wide for its ticket.
    """
    rules = []
    for weight, name in WEIGHTS.items():
        data = b64encode((folder("templates") / "fonts" / name).read_bytes()).decode("ascii")
        rules.append(
            f'@font-face {{ font-family: "{FAMILY}"; font-weight: {weight};'
            f' src: url(data:font/woff2;base64,{data}) format("woff2"); }}\n'
        )
    return "".join(rules)
