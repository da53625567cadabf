"""Every sheet of a job as one self-contained HTML document each."""

from __future__ import annotations

from collections.abc import Callable, Collection
from pathlib import Path
from typing import TYPE_CHECKING, Any

from markupsafe import Markup

from trimlang.compiler import Result
from trimlang.marking import N_
from trimlang.sheets.content.heading import heading
from trimlang.sheets.content.left_to_cut import left_to_cut
from trimlang.sheets.render.paper import Label, label, page_rule, running
from trimlang.sheets.render.stylesheet import stylesheet
from trimlang.sheets.render.template_filling import TemplateFiller
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.quantities import Pen
from trimlang.sheets.wording.titles import CHANGED, SITE_TITLES

if TYPE_CHECKING:
    from trimlang.incremental.cache import Cache
    from trimlang.shared_order.shared_plan import SharedOrder


def _drawn(
    result: Result,
    pen: Pen,
    *,
    qr: bool,
    stock: Label | None,
    site: SharedOrder | None,
    drawings: Cache[Any] | None,
) -> dict[str, Callable[[], dict[str, object]]]:
    """Return how each sheet's own context is made."""
    left = left_to_cut(result)
    changed = result.site is not None and result.site.changed
    return {
        "tickets": lambda: _tickets(result, pen, qr=qr, stock=stock),
        **(
            {CHANGED: lambda: _tickets(result, pen, qr=qr, stock=stock, only_changed=True)}
            if changed
            else {}
        ),
        "stock-order": lambda: _stock_order(result, pen),
        "checklist": lambda: _checklist(result, pen),
        "stick-layouts": lambda: _stick_layouts(left, pen),
        "saw-sheet": lambda: _saw_sheet(left, pen),
        "floor-plan": lambda: _floor_plan(result, pen, drawings),
        **({"flats": lambda: _flats(site, pen)} if site else {}),
    }


# each sheet's own module is loaded when it is drawn: tickets are drawn in a process of their own


def _stock_order(result: Result, pen: Pen) -> dict[str, object]:
    from trimlang.sheets.content.stock_order import order

    return {"order": order(result, pen)}


def _checklist(result: Result, pen: Pen) -> dict[str, object]:
    from trimlang.sheets.content.checklist import checklist

    return {"list": checklist(result, pen)}


def _stick_layouts(left: Result, pen: Pen) -> dict[str, object]:
    from trimlang.sheets.content.stick_layouts import stick_layouts

    return {"trims": stick_layouts(left, pen)}


def _saw_sheet(left: Result, pen: Pen) -> dict[str, object]:
    from trimlang.sheets.content.saw_sheet import saw_sheet

    return {"saw": saw_sheet(left, pen)}


def _floor_plan(result: Result, pen: Pen, drawings: Cache[Any] | None) -> dict[str, object]:
    from trimlang.sheets.content.floor_plan import floor_plan
    from trimlang.sheets.content.overview import house

    return {"house": house(result, pen), "rooms": floor_plan(result, pen, drawings)}


def _flats(site: SharedOrder, pen: Pen) -> dict[str, object]:
    from trimlang.sheets.content.flats import flats_table

    return {"table": flats_table(site, pen)}


def _tickets(
    result: Result, pen: Pen, *, qr: bool, stock: Label | None, only_changed: bool = False
) -> dict[str, object]:
    from trimlang.sheets.content.ticket import rows, tickets
    from trimlang.sheets.drawing.qr import qr_svg

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
    site: SharedOrder | None = None,
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
        site: the purchase that the job is, which gives the sheet of flats and sticks.
        filler: one that has filled ``templates`` before, which is quicker.

    Raises:
        ValueError: the job has errors, or an argument names nothing known.
        SheetTemplateError: a template cannot be read or filled.
    """
    if not result.ok:
        raise ValueError("a job with errors has no sheets")
    if show not in (None, "in", "mm"):
        raise ValueError(f"lengths are shown in 'in' or 'mm', not {show!r}")
    words = words_in(language)
    pen = Pen(words, result.job.currency, result.job.settings.unit, show)
    filler = filler or TemplateFiller(templates)
    head = heading(result)
    stock = label(ticket) if ticket is not None else None
    common = {
        "job": head,
        "_": words,
        "language": words.language,
        "style": stylesheet(filler),
        "script": Markup(filler.source("parts/phone.js")),  # noqa: S704
    }
    size = page_rule(paper)

    def titled(name: str) -> dict[str, object]:
        title = words(N_("Cut tickets that changed") if name == CHANGED else SITE_TITLES[name])
        rules = running(head.job, title, head.revision, words)
        return {"sheet": title, "page_rule": Markup(f"{size}\n{rules}")}  # noqa: S704 - escaped

    sheets: dict[str, str] = {}
    drawn = _drawn(result, pen, qr=qr, stock=stock, site=site, drawings=filler.drawings)
    for name, own in drawn.items():
        if only is None or name in only:
            template = "tickets.html" if name == CHANGED else f"{name}.html"
            sheets[name] = filler.fill(template, {**common, **titled(name), **own()})
    return sheets
