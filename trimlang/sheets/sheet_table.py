"""The table of sheets: one row a sheet, and the row is what the house knows of it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from enum import Enum, auto
from typing import TYPE_CHECKING, Any, Final

from markupsafe import Markup

from trimlang.marking import N_
from trimlang.record import record
from trimlang.sheets.content.checklist import checklist
from trimlang.sheets.content.elevations import elevations, has_elevations
from trimlang.sheets.content.flats import flats_table
from trimlang.sheets.content.floor_plan import floor_plan
from trimlang.sheets.content.left_to_cut import left_to_cut
from trimlang.sheets.content.order_reasons import order_reasons
from trimlang.sheets.content.overview import house
from trimlang.sheets.content.saw_sheet import saw_sheet
from trimlang.sheets.content.stick_layouts import stick_layouts
from trimlang.sheets.content.stock_order import order
from trimlang.sheets.content.ticket import tickets
from trimlang.sheets.content.ticket_pages import legend, on_leaves, one_each, sizes
from trimlang.sheets.drawing.qr import qr_picture
from trimlang.site_log.lines_ahead import lines_ahead

if TYPE_CHECKING:
    from trimlang.compiler import Result
    from trimlang.incremental.cache import Cache
    from trimlang.shared_order.shared_result import SharedOrder
    from trimlang.sheets.render.paper import Area, LabelSize
    from trimlang.sheets.wording.quantities import Pen


@record
class Printing:
    """One printing of a job: what each sheet may ask for.

    ``area`` is what a page has for tickets, ``label`` the label that each is printed on, where
    it is; ``codes`` tells whether tickets carry a QR code; ``shared`` is the purchase that the
    job is, ``drawings`` what was drawn before.
    """

    result: Result
    pen: Pen
    area: Area
    codes: bool = True
    label: LabelSize | None = None
    shared: SharedOrder | None = None
    drawings: Cache[Any] | None = None


class Whose(Enum):
    """Who has a sheet where several jobs are bought together."""

    EACH_JOB = auto()
    THE_SITE = auto()


def _always(printing: Printing) -> bool:  # noqa: ARG001 - the other rows ask it
    return True


@record
class Sheet:
    """A sheet: ``name`` is its file's and its template's, unless it has another's template.

    ``context`` makes what its template sees besides what all see; ``wanted`` tells whether
    a printing has the sheet at all, ``on_its_side`` whether its pages are wider than tall.
    """

    name: str
    title: str
    whose: Whose
    context: Callable[[Printing], Mapping[str, object]]
    wanted: Callable[[Printing], bool] = _always
    template: str = ""
    on_its_side: bool = False

    @property
    def file(self) -> str:
        """The name of the template."""
        return f"{self.template or self.name}.html"


def _tickets(printing: Printing, *, only_changed: bool = False) -> Mapping[str, object]:
    label = printing.label
    made = tickets(
        printing.result,
        printing.pen,
        paper=printing.area if label is None else label,
        code=printing.codes,
        only_changed=only_changed,
    )
    # The legend explains only what is on these tickets.
    about = legend(made, printing.pen.words, code=printing.codes)
    # A label is a page by itself and holds one ticket; on paper tickets are laid out to fill the
    # pages.
    leaves = on_leaves(made, printing.area, about) if label is None else one_each(made)
    return {
        "tickets": made,
        "leaves": leaves,
        "area": printing.area,
        "legend": about,
        "sizes": sizes(leaves),
        "logged": lines_ahead(printing.result.job, printing.result.pieces, printing.result.plans),
        "code": qr_picture if printing.codes else None,
        "label": label,
        **({"page_rule": Markup(label.rule)} if label else {}),  # noqa: S704 - numbers only
    }


def _floor_plan(printing: Printing) -> Mapping[str, object]:
    result, pen = printing.result, printing.pen
    return {"house": house(result, pen), "rooms": floor_plan(result, pen, printing.drawings)}


def _flats(printing: Printing) -> Mapping[str, object]:
    return {"table": flats_table(printing.shared, printing.pen) if printing.shared else None}


# In the order of the work, which the index and the phone's page follow.
SHEETS: Final = (
    Sheet(
        name="tickets",
        title=N_("Cut tickets"),
        whose=Whose.EACH_JOB,
        context=_tickets,
    ),
    Sheet(
        # the tickets again, only those that changed, to put in the place of the old ones
        name="tickets-changed",
        title=N_("Cut tickets that changed"),
        whose=Whose.EACH_JOB,
        context=lambda it: _tickets(it, only_changed=True),
        wanted=lambda it: it.result.progress is not None and bool(it.result.progress.changed),
        template="tickets",
    ),
    Sheet(
        name="stock-order",
        title=N_("Stock order"),
        whose=Whose.THE_SITE,
        context=lambda it: {"order": order(it.result, it.pen)},
    ),
    Sheet(
        name="order-explained",
        title=N_("The order explained"),
        whose=Whose.THE_SITE,
        context=lambda it: {"reasons": order_reasons(it.result, it.pen)},
    ),
    Sheet(
        name="checklist",
        title=N_("Checklist"),
        whose=Whose.EACH_JOB,
        context=lambda it: {"list": checklist(it.result, it.pen)},
    ),
    Sheet(
        name="stick-layouts",
        title=N_("Stick layouts"),
        whose=Whose.THE_SITE,
        context=lambda it: {"trims": stick_layouts(left_to_cut(it.result), it.pen)},
    ),
    Sheet(
        name="saw-sheet",
        title=N_("Saw sheet"),
        whose=Whose.THE_SITE,
        context=lambda it: {"saw": saw_sheet(left_to_cut(it.result), it.pen)},
    ),
    Sheet(
        name="floor-plan",
        title=N_("Floor plan"),
        whose=Whose.EACH_JOB,
        context=_floor_plan,
    ),
    Sheet(
        name="elevations",
        title=N_("Elevations"),
        whose=Whose.EACH_JOB,
        context=lambda it: {"walls": elevations(it.result, it.pen)},
        wanted=lambda it: has_elevations(it.result.job),
        on_its_side=True,
    ),
    Sheet(
        name="flats",
        title=N_("Flats and sticks"),
        whose=Whose.THE_SITE,
        context=_flats,
        wanted=lambda it: it.shared is not None,
    ),
)

PHONE: Final = "phone"
"""All sheets in one page, to send to a phone; what its file is called goes by the job."""
PHONE_TITLE: Final = N_("All sheets for a phone")
INDEX: Final = "index"
"""The page to open first; it is made last, when all the files are known that it leads to."""
INDEX_TITLE: Final = N_("The job at a glance")

SHEET_TITLES: Final = {sheet.name: sheet.title for sheet in SHEETS}


def sheets_of(whose: Whose) -> tuple[str, ...]:
    """Return the names of the sheets that each job, or the whole site, has for itself."""
    return tuple(sheet.name for sheet in SHEETS if sheet.whose is whose)
