"""The columns of a survey's table."""

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
"""Other names that a heading may use."""

NEEDED: Final = ("room", "length")
KINDS: Final = ("run", "opening", "bare", "room", "line")
