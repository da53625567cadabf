"""Makes the files that a job is printed as: pages, PDF, data, tables and a drawing."""

from __future__ import annotations

from collections.abc import Collection
from typing import TYPE_CHECKING

from trimlang.output.own_templates import unusable
from trimlang.output.sheet_options import FileFormat, SheetOptions
from trimlang.record import record
from trimlang.sheets.content.flats import flats_csv
from trimlang.sheets.export.dxf import DrawingMissingError, floor_plan_dxf
from trimlang.sheets.export.order_csv import order_csv
from trimlang.sheets.export.plan_csv import cut_list_csv, sticks_csv
from trimlang.sheets.export.plan_json import plan_json
from trimlang.sheets.sheet_table import INDEX, SHEET_TITLES
from trimlang.workers.forked import RefusedError, side_by_side

if TYPE_CHECKING:
    from trimlang.compiler import Result
    from trimlang.shared_order.shared_result import SharedOrder
    from trimlang.sheets.render.template_filling import TemplateFiller


@record
class Share:
    """Which part of a job's files is made where several jobs are bought together.

    ``sheets`` are the names of its own sheets, ``elsewhere`` the files that stand in another
    folder instead, ``other_folders`` the titles and addresses of the other folders' pages.
    """

    sheets: tuple[str, ...]
    elsewhere: tuple[str, ...] = ()
    other_folders: tuple[tuple[str, str], ...] = ()


def paperwork(
    options: SheetOptions,
    result: Result,
    *,
    alone: bool = True,
    share: Share | None = None,
    shared: SharedOrder | None = None,
    filler: TemplateFiller | None = None,
) -> dict[str, bytes]:
    """Return the files of a compiled job: name to contents.

    ``alone`` says that no other job is built at the same time, so that a second core is free.
    ``share`` limits what is made; None makes everything.  ``filler`` is one that has filled the
    same templates before.

    Raises:
        RefusedError: an option or a template cannot be followed.
    """
    only = None if share is None else share.sheets
    # Only data: no template is read and no library for pages is loaded.
    if not options.phone and not options.wants(FileFormat.HTML, FileFormat.PDF):
        return _without_others(_data(options, result, only, shared), share)
    from trimlang.output import job_pages

    # Before anything is filled, so that nothing half made is thrown away.
    why = unusable(options.templates)
    if why is not None:
        raise RefusedError(why)

    def pages(names: Collection[str]) -> dict[str, bytes]:
        return job_pages.pages(options, result, names, shared, filler)

    def with_data(names: Collection[str]) -> dict[str, bytes]:
        data = _data(options, result, only, shared)
        return {**data, **pages(names), "stock-order.csv": _table(order_csv(result))}

    wanted = set(SHEET_TITLES) if only is None else set(only)
    # Tickets take about as long to print as all other sheets together, so they are one of two
    # halves.
    tickets = {"tickets", "tickets-changed"} & wanted
    # A second process pays only for a PDF, and only while the other core is idle. A filler that is
    # ready (under --watch) would be lost there.
    if not (options.wants(FileFormat.PDF) and tickets and filler is None and alone):
        files = with_data(wanted)
    else:
        # Loaded before the fork, the second process has it for nothing.
        job_pages.load_ahead(options)
        files = side_by_side(lambda: pages(tickets), lambda: with_data(wanted - tickets))
    if options.phone:
        files |= job_pages.phone_page(options, result, only, shared, filler)
    files = _without_others(files, share)
    if options.wants(FileFormat.HTML):
        # A job alone has no folders beside its own.
        other_folders = () if share is None else share.other_folders
        # Last, when all the files that it links to are known.
        files[f"{INDEX}.html"] = job_pages.index_page(
            options, result, tuple(files), other_folders, filler
        )
    return files


def _without_others(files: dict[str, bytes], share: Share | None) -> dict[str, bytes]:
    elsewhere = () if share is None else share.elsewhere
    return {name: data for name, data in files.items() if name not in elsewhere}


def _data(
    options: SheetOptions,
    result: Result,
    only: Collection[str] | None,
    shared: SharedOrder | None,
) -> dict[str, bytes]:
    """Return all but the pages: the plan, and tables and a drawing where they are asked for."""
    files = {"plan.json": plan_json(result).encode()}
    if options.wants(FileFormat.CSV):
        files |= _spreadsheets(result, shared)
    # Where flats are bought together the plan of rooms belongs to each flat's folder.
    if options.wants(FileFormat.DXF) and (only is None or "floor-plan" in only):
        files["floor-plan.dxf"] = _drawing(result)
    return files


def _spreadsheets(result: Result, shared: SharedOrder | None) -> dict[str, bytes]:
    files = {
        "stock-order.csv": _table(order_csv(result)),
        "cut-list.csv": _table(cut_list_csv(result)),
        "sticks.csv": _table(sticks_csv(result)),
    }
    if shared is not None:
        files["flats.csv"] = _table(flats_csv(shared))
    return files


def _table(text: str) -> bytes:
    """Return a table's bytes, with a byte order mark: without it spreadsheets misread accents."""
    return text.encode("utf-8-sig")


def _drawing(result: Result) -> bytes:
    try:
        return floor_plan_dxf(result)
    except DrawingMissingError as error:
        raise RefusedError(str(error)) from None
