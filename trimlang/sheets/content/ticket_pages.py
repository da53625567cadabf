"""Tickets laid out on pages: rows that fill a page to its foot, cards side by side."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import floor
from typing import Final

from trimlang.record import record
from trimlang.sheets.content.ticket import Ticket
from trimlang.sheets.content.ticket_room import EM, LEAST, POINT, SMALL_LINE, Format
from trimlang.sheets.drawing.typeface import lines
from trimlang.sheets.render.paper import GAP, Area
from trimlang.sheets.wording.catalogue import Words

MOST_SPREAD: Final = 0.3
"""What a page leaves free is shared out among its rows, unless it is more of it than this."""
TITLE: Final = 13.0
"""The room for the sheet's title above the legend (mm)."""


@record
class Row:
    """Tickets side by side, ``down`` mm tall; the first row may begin with the ``legend``."""

    tickets: tuple[Ticket, ...]
    down: float
    legend: bool = False


@record
class Leaf:
    """The rows of one page."""

    rows: tuple[Row, ...]


@record
class Sizes:
    """The sizes of type in ems and points, and heights in mm."""

    ems: tuple[float, ...]
    points: tuple[float, ...]
    downs: tuple[float, ...]


def on_leaves(tickets: Sequence[Ticket], area: Area, legend: Sequence[str]) -> tuple[Leaf, ...]:
    """Return the pages of tickets, each to be read after the ``legend``'s sentences."""
    if not tickets:
        return ()
    rows = [
        Row(tuple(row), max(one.shape.tall for one in row))
        for row in _in_twos(tickets, after_legend=bool(legend))
    ]
    if legend:
        rows[:1] = _with_legend(rows[0], area, legend)
    leaves: list[Leaf] = []
    page: list[Row] = []
    for row in rows:
        # Rows are never parted: a ticket is cut out whole.
        if page and _tall([*page, row]) > area.down:
            leaves.append(Leaf(_spread(page, area)))
            page = []
        page.append(row)
    return (*leaves, Leaf(tuple(page)))


def legend(tickets: Sequence[Ticket], words: Words, *, code: bool) -> tuple[str, ...]:
    """Return the sentences that say how to read tickets."""
    sentences = [
        words(
            "Each ticket says how its piece lies for each cut; the drawing shows it from above, the"
            " fence at the top."
        ),
        words(
            "Left and right of a mitre: the table's handle swings there, and the cut runs there on"
            " its way from the fence towards you. Left and right of a bevel: the blade's top leans"
            " there."
        ),
        words("A dot marks a long point. The length is always overall, to the long points."),
    ]
    if code:
        sentences.append(
            words("The code is plain text: id, length and both cuts, for any phone's camera.")
        )
    if any(one.shape.flap for one in tickets):
        sentences.append(
            words("What stands below a dashed line inside a ticket is a flap: fold it back.")
        )
    if any(one.shape.flag for one in tickets):
        sentences.append(
            words(
                "A ticket with a tab at its left is taller than its trim: tape the tab on and let"
                " the rest stand off as a flag."
            )
        )
    return tuple(sentences)


def sizes(leaves: Iterable[Leaf]) -> Sizes:
    """Return every size that the tickets use, each once, for the stylesheet's classes."""
    rows = [row for leaf in leaves for row in leaf.rows]
    shapes = [one.shape for row in rows for one in row.tickets]
    ems = {size for one in shapes for size in one.sizes}
    downs = {row.down for row in rows} | {one.down for one in shapes}
    return Sizes(
        ems=tuple(sorted(ems)),
        points=tuple(sorted({one.type for one in shapes})),
        downs=tuple(sorted(downs)),
    )


def one_each(tickets: Iterable[Ticket]) -> tuple[Leaf, ...]:
    """Return each ticket on a page of its own, as on a roll of labels."""
    return tuple(Leaf((Row((one,), one.shape.down),)) for one in tickets)


def _in_twos(tickets: Iterable[Ticket], *, after_legend: bool) -> list[list[Ticket]]:
    """Put cards of one trim side by side; the first of all stands beside the legend."""
    rows: list[list[Ticket]] = []
    for one in tickets:
        last = rows[-1] if rows else []
        alike = all(
            other.trim == one.trim and other.shape.kind is one.shape.kind is Format.CARD
            for other in last
        )
        if len(last) == 1 and alike and not (after_legend and len(rows) == 1):
            last.append(one)
        else:
            rows.append([one])
    return rows


def _with_legend(first: Row, area: Area, legend: Sequence[str]) -> list[Row]:
    """Return the first row with the legend beside its card, or below a row of its own."""
    wide = first.tickets[0].shape.kind is not Format.CARD
    across = (area.across if wide else area.column) - 2 * 0.8 * EM * POINT
    tall = TITLE + lines(" ".join(legend), across, LEAST * POINT) * SMALL_LINE
    if wide:
        return [Row((), tall, legend=True), first]
    return [Row(first.tickets, max(first.down, tall), legend=True)]


def _tall(rows: Sequence[Row]) -> float:
    return sum(row.down for row in rows) + GAP * (len(rows) - 1)


def _spread(rows: Sequence[Row], area: Area) -> tuple[Row, ...]:
    """Return a page's rows, a little taller where that fills it."""
    free = area.down - _tall(rows)
    # The last rows of a trim would stand far apart on a page that is half empty.
    if free > MOST_SPREAD * area.down:
        return tuple(rows)
    grow = [row for row in rows if row.tickets]
    more = free / len(grow)
    # The stylesheet has hundredths of a millimetre: rounded up they would push the last row over.
    return tuple(
        Row(row.tickets, floor((row.down + more) * 100) / 100, row.legend) if row.tickets else row
        for row in rows
    )
