"""The files that a job is printed as: pages, PDF, data, tables and a drawing."""

from __future__ import annotations

from argparse import Namespace
from collections.abc import Collection
from typing import TYPE_CHECKING

from trimlang.cli.own_templates import unusable
from trimlang.workers.forked import RefusedError, side_by_side

if TYPE_CHECKING:
    from trimlang.compiler import Result
    from trimlang.shared_order.shared_plan import SharedOrder
    from trimlang.sheets.render.template_filling import TemplateFiller


def paperwork(
    options: Namespace,
    result: Result,
    *,
    only: Collection[str] | None = None,
    site: SharedOrder | None = None,
    filler: TemplateFiller | None = None,
) -> dict[str, bytes]:
    """Return the files of a compiled job, name to contents.

    ``filler`` is one that has filled the same templates before.

    Raises:
        RefusedError: an option or a template cannot be followed.
    """
    formats = set(options.formats or ("html", "pdf"))
    if not formats & {"html", "pdf"}:
        return _data(result, formats, only, site)
    why = unusable(options.templates)
    if why is not None:
        raise RefusedError(why)
    from trimlang.sheets.export.order_csv import order_csv
    from trimlang.sheets.wording.titles import CHANGED, SITE_TITLES

    def pages(names: Collection[str]) -> dict[str, bytes]:
        return _pages(options, result, formats, names, site, filler)

    def with_data(names: Collection[str]) -> dict[str, bytes]:
        data = _data(result, formats, only, site)
        return {**data, **pages(names), "stock-order.csv": _table(order_csv(result))}

    wanted = {*SITE_TITLES, CHANGED} if only is None else set(only)
    tickets = {"tickets", CHANGED} & wanted
    # the cores have other work where other jobs are built; a filler that is
    # ready is at hand here alone
    if not tickets or filler is not None or options.quiet:
        return with_data(wanted)
    return side_by_side(lambda: pages(tickets), lambda: with_data(wanted - tickets))


def _data(
    result: Result,
    formats: Collection[str],
    only: Collection[str] | None,
    site: SharedOrder | None,
) -> dict[str, bytes]:
    """Return what is no page: the plan, and tables and a drawing where they are asked for."""
    from trimlang.sheets.export.plan_json import plan_json

    files = {"plan.json": plan_json(result).encode()}
    if "csv" in formats:
        files |= _spreadsheets(result, site)
    if "dxf" in formats and (only is None or "floor-plan" in only):
        files["floor-plan.dxf"] = _drawing(result)
    return files


def _pages(
    options: Namespace,
    result: Result,
    formats: Collection[str],
    names: Collection[str],
    site: SharedOrder | None,
    filler: TemplateFiller | None,
) -> dict[str, bytes]:
    """Return the sheets of those names as HTML and PDF.

    Raises:
        RefusedError: an option or a template cannot be followed.
    """
    from trimlang.sheets.render.pages import render_sheets
    from trimlang.sheets.render.template_filling import SheetTemplateError

    files: dict[str, bytes] = {}
    paper = options.paper or ("a4" if result.job.settings.unit == "mm" else "letter")
    try:
        sheets = render_sheets(
            result,
            paper=paper,
            templates=options.templates,
            show=options.show,
            language=options.language,
            qr=not options.no_codes,
            ticket=options.ticket,
            only=names,
            site=site,
            filler=filler,
        )
    except SheetTemplateError as error:
        raise RefusedError(f"a template is wrong: {error}") from None
    except ValueError as error:  # a language or a label that there is not
        raise RefusedError(str(error)) from None
    if "html" in formats:
        files |= {f"{name}.html": html.encode() for name, html in sheets.items()}
    if "pdf" in formats:
        from trimlang.sheets.render.pdf import PangoMissingError, ReachesOutError, to_pdf

        try:
            files |= {f"{name}.pdf": to_pdf(html) for name, html in sheets.items()}
        except (PangoMissingError, ReachesOutError) as error:
            raise RefusedError(str(error)) from None
    return files


def _spreadsheets(result: Result, site: SharedOrder | None) -> dict[str, bytes]:
    from trimlang.sheets.export.order_csv import order_csv
    from trimlang.sheets.export.plan_csv import cut_list_csv, sticks_csv

    files = {
        "stock-order.csv": _table(order_csv(result)),
        "cut-list.csv": _table(cut_list_csv(result)),
        "sticks.csv": _table(sticks_csv(result)),
    }
    if site is not None:
        from trimlang.sheets.content.flats import flats_csv

        files["flats.csv"] = _table(flats_csv(site))
    return files


def _table(text: str) -> bytes:
    """Return a table's bytes; without the mark in front spreadsheets misread accents."""
    return text.encode("utf-8-sig")


def _drawing(result: Result) -> bytes:
    from trimlang.sheets.export.dxf import DrawingMissingError, floor_plan_dxf

    try:
        return floor_plan_dxf(result)
    except DrawingMissingError as error:
        raise RefusedError(str(error)) from None
