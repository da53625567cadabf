"""The columns of a survey as a table."""

from __future__ import annotations

from typing import Final

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
KINDS: Final = ("run", "opening", "bare", "room", "line")
