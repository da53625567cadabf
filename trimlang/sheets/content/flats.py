"""The sheet of flats and sticks, where several jobs are bought together."""

from __future__ import annotations

import csv
from io import StringIO
from typing import TYPE_CHECKING, Final

from trimlang.formulas import guarded
from trimlang.record import record
from trimlang.sheets.wording import material_words
from trimlang.sheets.wording.quantities import Pen

if TYPE_CHECKING:
    from trimlang.shared_order.shared_result import SharedOrder

COLUMNS: Final = ("stick", "trim", "cut", "piece", "flat", "job", "room", "run")


@record
class FlatRow:
    """A flat: its tag, its job, how many pieces and sticks, what its trim would cost alone."""

    tag: str
    job: str
    file: str
    pieces: str
    sticks: str
    alone: str


@record
class StickRow:
    """A stick, and each flat with its pieces on it in cutting order."""

    id: str
    source: str
    flats: tuple[tuple[str, str], ...]


@record
class FlatsTable:
    """All flats, all sticks, what buying together saves, and remarks."""

    flats: tuple[FlatRow, ...]
    sticks: tuple[StickRow, ...]
    cost: str
    alone: str
    saved: str
    remarks: tuple[str, ...]


def flats_table(shared: SharedOrder, pen: Pen) -> FlatsTable:
    """Return the table of a site."""
    words = pen.words
    remarks = [
        words("{trim} is bought job by job: no cheaper plan was found", trim=name)
        for name in shared.apart
    ]
    remarks += [
        words("bought job by job, {trim} would take more than the supplier or the shop has", trim=t)
        for t in shared.scarce
    ]
    return FlatsTable(
        flats=tuple(
            FlatRow(
                tag=one.flat.tag,
                job=one.flat.result.job.name,
                file=one.flat.file,
                pieces=str(len(one.result.pieces)),
                sticks=str(sum(len(plan.sticks) for plan in one.result.plans)),
                alone=words("not to be had") if one.alone is None else pen.cost(one.alone),
            )
            for one in shared.flats
        ),
        sticks=tuple(_sticks(shared, pen)),
        cost=pen.cost(shared.result.cost),
        alone="" if shared.alone is None else pen.cost(shared.alone),
        saved="" if shared.alone is None else pen.cost(shared.alone - shared.result.cost),
        remarks=tuple(remarks),
    )


def _sticks(shared: SharedOrder, pen: Pen) -> list[StickRow]:
    owner = {piece.id: one.flat.tag for one in shared.flats for piece in one.result.pieces}
    rows: list[StickRow] = []
    for plan in shared.result.plans:
        for stick in plan.sticks:
            held: dict[str, list[str]] = {}
            for place in stick.places:
                # In cutting order, so that whoever cuts hands each flat its pieces as they come off
                # the saw.
                held.setdefault(owner[place.piece], []).append(place.piece)
            flats = tuple((tag, ", ".join(ids)) for tag, ids in held.items())
            rows.append(StickRow(stick.id, material_words.stick(stick, pen), flats))
    return rows


def flats_csv(shared: SharedOrder) -> str:
    """Return CSV with a line for each piece: the stick it is cut from and the flat it is for."""
    pieces = {piece.id: (one, piece) for one in shared.flats for piece in one.result.pieces}
    text = StringIO()
    lines = csv.writer(text)
    lines.writerow(COLUMNS)
    for plan in shared.result.plans:
        for stick in plan.sticks:
            for number, place in enumerate(stick.places, start=1):
                one, piece = pieces[place.piece]
                row = (stick.id, plan.trim, number, piece.id, one.flat.tag)
                # Names are the writer's own; a spreadsheet must not take one for a formula.
                names = (one.flat.result.job.name, piece.room, piece.run)
                lines.writerow((*row, *map(guarded, names)))
    return text.getvalue()
