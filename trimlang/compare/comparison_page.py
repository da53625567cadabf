"""Prints a comparison as one self-contained page, with the look of the sheets."""

from __future__ import annotations

from markupsafe import Markup

from trimlang.compare import report
from trimlang.compare.changes import Comparison
from trimlang.compare.report import Versions
from trimlang.compiler import Result
from trimlang.lengths.tape import length_text
from trimlang.sheets.content.heading import heading
from trimlang.sheets.render.paper import page_rule
from trimlang.sheets.render.stylesheet import screen_style, stylesheet
from trimlang.sheets.render.template_filling import TemplateFiller
from trimlang.sheets.wording.catalogue import words_in


def comparison_page(
    found: Comparison, versions: Versions, old: Result, new: Result, *, paper: str = "letter"
) -> str:
    """Return the comparison as a complete HTML document; ``paper`` is ``letter`` or ``a4``.

    Raises:
        UnknownPaperError: there is no such paper.
    """
    filler = TemplateFiller(None)
    look = page_rule(paper) + "\n" + filler.source("parts/comparison.css")
    return filler.fill(
        "comparison.html",
        {
            "job": heading(new),
            "_": words_in("en"),
            "language": "en",
            "in_one": False,
            "style": stylesheet(filler),
            "screen_style": screen_style(filler),
            "page_rule": Markup(look),  # noqa: S704 - ours, never job text
            "sheet": "What has changed",
            "found": found,
            "versions": versions,
            "revisions": (heading(old).revision, heading(new).revision),
            "say": report,
            "long": lambda piece: length_text(piece.to_mark, piece.unit),
            "cost": report.cost_text(found),
        },
    )
