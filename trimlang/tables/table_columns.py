"""The columns of a survey as a table."""

from __future__ import annotations

from enum import StrEnum
from typing import Final

from trimlang.tables.cells import TableRow

COLUMNS: Final = (
    "kind",
    "room",
    "wall",
    "length",
    "left",
    "right",
    "trims",
    "called",
    "note",
    "more",
    "line",
)
"""All columns, in the order in which they are written; any order is read."""

ALSO: Final = {"run": "wall", "trim": "trims"}
"""Other names that a heading may use for a column."""

# What the heading must name; what a single row must hold depends on its kind.
NEEDED: Final = ("room", "length")


class RowKind(StrEnum):
    """What a row of a survey states."""

    RUN = "run"
    OPENING = "opening"
    BARE = "bare"
    ROOM = "room"
    LINE = "line"


_OF_SURVEYS: Final = frozenset({"kind", "trims", "trim", "called", "more", "line"})

SOUND: Final = {
    "wall": "X",
    "length": "1 in",
    "left": "butt",
    "right": "butt",
    "trims": "base",
    "room": "x",
    "called": "x",
    "note": "x",
}
"""Text that is sound in each column, to try the other cells of a row one by one."""


def names_columns(heading: TableRow) -> bool:
    """Tell whether a heading is a survey's: it names ends, trims or another column of its own.

    Rooms, walls and lengths alone are what any list of measurements has.
    """
    return bool(_words(heading) & (_OF_SURVEYS | {"left", "right"}))


def of_surveys_alone(heading: TableRow) -> bool:
    """Tell whether a heading has what no list has: a column of surveys, or all that they need."""
    words = _words(heading)
    return bool(words & _OF_SURVEYS) or words >= {*NEEDED}


def _words(heading: TableRow) -> set[str]:
    return {cell.text.strip().lower() for cell in heading.cells} - {""}
