"""Every sheet of a job as one self-contained HTML document each."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from markupsafe import Markup

from trimlang.compiler import Result
from trimlang.sheets.content.checklist import checklist
from trimlang.sheets.content.flats import flats_table
from trimlang.sheets.content.floor_plan import floor_plan
from trimlang.sheets.content.heading import heading
from trimlang.sheets.content.job_at_a_glance import at_a_glance
from trimlang.sheets.content.left_to_cut import left_to_cut
from trimlang.sheets.content.overview import house
from trimlang.sheets.content.saw_sheet import saw_sheet
from trimlang.sheets.content.stick_layouts import stick_layouts
from trimlang.sheets.content.stock_order import order
from trimlang.sheets.content.ticket import rows, tickets
from trimlang.sheets.drawing.qr import qr_svg
from trimlang.sheets.render.paper import LabelSize, label, page_rule, running
from trimlang.sheets.render.stylesheet import stylesheet
from trimlang.sheets.render.template_filling import TemplateFiller
from trimlang.sheets.wording.catalogue import Words, words_in
from trimlang.sheets.wording.quantities import Pen
from trimlang.sheets.wording.titles import CHANGED, CHANGED_TITLE, INDEX_TITLE, SITE_TITLES

if TYPE_CHECKING:
    from trimlang.incremental.cache import Cache
    from trimlang.shared_order.shared_plan import SharedOrder


def _drawn(
    result: Result,
    pen: Pen,
    *,
    qr: bool,
    stock: LabelSize | None,
    shared: SharedOrder | None,
    drawings: Cache[Any] | None,
) -> dict[str, Callable[[], dict[str, object]]]:
    """Return how each sheet's own context is made."""
    left = left_to_cut(result)
    changed = result.progress is not None and result.progress.changed
    return {
        "tickets": lambda: _tickets(result, pen, qr=qr, stock=stock),
        **(
            {CHANGED: lambda: _tickets(result, pen, qr=qr, stock=stock, only_changed=True)}
            if changed
            else {}
        ),
        "stock-order": lambda: {"order": order(result, pen)},
        "checklist": lambda: {"list": checklist(result, pen)},
        "stick-layouts": lambda: {"trims": stick_layouts(left, pen)},
        "saw-sheet": lambda: {"saw": saw_sheet(left, pen)},
        "floor-plan": lambda: {
            "house": house(result, pen),
            "rooms": floor_plan(result, pen, drawings),
        },
        **({"flats": lambda: {"table": flats_table(shared, pen)}} if shared else {}),
    }


def _tickets(
    result: Result, pen: Pen, *, qr: bool, stock: LabelSize | None, only_changed: bool = False
) -> dict[str, object]:
    made = tickets(result, pen, label=stock, code=qr, only_changed=only_changed)
    return {
        "tickets": made,
        "rows": rows(made) if stock is None else [[one] for one in made],
        "folds": any(one.shape.flap for one in made),
        "flags": any(one.shape.flag for one in made),
        "code": qr_svg if qr else None,
        "label": stock,
        **({"page_rule": Markup(stock.rule)} if stock else {}),  # noqa: S704 - numbers only
    }


def render_sheets(
    result: Result,
    *,
    paper: str = "letter",
    templates: Path | None = None,
    show: str | None = None,
    language: str = "en",
    qr: bool = True,
    ticket: str | None = None,
    only: Collection[str] | None = None,
    shared: SharedOrder | None = None,
    filler: TemplateFiller | None = None,
) -> dict[str, str]:
    """Return the sheets of a compiled job: name to a complete HTML document.

    Args:
        result: a job without errors.
        paper: ``letter`` or ``a4``.
        templates: a folder whose templates stand in for the shipped ones.
        show: ``in`` or ``mm`` on the sheets, whatever the job file is in.
        language: the language of the sheets.
        qr: whether tickets carry a QR code.
        ticket: a label's size (``100mm x 50mm``), to print one ticket on each.
        only: the names of the sheets to make, where not all are wanted.
        shared: the purchase that the job is, which gives the sheet of flats and sticks.
        filler: one that has filled ``templates`` before, which is quicker.

    Raises:
        ValueError: the job has errors, or an argument names nothing known.
        SheetTemplateError: a template cannot be read or filled.
    """
    words = words_in(language)
    filler = filler or TemplateFiller(templates)
    pen = _pen(result, words, show)
    stock = label(ticket) if ticket is not None else None
    printing = _Printing(result, filler, words, paper)
    sheets: dict[str, str] = {}
    drawn = _drawn(result, pen, qr=qr, stock=stock, shared=shared, drawings=filler.drawings)
    for name, own in drawn.items():
        if only is None or name in only:
            title = words(CHANGED_TITLE if name == CHANGED else SITE_TITLES[name])
            template = "tickets.html" if name == CHANGED else f"{name}.html"
            sheets[name] = printing.sheet(template, title, own())
    return sheets


def render_index(
    result: Result,
    files: Collection[str],
    *,
    paper: str = "letter",
    templates: Path | None = None,
    show: str | None = None,
    language: str = "en",
    beside: Sequence[tuple[str, str]] = (),
    filler: TemplateFiller | None = None,
) -> str:
    """Return the job at a glance, a complete HTML document that leads to all ``files``.

    ``beside`` are titles and addresses of pages in other folders; for the other arguments
    and what is raised see ``render_sheets``.
    """
    words = words_in(language)
    filler = filler or TemplateFiller(templates)
    printing = _Printing(result, filler, words, paper)
    glance = at_a_glance(
        result, _pen(result, words, show), files, beside=beside, cache=filler.drawings
    )
    return printing.sheet("index.html", words(INDEX_TITLE), {"glance": glance})


def _pen(result: Result, words: Words, show: str | None) -> Pen:
    if not result.ok:
        raise ValueError("a job with errors has no sheets")
    if show not in (None, "in", "mm"):
        raise ValueError(f"lengths are shown in 'in' or 'mm', not {show!r}")
    settings = result.job.settings
    return Pen(words, result.job.currency, own=settings.unit, show=show, tape=settings.tape_step)


class _Printing:
    """What the pages of one printing share: head and foot, words, paper and looks."""

    def __init__(self, result: Result, filler: TemplateFiller, words: Words, paper: str) -> None:
        self._filler = filler
        self._words = words
        self._head = heading(result)
        self._size = page_rule(paper)
        self._common = {
            "job": self._head,
            "_": words,
            "language": words.language,
            "style": stylesheet(filler),
            "script": Markup(filler.source("parts/phone.js")),  # noqa: S704
        }

    def sheet(self, template: str, title: str, own: Mapping[str, object]) -> str:
        """Fill a template; what is its ``own`` goes before what all share."""
        rules = running(self._head.job, title, self._head.revision, self._words)
        rule = Markup(f"{self._size}\n{rules}")  # noqa: S704 - escaped
        return self._filler.fill(
            template, {**self._common, "sheet": title, "page_rule": rule, **own}
        )
