"""Every sheet of a job as one self-contained HTML document each."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Final

from markupsafe import Markup

from trimlang.compiler import Result
from trimlang.sheets.counter import order
from trimlang.sheets.heading import heading
from trimlang.sheets.pen import Pen
from trimlang.sheets.press import Press
from trimlang.sheets.qr import qr_svg
from trimlang.sheets.stages import checklist
from trimlang.sheets.style import stylesheet
from trimlang.sheets.ticket import tickets
from trimlang.sheets.words import words_in

PAPERS: Final = {"letter": "letter", "a4": "A4"}
"""The papers by the names that the command line takes."""

TITLES: Final = {
    "tickets": "Cut tickets",
    "stock-order": "Stock order",
    "checklist": "Checklist",
}


class UnknownPaperError(ValueError):
    """No paper of that name."""


def _drawn(result: Result, pen: Pen, *, qr: bool) -> dict[str, Callable[[], dict[str, object]]]:
    """Return how each sheet's own context is made."""
    return {
        "tickets": lambda: {
            "tickets": tickets(result, pen),
            "code": qr_svg if qr else None,
        },
        "stock-order": lambda: {"order": order(result, pen)},
        "checklist": lambda: {"list": checklist(result, pen)},
    }


def render_sheets(
    result: Result,
    *,
    paper: str = "letter",
    templates: Path | None = None,
    show: str | None = None,
    language: str = "en",
    qr: bool = True,
) -> dict[str, str]:
    """Return the sheets of a compiled job: name to a complete HTML document.

    Args:
        result: a job without errors.
        paper: ``letter`` or ``a4``.
        templates: a folder whose templates stand in for the shipped ones.
        show: ``in`` or ``mm`` on the sheets, whatever the job file is in.
        language: the language of the sheets.
        qr: whether tickets carry a QR code.

    Raises:
        ValueError: the job has errors, or an argument names nothing known.
        SheetTemplateError: a template cannot be read or filled.
    """
    if not result.ok:
        raise ValueError("a job with errors has no sheets")
    if paper not in PAPERS:
        raise UnknownPaperError(f"no paper {paper!r}; there are: {', '.join(PAPERS)}")
    if show not in (None, "in", "mm"):
        raise ValueError(f"lengths are shown in 'in' or 'mm', not {show!r}")
    words = words_in(language)
    pen = Pen(words, result.job.currency, result.job.settings.unit, show)
    press = Press(templates)
    common = {
        "job": heading(result),
        "_": words,
        "language": words.language,
        "style": stylesheet(press),
        "script": Markup(press.source("parts/phone.js")),  # noqa: S704
        "paper": PAPERS[paper],
    }
    return {
        name: press.sheet(f"{name}.html", {**common, "sheet": words(TITLES[name]), **own()})
        for name, own in _drawn(result, pen, qr=qr).items()
    }
